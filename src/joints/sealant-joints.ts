/** Which works of a detail are sealant joints, and with which rod. */
import type { Subject } from '../model/measures.js';
import type { Apply, Detail, Family, Place } from '../model/types.js';

const NOT_SEALANT: ReadonlySet<Family> = new Set<Family>([
  'backer rod',
  'primer',
  'spray foam',
  'tape',
  'batt insulation',
  'board insulation',
]);
const JOINT_PLACES: ReadonlySet<Place> = new Set<Place>(['interior perimeter', 'exterior perimeter', 'movement joint']);

/**
 * Works that put sealant into a joint: those that declare the shape of a joint, and sealants along a perimeter or
 * a movement joint even when the shape is left out. A termination bead or a bed of sealant is no joint, and neither is
 * the treatment of sheathing joints, whose `joint: { width }` is the gap between the panels.
 */
export function sealantJoints(detail: Detail): Apply[] {
  return detail.work.filter(
    (w): w is Apply =>
      w.action === 'apply' &&
      !NOT_SEALANT.has(w.family) &&
      !w.places.some((p) => p.value === 'sheathing joints') &&
      (w.joint !== undefined || (w.family === 'sealant' && w.places.some((p) => JOINT_PLACES.has(p.value)))),
  );
}

/** What a requirement calls the joint. */
export function subjectOf(work: Apply): Subject | undefined {
  if (work.places.some((p) => p.value === 'interior perimeter')) return 'interior seal';
  return work.places.some((p) => p.value === 'exterior perimeter') ? 'exterior seal' : undefined;
}

/** The work that puts the backer rod into a joint: a rod at the same place of the same opening, before the sealant. */
export function rodOf(detail: Detail, joint: Apply): Apply | undefined {
  return detail.work.findLast(
    (w): w is Apply =>
      w.action === 'apply' &&
      w.family === 'backer rod' &&
      w.step < joint.step &&
      w.places.some((p) => joint.places.some((q) => q.value === p.value)) &&
      (joint.openings.length === 0 || w.openings.some((o) => joint.openings.includes(o))),
  );
}
