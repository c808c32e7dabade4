import { describe, expect, it } from 'vitest';
import { SURFACE_RESISTANCES } from './data/surfaces.js';
import {
  airSpace,
  insideOfCavity,
  permeanceFromSdNg,
  saturationsPa,
  sdFromMuM,
  sdFromPermeanceM,
  sectionOf,
  sidePermeancesNg,
  temperaturesC,
  type MoistureLayer,
} from './resistance.js';
import { permToNg } from '../vapor/classes.js';
import { saturationPressurePa } from './psychrometrics.js';
import { layer } from './testing/synthetic-climate.js';

const WALL = [layer('board', 0.05, 0.1), layer('wool', 1, 0.2), layer('film', 0, 3), layer('sheathing', 0.1, 0.5)];

describe('vapor resistance', () => {
  it('from US perm is 2e-10 / (perm x 5.72135e-11), NIST SP 811 perm at 0 degC (computed)', () => {
    const table: [number, number, number][] = [
      [0.06, 58.2613, 3.433], [0.1, 34.9568, 5.721], [1, 3.4957, 57.213], [1.5, 2.3305, 85.82], [3, 1.1652, 171.641],
      [5, 0.6991, 286.067], [10, 0.3496, 572.135], [50, 0.0699, 2860.675],
    ]; // prettier-ignore
    for (const [perm, sdM, ng] of table) {
      expect(Math.abs(permToNg(perm) / ng - 1), `${perm} perm`).toBeLessThan(1e-4);
      // The table has four decimals.
      expect(Math.abs(sdFromPermeanceM(permToNg(perm)) - sdM), `${perm} perm`).toBeLessThan(1e-4 * sdM + 5e-5);
      expect(permeanceFromSdNg(sdFromPermeanceM(permToNg(perm)))).toBeCloseTo(permToNg(perm), 9);
    }
  });
  it('of one perm lets 6.946 g/(m2 day) through at 23 degC and half the saturation pressure (computed)', () => {
    const halfPa = saturationPressurePa(23, 'Hyland-Wexler') / 2;
    expect(halfPa).toBeCloseTo(1405.22, 2);
    expect(Math.abs(permToNg(1) * 1e-12 * halfPa * 86400 * 1000 - 6.946)).toBeLessThan(0.002);
  });
  it('from mu is mu times the thickness, and stops at mu 100 000', () => {
    expect(sdFromMuM(50, 12)).toBeCloseTo(0.6, 12);
    expect(sdFromMuM(Infinity, 1)).toBe(100);
    expect(() => sdFromMuM(0.5, 10)).toThrow('1 or more');
    expect(() => sdFromMuM(10, 0)).toThrow('in mm');
  });
  it('of an unventilated air space is 0.01 m whatever it resists to heat (ISO 13788, from memory)', () => {
    expect(airSpace('gap', 0.18)).toMatchObject({ sdM: 0.01, rM2KW: 0.18 });
  });
});

