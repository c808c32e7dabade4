import fc from 'fast-check';
import { expect, test } from 'vitest';
import { firstCells, padTo, textWidth, wrap } from './text-width.js';

test('a wide character takes two cells, a combining mark none', () => {
  expect(textWidth('wall')).toBe(4);
  expect(textWidth('壁')).toBe(2);
  expect(textWidth('e\u0301')).toBe(1);
});

test('lines break at spaces and fill up', () => {
  expect(wrap('lap the membrane onto the flashing', 16)).toEqual(['lap the membrane', 'onto the', 'flashing']);
});

test('a word longer than the line is cut, not lost', () => {
  expect(wrap('a abcdefghij b', 4)).toEqual(['a', 'abcd', 'efgh', 'ij b']);
});

test('empty text is one empty line', () => {
  expect(wrap('', 10)).toEqual(['']);
});

test('no line is too wide and no letter is lost, for any text and width', () => {
  const text = fc
    .array(fc.string({ unit: fc.constantFrom('a', 'b', '-', '壁', 'é') }), { maxLength: 12 })
    .map((all) => all.join(' '));
  fc.assert(
    fc.property(text, fc.integer({ min: 2, max: 30 }), (given, cells) => {
      const lines = wrap(given, cells);
      expect(lines.every((line) => textWidth(line) <= cells)).toBe(true);
      expect(lines.join('').replaceAll(' ', '')).toBe(given.replaceAll(' ', ''));
    }),
  );
});

test('padding counts cells, and never shortens', () => {
  expect(padTo('壁', 4)).toBe('壁  ');
  expect(padTo('sheathing', 4)).toBe('sheathing');
});

test('the first cells of text never split a character', () => {
  expect(firstCells('a壁b', 2)).toBe('a');
  expect(firstCells('壁b', 1)).toBe('壁');
});
