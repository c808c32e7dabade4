/** What holds for every drawing: a piece taken away never closes a gap, and one that is added never opens one. */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { readPage } from '../../tests/support/documents.js';
import { brokenMm, findGaps } from './gaps.js';
import { buildFace } from '../geometry/face.js';
import type { Piece, WallFace } from '../geometry/types.js';
import { SIDES, type Control, type Detail } from '../model/types.js';

const FLASHING = ['liquid', 'strip', 'sheet'];
let detail: Detail;
let whole: WallFace;

/** Many pieces of many sizes at one opening: subsets of them are the drawings. */
beforeAll(async () => {
  const work = FLASHING.flatMap((product, k) => [
    `{ id: pan${k}, place: sill, product: ${product}, ontoWall: ${3 + 2 * k} in, pastJambs: ${k} in, endDams: ${4 * k} in, intoOpening: ${2 * k} in }`,
    `{ id: left${k}, place: left jamb, product: ${product}, ontoWall: ${2 + 2 * k} in, belowSill: ${k} in, intoOpening: ${3 * (2 - k)} in }`,
    `{ id: right${k}, place: right jamb, product: ${product}, ontoWall: ${6 - k} in, intoOpening: ${k} in }`,
    `{ id: head${k}, place: head, product: ${product}, ontoWall: ${4 + k} in, pastJambs: ${2 * k} in, downJambs: ${5 * k} in, intoOpening: ${k === 1 ? 0 : 4} in }`,
    `{ id: edges${k}, place: [opening edges, inside corners], product: ${product}, extends: ${1 + k} in }`,
    `{ id: strips${k}, place: [flange head, flange jambs], product: ${product}, ontoWall: ${2 + k} in }`,
    `{ id: below${k}, place: field below sill, product: ${product}, lapsOnto: { opening flashing: ${k} in } }`,
    `{ id: above${k}, place: field above sill, product: ${product}, courseLap: ${k} in, lapsOnto: { opening flashing: ${3 - k} in } }`,
  ]);
  const page = await readPage(
    `kind: detail
id: d
title: Test
openings:
  - { id: w, roughOpening: { width: 36 in, height: 48 in, depth: 6 in }, unit: { mounting: flange, flange: 1 in } }
work:
  - { id: set, set: unit }
  - { id: seal, place: interior perimeter, product: liquid }
${work.map((w) => `  - ${w}\n`).join('')}---
{ kind: product, id: liquid, name: Fluid-applied flashing, family: fluid-applied flashing }
---
{ kind: product, id: strip, name: Flexible strip, family: flexible flashing }
---
{ kind: product, id: sheet, name: Sheet barrier, family: mechanically fastened sheet }
`,
    'd.yaml',
  );
  detail = page.detail();
  whole = buildFace(detail);
});

function broken(pieces: readonly Piece[], control: Control): number[] {
  const { bounds } = whole;
  // The gaps at openings look at nothing else of the face.
  const gaps = findGaps(detail, { bounds, pieces } as WallFace, control);
  return SIDES.map((side) => brokenMm(gaps, detail.openings[0]!, side));
}

describe.each(['water', 'air'] as const)('the %s line', (control) => {
  it('is broken at least as much without a piece as with it', () => {
    let differing = 0;
    fc.assert(
      fc.property(
        fc.array(fc.boolean(), { minLength: whole.pieces.length, maxLength: whole.pieces.length }),
        fc.nat(whole.pieces.length - 1),
        (chosen, index) => {
          const without = whole.pieces.filter((_, i) => chosen[i] === true && i !== index);
          const withIt = whole.pieces.filter((_, i) => chosen[i] === true || i === index);
          const [more, less] = [broken(without, control), broken(withIt, control)];
          more.forEach((mm, k) => expect(mm).toBeGreaterThanOrEqual(less[k]! - 0.01));
          if (more.some((mm, k) => mm > less[k]! + 0.01)) differing += 1;
        },
      ),
      { numRuns: 400 },
    );
    // The drawings are such that single pieces do close gaps.
    expect(differing).toBeGreaterThan(10);
  });
  it('is broken along every side of a bare wall, for its whole length', () => {
    const [w, h] = [36 * 25.4, 48 * 25.4];
    broken([], control).forEach((mm, k) => expect(mm).toBeCloseTo([w, h, h, w][k]!, 6));
  });
});
