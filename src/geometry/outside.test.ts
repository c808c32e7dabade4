/** What lies beyond a wall whose size is declared; arithmetic by hand. */
import { describe, expect, it } from 'vitest';
import { outsideTheWall } from './outside.js';
import { readPage } from '../../tests/support/documents.js';

const told = async (face: string, more: string): Promise<string[]> => {
  const page = await readPage(
    `kind: detail
id: d
title: Test
${face}openings:
  - { id: w, roughOpening: { width: 40 in, height: 60 in, depth: 6 in } }
${more}---
{ kind: product, id: liquid, name: Liquid, family: fluid-applied flashing }
`,
    'd.yaml',
  );
  return outsideTheWall(page.detail(), page.face()).map((o) => o.message);
};
const FACE = 'face: { left: 5 in, right: 30 in, below: 30 in, above: 30 in }\n';
const JAMBS = 'work:\n  - { id: jambs, place: jambs, of: w, product: liquid, ontoWall: 6 in }\n';

describe('a wall of declared size', () => {
  it('is too small for flashing that reaches past it, and says by how much on which side', async () => {
    expect(await told(FACE, JAMBS)).toEqual([
      '"jambs" reaches 1 in beyond the wall shown (left); show more wall with "face: { left: ... }", or correct the size.',
    ]);
  });
  it('is too small for a penetration outside it', async () => {
    expect(
      await told(FACE, 'penetrations:\n  - { id: pipe, at: { right: 72 in, up: 10 in }, diameter: 2 in }\n'),
    ).toEqual([
      'The penetration "pipe" reaches 3 in beyond the wall shown (right); show more wall with "face: { right: ... }", or correct the size.',
    ]);
  });
  it('is large enough when everything fits', async () => {
    expect(await told(FACE.replace('5 in', '6 in'), JAMBS)).toEqual([]);
  });
});

describe('a wall of no declared size', () => {
  it('is made large enough', async () => {
    expect(await told('', JAMBS.replace('6 in', '60 in'))).toEqual([]);
  });
});
