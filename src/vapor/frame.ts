/** Which layer of a wall is its framed cavity: what lies inside it is the interior side, what lies outside the exterior. */
import type { Detail, Layer } from '../model/types.js';

const CAVITY: ReadonlySet<Layer['family']> = new Set<Layer['family']>(['batt insulation', 'framing']);

function framed(layer: Layer): boolean {
  return layer.continuous?.value !== true && (layer.framing !== undefined || CAVITY.has(layer.family));
}

/** Depth of the studs, mm: stated for the framing, else the thickness of the layer. */
export function studDepthMm(layer: Layer): number | undefined {
  return layer.framing?.depthMm?.value ?? layer.thicknessMm?.value;
}

/**
 * The framed layer: the deepest one, the outermost of equals.
 *
 * Girts in outboard insulation and the studs of a service space are shallower than the frame, so they are not
 * taken for it.
 * @returns `undefined` for a wall without framing (concrete, masonry)
 */
export function frameOf(detail: Detail): Layer | undefined {
  let frame: Layer | undefined;
  for (const layer of detail.layers) {
    if (!framed(layer)) continue;
    if (frame === undefined || (studDepthMm(layer) ?? 0) >= (studDepthMm(frame) ?? 0)) frame = layer;
  }
  return frame;
}
