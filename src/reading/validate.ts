/**
 * Holds a document against the schema of its kind and says what is wrong, one problem for each cause.
 *
 * The schemas are compiled at build time (scripts/generate-validators.mjs).
 */
import * as compiled from '../../generated/validators.cjs';
import type { Validator } from '../../generated/validators.cjs';
import { FORMATS } from './formats.js';
import { causes } from './schema-causes.js';
import { problemOf } from './schema-messages.js';
import type { DocumentKind, Part, Path, ReadingProblem } from './types.js';

export interface SchemaProblem {
  readonly code: ReadingProblem['code'];
  /** Of the value, the key (`part`) or, when something is missing, of the entry it is missing from. */
  readonly path: Path;
  readonly part?: Part;
  /** What was found, what is allowed and what to do. */
  readonly message: string;
}

/** More than this in one document is a document of another kind, not a list to work through. */
export const MOST_PROBLEMS = 100;

const validators: Partial<Record<DocumentKind, Validator>> = {};

/**
 * Problems of a document in the order of the schema; none when it is well formed.
 *
 * @param data plain records, arrays and scalars, as reading hands them on
 */
export function validateDocument(kind: DocumentKind, data: unknown): SchemaProblem[] {
  const validate = (validators[kind] ??= compiled[kind](FORMATS));
  if (validate(data)) return [];
  const found = causes(validate.errors ?? [], data);
  const problems = found.slice(0, MOST_PROBLEMS).map(problemOf);
  if (found.length > MOST_PROBLEMS) {
    const message = `${found.length - MOST_PROBLEMS} more problems in this document; correct those listed first.`;
    problems.push({ code: 'wrong-value', path: [], message });
  }
  return problems;
}
