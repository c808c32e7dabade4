import { describe, expect, it } from 'vitest';
import { readPage } from '../../tests/support/documents.js';
import { faceOnSide, fieldPieces, flashingAt, isApplied, isAtPlace, isOutside } from './around-opening.js';

const PRODUCTS = `
---
{ kind: product, id: strip, name: Flexible flashing strip, family: flexible flashing }
---
{ kind: product, id: metal, name: Metal pan, family: rigid pan }
---
{ kind: product, id: sheet, name: Sheet barrier, family: mechanically fastened sheet }
`;
const faceOf = async (work: string) =>
  (
    await readPage(
      `kind: detail
id: d
title: Test
openings:
  - { id: w, roughOpening: { width: 40 in, height: 60 in, depth: 6 in } }
work:
${work}${PRODUCTS}`,
      'd.yaml',
    )
  ).face();

const SHEET = '  - { id: sheet, place: field, product: sheet }\n';
const LEFT = '  - { id: left, place: left jamb, of: w, product: strip, ontoWall: 4 in }\n';
const BOTH = '  - { id: both, place: jambs, of: w, product: strip, ontoWall: 4 in, intoOpening: 2 in }\n';
const PAN = '  - { id: pan, place: sill, of: w, product: metal, intoOpening: 4 in, endDams: 2 in }\n';

describe('flashing of a side', () => {
  it('counts a piece only on the sides it reaches', async () => {
    const face = await faceOf(LEFT + BOTH);
    const opening = face.pieces[0]!.opening!;
    expect(flashingAt(face, opening, 'left jamb').map((p) => p.id)).toEqual(['left', 'both']);
    expect(flashingAt(face, opening, 'right jamb').map((p) => p.id)).toEqual(['both']);
    expect(flashingAt(face, opening, 'head')).toEqual([]);
  });
  it('counts a pan that lies within the opening only', async () => {
    const face = await faceOf(PAN);
    expect(flashingAt(face, face.pieces[0]!.opening!, 'sill').map((p) => p.id)).toEqual(['pan']);
  });
  it('splits a jamb work into its two strips', async () => {
    const face = await faceOf(BOTH);
    const piece = face.pieces[0]!;
    expect(faceOnSide(piece, piece.opening!, 'left jamb').map((r) => r.u1)).toEqual([0]);
    expect(faceOnSide(piece, piece.opening!, 'right jamb').map((r) => Math.round(r.u0))).toEqual([1016]);
  });
});

describe('which of two lies outside', () => {
  it('is the later one', async () => {
    const face = await faceOf(SHEET + LEFT);
    const [sheet, left] = [fieldPieces(face)[0]!, face.piecesOf('left')[0]!];
    expect([isOutside(face, left, sheet), isOutside(face, sheet, left)]).toEqual([true, false]);
  });
  it('is the earlier one where the later is slipped under it', async () => {
    const face = await faceOf(SHEET + LEFT.replace(' }', ', tuckedUnder: sheet }'));
    const [sheet, left] = [fieldPieces(face)[0]!, face.piecesOf('left')[0]!];
    expect([isOutside(face, left, sheet), isOutside(face, sheet, left)]).toEqual([false, true]);
  });
  it('is the later one where they meet on a return only', async () => {
    const face = await faceOf(PAN + BOTH);
    const [pan, both] = [face.piecesOf('pan')[0]!, face.piecesOf('both')[0]!];
    expect([isOutside(face, both, pan), isOutside(face, pan, both)]).toEqual([true, false]);
  });
});

it('knows the place of each piece of a work at several places', async () => {
  const face = await faceOf('  - { id: lining, place: [sill, head], of: w, product: strip, ontoWall: 4 in }\n' + LEFT);
  const at = face.pieces
    .filter(isApplied)
    .map((p) => [isAtPlace(p, 'sill'), isAtPlace(p, 'head'), isAtPlace(p, 'left jamb')]);
  expect(at).toEqual([
    [true, false, false],
    [false, true, false],
    [false, false, true],
  ]);
});
