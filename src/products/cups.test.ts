/** Words of test reports; the letters of ASTM E96 are from memory, confirm. */
import { describe, expect, it } from 'vitest';
import { cupsOf } from './cups.js';

describe('the cup of a method', () => {
  it.each([
    ['ASTM E96 procedure A', ['dry']],
    ['ASTM E96/E96M, Procedure B', ['wet']],
    ['ASTM E96 Method BW', ['wet']],
    ['ASTM E96 procedures A and B', ['dry', 'wet']],
    ['ASTM E96, procedures A, B', ['dry', 'wet']],
    ['ASTM E96 desiccant method', ['dry']],
    ['ASTM E96 water method', ['wet']],
    ['ASTM E96 dry-cup and wet cup', ['dry', 'wet']],
  ])('%s: %j', (method, cups) => {
    expect([...(cupsOf(method) ?? [])]).toEqual(cups);
  });
  it.each(['ASTM E96', 'ISO 12572', 'ASTM E96 method as reported', 'procedure Bakery'])(
    'is not told by %s',
    (method) => {
      expect(cupsOf(method)).toBeUndefined();
    },
  );
});
