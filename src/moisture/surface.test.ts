import { describe, expect, it } from 'vitest';
import { outdoorAir, type MonthOfAir } from './interior-climate.js';
import { FACTOR_LIMITS, SURFACE_LIMITS } from './limits.js';
import { saturationPressurePa } from './psychrometrics.js';
import { neededFactor, surfaceTemperatureC, temperatureFactor, yearOfSurface } from './surface.js';
import { heated } from './testing/synthetic-climate.js';

describe('the temperature factor', () => {
  it('of a public Italian sheet leaves 768 Pa below saturation at the surface (seen; low authority)', () => {
    // Resistances of six layers; with the sheet's own films of 0.130 and 0.077 they print R 2.144 and U 0.466.
    const r = [0.025, 0.2, 0.18, 1.111, 0.011, 0.41].reduce((a, b) => a + b, 0);
    expect(r + 0.13 + 0.077).toBeCloseTo(2.144, 9);
    expect(1 / (r + 0.13 + 0.077)).toBeCloseTo(0.466, 3);
    const surfaceC = surfaceTemperatureC(temperatureFactor(r), 20, 1.5);
    // The sheet's margin of 53 Pa inside the wall does not reproduce and is not held against.
    expect(Math.abs(saturationPressurePa(surfaceC) - 1285 - 768)).toBeLessThan(0.5);
  });
  it('is 1 for a wall without loss and small for bare metal', () => {
    expect(temperatureFactor(1e9)).toBeCloseTo(1, 6);
    expect(temperatureFactor(0)).toBeCloseTo(0.04 / 0.29, 12);
    expect(() => temperatureFactor(-1)).toThrow(RangeError);
  });
  it('needed at 20 degC and 50 % with -5 degC outside is 0.705, which DIN 4108-2 rounds to 0.70 (from memory)', () => {
    const needed = neededFactor(outdoorAir(20, 0.5), -5, 0.8);
    expect(needed).toBeCloseTo(0.705, 3);
    expect(-5 + needed! * 25).toBeCloseTo(12.62, 2);
    expect(Math.abs(needed! - FACTOR_LIMITS['DIN 4108-2'].leastFactor)).toBeLessThan(0.01);
  });
  it('is not asked for when it is warmer outside', () => {
    expect(neededFactor(outdoorAir(20, 0.5), 20, 0.8)).toBeUndefined();
    expect(() => neededFactor(outdoorAir(20, 0.5), 0, 80)).toThrow('found 80');
  });
});

describe('a year at the surface', () => {
  it('asks for the factors a second program finds for class 3 (computed, not published)', () => {
    const { months, critical } = yearOfSurface(0.8, heated(3));
    const expected = [0.7198, 0.7265, 0.6279, 0.4474, 0.1013, -0.732, -1.0635, -0.6435, 0.3993, 0.5672, 0.6752, 0.727];
    for (const [m, factor] of expected.entries())
      expect(Math.abs(months[m]!.neededFactor! - factor), `month ${m + 1}`).toBeLessThan(5e-4);
    expect(critical?.month).toBe(12);
  });
  it('is damp in just those months whose factor is not reached', () => {
    const { dampMonths, months } = yearOfSurface(0.7, heated(3));
    expect(dampMonths).toEqual([1, 2, 12]);
    expect(months.map((m) => m.humidity > 0.8)).toEqual(months.map((m) => m.neededFactor! > 0.7));
    expect(yearOfSurface(0.7268, heated(3)).dampMonths).toEqual([12]);
    expect(yearOfSurface(0.7272, heated(3)).dampMonths).toEqual([]);
  });
  it('of a cooled room in a hot month is judged by humidity alone', () => {
    const month: MonthOfAir = { inside: outdoorAir(22, 0.6), outside: outdoorAir(32, 0.5) };
    const year = new Array<MonthOfAir>(12).fill(month);
    const result = yearOfSurface(0.9, year);
    expect(result.critical).toBeUndefined();
    // 60 % at 22 degC; the surface is 1 K warmer.
    expect(result.months[0]!.temperatureC).toBeCloseTo(23, 9);
    expect(result.months[0]!.humidity).toBeCloseTo((0.6 * 2642.4) / 2807.8, 3);
    expect(result.dampMonths).toEqual([]);
    expect(yearOfSurface(0.9, year, { limit: SURFACE_LIMITS.corrosion }).dampMonths).toEqual([]);
    expect(yearOfSurface(1, year, { limit: { ...SURFACE_LIMITS.corrosion, mostHumidity: 0.55 } }).dampMonths).toHaveLength(12); // prettier-ignore
  });
  it('leaves surfaces below 5 degC to frost where the limit says so', () => {
    const cold: MonthOfAir = { inside: { temperatureC: 10, vaporPressurePa: 900 }, outside: outdoorAir(-10, 0.8) };
    const year = new Array<MonthOfAir>(12).fill(cold);
    expect(yearOfSurface(0.7, year).dampMonths).toHaveLength(12);
    expect(yearOfSurface(0.7, year, { limit: SURFACE_LIMITS['mould, 30-day mean'] }).dampMonths).toEqual([]);
  });
  it('takes twelve months and says what it leaves out', () => {
    expect(() => yearOfSurface(0.8, heated(3).slice(2))).toThrow('found 10');
    expect(yearOfSurface(0.8, heated(3)).leftOut.some((s) => s.includes('corners'))).toBe(true);
  });
});
