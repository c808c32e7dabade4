/** What closes the gap between unit and opening on the inside, side by side. */
import { coversSide, worksAt } from '../water/at-opening.js';
import { SIDES, type Apply, type Detail, type Family, type Opening, type Side } from '../model/types.js';

/** Families that fill or back a gap without closing it to air. */
const NOT_A_SEAL: ReadonlySet<Family> = new Set<Family>([
  'backer rod',
  'primer',
  'paint',
  'batt insulation',
  'board insulation',
  'air space',
  'framing',
  'cladding',
  'drainage mat',
]);
const FIBROUS: ReadonlySet<Family> = new Set<Family>(['batt insulation', 'board insulation']);

/** True for works at the interior perimeter that close the gap to air. */
export function sealsAir(work: Apply): boolean {
  return !NOT_A_SEAL.has(work.family);
}

/** True for insulation that air passes through. */
export function isFibrous(work: Apply): boolean {
  return FIBROUS.has(work.family);
}

/** Interior seals of an opening, in order of work. */
export function interiorSeals(detail: Detail, opening: Opening): Apply[] {
  return worksAt(detail, opening, 'interior perimeter').filter(sealsAir);
}

/** Sides that none of the works runs along, in the fixed order head, jambs, sill. */
export function openSides(works: readonly Apply[]): Side[] {
  return SIDES.filter((side) => !works.some((w) => coversSide(w, side)));
}