describe('a section', () => {
  it('names its planes and adds up its resistances', () => {
    const section = sectionOf(WALL, 0.5);
    expect(section.planes.map((p) => p.name)).toEqual([
      'inside surface',
      'between board and wool',
      'in wool, 1/2 of the way out',
      'between wool and film',
      'between film and sheathing',
      'outside surface',
    ]);
    expect(section.planes.map((p) => Number(p.sdFromInsideM.toFixed(9)))).toEqual([0, 0.1, 0.2, 0.3, 3.3, 3.8]);
    expect([section.rTotalM2KW, section.sdTotalM].map((x) => Number(x.toFixed(9)))).toEqual([1.15, 3.8]);
  });
  it('cuts layers of more than 0.25 m2 K/W, one of just that not', () => {
    const count = (rM2KW: number): number => sectionOf([layer('a', rM2KW, 1)]).planes.length - 1;
    expect([0.25, 0.26, 0.5, 4].map(count)).toEqual([1, 2, 2, 16]);
    expect(sectionOf([{ ...layer('a', 0.2, 1), slices: 7 }]).planes.length - 1).toBe(7);
  });
  it('has the permeance of each side of a plane: 0.3 m inside and 3.5 m outside of the film', () => {
    const section = sectionOf(WALL, 0.5);
    const sides = sidePermeancesNg(section, section.planes[3]!);
    expect(sides.insideNgPerPaSM2).toBeCloseTo(200 / 0.3, 6);
    expect(sides.outsideNgPerPaSM2).toBeCloseTo(200 / 3.5, 6);
    expect(sidePermeancesNg(section, section.planes[0]!).insideNgPerPaSM2).toBe(Infinity);
  });
  it('takes permeance for vapor resistance', () => {
    const given: MoistureLayer = { id: 'paint', rM2KW: 0, permeanceNgPerPaSM2: 200, storage: 'other' };
    expect(sectionOf([given]).sdTotalM).toBeCloseTo(1, 12);
    expect(sectionOf([{ ...given, permeanceNgPerPaSM2: 0 }]).sdTotalM).toBe(1500);
  });
  it('leaves out a film without any resistance', () => {
    expect(sectionOf([layer('a', 0.1, 1), layer('paint', 0, 0), layer('b', 0.1, 1)]).planes).toHaveLength(3);
  });
  it('refuses what cannot be: no vapor resistance, negative or missing figures', () => {
    expect(() => sectionOf([])).toThrow('at least one layer');
    expect(() => sectionOf([layer('a', 1, 0)])).toThrow('still air');
    expect(() => sectionOf([layer('a', -1, 1)])).toThrow('"a"');
    expect(() => sectionOf([layer('a', NaN, 1)])).toThrow('thermal resistance');
    expect(() => sectionOf([layer('a', 1, NaN)])).toThrow('vapor resistance');
    expect(() => sectionOf(WALL, 0)).toThrow('above zero');
  });
  it('ends at a well ventilated cavity', () => {
    expect(insideOfCavity(WALL, 'film').map((l) => l.id)).toEqual(['board', 'wool']);
    expect(() => insideOfCavity(WALL, 'cavity')).toThrow('"board", "wool"');
  });
});

describe('temperature', () => {
  it('falls in proportion to resistance: 0.13 + 1.15 + 0.04 m2 K/W from 20 to -5 degC, by hand', () => {
    const t = temperaturesC(sectionOf(WALL, Infinity), SURFACE_RESISTANCES.interstitial, 20, -5);
    // 25 K / 1.32 = 18.939 K per m2 K/W.
    for (const [k, expected] of [17.538, 16.591, -2.348, -2.348, -4.242].entries())
      expect(t[k]).toBeCloseTo(expected, 3);
  });
  it('sets saturation: -2.348 degC is over ice', () => {
    const p = saturationsPa(sectionOf(WALL, Infinity), SURFACE_RESISTANCES.interstitial, 20, -5);
    expect(p[2]).toBeCloseTo(610.5 * Math.exp((21.875 * -2.3485) / (265.5 - 2.3485)), 1);
  });
  it('inside R 0.25 and outside 0.04 for mould and the period method, 0.13 for condensation in walls', () => {
    const inside = Object.entries(SURFACE_RESISTANCES).map(([use, s]) => [use, s.insideM2KW, s.outsideM2KW]);
    // ISO 13788 from memory; DIN 4108-3 seen at second hand.
    expect(inside).toEqual([['interstitial', 0.13, 0.04], ['mould', 0.25, 0.04], ['glazing', 0.13, 0.04], ['period', 0.25, 0.04]]); // prettier-ignore
  });
  it('has no value in a wall without resistance', () => {
    expect(() => temperaturesC(sectionOf([layer('a', 0, 1)]), { insideM2KW: 0, outsideM2KW: 0 }, 20, 0)).toThrow(
      'above zero',
    );
  });
});
