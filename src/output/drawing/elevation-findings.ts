/** Marks of findings on an elevation, each as near as there is room to what it points at. */
import { openingRect, penetrationRect } from '../../geometry/pieces.js';
import { intersection } from '../../geometry/rect.js';
import type { Piece, Rect } from '../../geometry/types.js';
import type { FaceMap } from './elevation-frame.js';
import { sideOf, type NumberedFinding } from './findings.js';
import { FINDING_SIZE, findingMark, leader } from './marks.js';
import type { Sheet } from './sheet.js';
import type { DrawingSubject } from './subject.js';
import type { Point } from './svg.js';

const area = (r: Rect): number => (r.u1 - r.u0) * (r.v1 - r.v0);
const center = (r: Rect): Point => [(r.u0 + r.u1) / 2, (r.v0 + r.v1) / 2];

/** The part of some pieces that a finding means: on the side it names, else the largest that is seen. */
function partOf(
  pieces: readonly Piece[],
  seen: ReadonlyMap<Piece, readonly Rect[]>,
  finding: NumberedFinding,
  window: Rect,
): Rect | undefined {
  const visible = pieces.flatMap((p) => seen.get(p) ?? []);
  const parts =
    visible.length > 0 ? visible : pieces.flatMap((p) => p.face.flatMap((r) => intersection(r, window) ?? []));
  const side = sideOf(finding);
  const key = (r: Rect): number => {
    const [u, v] = center(r);
    return side === 'left' ? -u : side === 'right' ? u : side === 'head' ? v : side === 'sill' ? -v : area(r);
  };
  return [...parts].sort((a, b) => key(b) - key(a) || area(b) - area(a))[0];
}

/** The middle of an edge of an opening, for what lies inside it; its center when no side is named. */
function inOpening(rect: Rect, finding: NumberedFinding, inset: number): Point {
  const [u, v] = center(rect);
  switch (sideOf(finding)) {
    case 'head':
      return [u, rect.v1 - inset];
    case 'sill':
      return [u, rect.v0 + inset];
    case 'left':
      return [rect.u0 + inset, v];
    case 'right':
      return [rect.u1 - inset, v];
    default:
      return [u, v - inset];
  }
}

function anchorOf(
  subject: DrawingSubject,
  seen: ReadonlyMap<Piece, readonly Rect[]>,
  finding: NumberedFinding,
  map: FaceMap,
): Point | undefined {
  const { work, layer, opening, penetration } = finding.target;
  const { face } = subject;
  const inset = 6 * map.divisor;
  if (opening !== undefined) return inOpening(openingRect(opening), finding, inset);
  if (penetration !== undefined) return center(penetrationRect(penetration));
  const pieces = face.pieces.filter((p) => p.sheds && (work === undefined ? p.layer === layer : p.work === work));
  const part = layer === undefined && work === undefined ? undefined : partOf(pieces, seen, finding, map.window);
  if (part !== undefined) return center(part);
  if (work === undefined || work.action === 'hold') return undefined;
  const [own] = work.openings;
  if (own !== undefined) return inOpening(openingRect(own), finding, inset);
  const hole = 'penetrations' in work ? work.penetrations[0] : undefined;
  return hole === undefined ? undefined : center(penetrationRect(hole));
}

/**
 * Marks a point with the number of a finding.
 *
 * @param aside where the mark would rather stand, from the point
 */
export function markAt(
  sheet: Sheet,
  anchor: Point,
  finding: NumberedFinding,
  within: FaceMap['box'],
  aside: Point = [0, 0],
): void {
  const { width, height } = FINDING_SIZE;
  const at = sheet.freeNear([anchor[0] + aside[0], anchor[1] + aside[1]], width, height, within);
  if (Math.hypot(at[0] - anchor[0], at[1] - anchor[1]) > 3) leader(sheet, [at, anchor]);
  findingMark(sheet, at, finding.number, finding.result.level);
}

/** @returns numbers of the findings that are marked */
export function markFindings(
  sheet: Sheet,
  subject: DrawingSubject,
  map: FaceMap,
  seen: ReadonlyMap<Piece, readonly Rect[]>,
): Set<number> {
  const shown = new Set<number>();
  for (const finding of subject.findings) {
    const at = anchorOf(subject, seen, finding, map);
    if (at === undefined) continue;
    const anchor: Point = [map.x(at[0]), map.y(at[1])];
    const { box } = map;
    if (anchor[0] < box.x0 || anchor[0] > box.x1 || anchor[1] < box.y0 || anchor[1] > box.y1) continue;
    markAt(sheet, anchor, finding, box);
    shown.add(finding.number);
  }
  return shown;
}
