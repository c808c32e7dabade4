/** Where a statement's words stand, whether they are still to be decided, and what they cite. */
import { sourceSpan } from './prose.js';
import type { Statement } from './statements.js';
import type { Question } from './types.js';
import type { Value } from './values.js';

/** Where something stands: its paragraph, its span in the source and the sentence. */
export function placed(
  { node, prose }: Statement,
  start: number,
  end: number,
): Pick<Question, 'number' | 'span' | 'text'> {
  return {
    ...(node.number !== undefined && { number: node.number }),
    span: sourceSpan(prose, start, end),
    text: prose.text,
  };
}

/** End of a value with its twin, without its conditions. */
export const endOf = (value: Value): number => value.twin?.found.end ?? value.found.end;

/** Whether the place, its paragraph or its article stands in brackets. */
export function isOptional({ prose, isOpen }: Statement, at: number): boolean {
  return isOpen || inBrackets(prose.text, at);
}

/** The standards that a statement cites, with the procedure where it decides what is measured. */
export const methodsOf = ({ designations }: Statement): readonly string[] =>
  designations.map(({ text, procedure }) =>
    [text.replace(/\s+/g, ' '), ...(procedure === undefined ? [] : [procedure])].join(' '),
  );

/** Whether a place stands inside of square brackets. */
function inBrackets(text: string, at: number): boolean {
  let depth = 0;
  for (let i = 0; i < at; i++) {
    if (text[i] === '[') depth++;
    else if (text[i] === ']' && depth > 0) depth--;
  }
  return depth > 0;
}
