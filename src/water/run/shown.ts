/** Which ways of water say something about the wall: those that are judged, and those that are drawn. */
import { showsField } from './pan.js';
import type { WaterPath } from './types.js';
import type { WallFace } from '../../geometry/types.js';
import type { Detail } from '../../model/types.js';

/** True when the way says something about the wall and not only that the drawing stops. */
export function isShown(path: WaterPath, detail: Detail, face: WallFace): boolean {
  if (!showsField(face)) return false;
  const starts = path.steps[0];
  const whole = detail.work.some(
    (w) => w.action === 'apply' && w.places.some((p) => p.value === 'field' || p.value === 'field above sill'),
  );
  if (starts?.piece === undefined && !whole) return false;
  // Without a unit the opening is a hole in the drawing, and what happens at its head is not shown.
  return path.end.isUntold !== true && (path.end.kind !== 'opening' || path.end.opening?.unit !== undefined);
}
