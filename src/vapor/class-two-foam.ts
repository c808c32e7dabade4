/** The condition on a class II interior retarder with foam-plastic continuous insulation outside. */
import { permToNg } from './classes.js';
import { classTwoFoamRow, type InsulationPair } from './data/condition-tables.js';
import { continuousInsulation, isFoamPlastic, type ContinuousInsulation } from './insulation.js';
import type { InteriorRetarder } from './interior-side.js';
import type { KnownPlace } from './permitted.js';
import type { Detail, Layer } from '../model/types.js';

export interface ClassTwoWithFoam {
  readonly row: InsulationPair;
  readonly insulation: ContinuousInsulation;
}

/** The row and the insulation when the condition applies at the place and the wall has foam outside its frame. */
export function classTwoWithFoam(detail: Detail, frame: Layer, place: KnownPlace): ClassTwoWithFoam | undefined {
  const row = classTwoFoamRow(place.tables.title, place.tables.edition, place.zone);
  if (row === undefined) return undefined;
  const insulation = continuousInsulation(detail, frame);
  return insulation.layers.some((i) => i.layer !== frame && isFoamPlastic(i.layer)) ? { row, insulation } : undefined;
}

/** Whether the retarder passes more than 1 perm in the wet cup; `undefined` when nothing says so. */
export function opensWhenDamp(retarder: InteriorRetarder): boolean | undefined {
  if (retarder.wetNgPerPaSM2 !== undefined) return retarder.wetNgPerPaSM2 > permToNg(1) * (1 + 1e-9);
  return retarder.responsive ? true : undefined;
}
