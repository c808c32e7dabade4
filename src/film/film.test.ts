import { describe, expect, it } from 'vitest';
import {
  coatsNeeded,
  coverageM2PerL,
  dryFilm,
  dryFilmAvailableUm,
  spotLimits,
  thinnedSolids,
  wetFilm,
} from './film.js';

const MIL = 25.4;
const GAL_L = 3.785411784; // 231 cubic inches, exact
const FT2 = 0.3048 ** 2;
const ft2PerGal = (m2PerL: number): number => (m2PerL / FT2) * GAL_L;

describe('coverage', () => {
  it('is 160.417 ft2/gal at 10 mil (gallon volume; constant 1604 seen in a note of a paint consultant)', () => {
    expect(ft2PerGal(coverageM2PerL(10 * MIL))).toBeCloseTo(160.417, 2);
  });
  it('is 194.62 ft2/gal for 1.5 mil dry, 52 % solids, 35 % reaching the wall (inputs seen, computed with 1604)', () => {
    const found = ft2PerGal(coverageM2PerL(wetFilm(1.5 * MIL, 0.52), 0.65));
    expect(Math.abs(found / 194.62 - 1)).toBeLessThan(0.0002); // 1604 is 1604.17 rounded
  });
  it('refuses a film of nothing and a loss of everything', () => {
    expect(() => coverageM2PerL(0)).toThrow(RangeError);
    expect(() => coverageM2PerL(100, 1)).toThrow(RangeError);
  });
});

describe('dry film', () => {
  it('that 100 gal of 55 % solids leave on 2400 ft2 is 36.758 mil, less than 40 (computed with 1604)', () => {
    const mils = dryFilmAvailableUm(100 * GAL_L, 0.55, 2400 * FT2) / MIL;
    expect(Math.abs(mils / 36.758 - 1)).toBeLessThan(0.0002);
    expect(mils).toBeLessThan(40);
  });
  it('of 80 wet mil at 55 % is 44 mil, with 10 % thinner 40 mil (computed)', () => {
    expect(dryFilm(80, 0.55)).toBeCloseTo(44, 9);
    expect(dryFilm(80, 0.55, 0.1)).toBeCloseTo(40, 9);
  });
  it('and wet film undo each other', () => {
    expect(wetFilm(dryFilm(37, 0.61, 0.07), 0.61, 0.07)).toBeCloseTo(37, 9);
  });
  it('equals the wet film at 100 % solids', () => {
    expect(dryFilm(15, 1)).toBe(15);
  });
  it('refuses solids of nothing, more than everything, and negative thinner', () => {
    expect(() => thinnedSolids(0, 0)).toThrow(RangeError);
    expect(() => thinnedSolids(1.2, 0)).toThrow(RangeError);
    expect(() => thinnedSolids(0.5, -0.1)).toThrow(RangeError);
  });
});

describe('coats', () => {
  it('follow from the greatest film per coat', () => {
    expect(coatsNeeded(60, 25)).toBe(3);
    expect(coatsNeeded(50, 25)).toBe(2);
    expect(coatsNeeded(3 * 0.1, 0.1)).toBe(3);
    expect(coatsNeeded(10, 25)).toBe(1);
  });
  it('refuse a coat of nothing', () => expect(() => coatsNeeded(10, 0)).toThrow(RangeError));
});

describe('spot limits', () => {
  it('are 6.4 and 14.4 mil for a band of 8 to 12 mil (slide set on SSPC-PA 2, seen)', () => {
    expect(spotLimits(8, 12)).toEqual({ least: 6.4, most: 12 * 1.2 });
    expect(spotLimits(8, 12).most).toBeCloseTo(14.4, 9);
  });
});
