/** A requirement in words, for messages. */
import type { Measured, Requirement } from '../model/types.js';

/** `at least 6 in`, `exactly 6 in`, `12-15 mil`, `one of 3/8 in, 1/2 in`; the text of a requirement in words. */
export function asks(requirement: Requirement): string {
  const { comparison, asked, values, text } = requirement;
  const words = asked.map(({ value }) => value).join(', ');
  switch (comparison) {
    case undefined:
      return text?.value ?? 'as the paragraph says';
    case 'equals':
      return isRange(values[0]) || values.length === 0 ? words : `exactly ${words}`;
    default:
      return `${comparison} ${words}`;
  }
}

function isRange(value: Measured | undefined): boolean {
  return value !== undefined && value.bound !== 'exactly';
}

/** `extension onto wall of opening flashing`; absent of a requirement in words. */
export function about(requirement: Requirement): string | undefined {
  const what = requirement.property ?? requirement.characteristic?.value;
  if (what === undefined) return undefined;
  const of = [requirement.subject, requirement.product?.value].filter((w) => w !== undefined).join(', ');
  return of === '' ? what : `${what} of ${of}`;
}
