/**
 * One term of a quantity: a number with its unit, feet with inches, hours with minutes, `R-13`, or a slope as rise
 * and run. A range is two terms; parse.ts puts them together.
 */
import { readNumber, startsNumber } from './numbers.js';
import { noUnit, problem, unfitUnit } from './problems.js';
import { findUnit } from './spelling.js';
import type { Dimension, QuantityProblem } from './types.js';
import { toBase, unitsOf } from './units.js';
import type { Unit } from './units.js';

/** What is being read: the text in plain characters, and as the author wrote it (for messages). */
export interface Source {
  readonly plain: string;
  readonly text: string;
  readonly dimension: Dimension;
}

export interface Term {
  /** The number as written, sign included. */
  readonly x: number;
  /** Absent for a bare number: in a range the unit may stand after the second number only. */
  readonly unit?: Unit;
  /** In the base unit, when the term is more than one number with one unit. */
  readonly base?: number;
  /** The unit stands before the number (`R-13`), so the second number of a range may leave it out. */
  readonly prefixed?: true;
  /** Index after the term. */
  readonly end: number;
}

const SIGNED: ReadonlySet<Dimension> = new Set(['temperature', 'slope']);

/** A second number after the first: feet take inches below 12, as many as make a foot; and so on. */
const PARTS: Readonly<Record<string, { readonly unit: string; readonly below: number; readonly hyphen: boolean }>> = {
  ft: { unit: 'in', below: 12, hyphen: true },
  wk: { unit: 'd', below: 7, hyphen: false },
  d: { unit: 'h', below: 24, hyphen: false },
  h: { unit: 'min', below: 60, hyphen: false },
  min: { unit: 's', below: 60, hyphen: false },
};

function fault(source: Source, why: string): QuantityProblem {
  return problem('not a number', source.text, source.dimension, why);
}

/** `R-13`, `R13`, `R 13`, `RSI-2.3` at `at`: the unit and where the number starts. */
function resistancePrefix(plain: string, at: number): { spelling: string; number: number } | undefined {
  const letters = /^r(?:si)?/i.exec(plain.slice(at, at + 3))?.[0];
  if (letters === undefined) return undefined;
  let number = at + letters.length;
  if (plain[number] === '-' || plain[number] === ' ') number++;
  return startsNumber(plain, number) ? { spelling: letters.toUpperCase(), number } : undefined;
}

/** Whether a space, a hyphen or both, and then a further number, start at `at`: the unit before it ends here. */
function furtherNumber(plain: string, at: number): boolean {
  let i = at;
  if (plain[i] === ' ') i++;
  if (plain[i] === '-') i++;
  if (plain[i] === ' ') i++;
  if (i === at) return false;
  if (plain[i] === '-' || plain[i] === '+') i++;
  return startsNumber(plain, i) || resistancePrefix(plain, i) !== undefined;
}

/** Index after the unit that starts at `at`. */
function endOfUnit({ plain, dimension }: Source, at: number): number {
  for (let i = at; i < plain.length; i++) {
    const before = plain[i - 1];
    if ((before === "'" || before === '"') && i > at && startsNumber(plain, i)) return i;
    if (plain[i] === ':' && dimension === 'slope') return i;
    if (plain[i] !== ' ' && plain[i] !== '-') continue;
    if (furtherNumber(plain, i) || plain.startsWith(' to ', i) || plain.startsWith(' and ', i)) return i;
  }
  return plain.length;
}

/** A number and the text of its unit, not yet looked up. */
interface Written {
  readonly x: number;
  readonly written: string;
  readonly end: number;
}

function readWritten(source: Source, at: number): Written | QuantityProblem {
  const { plain, dimension, text } = source;
  const sign = plain[at] === '-' || plain[at] === '+' ? plain[at] : '';
  const start = at + sign.length;
  if (!startsNumber(plain, start)) return fault(source, 'no number stands where one is needed');
  if (sign === '-' && !SIGNED.has(dimension)) {
    return problem('out of range', text, dimension, 'the value cannot be negative; leave out the sign');
  }
  if (sign === '+' && !SIGNED.has(dimension)) return fault(source, 'a plus sign has no meaning here; leave it out');
  const number = readNumber(plain, start);
  if ('fault' in number) return fault(source, number.fault);
  const end = endOfUnit(source, number.end);
  return { x: sign === '-' ? -number.value : number.value, written: plain.slice(number.end, end).trim(), end };
}

