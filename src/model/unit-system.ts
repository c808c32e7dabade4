/** Units of a drawing: a report speaks the system its author drew in. */
import type { Detail } from './types.js';

export type UnitSystem = 'US' | 'SI';

/** The unit system of the author: that of most lengths of the openings, layers and flashings; US when in doubt. */
export function systemOf(detail: Detail): UnitSystem {
  const lengths = [
    ...detail.openings.flatMap((o) => [o.widthMm, o.heightMm]),
    ...detail.layers.flatMap((l) => (l.thicknessMm === undefined ? [] : [l.thicknessMm])),
    ...detail.work.flatMap((w) => (w.action === 'apply' && w.ontoWallMm !== undefined ? [w.ontoWallMm] : [])),
  ];
  const si = lengths.filter((q) => q.system === 'SI').length;
  return si * 2 > lengths.length ? 'SI' : 'US';
}
