/**
 * Compares what the reader of sections finds with an answer key made by hand. A found requirement matches an entry
 * when its line (within two), its comparison and its value (within 1 %, in either system) agree. An entry with a trap
 * counts as found when a question is asked there.
 */
import { covered } from '../../src/specification/masks.js';
import { quantitiesIn } from '../../src/specification/quantities.js';
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
  readonly proposed: number;
  readonly right: number;
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
        return values.some((value) => endsOf(value.text).some((end) => near(end.low, key.low, undefined)));
      if (base === undefined) return false;
      return (
        values.some(
          (value) =>
            value.kind === key.kind &&
            value.base !== undefined &&
            near(value.base, key.low, key.kind) &&
            (value.upperBase === undefined
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
    values.some(
      ({ text }) => text.toLowerCase().includes(words) || (/[a-z]/.test(words) && words.includes(text.toLowerCase())),
    )
  );
}

/** Scores the reading of a text. */
export function scoreSection(source: string, entries: readonly KeyEntry[]): Score {
  const reading = readSection(source);
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
  const asked = (entry: KeyEntry): Question | undefined =>
    reading.questions.find(
      (question) =>
        isNear(entry, question.span.start) &&
        (question.number === undefined || entry.paragraph === undefined || question.number === entry.paragraph) &&
        (question.values.length === 0 || entry.value === undefined || agrees(entry, question.values)),
    );
  for (const entry of entries) {
    const same = proposals.find(
      (one) =>
        !used.has(one) &&
        one.compare === entry.compare &&
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
  const extras = proposals
    .filter((one) => !used.has(one))
    .map(
      (one) =>
        `${lineOf(one.span.start)} ${one.number ?? '-'} ${one.property ?? one.characteristic ?? ''} ${one.compare ?? ''} ${one.value?.text ?? ''}`,
    );
  return {
    entries: entries.length,
    found,
    traps,
    trapsFound,
    proposed: proposals.length,
    right: proposals.length - extras.length,
    misses,
    extras,
  };
}

function describe({ line, paragraph, property, compare, value, to, quote }: KeyEntry): string {
  return `${line} ${paragraph ?? '-'} ${property ?? ''} ${compare} ${value ?? ''}${to === undefined ? '' : ` to ${to}`} "${quote ?? ''}"`;
}
