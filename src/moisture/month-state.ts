/** The wall in one month: temperatures and vapor pressures at its planes, as the monthly method takes them. */
import { ceilingOf, type MonthOfWater, type WaterAt, type YearOfWater } from './condensation.js';
import type { Surfaces } from './data/surfaces.js';
import type { MonthOfAir } from './interior-climate.js';
import { saturationsPa, temperaturesC, type Plane } from './resistance.js';
import { pressuresPa, touchedPlanes } from './tangent.js';

export interface PlaneState {
  readonly plane: Plane;
  readonly temperatureC: number;
  readonly saturationPa: number;
  readonly vaporPa: number;
  /** Inside the wall, vapor pressure is at saturation here: water gathers, or lies here from months before. */
  readonly atSaturation: boolean;
}
/** Water at a plane over a month. */
export interface PlaneGain extends WaterAt {
  /** Change over the month; below zero it dries. `kgPerM2` is what lies there at the end. */
  readonly gainKgPerM2: number;
}
export interface MonthState {
  /** 1 for January. */
  readonly month: number;
  readonly air: MonthOfAir;
  /** Inside surface to outside surface. */
  readonly planes: readonly PlaneState[];
  /** Planes that hold water at the start or the end of the month, inside to outside. */
  readonly gains: readonly PlaneGain[];
  readonly wetSurface?: MonthOfWater['wetSurface'];
}

/** Planes with water at the end of the month before, in the order the year was followed; its start is dry. */
function waterBefore(year: YearOfWater, month: number): readonly WaterAt[] {
  const i = year.months.findIndex((m) => m.month === month);
  return year.months[i - 1]?.water ?? [];
}

/**
 * The month on which a wall is judged: that of the greatest gain of water; where nothing condenses, the coldest.
 *
 * @param air on both sides, twelve months from January
 * @returns 1 for January
 */
export function decidingMonth(year: YearOfWater, air: readonly MonthOfAir[]): number {
  if (year.outcome === 'none') {
    const colds = air.map((m) => m.outside.temperatureC);
    return colds.indexOf(Math.min(...colds)) + 1;
  }
  return year.months.reduce((a, b) => (b.gainKgPerM2 > a.gainKgPerM2 ? b : a)).month;
}

/**
 * Temperatures and pressures of a month, with the water that lay in the wall at its start.
 *
 * @param air on both sides, twelve months from January: those the year was followed with
 * @param surfaces those the year was followed with
 * @param month 1 for January
 * @throws RangeError for a month that is none
 * @see series resistance, ISO 6946; tangent construction, ISO 13788:2012 (from memory, confirm)
 */
export function monthState(
  year: YearOfWater,
  air: readonly MonthOfAir[],
  surfaces: Surfaces,
  month: number,
): MonthState {
  const [here, water] = [air[month - 1], year.months.find((m) => m.month === month)];
  if (here === undefined || water === undefined)
    throw new RangeError(`A month from 1 to 12 is expected; found ${month}.`);
  const { section } = year;
  const { ceilingPa, wetSurface } = ceilingOf(section, surfaces, here);
  const ends = [here.inside.temperatureC, here.outside.temperatureC] as const;
  const temperatures = temperaturesC(section, surfaces, ...ends);
  const saturations = saturationsPa(section, surfaces, ...ends);
  const before = new Map(waterBefore(year, month).map((w) => [w.plane.index, w.kgPerM2]));
  const after = new Map(water.water.map((w) => [w.plane.index, w.kgPerM2]));
  const touched = touchedPlanes(section.sdM, ceilingPa, (plane) => before.has(plane));
  const pressures = pressuresPa(section.sdM, ceilingPa, touched);
  const inner = new Set(touched.slice(1, -1));
  return {
    month,
    air: here,
    planes: section.planes.map((plane, k) => ({
      plane,
      temperatureC: temperatures[k] as number,
      saturationPa: saturations[k] as number,
      vaporPa: pressures[k] as number,
      atSaturation: inner.has(k),
    })),
    gains: section.planes
      .filter(({ index }) => before.has(index) || after.has(index))
      .map((plane) => {
        const kgPerM2 = after.get(plane.index) ?? 0;
        return { plane, kgPerM2, gainKgPerM2: kgPerM2 - (before.get(plane.index) ?? 0) };
      }),
    ...(wetSurface === undefined ? {} : { wetSurface }),
  };
}
