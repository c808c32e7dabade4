/**
 * The constants, held against published values and against an independent library.
 * Published: NIST SP 811 (perm and inch of water) and the exact definitions; see the line beside each check.
 */
import unit from 'unitmath';
import { describe, expect, it } from 'vitest';
import { isProblem, parseQuantity } from './parse.js';
import type { Dimension } from './types.js';
import { BASE_UNITS } from './types.js';
import { DIMENSIONS, fromBase, toBase, unitsOf } from './units.js';

function base(text: string, dimension: Dimension): number {
  const result = parseQuantity(text, dimension);
  if (isProblem(result)) throw new Error(result.message);
  return result.value;
}

/** Relative tolerance 1e-5: the published constants have six or seven digits. */
function near(found: number, expected: number, relative = 1e-5): void {
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(Math.abs(expected) * relative);
}

describe('constants agree with published values', () => {
  it.each<[string, Dimension, number, string]>([
    ['1 perm', 'permeance', 57.2135, 'NIST SP 811: 5.72135e-11 kg/(Pa s m2) at 0 degC'],
    ['1 perm-in', 'permeability', 1.45322, 'NIST SP 811: 1.45322e-12 kg/(Pa s m) at 0 degC'],
    ['R-1', 'thermalResistance', 0.1761102, 'NIST SP 811: 0.1761102 m2 K/W'],
    ['1 psf', 'pressure', 47.88026, 'NIST SP 811: 47.88026 Pa'],
    ['1.57 psf', 'pressure', 75.17, '75 Pa test pressure as printed in US units, to four digits'],
    ['1 in. w.g.', 'pressure', 249.082, 'NIST SP 811: inch of water at 4 degC'],
    ['1 cfm/ft2', 'airLeakage', 5.08, 'exact: 0.3048 m x 1000 L / 60 s'],
    ['0.04 cfm/ft2', 'airLeakage', 0.2032, 'exact conversion of the material test limit times ten'],
    ['1 mil', 'film', 25.4, 'exact: thousandth of an inch'],
    ['60 ng/(Pa s m2)', 'permeance', 60, 'Canadian code limit, already in the base unit'],
    ['20 fl oz', 'volume', (36.094 * 16.387064) / 1000, '20 fl oz is 36.094 cubic inches (231/128 each)'],
  ])('%s (%s) is %d', (text, dimension, expected) => {
    near(base(text, dimension), expected, text === '1.57 psf' || text === '20 fl oz' ? 1e-4 : 1e-5);
  });

  it('1 perm is 0.65905 metric perm (g per 24 h, m2 and mmHg)', () => {
    // Published ratio of the two perms, five digits.
    near(base('1 perm', 'permeance') / base('1 metric perm', 'permeance'), 0.65905, 2e-5);
  });

  it('the perm follows from grain, square foot and inch of mercury at 0 degC', () => {
    // Grain 64.79891 mg (exact), foot 0.3048 m (exact), inHg at 0 degC 3386.389 Pa (NIST SP 811).
    near(base('1 perm', 'permeance'), 64.79891e6 / 3600 / 0.3048 ** 2 / 3386.389);
  });

  it.each([
    // sd in meters by sd = 2e-10 / permeance, 2e-10 kg/(m s Pa) as in ISO 13788 (from memory, confirm).
    [0.06, 58.2613],
    [0.1, 34.9568],
    [1, 3.4957],
    [1.5, 2.3305],
    [3, 1.1652],
    [5, 0.6991],
    [10, 0.3496],
    [50, 0.0699],
  ])('%d perm has an air layer thickness of %d m', (perms, sdM) => {
    expect(200 / base(`${perms} perm`, 'permeance')).toBeCloseTo(sdM, 4);
  });

  it('10 mil wet covers 160.417 ft2 per gallon', () => {
    // 231 cubic inches per gallon over 0.010 in, in square feet; published as 1604 ft2 mil per gallon.
    const litersPerM2 = base('10 mil', 'film') / 1000;
    near(1 / litersPerM2, base('160.417 ft2/gal', 'coverage'));
  });

  it.each([
    // 6 % over 5-1/2 in rises 0.33 in; 1/4 in 12 is 2.083 % (arithmetic).
    ['1/4 in 12', 0.02083, 2e-4],
    ['0.33 in per 5-1/2 in', 0.06, 1e-9],
  ])('slope %s is %d', (text, expected, relative) => {
    near(base(text, 'slope'), expected, relative);
  });
});

