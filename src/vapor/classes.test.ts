import { describe, expect, it } from 'vitest';
import { parseQuantity, isProblem } from '../quantity/parse.js';
import { classOfPermeance, classOfQuantity, permToNg, tighter } from './classes.js';

const classOf = (text: string): ReturnType<typeof classOfQuantity> => {
  const quantity = parseQuantity(text, 'permeance');
  if (isProblem(quantity)) throw new Error(quantity.message);
  return classOfQuantity(quantity);
};

describe('the class of a permeance', () => {
  // IRC 2021 Table R702.7(1), printed on https://basc.pnnl.gov/building-assemblies/1a: 0.1, 1.0 and 10 perm.
  it.each([
    [0.1, 'I'],
    [0.1001, 'II'],
    [1, 'II'],
    [1.0001, 'III'],
    [10, 'III'],
    [10.01, 'none'],
  ] as const)('of %d perm is %s', (perm, name) => {
    expect(classOfPermeance(permToNg(perm))).toBe(name);
  });

  it('is the same when the limit is written as text', () => {
    expect(classOf('0.1 perm')).toBe('I');
    expect(classOf('1 perm')).toBe('II');
    expect(classOf('10 perm')).toBe('III');
  });

  it('takes the Canadian limit of 60 ng/(Pa s m2), 1.05 perm, for class III', () => {
    expect(classOf('60 ng/(Pa s m2)')).toBe('III');
  });

  it('is not guessed for a range that lies in two classes', () => {
    expect(classOf('0.5-2 perm')).toBeUndefined();
    expect(classOf('0.2-0.9 perm')).toBe('II');
  });

  it('counts a ceiling as the value it names', () => {
    expect(classOf('1 perm max.')).toBe('II');
  });

  it('is ordered from tight to open', () => {
    expect(tighter('I', 'II')).toBe(true);
    expect(tighter('none', 'III')).toBe(false);
    expect(tighter('II', 'II')).toBe(false);
  });
});
