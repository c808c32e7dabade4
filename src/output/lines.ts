/**
 * One line for each thing to look at, in the form editors and pagers already read.
 *
 * @see GNU Coding Standards, "Formatting Error Messages": `sourcefile:lineno:column: message`
 */
import type { Result } from '../engine/result.js';
import { oneLine } from './escape.js';
import { placeOfResult, placeText } from './place.js';
import { isFinding, isUnsettled, type Review } from './report.js';

/**
 * `file:line:column: level: text [rule]`. What could not be checked stands there too, as a note, so that an empty
 * output does mean that nothing is left to do; accepted deviations and passes do not.
 *
 * @returns lines, each ended by a line break; empty text when there are none
 */
export function printLines(review: Review): string {
  const cautions = new Map(review.rules.map((rule) => [rule.id, rule.caution]));
  return review.results.map((result) => lineOf(result, cautions.get(result.ruleId))).join('');
}

function lineOf(result: Result, caution: string | undefined): string {
  const prefix = isFinding(result) ? `${result.level}: ` : isUnsettled(result) ? UNSETTLED[result.kind] : undefined;
  if (prefix === undefined) return '';
  const missing = result.kind === 'open' && result.missing?.length ? ` Missing: ${result.missing.join(', ')}.` : '';
  const text = oneLine(
    result.message + missing + (caution !== undefined && isFinding(result) ? ` Caution: ${caution}` : ''),
  );
  return `${placeText(placeOfResult(result))}: ${prefix}${text} [${oneLine(result.ruleId)}]\n`;
}

const UNSETTLED: Partial<Record<Result['kind'], string>> = {
  open: 'note: cannot be checked: ',
  review: 'note: for the reviewer to judge: ',
};
