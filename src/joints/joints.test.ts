import { describe, expect, it } from 'vitest';
import { depthForWidth, rodCompression } from './joints.js';

const IN = 25.4;
const depthsIn = (rule: 'half width' | 'equal width', widthsIn: readonly number[]): number[] =>
  widthsIn.map((w) => Number((depthForWidth(rule, w * IN).leastMm / IN).toFixed(9)));

describe('sealant depth', () => {
  it('by half the width is 1/4, 3/8 and 1/2 in for 1/4, 3/4 and 1-1/4 in (architectural detailing text, seen)', () => {
    expect(depthsIn('half width', [0.25, 0.75, 1.25])).toEqual([0.25, 0.375, 0.5]);
  });
  it('by equal width is 1/4, 1/2, 1/2 and 1/2 in for 1/4, 1/2, 3/4 and 1 in (handbook of sealants, seen)', () => {
    expect(depthsIn('equal width', [0.25, 0.5, 0.75, 1])).toEqual([0.25, 0.5, 0.5, 0.5]);
  });
  it('by equal width is a range above 1 in (same handbook)', () => {
    expect(depthForWidth('equal width', 1.5 * IN)).toEqual({ leastMm: 0.5 * IN, mostMm: 0.625 * IN });
  });
  it('is not agreed at 1/2 in: 1/4 in by one rule, 1/2 in by the other', () => {
    expect(depthsIn('half width', [0.5])).toEqual([0.25]);
    expect(depthsIn('equal width', [0.5])).toEqual([0.5]);
  });
  it('refuses a joint without width', () => expect(() => depthForWidth('half width', 0)).toThrow(RangeError));
});

describe('backer rod', () => {
  it('of 1/2 in in a 3/8 in joint is a third larger', () =>
    expect(rodCompression(0.5 * IN, 0.375 * IN)).toBeCloseTo(1 / 3, 9));
  it('smaller than the joint gives a share below zero', () => expect(rodCompression(6, 10)).toBeCloseTo(-0.4, 9));
  it('refuses a joint without width', () => expect(() => rodCompression(6, 0)).toThrow(RangeError));
});
