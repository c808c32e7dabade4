/** The run of water of a whole detail: every source, its way and its end. */
import { allStarts } from './sources.js';
import { findPaths, Search } from './search.js';
import type { WaterPath } from './types.js';
import { coversSide, unitSetIn, worksAt } from '../at-opening.js';
import type { WallFace } from '../../geometry/types.js';
import type { Detail, Opening } from '../../model/types.js';

/** True when the joint between wall and unit at the head is closed against water on the face. */
export function headIsClosed(detail: Detail, opening: Opening): boolean {
  const set = unitSetIn(detail, opening);
  if (set?.bedding.head?.value === 'sealed') return true;
  return worksAt(detail, opening, 'exterior perimeter').some((w) => coversSide(w, 'head'));
}

/**
 * Traces water from every source on the wall face.
 *
 * @returns one path for each source and way, in a fixed order; `end.kind` is `daylight` where the wall drains
 */
export function runOfWater(detail: Detail, face: WallFace): WaterPath[] {
  return findPaths(new Search(detail, face, (opening) => headIsClosed(detail, opening)), allStarts(detail, face));
}
