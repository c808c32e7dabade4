/** The sentences a reader of quantities answers with: what was found, what was expected and what to do. */
import { dimensionsWith, nearestUnit } from './spelling.js';
import type { Dimension, QuantityProblem } from './types.js';
import { unitsOf } from './units.js';
import { DIMENSION_WORDS, EXAMPLES } from './words.js';

/** Longest text read as a quantity, in UTF-16 code units; the longest honest ones are about half of it. */
export const MAX_LENGTH = 60;

/** The text between quotation marks, without characters that could disturb a terminal, cut at the maximal length. */
export function quoted(text: string): string {
  const shown = text.length > MAX_LENGTH ? `${text.slice(0, MAX_LENGTH)}...` : text;
  return `"${shown.replace(/[\p{C}\p{Zl}\p{Zp}]/gu, '?')}"`;
}

function withArticle(words: string): string {
  return `${/^[aeiou]/.test(words) ? 'an' : 'a'} ${words}`;
}

/** A problem with the text as a whole: `why` continues the sentence "Found ..., ". */
export function problem(
  kind: QuantityProblem['problem'],
  text: string,
  dimension: Dimension,
  why: string,
  nearest?: string,
): QuantityProblem {
  const units = unitsOf(dimension).map((unit) => unit.spelling);
  const message =
    `Found ${quoted(text)}: ${why}. Expected ${withArticle(DIMENSION_WORDS[dimension])} ` +
    `such as ${EXAMPLES[dimension]} (units: ${units.join(', ')}).`;
  return { problem: kind, message, units, ...(nearest === undefined ? {} : { nearest }) };
}

/** A number without a unit. */
export function noUnit(text: string, dimension: Dimension): QuantityProblem {
  return problem('no unit', text, dimension, 'a number has no unit; add the unit it is measured in');
}

/** A unit that does not fit the dimension: one of another dimension, a misspelled one, or none at all. */
export function unfitUnit(written: string, text: string, dimension: Dimension): QuantityProblem {
  const others = dimensionsWith(written);
  if (others.length > 0) {
    const names = others.map((other) => DIMENSION_WORDS[other]).join(' or ');
    return problem('wrong dimension', text, dimension, `${quoted(written)} is a unit of ${names}; use one that fits`);
  }
  const nearest = nearestUnit(written, dimension)?.spelling;
  const advice = nearest === undefined ? 'use one of those listed' : `write ${nearest} if that is meant`;
  return problem('unknown unit', text, dimension, `${quoted(written)} is not a unit known here; ${advice}`, nearest);
}
