/**
 * How much of the wall a detail shows. A drawing of the head alone, or of the barrier without the rest of the wall,
 * is not wrong: what it leaves out is a question, not a mistake.
 */
import type { Detail, Family, Layer } from './types.js';

const INSIDE: ReadonlySet<Family> = new Set<Family>([
  'interior board',
  'paint',
  'concrete',
  'masonry',
  'vapor retarder',
]);
const OUTSIDE: ReadonlySet<Family> = new Set<Family>(['cladding', 'masonry', 'concrete']);

/** True when the layers run from an interior face to an exterior face, so that a layer that is missing is missing. */
export function showsWholeWall(detail: Detail): boolean {
  const inner: Layer | undefined = detail.layers[0];
  const outer = detail.layers.at(-1);
  return (
    inner !== undefined &&
    outer !== undefined &&
    inner !== outer &&
    INSIDE.has(inner.family) &&
    OUTSIDE.has(outer.family)
  );
}

/** True when the detail shows the inside of the wall: all its layers, or some work there. */
export function showsInside(detail: Detail): boolean {
  return (
    showsWholeWall(detail) ||
    detail.work.some(
      (w) =>
        w.action === 'apply' && w.places.some((p) => p.value === 'interior face' || p.value === 'interior perimeter'),
    )
  );
}
