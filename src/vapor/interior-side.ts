/** Finds the interior vapor retarder: the tightest layer on the room side of the framed cavity. */
import { tighter, type VaporClass } from './classes.js';
import { classOfLayer, type LayerClass, type UnknownClass } from './layer-class.js';
import { fieldOfLayer } from '../model/named-field.js';
import type { Detail, Layer } from '../model/types.js';

export interface InteriorRetarder extends LayerClass {
  readonly layer: Layer;
  readonly vaporClass: Exclude<VaporClass, 'none'>;
}
export type InteriorSide =
  | { readonly kind: 'retarder'; readonly retarder: InteriorRetarder }
  /** Everything inside is known and nothing is a retarder. */
  | { readonly kind: 'none'; readonly layer: Layer }
  | (UnknownClass & { readonly layer?: Layer });

const OPEN_BY_NATURE: ReadonlySet<Layer['family']> = new Set<Layer['family']>(['framing', 'air space']);
const FILL: ReadonlySet<Layer['family']> = new Set<Layer['family']>(['batt insulation', 'spray foam']);
const ROOM_BOARD: ReadonlySet<Layer['family']> = new Set<Layer['family']>(['interior board']);

/** A board that faces the room is painted or not; a drawing that does not say leaves the class open. */
function finishUnsaid(layer: Layer): boolean {
  const said =
    layer.finish !== undefined ||
    layer.permeance !== undefined ||
    /\b(un)?painted\b|\bunfinished\b|\bpaint\b/i.test(layer.material?.value ?? '');
  return layer.index === 0 && ROOM_BOARD.has(layer.family) && !said;
}

/**
 * The interior vapor retarder of a framed wall.
 *
 * Looked at are all layers inside the frame, and the facing of the frame's own batts. A layer of unknown class
 * decides nothing while a class I or II is known, unless it is called a vapor retarder itself.
 * @param frame the framed layer, see `frameOf`
 */
export function interiorSide(detail: Detail, frame: Layer): InteriorSide {
  // Five rules ask for it; layers are never changed, so the first answer holds.
  const before = known.get(frame);
  if (before !== undefined) return before;
  const side = findInteriorSide(detail, frame);
  known.set(frame, side);
  return side;
}

const known = new WeakMap<Layer, InteriorSide>();

function findInteriorSide(detail: Detail, frame: Layer): InteriorSide {
  const inside = detail.layers.filter((layer) => layer.index <= frame.index && !OPEN_BY_NATURE.has(layer.family));
  let best: (LayerClass & { layer: Layer }) | undefined;
  const unknown: (UnknownClass & { layer: Layer })[] = [];
  for (const layer of inside) {
    // The cavity itself is no retarder, whatever fills it; its batts may carry a facing.
    if (layer === frame && layer.family !== 'batt insulation') continue;
    const found = classOfLayer(layer);
    // Open foam in an inner row of studs is fill, although a thick layer of it would reach class III.
    if (layer.family === 'spray foam' && found.kind === 'known' && found.vaporClass === 'III') continue;
    if (found.kind === 'unknown') {
      if (layer !== frame) unknown.push({ ...found, layer });
      continue;
    }
    if (best === undefined || tighter(found.vaporClass, best.vaporClass)) best = { ...found, layer };
    if (finishUnsaid(layer))
      unknown.push({
        kind: 'unknown',
        layer,
        at: layer.at,
        missing: [fieldOfLayer(layer, 'finish')],
        reason: `the finish of "${layer.id}" is not stated`,
      });
  }
  const sure = best !== undefined && (best.vaporClass === 'I' || best.vaporClass === 'II');
  const decisive = sure ? unknown.find((u) => u.layer.family === 'vapor retarder') : unknown[0];
  if (decisive !== undefined && !(sure && best?.vaporClass === 'I')) {
    return { ...decisive, missing: sure ? decisive.missing : [...new Set(unknown.flatMap((u) => u.missing))] };
  }
  // Fill alone is no room side: without a board or a sheet the drawing is not complete.
  const complete = inside.some((layer) => layer !== frame && !FILL.has(layer.family));
  if (best === undefined || (best.vaporClass === 'none' && !complete)) {
    return {
      kind: 'unknown',
      at: frame.at,
      missing: ['wall'],
      reason: `the wall shows nothing on the room side of "${frame.id}"`,
      layer: frame,
    };
  }
  const { vaporClass } = best;
  return vaporClass === 'none'
    ? { kind: 'none', layer: best.layer }
    : { kind: 'retarder', retarder: { ...best, vaporClass } };
}
