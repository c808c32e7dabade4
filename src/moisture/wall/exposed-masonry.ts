/** Masonry that faces the weather with nothing behind it to drain: it holds the rain, and no method here follows that. */
import { isSpace } from '../../model/families.js';
import { storesRain } from './stores-rain.js';
import type { CodeSource } from '../../vapor/data/code-source.js';
import { insulates } from '../../vapor/insulation.js';
import { remembered } from '../../model/remembered.js';
import type { Detail, Layer } from '../../model/types.js';
import { fieldOfLayer } from '../../model/named-field.js';

/** What stands behind every sentence of this file. */
export const RAIN_STORAGE: CodeSource = {
  basis: 'practice',
  citation:
    'common practice: masonry that faces the weather stores rain, and insulation inside keeps it colder and wetter',
  provenance: 'common practice, no source',
};

export type Exposure =
  /** No such masonry, or a drained cavity or a drainage plane between it and the rest of the wall. */
  | { readonly kind: 'drained' }
  | { readonly kind: 'exposed'; readonly masonry: Layer }
  /** Nothing but a cavity could drain it, and the drawing does not say whether that is drained. */
  | { readonly kind: 'unsaid'; readonly masonry: Layer; readonly missing: string };

const SHEDS: ReadonlySet<Layer['family']> = new Set<Layer['family']>([
  'fluid-applied membrane',
  'self-adhered membrane',
  'mechanically fastened sheet',
  'building paper',
]);
const MASS: ReadonlySet<Layer['family']> = new Set<Layer['family']>(['masonry', 'concrete']);
const MASONRY_WORDS = /\b(?:brick|stone|masonry|block|adobe|terra cotta|concrete)s?\b/i;
/** Skins of insulating forms and panels are cement as well, but no mass. */
const NO_MASONRY = /\bfiber cement\b|\binsulating concrete form\b/i;

function isMasonry(layer: Layer): boolean {
  const text = layer.material?.value ?? layer.product?.name ?? '';
  if (NO_MASONRY.test(text) || insulates(layer)) return false;
  return MASS.has(layer.family) || (MASONRY_WORDS.test(text) && storesRain(layer));
}

const coats = (layer: Layer): boolean => layer.family === 'paint' || isMasonry(layer) || storesRain(layer);
const isBackup = (layer: Layer): boolean => layer.family === 'sheathing' || insulates(layer) || isMasonry(layer);

/**
 * Whether masonry of a wall takes the rain with nothing to drain it.
 *
 * Looked at is the run of masonry, render and paint at the outer face. It is drained by a water-resistive barrier or a
 * cavity before a backup of sheathing, exterior insulation or more masonry; a cavity before studs alone has to say that
 * it is drained. A wall that is all masonry is exposed too.
 * @see RAIN_STORAGE
 */
export const exposedMasonry = remembered((detail: Detail): Exposure => {
  const outward = detail.layers.toReversed();
  const end = outward.findIndex((layer) => !coats(layer));
  const run = end < 0 ? outward : outward.slice(0, end);
  const masonry = run.findLast(isMasonry);
  if (masonry === undefined) return { kind: 'drained' };
  const [next, ...further] = end < 0 ? [] : outward.slice(end);
  if (next === undefined) return { kind: 'exposed', masonry };
  if (!isSpace(next.family))
    // A membrane on the room side of solid masonry drains nothing; one before a backup does.
    return SHEDS.has(next.family) && further[0] !== undefined && isBackup(further[0])
      ? { kind: 'drained' }
      : { kind: 'exposed', masonry };
  const plane = further.find((layer) => !isSpace(layer.family));
  if (plane !== undefined && SHEDS.has(plane.family)) return { kind: 'drained' };
  if (next.drained?.value === false) return { kind: 'exposed', masonry };
  return next.drained?.value === true || next.vented?.value === true || (plane !== undefined && isBackup(plane))
    ? { kind: 'drained' }
    : { kind: 'unsaid', masonry, missing: fieldOfLayer(next, 'drained') };
});

/** Why no computed answer passes such a wall, in sentences. */
export function rainStorageTold(masonry: Layer): string {
  return `Rain that "${masonry.id}" stores and its freezing are not followed here, and insulation inside makes masonry colder and wetter: have licensed practice analyze the wall by transient simulation, with tests of the masonry (${RAIN_STORAGE.provenance}).`;
}

/** The same where only a drained cavity could keep the rain off the rest of the wall, and none is stated. */
export function drainedUnsaidTold(masonry: Layer, missing: string): string {
  return `Whether the cavity behind "${masonry.id}" is drained is not stated: if it is not, the masonry stores rain that is not followed here; state ${missing}.`;
}

export interface RainLeftOut {
  readonly told: string;
  /** Fields that would show the wall to be drained. */
  readonly missing: readonly string[];
}

/** What goes with every computed answer of such a wall; `undefined` for a drained one. */
export function rainLeftOut(detail: Detail): RainLeftOut | undefined {
  const found = exposedMasonry(detail);
  if (found.kind === 'drained') return undefined;
  return found.kind === 'exposed'
    ? { told: rainStorageTold(found.masonry), missing: [] }
    : { told: drainedUnsaidTold(found.masonry, found.missing), missing: [found.missing] };
}
