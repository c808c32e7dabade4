/** Sections of small details, every figure worked by hand from the extents written in them. */
import { describe, expect, it } from 'vitest';
import { readPage } from '../../../tests/support/documents.js';
import { buildFace } from '../face.js';
import { buildSection, sectionPlaces } from './build.js';
import { depthLaps, sealAgainstDam } from './laps.js';
import type { Section, SectionPlace } from './types.js';

const IN = 25.4;

const PRODUCTS = `
---
{ kind: product, id: coat, name: Fluid flashing, family: fluid-applied flashing }
---
{ kind: product, id: field-coat, name: Field coat, family: fluid-applied membrane }
---
{ kind: product, id: sheet, name: Sheet barrier, family: mechanically fastened sheet }
---
{ kind: product, id: strip, name: Strip, family: flexible flashing }
---
{ kind: product, id: metal, name: Metal flashing, family: metal flashing }
---
{ kind: product, id: bead, name: Sealant, family: sealant }
`;
const WALL = `
  - { id: board, material: gypsum board, thickness: 5/8 in }
  - { id: studs, material: mineral wool batt, thickness: 6 in }
  - { id: sheathing, material: gypsum sheathing, thickness: 1/2 in }
  - { id: membrane, product: field-coat }
  - { id: cavity, material: air space, thickness: 1 in }
  - { id: veneer, material: clay brick, thickness: 3-5/8 in }`;

const page = async (work: string, more: { wall?: string; unit?: string; openings?: boolean } = {}) =>
  readPage(
    `kind: detail
id: d
title: Test
wall:${more.wall ?? WALL}
${more.openings === false ? '' : `openings:\n  - { id: w, roughOpening: { width: 40 in, height: 60 in, depth: 7 in }${more.unit === undefined ? '' : `, unit: ${more.unit}`} }`}
work:
${work}${PRODUCTS}`,
    'd.yaml',
  );
const cut = async (place: SectionPlace, work: string, more: Parameters<typeof page>[1] = {}): Promise<Section> => {
  const detail = (await page(work, more)).detail();
  return buildSection(detail, buildFace(detail), detail.openings[0], place);
};

const FIELD = '  - { id: field, place: field, layer: membrane }\n';
const PAN =
  '  - { id: pan, place: sill, of: w, product: coat, ontoWall: 6 in, intoOpening: full, slope: 6 %, backDam: 1 in, endDams: 4 in }\n';
const lapsOf = (section: Section) =>
  depthLaps(section).map((l) => `${l.outer.id} over ${l.inner.id} on ${l.on}: ${(l.lapMm / IN).toFixed(2)} in`);

describe('the place of a recessed frame', () => {
  const SET = '  - { id: set, set: unit, of: w, bedding: { sill: open } }\n';
  it('is the set-back that is told, and else supposed', async () => {
    const told = await cut('jamb', FIELD + SET, { unit: '{ mounting: recessed, frameDepth: 3 in, setBack: 2 in }' });
    expect([told.unit?.outerMm, told.unit?.innerMm, told.unit?.assumed.position]).toEqual([
      expect.closeTo(-2 * IN),
      expect.closeTo(-5 * IN),
      false,
    ]);
    const untold = await cut('jamb', FIELD + SET, { unit: '{ mounting: recessed, frameDepth: 3 in }' });
    expect(untold.unit?.assumed.position).toBe(true);
  });
  it('is within the depth of a wall of solid brick, and not inboard of all its layers', async () => {
    const wall = `
  - { id: board, material: gypsum board, thickness: 5/8 in }
  - { id: studs, material: mineral wool batt, thickness: 3-1/2 in }
  - { id: brick, material: clay brick, thickness: 12 in }`;
    const { bands, unit } = await cut('jamb', SET, { wall, unit: '{ mounting: recessed, frameDepth: 3 in }' });
    expect(bands.at(-1)?.outerMm).toBeCloseTo(0);
    expect(unit?.innerMm).toBeGreaterThan(bands[0]?.innerMm ?? 0);
  });
});

