/**
 * The wall face against figures worked out by hand on paper: a 40 x 60 opening (in inches, so 1016 x 1524 mm) with
 * strips of known widths. Arithmetic only; no published source is needed for areas and overlaps of rectangles.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readPage } from '../../tests/support/documents.js';
import type { Piece } from './types.js';

const IN = 25.4;
const PRODUCTS = `
---
{ kind: product, id: liquid, name: Fluid-applied flashing, family: fluid-applied flashing }
---
{ kind: product, id: strip, name: Flexible flashing strip, family: flexible flashing }
---
{ kind: product, id: sheet, name: Sheet barrier, family: mechanically fastened sheet }
`;
const detail = (work: string, more = ''): string => `kind: detail
id: d
title: Test
face: { left: 30 in, right: 30 in, below: 30 in, above: 30 in }
${more}openings:
  - { id: w, roughOpening: { width: 40 in, height: 60 in, depth: 6 in } }
work:
${work}${PRODUCTS}`;
const faceOf = async (work: string, more = '') => (await readPage(detail(work, more), 'd.yaml')).face();
const PAN =
  '  - { id: pan, place: sill, of: w, product: liquid, ontoWall: 6 in, pastJambs: 6 in, endDams: 4 in, intoOpening: full }\n';
const JAMBS = '  - { id: jambs, place: jambs, of: w, product: liquid, ontoWall: 6 in, intoOpening: full }\n';
const HEAD =
  '  - { id: head, place: head, of: w, product: liquid, ontoWall: 6 in, pastJambs: 6 in, downJambs: 2 in, intoOpening: full }\n';
const all = (): boolean => true;
const inches = (mm: number): number => Math.round((mm / IN) * 1000) / 1000;

describe('laps', () => {
  it('a jamb over the upturned end of a pan laps by the height of the end dam', async () => {
    const face = await faceOf(PAN + JAMBS);
    const [pan, jambs] = [face.piecesOf('pan')[0]!, face.piecesOf('jambs')[0]!];
    const lap = face.lapBetween(pan, jambs)!;
    expect([lap.over.id, lap.under.id]).toEqual(['jambs', 'pan']);
    expect(inches(lap.leastDownMm)).toBe(4);
    expect(inches(lap.leastAcrossMm)).toBe(6);
    expect(lap.area / IN / IN).toBeCloseTo(2 * 6 * 4, 6);
  });

  it('order of work decides which lies outside', async () => {
    const face = await faceOf(JAMBS + PAN);
    expect(face.lapBetween(face.piecesOf('pan')[0]!, face.piecesOf('jambs')[0]!)!.over.id).toBe('pan');
  });

  it('the field laps onto flashing by what it declares, no more, at all four sides and the corners', async () => {
    const face = await faceOf(
      `${PAN}${JAMBS}${HEAD}  - { id: field, place: field, product: sheet, lapsOnto: { opening flashing: 2 in } }\n`,
    );
    const field = face.piecesOf('field')[0]!;
    expect(inches(face.lapBetween(field, face.piecesOf('pan')[0]!)!.leastDownMm)).toBe(2);
    expect(inches(face.lapBetween(field, face.piecesOf('head')[0]!)!.leastDownMm)).toBe(2);
    expect(inches(face.lapBetween(field, face.piecesOf('jambs')[0]!)!.leastAcrossMm)).toBe(2);
  });

  it('courses of a sheet lap each other by the course lap', async () => {
    const face = await faceOf('  - { id: wrap, place: field, product: sheet, roll: 48 in, courseLap: 6 in }\n');
    const courses = face.piecesOf('wrap');
    // 120 in of wall: 0-48, 42-90, 84-120.
    expect(courses.map((p) => p.id)).toEqual(['wrap#1', 'wrap#2', 'wrap#3']);
    expect(inches(face.lapBetween(courses[0]!, courses[1]!)!.leastDownMm)).toBe(6);
    expect(face.lapBetween(courses[0]!, courses[2]!)).toBeUndefined();
  });
});

describe('reverse laps', () => {
  const SHEET = '  - { id: sheet, place: field, product: sheet }\n';
  const STRIP = (more: string): string =>
    `  - { id: strip, place: head, of: w, product: strip, ontoWall: 9 in, pastJambs: 10 in${more} }\n`;

  it('a strip on the face of the sheet above is one, over its whole length of 40 + 2 x 10 in', async () => {
    const [lap, ...more] = (await faceOf(SHEET + STRIP(''))).reverseLaps;
    expect(more).toEqual([]);
    expect([lap!.over.id, lap!.under.id, lap!.edge]).toEqual(['strip', 'sheet', 'open']);
    expect([inches(lap!.v), inches(lap!.u1 - lap!.u0), inches(lap!.lapMm)]).toEqual([69, 60, 9]);
  });

  it('the same strip slipped under the lifted sheet is none', async () => {
    expect((await faceOf(SHEET + STRIP(', tuckedUnder: sheet'))).reverseLaps).toEqual([]);
  });

  it('an edge that a third piece covers from above is none', async () => {
    const cover = '  - { id: cover, place: field above sill, product: sheet }\n';
    expect((await faceOf(SHEET + STRIP('') + cover)).reverseLaps.filter((l) => l.over.id === 'strip')).toEqual([]);
  });

  it('courses laid from the top down lap the wrong way', async () => {
    const up = await faceOf('  - { id: wrap, place: field, product: sheet, roll: 48 in, courseLap: 6 in }\n');
    const down = await faceOf(
      '  - { id: wrap, place: field, product: sheet, roll: 48 in, courseLap: 6 in, courses: top down }\n',
    );
    expect(up.reverseLaps).toEqual([]);
    expect(down.lapBetween(down.pieces[0]!, down.pieces[1]!)!.over.id).toBe('wrap#2');
  });
});

describe('reach around an opening', () => {
  it('is the declared width where the corners are covered', async () => {
    const face = await faceOf(PAN + JAMBS + HEAD);
    const opening = face.pieces[0]!.opening!;
    expect(face.extensions(opening, all).map((e) => [e.side, inches(e.straightMm), inches(e.cornerMm)])).toEqual([
      ['head', 6, 6],
      ['left jamb', 6, 6],
      ['right jamb', 6, 6],
      ['sill', 6, 6],
    ]);
  });

  it('is nothing at corners that no piece runs into', async () => {
    const face = await faceOf(`${PAN}${JAMBS}  - { id: head, place: head, of: w, product: liquid, ontoWall: 6 in }\n`);
    const head = face.extensions(face.pieces[0]!.opening!, all).find((e) => e.side === 'head')!;
    expect([inches(head.straightMm), inches(head.cornerMm)]).toEqual([6, 0]);
  });

  it('is nothing along a side without flashing', async () => {
    const face = await faceOf(PAN + HEAD);
    const left = face.extensions(face.pieces[0]!.opening!, all).find((e) => e.side === 'left jamb')!;
    expect(inches(left.straightMm)).toBe(0);
  });

  it('finds the bare corner squares of the ring', async () => {
    const face = await faceOf(`${PAN}${JAMBS}  - { id: head, place: head, of: w, product: liquid, ontoWall: 6 in }\n`);
    const bare = face.uncovered(face.pieces[0]!.opening!, 6 * IN);
    expect(bare.map((b) => inches(b.areaMm2 / IN))).toEqual([36, 36]);
  });
});

describe('sheathing joints and penetrations', () => {
  const WALL = 'wall:\n  - { id: sheathing, material: plywood, sheet: { width: 48 in, height: 96 in } }\n';
  it('joints run from the corner of the face, cut by the opening', async () => {
    const face = await faceOf(
      '  - { id: seams, place: sheathing joints, product: liquid, extends: 2 in, offCenter: 1/2 in }\n',
      WALL,
    );
    // Face from -30 to 70 in across and -30 to 90 in up: verticals at 18 and 66 in, a horizontal at 66 in.
    expect(face.joints.map((j) => [j.orientation, inches(j.line), inches(j.from), inches(j.to)])).toEqual([
      ['vertical', 18, -30, 0],
      ['vertical', 18, 60, 90],
      ['vertical', 66, -30, 90],
      ['horizontal', 66, -30, 70],
    ]);
    const covers = face.jointCover(all).map((c) => c.sideMm.map(inches));
    // Vertical joints: 1-1/2 in on one side, 2-1/2 in on the other, because the strip is off center by 1/2 in.
    expect(covers[0]).toEqual([1.5, 2.5]);
    expect(covers[3]).toEqual([1.5, 2.5]);
  });

  it('a joint without treatment has no cover', async () => {
    const face = await faceOf(PAN, WALL);
    expect(face.jointCover((p) => p.role === 'joint treatment').map((c) => c.sideMm)).toEqual([
      [0, 0],
      [0, 0],
      [0, 0],
      [0, 0],
    ]);
  });

  it('a collar reaches as far as its narrowest side', async () => {
    const more = 'penetrations:\n  - { id: pipe, at: { right: 55 in, up: 20 in }, diameter: 2 in }\n';
    const face = await faceOf('  - { id: boot, place: penetration, of: pipe, product: liquid, extends: 3 in }\n', more);
    const collar = face.collar(face.pieces[0]!.penetration!, all);
    expect(inches(collar.leastMm)).toBe(3);
    expect(collar.pieces.map((p: Piece) => p.id)).toEqual(['boot']);
  });
});

describe('whatever the extents', () => {
  const extent = fc.integer({ min: 1, max: 12 });
  it('the reach of flashing is never more than the least extent that forms it', async () => {
    await fc.assert(
      fc.asyncProperty(extent, extent, extent, extent, async (sill, jamb, head, past) => {
        const face =
          await faceOf(`  - { id: pan, place: sill, of: w, product: liquid, ontoWall: ${sill} in, pastJambs: ${past} in, endDams: 4 in }
  - { id: jambs, place: jambs, of: w, product: liquid, ontoWall: ${jamb} in }
  - { id: head, place: head, of: w, product: liquid, ontoWall: ${head} in, pastJambs: ${past} in }
`);
        const reach = Object.fromEntries(face.extensions(face.pieces[0]!.opening!, all).map((e) => [e.side, e]));
        // Beside the opening the pan's upturned ends (4 in of 60) may reach farther than the jamb strip, never all along.
        expect(inches(reach['sill']!.straightMm)).toBe(sill);
        expect(inches(reach['left jamb']!.straightMm)).toBe(jamb);
        expect(inches(reach['head']!.straightMm)).toBe(head);
        expect(inches(reach['head']!.cornerMm)).toBe(Math.min(head, past));
      }),
      { numRuns: 60 },
    );
  });

  it('swapping two overlapping works swaps which one lies outside', async () => {
    await fc.assert(
      fc.asyncProperty(extent, extent, async (a, b) => {
        const one = `  - { id: one, place: jambs, of: w, product: strip, ontoWall: ${a} in, aboveHead: 2 in }\n`;
        const two = `  - { id: two, place: head, of: w, product: strip, ontoWall: ${b} in, pastJambs: 3 in }\n`;
        const [first, second] = [await faceOf(one + two), await faceOf(two + one)];
        const outer = (face: typeof first): string => face.lapBetween(face.pieces[0]!, face.pieces[1]!)!.over.id;
        expect([outer(first), outer(second)]).toEqual(['two', 'one']);
      }),
      { numRuns: 40 },
    );
  });
});
