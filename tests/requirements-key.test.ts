/**
 * The answer keys of the guide specification texts are fit to judge a reader by: every requirement stands in the text
 * where the key says, with the number it gives. Texts, keys and their source: tests/data/requirements/NOTICE.
 */
import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { load } from 'js-yaml';
import { describe, expect, it } from 'vitest';
import { ROOT } from './support/review-folder.js';

/** One numeric requirement as the key's author read it; `line` counts from 1. */
interface KeyEntry {
  readonly paragraph: string;
  readonly line: number;
  readonly property: string;
  readonly compare: string;
  readonly value: string;
  readonly to?: string;
  readonly also?: string;
  readonly at?: string;
  readonly method?: string;
  readonly quote: string;
  readonly trap?: string;
}
interface Key {
  readonly section: string;
  readonly requirements: readonly KeyEntry[];
}

const FOLDER = path.join(ROOT, 'tests/data/requirements');
const TEXTS: Readonly<Record<string, string>> = {
  '07-27-10-excerpt': '.txt',
  '07-27-26': '.txt',
  'own-eighth': '.md',
  'own-fifth': '.txt',
  'own-fourth': '.txt',
  'own-lettered': '.txt',
  'own-seventh': '.txt',
  'own-sixth': '.md',
  'own-tables': '.md',
  'own-third': '.md',
};
const NAMES = Object.keys(TEXTS);
const COMPARES = ['atLeast', 'atMost', 'between', 'equals', 'unclear'];
const NEEDED = ['paragraph', 'line', 'property', 'compare', 'value', 'quote'];
const ALLOWED = [...NEEDED, 'to', 'also', 'at', 'method', 'trap'];
const BLANK = '[_____]';
const WORDS: Readonly<Record<string, number>> = {
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  ten: 10,
  twenty: 20,
};

/**
 * Numbers of a text in order: fractions, mixed numbers, decimals, slopes such as 1:12, small number words, `minus` as
 * the sign. Not those of E2178, m2.
 */
function numbersIn(text: string): number[] {
  const plain = text
    .replace(/\u2212/g, '-')
    .replace(/(\d),(?=\d{3})/g, '$1')
    .replace(/plus (?:or|and) minus /g, '');
  const found = plain.matchAll(
    /(minus |(?<![\w\])])-)?(?<![\w.])(\d+:\d+|\d+-\d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?|one|two|three|four|five|six|seven|eight|ten|twenty)(?!\w)/gi,
  );
  return [...found].map(([, sign, number = '']) => {
    const size = WORDS[number.toLowerCase()] ?? sizeOf(number);
    return sign === undefined ? size : -size;
  });
}

function sizeOf(number: string): number {
  const [top = NaN, bottom] = (/\d+(?:[/:]\d+|\.\d+)?$/.exec(number)?.[0] ?? '').split(/[/:]/).map(Number);
  const whole = /^(\d+)-/.exec(number)?.[1];
  return Number(whole ?? 0) + (bottom === undefined ? top : top / bottom);
}

