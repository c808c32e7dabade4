import fc from 'fast-check';
import { load } from 'js-yaml';
import { describe, expect, it } from 'vitest';
import { commented, pathsOf, valueAt, written } from './testing/random-yaml.js';
import type { Plain } from './testing/random-yaml.js';
import { sourceFile } from './source.js';
import type { Span } from './types.js';
import { readYaml } from './yaml.js';

/** The text of a span, its first line in the column it has in the file, so that block collections keep their shape. */
function cut(text: string, { start, end }: Span): string {
  const lineStart = text.lastIndexOf('\n', start - 1) + 1;
  return ' '.repeat(start - lineStart) + text.slice(start, end);
}

function checkPositions(data: { [key: string]: Plain }, text: string): void {
  const file = sourceFile('a.yaml', text);
  const { documents, problems } = readYaml(file, file.text);
  expect(problems).toEqual([]);
  const [document] = documents;
  if (!document) throw new Error('nothing was read');
  expect(document.problems).toEqual([]);
  // Records without a prototype compare equal to plain ones only as text.
  expect(JSON.parse(JSON.stringify(document.data))).toEqual(data);

  for (const path of pathsOf(data)) {
    const value = valueAt(data, path);
    const last = path.at(-1);
    const isScalar = typeof value !== 'object' || value === null;
    const entry = cut(file.text, document.spanOf(path, 'entry'));
    const isEmptyItem = typeof last === 'number' && entry.trim() === '-';
    // A text that ends in line ends loses them at the end of a cut; they are compared apart from that.
    if (!isEmptyItem)
      expect(withoutLineEnds(load(entry) as Plain), entry).toEqual(
        withoutLineEnds(typeof last === 'string' ? { [last]: value } : value),
      );
    if (typeof last === 'string') expect(load(file.text.slice(...ends(document.spanOf(path, 'key'))))).toBe(last);
    if (!isScalar || (value === null && document.spanOf(path).start === document.spanOf(path, 'key').start)) continue;
    expect(withoutLineEnds(load(cut(file.text, document.spanOf(path))) as Plain)).toEqual(withoutLineEnds(value));
  }
}

function ends({ start, end }: Span): [number, number] {
  return [start, end];
}

function withoutLineEnds(value: Plain): Plain {
  if (typeof value === 'string') return value.replace(/\n+$/, '');
  if (Array.isArray(value)) return value.map(withoutLineEnds);
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, withoutLineEnds(item)]));
  return value;
}

describe('whatever a document holds and however it is written', { timeout: 60_000 }, () => {
  it('the text at a position is the text of the value', () => {
    fc.assert(
      fc.property(written, ({ data, text }) => checkPositions(data, text)),
      { numRuns: 1500 },
    );
  });

  it('so it is between comments', () => {
    fc.assert(
      fc.property(commented, ({ data, text }) => checkPositions(data, text)),
      { numRuns: 500 },
    );
  });

  it('so it is with Windows line ends', () => {
    fc.assert(
      fc.property(written, ({ data, text }) => checkPositions(data, text.replaceAll('\n', '\r\n'))),
      { numRuns: 500 },
    );
  });

  it('so it is behind a byte order mark', () => {
    fc.assert(
      fc.property(written, ({ data, text }) => checkPositions(data, `\uFEFF${text}`)),
      { numRuns: 100 },
    );
  });

  it('a value is pointed at on one line, unless it is a text over several', () => {
    fc.assert(
      fc.property(written, ({ data, text }) => {
        const [document] = readYaml(sourceFile('a.yaml', text), text).documents;
        for (const path of [[], ...pathsOf(data)]) {
          const value = valueAt(data, path);
          if (typeof value === 'string' || !document || value === data) continue;
          const { start, end } = document.spanOf(path);
          expect(end).toBeGreaterThan(start);
          const shown = text.slice(start, end);
          // An item without a name of its own is shown by its first text, which may be long.
          if (!Array.isArray(value) && typeof path.at(-1) === 'string') expect(shown).not.toContain('\n');
        }
      }),
    );
  });
});
