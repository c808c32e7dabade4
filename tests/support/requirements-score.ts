/**
 * Compares what the reader of sections finds with an answer key made by hand. A found requirement matches an entry
 * when its line (within two), its comparison and its value (within 1 %, in either system) agree. An entry with a trap
 * counts as found only when a question names that value, or is about the bracket that the value stands in.
 *
 * The keys hold numeric requirements, so precision counts the proposals that hold a number. Results in words (`Pass`)
 * are counted apart.
 */
import { readFileSync, existsSync } from 'node:fs';
import path from 'node:path';
import { parse } from 'yaml';
import { markdownProse } from '../../src/reading/markdown-prose.js';
import { covered } from '../../src/specification/masks.js';
import { quantitiesIn } from '../../src/specification/quantities.js';
import type { OutlineOptions } from '../../src/specification/outline.js';
import { readSection } from '../../src/specification/read.js';
import type { Proposal, Question, ReadValue } from '../../src/specification/types.js';

export interface KeyEntry {
  readonly paragraph?: string;
  readonly line: number;
  readonly property?: string;
  readonly compare: string;
  readonly value?: string | number;
  readonly to?: string | number;
  readonly also?: string;
  readonly method?: string;
  readonly quote?: string;
  readonly trap?: string;
}

export interface Score {
  readonly entries: number;
  readonly found: number;
  readonly traps: number;
  readonly trapsFound: number;
  /** Proposals that hold a number, and those of them that are in the key. */
  readonly proposed: number;
  readonly right: number;
  /** Proposals of a result in words. */
  readonly inWords: number;
  /** Numbers that were read as no requirement, and are listed as such. */
  readonly passedOver: number;
  readonly misses: readonly string[];
  readonly extras: readonly string[];
}

interface Ends {
  readonly kind: string | undefined;
  readonly low: number;
  readonly high: number;
}

const LINES = 2;
const SHARE = 0.01;
/** Half of the least step that temperatures are printed in. */
const KELVIN = 0.6;

function near(a: number, b: number, kind: string | undefined): boolean {
  if (kind === 'temperature') return Math.abs(a - b) <= KELVIN;
  return Math.abs(a - b) <= SHARE * Math.max(Math.abs(a), Math.abs(b));
}

/** The values a text of the key can mean, one for each reading of each unit. */
function endsOf(text: string): Ends[] {
  return quantitiesIn(covered(text)).flatMap((found): Ends[] => {
    const high = found.upper?.value ?? found.number.value;
    if (found.units.length === 0) return [{ kind: undefined, low: found.number.value, high }];
    return found.units.map((unit) => ({
      kind: unit.kind,
      low: unit.toBase(found.number.value),
      high: unit.toBase(high),
    }));
  });
}

function keyEnds(entry: KeyEntry): readonly Ends[] {
  const { value, to, also } = entry;
  const range =
    to === undefined ? String(value ?? '') : `${String(value).replace(/^([\d./-]+)\s.*$/, '$1')} to ${String(to)}`;
  const readings = endsOf(range);
  // "40 degF" to "100 degF" is read as one range; a value that cannot be is read end by end.
  return [...readings, ...(also === undefined ? [] : endsOf(also))];
}

function agrees(entry: KeyEntry, values: readonly ReadValue[]): boolean {
  const keys = keyEnds(entry);
  const numeric = values.some(({ base, text }) =>
    keys.some((key) => {
      if (key.kind === undefined)
        return values.some(
          (value) =>
            (value.kind === undefined || value.kind === 'count') &&
            endsOf(value.text).some((end) => near(end.low, key.low, undefined)),
        );
      if (base === undefined) return false;
      return (
        values.some(
          (value) =>
            value.kind === key.kind &&
            value.base !== undefined &&
            near(value.nominalBase ?? value.base, key.low, key.kind) &&
            (value.upperBase === undefined || value.nominalBase !== undefined
              ? key.high === key.low || entry.to === undefined
              : near(value.upperBase, key.high, key.kind)),
        ) && text !== ''
      );
    }),
  );
  if (numeric) return true;
  const words = String(entry.value ?? '')
    .toLowerCase()
    .trim();
  return (
    words !== '' &&
    !/\d/.test(words) &&
    values.some(
      ({ text }) => text.toLowerCase().includes(words) || (/[a-z]/.test(words) && words.includes(text.toLowerCase())),
    )
  );
}

/** The place of an entry's quote in its line; the whole line when the quote is not there. */
function placeOf(source: string, { line, quote }: KeyEntry): { readonly start: number; readonly end: number } {
  const lines = source.split('\n');
  const from = lines.slice(0, line - 1).reduce((sum, one) => sum + one.length + 1, 0);
  const text = lines[line - 1] ?? '';
  const at = quote === undefined ? -1 : text.indexOf(quote);
  return at === -1
    ? { start: from, end: from + text.length }
    : { start: from + at, end: from + at + (quote ?? '').length };
}

