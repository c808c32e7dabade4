/** Half of the last digit that a text prints. */
import { findUnit } from './spelling.js';
import { toBase } from './units.js';
import type { Quantity } from './types.js';

/**
 * Half of the last digit printed, in the base unit.
 *
 * @param quantity its text in one unit
 * @returns `undefined` for fractions, which are meant exactly, and for angles
 */
export function halfStepOf({
  text,
  unit,
  dimension,
}: Pick<Quantity, 'text' | 'unit' | 'dimension'>): number | undefined {
  if (/\d ?\/ ?\d/.test(text)) return undefined;
  const found = findUnit(unit, dimension);
  const decimals = Math.max(0, ...[...text.matchAll(/\.(\d+)/g)].map((m) => (m[1] as string).length));
  const half = 0.5 * 10 ** -decimals;
  if (found === undefined || found.tangent) return undefined;
  // A bare share (0.55) is not a number of percent.
  if (dimension === 'fraction' && !/%|percent/i.test(text)) return half;
  return Math.abs(toBase(half, found) - toBase(0, found));
}
