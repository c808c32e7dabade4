/**
 * Water that wind pressure holds up at a sill: head from pressure, and the pressure a unit is tested at.
 */
import { BASE_UNITS } from '../quantity/types.js';
import { unitsOf, toBase } from '../quantity/units.js';

/** Density of water at 4 degC, kg/m3. */
const WATER_DENSITY_KG_M3 = 1000;
/** Standard gravity, m/s2 (exact by convention). */
const GRAVITY_M_S2 = 9.80665;

/**
 * Height of the water column that a pressure holds up.
 *
 * @param pressurePa pressure difference across the wall, Pa, zero or more
 * @returns head in mm: h = p / (rho g)
 * @throws RangeError when the pressure is negative or not a number
 * @see Hydrostatics; published as 5.2 psf, or about 250 Pa, per inch of water.
 */
export function waterHeadMm(pressurePa: number): number {
  if (!(pressurePa >= 0))
    throw new RangeError(`A pressure of zero or more is expected, in ${BASE_UNITS.pressure}; found ${pressurePa}.`);
  return (pressurePa / (WATER_DENSITY_KG_M3 * GRAVITY_M_S2)) * 1000;
}

export type PerformanceClass = 'R' | 'LC' | 'CW' | 'AW';
export type Country = 'US' | 'CA';

const PSF = unitsOf('pressure').find((unit) => unit.spelling === 'psf') as ReturnType<typeof unitsOf>[number];
const psf = (value: number): number => toBase(value, PSF);

/** Share of the performance grade, least and greatest water test pressure. */
export const WATER_TEST = {
  shareOfGrade: { R: 0.15, LC: 0.15, CW: 0.15, AW: 0.2 } satisfies Record<PerformanceClass, number>,
  leastPa: psf(2.9),
  mostPa: { US: psf(12), CA: psf(15) } satisfies Record<Country, number>,
  source: {
    basis: 'standard' as const,
    citation: 'North American Fenestration Standard, water test pressure by class and grade',
    provenance: 'seen at second hand' as const,
    url: 'https://fgiaonline.org/resources/technical-resources/performance-class-overview/',
  },
};

/**
 * Water test pressure of a unit, which follows from its class and grade.
 *
 * @param performanceClass R, LC, CW or AW
 * @param gradePa performance grade (design pressure of the unit), Pa
 * @param country decides the cap: 12 psf in the United States, 15 psf in Canada
 * @returns Pa: 15 % of the grade (20 % for AW), not below 2.90 psf, not above the cap
 * @throws RangeError when the grade is negative or not a number
 * @see WATER_TEST.source
 */
export function waterTestPressurePa(performanceClass: PerformanceClass, gradePa: number, country: Country): number {
  if (!(gradePa >= 0))
    throw new RangeError(
      `A performance grade of zero or more is expected, in ${BASE_UNITS.pressure}; found ${gradePa}.`,
    );
  const share = WATER_TEST.shareOfGrade[performanceClass] * gradePa;
  return Math.min(Math.max(share, WATER_TEST.leastPa), WATER_TEST.mostPa[country]);
}

/** Share of the laboratory pressure used on the wall when the project states none (from memory, confirm). */
export const FIELD_SHARE = 2 / 3;

/**
 * Pressure of a water test on the finished wall.
 *
 * @param waterTestPa water test pressure of the unit, Pa
 * @returns Pa, two thirds of it
 * @see AAMA 502 (from memory, confirm)
 */
export function fieldTestPressurePa(waterTestPa: number): number {
  return waterTestPa * FIELD_SHARE;
}

/**
 * Rise of a slope.
 *
 * @param slopeRatio rise over run; positive toward the exterior
 * @param runMm horizontal length, mm
 * @returns mm
 */
export function riseMm(slopeRatio: number, runMm: number): number {
  return slopeRatio * runMm;
}

/**
 * Height that water must climb from the front of a sloped pan to spill inward: the back dam and the rise of
 * the slope below the frame.
 *
 * @param damMm height of the back dam, mm
 * @param slopeRatio rise over run; negative for a back-slope, which takes height away
 * @param depthMm depth of the frame, mm
 * @returns mm
 */
export function effectiveDamMm(damMm: number, slopeRatio: number, depthMm: number): number {
  return damMm + riseMm(slopeRatio, depthMm);
}
