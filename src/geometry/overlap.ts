/**
 * Overlaps measured where they count: square to a side of an opening, or inward from the top or bottom edge of
 * a piece. Plain arithmetic on rectangles, lengths in millimeters.
 *
 * A stretch that is cut off by the border of the face shown says nothing about the wall and is left out.
 */
import { SNAP_MM } from './rect.js';
import type { Rect } from './types.js';
import type { Side } from '../model/types.js';

/** A rectangle seen from a line: `t` along the line, `d` away from it. */
interface Strip {
  readonly t0: number;
  readonly t1: number;
  readonly d0: number;
  readonly d1: number;
}
type Run = readonly [number, number];

const TINY = SNAP_MM / 2;

/** The runs of `d` that the strips cover at `t`, joined where they touch, ascending. */
function runsAt(strips: readonly Strip[], t: number): Run[] {
  const runs: [number, number][] = [];
  for (const s of strips.filter((x) => x.t0 < t && x.t1 > t).sort((a, b) => a.d0 - b.d0)) {
    const last = runs.at(-1);
    if (last !== undefined && s.d0 <= last[1] + TINY) last[1] = Math.max(last[1], s.d1);
    else runs.push([s.d0, s.d1]);
  }
  return runs;
}

/** Middles of the stretches between all ends of the strips, within [from, to]. */
function samples(from: number, to: number, ...sets: readonly (readonly Strip[])[]): number[] {
  const cuts = [...new Set([from, to, ...sets.flat().flatMap((s) => [s.t0, s.t1])])]
    .filter((t) => t >= from && t <= to)
    .sort((a, b) => a - b);
  return cuts.slice(1).flatMap((t, k) => (t - (cuts[k] as number) > TINY ? [(t + (cuts[k] as number)) / 2] : []));
}

function shared(a: readonly Run[], b: readonly Run[]): Run[] {
  return a.flatMap((x) =>
    b.flatMap((y): Run[] => {
      const low = Math.max(x[0], y[0]);
      const high = Math.min(x[1], y[1]);
      return high - low > TINY ? [[low, high]] : [];
    }),
  );
}

/** A rectangle of the face as seen from a side of an opening: along the side, and outward from it. */
export function seenFrom(o: Rect, side: Side, r: Rect): Strip {
  switch (side) {
    case 'head':
      return { t0: r.u0, t1: r.u1, d0: r.v0 - o.v1, d1: r.v1 - o.v1 };
    case 'sill':
      return { t0: r.u0, t1: r.u1, d0: o.v0 - r.v1, d1: o.v0 - r.v0 };
    case 'left jamb':
      return { t0: r.v0, t1: r.v1, d0: o.u0 - r.u1, d1: o.u0 - r.u0 };
    case 'right jamb':
      return { t0: r.v0, t1: r.v1, d0: r.u0 - o.u1, d1: r.u1 - o.u1 };
  }
}

/**
 * Least overlap of two sets of rectangles outside an opening, measured square to one of its sides, over the
 * whole straight length of that side.
 *
 * @param opening rough opening on the face
 * @param bounds face shown
 * @returns mm; 0 where some of the length has no overlap; `undefined` when the face shown ends too soon to tell
 */
export function sideOverlap(
  opening: Rect,
  side: Side,
  bounds: Rect,
  a: readonly Rect[],
  b: readonly Rect[],
): number | undefined {
  const outward = (rects: readonly Rect[]): Strip[] =>
    rects.map((r) => seenFrom(opening, side, r)).filter((s) => s.d1 > TINY);
  const [first, second] = [outward(a), outward(b)];
  const border = seenFrom(opening, side, bounds).d1;
  const upright = side === 'left jamb' || side === 'right jamb';
  let least: number | undefined;
  for (const t of samples(upright ? opening.v0 : opening.u0, upright ? opening.v1 : opening.u1, first, second)) {
    const runs = runsAt(first, t);
    const overlaps = shared(runs, runsAt(second, t)).map(([low, high]) => ({
      mm: high - low,
      cut: high > border - TINY,
    }));
    const best = overlaps.sort((x, y) => y.mm - x.mm)[0];
    if (best?.cut === true || (best === undefined && runs.some(([, high]) => high > border - TINY))) continue;
    least = Math.min(least ?? Infinity, best?.mm ?? 0);
  }
  return least;
}

