/** Rise of water under a lap: physics worked out by hand, laps measured on paper. */
import { describe, expect, it } from 'vitest';
import { capillaryRiseMm, looseShingleLaps, windRiseMm } from './wind-rise.js';
import { readPage } from '../../tests/support/documents.js';

describe('rise of water under the edge of a lap', () => {
  // 2 x 0.0728 / (998 x 9.80665 x 0.001) = 0.01488 m: Jurin's law, arithmetic by hand.
  it('is 14.9 mm by capillarity alone in a gap of 1 mm, and twice that in half the gap', () => {
    expect(capillaryRiseMm(1)).toBeCloseTo(14.88, 2);
    expect(capillaryRiseMm(0.5)).toBeCloseTo(29.75, 2);
  });
  // Ontario Building Code, note A-9.27.3.8.(5) (seen): 10 Pa raises water by 1 mm, 2 % below the exact value.
  it('adds 1 mm for each 10 Pa of wind, to 2.5 %', () => {
    expect((windRiseMm(1000, 1) - capillaryRiseMm(1)) / 100).toBeGreaterThan(1);
    expect((windRiseMm(1000, 1) - capillaryRiseMm(1)) / 100).toBeLessThan(1.025);
  });
});

describe('shingle laps with a loose edge', () => {
  const face = async (work: string) =>
    (
      await readPage(
        `kind: detail
id: d
title: Test
face: { left: 30 in, right: 30 in, below: 30 in, above: 30 in }
openings:
  - { id: w, roughOpening: { width: 40 in, height: 60 in, depth: 6 in }, unit: { mounting: flange, flange: 1-3/8 in } }
work:
${work}
---
{ kind: product, id: sheet, name: Sheet, family: mechanically fastened sheet }
---
{ kind: product, id: liquid, name: Liquid, family: fluid-applied membrane }
`,
        'd.yaml',
      )
    ).face();
  const told = async (work: string): Promise<[string, string, number][]> =>
    looseShingleLaps(await face(work)).map((l) => [l.over.id, l.under.id, Math.round(l.heightMm / 2.54) / 10]);

  it('are found between courses, with the course lap as height', async () => {
    expect(await told('  - { id: wrap, place: field, product: sheet, roll: 48 in, courseLap: 6 in }')).toEqual([
      ['wrap#2', 'wrap#1', 6],
      ['wrap#3', 'wrap#2', 6],
    ]);
  });
  it('are found where the field laps over head flashing', async () => {
    expect(
      await told(
        '  - { id: head, place: head, of: w, product: sheet, ontoWall: 9 in, pastJambs: 10 in }\n  - { id: field, place: field, product: sheet, lapsOnto: { opening flashing: 2 in } }',
      ),
    ).toEqual([['field', 'head', 2]]);
  });
  it('are none over the bedded flange of a unit, which has the barrier behind it', async () => {
    const unit = (bed: string): string =>
      `  - { id: field, place: field, product: sheet }\n  - { id: set, set: unit, of: w, bedding: { head: ${bed}, jambs: sealed, sill: open } }\n  - { id: strip, place: flange head, of: w, product: sheet, ontoWall: 1 in }`;
    const flanged = async (bed: string) => (await told(unit(bed))).filter(([, under]) => under === 'set');
    expect(await flanged('sealed')).toEqual([]);
    expect((await flanged('open')).map(([over]) => over)).toEqual(['strip']);
  });
  it('are none where the edge is bonded, or the piece below ends nowhere under the lap', async () => {
    expect(await told('  - { id: wrap, place: field, product: liquid, roll: 48 in, courseLap: 6 in }')).toEqual([]);
    expect(
      await told(
        '  - { id: field, place: field, product: sheet }\n  - { id: head, place: head, of: w, product: sheet, ontoWall: 9 in }',
      ),
    ).toEqual([]);
  });
});
