/** Words for the followed year of a wall: where, between which layers, under which limit, with what left out. */
import type { Plane } from '../resistance.js';
import { monthName, percent, waterText } from '../words.js';
import type { JudgedYear, WetPlane } from './judge.js';
import { wallYearOf, type WallYear } from './of-detail.js';
import type { Wall } from './wall.js';
import { stationText } from '../../climate/stations.js';
import { showsWholeWall } from '../../model/drawn.js';
import type { Detail, Layer } from '../../model/types.js';
import type { UnitSystem } from '../../model/unit-system.js';

/** The followed year of a detail that shows its wall from face to face; `undefined` for any other. */
export function wholeYearOf(detail: Detail): WallYear | undefined {
  if (!showsWholeWall(detail)) return undefined;
  const year = wallYearOf(detail);
  return year.kind === 'followed' ? year : undefined;
}

/** `in a typical year at CHICAGO OHARE INTL AP, IL (725300)` */
export function whereTold({ climate }: WallYear): string {
  const at = `a typical year at ${stationText(climate.station)}`;
  return climate.from === 'zone' ? `in ${at}, which stands for the zone` : `in ${at}`;
}

/** What a computed result rests on, then what the method leaves out, the caution last. */
export function notesOf(year: WallYear, leftOut: readonly string[], more: readonly string[] = []): string[] {
  return [...year.assumptions, ...more, ...leftOut];
}

/** `between "studs" and "sheathing"`, `inside "block"`. */
export function placeTold({ inner, outer }: Pick<Plane, 'inner' | 'outer'>): string {
  const [from, to] = [inner?.id, outer?.id];
  if (from === undefined || to === undefined) return `at the face of "${from ?? to ?? ''}"`;
  return from === to ? `inside "${from}"` : `between "${from}" and "${to}"`;
}

/** The drawn layer to point at: the one that begins at the plane, for its inner face gets wet; else the innermost. */
export function layerAt(wall: Wall, plane?: Plane): Layer {
  const id = (plane?.outer ?? plane?.inner)?.id;
  const figures = wall.layers.find((f) => f.id === id) ?? wall.layers[0];
  if (figures === undefined) throw new RangeError('A wall with at least one layer is expected.');
  return figures.layer;
}

/** `0.69 oz/ft2 (3 % of the mass of "sheathing")` */
export function limitTold({ limit }: WetPlane, system: UnitSystem): string {
  if (limit?.mostKgPerM2 === undefined) return 'an amount that is not known';
  const share = limit.rule.shareOfMass;
  const of = share === undefined ? '' : ` (${percent(share)} of the mass of "${limit.layer?.id ?? ''}")`;
  return `${waterText(limit.mostKgPerM2, system)}${of}`;
}

/** What the year makes of the wall, as a clause: `0.62 kg/m2 gathers between "studs" and "sheathing" by March ...`. */
export function outcomeTold({ outcome, worst, year }: JudgedYear, system: UnitSystem): string {
  if (worst === undefined) return 'nothing condenses inside the wall in any month';
  const gathers = `${waterText(worst.kgPerM2, system)} of water gathers ${placeTold(worst.plane)} by ${monthName(worst.month)}`;
  switch (outcome) {
    case 'too much':
      return `${gathers}, more than ${limitTold(worst, system)}; all of it dries again`;
    case 'remains':
      return `${gathers}, and ${waterText(year.residualKgPerM2, system)} is left in the wall after twelve months`;
    case 'no limit':
      return `${gathers} and dries again; how much "${worst.limit?.layer?.id ?? ''}" bears is not known`;
    default:
      return `${gathers}, within ${limitTold(worst, system)}, and all of it dries again`;
  }
}
