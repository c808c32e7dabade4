/** Sums of printed film values, by hand: wet x solids, with half of the last digit printed to each side. */
import { describe, expect, it } from 'vitest';
import { coverageSum, drySum } from './film-agrees.js';
import { isProblem, parseQuantity } from '../quantity/parse.js';
import type { Dimension } from '../quantity/types.js';
import type { Measured, Product } from '../model/types.js';

const q = (text: string, dimension: Dimension): Measured => {
  const quantity = parseQuantity(text, dimension);
  if (isProblem(quantity)) throw new Error(quantity.message);
  return { ...quantity, at: {} as Measured['at'] };
};
const sum = (wet: string, dry: string, solids: string) => drySum(q(wet, 'film'), q(dry, 'film'), q(solids, 'fraction'));
const coverage = (claimed: string, more: Partial<Record<'wet' | 'dry' | 'solids', string>>) =>
  coverageSum({
    coverageM2PerL: q(claimed, 'coverage'),
    wetFilmUm: more.wet === undefined ? undefined : q(more.wet, 'film'),
    dryFilmUm: more.dry === undefined ? undefined : q(more.dry, 'film'),
    volumeSolids: more.solids === undefined ? undefined : q(more.solids, 'fraction'),
  } as Product);

describe('wet film, solids and dry film', () => {
  it.each([
    ['80 mil', '44 mil', '55 %', 'exact'],
    // 79.5 x 0.545 = 43.3 and 80.5 x 0.555 = 44.7; 43 may be 43.49, 45 may be 44.5.
    ['80 mil', '43 mil', '55 %', 'within the digits below'],
    ['80 mil', '45 mil', '55 %', 'within the digits above'],
    // 8.4 to 10.8.
    ['14-18 mil', '8-11 mil', '60 %', 'both ends of the range'],
    ['12-15 mil', '7.5 mil', '55 %', 'one value inside the range'],
    ['20 mil (508 um)', '10 mil', '50 %', 'the first of two units'],
    ['500 um', '0.25 mm', '0.5', 'units mixed'],
    // A share of 0.6 may be 0.56.
    ['100 mil', '56 mil', '0.6', 'a bare share'],
  ])('%s wet and %s dry agree at %s: %s', (wet, dry, solids) => {
    expect(sum(wet, dry, solids).agrees).toBe(true);
  });

  it.each([
    ['80 mil', '42 mil', '55 %'],
    ['80 mil', '46 mil', '55 %'],
    ['80 mil', '44.5 mil', '55.0 %'],
    ['14-18 mil', '8-14 mil', '60 %'],
    ['14-18 mil', '11 mil min', '50 %'],
    ['12 mil', '12 mil', '55 %'],
    ['500 um', '0.4 mm', '0.50'],
  ])('%s wet and %s dry do not agree at %s', (wet, dry, solids) => {
    expect(sum(wet, dry, solids).agrees).toBe(false);
  });

  it('is told with the film computed', () => {
    const { leastUm, mostUm } = sum('14-18 mil', '8-14 mil', '60 %');
    expect([leastUm / 25.4, mostUm / 25.4].map((x) => Number(x.toFixed(6)))).toEqual([8.4, 10.8]);
  });
});

describe('claimed coverage', () => {
  // A US gallon of 231 in3 over 144 in2/ft2 stands 1604.17 mil over a square foot.
  const MOST_AT_12_MIL = 1604.1667 / 12; // 133.68 ft2/gal

  it('has the most that arithmetic allows', () => {
    const ft2PerGal = (coverage('100 ft2/gal', { wet: '12 mil' })?.mostM2PerL ?? 0) * (3.785411784 / 0.09290304);
    expect(ft2PerGal).toBeCloseTo(MOST_AT_12_MIL, 3);
  });

  it.each([
    ['134 ft2/gal', { wet: '12 mil' }, true],
    // 11.995 mil allows 133.7, which rounds to 134.
    ['134 ft2/gal', { wet: '12.00 mil' }, true],
    ['100 ft2/gal', { wet: '12 mil' }, true],
    // 11.5 mil still rounds to 12: 139.5 ft2/gal.
    ['139 ft2/gal', { wet: '12 mil' }, true],
    ['141 ft2/gal', { wet: '12 mil' }, false],
    ['107-134 ft2/gal', { wet: '12-15 mil' }, true],
    ['107-160 ft2/gal', { wet: '12-15 mil' }, false],
    // 10 mil dry of half solids is 20 mil wet: at most 80.2 ft2/gal, 84.4 with the digits.
    ['80 ft2/gal', { dry: '10 mil', solids: '50 %' }, true],
    ['160 ft2/gal', { dry: '10 mil', solids: '50 %' }, false],
    ['3.3 m2/L', { wet: '300 um' }, true],
    ['4 m2/L', { wet: '300 um' }, false],
  ])('%s over %j is possible: %s', (claimed, more, possible) => {
    expect(coverage(claimed, more)?.possible).toBe(possible);
  });

  it('is not judged without a film', () => {
    expect(coverage('100 ft2/gal', {})).toBeUndefined();
    expect(coverage('100 ft2/gal', { dry: '10 mil' })).toBeUndefined();
  });
});