describe('layers of a section', () => {
  it('have depth 0 on the face the barrier lies on, outward positive', async () => {
    const { bands } = await cut('sill', FIELD);
    const depths = bands.map((b) => [b.layer.id, b.innerMm / IN, b.outerMm / IN]);
    expect(depths).toEqual([
      ['board', expect.closeTo(-7.125), expect.closeTo(-6.5)],
      ['studs', expect.closeTo(-6.5), expect.closeTo(-0.5)],
      ['sheathing', expect.closeTo(-0.5), expect.closeTo(0)],
      ['membrane', expect.closeTo(0), expect.closeTo(0)],
      ['cavity', expect.closeTo(0), expect.closeTo(1)],
      ['veneer', expect.closeTo(1), expect.closeTo(4.625)],
    ]);
  });
  it('are marked when a usual thickness stands for one that is not given', async () => {
    const { bands } = await cut('sill', FIELD, {
      wall: '\n  - { id: sheathing, material: plywood }\n  - { id: membrane, product: field-coat }',
    });
    expect(bands.map((b) => b.assumed)).toEqual([true, false]);
  });
});

describe('pieces of a section', () => {
  it('follow the face and the return in the order of work', async () => {
    const { strips } = await cut('sill', PAN + FIELD);
    expect(strips.map((s) => s.piece.id)).toEqual(['pan', 'field']);
    const [pan, field] = strips;
    expect(pan?.runs).toEqual([
      { on: 'return', fromMm: 0, toMm: expect.closeTo(7 * IN), level: 0, baseMm: 0 },
      { on: 'face', fromMm: 0, toMm: expect.closeTo(6 * IN), level: 0, baseMm: 0 },
    ]);
    // The field goes on later and runs to the opening: it lies over the pan, then on the sheathing.
    expect(field?.runs.map((r) => [r.fromMm / IN, r.level])).toEqual([
      [0, 1],
      [expect.closeTo(6), 0],
    ]);
    expect(pan).toMatchObject({
      slope: expect.closeTo(0.06),
      backDamMm: expect.closeTo(IN),
      endDamMm: expect.closeTo(4 * IN),
    });
  });
  it('show of the wall what the flashing reaches, and a piece beyond it', async () => {
    const { toMm } = await cut('sill', PAN + FIELD);
    expect(toMm).toBeCloseTo(6 * IN + 75);
  });
  it('lie on exterior insulation when their own layer does', async () => {
    const wall = `
  - { id: sheathing, material: plywood, thickness: 1/2 in }
  - { id: inner, product: field-coat }
  - { id: board, material: mineral wool board, thickness: 2 in }
  - { id: outer, product: sheet }`;
    const work = '  - { id: a, place: field, layer: inner }\n  - { id: b, place: field, layer: outer }\n';
    const { strips } = await cut('sill', work, { wall });
    expect(strips.map((s) => [s.piece.id, s.runs[0]?.baseMm])).toEqual([
      ['a', 0],
      ['b', expect.closeTo(2 * IN)],
    ]);
  });
  it('at the jamb are cut in plan, on the left unless only the right is flashed', async () => {
    const right = '  - { id: j, place: right jamb, of: w, product: strip, ontoWall: 4 in, intoOpening: 2 in }\n';
    expect((await cut('jamb', FIELD)).side).toBe('left jamb');
    const { side, strips, cutAtMm } = await cut('jamb', right);
    expect(side).toBe('right jamb');
    expect(cutAtMm).toBeCloseTo(30 * IN);
    expect(strips[0]?.runs.map((r) => [r.on, r.toMm / IN])).toEqual([
      ['return', expect.closeTo(2)],
      ['face', expect.closeTo(4)],
    ]);
  });
});