/** Rise and run: `1:12`, `1 in 12`, `1/4 in per 12 in`; units on both or on neither. */
function readRun(source: Source, rise: Written, riseUnit: string, at: number): Term | QuantityProblem {
  const run = readWritten(source, source.plain[at] === ' ' ? at + 1 : at);
  if ('problem' in run) return run;
  if (!(run.x > 0)) return problem('out of range', source.text, 'slope', 'the run of a slope must be more than 0');
  if ((riseUnit === '') !== (run.written === '')) {
    return fault(source, 'rise and run need a unit each, or none; write 1:12 or 1/4 in per 12 in');
  }
  const unit = unitsOf('slope').find(({ spelling }) => spelling === 'rise:run');
  if (unit === undefined) throw new Error('The table of units has lost the unit rise:run.');
  if (riseUnit === '') return { x: rise.x, unit, base: rise.x / run.x, end: run.end };
  const over = findUnit(riseUnit, 'length');
  const under = findUnit(run.written, 'length');
  if (over === undefined) return unfitUnit(riseUnit, source.text, 'length');
  if (under === undefined) return unfitUnit(run.written, source.text, 'length');
  return { x: rise.x, unit, base: toBase(rise.x, over) / toBase(run.x, under), end: run.end };
}

/** Feet and inches, hours and minutes: the second number with the smaller unit, when one follows. */
function readPart(source: Source, first: Term, unit: Unit): Term | QuantityProblem {
  const part = PARTS[unit.spelling];
  if (part === undefined || source.dimension !== unit.dimension) return first;
  const { plain } = source;
  let at = first.end;
  if (plain[at] === ' ') at++;
  if (part.hyphen && plain[at] === '-') at++;
  if (part.hyphen && plain[at] === ' ') at++;
  if (!startsNumber(plain, at)) return first;
  const second = readWritten(source, at);
  if ('problem' in second) return second;
  const smaller = findUnit(second.written, source.dimension);
  if (smaller?.spelling !== part.unit) return first;
  if (second.x >= part.below || !Number.isInteger(first.x)) {
    const why = `after a whole number of ${unit.spelling} only less than ${part.below} ${part.unit} can follow; for a range write "to"`;
    return problem('out of range', source.text, source.dimension, why);
  }
  return { x: first.x, unit, base: toBase(first.x * part.below + second.x, smaller), end: second.end };
}

/**
 * Reads the term that starts at `at`.
 * @returns the term and the index after it, or the problem found
 */
export function readTerm(source: Source, at: number): Term | QuantityProblem {
  const { plain, dimension, text } = source;
  const prefix = dimension === 'thermalResistance' ? resistancePrefix(plain, at) : undefined;
  if (prefix !== undefined) {
    const number = readNumber(plain, prefix.number);
    if ('fault' in number) return fault(source, number.fault);
    const unit = findUnit(prefix.spelling, dimension);
    if (unit === undefined) return noUnit(text, dimension);
    return { x: number.value, unit, prefixed: true, end: number.end };
  }
  const read = readWritten(source, at);
  if ('problem' in read) return read;
  const { x, written, end } = read;
  if (dimension === 'slope') {
    if (plain[end] === ':') return readRun(source, read, written, end + 1);
    const lastWord = written.lastIndexOf(' ') + 1;
    const joint = written.slice(lastWord).toLowerCase();
    if (plain[end] === ' ' && startsNumber(plain, end + 1) && (joint === 'in' || joint === 'per')) {
      return readRun(source, read, written.slice(0, lastWord).trim(), end);
    }
  }
  if (written === '') return { x, end };
  const unit = findUnit(written, dimension);
  if (unit === undefined) return unfitUnit(written, text, dimension);
  return readPart(source, { x, unit, end }, unit);
}
