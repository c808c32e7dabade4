import { describe, expect, it } from 'vitest';
import { permToNg } from '../vapor/classes.js';
import { monthNames, permeanceText, resistanceText, waterText } from './words.js';

describe('water on an area', () => {
  it('is told in ounces or kilograms: 0.5 kg/m2 is 1.64 oz/ft2 (NIST SP 811: 1 oz/ft2 = 0.305 152 kg/m2)', () => {
    expect(waterText(0.305152, 'US')).toBe('1.00 oz/ft2');
    expect(waterText(0.5, 'US')).toBe('1.64 oz/ft2');
    expect(waterText(0.5, 'SI')).toBe('0.50 kg/m2');
  });
  it('never reads as none when there is some', () => {
    expect(waterText(1e-4, 'SI')).toBe('less than 0.01 kg/m2');
    expect(waterText(0, 'SI')).toBe('0.00 kg/m2');
  });
});

describe('months', () => {
  it('run on through the end of the year', () => {
    expect(monthNames([1, 2, 12, 11])).toBe('November to February');
    expect(monthNames([6, 7])).toBe('June and July');
    expect(monthNames([1, 5])).toBe('January, May');
    expect(monthNames([])).toBe('no month');
    expect(monthNames([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])).toBe('every month');
  });
});

it('R-values carry their system', () => {
  expect(resistanceText(1.32, 'SI')).toBe('RSI 1.32');
  expect(resistanceText(1.32, 'US')).toBe('R-7.5');
});

it('a permeance has two digits, to the safe side where it is asked for', () => {
  expect(permeanceText(permToNg(6.114), 'US')).toBe('6.1 perm');
  expect(permeanceText(permToNg(0.04863), 'US', 'down')).toBe('0.048 perm');
  expect(permeanceText(permToNg(6.114), 'US', 'up')).toBe('6.2 perm');
  expect(permeanceText(443.7, 'SI', 'down')).toBe('440 ng/(Pa s m2)');
  // Two digits already: rounding in floating point must not take one away.
  for (const perm of [0.1, 0.29, 1, 1.1, 5.7, 10, 57])
    for (const to of ['up', 'down'] as const) expect(permeanceText(permToNg(perm), 'US', to)).toBe(`${perm} perm`);
});