/** Scores the reading of a text, of Markdown when its headings are given; entries and lines count in `source`. */
export function scoreSection(
  source: string,
  entries: readonly KeyEntry[],
  prose = source,
  options: OutlineOptions = {},
): Score {
  const reading = readSection(prose, options);
  const lineOf = (offset: number): number => source.slice(0, offset).split('\n').length;
  const isNear = (entry: KeyEntry, offset: number): boolean => Math.abs(lineOf(offset) - entry.line) <= LINES;
  const valuesOf = ({ value, also, conditions }: Proposal): ReadValue[] => [
    ...(value === undefined ? [] : [value]),
    ...(also === undefined ? [] : [also]),
    // "Pass at minus 26 degrees": the temperature is what the words are measured at.
    ...(value?.base === undefined ? conditions : []),
  ];
  const proposals = reading.proposals.filter(({ compare }) => compare !== undefined);
  const used = new Set<Proposal>();
  const misses: string[] = [];
  let found = 0;
  let traps = 0;
  let trapsFound = 0;
  /** A question that names the value, or the bracket around it. One that only stands nearby is not meant. */
  const asked = (entry: KeyEntry): Question | undefined =>
    reading.questions.find((question) => {
      if (question.values.length > 0) return isNear(entry, question.span.start) && agrees(entry, question.values);
      const { start, end } = placeOf(source, entry);
      return question.kind === 'choice left open' && question.span.start < end && question.span.end > start;
    });
  // A proposal on a trap is set aside, so the others take theirs first.
  const inOrder = [...entries].sort((a, b) => Number(a.trap !== undefined) - Number(b.trap !== undefined));
  for (const entry of inOrder) {
    const same = proposals.find(
      (one) =>
        !used.has(one) &&
        (one.compare === entry.compare || isNominal(entry, one)) &&
        isNear(entry, one.span.start) &&
        agrees(entry, valuesOf(one)),
    );
    if (entry.trap !== undefined) {
      traps++;
      // A proposal on a trap is neither right nor an extra; what counts is that the question was asked.
      const proposed = proposals.find((one) => isNear(entry, one.span.start) && agrees(entry, valuesOf(one)));
      if (proposed !== undefined) used.add(proposed);
      if (asked(entry) !== undefined) {
        trapsFound++;
        found++;
      } else misses.push(`${describe(entry)} (trap: ${entry.trap})`);
      continue;
    }
    if (same !== undefined) used.add(same);
    const isUnclear =
      entry.compare === 'unclear' &&
      reading.questions.some((question) => isNear(entry, question.span.start) && agrees(entry, question.values));
    if (same !== undefined || isUnclear) found++;
    else {
      const other = proposals.find(
        (one) => !used.has(one) && isNear(entry, one.span.start) && agrees(entry, valuesOf(one)),
      );
      const question = reading.questions.find((one) => isNear(entry, one.span.start) && agrees(entry, one.values));
      const instead = other?.compare ?? question?.kind;
      misses.push(`${describe(entry)}${instead === undefined ? '' : ` (read as: ${instead})`}`);
    }
  }
  const numeric = proposals.filter((one) => !isInWords(one));
  const extras = proposals
    .filter((one) => !used.has(one) && !isInWords(one))
    .map(
      (one) =>
        `${lineOf(one.span.start)} ${one.number ?? '-'} ${one.property ?? one.characteristic ?? ''} ${one.compare ?? ''} ${one.value?.text ?? ''}`,
    );
  return {
    entries: entries.length,
    found,
    traps,
    trapsFound,
    proposed: numeric.length,
    right: numeric.length - extras.length,
    inWords: proposals.length - numeric.length,
    passedOver: reading.passedOver.length,
    misses,
    extras,
  };
}

const isInWords = ({ value }: Proposal): boolean => value?.base === undefined && !/^[-\d]/.test(value?.text ?? '');

/** `3/8 inch, plus or minus 1/8 inch` is the range it allows to the reader, and 3/8 inch to the key. */
function isNominal({ compare }: KeyEntry, { compare: read, value }: Proposal): boolean {
  return compare === 'equals' && read === 'between' && value?.nominalBase !== undefined;
}

/** Scores a section of a folder: `<name>.txt` or `<name>.md`, with `<name>.key.yaml`. */
export function scoreFile(folder: string, name: string): Score {
  const { requirements } = parse(readFileSync(path.join(folder, `${name}.key.yaml`), 'utf8')) as {
    readonly requirements: readonly KeyEntry[];
  };
  const plain = path.join(folder, `${name}.txt`);
  if (existsSync(plain)) return scoreSection(readFileSync(plain, 'utf8'), requirements);
  const source = readFileSync(path.join(folder, `${name}.md`), 'utf8');
  const { text, headings } = markdownProse(source);
  return scoreSection(source, requirements, text, { headings });
}

function describe({ line, paragraph, property, compare, value, to, quote }: KeyEntry): string {
  return `${line} ${paragraph ?? '-'} ${property ?? ''} ${compare} ${value ?? ''}${to === undefined ? '' : ` to ${to}`} "${quote ?? ''}"`;
}
