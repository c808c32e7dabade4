/** The fields are those of the schema; what a rule reads is made up here. */
import { describe, expect, it } from 'vitest';
import { mayRead } from './fields-read.js';
import type { Change } from './types.js';

const change = (kind: Change['document']['kind'], ...steps: string[]): Change => ({
  kind: 'changed',
  document: { kind, id: 'x' },
  steps,
});

describe('a rule that tells what it reads', () => {
  it.each<[string, Change, readonly string[], boolean]>([
    ['its own field', change('detail', 'work', 'seal', 'sides'), ['work.sides'], true],
    ['a part of its field', change('detail', 'work', 'seal', 'joint', 'depth'), ['work.joint'], true],
    ['a whole entry', change('detail', 'work', 'seal'), ['work.joint.depth'], true],
    ['another field of the entry', change('detail', 'work', 'seal', 'joint', 'depth'), ['work.sides'], false],
    ['a field of the same name elsewhere', change('detail', 'wall', 'seal', 'sides'), ['work.sides'], false],
    ['an edge, which stands under its side', change('detail', 'edges', 'top', 'tieIn'), ['edges.tieIn'], true],
    ['a word of the detail itself', change('detail', 'method'), ['method'], true],
    ['product data', change('product', 'least', 'lap'), ['product.least.lap'], true],
    ['other product data', change('product', 'permeance', 'dry'), ['product.least.lap'], false],
    ['the project', change('project', 'place', 'zone'), ['project.place.zone'], true],
    [
      'the size of a piece, of a rule that reads where it lies',
      change('detail', 'work', 'a', 'endDams'),
      ['work.place'],
      true,
    ],
    ['how thick it is, of such a rule', change('detail', 'work', 'a', 'wetFilm'), ['work.place'], false],
  ])('%s', (_, changed, reads, expected) => {
    expect(mayRead(reads, changed)).toBe(expected);
  });
});

it('of a rule that does not tell, nothing is ruled out', () => {
  expect(mayRead(undefined, change('detail', 'notes'))).toBe(true);
});
