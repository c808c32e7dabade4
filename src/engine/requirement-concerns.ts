/** Whether a detail shows the thing a requirement is about, so that its silence on it is worth telling. */
import type { Apply, Detail, Place, Requirement } from '../model/types.js';

const appliedAt = (detail: Detail, ...places: readonly Place[]): boolean =>
  detail.work.some((w): w is Apply => w.action === 'apply' && w.places.some((p) => places.includes(p.value)));
const hasField = (detail: Detail): boolean =>
  detail.work.some(
    (w) => w.action === 'apply' && w.layer !== undefined && w.places.some((p) => p.value.startsWith('field')),
  );

/** @returns false also where the requirement names no subject: then nobody can tell from here */
export function concerns(detail: Detail, { subject, property }: Requirement): boolean {
  const hasOpenings = detail.openings.length > 0 && detail.work.length > 0;
  switch (subject) {
    case 'opening flashing':
    case 'sill pan':
    case 'jamb flashing':
    case 'head flashing':
    case 'corner treatment':
    case 'interior seal':
      return hasOpenings;
    case 'field membrane':
      // A coat has no courses: what it laps onto is the flashing of an opening.
      return property === 'lap' ? hasOpenings && hasField(detail) : hasField(detail);
    case 'joint treatment':
      return appliedAt(detail, 'sheathing joints');
    case 'counterflashing':
      return appliedAt(detail, 'flange head', 'flange jambs', 'flange sill');
    case 'exterior seal':
      return appliedAt(detail, 'exterior perimeter');
    case 'penetration':
      return detail.penetrations.length > 0;
    default:
      return false;
  }
}
