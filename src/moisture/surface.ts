/** The inside surface: how cold it gets, how damp the air against it, and whether mould may grow. */
import { SURFACE_RESISTANCES, type Surfaces } from './data/surfaces.js';
import type { Air, MonthOfAir } from './interior-climate.js';
import { CAUTION, leftOutBy } from './left-out.js';
import { SURFACE_LIMITS, type SurfaceLimit } from './limits.js';
import { dewPointC, saturationPressurePa, type SaturationFormula } from './psychrometrics.js';

/**
 * Temperature factor of the inside surface of a wall: 0 as cold as outdoors, 1 as warm as indoors.
 *
 * @param rM2KW resistance of the wall without its surfaces, m2 K/W
 * @throws RangeError for a resistance below zero
 * @see ISO 13788:2012: fRsi = (surface - outdoor) / (indoor - outdoor) (from memory, confirm)
 */
export function temperatureFactor(rM2KW: number, surfaces: Surfaces = SURFACE_RESISTANCES.mould): number {
  if (!(rM2KW >= 0)) throw new RangeError(`A thermal resistance of zero or more is expected; found ${rM2KW}.`);
  const total = surfaces.insideM2KW + rM2KW + surfaces.outsideM2KW;
  return (total - surfaces.insideM2KW) / total;
}

/** Temperature of the inside surface, degC. */
export function surfaceTemperatureC(factor: number, insideC: number, outsideC: number): number {
  return outsideC + factor * (insideC - outsideC);
}

/**
 * Temperature factor at which air against the surface is just as damp as allowed.
 *
 * @param mostHumidity share, 0.8 for mould
 * @returns above 1 when the indoor air itself is too damp; `undefined` when it is not warmer inside, where the
 * factor says nothing
 * @see ISO 13788:2012: saturation at the surface is vapor pressure / 0.8 (from memory, confirm)
 */
export function neededFactor(
  inside: Air,
  outsideC: number,
  mostHumidity: number,
  formula?: SaturationFormula,
): number | undefined {
  if (!(mostHumidity > 0 && mostHumidity <= 1))
    throw new RangeError(`A relative humidity above 0 and up to 1 is expected; found ${mostHumidity}.`);
  if (inside.temperatureC <= outsideC) return undefined;
  const leastC = dewPointC(inside.vaporPressurePa / mostHumidity, formula);
  return (leastC - outsideC) / (inside.temperatureC - outsideC);
}

export interface MonthOfSurface {
  /** 1 for January. */
  readonly month: number;
  readonly temperatureC: number;
  /** Relative humidity of air against the surface, share; above 1 it is wet. */
  readonly humidity: number;
  readonly neededFactor?: number;
}
export interface YearOfSurface {
  readonly factor: number;
  readonly limit: SurfaceLimit;
  readonly months: readonly MonthOfSurface[];
  /** Months that are too damp, 1 for January. */
  readonly dampMonths: readonly number[];
  /** The month that asks for the greatest factor, and that factor. */
  readonly critical?: { readonly month: number; readonly neededFactor: number };
  readonly leftOut: readonly string[];
}

export interface SurfaceOptions {
  /** The one for mould unless given. */
  readonly limit?: SurfaceLimit;
  readonly formula?: SaturationFormula;
}

/**
 * Holds the inside surface against a limit of dampness, month by month.
 *
 * @param factor of the surface, from {@link temperatureFactor}, or of a corner from another calculation
 * @param year air on both sides, twelve months from January
 * @throws RangeError unless twelve months are given
 * @see SURFACE_LIMITS for limits and their sources
 */
export function yearOfSurface(
  factor: number,
  year: readonly MonthOfAir[],
  { limit = SURFACE_LIMITS.mould, formula }: SurfaceOptions = {},
): YearOfSurface {
  if (year.length !== 12) throw new RangeError(`Twelve months are expected; found ${year.length}.`);
  const months = year.map(({ inside, outside }, m): MonthOfSurface => {
    const temperatureC = surfaceTemperatureC(factor, inside.temperatureC, outside.temperatureC);
    const needed = neededFactor(inside, outside.temperatureC, limit.mostHumidity, formula);
    return {
      month: m + 1,
      temperatureC,
      humidity: inside.vaporPressurePa / saturationPressurePa(temperatureC, formula),
      ...(needed === undefined ? {} : { neededFactor: needed }),
    };
  });
  let critical: YearOfSurface['critical'];
  for (const { month, neededFactor: needed } of months)
    if (needed !== undefined && needed > (critical?.neededFactor ?? -Infinity))
      critical = { month, neededFactor: needed };
  return {
    factor,
    limit,
    months,
    dampMonths: months.filter((m) => tooDamp(m, limit)).map((m) => m.month),
    ...(critical === undefined ? {} : { critical }),
    leftOut: [...leftOutBy('surface'), CAUTION],
  };
}

function tooDamp({ humidity, temperatureC }: MonthOfSurface, { mostHumidity, betweenC }: SurfaceLimit): boolean {
  const applies = betweenC === undefined || (temperatureC >= betweenC[0] && temperatureC <= betweenC[1]);
  return applies && humidity > mostHumidity;
}
