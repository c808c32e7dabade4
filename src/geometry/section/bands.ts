/** The layers of the wall as bands in depth, measured from the face the barrier lies on. */
import { shedsWater } from '../../model/families.js';
import { solidMasonryIndex } from '../../model/order.js';
import type { Detail, Family, Layer } from '../../model/types.js';
import type { WallFace } from '../types.js';
import type { Band } from './types.js';

/** Usual thickness of a layer that gives none, mm; drawn and marked as supposed (common practice, no source). */
const USUAL_MM: Partial<Record<Family, number>> = {
  sheathing: 12.7,
  'insulating sheathing': 25.4,
  'batt insulation': 88.9,
  'board insulation': 50.8,
  'spray foam': 88.9,
  'interior board': 12.7,
  cladding: 19.05,
  'air space': 25.4,
  framing: 88.9,
  concrete: 203.2,
  masonry: 193.7,
  'drainage mat': 6.35,
  other: 12.7,
};

const BACKING: ReadonlySet<Family> = new Set<Family>(['sheathing', 'insulating sheathing']);
const STRUCTURE: ReadonlySet<Family> = new Set<Family>([
  'concrete',
  'masonry',
  'framing',
  'batt insulation',
  'spray foam',
]);

/** The layer whose outer face has depth 0; `undefined` when the detail has no layers. */
export function backingLayer(detail: Detail, face: WallFace): Layer | undefined {
  const { layers } = detail;
  const applied = new Set(face.pieces.filter((p) => p.role === 'field' && p.sheds).map((p) => p.layer));
  const barrier = layers.find((l) => applied.has(l)) ?? layers.find((l) => l.index > 0 && shedsWater(l.family));
  if (barrier !== undefined && barrier.index > 0) return layers[barrier.index - 1];
  const solid = solidMasonryIndex(detail);
  if (solid >= 0) return layers[solid];
  return (
    layers.findLast((l) => BACKING.has(l.family)) ?? layers.findLast((l) => STRUCTURE.has(l.family)) ?? layers.at(-1)
  );
}

function thicknessOf(layer: Layer): { mm: number; assumed: boolean } {
  const usual = USUAL_MM[layer.family];
  if (layer.thicknessMm !== undefined) return { mm: layer.thicknessMm.value, assumed: false };
  // Coats, films and sheets do not add to the depth of the wall.
  return usual === undefined ? { mm: 0, assumed: false } : { mm: usual, assumed: true };
}

/**
 * Every layer with the depth of its faces.
 *
 * @returns innermost first; depth 0 is the outer face of the layer that carries the barrier
 */
export function layerBands(detail: Detail, face: WallFace): Band[] {
  const backing = backingLayer(detail, face);
  let outer = 0;
  const stacked = detail.layers.map((layer) => {
    const { mm, assumed } = thicknessOf(layer);
    const inner = outer;
    outer += mm;
    return { layer, innerMm: inner, outerMm: outer, assumed };
  });
  const zero = stacked.find((b) => b.layer === backing)?.outerMm ?? 0;
  return stacked.map((b) => ({ ...b, innerMm: b.innerMm - zero, outerMm: b.outerMm - zero }));
}
