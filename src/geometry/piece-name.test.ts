/** Names of pieces in sentences, for each way a work becomes several pieces. */
import { describe, expect, it } from 'vitest';
import { pieceName } from './piece-name.js';
import { readPage } from '../../tests/support/documents.js';

const names = async (openings: string, work: string): Promise<string[]> => {
  const page = await readPage(
    `kind: detail
id: d
title: Test
openings: [${openings}]
work:
${work}
---
{ kind: product, id: sheet, name: Sheet, family: mechanically fastened sheet }
`,
    'd.yaml',
  );
  return page.face().pieces.map(pieceName);
};
const A = '{ id: a, roughOpening: { width: 40 in, height: 60 in } }';
const B = '{ id: b, at: { right: 60 in, up: 0 in }, roughOpening: { width: 40 in, height: 60 in } }';

describe('the name of a piece', () => {
  it('is the id of its work when the work is one piece', async () => {
    expect(await names(A, '  - { id: pan, place: sill, product: sheet, ontoWall: 6 in }')).toEqual(['"pan"']);
  });
  it('tells the places of one work apart', async () => {
    expect(await names(A, '  - { id: ro, place: [sill, head], product: sheet, ontoWall: 6 in }')).toEqual([
      '"ro" at the sill',
      '"ro" at the head',
    ]);
  });
  it('tells the openings of one work apart', async () => {
    expect(await names(`${A}, ${B}`, '  - { id: pan, place: sill, product: sheet, ontoWall: 6 in }')).toEqual([
      '"pan" of "a"',
      '"pan" of "b"',
    ]);
  });
  it('counts courses from the bottom', async () => {
    expect(
      (await names(A, '  - { id: wrap, place: field, product: sheet, roll: 60 in, courseLap: 6 in }')).slice(0, 2),
    ).toEqual(['course 1 of "wrap"', 'course 2 of "wrap"']);
  });
  it('calls a flap a flap', async () => {
    const work =
      '  - { id: wrap, place: field, product: sheet }\n  - { id: head, place: head, product: sheet, ontoWall: 9 in, tuckedUnder: wrap }\n  - { id: flap, close: head flap, of: a }';
    expect(await names(A, work)).toContain('the flap of "wrap" over "a"');
  });
});