it('a slope of 6 % is 3.434 degrees', () => {
  // Arctangent of 0.06, printed to three decimals.
  const degrees = unitsOf('slope').find(({ spelling }) => spelling === 'deg');
  expect(degrees && fromBase(base('6 %', 'slope'), degrees)).toBeCloseTo(3.434, 3);
});

describe('constants agree with unitmath', () => {
  it.each<[string, Dimension, string, string]>([
    ['in', 'length', 'in', 'mm'],
    ['ft', 'length', 'ft', 'mm'],
    ['yd', 'length', 'yd', 'mm'],
    ['cm', 'length', 'cm', 'mm'],
    ['m', 'length', 'm', 'mm'],
    ['mil', 'film', 'mil', 'um'],
    ['in', 'film', 'in', 'um'],
    ['mm', 'film', 'mm', 'um'],
    ['ft2', 'area', 'ft^2', 'm^2'],
    ['in2', 'area', 'in^2', 'm^2'],
    ['cm2', 'area', 'cm^2', 'm^2'],
    ['psi', 'pressure', 'psi', 'Pa'],
    ['psf', 'pressure', 'lbf/ft^2', 'Pa'],
    ['inH2O', 'pressure', 'inH2O', 'Pa'],
    ['kPa', 'pressure', 'kPa', 'Pa'],
    ['gal', 'volume', 'gal', 'L'],
    ['qt', 'volume', 'quart', 'L'],
    ['fl oz', 'volume', 'floz', 'L'],
    ['ft3', 'volume', 'ft^3', 'L'],
    ['m3', 'volume', 'm^3', 'L'],
    ['mL', 'volume', 'mL', 'L'],
    ['min', 'time', 'minute', 's'],
    ['h', 'time', 'hour', 's'],
    ['d', 'time', 'day', 's'],
    ['wk', 'time', 'week', 's'],
    ['month', 'time', 'month', 's'],
    ['degF', 'temperature', 'degF', 'degC'],
    ['degC', 'temperature', 'degC', 'degC'],
  ])('%s (%s)', (ours, dimension, theirs, baseUnit) => {
    for (const x of [1, 7.25, 60]) {
      near(base(`${x} ${ours}`, dimension), unit(x, theirs).to(baseUnit).value, 1e-9);
    }
  });
});

describe('the table', () => {
  it('holds every base unit, converting to itself', () => {
    const named = DIMENSIONS.filter((dimension) => BASE_UNITS[dimension] !== 'ratio');
    expect(named.length).toBe(13);
    for (const dimension of named) expect(base(`3 ${BASE_UNITS[dimension]}`, dimension)).toBe(3);
  });

  it('converts every unit there and back, and names a source for each', () => {
    for (const unitOfTable of DIMENSIONS.flatMap(unitsOf)) {
      expect(fromBase(toBase(7.5, unitOfTable), unitOfTable)).toBeCloseTo(7.5, 9);
      expect(unitOfTable.source.length).toBeGreaterThan(15);
    }
  });

  it('gives one number for one length, however written', () => {
    for (const text of ['54 in', '4 ft 6 in', '4\'-6"', '4.5 ft', '1.5 yd', '1371.6 mm', '137.16 cm', '1.3716 m']) {
      expect(base(text, 'length')).toBe(1371.6);
    }
  });
});
