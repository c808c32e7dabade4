/** When a deep eave lets the flashing over the head of an opening be left out. */
import type { Project } from '../model/types.js';

/** Drop of the trim below the eave, as a share of the projection, up to which no head flashing is needed. */
export const WAIVER_RATIO = 0.25;

/**
 * True where the code knows the exception, or is not known: the clauses of the United States ask for flashing at every
 * opening (IRC R703.4, from memory, confirm).
 */
export function mayLeaveOutHead(project: Project | undefined): boolean {
  return project?.code === undefined || project.code.title === 'NBC';
}

/**
 * True when the head needs a flashing.
 *
 * @param projectionMm horizontal projection of the eave beyond the wall, mm
 * @param dropMm from the underside of the eave down to the top of the trim, mm
 * @see Ontario Building Code 9.27.3.8.(3) (seen): not needed where the drop is one quarter of the projection or less.
 */
export function headFlashingNeeded(projectionMm: number, dropMm: number): boolean {
  return dropMm > WAIVER_RATIO * projectionMm;
}
