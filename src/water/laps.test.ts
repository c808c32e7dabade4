import { expect, it } from 'vitest';
import type { Layer } from '../model/types.js';
import { habit, hasMasonry, inches, isLooseSheet, linesOpening, nominalMm } from './laps.js';

it('offers a habit at its nominal size with its honest provenance, and none when it is switched off', () => {
  expect(habit(50.8)).toEqual([
    {
      value: 50,
      text: '2 in',
      source: { basis: 'practice', citation: 'common practice', provenance: 'common practice, no source' },
    },
  ]);
  expect(habit(0)).toEqual([]);
});
it('writes lengths as inches', () => {
  expect(inches(38.1)).toBe('1-1/2 in');
});
it('tells hung sheets from bonded membranes', () => {
  expect(isLooseSheet('building paper')).toBe(true);
  expect(isLooseSheet('self-adhered membrane')).toBe(false);
  expect(linesOpening('fluid-applied flashing')).toBe(true);
  expect(linesOpening('metal flashing')).toBe(false);
});
it('takes 25 mm to the inch where the trade does', () => {
  expect(nominalMm(76.2)).toBeCloseTo(75, 9);
});
it('finds masonry by family and by name, as a whole word', () => {
  const layer = (family: Layer['family'], material: string): Layer => ({
    at: {} as Layer['at'],
    index: 0,
    id: 'x',
    family,
    material: { value: material, at: {} as Layer['at'] },
    controls: [],
    standards: [],
  });
  expect(hasMasonry([layer('cladding', 'clay brick')])).toBe(true);
  expect(hasMasonry([layer('masonry', 'units')])).toBe(true);
  expect(hasMasonry([layer('cladding', 'fiber cement siding'), layer('framing', 'blocking')])).toBe(false);
});
