/**
 * Vapor retarder classes.
 *
 * @see IRC 2021 Table R702.7(1): I up to 0.1 perm, II up to 1.0, III up to 10, by ASTM E96 procedure A (seen in
 * a public extract)
 */
import type { Quantity } from '../quantity/types.js';
import { findUnit } from '../quantity/spelling.js';
import { toBase, type Unit } from '../quantity/units.js';

/** `none`: more than 10 perm, outside the classes. */
export type VaporClass = 'I' | 'II' | 'III' | 'none';

const PERM = findUnit('perm', 'permeance') as Unit;
const R = findUnit('R', 'thermalResistance') as Unit;
const LIMITS_PERM = [
  ['I', 0.1],
  ['II', 1],
  ['III', 10],
] as const;

/** From US perm to ng/(Pa s m2). */
export function permToNg(perm: number): number {
  return toBase(perm, PERM);
}
/** From the US R-value to m2 K/W. */
export function usRToSi(r: number): number {
  return toBase(r, R);
}

/** Class of a dry-cup permeance in ng/(Pa s m2). A limit belongs to the tighter class. */
export function classOfPermeance(ngPerPaSM2: number): VaporClass {
  for (const [name, perm] of LIMITS_PERM) if (ngPerPaSM2 <= permToNg(perm) * (1 + 1e-9)) return name;
  return 'none';
}

/**
 * Class of a permeance as declared. `0.5 perm max.` and `5 perm min.` count as the value they name.
 *
 * @returns `undefined` when a range lies across a limit between classes
 */
export function classOfQuantity(quantity: Pick<Quantity, 'value' | 'upper' | 'bound'>): VaporClass | undefined {
  const least = classOfPermeance(quantity.value);
  if (quantity.bound !== 'between' || quantity.upper === undefined) return least;
  return classOfPermeance(quantity.upper) === least ? least : undefined;
}

const TIGHTNESS: Readonly<Record<VaporClass, number>> = { I: 0, II: 1, III: 2, none: 3 };

/** True when `a` lets less vapor through than `b`. */
export function tighter(a: VaporClass, b: VaporClass): boolean {
  return TIGHTNESS[a] < TIGHTNESS[b];
}
