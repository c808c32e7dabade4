/** What a drawing is made from, and small questions that several views ask of it. */
import type { NumberedFinding } from './findings.js';
import type { WallFace } from '../../geometry/types.js';
import type { Apply, Detail, Layer, Opening, Work } from '../../model/types.js';
import type { RunOfWater } from '../../water/run/run.js';

export { systemOf } from '../../model/unit-system.js';

export interface DrawingSubject {
  readonly detail: Detail;
  readonly face: WallFace;
  readonly water: RunOfWater;
  readonly findings: readonly NumberedFinding[];
}

/** The last work that puts on a layer. */
export function workOfLayer(detail: Detail, layer: Layer): Apply | undefined {
  return detail.work.findLast((w): w is Apply => w.action === 'apply' && w.layer === layer);
}

/** What a layer is made of, in the words of the detail. */
export function materialText(layer: Layer): string {
  return layer.product?.name ?? layer.material?.value ?? layer.productId?.value ?? layer.family;
}

/** Film of a work or layer, wet and dry, as written; empty when none is given. */
export function filmText(of: Pick<Layer, 'wetFilmUm' | 'dryFilmUm'> | Pick<Apply, 'wetFilmUm' | 'dryFilmUm'>): string {
  return [
    of.wetFilmUm === undefined ? '' : `${of.wetFilmUm.text} wet`,
    of.dryFilmUm === undefined ? '' : `${of.dryFilmUm.text} dry`,
  ]
    .filter(Boolean)
    .join(', ');
}

const several = (words: readonly string[]): string => words.join(', ');

/** One line for a step of the work: what, where, of what. */
export function workText(work: Work): string {
  const of = 'openings' in work && work.of.length > 0 ? ` of ${several(work.of.map((o) => o.value))}` : '';
  switch (work.action) {
    case 'apply': {
      const what = work.product?.name ?? work.layer?.material?.value ?? work.productId?.value ?? work.family;
      const film = filmText(work);
      return `${work.id}: ${several(work.places.map((p) => p.value))}${of}, ${what}${film === '' ? '' : `, ${film}`}`;
    }
    case 'set':
      return `${work.id}: set the ${work.sets}${of}`;
    case 'close':
      return `${work.id}: close the ${work.closes}${of}`;
    case 'hold':
      return `${work.id}: hold for ${work.holds.value}${work.of.length > 0 ? ` of ${several(work.of.map((o) => o.value))}` : ''}`;
  }
}

/** `Window` for the type of an opening that has one, with its mounting. */
export function unitText(opening: Opening): string {
  const mounting = opening.unit?.mounting?.value;
  return `${opening.type}${mounting === undefined ? '' : mounting === 'flange' ? ', flanged' : ', recessed'}`;
}
