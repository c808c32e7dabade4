import { describe, expect, test } from 'vitest';
import { yearOfWater } from './condensation.js';
import { SURFACE_RESISTANCES } from './data/surfaces.js';
import type { MonthOfAir } from './interior-climate.js';
import { decidingMonth, monthState } from './month-state.js';
import type { MoistureLayer } from './resistance.js';

const SURFACES = SURFACE_RESISTANCES.interstitial;
const wall: MoistureLayer[] = [
  { id: 'board', rM2KW: 0.1, sdM: 0.5, storage: 'other' },
  { id: 'insulation', rM2KW: 2, sdM: 0.1, storage: 'non-absorbing' },
  { id: 'panel', rM2KW: 0.1, sdM: 4, storage: 'other' },
];
const inside = { temperatureC: 20, vaporPressurePa: 1168.5 };
const cold: MonthOfAir = { inside, outside: { temperatureC: -8, vaporPressurePa: 295 } };
const mild: MonthOfAir = { inside, outside: { temperatureC: 16, vaporPressurePa: 600 } };
/** Cold in January, mild from February on. */
const air = [cold, ...Array.from({ length: 11 }, () => mild)];
const year = yearOfWater(wall, air);
const state = (month: number) => monthState(year, air, SURFACES, month);
const at = (month: number, name: string) => state(month).planes.find((p) => p.plane.name === name)!;

describe('the wall in one month', () => {
  // By hand, resistances in series (ISO 6946): 0.13 + 0.1 + 2 + 0.1 + 0.04 = 2.37 m2 K/W, 28 K across them.
  test('has the temperatures of resistances in series', () => {
    expect(at(1, 'inside surface').temperatureC).toBeCloseTo(20 - (28 * 0.13) / 2.37, 9);
    expect(at(1, 'between board and insulation').temperatureC).toBeCloseTo(17.2827, 4);
    expect(at(1, 'between insulation and panel').temperatureC).toBeCloseTo(-6.346, 4);
    expect(at(1, 'outside surface').temperatureC).toBeCloseTo(-7.5274, 4);
  });
  // Over ice 610.5 exp(21.875 x -6.3460 / (265.5 - 6.3460)) = 357.3 Pa (ISO 13788, from memory, confirm).
  test('is at saturation where the straight line of vapor pressure would exceed it, and nowhere else', () => {
    const wet = state(1).planes.filter((p) => p.atSaturation);
    expect(wet.map((p) => p.plane.name)).toEqual(['between insulation and panel']);
    expect(wet[0]?.vaporPa).toBeCloseTo(357.3, 1);
    // Straight from 1168.5 at sd 0 to 357.3 at sd 0.6: at sd 0.5 five sixths of the way.
    expect(at(1, 'between board and insulation').vaporPa).toBeCloseTo(1168.5 - ((1168.5 - 357.3) * 5) / 6, 1);
    for (const p of state(1).planes) expect(p.vaporPa).toBeLessThanOrEqual(p.saturationPa + 1e-6);
  });
  // 2e-10 x ((1168.5 - 357.3) / 0.6 - (357.3 - 295) / 4) x 31 x 86400 s = 0.7159 kg/m2.
  test('tells what gathers there', () => {
    expect(state(1).gains).toHaveLength(1);
    expect(state(1).gains[0]?.gainKgPerM2).toBeCloseTo(0.7159, 3);
    expect(state(1).gains[0]?.kgPerM2).toBeCloseTo(0.7159, 3);
  });
  test('holds a plane at saturation while water of the month before lies there, and tells how much dries', () => {
    const plane = at(2, 'between insulation and panel');
    expect(plane.atSaturation).toBe(true);
    expect(plane.vaporPa).toBeCloseTo(plane.saturationPa, 9);
    const [gain] = state(2).gains;
    expect(gain?.gainKgPerM2).toBeLessThan(0);
    expect(gain?.kgPerM2).toBeCloseTo((state(1).gains[0]?.kgPerM2 ?? 0) + (gain?.gainKgPerM2 ?? 0), 9);
  });
  test('gains over all months come to what the year says', () => {
    for (const { month, gainKgPerM2 } of year.months)
      expect(state(month).gains.reduce((sum, g) => sum + g.gainKgPerM2, 0)).toBeCloseTo(gainKgPerM2, 9);
  });
  test('says when a surface is wet', () => {
    // Inside air at 20 degC and 99 %: the inside surface, at 18.5 degC, holds less.
    const damp = air.map((m) => ({ ...m, inside: { temperatureC: 20, vaporPressurePa: 2310 } }));
    const wet = yearOfWater(wall, damp);
    expect(monthState(wet, damp, SURFACES, 1).wetSurface).toBe('inside');
    expect(state(1).wetSurface).toBeUndefined();
  });
  test('is refused for a month that is none', () => {
    expect(() => state(13)).toThrow('A month from 1 to 12 is expected; found 13.');
  });
});

describe('the month that decides', () => {
  test('is the one in which most water gathers', () => {
    expect(decidingMonth(year, air)).toBe(1);
    // The month after is cold as well: more water lies there at its end, but less of it is new.
    const less = [cold, { inside, outside: { temperatureC: 0, vaporPressurePa: 400 } }, ...air.slice(2)];
    expect(decidingMonth(yearOfWater(wall, less), less)).toBe(1);
    const later = [...air.slice(1, 6), cold, ...air.slice(6)];
    expect(decidingMonth(yearOfWater(wall, later), later)).toBe(6);
  });
  test('is the coldest where nothing condenses', () => {
    const dry = air.map((m, i) => ({
      inside: { temperatureC: 20, vaporPressurePa: 300 },
      outside: { temperatureC: i === 10 ? -3 : m.outside.temperatureC + 6, vaporPressurePa: 290 },
    }));
    const found = yearOfWater(wall, dry);
    expect(found.outcome).toBe('none');
    expect(decidingMonth(found, dry)).toBe(11);
  });
});
