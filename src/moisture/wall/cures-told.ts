/** What would make a wall pass, in sentences: insulation outside, a tighter layer inside, each followed again. */
import { highestInside, passesInside, retarderSpot, TIGHTEST_INSIDE_SD_M, type Cure } from './cure.js';
import { askedOfInsulation, type AskedOfInsulation } from './asked-of-insulation.js';
import { exposedMasonry } from './exposed-masonry.js';
import type { WallYear } from './of-detail.js';
import type { LayerFigures } from './figures.js';
import { permeanceText, resistanceText } from '../words.js';
import { sdFromPermeanceM } from '../resistance.js';
import { classOfPermeance, permToNg, type VaporClass } from '../../vapor/classes.js';
import { outerSide } from '../../vapor/double-barrier.js';
import { interiorLimit } from '../../vapor/conditions-met.js';
import { frameOf } from '../../vapor/frame.js';
import { jurisdiction, permitted } from '../../vapor/permitted.js';
import type { Detail } from '../../model/types.js';
import type { UnitSystem } from '../../model/unit-system.js';

/** The two changes solved for, and the sentence that tells them. */
export interface Cures {
  readonly insulation: Cure;
  readonly inside: Cure;
  /** `Add continuous insulation of at least R-4.9 ...; or ...`, or that neither is enough. */
  readonly text: string;
}

/**
 * Solves for the change that makes the wall of a detail pass, and tells it.
 *
 * Each value proposed meets the code of the place too: enough insulation for a class III retarder, and an interior layer
 * of a class that may stand there. Solid masonry that stores rain gets no tighter layer inside; beside a class I layer outside none of
 * class I is.
 * @see leastInsulation, highestInside
 */
export function curesOf(detail: Detail, year: WallYear, system: UnitSystem): Cures {
  const { read, air } = year;
  const frame = frameOf(detail);
  const tightOutside = frame !== undefined && outerSide(detail, frame).barrier !== undefined;
  // Just more permeable than class I.
  const mostSdM = tightOutside ? sdFromPermeanceM(permToNg(0.11)) : TIGHTEST_INSIDE_SD_M;
  const asked = askedOfInsulation(detail, year, system);
  const insulation = asked.byYear;
  const inside = highestInside(read, air, retarderSpot(detail, read.walls), mostSdM);
  const masonry = exposedMasonry(detail);
  const ways = [
    ...insulationTold(asked, read.walls[0].layers, system),
    ...(masonry.kind === 'drained' ? insideTold(detail, inside, year, system) : []),
  ];
  const [first, ...others] = ways;
  const text =
    first === undefined && masonry.kind !== 'drained'
      ? 'Have licensed practice test the masonry and design the wall by transient simulation, rain and frost counted.'
      : first === undefined
        ? `No fibrous insulation up to ${resistanceText(limitOf(insulation), system)} outside and no interior layer that may be used brings the wall there; let it dry outward, or have it designed for drier indoor air.`
        : `${[`${first[0]?.toUpperCase() ?? ''}${first.slice(1)}`, ...others].join('; or ')}. The code may ask for more.`;
  return { insulation, inside, text };
}

const limitOf = (cure: Cure): number => (cure.kind === 'found' ? cure.value : cure.most);

function insulationTold(asked: AskedOfInsulation, layers: readonly LayerFigures[], system: UnitSystem): string[] {
  const { byYear: cure, text: value, words } = asked;
  if (cure.kind !== 'found' || value === undefined) return [];
  const there = layers[cure.spot.index];
  return cure.spot.changes === undefined || there === undefined
    ? [
        `add continuous insulation of at least ${value}${words}, open to vapor, outside "${layers[cure.spot.index - 1]?.layer.id ?? 'the wall'}"`,
      ]
    : [
        `make the continuous insulation "${there.layer.id}" at least ${value} of its kind${words}, now ${resistanceText(there.rM2KW, system)}`,
      ];
}

function insideTold(detail: Detail, cure: Cure, { read, air }: WallYear, system: UnitSystem): string[] {
  if (cure.kind !== 'found') return [];
  const { layers } = read.walls[0];
  const code = interiorLimit(detail);
  const capped = code !== undefined && code.mostNgPerPaSM2 < cure.value * (1 - 1e-6);
  const value = capped ? code.mostNgPerPaSM2 : cure.value;
  // What the code takes has to pass the year as well.
  if (capped && !passesInside(read, air, cure.spot, value)) return [];
  const vaporClass = classOfPermeance(value);
  if (barred(detail, vaporClass)) return [];
  const kind = capped ? ` (${code.words})` : vaporClass === 'none' ? '' : ` (class ${vaporClass})`;
  const most = `at most ${permeanceText(value, system)}${kind}`;
  const there = layers[cure.spot.index];
  return cure.spot.changes === undefined || there === undefined
    ? [`put a layer of ${most} on the room side of "${there?.layer.id ?? ''}"`]
    : [`make "${there.id}" a layer of ${most}`];
}

function barred(detail: Detail, vaporClass: VaporClass): boolean {
  const place = jurisdiction(detail.project);
  return place.kind === 'known' && vaporClass !== 'none' && permitted(place, vaporClass).permission === 'no';
}
