import { describe, expect, it } from 'vitest';
import { decodeText, lineColumn, sourceFile } from './source.js';

describe('lineColumn', () => {
  it('counts lines and columns from 1', () => {
    const file = sourceFile('a.yaml', 'ab\ncd\n');
    expect(lineColumn(file, 0)).toEqual({ line: 1, column: 1 });
    expect(lineColumn(file, 1)).toEqual({ line: 1, column: 2 });
    expect(lineColumn(file, 3)).toEqual({ line: 2, column: 1 });
    expect(lineColumn(file, 4)).toEqual({ line: 2, column: 2 });
  });

  it('takes the line end as the last column of its line, and the end of the text as a place', () => {
    const file = sourceFile('a.yaml', 'ab\ncd\n');
    expect(lineColumn(file, 2)).toEqual({ line: 1, column: 3 });
    expect(lineColumn(file, 6)).toEqual({ line: 3, column: 1 });
    expect(lineColumn(sourceFile('a.yaml', ''), 0)).toEqual({ line: 1, column: 1 });
  });

  it('counts a Windows line end as one', () => {
    const file = sourceFile('a.yaml', 'ab\r\ncd');
    expect(lineColumn(file, 4)).toEqual({ line: 2, column: 1 });
  });

  it('counts UTF-16 code units', () => {
    // U+1D6A2 takes two.
    expect(lineColumn(sourceFile('a.yaml', '\u{1D6A2}b'), 2)).toEqual({ line: 1, column: 3 });
  });

  it('counts the byte order mark on line 1 and on no other', () => {
    const file = sourceFile('a.yaml', '\uFEFFab\ncd');
    expect(file.text).toBe('ab\ncd');
    expect(lineColumn(file, 0)).toEqual({ line: 1, column: 2 });
    expect(lineColumn(file, 3)).toEqual({ line: 2, column: 1 });
  });

  it('takes off one byte order mark, not two', () => {
    expect(sourceFile('a.yaml', '\uFEFF\uFEFFa').text).toBe('\uFEFFa');
  });

  it.each([-1, 3, 0.5, NaN])('refuses offset %s of a text of two', (offset) => {
    expect(() => lineColumn(sourceFile('a.yaml', 'ab'), offset)).toThrow(
      `a.yaml: offset ${offset} is outside of the text (0 to 2)`,
    );
  });
});

describe('decodeText', () => {
  it('keeps the byte order mark for sourceFile to see', () => {
    expect(decodeText(Buffer.from('\uFEFFa'))).toEqual({ text: '\uFEFFa' });
  });

  it('refuses bytes that are not UTF-8', () => {
    expect(decodeText(Buffer.from([0x61, 0xe9, 0x62]))).toEqual({ reason: 'is not UTF-8 text; save it as UTF-8' });
    expect(decodeText(Buffer.from('a', 'utf16le'))).toEqual({ reason: 'holds a zero byte, so it is not a text file' });
  });
});
