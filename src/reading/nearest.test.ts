import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDistance, nearest } from './nearest.js';

describe('edit distance', () => {
  // Worked by hand: one insertion, one deletion, one replacement, one swap of neighbors.
  it.each([
    ['sill', 'sills', 1],
    ['jamb', 'jam', 1],
    ['head', 'heat', 1],
    ['slil', 'sill', 1],
    ['kitten', 'sitting', 3], // the textbook pair of the Levenshtein distance
    ['', 'sill', 4],
  ])('from "%s" to "%s" is %i', (a, b, distance) => {
    expect(editDistance(a, b)).toBe(distance);
  });

  it('is symmetric and zero only for equal words', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 12 }), fc.string({ maxLength: 12 }), (a, b) => {
        expect(editDistance(a, b)).toBe(editDistance(b, a));
        expect(editDistance(a, b) === 0).toBe(a === b);
      }),
    );
  });
});

describe('the nearest word', () => {
  it('does not mind capitals, dashes, underscores and spaces', () => {
    expect(nearest('flange-head', ['flange jambs', 'flange head'])).toBe('flange head');
    expect(nearest('onto_wall', ['intoOpening', 'ontoWall'])).toBe('ontoWall');
  });

  it('forgives one slip in a short word and more in a long one', () => {
    expect(nearest('sil', ['sill', 'head'])).toBe('sill');
    expect(nearest('hxxd', ['sill', 'head'])).toBeUndefined();
    expect(nearest('fluid-aplied membrene', ['fluid-applied flashing', 'fluid-applied membrane'])).toBe(
      'fluid-applied membrane',
    );
  });

  it('guesses nothing when nothing is near, or from one or two letters', () => {
    expect(nearest('color', ['sill', 'head', 'jambs'])).toBeUndefined();
    expect(nearest('x', ['A', 'B'])).toBeUndefined();
  });

  it('takes the first of equally near words', () => {
    expect(nearest('sall', ['sill', 'sell'])).toBe('sill');
  });

  it('takes words of any length', () => {
    expect(nearest('x'.repeat(100_000), ['sill'])).toBeUndefined();
  });
});
