/** Axis-aligned rectangles on the wall face, in millimeters. */
import type { Rect } from './types.js';

/** Positions closer than this count as one: fractions of inches and whole millimeters both survive it. */
export const SNAP_MM = 0.01;

/** Rounds a position to the snapping grid, so that `5-1/2 in` and `139.7 mm` meet. */
export function snap(positionMm: number): number {
  return Math.round(positionMm / SNAP_MM) * SNAP_MM;
}

/** A rectangle, or nothing when it would have no area. */
export function rect(u0: number, v0: number, u1: number, v1: number): Rect | undefined {
  const r = { u0: snap(u0), v0: snap(v0), u1: snap(u1), v1: snap(v1) };
  return r.u1 - r.u0 > SNAP_MM / 2 && r.v1 - r.v0 > SNAP_MM / 2 ? r : undefined;
}

export function intersection(a: Rect, b: Rect): Rect | undefined {
  return rect(Math.max(a.u0, b.u0), Math.max(a.v0, b.v0), Math.min(a.u1, b.u1), Math.min(a.v1, b.v1));
}

/** True when the two share area, not merely an edge. */
export function overlaps(a: Rect, b: Rect): boolean {
  return intersection(a, b) !== undefined;
}

/**
 * What is left of `outer` when the holes are cut out: horizontal slabs between hole edges, each split by the
 * holes that cross it. The parts do not overlap and cover the remainder exactly.
 */
export function subtract(outer: Rect, holes: readonly Rect[]): Rect[] {
  const inside = holes.flatMap((h) => intersection(outer, h) ?? []);
  const levels = [...new Set([outer.v0, outer.v1, ...inside.flatMap((h) => [h.v0, h.v1])])].sort((a, b) => a - b);
  const parts: Rect[] = [];
  for (let i = 0; i + 1 < levels.length; i++) {
    const v0 = levels[i] as number;
    const v1 = levels[i + 1] as number;
    const crossing = inside.filter((h) => h.v0 < v1 && h.v1 > v0).sort((a, b) => a.u0 - b.u0);
    let u = outer.u0;
    for (const hole of crossing) {
      const part = rect(u, v0, hole.u0, v1);
      if (part !== undefined) parts.push(part);
      u = Math.max(u, hole.u1);
    }
    const last = rect(u, v0, outer.u1, v1);
    if (last !== undefined) parts.push(last);
  }
  return parts;
}

export function bounding(rects: readonly Rect[]): Rect | undefined {
  if (rects.length === 0) return undefined;
  let { u0, v0, u1, v1 } = rects[0] as Rect;
  for (const r of rects) {
    u0 = Math.min(u0, r.u0);
    v0 = Math.min(v0, r.v0);
    u1 = Math.max(u1, r.u1);
    v1 = Math.max(v1, r.v1);
  }
  return { u0, v0, u1, v1 };
}
