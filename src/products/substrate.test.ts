/** Which words of a list of substrates cover which material. The words are those of the trade; common practice. */
import { describe, expect, it } from 'vitest';
import { listedAs } from './substrate.js';

describe('a substrate', () => {
  it.each([
    ['glass-mat gypsum sheathing', 'glass-mat gypsum sheathing'],
    ['glass-mat gypsum sheathing', 'Gypsum sheathings'],
    ['Exterior plywood sheathing', 'plywood'],
    ['cast-in-place concrete wall', 'concrete'],
    ['galvanized steel', 'steel'],
    ['OSB', 'oriented strand board'],
    ['oriented strand board sheathing', 'OSB'],
    ['CMU', 'concrete masonry'],
    ['XPS board', 'extruded polystyrene'],
    ['concrete masonry', 'masonry'],
  ])('"%s" is covered by "%s"', (material, listed) => {
    expect(listedAs([material], ['aluminum', listed])).toBe('listed');
  });

  it.each([
    ['concrete masonry', 'concrete'],
    ['oriented strand board', 'plywood'],
    ['steel', 'aluminum'],
    ['foam sheathing', 'gypsum sheathing'],
  ])('"%s" is not covered by "%s"', (material, listed) => {
    expect(listedAs([material], [listed])).toBe('not listed');
  });

  it('is unclear where the list is more particular than the drawing', () => {
    expect(listedAs(['gypsum sheathing'], ['glass-mat gypsum sheathing'])).toBe('unclear');
    expect(listedAs(['masonry'], ['concrete masonry'])).toBe('unclear');
  });

  it('may go by any of its names', () => {
    expect(listedAs(['foil-faced board', 'insulating sheathing'], ['insulating sheathing'])).toBe('listed');
  });
});
