/**
 * Whether a metric value and a US value that stand side by side say the same: within what the printed figures leave
 * open, since sections print rounded twins (`75 mm 3 inch`, `5 deg C (40 deg F)`).
 */
import type { ReadNumber } from './numbers.js';
import type { ReadUnit } from './units.js';

/** A number with the reading of its unit that was chosen. */
export interface Measurement {
  readonly number: ReadNumber;
  readonly upper?: ReadNumber;
  readonly unit: ReadUnit;
}

export type Agreement =
  | { readonly agree: true }
  /** `lostSign`: they would agree if one or both had a minus sign. */
  | { readonly agree: false; readonly lostSign: boolean };

/** Rounded twins of whole sizes differ by this much at most: 3 mm and 1/8 in by 5.5 %, 4-3/4 mm and 3/16 in by less. */
const ROUNDED = 0.07;
/** A difference that no reader of a section would call one. */
const NEARLY = 0.02;
/** Temperatures are compared by their difference: 0 deg has no shares. */
const NEARLY_K = 0.6;

function close(a: number, b: number, one: Measurement, other: Measurement): boolean {
  const base = (x: number, { unit }: Measurement): number => unit.toBase(x);
  const valueA = base(a, one);
  const valueB = base(b, other);
  const width = (x: number, m: Measurement): number => Math.abs(base(x + m.number.halfStep, m) - base(x, m));
  const difference = Math.abs(valueA - valueB);
  const rounding = Math.max(width(a, one), width(b, other)) * (1 + 1e-9);
  if (one.unit.kind === 'temperature' || one.unit.kind === 'temperatureDifference')
    return difference <= Math.max(rounding, NEARLY_K);
  const relative = difference / Math.max(Math.abs(valueA), Math.abs(valueB), Number.MIN_VALUE);
  return relative <= NEARLY || (difference <= rounding && relative <= ROUNDED);
}

/** Compares two twins, both ends when they are ranges. */
export function agreement(one: Measurement, other: Measurement): Agreement {
  const ends = (m: Measurement): readonly number[] =>
    m.upper === undefined ? [m.number.value] : [m.number.value, m.upper.value];
  const [a, b] = [ends(one), ends(other)];
  const all = (signA: number, signB: number): boolean =>
    a.length === b.length && a.every((x, at) => close(signA * x, signB * (b[at] ?? NaN), one, other));
  if (all(1, 1)) return { agree: true };
  const lostSign = one.unit.kind === 'temperature' && (all(-1, 1) || all(1, -1) || all(-1, -1));
  return { agree: false, lostSign };
}
