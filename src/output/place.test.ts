import { describe, expect, test } from 'vitest';
import { sourceFile } from '../reading/source.js';
import type { ReadDocument } from '../reading/types.js';
import { spanOfLocus } from '../reading/locus.js';
import { logicalPath, placeInFile, placeOfLocus, placeText } from './place.js';

const file = sourceFile('a.yaml', 'id: W-1\ntitle: "sill pan"\nnote: jamb side\n');
const document: ReadDocument = {
  kind: 'detail',
  id: 'W-1',
  file,
  data: { work: [{ id: 'pan', ontoWall: '6 in' }, { place: 'head' }] },
  spanOf: (path) => (path[0] === 'title' ? { start: 15, end: 25 } : { start: 32, end: 41 }),
};

describe('places', () => {
  test('count lines and columns from 1, with the end exclusive', () => {
    expect(placeInFile(file, { start: 15, end: 25 })).toEqual({
      uri: 'a.yaml',
      line: 2,
      column: 8,
      endLine: 2,
      endColumn: 18,
    });
  });

  test('are true to a file with a byte order mark', () => {
    expect(placeInFile(sourceFile('b.yaml', '\ufeffid: W-1'), { start: 4, end: 7 }).column).toBe(6);
  });

  test('find the words that are meant inside a plain value', () => {
    const span = spanOfLocus({ document, path: ['note'], within: { start: 5, end: 9 } });
    expect(file.text.slice(span.start, span.end)).toBe('side');
  });

  test('find the words that are meant inside quotes', () => {
    const span = spanOfLocus({ document, path: ['title'], within: { start: 5, end: 8 } });
    expect(file.text.slice(span.start, span.end)).toBe('pan');
  });

  test('stay inside the value when the words reach beyond it', () => {
    expect(spanOfLocus({ document, path: ['note'], within: { start: 5, end: 99 } }).end).toBe(41);
  });

  test('print as file:line:column, with a harmless file name', () => {
    expect(placeText(placeOfLocus({ document, path: ['note'] }))).toBe('a.yaml:3:7');
    expect(placeText({ uri: 'a\u001b[2J.yaml', line: 1, column: 2, endLine: 1, endColumn: 2 })).toBe(
      'a\\u{1B}[2J.yaml:1:2',
    );
  });
});

describe('logical paths', () => {
  test('name entries of a list by id, and by number when there is none', () => {
    expect(logicalPath({ document, path: ['work', 0, 'ontoWall'] })).toBe('W-1/work/pan/ontoWall');
    expect(logicalPath({ document, path: ['work', 1, 'place'] })).toBe('W-1/work/1/place');
  });

  test('survive a path that leads nowhere', () => {
    expect(logicalPath({ document, path: ['openings', 3, 'unit'] })).toBe('W-1/openings/3/unit');
  });
});
