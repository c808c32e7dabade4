/** Whether a wall meets the conditions for a class III retarder, and how permeable the inside may be if it does not. */
import { askedInsulation, conditionsAt, standing } from './class-three.js';
import { permToNg } from './classes.js';
import type { CodeSource } from './data/code-source.js';
import { frameOf } from './frame.js';
import { continuousInsulation } from './insulation.js';
import { jurisdiction, permitted } from './permitted.js';
import { sheathingOf, venting } from './venting.js';
import type { Detail } from '../model/types.js';

/** The most that class II lets through, perm. @see IRC 2021 R202, IBC 2021 202, classes of vapor retarders */
const CLASS_TWO_MOST_PERM = 1;

/** What the table asks of insulation outside before paint alone may stand inside. */
export interface InsulationForClassThree {
  /** Of all continuous insulation together, US R. */
  readonly usR: number;
  readonly source: CodeSource;
}

/** Met by vented cladding over a sheathing of the table, for sure. */
function metByVenting(detail: Detail, ventedOver: readonly string[]): boolean {
  const frame = frameOf(detail);
  if (frame === undefined) return false;
  const sheathing = sheathingOf(detail, frame);
  return (
    venting(detail, frame).kind === 'vented' && sheathing.kind === 'known' && ventedOver.includes(sheathing.sheathing)
  );
}

/**
 * The insulation that the code of the place asks for beside a class III retarder.
 *
 * @returns `undefined` where class III stands there without conditions, where the vented cladding of the wall meets
 * them, and where place or frame are not known
 */
export function insulationForClassThree(detail: Detail): InsulationForClassThree | undefined {
  const frame = frameOf(detail);
  const place = jurisdiction(detail.project);
  if (frame === undefined || place.kind !== 'known' || permitted(place, 'III').permission !== 'conditions')
    return undefined;
  const row = conditionsAt(place);
  if (row === undefined || metByVenting(detail, row.ventedOver)) return undefined;
  const asked = askedInsulation(row, frame);
  return { usR: asked.mostUsR ?? asked.leastUsR, source: row.source };
}

/** The most permeable interior layer that the code of the place takes for this wall as it is drawn. */
export interface InteriorLimit {
  readonly mostNgPerPaSM2: number;
  /** `class II by IBC 2021 Table 1404.3(2)` */
  readonly words: string;
}

/** @returns `undefined` where class III may stand inside of this wall, or the place is not known */
export function interiorLimit(detail: Detail): InteriorLimit | undefined {
  const place = jurisdiction(detail.project);
  const asked = insulationForClassThree(detail);
  const frame = frameOf(detail);
  if (asked === undefined || frame === undefined || place.kind !== 'known') return undefined;
  const row = conditionsAt(place);
  const known = continuousInsulation(detail, frame).knownM2KPerW;
  if (row !== undefined && standing(askedInsulation(row, frame), known) === 'met') return undefined;
  const { citation } = permitted(place, 'III').source;
  return { mostNgPerPaSM2: permToNg(CLASS_TWO_MOST_PERM), words: `class II by ${citation}` };
}
