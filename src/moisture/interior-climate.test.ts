import { describe, expect, it } from 'vitest';
import { HUMIDITY_CLASSES, INDOOR_CURVES } from './data/indoor.js';
import { excessPressurePa, indoorAir, outdoorAir, yearOfAir } from './interior-climate.js';
import { saturationPressurePa } from './psychrometrics.js';
import { heated, outdoors } from './testing/synthetic-climate.js';

describe('humidity classes', () => {
  it('give a year of class 3 as a second program does (limits of ISO 13788 Annex A from memory)', () => {
    const year = heated(3);
    const outsidePa = [477.73, 512.82, 634.02, 826.17, 1086.46, 1423.35, 1603.19, 1647.11, 1346.48, 1018.67, 767.24, 577.62]; // prettier-ignore
    const insidePa = [1287.73, 1322.82, 1282.02, 1271.67, 1329.46, 1504.35, 1643.69, 1687.61, 1548.98, 1423.67, 1374.74, 1347.12]; // prettier-ignore
    for (const [m, { inside, outside }] of year.entries()) {
      expect(Math.abs(outside.vaporPressurePa - outsidePa[m]!)).toBeLessThan(0.02);
      expect(Math.abs(inside.vaporPressurePa - insidePa[m]!)).toBeLessThan(0.02);
    }
  });
  it('agree with their other form, 0.002 kg/m3 of vapor per class at 20 degC, to 1 %', () => {
    // p = v R T with 462 J/(kg K) and 293 K: 0.002 is 271 Pa.
    for (const c of [1, 2, 3, 4] as const)
      expect(Math.abs(HUMIDITY_CLASSES.excessPa[c] / (0.002 * c * 462 * 293) - 1)).toBeLessThan(0.01);
  });
  it('fall from the full excess at 0 degC to none at 20 degC', () => {
    expect([-20, 0, 5, 10, 20, 30].map((t) => excessPressurePa(2, t, 1))).toEqual([540, 540, 405, 270, 0, 0]);
  });
  it('are raised by a tenth unless told otherwise, never lowered', () => {
    expect(excessPressurePa(2, 0)).toBeCloseTo(594, 9);
    expect(() => excessPressurePa(2, 0, 0.9)).toThrow('1 or more');
  });
  it('are cut where the room could not hold the vapor, and say so', () => {
    const hot = outdoorAir(32, 0.7);
    const room = indoorAir({ by: 'humidity class', humidityClass: 3, temperatureC: 20 }, hot);
    expect(room).toEqual({ temperatureC: 20, vaporPressurePa: saturationPressurePa(20), cut: true });
    expect(heated(3).some((m) => m.inside.cut)).toBe(false);
  });
});

describe('curves', () => {
  const at = (curve: keyof typeof INDOOR_CURVES, outdoorC: number): [number, number] => {
    const air = indoorAir({ by: 'curve', curve }, outdoorAir(outdoorC, 0.5));
    const share = air.vaporPressurePa / saturationPressurePa(air.temperatureC);
    return [Number(air.temperatureC.toFixed(9)), Number(share.toFixed(9))];
  };
  it('of EN 15026 run from 20 to 25 degC and from 30 to 60 % or 40 to 70 % (from memory)', () => {
    expect([-20, -10, 5, 15, 20, 35].map((t) => at('EN 15026 normal', t))).toEqual([[20, 0.3], [20, 0.3], [20, 0.45], [22.5, 0.55], [25, 0.6], [25, 0.6]]); // prettier-ignore
    expect([-10, 20].map((t) => at('EN 15026 high', t))).toEqual([[20, 0.4], [25, 0.7]]); // prettier-ignore
  });
  it('of ASHRAE 160 are 40 % up to -10 degC, one point more per kelvin, 70 % above 20 (from memory)', () => {
    expect([-20, -10, 0, 20, 30].map((t) => at('ASHRAE 160 simplified', t)[1])).toEqual([0.4, 0.4, 0.5, 0.7, 0.7]);
  });
  it('of ASHRAE 160 hold 21.1 degC, then 2.8 K above outdoors, then 23.9 degC when cooled (from memory)', () => {
    expect([0, 18.3, 20, 21.1, 30].map((t) => at('ASHRAE 160 simplified', t)[0])).toEqual([21.1, 21.1, 22.8, 23.9, 23.9]); // prettier-ignore
  });
});

describe('set points', () => {
  it('hold all year', () => {
    const year = yearOfAir(outdoors(), { by: 'set points', temperatureC: 21, relativeHumidity: 0.4 });
    // 40 % of 2485.58 Pa (ISO 13788 formula).
    expect(year.map((m) => Number(m.inside.vaporPressurePa.toFixed(2)))).toEqual(new Array(12).fill(994.23));
  });
  it('are shares, not percent, and come for twelve months', () => {
    const climate = { by: 'set points', temperatureC: 21, relativeHumidity: 40 } as const;
    expect(() => yearOfAir(outdoors(), climate)).toThrow('50 % is 0.5');
    expect(() => yearOfAir([], { ...climate, relativeHumidity: 0.4 })).toThrow('found 0');
  });
});
