/** Which finding gets which number, and what it points at. */
import { describe, expect, it } from 'vitest';
import { readPage } from '../../../tests/support/documents.js';
import type { Result } from '../../engine/result.js';
import type { Detail } from '../../model/types.js';
import type { Locus } from '../../reading/types.js';
import { numberFindings, sideOf } from './findings.js';

const PAGE = `kind: detail
id: d
title: Test
wall:
  - { id: sheathing, material: plywood }
openings:
  - { id: w, roughOpening: { width: 40 in, height: 60 in, depth: 6 in } }
penetrations:
  - { id: pipe, type: pipe, at: { right: 60 in, up: 10 in }, diameter: 2 in }
work:
  - { id: pan, place: sill, of: w, product: strip, ontoWall: 4 in }
  - { id: head, place: head, of: w, product: strip, ontoWall: 4 in }
---
{ kind: product, id: strip, name: Strip, family: flexible flashing }
`;
const detail: Detail = (await readPage(PAGE, 'd.yaml')).detail();

const result = (path: Locus['path'], more: Partial<Result> = {}): Result => ({
  kind: 'fail',
  level: 'error',
  message: 'Wrong.',
  at: { document: detail.at.document, path },
  ruleId: 'lap/reverse-lap',
  documentId: 'd',
  file: detail.at.document.file,
  span: { start: 0, end: 0 },
  fingerprint: 'f',
  ...more,
});
const numbered = (...results: Result[]) => numberFindings(results, detail, (id) => `title of ${id}`);

describe('findings on drawings', () => {
  it('are numbered from 1 in the order of the review; only what stands against the detail counts', () => {
    const found = numbered(
      result(['work', 0], { kind: 'pass', level: 'none' }),
      result(['work', 0]),
      result(['work', 1], { documentId: 'other' }),
      result(['work', 1], { suppression: { justification: 'agreed', at: detail.at } }),
      result(['work', 1, 'ontoWall'], { level: 'note' }),
    );
    expect(found.map((f) => [f.number, f.target.work?.id, f.title])).toEqual([
      [1, 'pan', 'title of lap/reverse-lap'],
      [2, 'head', 'title of lap/reverse-lap'],
    ]);
  });
  it('point at the work, layer, opening or penetration they are written at', () => {
    const [layer, opening, penetration, whole] = numbered(
      result(['wall', 0, 'thickness']),
      result(['openings', 0, 'unit']),
      result(['penetrations', 0]),
      result(['title']),
    );
    expect(layer?.target.layer?.id).toBe('sheathing');
    expect(opening?.target.opening?.id).toBe('w');
    expect(penetration?.target.penetration?.id).toBe('pipe');
    expect(whole?.target).toEqual({});
  });
  it('point at a related place when they stand in another document', () => {
    const product = detail.products.get('strip');
    if (product === undefined) throw new Error('the page has a product');
    const [found] = numbered(
      result([], {
        at: product.at,
        related: [{ message: 'used here', at: { document: detail.at.document, path: ['work', 1] } }],
      }),
    );
    expect(found?.target.work?.id).toBe('head');
  });
  it('tell the side they speak of', () => {
    const side = (subject: string) => sideOf(numbered(result(['work', 0], { subject }))[0]!);
    expect(['left jamb of w', 'right jamb of w', 'head of w', 'sill of w', 'w'].map(side)).toEqual([
      'left',
      'right',
      'head',
      'sill',
      undefined,
    ]);
  });
});
