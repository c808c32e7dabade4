/** Indoor air by month: declared, by humidity class, or by one of the simplified curves. */
import { HUMIDITY_CLASSES, INDOOR_CURVES, type HumidityClass, type IndoorCurveName, type Ramp } from './data/indoor.js';
import { saturationPressurePa, vaporPressurePa, type SaturationFormula } from './psychrometrics.js';

export interface Air {
  readonly temperatureC: number;
  readonly vaporPressurePa: number;
}
export interface IndoorAir extends Air {
  /** The assumption asked for more vapor than air of this temperature holds; it was cut to saturation. */
  readonly cut?: true;
}

/** How indoor air is known. */
export type IndoorClimate =
  | { readonly by: 'set points'; readonly temperatureC: number; readonly relativeHumidity: number }
  | {
      readonly by: 'humidity class';
      readonly humidityClass: HumidityClass;
      readonly temperatureC: number;
      /** Factor on the excess over outdoor vapor pressure; 1.1 unless given, which is on the safe side. */
      readonly factor?: number;
    }
  | { readonly by: 'curve'; readonly curve: IndoorCurveName };

function along(ramp: Ramp, outdoorC: number): number {
  const share = Math.min(1, Math.max(0, (outdoorC - ramp.fromC) / (ramp.toC - ramp.fromC)));
  return ramp.low + (ramp.high - ramp.low) * share;
}

/**
 * Vapor pressure that indoor air of a humidity class has above outdoor air, Pa.
 *
 * @param factor multiplies the excess; 1 for the bare limits of the class
 * @throws RangeError for a factor below 1: it is there for safety
 * @see HUMIDITY_CLASSES.source
 */
export function excessPressurePa(
  humidityClass: HumidityClass,
  outdoorC: number,
  factor: number = HUMIDITY_CLASSES.factor,
): number {
  if (!(factor >= 1)) throw new RangeError(`A factor of 1 or more is expected; found ${factor}.`);
  const { excessPa, fullUpToC, noneFromC } = HUMIDITY_CLASSES;
  return factor * along({ fromC: fullUpToC, toC: noneFromC, low: excessPa[humidityClass], high: 0 }, outdoorC);
}

/**
 * Indoor air that goes with outdoor air.
 *
 * @param outdoor of a month; a curve is meant for daily means and takes a monthly mean as an approximation
 * @throws RangeError for set points out of range
 * @see HUMIDITY_CLASSES.source and the source of each of INDOOR_CURVES
 */
export function indoorAir(climate: IndoorClimate, outdoor: Air, formula?: SaturationFormula): IndoorAir {
  switch (climate.by) {
    case 'set points':
      return {
        temperatureC: climate.temperatureC,
        vaporPressurePa: vaporPressurePa(climate.temperatureC, climate.relativeHumidity, formula),
      };
    case 'curve': {
      const curve = INDOOR_CURVES[climate.curve];
      const temperatureC = along(curve.temperatureC, outdoor.temperatureC);
      const humidity = along(curve.relativeHumidity, outdoor.temperatureC);
      return { temperatureC, vaporPressurePa: vaporPressurePa(temperatureC, humidity, formula) };
    }
    case 'humidity class': {
      const { humidityClass, temperatureC, factor } = climate;
      const askedPa = outdoor.vaporPressurePa + excessPressurePa(humidityClass, outdoor.temperatureC, factor);
      const mostPa = saturationPressurePa(temperatureC, formula);
      return askedPa > mostPa
        ? { temperatureC, vaporPressurePa: mostPa, cut: true }
        : { temperatureC, vaporPressurePa: askedPa };
    }
  }
}

/** Outdoor air from temperature and relative humidity (share). */
export function outdoorAir(temperatureC: number, relativeHumidity: number, formula?: SaturationFormula): Air {
  return { temperatureC, vaporPressurePa: vaporPressurePa(temperatureC, relativeHumidity, formula) };
}

/** Air on both sides of a wall in one month. */
export interface MonthOfAir {
  readonly inside: IndoorAir;
  readonly outside: Air;
}

/**
 * Both sides, month by month.
 *
 * @param outside twelve months of outdoor air, January first
 * @throws RangeError unless twelve months are given
 */
export function yearOfAir(outside: readonly Air[], climate: IndoorClimate, formula?: SaturationFormula): MonthOfAir[] {
  if (outside.length !== 12) throw new RangeError(`Twelve months are expected; found ${outside.length}.`);
  return outside.map((air) => ({ inside: indoorAir(climate, air, formula), outside: air }));
}