/**
 * Least depth to which `others` cover a piece, measured inward from its top or bottom edge over the whole width.
 *
 * @returns mm, with the width of the edge that is not covered at all; `undefined` when no part of the edge lies
 * inside the face shown
 */
export function edgeOverlap(
  piece: readonly Rect[],
  edge: 'top' | 'bottom',
  others: readonly Rect[],
  bounds: Rect,
): { leastMm: number; bareMm: number } | undefined {
  // Inward from the edge is down from a top edge and up from a bottom edge.
  const seen = (r: Rect): Strip =>
    edge === 'top' ? { t0: r.u0, t1: r.u1, d0: -r.v1, d1: -r.v0 } : { t0: r.u0, t1: r.u1, d0: r.v0, d1: r.v1 };
  const [own, over] = [piece.map(seen), others.map(seen)];
  const border = seen(bounds).d0;
  const cuts = [...new Set([...own, ...over].flatMap((s) => [s.t0, s.t1]))].sort((a, b) => a - b);
  let leastMm: number | undefined;
  let bareMm = 0;
  cuts.slice(1).forEach((t1, k) => {
    const t0 = cuts[k] as number;
    if (t1 - t0 <= TINY || t0 < bounds.u0 - TINY || t1 > bounds.u1 + TINY) return;
    const run = runsAt(own, (t0 + t1) / 2)[0];
    if (run === undefined || run[0] <= border + TINY) return;
    const at = shared([run], runsAt(over, (t0 + t1) / 2)).find(([low]) => low <= run[0] + TINY);
    if (at === undefined) bareMm += t1 - t0;
    leastMm = Math.min(leastMm ?? Infinity, at === undefined ? 0 : at[1] - at[0]);
  });
  return leastMm === undefined ? undefined : { leastMm, bareMm };
}

/**
 * Least height (second axis) or width (first axis) of the overlap of two sets, over every line that meets both.
 *
 * @returns mm; 0 when they do not overlap
 */
export function leastSpan(a: readonly Rect[], b: readonly Rect[], axis: 'height' | 'width'): number {
  const seen = (r: Rect): Strip =>
    axis === 'height' ? { t0: r.u0, t1: r.u1, d0: r.v0, d1: r.v1 } : { t0: r.v0, t1: r.v1, d0: r.u0, d1: r.u1 };
  const [first, second] = [a.map(seen), b.map(seen)];
  const ends = [...first, ...second].flatMap((s) => [s.t0, s.t1]);
  if (ends.length === 0) return 0;
  let least = Infinity;
  for (const t of samples(Math.min(...ends), Math.max(...ends), first, second)) {
    for (const [low, high] of shared(runsAt(first, t), runsAt(second, t))) least = Math.min(least, high - low);
  }
  return least === Infinity ? 0 : least;
}

/**
 * Least depth to which pieces line a return of an opening, from the wall face inward without a break.
 *
 * @param from,to the length of the side, in the coordinate that runs along it
 * @param returns rectangles on that return: along the side by inward
 * @returns mm; 0 where some of the side is bare at the wall face
 */
export function returnDepth(from: number, to: number, returns: readonly Rect[]): number {
  const strips = returns.map((r): Strip => ({ t0: r.u0, t1: r.u1, d0: r.v0, d1: r.v1 }));
  let least = Infinity;
  for (const t of samples(from, to, strips)) {
    const run = runsAt(strips, t)[0];
    least = Math.min(least, run === undefined || run[0] > TINY ? 0 : run[1]);
  }
  return least === Infinity ? 0 : least;
}