describe('laps in the depth of the wall', () => {
  it('tell how far the outer leg of a pan lies over the barrier below it', async () => {
    const below = '  - { id: below, place: field below sill, layer: membrane }\n';
    expect(lapsOf(await cut('sill', below + PAN))).toEqual(['pan over below on face: 6.00 in']);
  });
  it('tell how far the upstand of a head flashing lies behind the barrier', async () => {
    const head = '  - { id: head, place: head, of: w, product: metal, upstand: 3 in, projects: 1/4 in, slope: 6 % }\n';
    const section = await cut('head', head + FIELD);
    expect(lapsOf(section)).toEqual(['field over head on face: 3.00 in']);
    expect(section.strips[0]?.projectsMm).toBeCloseTo(IN / 4);
  });
  it('are turned around by a piece that is slipped under', async () => {
    const head = '  - { id: head, place: head, of: w, product: strip, ontoWall: 9 in, tuckedUnder: field }\n';
    expect(lapsOf(await cut('head', FIELD + head))).toEqual(['field over head on face: 9.00 in']);
  });
  it('are told for the return too', async () => {
    const edges = '  - { id: edges, place: opening edges, of: w, product: coat, extends: 1 in }\n';
    expect(lapsOf(await cut('sill', edges + PAN))).toEqual([
      'pan over edges on face: 1.00 in',
      'pan over edges on return: 1.00 in',
    ]);
  });
});

describe('the interior seal at the back dam', () => {
  const SET = '  - { id: set, set: unit, of: w, shims: { material: plastic, gap: 1/4 in } }\n';
  const seal = (more: string): string =>
    `  - { id: seal, place: interior perimeter, of: w, product: bead, joint: { width: 3/8 in, depth: 1/4 in, backerRod: 1/2 in }${more} }\n`;
  const FLANGED = (depth: string): string => `{ mounting: flange, flange: 1-3/8 in, frameDepth: ${depth} }`;

  it('lands where the detail says', async () => {
    const section = await cut('sill', PAN + SET + seal(', sealPosition: inboard of back dam'), {
      unit: FLANGED('3-1/4 in'),
    });
    expect(sealAgainstDam(section)).toMatchObject({ lands: 'inboard', basis: 'declared', damMm: expect.closeTo(IN) });
  });
  it('has to bridge what lies between the frame and the dam', async () => {
    const section = await cut('sill', PAN + SET + seal(', sealPosition: at back dam'), { unit: FLANGED('3-1/4 in') });
    // The dam stands at the end of the pan, 7 in inward; a flange holds the frame at the face: 7 - 3-1/4 in.
    expect(sealAgainstDam(section)).toMatchObject({
      damAtMm: expect.closeTo(7 * IN),
      bridgeMm: expect.closeTo(3.75 * IN),
    });
  });
  it('is outboard of the dam when nothing is said and the frame ends short of it', async () => {
    const section = await cut('sill', PAN + SET + seal(''), { unit: FLANGED('3-1/4 in') });
    expect(sealAgainstDam(section)).toMatchObject({ lands: 'outboard', basis: 'computed' });
  });
  it('is at the dam when the frame ends within the depth of the bead of it', async () => {
    const section = await cut('sill', PAN + SET + seal(''), { unit: FLANGED('6-7/8 in') });
    expect(sealAgainstDam(section)).toMatchObject({ lands: 'at', basis: 'computed' });
  });
  it('stays open for a recessed frame, whose position in the depth is not told', async () => {
    const section = await cut('sill', PAN + SET + seal(''), { unit: '{ mounting: recessed, frameDepth: 4 in }' });
    expect(sealAgainstDam(section)).toMatchObject({ basis: 'not known' });
    expect(sealAgainstDam(section)?.lands).toBeUndefined();
  });
  it('is no question without a pan', async () => {
    expect(sealAgainstDam(await cut('sill', SET + seal('')))).toBeUndefined();
  });
});

