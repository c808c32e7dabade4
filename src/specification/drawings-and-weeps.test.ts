/** Scales of drawings, weeps of masonry and coats that follow a preposition. */
import { describe, expect, it } from 'vitest';
import { told } from './testing/one-paragraph.js';

describe('what is not asked of a wall', () => {
  it('the scale of a drawing is no size', () => {
    expect(told('Shop drawings at not less than 3 inches = 1 foot for each opening condition.').join(' ')).not.toMatch(
      /3 in/,
    );
  });
  it('weeps of masonry are not those of the seal at a sill', () => {
    const [first] = told('Weep holes in masonry at 24" o.c. maximum above all flashing.');
    expect(first).toMatch(/atMost 24 in/);
    expect(first).not.toMatch(/weep spacing|exterior seal/);
    expect(told('Space weeps of the exterior seal at 24 inches on center maximum.').join(' ')).toMatch(/weep spacing/);
  });
  it('a name does not end in a preposition', () => {
    expect(told('Apply membrane at 60 mils WFT in two coats.').join(' ')).not.toMatch(/ in"/);
  });
});
