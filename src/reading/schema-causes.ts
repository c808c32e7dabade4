/**
 * From what a schema validator complains of to what is really wrong: one cause for each mistake of the author.
 *
 * A validator reports every rule on the way to a mistake (a bad word in one item is also a failed branch), and a
 * misspelled name twice (unknown here, missing there). Here the consequences are taken out.
 */
import type { SchemaError } from '../../generated/validators.cjs';
import { nearest } from './nearest.js';
import type { Path, PathStep } from './types.js';

/** The part of a schema that a message takes its words from. */
export interface SchemaNode {
  readonly title?: string;
  readonly description?: string;
  readonly examples?: readonly unknown[];
  readonly format?: string;
  readonly pattern?: string;
  readonly enum?: readonly string[];
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly oneOf?: readonly { readonly required: readonly [string] }[];
  readonly else?: SchemaNode;
  readonly minimum?: number;
  readonly maximum?: number;
}

export interface Cause {
  readonly path: Path;
  readonly keyword: string;
  readonly params: Readonly<Record<string, unknown>>;
  readonly node: SchemaNode;
  readonly value: unknown;
  /** For a missing or doubled choice: the keys of which exactly one must stand. */
  readonly choice?: readonly string[];
}

/** `/work/2/ontoWall` to `['work', 2, 'ontoWall']`: a step into a list becomes a number. */
function pathOf(pointer: string, data: unknown): Path {
  const path: PathStep[] = [];
  let here = data;
  for (const token of pointer.split('/').slice(1)) {
    const key = token.replaceAll('~1', '/').replaceAll('~0', '~');
    path.push(Array.isArray(here) ? Number(key) : key);
    here = (here as Readonly<Record<string, unknown>> | undefined)?.[key];
  }
  return path;
}

/** The rule of a failed branch says nothing that the branch itself does not say. */
function isConsequence(error: SchemaError): boolean {
  if (error.keyword === 'if' || error.propertyName !== undefined || /\/oneOf\/\d+\/required$/.test(error.schemaPath))
    return true;
  // A choice between fields is vacuous where there is no map to hold fields; its type is reported instead.
  return (
    error.keyword === 'oneOf' && (typeof error.data !== 'object' || error.data === null || Array.isArray(error.data))
  );
}

/** A misspelled name is one mistake: not also a missing one, and one of a choice not also a failed choice. */
function withoutEchoes(causes: readonly Cause[]): Cause[] {
  const unknown = causes.filter((cause) => cause.keyword === 'additionalProperties');
  const misspelled = new Set(
    unknown.map((cause) =>
      nearest(String(cause.params['additionalProperty']), Object.keys(cause.node.properties ?? {})),
    ),
  );
  // With two of "place", "set", "close" and "hold" nobody knows which fields belong: only the choice is reported.
  const undecided = causes.find((cause) => cause.params['passingSchemas'] && cause.node.properties !== undefined)?.node;
  return causes.filter((cause) => {
    if (undecided !== undefined && cause.node !== undecided) return false;
    if (cause.keyword === 'required') return !misspelled.has(String(cause.params['missingProperty']));
    if (cause.keyword === 'oneOf' && cause.params['passingSchemas'] === null) {
      return !cause.choice?.some((key) => misspelled.has(key));
    }
    return true;
  });
}

/** The causes among the errors, in their order. */
export function causes(errors: readonly SchemaError[], data: unknown): Cause[] {
  const byPlace = new Map<string, Cause[]>();
  const seen = new Set<string>();
  for (const error of errors) {
    if (isConsequence(error)) continue;
    const { instancePath, keyword, params } = error;
    // A value has one problem, the first; only names, missing fields and choices can be wrong several times.
    const once =
      keyword === 'additionalProperties' ||
      keyword === 'required' ||
      keyword === 'oneOf' ||
      keyword === 'propertyNames';
    const id = once ? `${instancePath} ${keyword} ${JSON.stringify(params)} ${error.schemaPath}` : instancePath;
    if (seen.has(id)) continue;
    seen.add(id);
    const node = (error.parentSchema ?? {}) as SchemaNode;
    const cause: Cause = {
      path: pathOf(instancePath, data),
      keyword,
      params,
      node,
      value: error.data,
      ...(keyword === 'oneOf' ? { choice: (node.oneOf ?? []).map((branch) => branch.required[0]) } : {}),
    };
    byPlace.set(instancePath, [...(byPlace.get(instancePath) ?? []), cause]);
  }
  return [...byPlace.values()].flatMap(withoutEchoes);
}