describe('the base of the wall', () => {
  const BASE =
    '  - { id: base, place: base of wall, product: strip, upstand: 8 in, ontoFoundation: 4 in, aboveGrade: 8 in, exposedFoundation: 3 in }\n';

  it('runs onto the foundation and says where cladding and grade are', async () => {
    const section = await cut('base', BASE + FIELD, { openings: false });
    expect(section.foundation).toEqual({ gradeMm: expect.closeTo(-8 * IN), claddingFootMm: expect.closeTo(-5 * IN) });
    expect(section.strips[0]?.runs.map((r) => [r.fromMm / IN, r.toMm / IN])).toEqual([
      [expect.closeTo(-4), 0],
      [0, expect.closeTo(8)],
    ]);
    expect(lapsOf(section)).toEqual(['field over base on face: 8.00 in']);
  });
  it('carries the cladding on a flashing that runs out through the wall', async () => {
    const through =
      '  - { id: base, place: base of wall, product: metal, upstand: 8 in, aboveGrade: 6 in, exposedFoundation: 4 in, projects: 1/4 in }\n';
    expect((await cut('base', through + FIELD, { openings: false })).foundation?.claddingFootMm).toBe(0);
  });
});

describe('places a section can be cut at', () => {
  it('are those the detail describes', async () => {
    const places = async (work: string, openings: boolean) => sectionPlaces((await page(work, { openings })).detail());
    expect(await places(FIELD, true)).toEqual(['head', 'sill', 'jamb']);
    expect(await places(FIELD, false)).toEqual([]);
    expect(await places('  - { id: b, place: base of wall, product: strip, upstand: 8 in }\n', false)).toEqual([
      'base',
    ]);
  });
  it('need an opening at head, sill and jamb', async () => {
    const detail = (await page(FIELD, { openings: false })).detail();
    expect(() => buildSection(detail, buildFace(detail), undefined, 'head')).toThrow(
      'A section at the head needs an opening; d was cut without one.',
    );
  });
});

describe('flashing over the lintel of a veneer', () => {
  const HEAD = '  - { id: head, place: head, of: w, product: coat, ontoWall: 6 in }\n';
  const OVER =
    '  - { id: over, place: lintel, of: w, product: metal, upstand: 8 in, projects: 1/4 in, weeps: { type: tubes, size: 1/4 in, spacing: 16 in } }\n';
  const LAPPED = '  - { id: field, place: field, layer: membrane, lapsOnto: { over: 4 in } }\n';
  /** Stretches of a piece on the face: from, to, level. */
  const runsOf = ({ strips }: Section, id: string) =>
    strips
      .find((s) => s.piece.work.id === id)
      ?.runs.filter((r) => r.on === 'face')
      .map((r) => [r.fromMm / IN, r.toMm / IN, r.level]);

  it('leaves the wall above the flashing of the opening and rises behind what laps over it', async () => {
    const section = await cut('head', HEAD + OVER + LAPPED);
    expect(runsOf(section, 'over')).toEqual([[expect.closeTo(6), expect.closeTo(14), 0]]);
    // The field: over the head flashing, over the upstand, and on the bare sheathing above it.
    expect(runsOf(section, 'field')?.map(([, , level]) => level)).toEqual([1, 1, 0]);
  });
  it('lies outside of a barrier that was there before', async () => {
    const section = await cut('head', HEAD + FIELD + OVER);
    expect(runsOf(section, 'over')).toEqual([[expect.closeTo(6), expect.closeTo(14), 1]]);
    expect(runsOf(section, 'field')?.map(([, , level]) => level)).toEqual([1, 0, 0]);
  });
  it('shows its drip, its weeps and, where one is named, the angle', async () => {
    const section = await cut('head', HEAD + OVER + LAPPED);
    expect(section.strips.find((s) => s.piece.work.id === 'over')).toMatchObject({
      projectsMm: 6.35,
      overLintel: true,
    });
    expect(section.veneerFoot?.weeps?.type?.value).toBe('tubes');
    expect(section.veneerFoot?.hasAngle).toBe(false);
  });
  it('is not drawn where there is none, and then there are no weeps', async () => {
    const section = await cut('head', HEAD + FIELD);
    expect(section.veneerFoot?.weeps).toBeUndefined();
    expect(section.strips.some((s) => s.overLintel)).toBe(false);
  });
});
