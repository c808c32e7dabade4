import fc from 'fast-check';
import witness from 'psychrolib';
import { describe, expect, it } from 'vitest';
import {
  dewPointC,
  humidityRatio,
  saturationPressurePa,
  standardPressurePa,
  vaporContentKgPerM3,
  vaporPressurePa,
} from './psychrometrics.js';
import { even } from './testing/random-walls.js';

witness.SetUnitSystem(witness.SI);

const HW = 'Hyland-Wexler';
const within = (found: number, expected: number, share: number): void => {
  expect(Math.abs(found / expected - 1), `${found} against ${expected}`).toBeLessThanOrEqual(share);
};

describe('saturation by Hyland-Wexler', () => {
  it('is what ASHRAE Fundamentals chapter 1 equations 5 and 6 give (values printed by an open library)', () => {
    const table: [number, number][] = [
      [-40, 12.8452], [-30, 38.0157], [-20, 103.2604], [-10, 259.9029], [-5, 401.7641], [0, 611.1536], [5, 872.4867],
      [10, 1227.9953], [15, 1705.4478], [20, 2338.8037], [21, 2487.6671], [23, 2810.4419], [25, 3169.2165],
      [30, 4246.0302], [35, 5627.8194], [40, 7383.46],
    ]; // prettier-ignore
    for (const [t, p] of table) within(saturationPressurePa(t, HW), p, 1e-5);
  });
  it('agrees with psychrolib 1.1.1 anywhere from -100 to 200 degC', () => {
    fc.assert(
      fc.property(even(-100, 200), (t) => {
        within(saturationPressurePa(t, HW), witness.GetSatVapPres(t), 1e-12);
      }),
    );
  });
  it('is over ice up to and at the triple point, over water above it', () => {
    // At 0 degC the branches give 611.154 (ice) and 611.213 Pa (water).
    expect(saturationPressurePa(0, HW)).toBeCloseTo(611.154, 3);
    // Slopes per kelvin: 50.3 Pa over ice, 44.4 Pa over water (Clausius-Clapeyron with heats of 2.834 and 2.501 MJ/kg).
    const slope = (t: number): number =>
      (saturationPressurePa(t + 5e-4, HW) - saturationPressurePa(t - 5e-4, HW)) / 1e-3;
    expect(slope(0.009)).toBeCloseTo(50.3, 0);
    expect(slope(0.011)).toBeCloseTo(44.4, 0);
    expect(slope(-0.5)).toBeGreaterThan(48);
  });
  it('lies within 0.03 % of IAPWS water (Wagner-Pruss) and ice (R14-08, 2011)', () => {
    const table: [number, number][] = [
      [-20, 103.239], [-10, 259.874], [0.01, 611.657], [10, 1228.11], [20, 2339.19], [30, 4246.92],
      // Verification point of IF97 equation 30 at 300 K.
      [300 - 273.15, 3536.58941],
    ]; // prettier-ignore
    for (const [t, p] of table) within(saturationPressurePa(t, HW), p, 3e-4);
    // Verification point of R14-08 at 230 K: colder, and a little farther off.
    within(saturationPressurePa(230 - 273.15, HW), 8.94735, 4e-4);
  });
});

describe('saturation by ISO 13788', () => {
  it('is what the formulas of Annex E give (formulas from memory; values from a second program)', () => {
    const table: [number, number][] = [
      [-20, 102.7399], [-10, 259.3332], [-5, 401.181], [-1, 562.0412], [0, 610.5], [1, 656.3839], [5, 871.8645],
      [10, 1227.3099], [15, 1704.4073], [20, 2336.9511], [21, 2485.5818], [23, 2807.8096], [25, 3165.9201],
      [30, 4240.5051], [40, 7370.9277],
    ]; // prettier-ignore
    for (const [t, p] of table) within(saturationPressurePa(t), p, 1e-6);
  });
  it('gives the DIN 4108-3 style table of a building-physics textbook to 1 Pa (seen at second hand)', () => {
    const table: [number, number][] = [
      [20, 2337], [18.6, 2142], [18.4, 2115], [17.8, 2037], [-4, 437], [-4.7, 412], [-4.8, 408], [-5, 401],
    ]; // prettier-ignore
    for (const [t, p] of table) expect(Math.abs(saturationPressurePa(t) - p), `${t} degC`).toBeLessThan(1);
  });
  it('lies within 0.8 % of table 23 of the Danish moisture guidance 224, Annex A (seen)', () => {
    for (const [t, p] of [
      [-20, 103.5],
      [-19, 113.9],
      [-18, 125.2],
      [31, 4492],
      [32, 4755],
    ] as const)
      // prettier-ignore
      within(saturationPressurePa(t), p, 8e-3);
  });
  it('lies within 0.5 % of IAPWS from -20 to 30 degC, and drifts low by 1 % at -30 and 1.9 % at -40 degC', () => {
    for (const [t, p] of [
      [-20, 103.239],
      [-10, 259.874],
      [10, 1228.11],
      [20, 2339.19],
      [30, 4246.92],
    ] as const)
      // prettier-ignore
      within(saturationPressurePa(t), p, 5e-3);
    expect(saturationPressurePa(-30) / saturationPressurePa(-30, HW) - 1).toBeCloseTo(-0.01, 3);
    expect(saturationPressurePa(-40) / saturationPressurePa(-40, HW) - 1).toBeCloseTo(-0.0185, 3);
  });
});

