/** How much of the wall face an elevation shows, and where a point of it stands on paper. */
import { endsRight } from '../../water/run/types.js';
import { bounding, intersection } from '../../geometry/rect.js';
import { openingRect, penetrationRect } from '../../geometry/pieces.js';
import type { Piece, Rect } from '../../geometry/types.js';
import type { Box, Point } from './svg.js';
import type { DrawingSubject } from './subject.js';

/** Wall shown around everything that is done to it, mm. */
const AROUND_MM = 130;

/** Pieces that belong to a place and not to the wall as a whole. */
export function isLocal(piece: Piece): boolean {
  return piece.role !== 'field' && piece.role !== 'joint treatment';
}

/**
 * The part of the face that is drawn: openings, penetrations, the work around them and every wrong end of water.
 * Pieces that run along the whole wall count only in the direction they do not run in.
 */
export function windowOf(subject: DrawingSubject): Rect {
  const { detail, face, water } = subject;
  const b = face.bounds;
  const parts: Rect[] = [...detail.openings.map(openingRect), ...detail.penetrations.map(penetrationRect)];
  const core = bounding(parts) ?? b;
  for (const piece of face.pieces.filter((p) => p.sheds && isLocal(p))) {
    for (const r of piece.face) {
      const runsAcross = r.u0 <= b.u0 && r.u1 >= b.u1;
      const runsUp = r.v0 <= b.v0 && r.v1 >= b.v1;
      parts.push({
        ...(runsAcross ? { u0: core.u0, u1: core.u1 } : { u0: r.u0, u1: r.u1 }),
        ...(runsUp ? { v0: core.v0, v1: core.v1 } : { v0: r.v0, v1: r.v1 }),
      });
    }
  }
  for (const path of water.face) {
    const { u, v } = path.end;
    if (!endsRight(path.end)) parts.push({ u0: u, v0: v - AROUND_MM / 2, u1: u, v1: v });
  }
  const all = bounding(parts) ?? b;
  const around = { u0: all.u0 - AROUND_MM, v0: all.v0 - AROUND_MM, u1: all.u1 + AROUND_MM, v1: all.v1 + AROUND_MM };
  return intersection(around, b) ?? b;
}

/** Maps the face onto paper. */
export interface FaceMap {
  readonly window: Rect;
  readonly divisor: number;
  x(u: number): number;
  y(v: number): number;
  readonly box: Box;
}

export function faceMap(window: Rect, divisor: number, [left, top]: Point): FaceMap {
  const x = (u: number): number => left + (u - window.u0) / divisor;
  const y = (v: number): number => top + (window.v1 - v) / divisor;
  return {
    window,
    divisor,
    x,
    y,
    box: { x0: left, y0: top, x1: x(window.u1), y1: y(window.v0) },
  };
}

/** A rectangle of the face on paper, clipped to what is shown. */
export function onPaper(map: FaceMap, rect: Rect): Box | undefined {
  const r = intersection(rect, map.window);
  return r === undefined ? undefined : { x0: map.x(r.u0), y0: map.y(r.v1), x1: map.x(r.u1), y1: map.y(r.v0) };
}
