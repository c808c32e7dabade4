/** Condensation in a wall through a year of monthly means: how much, where, when, and whether it dries. */
import { MONTH_DAYS, SECONDS_PER_DAY } from './data/air.js';
import { SURFACE_RESISTANCES, type Surfaces } from './data/surfaces.js';
import type { Air, MonthOfAir } from './interior-climate.js';
import { CAUTION, leftOutBy } from './left-out.js';
import { saturationPressurePa, type SaturationFormula } from './psychrometrics.js';
import { saturationsPa, sectionOf, type MoistureLayer, type Plane, type Section } from './resistance.js';
import { overSpan, totalKgPerM2, type Water } from './span.js';
import { touchedPlanes } from './tangent.js';

export interface YearOptions {
  /** Those of ISO 13788 for condensation in walls unless given. */
  readonly surfaces?: Surfaces;
  readonly formula?: SaturationFormula;
  /** See `sectionOf`. */
  readonly mostSliceM2KW?: number;
}
export interface WaterAt {
  readonly plane: Plane;
  readonly kgPerM2: number;
}
export interface MonthOfWater {
  /** 1 for January. */
  readonly month: number;
  /** Change over the month; below zero it dries. */
  readonly gainKgPerM2: number;
  /** Vapor through the inside surface inward of the wall, and through the outside surface out of it. */
  readonly inKgPerM2: number;
  readonly outKgPerM2: number;
  /** At the end of the month. */
  readonly water: readonly WaterAt[];
  readonly totalKgPerM2: number;
  /** Vapor pressure reaches saturation on a surface: wet there, beyond what this method follows. */
  readonly wetSurface?: 'inside' | 'outside' | 'both';
}
export interface PlanePeak extends WaterAt {
  /** Month in which the peak is reached. */
  readonly month: number;
}
export interface YearOfWater {
  /** `none` condenses; all of it `dries` within the year; some `remains` after twelve months. */
  readonly outcome: 'none' | 'dries' | 'remains';
  /** Month the wetting starts from a dry wall, 1 for January; absent for `none`. */
  readonly startMonth?: number;
  /** Greatest water in all planes together. */
  readonly peakKgPerM2: number;
  readonly peakMonth?: number;
  /** After twelve months from a dry wall. */
  readonly residualKgPerM2: number;
  /** Peak at each plane that was ever wet, inside to outside. */
  readonly planes: readonly PlanePeak[];
  /** From the start month on; from January for `none`. */
  readonly months: readonly MonthOfWater[];
  readonly section: Section;
  /** A sentence for each thing the method does not look at, then the caution; print them with the result. */
  readonly leftOut: readonly string[];
}

/** Less water than this is rounding, kg/m2. */
const ROUNDING_KG_PER_M2 = 1e-9;

interface MonthOfCeilings {
  readonly ceilingPa: readonly number[];
  readonly seconds: number;
  readonly wetSurface?: 'inside' | 'outside' | 'both';
}

/** Vapor pressure of air, no more than it can hold: over ice that is less than what frosty air is stated to have. */
export function heldPa(air: Air, formula?: SaturationFormula): number {
  return Math.min(air.vaporPressurePa, saturationPressurePa(air.temperatureC, formula));
}

/**
 * Vapor pressure at the two surfaces and saturation pressure at the planes between, Pa, of one steady state.
 *
 * @returns with the surfaces that are wet, where the air beside them reaches saturation
 */
export function ceilingOf(
  section: Section,
  surfaces: Surfaces,
  { inside, outside }: MonthOfAir,
  formula?: SaturationFormula,
): Pick<MonthOfCeilings, 'ceilingPa' | 'wetSurface'> {
  const ceilingPa = saturationsPa(section, surfaces, inside.temperatureC, outside.temperatureC, formula);
  const last = ceilingPa.length - 1;
  const [insidePa, outsidePa] = [heldPa(inside, formula), heldPa(outside, formula)];
  const insideWet = insidePa > (ceilingPa[0] as number);
  const outsideWet = outsidePa > (ceilingPa[last] as number);
  // A wet surface holds the pressure at saturation; what runs off it never enters the wall.
  ceilingPa[0] = Math.min(ceilingPa[0] as number, insidePa);
  ceilingPa[last] = Math.min(ceilingPa[last] as number, outsidePa);
  return {
    ceilingPa,
    ...(insideWet || outsideWet
      ? { wetSurface: insideWet && outsideWet ? 'both' : insideWet ? 'inside' : 'outside' }
      : {}),
  };
}

/** Pressure at the surfaces and saturation between, for each month. */
function ceilings(section: Section, year: readonly MonthOfAir[], options: YearOptions): MonthOfCeilings[] {
  const surfaces = options.surfaces ?? SURFACE_RESISTANCES.interstitial;
  return year.map((air, m) => ({
    ...ceilingOf(section, surfaces, air, options.formula),
    seconds: (MONTH_DAYS[m] as number) * SECONDS_PER_DAY,
  }));
}

interface Run {
  readonly start: number;
  readonly months: readonly MonthOfWater[];
  readonly peakKgPerM2: number;
  readonly peakMonth: number;
  readonly planes: readonly PlanePeak[];
  readonly residualKgPerM2: number;
}

