/**
 * One spelling for the characters that word processors and keyboards write differently: spaces, dashes, primes,
 * vulgar fractions and comparison signs. Powers and degree signs belong to units and are left to spelling.ts, so
 * that `5² in` is never read as 52 inches.
 */
import { isDigit } from './numbers.js';

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const SAME: Readonly<Record<string, string>> = {
  '\u2010': '-',
  '\u2011': '-',
  '\u2012': '-',
  '\u2013': '-',
  '\u2014': '-',
  '\u2212': '-', // hyphens, dashes, minus
  '\u2032': "'",
  '\u2018': "'",
  '\u2019': "'",
  '\u2033': '"',
  '\u201c': '"',
  '\u201d': '"', // primes, curly quotes
  '\u2044': '/',
  '\u2265': '>=',
  '\u2264': '<=',
  '\u00b1': '+/-',
};

/**
 * The text with plain characters and single spaces. A vulgar fraction after a digit becomes part of a mixed number
 * (`5½` -> `5 1/2`); a digit after it stays apart, so that `½2` is refused instead of becoming 1/22.
 */
export function plainCharacters(text: string): string {
  let plain = '';
  let afterDigit = false;
  let afterFraction = false;
  for (const character of text) {
    const fraction = VULGAR[character];
    if (fraction !== undefined) {
      plain += afterDigit ? ` ${fraction}` : fraction;
    } else {
      if (afterFraction && isDigit(character)) plain += ' ';
      plain += SAME[character] ?? character;
    }
    afterDigit = isDigit(character);
    afterFraction = fraction !== undefined;
  }
  return plain.replaceAll("''", '"').replace(/\s+/g, ' ').trim();
}
