/** Membranes and flashings where a line cuts them: stretches on the face and on a return, in the order of the stack. */
import { openingRect } from '../pieces.js';
import type { Piece, Rect, WallFace } from '../types.js';
import type { Opening, Side } from '../../model/types.js';
import type { Band, Run, Strip } from './types.js';

/** The line along which the wall face is cut. */
export interface CutLine {
  readonly direction: 'vertical' | 'horizontal';
  /** u of a vertical line, v of a horizontal one. */
  readonly at: number;
  /** Position on the line where `along` is 0, and the sense in which it grows. */
  readonly zero: number;
  readonly sense: 1 | -1;
  readonly reachMm: number;
}

/** Extent of rectangles on the line, as `along`. */
function crossings(rects: readonly Rect[], line: CutLine): [number, number][] {
  const vertical = line.direction === 'vertical';
  return rects.flatMap((r): [number, number][] => {
    const [across0, across1] = vertical ? [r.u0, r.u1] : [r.v0, r.v1];
    if (line.at < across0 || line.at > across1) return [];
    const [p0, p1] = vertical ? [r.v0, r.v1] : [r.u0, r.u1];
    const a = (p0 - line.zero) * line.sense;
    const b = (p1 - line.zero) * line.sense;
    return [[Math.min(a, b), Math.max(a, b)]];
  });
}

/** Extent of what covers the wall face along a line: for choosing how much of the wall to show. */
export function reachOnFace(piece: Piece, line: CutLine): number {
  return Math.max(0, ...crossings(piece.face, line).map(([, to]) => to));
}

function join(runs: readonly Run[]): Run[] {
  const joined: Run[] = [];
  for (const run of runs) {
    const last = joined.at(-1);
    if (last !== undefined && last.toMm === run.fromMm && last.level === run.level && last.baseMm === run.baseMm)
      joined[joined.length - 1] = { ...last, toMm: run.toMm };
    else joined.push(run);
  }
  return joined;
}

/** Depth of the inner face of a piece's own layer, 0 for what lies on the barrier side directly. */
function ownBase(piece: Piece, bands: readonly Band[]): number {
  const own = bands.find((b) => b.layer === piece.layer);
  return own === undefined ? 0 : Math.max(0, own.innerMm);
}

/** Stretches on the wall face from `along` 0 on. */
export function faceRuns(face: WallFace, bands: readonly Band[], line: CutLine): Map<Piece, Run[]> {
  const cuts = new Set<number>();
  for (const piece of face.pieces) {
    if (!piece.sheds) continue;
    for (const [from, to] of crossings(piece.face, line)) for (const a of [from, to]) cuts.add(a);
  }
  const stops = [0, ...[...cuts].filter((a) => a > 0 && a < line.reachMm), line.reachMm].sort((a, b) => a - b);
  const found = new Map<Piece, Run[]>();
  for (let i = 0; i + 1 < stops.length; i++) {
    const [fromMm, toMm] = [stops[i] as number, stops[i + 1] as number];
    if (toMm - fromMm < 0.01) continue;
    const p = line.zero + (line.sense * (fromMm + toMm)) / 2;
    const stack = line.direction === 'vertical' ? face.stackAt(line.at, p) : face.stackAt(p, line.at);
    let baseMm = 0;
    stack.forEach((piece, level) => {
      baseMm = Math.max(baseMm, ownBase(piece, bands));
      const runs = found.get(piece) ?? [];
      runs.push({ on: 'face', fromMm, toMm, level, baseMm });
      found.set(piece, runs);
    });
  }
  return new Map([...found].map(([piece, runs]) => [piece, join(runs)]));
}

/** Stretches on the return of an opening, inward from the face. */
export function returnRuns(face: WallFace, opening: Opening, side: Side, line: CutLine): Map<Piece, Run[]> {
  const on = face.pieces.filter((p) => p.sheds && p.opening === opening && p.returns[side] !== undefined);
  const extents = on.flatMap((piece) =>
    (piece.returns[side] ?? [])
      .filter((r) => line.at >= r.u0 && line.at <= r.u1)
      .map((r) => ({ piece, from: r.v0, to: r.v1 })),
  );
  const stops = [...new Set(extents.flatMap((e) => [e.from, e.to]))].sort((a, b) => a - b);
  const found = new Map<Piece, Run[]>();
  for (let i = 0; i + 1 < stops.length; i++) {
    const [fromMm, toMm] = [stops[i] as number, stops[i + 1] as number];
    const stack: Piece[] = [];
    // The same order as on the face: later work on top, or below what it was slipped under.
    for (const { piece } of extents.filter((e) => e.from <= fromMm && e.to >= toMm)) {
      if (stack.includes(piece)) continue;
      const below = stack.findIndex((p) => piece.under.includes(p.id));
      stack.splice(below < 0 ? stack.length : below, 0, piece);
    }
    stack.forEach((piece, level) => {
      const runs = found.get(piece) ?? [];
      runs.push({ on: 'return', fromMm, toMm, level, baseMm: 0 });
      found.set(piece, runs);
    });
  }
  return new Map([...found].map(([piece, runs]) => [piece, join(runs)]));
}

/** Joins the stretches of each piece to a strip with its bends. */
export function toStrips(
  face: WallFace,
  onFace: ReadonlyMap<Piece, readonly Run[]>,
  onReturn: ReadonlyMap<Piece, readonly Run[]>,
): Strip[] {
  return face.pieces.flatMap((piece): Strip[] => {
    const runs = [...(onReturn.get(piece) ?? []), ...(onFace.get(piece) ?? [])];
    if (runs.length === 0) return [];
    const { apply } = piece;
    const isPan = piece.role === 'sill flashing' && onReturn.has(piece);
    const runsOut = piece.role === 'head flashing' || piece.role === 'base flashing';
    return [
      {
        piece,
        runs,
        slope: isPan || runsOut ? (apply?.slope?.value ?? 0) : 0,
        ...(isPan && apply?.backDamMm !== undefined ? { backDamMm: apply.backDamMm.value } : {}),
        ...(isPan && apply?.endDamsMm !== undefined ? { endDamMm: apply.endDamsMm.value } : {}),
        ...(runsOut && apply?.projectsMm !== undefined ? { projectsMm: apply.projectsMm.value } : {}),
      },
    ];
  });
}

/** The line that cuts an opening on one side, through its middle. */
export function lineAt(opening: Opening, side: Side, reachMm: number): CutLine {
  const o = openingRect(opening);
  const [middleU, middleV] = [(o.u0 + o.u1) / 2, (o.v0 + o.v1) / 2];
  switch (side) {
    case 'head':
      return { direction: 'vertical', at: middleU, zero: o.v1, sense: 1, reachMm };
    case 'sill':
      return { direction: 'vertical', at: middleU, zero: o.v0, sense: -1, reachMm };
    case 'left jamb':
      return { direction: 'horizontal', at: middleV, zero: o.u0, sense: -1, reachMm };
    case 'right jamb':
      return { direction: 'horizontal', at: middleV, zero: o.u1, sense: 1, reachMm };
  }
}
