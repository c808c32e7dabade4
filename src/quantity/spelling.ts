/**
 * From the way a unit is written to the unit meant: capitals, dots, powers, plurals and the order of factors do
 * not matter, so that `ng/(Pa·s·m²)`, `ng/Pa.s.m2` and `NG/(m2 s Pa)` are one unit.
 */
import type { Dimension } from './types.js';
import { DIMENSIONS, unitsOf } from './units.js';
import type { Unit } from './units.js';

const WORDS = new Map<string, string>(
  Object.entries({
    in: 'inch inches',
    ft: 'foot feet',
    yd: 'yds yard yards',
    mm: 'millimeter millimeters millimetre millimetres',
    cm: 'centimeter centimeters centimetre centimetres',
    m: 'meter meters metre metres',
    mil: 'mils',
    um: 'micron microns micrometer micrometers micrometre micrometres',
    ft2: 'sf sqft',
    in2: 'sqin',
    m2: 'sqm',
    ft3: 'cf cuft',
    m3: 'cum',
    perm: 'perms',
    '%': 'percent pct',
    deg: 'degree degrees',
    degf: 'f fahrenheit',
    degc: 'c celsius',
    s: 'sec secs second seconds',
    min: 'mins minute minutes',
    h: 'hr hrs hour hours',
    d: 'day days',
    wk: 'wks week weeks',
    month: 'months mo',
    gal: 'gals gallon gallons',
    qt: 'qts quart quarts',
    l: 'liter liters litre litres',
    ml: 'milliliter milliliters millilitre millilitres',
    fl: 'fluid',
    oz: 'ounce ounces',
    w: 'watt',
  }).flatMap(([word, others]) => others.split(' ').map((other): [string, string] => [other, word])),
);

const CHARACTERS: Readonly<Record<string, string>> = {
  '²': '2',
  '³': '3',
  '^': '',
  µ: 'u',
  μ: 'u',
  '°': ' deg',
  '℃': ' degc',
  '℉': ' degf',
  '.': ' ',
  '·': ' ',
  '⋅': ' ',
  '∙': ' ',
  '*': ' ',
  '×': ' ',
  '-': ' ',
  '"': ' in ',
  "'": ' ft ',
};

/** First and last character of anything that can be a unit; keeps stray punctuation from being read as one. */
const STARTS = /^[\p{L}%°℃℉"'(]/u;
const ENDS = /[\p{L}\d%°℃℉"')².³]$/u;

const SQUARES = new Map([
  ['sq', '2'],
  ['square', '2'],
  ['cu', '3'],
  ['cubic', '3'],
]);

/** Words of one side of the stroke, merged (`sq ft` -> `ft2`, `deg F` -> `degf`) and put in one order. */
function factors(side: string): string {
  const found = side.split(' ').filter((word) => word !== '');
  const words: string[] = [];
  for (let i = 0; i < found.length; i++) {
    const word = WORDS.get(found[i] ?? '') ?? found[i] ?? '';
    const next = WORDS.get(found[i + 1] ?? '') ?? found[i + 1];
    const power = SQUARES.get(word);
    if (power !== undefined && next !== undefined) words.push(WORDS.get(next + power) ?? next + power);
    else if (word === 'deg' && (next === 'degf' || next === 'degc')) words.push(next);
    else {
      words.push(word);
      continue;
    }
    i++;
  }
  return words.sort().join(' ');
}

/** Whether every parenthesis is closed, in order. */
function balanced(text: string): boolean {
  let open = 0;
  for (const character of text) {
    if (character === '(') open++;
    else if (character === ')' && --open < 0) return false;
  }
  return open === 0;
}

/** One key for all the spellings of a unit; the empty string when the text cannot be a unit. */
function keyOf(written: string): string {
  if (!STARTS.test(written) || !ENDS.test(written)) return '';
  let text = '';
  for (const character of written) text += CHARACTERS[character] ?? character.toLowerCase();
  if (text.includes('(')) {
    // Parentheses only group factors over or under a stroke; anywhere else they are not part of a unit.
    if (!text.includes('/') || !balanced(text)) return '';
    text = text.replaceAll('(', ' ').replaceAll(')', ' ');
  }
  const [over = '', ...under] = text
    .replaceAll(' per ', '/')
    .split('/')
    .map((side) => side.trim());
  if (over === '' || under.includes('')) return '';
  return under.length === 0 ? factors(over) : `${factors(over)}/${factors(under.join(' '))}`;
}

const BY_KEY = new Map<Dimension, ReadonlyMap<string, Unit>>(
  DIMENSIONS.map((dimension) => [
    dimension,
    new Map(
      unitsOf(dimension).flatMap((unit) =>
        [unit.spelling, ...unit.aliases].map((spelling): [string, Unit] => [keyOf(spelling), unit]),
      ),
    ),
  ]),
);

/** The unit of `dimension` that `written` spells, or nothing. */
export function findUnit(written: string, dimension: Dimension): Unit | undefined {
  const units = BY_KEY.get(dimension);
  return units?.get(written) ?? units?.get(keyOf(written));
}

/** Every dimension in which `written` is a unit. */
export function dimensionsWith(written: string): readonly Dimension[] {
  return DIMENSIONS.filter((dimension) => findUnit(written, dimension) !== undefined);
}

/** Edit distance (insert, delete, replace, each 1). Both texts are short: a quantity has at most 60 characters. */
function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const replace = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(replace, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}

/**
 * The unit of `dimension` that `written` most resembles: at most one edit for spellings up to three characters, two
 * for longer ones, and never as many edits as the spelling has characters.
 */
export function nearestUnit(written: string, dimension: Dimension): Unit | undefined {
  const found = written.toLowerCase();
  let best: Unit | undefined;
  let bestDistance = 3;
  for (const unit of unitsOf(dimension)) {
    const words = [...WORDS].filter(([, word]) => word === unit.spelling.toLowerCase()).map(([other]) => other);
    for (const spelling of [unit.spelling, ...unit.aliases, ...words]) {
      // Each missing or extra character is an edit, so much longer texts need no comparison.
      if (Math.abs(spelling.length - found.length) > 2) continue;
      const shorter = Math.min(spelling.length, found.length);
      const distance = editDistance(found, spelling.toLowerCase());
      if (distance < bestDistance && distance < shorter && distance <= (shorter <= 3 ? 1 : 2)) {
        best = unit;
        bestDistance = distance;
      }
    }
  }
  return best;
}
