/** Water vapor in air: saturation, dew point, humidity. Temperatures in degC, pressures in Pa, humidities as shares. */
import { bisect } from './bisect.js';
import { MASS_RATIO, SEA_LEVEL_PA, VAPOR_GAS_CONSTANT } from './data/air.js';

/**
 * `ISO 13788` belongs to the monthly method. It runs low in the cold (1 % at -30 degC, 1.9 % at -40 degC), where
 * `Hyland-Wexler` stays within 0.04 % of the international steam and ice tables.
 */
export type SaturationFormula = 'ISO 13788' | 'Hyland-Wexler';

const KELVIN = 273.15;
/** Up to here, triple point included, saturation is over ice in the Hyland-Wexler branches, degC. */
const TRIPLE_POINT_C = 0.01;

/** Ends of the range of each formula, degC. Those of ISO 13788 are the project's own: the formula states none. */
const RANGE_C: Readonly<Record<SaturationFormula, readonly [number, number]>> = {
  'ISO 13788': [-100, 100],
  'Hyland-Wexler': [-100, 200],
};

/** Coefficients C1 to C7 over ice and C8 to C13 over water. */
const ICE = [-5.6745359e3, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019] as const;
const WATER = [-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 6.5459673] as const;

/** `p = 610.5 exp(a t / (b + t))`. */
const ISO_ICE = { a: 21.875, b: 265.5 };
const ISO_WATER = { a: 17.269, b: 237.3 };
const ISO_AT_ZERO_PA = 610.5;

function hylandWexlerPa(temperatureC: number): number {
  const t = temperatureC + KELVIN;
  if (temperatureC <= TRIPLE_POINT_C) {
    const [c1, c2, c3, c4, c5, c6, c7] = ICE;
    return Math.exp(c1 / t + c2 + t * (c3 + t * (c4 + t * (c5 + t * c6))) + c7 * Math.log(t));
  }
  const [c8, c9, c10, c11, c12, c13] = WATER;
  return Math.exp(c8 / t + c9 + t * (c10 + t * (c11 + t * c12)) + c13 * Math.log(t));
}

function isoPa(temperatureC: number): number {
  const { a, b } = temperatureC < 0 ? ISO_ICE : ISO_WATER;
  return ISO_AT_ZERO_PA * Math.exp((a * temperatureC) / (b + temperatureC));
}

const FORMULAS: Readonly<Record<SaturationFormula, (temperatureC: number) => number>> = {
  'ISO 13788': isoPa,
  'Hyland-Wexler': hylandWexlerPa,
};

/**
 * Pressure of saturated vapor, Pa: over ice below freezing, over water above.
 *
 * @throws RangeError outside -100 to 100 degC (ISO 13788) or -100 to 200 degC (Hyland-Wexler)
 * @see ASHRAE Handbook Fundamentals, chapter 1, equations 5 and 6 (seen in an open library); ISO 13788 Annex E (from
 * memory, confirm)
 */
export function saturationPressurePa(temperatureC: number, formula: SaturationFormula = 'ISO 13788'): number {
  const [least, most] = RANGE_C[formula];
  if (!(temperatureC >= least && temperatureC <= most))
    throw new RangeError(`A temperature from ${least} to ${most} degC is expected; found ${temperatureC}.`);
  return FORMULAS[formula](temperatureC);
}

/**
 * Temperature at which vapor of this pressure is saturated, degC; the frost point below freezing.
 *
 * @throws RangeError when the pressure is that of no temperature in the range of the formula
 * @see inverse of {@link saturationPressurePa}: ISO 13788 Annex E in closed form, Hyland-Wexler by bisection
 */
export function dewPointC(vaporPressurePa: number, formula: SaturationFormula = 'ISO 13788'): number {
  const [leastC, mostC] = RANGE_C[formula];
  const [least, most] = [FORMULAS[formula](leastC), FORMULAS[formula](mostC)];
  if (!(vaporPressurePa >= least && vaporPressurePa <= most))
    throw new RangeError(`A vapor pressure from ${least} to ${most} Pa is expected; found ${vaporPressurePa}.`);
  if (formula === 'Hyland-Wexler') return bisect((t) => hylandWexlerPa(t) >= vaporPressurePa, leastC, mostC, 1e-9);
  const l = Math.log(vaporPressurePa / ISO_AT_ZERO_PA);
  const { a, b } = vaporPressurePa >= ISO_AT_ZERO_PA ? ISO_WATER : ISO_ICE;
  return (b * l) / (a - l);
}

/**
 * Vapor pressure of air, Pa.
 *
 * @param relativeHumidity share from 0 to 1, over ice below freezing
 * @throws RangeError for a humidity outside 0 to 1
 * @see definition of relative humidity
 */
export function vaporPressurePa(
  temperatureC: number,
  relativeHumidity: number,
  formula: SaturationFormula = 'ISO 13788',
): number {
  if (!(relativeHumidity >= 0 && relativeHumidity <= 1))
    throw new RangeError(`A relative humidity from 0 to 1 is expected (50 % is 0.5); found ${relativeHumidity}.`);
  return relativeHumidity * saturationPressurePa(temperatureC, formula);
}

/**
 * Mass of vapor per mass of dry air, kg/kg.
 *
 * @throws RangeError when the vapor pressure is not below the air pressure
 * @see ASHRAE Handbook Fundamentals, chapter 1, equation 20 (seen in an open library)
 */
export function humidityRatio(vaporPressurePa: number, airPressurePa: number = SEA_LEVEL_PA.value): number {
  if (!(vaporPressurePa >= 0 && vaporPressurePa < airPressurePa))
    throw new RangeError(`A vapor pressure below the air pressure of ${airPressurePa} Pa is expected.`);
  return (MASS_RATIO.value * vaporPressurePa) / (airPressurePa - vaporPressurePa);
}

/**
 * Mass of vapor per volume of air, kg/m3.
 *
 * @throws RangeError at or below absolute zero
 * @see ideal gas law with the gas constant of water vapor
 */
export function vaporContentKgPerM3(vaporPressurePa: number, temperatureC: number): number {
  if (!(temperatureC > -KELVIN))
    throw new RangeError(`A temperature above -273.15 degC is expected; found ${temperatureC}.`);
  return vaporPressurePa / (VAPOR_GAS_CONSTANT.value * (temperatureC + KELVIN));
}

/**
 * Air pressure of the standard atmosphere, Pa.
 *
 * @param elevationM height above sea level, -500 to 11 000 m
 * @throws RangeError outside that range
 * @see ASHRAE Handbook Fundamentals, chapter 1, equation 3 (from memory, confirm)
 */
export function standardPressurePa(elevationM: number): number {
  if (!(elevationM >= -500 && elevationM <= 11_000))
    throw new RangeError(`An elevation from -500 to 11000 m is expected; found ${elevationM}.`);
  return SEA_LEVEL_PA.value * (1 - 2.25577e-5 * elevationM) ** 5.2559;
}