/** Twelve months from a dry wall; `start` is 0 for January. */
function run(section: Section, year: readonly MonthOfCeilings[], start: number): Run {
  let water: Water = new Map();
  let peak = { kgPerM2: 0, month: start + 1 };
  const peaks = new Map<number, PlanePeak>();
  const months: MonthOfWater[] = [];
  const plane = (k: number): Plane => section.planes[k] as Plane;
  for (let i = 0; i < 12; i++) {
    const m = (start + i) % 12;
    const { ceilingPa, seconds, wetSurface } = year[m] as MonthOfCeilings;
    const before = totalKgPerM2(water);
    const span = overSpan(section.sdM, ceilingPa, water, seconds);
    water = span.water;
    if (span.peakKgPerM2 > peak.kgPerM2) peak = { kgPerM2: span.peakKgPerM2, month: m + 1 };
    for (const [k, kgPerM2] of span.peaks)
      if (kgPerM2 > (peaks.get(k)?.kgPerM2 ?? 0)) peaks.set(k, { plane: plane(k), kgPerM2, month: m + 1 });
    months.push({
      month: m + 1,
      gainKgPerM2: totalKgPerM2(water) - before,
      inKgPerM2: span.inKgPerM2,
      outKgPerM2: span.outKgPerM2,
      water: [...water].sort(([a], [b]) => a - b).map(([k, kgPerM2]) => ({ plane: plane(k), kgPerM2 })),
      totalKgPerM2: totalKgPerM2(water),
      ...(wetSurface === undefined ? {} : { wetSurface }),
    });
  }
  return {
    start,
    months,
    peakKgPerM2: peak.kgPerM2,
    peakMonth: peak.month,
    planes: [...peaks.values()].sort((a, b) => a.plane.index - b.plane.index),
    residualKgPerM2: totalKgPerM2(water),
  };
}

/**
 * The months from which a year may be counted, 0 for January: those that wet a dry wall after one that does not.
 * Where every month wets it, any will do.
 */
function startMonths(section: Section, year: readonly MonthOfCeilings[]): number[] {
  const wets = year.map(({ ceilingPa }) => touchedPlanes(section.sdM, ceilingPa).length > 2);
  const first = wets.flatMap((w, m) => (w && !wets[(m + 11) % 12] ? [m] : []));
  return first.length > 0 ? first : [0];
}

/**
 * The year that counts, of a wall that may be wetted in several seasons: one that leaves no water after twelve
 * months, for then the wall truly is dry when it starts. Where none does, the one with the greatest peak, which is
 * the safe side.
 */
function chosen(runs: readonly Run[]): Run {
  return (
    runs.find((r) => r.residualKgPerM2 <= ROUNDING_KG_PER_M2) ??
    // Starts that differ by rounding alone are one: the earliest.
    runs.reduce((a, b) => (b.peakKgPerM2 > a.peakKgPerM2 * (1 + 1e-9) ? b : a))
  );
}

/**
 * Follows the water in a wall through twelve months.
 *
 * @param layers inside to outside; leave out what lies beyond a well ventilated cavity, see `insideOfCavity`
 * @param year air on both sides, twelve months from January
 * @throws RangeError unless twelve months are given; for impossible layers or temperatures
 * @see ISO 13788:2012 (from memory, confirm): start month, tangent construction, accumulation and drying
 */
export function yearOfWater(
  layers: readonly MoistureLayer[],
  year: readonly MonthOfAir[],
  options: YearOptions = {},
): YearOfWater {
  if (year.length !== 12) throw new RangeError(`Twelve months are expected; found ${year.length}.`);
  for (const air of year.flatMap((m) => [m.inside, m.outside])) refuseImpossible(air, options.formula);
  const section = sectionOf(layers, options.mostSliceM2KW);
  const months = ceilings(section, year, options);
  const best = chosen(startMonths(section, months).map((start) => run(section, months, start)));
  const none = best.peakKgPerM2 <= ROUNDING_KG_PER_M2;
  return {
    outcome: none ? 'none' : best.residualKgPerM2 <= ROUNDING_KG_PER_M2 ? 'dries' : 'remains',
    ...(none ? {} : { startMonth: best.start + 1, peakMonth: best.peakMonth }),
    peakKgPerM2: best.peakKgPerM2,
    residualKgPerM2: best.residualKgPerM2,
    planes: none ? [] : best.planes,
    months: best.months,
    section,
    leftOut: [...leftOutBy('monthly'), CAUTION],
  };
}

/**
 * Catches a wrong unit or a wrong column, no more. Weather services state humidity over water also in frost, where
 * that is up to half above saturation over ice.
 */
function refuseImpossible(air: Air, formula?: SaturationFormula): void {
  const saturatedPa = saturationPressurePa(air.temperatureC, formula);
  const mostPa = saturatedPa * (air.temperatureC < 0 ? 1.5 : 1.01);
  if (!(air.vaporPressurePa >= 0 && air.vaporPressurePa <= mostPa))
    throw new RangeError(
      `Air of ${air.temperatureC} degC holds at most ${saturatedPa.toFixed(0)} Pa of vapor; found ${air.vaporPressurePa}.`,
    );
}
