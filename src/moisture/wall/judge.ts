/** Whether a drawn wall stays sound through a year: over all that its drawing leaves open. */
import { yearOfWater, type PlanePeak, type YearOfWater } from '../condensation.js';
import type { MonthOfAir } from '../interior-climate.js';
import { amountLimits, type AmountLimit } from '../limits.js';
import type { MoistureLayer } from '../resistance.js';
import type { Surfaces } from '../data/surfaces.js';
import type { LayerFigures } from './figures.js';
import { rememberedInAir } from './remembered-in-air.js';
import { isOuter, moistureLayers, type ReadWall, type Wall } from './wall.js';
import { fieldOfLayer } from '../../model/named-field.js';

/** `too much`: dries, but more gathers than the material bears. `no limit`: dries; what it bears is not known. */
export type WallOutcome = 'dry' | 'dries' | 'too much' | 'remains' | 'no limit';

export interface WetPlane extends PlanePeak {
  /** The strictest limit at the plane; without an amount where a mass is not known. */
  readonly limit?: AmountLimit;
}
export interface JudgedYear {
  readonly outcome: WallOutcome;
  readonly wall: Wall;
  readonly layers: readonly MoistureLayer[];
  readonly year: YearOfWater;
  /** The plane that decides: the one furthest over its limit, else the wettest. */
  readonly worst?: WetPlane;
}
export interface WallJudgement {
  /** `undecided` where the answer hangs on figures or fields that no document gives. */
  readonly kind: 'accepted' | 'refused' | 'undecided';
  /** With figures halfway between their bounds, ended at the cavity if one may be vented. */
  readonly typical: JudgedYear;
  /** Fields that would decide it. */
  readonly hangsOn: readonly string[];
}

/** The side that is cold and damp through the season that counts: the one with less vapor over the year. */
export function coldSide(year: readonly MonthOfAir[]): 'inside' | 'outside' {
  const drive = year.reduce((sum, m) => sum + m.inside.vaporPressurePa - m.outside.vaporPressurePa, 0);
  return drive >= 0 ? 'outside' : 'inside';
}

const share = (plane: WetPlane): number => plane.kgPerM2 / (plane.limit?.mostKgPerM2 ?? Infinity);

/** A year of one wall with settled figures, held against the limits of its materials. */
export function judgeYear(wall: Wall, layers: readonly MoistureLayer[], year: readonly MonthOfAir[]): JudgedYear {
  const water = followed(layers, year, wall.surfaces);
  // Those of the kept year: its planes know their layers by identity.
  return { wall, layers: water.section.layers, ...heldAgainstLimits(water) };
}

const kept = rememberedInAir<YearOfWater>();

function followed(layers: readonly MoistureLayer[], year: readonly MonthOfAir[], surfaces: Surfaces): YearOfWater {
  const figures = [surfaces.insideM2KW, surfaces.outsideM2KW, layers];
  return kept(year, figures, () => yearOfWater(layers, year, { surfaces }));
}

/** A year of water held against the limits at each of its wet planes. */
export function heldAgainstLimits(water: YearOfWater): Pick<JudgedYear, 'outcome' | 'year' | 'worst'> {
  const planes = water.planes.map((peak): WetPlane => {
    const limits = amountLimits(peak.plane);
    // A limit that cannot be told may be the strictest of all.
    const held = limits.find((l) => l.mostKgPerM2 === undefined) ?? limits[0];
    return { ...peak, ...(held === undefined ? {} : { limit: held }) };
  });
  const [first, ...rest] = planes;
  const worst =
    first === undefined
      ? undefined
      : rest.reduce((a, b) => (share(b) > share(a) || (share(b) === share(a) && b.kgPerM2 > a.kgPerM2) ? b : a), first);
  const known = { year: water, ...(worst === undefined ? {} : { worst }) };
  if (water.outcome === 'none') return { ...known, outcome: 'dry' };
  if (water.outcome === 'remains') return { ...known, outcome: 'remains' };
  if (planes.some((p) => share(p) > 1)) return { ...known, outcome: 'too much' };
  const unknown = planes.find((p) => p.limit?.mostKgPerM2 === undefined);
  return unknown === undefined ? { ...known, outcome: 'dries' } : { ...known, worst: unknown, outcome: 'no limit' };
}

