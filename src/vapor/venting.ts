/** Whether the cladding is vented in the sense of the class III table, and over which sheathing it stands. */
import { isSpace } from '../model/families.js';
import { BRICK_AIR_SPACE, VENTED_BY_SHAPE, type SheathingKind } from './data/condition-tables.js';
import { isFoamPlastic } from './insulation.js';
import { materialNamed } from './materials.js';
import { fieldOfLayer } from '../model/named-field.js';
import type { Detail, Layer } from '../model/types.js';

export type Venting =
  /** `unsaid`: vented in the sense of the table alone; the field that would say whether air moves in it. */
  | { readonly kind: 'vented'; readonly layer: Layer; readonly words: string; readonly unsaid?: string }
  | { readonly kind: 'not vented'; readonly words: string }
  | { readonly kind: 'unknown'; readonly missing: readonly string[]; readonly words: string };

export type SheathingFound =
  | { readonly kind: 'known'; readonly layer: Layer; readonly sheathing: SheathingKind }
  | { readonly kind: 'covered'; readonly layer: Layer; readonly by: Layer }
  | { readonly kind: 'unknown'; readonly missing: readonly string[] };

/** A sheathing product of an unusual kind is no sheathing of the table. */
const isSheathing = (layer: Layer): boolean => layer.family === 'sheathing';

function named(layer: Layer, words: readonly string[]): boolean {
  const text = ` ${(layer.material?.value ?? '').toLowerCase().replace(/[^a-z0-9]+/g, ' ')} `;
  return words.some((w) => text.includes(` ${w} `));
}

/**
 * Vented cladding: by its shape (vinyl, polypropylene or aluminum siding), brick over a clear air space, or any cladding
 * over a layer that says `vented: true`.
 *
 * The table counts brick over such a space whatever the drawing says of its vents; a computation must not.
 * @see VENTED_BY_SHAPE, BRICK_AIR_SPACE
 */
export function venting(detail: Detail, frame: Pick<Layer, 'index'>): Venting {
  const outside = detail.layers.filter((layer) => layer.index > frame.index);
  const vented = outside.find((layer) => layer.vented?.value === true);
  if (vented !== undefined) return { kind: 'vented', layer: vented, words: `"${vented.id}" is vented` };
  const cladding = outside.findLast((layer) => layer.family === 'cladding');
  if (cladding === undefined) return { kind: 'unknown', missing: ['wall'], words: 'the wall shows no cladding' };
  if (cladding.vented?.value !== false && named(cladding, VENTED_BY_SHAPE.words))
    return { kind: 'vented', layer: cladding, words: `"${cladding.id}" is vented by its shape` };
  const gap = outside.findLast((layer) => isSpace(layer.family) && layer.index < cladding.index);
  if (
    gap !== undefined &&
    gap.vented === undefined &&
    (gap.thicknessMm?.value ?? 0) >= BRICK_AIR_SPACE.leastMm &&
    gap.family === 'air space' &&
    named(cladding, ['brick', 'bricks'])
  )
    return {
      kind: 'vented',
      layer: gap,
      words: `brick over the air space "${gap.id}", which the code counts as vented`,
      unsaid: fieldOfLayer(gap, 'vented'),
    };
  if (gap !== undefined && gap.vented === undefined)
    return {
      kind: 'unknown',
      missing: [fieldOfLayer(gap, 'vented')],
      words: `"${gap.id}" does not say whether it is vented`,
    };
  // "Cladding" alone may be anything; a named kind that lies on the wall is not vented.
  const generic = cladding.material !== undefined && materialNamed(cladding.material.value) === undefined;
  if (gap === undefined && generic && cladding.vented === undefined)
    return {
      kind: 'unknown',
      missing: [fieldOfLayer(cladding, 'vented')],
      words: `"${cladding.id}" does not say whether it is vented`,
    };
  return {
    kind: 'not vented',
    words: gap === undefined ? `"${cladding.id}" lies on the wall without a vented space` : `"${gap.id}" is not vented`,
  };
}

/** The sheathing on the frame, and whether foam plastic stands between it and the vented space. */
export function sheathingOf(detail: Detail, frame: Layer): SheathingFound {
  const outside = detail.layers.filter((layer) => layer.index > frame.index);
  const layer = outside.find(isSheathing);
  if (layer === undefined) return { kind: 'unknown', missing: ['wall'] };
  const foam = outside.find((other) => other.index > layer.index && isFoamPlastic(other));
  if (foam !== undefined) return { kind: 'covered', layer, by: foam };
  const text = `${layer.material?.value ?? ''} ${layer.product?.name ?? ''}`;
  const kind = materialNamed(text)?.sheathing ?? (/\bgypsum\b/i.test(text) ? 'gypsum' : undefined);
  return kind === undefined
    ? { kind: 'unknown', missing: [layer.material === undefined ? 'product.name' : fieldOfLayer(layer, 'material')] }
    : { kind: 'known', layer, sheathing: kind };
}
