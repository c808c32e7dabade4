/** Values printed in two units: pairs as data sheets print them, and pairs that cannot both be right. */
import { describe, expect, it } from 'vitest';
import { formatQuantity } from './format.js';
import { isProblem, parseQuantity } from './parse.js';
import type { Dimension, Quantity, QuantityProblem } from './types.js';

function read(text: string, dimension: Dimension): Quantity {
  const result = parseQuantity(text, dimension);
  if (isProblem(result)) throw new Error(result.message);
  return result;
}
function refused(text: string, dimension: Dimension): QuantityProblem {
  const result = parseQuantity(text, dimension);
  if (!isProblem(result)) throw new Error(`${text} was read as ${JSON.stringify(result)}`);
  return result;
}

describe('a value in two units', () => {
  // Base values from the definitions: inch 25.4 mm, mil 25.4 um, (t - 32) / 1.8.
  it.each<[string, Dimension, number]>([
    ['15 mil (0.38 mm)', 'film', 381],
    ['15 mils (0.38 mm)', 'film', 381],
    ['0.38 mm (15 mil)', 'film', 380],
    ['1 mil (0.03 mm)', 'film', 25.4],
    ['0.03 mm (1 mil)', 'film', 30],
    ['4 in (100 mm)', 'length', 101.6],
    ['4 in [100 mm]', 'length', 101.6],
    ['3 in (75 mm)', 'length', 76.2],
    ['1/2 in (12 mm)', 'length', 12.7],
    ['3/4 in (20 mm)', 'length', 19.05],
    ['1/16 in (2 mm)', 'length', 1.5875],
    ['40 F (4 C)', 'temperature', 40 / 9],
    ['40 F (5 C)', 'temperature', 40 / 9],
    ['-20 F (-29 C)', 'temperature', -260 / 9],
    ['0.02 L/(s m2) (0.004 cfm/ft2)', 'airLeakage', 0.02],
    ['0.004 cfm/ft2 (0.02 L/(s m2))', 'airLeakage', 0.02032],
    ['12 perm (686 ng/(Pa s m2))', 'permeance', 686.562],
    ['180 d (6 months)', 'time', 180 * 86400],
  ])('%s (%s) counts as the first', (text, dimension, expected) => {
    const quantity = read(text, dimension);
    expect(quantity.value).toBeCloseTo(expected, 9);
    expect(quantity.text).toBe(text);
  });

  it('keeps the unit of the first for printing', () => {
    const quantity = read('15 mil (0.38 mm)', 'film');
    expect(formatQuantity(quantity.value, 'film', quantity)).toBe('15 mil');
  });

  it('may be a range, with the second unit once or at each end', () => {
    for (const text of ['12-15 mil (0.30-0.38 mm)', '12 mil (0.30 mm) to 15 mil (0.38 mm)']) {
      const range = read(text, 'film');
      expect(range).toMatchObject({ bound: 'between' });
      expect(range.value).toBeCloseTo(304.8, 9);
      expect(range.upper).toBeCloseTo(381, 9);
    }
  });

  it('may be a bound, said once or twice', () => {
    for (const text of ['at least 4 in (100 mm)', '4 in (100 mm) minimum', '4 in min. (100 mm min.)'])
      expect(read(text, 'length')).toMatchObject({ bound: 'at least', value: 101.6 });
  });

  it.each<[string, Dimension, string]>([
    ['15 mil (0.25 mm)', 'film', '15 mil is 0.381 mm, not 0.25 mm'],
    ['15 mil (3.8 mm)', 'film', '15 mil is 0.381 mm, not 3.8 mm'],
    ['4 in (110 mm)', 'length', '4 in is 102 mm, not 110 mm'],
    ['1 in (30 mm)', 'length', '1 in is 25 mm, not 30 mm'],
    ['40 F (7 C)', 'temperature', '40 degF is 4.4 degC, not 7 degC'],
    ['12-15 mil (0.30-0.48 mm)', 'film', '15 mil is 0.381 mm, not 0.48 mm'],
    ['12 mil (0.20 mm) to 15 mil (0.38 mm)', 'film', '12 mil is 0.305 mm, not 0.2 mm'],
  ])('%s (%s) is refused: %s', (text, dimension, why) => {
    const { problem, message } = refused(text, dimension);
    expect(problem).toBe('two values');
    expect(message).toContain(`Found "${text}"`);
    expect(message).toContain(why);
  });

  it('is refused with a range on one side only, or with other bounds', () => {
    expect(refused('12-15 mil (0.38 mm)', 'film').message).toContain('a range and a single value');
    expect(refused('15 mil (0.30-0.38 mm)', 'film').problem).toBe('two values');
    expect(refused('at least 4 in (100 mm max)', 'length').message).toContain('bounds');
  });

  it('says what is wrong with either part', () => {
    expect(refused('15 mil (0.38 mmm)', 'film').problem).toBe('unknown unit');
    expect(refused('15 psf (0.38 mm)', 'film').problem).toBe('wrong dimension');
    for (const text of ['15 mil (0.38 mm', '15 mil ()', '15 mil (thick)', '15 mil (1 um) (2 um) (3 um)'])
      refused(text, 'film');
  });
});
