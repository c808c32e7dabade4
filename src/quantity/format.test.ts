/** How a value is printed. Expected texts are worked by hand from the exact definitions. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NO_VALUE, formatBound, formatQuantity } from './format.js';
import { isProblem, parseQuantity } from './parse.js';
import type { Dimension, Quantity } from './types.js';
import { DIMENSIONS, fromBase, unitsOf } from './units.js';

function read(text: string, dimension: Dimension): Quantity {
  const result = parseQuantity(text, dimension);
  if (isProblem(result)) throw new Error(result.message);
  return result;
}

describe('a value is printed', () => {
  it.each<
    [number, Dimension, { unit?: string; system?: 'US' | 'SI'; toward?: 'up' | 'down'; digits?: number }, string]
  >([
    [139.7, 'length', {}, '5-1/2 in'],
    [9.525, 'length', {}, '3/8 in'],
    [101.6, 'length', {}, '4 in'],
    [1371.6, 'length', { system: 'US' }, '54 in'],
    [1371.6, 'length', { unit: 'ft' }, '4 ft 6 in'],
    [2438.4, 'length', { unit: 'ft' }, '8 ft'],
    // 1.04 in is 16.64 sixteenths, 17 to the nearest; 0.22 in, below a quarter, is near none.
    [1.04 * 25.4, 'length', {}, '1-1/16 in'],
    [0.22 * 25.4, 'length', {}, '0.22 in'],
    [0.1, 'length', {}, '0.00394 in'],
    // A limit of 0.469 in is 7.5 sixteenths: who uses 1/2 in meets it as a least size, 7/16 in as a most.
    [0.469 * 25.4, 'length', { toward: 'up' }, '1/2 in'],
    [0.469 * 25.4, 'length', { toward: 'down' }, '7/16 in'],
    [0.721 * 25.4, 'length', { toward: 'up' }, '3/4 in'],
    [1.35 * 25.4, 'length', { toward: 'up' }, '1-3/8 in'],
    [12.7, 'length', { toward: 'up' }, '1/2 in'],
    [18.3, 'length', { system: 'SI', toward: 'up' }, '19 mm'],
    [18.3, 'length', { system: 'SI', toward: 'down' }, '18 mm'],
    [101.4, 'length', { digits: 3 }, '3.99 in'],
    [0.0382 * 0.09290304, 'area', {}, '0.038 ft2'],
    [0.228 * 57.2135, 'permeance', {}, '0.23 perm'],
    // Two digits would make a class I retarder of it.
    [0.104 * 57.2135, 'permeance', {}, '0.104 perm'],
    [139.7, 'length', { system: 'SI' }, '140 mm'],
    [9.525, 'length', { unit: 'mm' }, '9.5 mm'],
    [1000, 'length', { unit: 'm' }, '1 m'],
    [304.8, 'film', {}, '12 mil'],
    [304.8, 'film', { system: 'SI' }, '305 um'],
    [0.06, 'slope', {}, '6 %'],
    [1 / 48, 'slope', { unit: 'in/ft' }, '1/4 in/ft'],
    [1 / 48, 'slope', { unit: 'rise:run' }, '1:48'],
    [1 / 48, 'slope', {}, '2.08 %'],
    [5.72135, 'permeance', {}, '0.1 perm'],
    [60, 'permeance', { system: 'SI' }, '60 ng/(Pa s m2)'],
    [13 * 0.1761102, 'thermalResistance', {}, 'R-13'],
    [2.3, 'thermalResistance', { system: 'SI' }, 'RSI 2.3'],
    [-40, 'temperature', {}, '-40 degF'],
    [21.06, 'temperature', { system: 'SI' }, '21.1 degC'],
    [45, 'time', {}, '45 s'],
    [5400, 'time', {}, '1.5 h'],
    [36 * 3600, 'time', {}, '36 h'],
    [5.999 * 304.8, 'length', { unit: 'ft' }, '6 ft'],
    [259200, 'time', {}, '3 d'],
    [0.55, 'fraction', {}, '55 %'],
    [0, 'slope', { unit: 'rise:run' }, '0 %'],
    [-1e-9, 'temperature', { system: 'SI' }, '0 degC'],
  ])('%d %s %o as %s', (value, dimension, like, expected) => {
    expect(formatQuantity(value, dimension, like)).toBe(expected);
  });

  it.each<[string, Dimension, string]>([
    ['>= 4 in', 'length', 'at least 4 in'],
    ['max 12 mm', 'length', 'at most 12 mm'],
    ['12-15 mil', 'film', '12 to 15 mil'],
    ['4 ft to 6 ft 3 in', 'length', '4 ft to 6 ft 3 in'],
    ['4 ft to 6 ft', 'length', '4 ft to 6 ft'],
    ['R-13-15', 'thermalResistance', 'R-13 to R-15'],
    ['4"', 'length', '4 in'],
    ['class 100/50', 'movement', '+100/-50 %'],
    ['min class 25', 'movement', 'at least 25 %'],
    ['40-90 F', 'temperature', '40 to 90 degF'],
  ])('%s (%s) as %s', (text, dimension, expected) => {
    expect(formatBound(read(text, dimension))).toBe(expected);
  });

  it('never as NaN', () => {
    for (const value of [NaN, Infinity, -Infinity]) expect(formatQuantity(value, 'film')).toBe(NO_VALUE);
    fc.assert(
      fc.property(fc.double(), fc.constantFrom(...DIMENSIONS.flatMap(unitsOf)), (value, unit) => {
        expect(formatQuantity(value, unit.dimension, { unit: unit.spelling })).not.toMatch(/NaN|Infinity|undefined/);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('what is printed can be read again', () => {
  it('in every unit, within the rounding', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...DIMENSIONS.flatMap(unitsOf)),
        fc.double({ min: 1e-3, max: 0.99, noNaN: true }),
        fc.integer({ min: 0, max: 3 }),
        (unit, share, power) => {
          const { dimension, spelling } = unit;
          const scale = dimension === 'fraction' || dimension === 'slope' ? 1 : 10 ** power;
          const value = share * scale;
          const again = read(formatQuantity(value, dimension, { unit: spelling }), dimension).value;
          // Three digits (0.5 %), or half the last whole unit, or half a sixteenth of an inch; two digits (5 %) for
          // areas and permeances; a temperature is rounded to a tenth.
          const x = fromBase(value, unit);
          const xAgain = fromBase(again, unit);
          const inchStep = { ft: 1 / 32 / 12, in: 1 / 32, 'in/ft': 1 / 32 }[spelling] ?? 0;
          const digits = dimension === 'area' || dimension === 'permeance' ? 0.051 : 0.0051;
          const step = dimension === 'temperature' ? 0.05 : inchStep;
          expect(Math.abs(xAgain - x)).toBeLessThanOrEqual(
            Math.max(
              Math.abs(x) * digits,
              step * 1.0001,
              /^[mu]m$/.test(spelling) ? (Math.abs(x) >= 10 ? 0.5 : 0.25) : 0,
            ) + 1e-12,
          );
        },
      ),
      { numRuns: 3000 },
    );
  });

  it('with its bound', () => {
    for (const text of ['at least 4 in', 'at most 3/8 in', '12 to 15 in', '4 ft 6-1/2 in', '4 ft to 6 ft 3 in']) {
      expect(formatBound(read(text, 'length'))).toBe(text);
    }
  });
});
