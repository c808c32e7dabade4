/**
 * What a quantity is, whoever wrote it and in whichever unit system.
 *
 * Inside Lapwright every number is in the base unit of its dimension; the author's own text travels with
 * it so that a report speaks the units of the drawing.
 */

/** Base unit of each dimension, as used in every field name inside (`widthMm`, `pressurePa`). */
export const BASE_UNITS = {
  length: 'mm',
  area: 'm2',
  film: 'um',
  slope: 'ratio', // rise over run
  permeance: 'ng/(Pa s m2)',
  permeability: 'ng/(Pa s m)',
  thermalResistance: 'm2 K/W',
  pressure: 'Pa',
  temperature: 'degC',
  temperatureDifference: 'K',
  time: 's',
  volume: 'L',
  movement: 'ratio', // share of the joint width, 0.25 for class 25
  airLeakage: 'L/(s m2)', // at the pressure the test states
  fraction: 'ratio', // volume solids, loss, compression: 55 % is 0.55
  coverage: 'm2/L',
} as const;

export type Dimension = keyof typeof BASE_UNITS;

/** How the author bounded the value: `4 in`, `>= 4 in` / `minimum 4 in`, `<= 4 in` / `4 in max.`, `12-15 mil`. */
export type Bound = 'exactly' | 'at least' | 'at most' | 'between';

export interface Quantity {
  readonly dimension: Dimension;
  /** As the author wrote it, trimmed, each run of white space as one space (so it stays on one line). */
  readonly text: string;
  /** In the base unit. For `between`, the lower end. */
  readonly value: number;
  /** In the base unit; only for `between`. */
  readonly upper?: number;
  /**
   * Only for a movement written with two sides (`+100/-50 %`, `class 100/50`), as shares of the joint width.
   * `value` then holds the smaller of the two, so a rule that reads `value` alone errs on the safe side.
   */
  readonly sides?: { readonly extension: number; readonly compression: number };
  readonly bound: Bound;
  /** Canonical spelling of the unit the author used (`in`, `mil`, `perm`, `mm`). */
  readonly unit: string;
  readonly system: 'US' | 'SI' | 'either';
}

export interface QuantityProblem {
  readonly problem:
    'no unit' | 'unknown unit' | 'wrong dimension' | 'not a number' | 'out of range' | 'empty range' | 'two values'; // in two units, and they do not agree
  /** One sentence: what was found, what is expected and what to do. */
  readonly message: string;
  /** Units that fit this dimension, commonest first. */
  readonly units: readonly string[];
  /** The nearest unit when the one found looks misspelled. */
  readonly nearest?: string;
}
