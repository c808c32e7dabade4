/** How long the line is along which two pieces meet. Plain arithmetic on rectangles, millimeters. */
import { joinsByTouch } from './side-line.js';
import { bounding, intersection } from '../geometry/rect.js';
import { SIDES } from '../model/types.js';
import type { Piece, Rect } from '../geometry/types.js';

const covers = (rects: readonly Rect[], u: number, v: number): boolean =>
  rects.some((r) => r.u0 < u && u < r.u1 && r.v0 < v && v < r.v1);

/** Ascending cut positions of rectangles along one axis, with the middle of each step between them. */
function steps(values: readonly number[]): { readonly mid: number; readonly size: number }[] {
  const cuts = [...new Set(values)].sort((a, b) => a - b);
  return cuts.slice(1).map((high, k) => ({ mid: (high + (cuts[k] as number)) / 2, size: high - (cuts[k] as number) }));
}

/**
 * Length of the line along which the edge of one set of rectangles lies on the other: the shorter of the two ways, which
 * leaves out the ends of a strip. Where they do not overlap and `touching` counts, the line along which they touch.
 *
 * @returns mm; 0 when they do not meet
 */
export function lapLineMm(a: readonly Rect[], b: readonly Rect[], touching: boolean): number {
  const [boxA, boxB] = [bounding(a), bounding(b)];
  if (boxA === undefined || boxB === undefined) return 0;
  // Only what lies near both can matter; a hand's breadth keeps the edge itself inside.
  const near = (box: Rect): Rect => ({ u0: box.u0 - 1, v0: box.v0 - 1, u1: box.u1 + 1, v1: box.v1 + 1 });
  const clip = (rects: readonly Rect[], box: Rect): Rect[] => rects.flatMap((r) => intersection(r, near(box)) ?? []);
  const [own, other] = [clip(a, boxB), clip(b, boxA)];
  if (own.length === 0 || other.length === 0) return 0;
  const us = steps([...own, ...other].flatMap((r) => [r.u0, r.u1]));
  const vs = steps([...own, ...other].flatMap((r) => [r.v0, r.v1]));
  const state = vs.map(({ mid: v }) =>
    us.map(({ mid: u }) => (covers(own, u, v) ? 1 : 0) + (covers(other, u, v) ? 2 : 0)),
  );
  let [edgeOfA, edgeOfB, touch, overlaps] = [0, 0, 0, false];
  const pass = (x: number, y: number, length: number): void => {
    for (const [p, q] of [
      [x, y],
      [y, x],
    ]) {
      if (p === 3 && q === 2) edgeOfA += length;
      if (p === 3 && q === 1) edgeOfB += length;
      if (p === 1 && q === 2) touch += length;
    }
  };
  state.forEach((row, j) => {
    row.forEach((here, i) => {
      if (here === 3) overlaps = true;
      const right = row[i + 1];
      const above = state[j + 1]?.[i];
      if (right !== undefined) pass(here, right, vs[j]?.size ?? 0);
      if (above !== undefined) pass(here, above, us[i]?.size ?? 0);
    });
  });
  if (!overlaps) return touching ? touch : 0;
  // Two sets with the same outline share all of it.
  const box = bounding(own.flatMap((r) => other.flatMap((s) => intersection(r, s) ?? [])));
  if (edgeOfA === 0 && edgeOfB === 0) return box === undefined ? 0 : Math.max(box.u1 - box.u0, box.v1 - box.v0);
  return edgeOfA === 0 || edgeOfB === 0 ? Math.max(edgeOfA, edgeOfB) : Math.min(edgeOfA, edgeOfB);
}

/**
 * Length of the contact of two pieces, on the wall face and on the returns of one opening.
 *
 * @returns mm; 0 when they do not meet
 */
export function contactMm(a: Piece, b: Piece): number {
  const touching = joinsByTouch(a, b);
  const inside =
    a.opening !== undefined && a.opening === b.opening
      ? SIDES.reduce((sum, side) => sum + lapLineMm(a.returns[side] ?? [], b.returns[side] ?? [], touching), 0)
      : 0;
  return lapLineMm(a.face, b.face, touching) + inside;
}