/** Stays dry, or dries within what its materials bear. */
export const accepted = (judged: Pick<JudgedYear, 'outcome'>): boolean =>
  judged.outcome === 'dry' || judged.outcome === 'dries';
const settled = (judged: JudgedYear): 'accepted' | 'refused' | 'no limit' =>
  judged.outcome === 'no limit' ? 'no limit' : accepted(judged) ? 'accepted' : 'refused';

const spreads = (layer: LayerFigures): boolean =>
  layer.dry.leastM < layer.dry.mostM || layer.wet.leastM < layer.wet.mostM;

/** The wall with figures halfway between their bounds. */
export function typicalLayers(wall: Wall, year: readonly MonthOfAir[]): MoistureLayer[] {
  return moistureLayers(wall, coldSide(year), () => 'typicalM');
}

/** Both ends of what the wall may be, none where no figure spans: open inside and tight outside, and the reverse. */
export function extremes(wall: Wall, year: readonly MonthOfAir[]): MoistureLayer[][] {
  if (!wall.layers.some(spreads)) return [];
  const cold = coldSide(year);
  return [false, true].map((tightInside) =>
    moistureLayers(wall, cold, (_, i) => (isOuter(wall, i) !== tightInside ? 'mostM' : 'leastM')),
  );
}

/**
 * Judges a wall by the monthly method.
 *
 * Every reading of the drawing is followed with figures halfway and at both ends of what generic figures span; the
 * wall is accepted or refused only when all agree.
 * @param year air on both sides, twelve months from January
 * @see yearOfWater for the method, amountLimits for what counts as too much
 */
export function judgeWall(read: ReadWall, year: readonly MonthOfAir[]): WallJudgement {
  const typicals = read.walls.map((wall) => judgeYear(wall, typicalLayers(wall, year), year));
  const typical = typicals[0] as JudgedYear;
  const ends = read.walls.flatMap((wall) => extremes(wall, year).map((layers) => judgeYear(wall, layers, year)));
  const kinds = new Set([...typicals, ...ends].map(settled));
  const [only] = kinds;
  const oneSided = read.unsaidVenting !== undefined && read.walls.length === 1;
  // A wall that gathers water behind a vented cladding gathers no less behind a tight one; the reverse is not so.
  if (kinds.size === 1 && only !== 'no limit' && only !== undefined && !(oneSided && only === 'accepted'))
    return { kind: only, typical, hangsOn: [] };
  const hangsOn = new Set<string>();
  if (read.unsaidVenting !== undefined && (oneSided || new Set(typicals.map(settled)).size > 1))
    hangsOn.add(read.unsaidVenting);
  for (const judged of typicals) for (const field of fieldsThatFlip(judged, year)) hangsOn.add(field);
  for (const judged of [...typicals, ...ends])
    if (judged.outcome === 'no limit' && judged.worst?.limit?.layer !== undefined)
      hangsOn.add(thicknessField(judged.wall, judged.worst.limit.layer.id));
  // Where no figure alone decides, all of them together do.
  if (hangsOn.size === 0)
    for (const { layers } of read.walls) for (const layer of layers) if (spreads(layer)) hangsOn.add(layer.field);
  return { kind: 'undecided', typical, hangsOn: [...hangsOn] };
}

function thicknessField(wall: Wall, id: string): string {
  const found = wall.layers.find((l) => l.id === id)?.layer;
  return found === undefined ? 'wall.thickness' : fieldOfLayer(found, 'thickness');
}

/** Fields of the figures that alone, moved to either bound, turn the answer. */
function fieldsThatFlip(typical: JudgedYear, year: readonly MonthOfAir[]): string[] {
  const { wall } = typical;
  const cold = coldSide(year);
  const was = settled(typical);
  return wall.layers.filter(spreads).flatMap((layer) => {
    const moved = (['leastM', 'mostM'] as const).map((bound) =>
      judgeYear(
        wall,
        moistureLayers(wall, cold, (l) => (l === layer ? bound : 'typicalM')),
        year,
      ),
    );
    return moved.some((m) => settled(m) !== was) ? [layer.field] : [];
  });
}