describe('either formula', () => {
  it('rises with temperature', () => {
    for (const formula of ['ISO 13788', HW] as const)
      for (let t = -99.9; t <= 100; t += 0.1)
        expect(saturationPressurePa(t, formula)).toBeGreaterThan(saturationPressurePa(t - 0.1, formula));
  });
  it('is undone by the dew point', () => {
    fc.assert(
      fc.property(even(-99, 99), fc.constantFrom('ISO 13788', HW), (t, formula) => {
        // The ice and water branches differ by some 1e-5 Pa at the triple point.
        expect(Math.abs(dewPointC(saturationPressurePa(t, formula), formula) - t)).toBeLessThan(1e-5);
      }),
    );
  });
  it('refuses temperatures, pressures and humidities out of range, and NaN', () => {
    for (const t of [-101, 101, NaN]) expect(() => saturationPressurePa(t), `${t}`).toThrow(RangeError);
    expect(() => saturationPressurePa(201, HW)).toThrow('from -100 to 200 degC');
    for (const p of [0, -1, NaN, 1e7]) expect(() => dewPointC(p), `${p}`).toThrow(RangeError);
    // Percent where a share is meant.
    expect(() => vaporPressurePa(20, 50)).toThrow('50 % is 0.5');
  });
});

describe('dew point and humidity', () => {
  it('by Hyland-Wexler are those of psychrolib 1.1.1', () => {
    const table: [number, number, number, number, number][] = [
      [20, 0.5, 9.2724, 1169.402, 0.007262], [21, 0.4, 6.8995, 995.067, 0.006168], [21, 0.3, 2.7802, 746.3, 0.004615],
      [20, 0.65, 13.2272, 1520.222, 0.009473], [-5, 0.8, -7.5853, 321.411, 0.001979],
      [30, 0.7, 23.9279, 2972.221, 0.018795], [24, 0.5, 12.9464, 1492.564, 0.009299],
    ]; // prettier-ignore
    for (const [t, rh, dew, pa, ratio] of table) {
      const p = vaporPressurePa(t, rh, HW);
      within(p, pa, 1e-6);
      expect(Math.abs(dewPointC(p, HW) - dew)).toBeLessThan(1e-3);
      expect(Math.abs(humidityRatio(p) - ratio)).toBeLessThan(1e-6);
    }
  });
  it('by Hyland-Wexler follow psychrolib over a field of random states', () => {
    fc.assert(
      fc.property(even(-40, 60), even(0.05, 1), (t, rh) => {
        const p = vaporPressurePa(t, rh, HW);
        within(p, witness.GetVapPresFromRelHum(t, rh), 1e-12);
        // The library stops its search within 0.001 K.
        expect(Math.abs(dewPointC(p, HW) - witness.GetTDewPointFromRelHum(t, rh))).toBeLessThan(2e-3);
        within(humidityRatio(p), witness.GetHumRatioFromVapPres(p, 101325), 1e-12);
      }),
    );
  });
  it('by ISO 13788 are those of a second program (formulas from memory)', () => {
    const table: [number, number, number, number][] = [
      [20, 0.5, 9.269, 1168.476], [21, 0.4, 6.8963, 994.233], [20, 0.65, 13.2239, 1519.018],
      [-5, 0.8, -7.5814, 320.945], [30, 0.7, 23.9226, 2968.354],
    ]; // prettier-ignore
    for (const [t, rh, dew, pa] of table) {
      expect(Math.abs(vaporPressurePa(t, rh) - pa)).toBeLessThan(5e-4 + 1e-9);
      expect(Math.abs(dewPointC(vaporPressurePa(t, rh)) - dew)).toBeLessThan(5e-4);
    }
  });
});

describe('vapor in air', () => {
  it('weighs what table 23 of the Danish moisture guidance 224 prints: 0.886 and 32.00 g/m3 (seen)', () => {
    // To half a unit of the last digit printed.
    expect(Math.abs(1000 * vaporContentKgPerM3(103.5, -20) - 0.886)).toBeLessThan(0.0005);
    expect(Math.abs(1000 * vaporContentKgPerM3(4492, 31) - 32)).toBeLessThan(0.005);
  });
  it('stands under the pressure of the standard atmosphere, as in psychrolib', () => {
    for (const z of [-400, 0, 500, 1609, 3000]) within(standardPressurePa(z), witness.GetStandardAtmPressure(z), 1e-12);
  });
  it('cannot have the pressure of the air itself', () => {
    expect(() => humidityRatio(101325)).toThrow(RangeError);
    expect(() => vaporContentKgPerM3(100, -273.15)).toThrow(RangeError);
    expect(() => standardPressurePa(20_000)).toThrow(RangeError);
  });
});
