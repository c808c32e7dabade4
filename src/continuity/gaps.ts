/** Gaps in the line of a control: where it breaks, how long the break is, and whether the drawing is sure of it. */
import { edgeGaps, type EdgeGap } from './edge-gaps.js';
import { depthGaps, partGaps, type DepthGap, type PartGap } from './layer-gaps.js';
import { planeOf } from './planes.js';
import { sealGaps, sideGapsOf, type SideGap } from './side-gaps.js';
import { totalMm } from './stretches.js';
import type { WallFace } from '../geometry/types.js';
import type { Control, Detail, Opening, Side } from '../model/types.js';

export type Gap = SideGap | EdgeGap | DepthGap | PartGap;

const known = new WeakMap<WallFace, Map<Control, readonly Gap[]>>();

function find(detail: Detail, face: WallFace, control: Control): Gap[] {
  const plane = planeOf(detail, face, control);
  const atOpenings = detail.openings.flatMap((opening): Gap[] => [
    ...(control === 'thermal' ? depthGaps(detail, opening, plane) : sideGapsOf(detail, face, control, plane, opening)),
    ...(control === 'air' || control === 'vapor' ? sealGaps(detail, opening) : []),
  ]);
  return [...atOpenings, ...partGaps(detail, face, plane), ...edgeGaps(detail, face, control, plane)];
}

/**
 * Finds the gaps in the line of a control: from the field to each side of each opening and on to the unit, in the field
 * itself, and at each edge where the wall meets something else.
 *
 * A gap whose `missing` is not empty may be none: the documents leave out what would tell.
 *
 * @returns in the order of the openings and their sides (head, jambs, sill), then the field, then the edges; mm
 */
export function findGaps(detail: Detail, face: WallFace, control: Control): readonly Gap[] {
  // Several rules ask; a face is never changed, so the first answer holds.
  const answers = known.get(face) ?? new Map<Control, readonly Gap[]>();
  known.set(face, answers);
  const before = answers.get(control);
  if (before !== undefined) return before;
  const gaps = find(detail, face, control);
  answers.set(control, gaps);
  return gaps;
}

/** Length of a side along which its line is broken, for whatever cause, mm. */
export function brokenMm(gaps: readonly Gap[], opening: Opening, side: Side): number {
  return totalMm(
    gaps.flatMap((g) => (g.kind === 'side' && g.opening === opening && g.side === side ? [g.stretch] : [])),
  );
}
