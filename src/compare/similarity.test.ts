import { describe, expect, it } from 'vitest';
import { dice, pairUp, tokensOf } from './similarity.js';

describe('words of a text', () => {
  it('ids keep their dashes and dots, sentences lose theirs', () => {
    expect(tokensOf('The lap of "ro-corners" at O-1.2, 5-1/2 in.')).toEqual([
      'The',
      'lap',
      'of',
      'ro-corners',
      'at',
      'O-1.2',
      '5-1',
      '2',
      'in',
    ]);
  });
});

describe('the coefficient of Dice', () => {
  // Worked by hand: 2 shared of 3 and 4 gives 4 / 7.
  it.each<[string[], string[], number]>([
    [[], [], 1],
    [['a'], [], 0],
    [['a', 'b', 'c'], ['b', 'c', 'd', 'e'], 4 / 7],
    [['a', 'a'], ['a'], 2 / 3],
    [['a', 'b'], ['b', 'a'], 1],
  ])('%j and %j', (a, b, expected) => {
    expect(dice(a, b)).toBeCloseTo(expected, 12);
    expect(dice(b, a)).toBeCloseTo(expected, 12);
  });
});

describe('pairing one to one', () => {
  const of = (table: readonly (readonly (number | undefined)[])[]) => (i: number, j: number) => table[i]?.[j];

  it('takes the most alike first, whatever their order', () => {
    expect(
      pairUp(
        2,
        2,
        of([
          [0.6, 0.9],
          [0.5, 0.8],
        ]),
      ),
    ).toEqual([
      { before: 0, after: 1 },
      { before: 1, after: 0 },
    ]);
  });

  it('pairs nothing that may not be paired, and nothing twice', () => {
    expect(pairUp(2, 1, of([[undefined], [0.7]]))).toEqual([{ before: 1, after: 0 }]);
    expect(pairUp(3, 1, of([[1], [1], [1]]))).toHaveLength(1);
  });

  it('equals keep their order', () => {
    expect(pairUp(3, 3, () => 1)).toEqual([0, 1, 2].map((i) => ({ before: i, after: i })));
  });

  it('two lists turned around give the same pairs', () => {
    const table = [
      [0.9, 0.4, 0.7],
      [0.8, 0.85, 0.3],
    ];
    const turned = pairUp(3, 2, (i, j) => table[j]?.[i]);
    expect(turned.map(({ before, after }) => [after, before]).sort()).toEqual(
      pairUp(2, 3, of(table))
        .map(({ before, after }) => [before, after])
        .sort(),
    );
  });
});