/** The nearest title at or above a line: a number such as 2.1.1, or the title in capitals where none is numbered. */
function titleAbove(lines: readonly string[], line: number, numbered: boolean): string | undefined {
  const titles = lines
    .slice(0, line)
    .map((text) =>
      numbered ? /^(?:### )?(\d+(?:\.\d+)+) {1,3}[A-Z]/.exec(text)?.[1] : /^\[?([A-Z][A-Z ]+)$/.exec(text)?.[1],
    );
  return titles.findLast((title) => title !== undefined);
}

/** The marks from the article down to a line: `A`, or `B`, `2` and `a`. A line without one belongs to the mark above. */
function marksAbove(lines: readonly string[], line: number): string[] {
  const from = lines.slice(0, line).findLastIndex((text) => /^(?:### )?\d+\.\d/.test(text));
  const marks: string[] = [];
  for (const text of lines.slice(from + 1, line)) {
    // A bracket of an optional paragraph may stand before its letter.
    const [, letter, number] = /^[\][ ]*(?:([A-Za-z])|(\d))\. /.exec(text) ?? [];
    // Under a number a small letter is a third step; elsewhere it is the first, as guide sections have it.
    const step = /[a-z]/.test(letter ?? '') && marks.length >= 2 ? 2 : 0;
    if (letter !== undefined) marks.splice(step, 3, letter);
    if (number !== undefined) marks.splice(1, 2, number);
  }
  return marks;
}

it('every text has a key and every key a text', () => {
  const files = readdirSync(FOLDER).filter((file) => file !== 'NOTICE');
  expect(files.sort()).toEqual(NAMES.flatMap((name) => [`${name}${TEXTS[name]}`, `${name}.key.yaml`]).sort());
});

describe.each(NAMES)('the key of %s', (name) => {
  const lines = readFileSync(path.join(FOLDER, `${name}${TEXTS[name]}`), 'utf8').split('\n');
  const source = readFileSync(path.join(FOLDER, `${name}.key.yaml`), 'utf8');
  const key = load(source) as Key;
  const entries = key.requirements;
  const numbered = lines.some((line) => /^(?:### )?\d+\.\d+ {1,3}[A-Z]/.test(line));

  it('is of the section of the text', () => {
    expect(lines.map((line) => line.replace(/^# | - .*$/g, ''))).toContain(`SECTION ${key.section}`);
  });

  it('has the counts that its head says', () => {
    const said = (what: string): number => Number(new RegExp(`^# ${what}: (\\d+)$`, 'm').exec(source)?.[1]);
    expect(entries.length).toBe(said('Requirements'));
    expect(entries.filter((entry) => entry.trap !== undefined).length).toBe(said('Traps'));
  });

  it('says no requirement twice, and goes down the text', () => {
    const same = entries.map((entry) => `${entry.line} ${entry.property} ${entry.value}`);
    expect(new Set(same).size).toBe(same.length);
    // On one line two requirements may share their words, but then not their value.
    const words = entries.map((entry) => `${entry.line} ${entry.quote} ${entry.value}`);
    expect(new Set(words).size).toBe(words.length);
    expect(entries.map((entry) => entry.line)).toEqual(entries.map((entry) => entry.line).sort((a, b) => a - b));
  });

  describe.each(entries)('$paragraph, line $line: $property $value', (entry) => {
    it('has the fields of a requirement, each with something in it', () => {
      const fields = Object.keys(entry);
      expect(fields.filter((field) => !ALLOWED.includes(field))).toEqual([]);
      expect(NEEDED.filter((field) => !fields.includes(field))).toEqual([]);
      expect(Object.entries(entry).filter(([field, value]) => field !== 'line' && !/\S/.test(String(value)))).toEqual(
        [],
      );
      expect(Object.entries(entry).filter(([field, value]) => field !== 'line' && typeof value !== 'string')).toEqual(
        [],
      );
    });

    it('compares in a known way, with a second end only for between and a trap where unclear', () => {
      expect(COMPARES).toContain(entry.compare);
      expect(entry.to !== undefined).toBe(entry.compare === 'between');
      if (entry.compare === 'unclear') expect(entry.trap).toBeDefined();
    });

    it('quotes the line it names', () => {
      expect(lines[entry.line - 1]).toContain(entry.quote);
    });

    it('gives numbers that stand in its quote, blanks as blanks', () => {
      for (const value of [entry.value, entry.to, entry.also].filter((v) => v !== undefined)) {
        const numbers = numbersIn(value);
        if (value.includes(BLANK)) {
          expect(entry.quote).toContain(BLANK);
          expect(numbers).toEqual([]);
        } else {
          expect(numbers.length).toBe(1);
          expect(numbersIn(entry.quote)).toContain(numbers[0]);
        }
      }
    });

    it('names the methods and conditions that stand there', () => {
      for (const method of entry.method?.split(', ') ?? []) expect(lines[entry.line - 1]).toContain(method);
      // The test pressure of the leakage table stands once, above it.
      const above = lines.slice(0, entry.line).join('\n');
      for (const condition of entry.at?.split(/[;,] /) ?? []) expect(above).toContain(condition);
    });

    it('stands under the paragraph it names', () => {
      const title = titleAbove(lines, entry.line, numbered);
      expect(entry.paragraph).toBe([title, ...(numbered ? marksAbove(lines, entry.line) : [])].join('.'));
    });
  });
});
