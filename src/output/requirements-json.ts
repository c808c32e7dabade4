/** A reading as JSON, for other programs: everything that was read, with lines and columns. */
import { lineColumn } from '../reading/source.js';
import type { Span } from '../reading/types.js';
import { safeJson } from './escape.js';
import { countsOf, REQUIREMENTS_CAUTION } from './requirements.js';
import type { ReadSpecification } from './requirements.js';

/** @returns one JSON object; lines and columns count from 1 */
export function printRequirementsJson({ file, reading, section, title }: ReadSpecification): string {
  const at = ({ span, ...rest }: { readonly span: Span }): object => ({
    ...lineColumn(file, span.start),
    end: lineColumn(file, span.end),
    ...rest,
  });
  return `${safeJson({
    section,
    title,
    caution: REQUIREMENTS_CAUTION,
    requirements: reading.proposals.map(at),
    submittals: reading.submittals.map(at),
    questions: reading.questions.map(at),
    passedOver: reading.passedOver.map(at),
    counts: countsOf(reading),
  })}\n`;
}
