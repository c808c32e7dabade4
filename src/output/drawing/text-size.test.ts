/** Room for text on paper. */
import { describe, expect, it } from 'vitest';
import { textWidthMm, wrapMm } from './text-size.js';

describe('the width of text', () => {
  it('grows with the font size and with every letter', () => {
    expect(textWidthMm('sill', 4)).toBeCloseTo(2 * textWidthMm('sill', 2));
    expect(textWidthMm('sills', 2)).toBeGreaterThan(textWidthMm('sill', 2));
  });
  it('tells wide letters from narrow ones', () => {
    expect(textWidthMm('mmmm', 2)).toBeGreaterThan(3 * textWidthMm('iiii', 2));
  });
  it('is greater for bold text', () => {
    expect(textWidthMm('head', 2, { bold: true })).toBeGreaterThan(textWidthMm('head', 2));
  });
  it('counts an ideograph as a full square, one character beyond the basic plane as one', () => {
    expect(textWidthMm('\u6f22', 2)).toBeGreaterThanOrEqual(2);
    expect(textWidthMm('\u{20000}', 2)).toBeCloseTo(textWidthMm('\u6f22', 2));
  });
});

describe('wrapped text', () => {
  const words = 'the field membrane laps onto the flashing of the opening';

  it('fits its width, line by line, and loses no word', () => {
    const lines = wrapMm(words, 25, 2.4);
    expect(lines.length).toBeGreaterThan(1);
    for (const line of lines) expect(textWidthMm(line, 2.4)).toBeLessThanOrEqual(25);
    expect(lines.join(' ')).toBe(words);
  });
  it('cuts a word that is wider than a line', () => {
    const lines = wrapMm('x'.repeat(60), 20, 2.4);
    expect(lines.join('')).toBe('x'.repeat(60));
    for (const line of lines) expect(textWidthMm(line, 2.4)).toBeLessThanOrEqual(20);
  });
  it('comes to an end on a line too narrow for a letter', () => {
    expect(wrapMm('abc', 0.1, 2.4)).toEqual(['a', 'b', 'c']);
  });
  it('says by dots that lines are left out, within the same width', () => {
    const lines = wrapMm(words, 25, 2.4, 2);
    expect(lines).toHaveLength(2);
    expect(lines[1]).toMatch(/ \.\.\.$/);
    expect(textWidthMm(lines[1] ?? '', 2.4)).toBeLessThanOrEqual(25);
  });
  it('has one empty line for no words', () => {
    expect(wrapMm('', 25, 2.4)).toEqual(['']);
  });
});
