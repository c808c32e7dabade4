/** The words and signs that make a quantity a least or a most value: `>= 4 in`, `4 in minimum`, `up to 3/8 in`. */
import type { Bound, Dimension } from './types.js';

const LEAST = ['>=', '=>', 'at least', 'not less than', 'no less than', 'minimum of', 'minimum', 'min.', 'min'];
const MOST = ['<=', '=<', 'at most', 'not more than', 'no more than', 'maximum of', 'maximum', 'max.', 'max', 'up to'];
const LEAST_AFTER = ['minimum', 'min.', 'min', 'or more'];
const MOST_AFTER = ['maximum', 'max.', 'max', 'or less'];

const BEFORE = [...marks(LEAST, 'at least'), ...marks(MOST, 'at most')];
const AFTER = [...marks(LEAST_AFTER, 'at least'), ...marks(MOST_AFTER, 'at most')];

function marks(words: readonly string[], bound: Bound): readonly { word: string; bound: Bound }[] {
  return words.map((word) => ({ word, bound }));
}

function isLetter(character: string | undefined): boolean {
  return character !== undefined && /\p{L}/u.test(character);
}

/** Whether the last word is a number, so that `min` after it means minutes and not a minimum. */
function endsInNumber(text: string): boolean {
  return /^[\d.,/-]*\d$/.test(text.slice(text.lastIndexOf(' ') + 1));
}

export interface Bounded {
  readonly bound: Bound;
  /** What is left when the words of the bound are taken away. */
  readonly rest: string;
  /** Both a least and a most were written. */
  readonly twice: boolean;
}

/**
 * Takes the words of a bound off either end. `30 min` is thirty minutes; `30 s min` is at least thirty seconds. A
 * fraction may stand without a unit, so there `0.5 min` is a bound.
 */
export function takeBound(plain: string, dimension: Dimension): Bounded {
  let rest = plain;
  const lower = plain.toLowerCase();
  const before = BEFORE.find(
    ({ word }) => lower.startsWith(word) && !(isLetter(word[0]) && isLetter(lower[word.length])),
  );
  if (before !== undefined) rest = rest.slice(before.word.length).trim();

  const lowerRest = rest.toLowerCase();
  const after = AFTER.find(({ word }) => {
    if (!lowerRest.endsWith(word)) return false;
    const left = lowerRest.slice(0, -word.length).trimEnd();
    if (isLetter(left.at(-1)) && left.length + word.length === lowerRest.length) return false;
    return !(word.startsWith('min') && word !== 'minimum' && dimension !== 'fraction' && endsInNumber(left));
  });
  if (after !== undefined) rest = rest.slice(0, -after.word.length).trimEnd();
  return {
    bound: before?.bound ?? after?.bound ?? 'exactly',
    rest,
    twice: before !== undefined && after !== undefined,
  };
}
