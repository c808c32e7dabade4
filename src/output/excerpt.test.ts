import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SourceFile } from '../reading/types.js';
import { excerpt } from './excerpt.js';
import { textWidth } from './text-width.js';

const file = (text: string): SourceFile => ({ uri: 'a.yaml', text });

/** The text standing above the pointer. */
function pointed({ text, pointer }: { text: string; pointer: string }): string {
  const start = pointer.lastIndexOf(' ') + 1;
  return text.slice(start, start + pointer.length - start);
}

describe('the excerpt', () => {
  test('shows the line and points at the region', () => {
    const shown = excerpt(file('a: 1\nslope: 0 %\nb: 2\n'), { start: 12, end: 15 }, 60);
    expect(shown).toEqual({ text: 'slope: 0 %', pointer: '       ^^^' });
  });

  test('leaves out the indentation and keeps the pointer in place', () => {
    expect(excerpt(file('x:\n      slope: 0 %'), { start: 16, end: 19 }, 60)).toEqual({
      text: 'slope: 0 %',
      pointer: '       ^^^',
    });
  });

  test('cuts a long line around the region', () => {
    const text = `${'a '.repeat(60)}HERE${' b'.repeat(60)}`;
    const shown = excerpt(file(text), { start: 120, end: 124 }, 40);
    expect(pointed(shown)).toBe('HERE');
    expect(shown.text.startsWith('...')).toBe(true);
    expect(shown.text.endsWith('...')).toBe(true);
  });

  test('points at one place when the region is empty, also at the end of the file', () => {
    expect(excerpt(file('slope:'), { start: 6, end: 6 }, 40)).toEqual({ text: 'slope:', pointer: '      ^' });
    expect(excerpt(file(''), { start: 0, end: 0 }, 40)).toEqual({ text: '', pointer: '^' });
  });

  test('shows the first line of a region over several lines', () => {
    expect(excerpt(file('a: |\n  b\n'), { start: 3, end: 8 }, 40)).toEqual({ text: 'a: |', pointer: '   ^' });
  });

  test('does not show the carriage return of a Windows line ending', () => {
    expect(excerpt(file('a: 1\r\nb: 2\r\n'), { start: 6, end: 10 }, 40)).toEqual({ text: 'b: 2', pointer: '^^^^' });
  });

  test('makes controls visible and still points at the right words', () => {
    const shown = excerpt(file('a: \u001b\u202eHERE'), { start: 5, end: 9 }, 40);
    expect(shown.text).toBe('a: \\u{1B}\\u{202E}HERE');
    expect(pointed(shown)).toBe('HERE');
  });

  test('counts a wide character as two cells', () => {
    expect(excerpt(file('壁: HERE'), { start: 3, end: 7 }, 40).pointer).toBe('    ^^^^');
  });

  test('counts a combining mark as nothing', () => {
    expect(excerpt(file('e\u0301: HERE'), { start: 4, end: 8 }, 40).pointer).toBe('   ^^^^');
  });

  test('reads only the neighborhood of the region in an endless line', () => {
    const text = `${'x'.repeat(1_000_000)}HERE${'y'.repeat(1_000_000)}`;
    const started = performance.now();
    const shown = Array.from({ length: 200 }, () => excerpt(file(text), { start: 1_000_000, end: 1_000_004 }, 50));
    // Read from end to end, each of the 200 would take some 50 ms; near the region, a fraction of one.
    expect(performance.now() - started).toBeLessThan(3000);
    for (const one of shown) expect(pointed(one)).toBe('HERE');
  });

  test('fits the width, and points at the start of the region, wherever it stands', () => {
    const line = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 120 });
    fc.assert(
      fc.property(
        line,
        fc.string({ unit: fc.constantFrom('X', 'Y'), minLength: 1, maxLength: 60 }),
        line,
        fc.integer({ min: 20, max: 90 }),
        (before, region, after, cells) => {
          const shown = excerpt(
            file(before + region + after),
            { start: before.length, end: before.length + region.length },
            cells,
          );
          expect(textWidth(shown.text)).toBeLessThanOrEqual(cells);
          expect(shown.pointer.length).toBeLessThanOrEqual(cells);
          const under = pointed(shown);
          expect(under.length).toBeGreaterThan(0);
          expect(region.startsWith(under)).toBe(true);
          if (region.length <= cells - 6) expect(under).toBe(region);
        },
      ),
    );
  });
});
