/**
 * How much of one piece of work a later one hides: plain areas of rectangles, on the wall face and inside the
 * opening.
 */
import type { Side } from './types.js';

/** Covers [u0, u1] x [v0, v1], mm; the same shape as a rectangle of the wall face. */
export interface Patch {
  readonly u0: number;
  readonly v0: number;
  readonly u1: number;
  readonly v1: number;
}

/** Where a piece lies: rectangles that do not overlap one another. */
export interface Lying {
  readonly face: readonly Patch[];
  readonly returns: Partial<Record<Side, readonly Patch[]>>;
}

const area = (p: Patch): number => Math.max(0, p.u1 - p.u0) * Math.max(0, p.v1 - p.v0);

function common(a: readonly Patch[], b: readonly Patch[]): number {
  let sum = 0;
  for (const p of a) {
    for (const q of b)
      sum += area({
        u0: Math.max(p.u0, q.u0),
        v0: Math.max(p.v0, q.v0),
        u1: Math.min(p.u1, q.u1),
        v1: Math.min(p.v1, q.v1),
      });
  }
  return sum;
}

const SIDES_OF = (lying: Lying): Side[] => Object.keys(lying.returns) as Side[];
const total = (patches: readonly Patch[]): number => patches.reduce((sum, p) => sum + area(p), 0);

/**
 * Shares of a piece that another one covers, 0 to 1, on the wall face and inside the opening.
 *
 * A part on which the piece does not lie at all has the share 0.
 */
export function hiddenShare(piece: Lying, by: Lying): { readonly face: number; readonly inside: number } {
  const share = (covered: number, whole: number): number => (whole === 0 ? 0 : Math.min(1, covered / whole));
  const sides = SIDES_OF(piece);
  const inside = sides.reduce((sum, side) => sum + total(piece.returns[side] ?? []), 0);
  const covered = sides.reduce((sum, side) => sum + common(piece.returns[side] ?? [], by.returns[side] ?? []), 0);
  return { face: share(common(piece.face, by.face), total(piece.face)), inside: share(covered, inside) };
}

const touches = (a: readonly Patch[], b: readonly Patch[]): boolean =>
  a.some((p) => b.some((q) => p.u0 < q.u1 && q.u0 < p.u1 && p.v0 < q.v1 && q.v0 < p.v1 && area(p) > 0 && area(q) > 0));

/** True when two pieces lie on each other somewhere. */
export function meets(a: Lying, b: Lying): boolean {
  return touches(a.face, b.face) || SIDES_OF(a).some((side) => touches(a.returns[side] ?? [], b.returns[side] ?? []));
}

/** True when a piece lies on the sill, jambs or head inside the opening, where a unit will hide it. */
export function liesInside(piece: Lying): boolean {
  return SIDES_OF(piece).some((side) => total(piece.returns[side] ?? []) > 0);
}
