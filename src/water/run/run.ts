/** The run of water of a whole detail: every source, its way and its end. */
import { panPath, type PanPath } from './pan.js';
import { findPaths, Search } from './search.js';
import { allStarts } from './sources.js';
import type { WaterPath } from './types.js';
import { coversSide, unitSetIn, worksAt } from '../at-opening.js';
import type { WallFace } from '../../geometry/types.js';
import type { Detail, Opening } from '../../model/types.js';

export interface RunOfWater {
  /** Down the wall face: one path for each source and way, in a fixed order. */
  readonly face: readonly WaterPath[];
  /** Over the sill: one for each opening that shows a unit or a pan. */
  readonly pans: readonly PanPath[];
}

/**
 * Whether the joint between wall and unit at the head is closed against water on the face; `undefined` when neither the
 * bedding nor a seal outside is told.
 */
export function headIsClosed(detail: Detail, opening: Opening): boolean | undefined {
  const bed = unitSetIn(detail, opening)?.bedding.head;
  const seals = worksAt(detail, opening, 'exterior perimeter');
  if (bed?.value === 'sealed' || seals.some((w) => coversSide(w, 'head'))) return true;
  // A head flashing that projects throws the water clear of the joint below it.
  if (worksAt(detail, opening, 'head').some((w) => (w.projectsMm?.value ?? 0) > 0)) return true;
  return bed === undefined && seals.length === 0 && opening.unit?.mounting?.value !== 'recessed' ? undefined : false;
}

const known = new WeakMap<WallFace, RunOfWater>();

/**
 * Traces water from every source. The answer for a face is kept, because several rules and the drawings ask for it.
 *
 * `endsRight(end)` tells where the wall drains.
 */
export function runOfWater(detail: Detail, face: WallFace): RunOfWater {
  const before = known.get(face);
  if (before !== undefined) return before;
  const paths = findPaths(
    new Search(detail, face, (opening) => headIsClosed(detail, opening)),
    allStarts(detail, face),
  );
  const pans = detail.openings
    .filter((opening) => unitSetIn(detail, opening) !== undefined || worksAt(detail, opening, 'sill').length > 0)
    .map((opening) =>
      panPath(
        detail,
        face,
        opening,
        paths.filter((p) => p.source.kind === 'pan' && p.source.opening === opening),
      ),
    );
  const run = { face: paths, pans };
  known.set(face, run);
  return run;
}
