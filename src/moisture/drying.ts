/**
 * What a wall could dry: a plane is taken to be wet all year, as from a leak, and what leaves the wall is added up.
 *
 * Diffusion alone says nothing of leaks. But a wall that could hardly dry, were it wet, has no reserve for one.
 */
import { MONTH_DAYS, SECONDS_PER_DAY } from './data/air.js';
import { SURFACE_RESISTANCES, type Surfaces } from './data/surfaces.js';
import { heldPa } from './condensation.js';
import type { MonthOfAir } from './interior-climate.js';
import type { SaturationFormula } from './psychrometrics.js';
import { saturationsPa, sectionOf, type MoistureLayer } from './resistance.js';
import { flowsOf, touchedPlanes } from './tangent.js';

export interface MonthOfDrying {
  /** 1 for January. */
  readonly month: number;
  /** Vapor that leaves through each surface less what enters there, kg/m2; below zero vapor enters. */
  readonly toInsideKgPerM2: number;
  readonly toOutsideKgPerM2: number;
}
export interface DryingReserve {
  readonly months: readonly MonthOfDrying[];
  /** Of all months in which the wall loses water, kg/m2. */
  readonly kgPerM2: number;
  /** Of these, what leaves toward the room and toward the outside. */
  readonly toInsideKgPerM2: number;
  readonly toOutsideKgPerM2: number;
}

/**
 * What would leave a wall through the months in which it dries, were one plane wet all year.
 *
 * Water that condenses elsewhere on its way is not counted as dried. Sun, which helps, is left out.
 * @param wetBehind id of the layer on whose inner face the water lies
 * @param year air on both sides, twelve months from January
 * @throws RangeError unless twelve months are given; when no layer has the id, or it is the innermost
 * @see the monthly method: pressure at a wet plane is saturation (ISO 13788:2012, from memory, confirm)
 */
export function dryingReserve(
  layers: readonly MoistureLayer[],
  year: readonly MonthOfAir[],
  wetBehind: string,
  surfaces: Surfaces = SURFACE_RESISTANCES.interstitial,
  formula?: SaturationFormula,
): DryingReserve {
  if (year.length !== 12) throw new RangeError(`Twelve months are expected; found ${year.length}.`);
  const section = sectionOf(layers);
  const wet = section.planes.findIndex((p) => p.outer?.id === wetBehind && p.inner?.id !== wetBehind);
  if (wet <= 0)
    throw new RangeError(
      `A layer "${wetBehind}" with another one inside of it is expected; found ${layers.map((l) => `"${l.id}"`).join(', ')}.`,
    );
  const months = year.map(({ inside, outside }, m): MonthOfDrying => {
    const ceilingPa = saturationsPa(section, surfaces, inside.temperatureC, outside.temperatureC, formula);
    const last = ceilingPa.length - 1;
    ceilingPa[0] = Math.min(ceilingPa[0] as number, heldPa(inside, formula));
    ceilingPa[last] = Math.min(ceilingPa[last] as number, heldPa(outside, formula));
    const touched = touchedPlanes(section.sdM, ceilingPa, (plane) => plane === wet);
    const flows = flowsOf(section.sdM, ceilingPa, touched);
    const seconds = (MONTH_DAYS[m] as number) * SECONDS_PER_DAY;
    return {
      month: m + 1,
      toInsideKgPerM2: -flows.inKgPerM2S * seconds,
      toOutsideKgPerM2: flows.outKgPerM2S * seconds,
    };
  });
  const drying = months.filter((m) => m.toInsideKgPerM2 + m.toOutsideKgPerM2 > 0);
  const sum = (of: (m: MonthOfDrying) => number): number => drying.reduce((total, m) => total + of(m), 0);
  const [toInsideKgPerM2, toOutsideKgPerM2] = [sum((m) => m.toInsideKgPerM2), sum((m) => m.toOutsideKgPerM2)];
  return { months, kgPerM2: toInsideKgPerM2 + toOutsideKgPerM2, toInsideKgPerM2, toOutsideKgPerM2 };
}
