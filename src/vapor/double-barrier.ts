/** Class I on both sides: finds the outer one and what is shut in between. */
import { classOfLayer } from './layer-class.js';
import { materialNamed } from './materials.js';
import type { Detail, Layer } from '../model/types.js';
import { fieldOfLayer } from '../model/named-field.js';

export interface Unsettled {
  readonly layer: Layer;
  readonly missing: readonly string[];
  /** A clause: `the permeance of "foam" is not known`. */
  readonly words: string;
}
export interface OuterSide {
  /** The first class I layer outside the frame. */
  readonly barrier?: Layer;
  /** Why it is class I: `0.05 perm`. */
  readonly words?: string;
  /** Layers whose class the documents do not settle. */
  readonly unknown: readonly Unsettled[];
}

/** Kinds that can be a barrier outside; brick, boards and paper are not, and cladding is judged by venting elsewhere. */
const CAN_BE_TIGHT: ReadonlySet<Layer['family']> = new Set<Layer['family']>([
  'fluid-applied membrane',
  'self-adhered membrane',
  'mechanically fastened sheet',
  'insulating sheathing',
  'board insulation',
  'vapor retarder',
  'spray foam',
  'sheathing',
  'other',
]);

/** Class I layers outside the frame, inboard of the first vented space: what lies beyond it does not hold vapor in. */
export function outerSide(detail: Detail, frame: Layer): OuterSide {
  const unknown: Unsettled[] = [];
  // A space that does not say whether it is vented: what lies beyond may or may not hold vapor in.
  let gap: Layer | undefined;
  for (const layer of detail.layers) {
    if (layer.index <= frame.index) continue;
    if (layer.family === 'air space' && layer.vented?.value === true) break;
    if (layer.family === 'air space' && layer.vented === undefined) gap ??= layer;
    if (!CAN_BE_TIGHT.has(layer.family) && layer.permeance === undefined) continue;
    const found = classOfLayer(layer);
    if (found.kind === 'known' && found.vaporClass === 'I' && gap !== undefined) {
      unknown.push({
        layer: gap,
        missing: [fieldOfLayer(gap, 'vented')],
        words: `"${layer.id}" is class I beyond "${gap.id}", which does not say whether it is vented`,
      });
      return { unknown };
    }
    if (found.kind === 'known' && found.vaporClass === 'I') return { barrier: layer, words: found.words, unknown };
    // Generic wood and mineral wool spread over classes, never down to class I.
    if (found.kind === 'unknown' && (layer.material === undefined || couldBeClassOne(layer)))
      unknown.push({ layer, missing: found.missing, words: `the permeance of "${layer.id}" is not known` });
  }
  return { unknown };
}

function couldBeClassOne(layer: Layer): boolean {
  const material = materialNamed(layer.material?.value ?? '');
  return material === undefined ? layer.family !== 'sheathing' : material.foamPlastic === true;
}

/** Wood and gypsum between two layers: what suffers when it cannot dry. */
export function sensitiveBetween(detail: Detail, inner: Layer, outer: Layer): Layer | undefined {
  return detail.layers.find(
    (layer) =>
      layer.index > inner.index - (inner.framing === undefined ? 0 : 1) &&
      layer.index < outer.index &&
      isSensitive(layer),
  );
}

function isSensitive(layer: Layer): boolean {
  if (layer.framing?.material === 'wood') return true;
  const text = layer.material?.value ?? layer.product?.name ?? '';
  return layer.family === 'sheathing'
    ? /gypsum|wood|osb|strand|fiberboard/i.test(text)
    : materialNamed(text)?.moistureSensitive === true;
}
