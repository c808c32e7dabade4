/** Which layers take up rain. */
import { RESERVOIRS } from '../data/inward.js';
import type { Layer } from '../../model/types.js';

const CAN_STORE: ReadonlySet<Layer['family']> = new Set<Layer['family']>(['cladding', 'masonry', 'concrete', 'other']);

/** A cladding that takes up rain, by its name. @see RESERVOIRS */
export function storesRain(layer: Layer): boolean {
  const text = ` ${`${layer.material?.value ?? ''} ${layer.product?.name ?? ''}`.toLowerCase().replace(/[^a-z0-9]+/g, ' ')} `;
  return (
    CAN_STORE.has(layer.family) &&
    RESERVOIRS.words.some((word) => text.includes(` ${word} `) || text.includes(` ${word}s `))
  );
}
