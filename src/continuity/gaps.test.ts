/**
 * Gaps of a window 36 x 48 in, 6 in deep, worked out by hand; arithmetic on rectangles needs no published source. Every
 * size of the drawings is declared in the tests themselves.
 */
import { describe, expect, it } from 'vitest';
import { readPage } from '../../tests/support/documents.js';
import { findGaps, type Gap } from './gaps.js';
import type { SideGap } from './side-gaps.js';
import { isToldElsewhere } from './told.js';
import { gapLength, gapPlace, gapWords } from './words.js';
import { buildGraph, connectedParts, cutOff } from './graph.js';
import { buildFace } from '../geometry/face.js';
import type { Control } from '../model/types.js';

const IN = 25.4;
const PRODUCTS = `
---
{ kind: product, id: liquid, name: Fluid-applied flashing, family: fluid-applied flashing }
---
{ kind: product, id: coat, name: Fluid-applied membrane, family: fluid-applied membrane }
---
{ kind: product, id: strip, name: Flexible strip, family: flexible flashing }
---
{ kind: product, id: adhered, name: Adhered strip, family: self-adhered flashing }
---
{ kind: product, id: metal, name: Metal flashing, family: metal flashing }
---
{ kind: product, id: sheet, name: Sheet barrier, family: mechanically fastened sheet }
---
{ kind: product, id: bead, name: Sealant, family: sealant }
`;
const PAN =
  '  - { id: pan, place: sill, of: w, product: liquid, ontoWall: 6 in, pastJambs: 6 in, endDams: 6 in, intoOpening: full }\n';
const JAMBS = '  - { id: jambs, place: jambs, of: w, product: liquid, ontoWall: 6 in, intoOpening: full }\n';
const HEAD =
  '  - { id: head, place: head, of: w, product: liquid, ontoWall: 6 in, pastJambs: 6 in, intoOpening: full }\n';
const FIELD = '  - { id: field, place: field, layer: membrane, lapsOnto: { opening flashing: 2 in } }\n';
const SEAL = '  - { id: seal, place: interior perimeter, of: w, product: bead }\n';

interface Drawing {
  readonly work: string;
  readonly wall?: string;
  readonly unit?: string;
  readonly more?: string;
}
const SHEATHED =
  '  - { id: sheathing, material: plywood sheathing, thickness: 1/2 in }\n  - { id: membrane, product: coat }\n';

async function draw({ work, wall = SHEATHED, unit = '', more = '' }: Drawing) {
  const page = await readPage(
    `kind: detail
id: d
title: Test
face: { left: 30 in, right: 30 in, below: 30 in, above: 30 in }
wall:
${wall}openings:
  - { id: w, roughOpening: { width: 36 in, height: 48 in, depth: 6 in }${unit} }
${more}work:
${work}${PRODUCTS}`,
    'd.yaml',
  );
  const detail = page.detail();
  return { detail, face: buildFace(detail) };
}

const inches = (mm: number): number => Math.round((mm / IN) * 100) / 100;
const told = (gaps: readonly Gap[]): string[] =>
  gaps.map((g) =>
    g.kind === 'side'
      ? `${g.cause} at ${g.side} ${String(inches(g.stretch.fromMm))}-${String(inches(g.stretch.toMm))}${g.missing.length > 0 ? ` (${g.missing.join(', ')})` : ''}`
      : g.kind === 'edge'
        ? `edge ${g.edge.side} ${g.cause}`
        : g.kind === 'part'
          ? `${g.layer.id} none ${g.without}`
          : `unit ${g.missing.length > 0 ? `(${g.missing.join(', ')})` : String(inches(g.distanceMm ?? -1))}`,
  );
async function gapsOf(control: Control, drawing: Drawing): Promise<string[]> {
  const { detail, face } = await draw(drawing);
  return told(findGaps(detail, face, control));
}

describe('the air line at an opening', () => {
  it('closes over field, flashing, returns and interior seal', async () => {
    expect(await gapsOf('air', { work: PAN + JAMBS + HEAD + FIELD + SEAL })).toEqual([]);
  });

  it('is bare on the jambs above the upturned ends of the pan when the jamb flashing stays on the face', async () => {
    const work = PAN + JAMBS.replace('full', '0 in') + HEAD + FIELD + SEAL;
    expect(await gapsOf('air', { work })).toEqual(['return at left jamb 6-48', 'return at right jamb 6-48']);
  });

  it('does not jump from flashing on the face to the upturned end of another piece inside', async () => {
    const pan = PAN.replace(' pastJambs: 6 in,', '');
    expect(await gapsOf('air', { work: pan + JAMBS.replace('full', '0 in') + HEAD + FIELD + SEAL })).toEqual([
      'return at left jamb 0-48',
      'return at right jamb 0-48',
    ]);
  });

  it('needs the pan, the jambs and the head each for their own side', async () => {
    expect(await gapsOf('air', { work: PAN + HEAD + FIELD + SEAL })).toEqual([
      'return at left jamb 6-48 (work.place: left jamb)',
      'return at right jamb 6-48 (work.place: right jamb)',
    ]);
  });

  it('is sure that a jamb is missing when the other one is drawn', async () => {
    const work = PAN + JAMBS.replace('place: jambs', 'place: left jamb') + HEAD + FIELD + SEAL;
    expect(await gapsOf('air', { work })).toEqual(['return at right jamb 6-48']);
  });

  it('breaks all around where a sheet only touches the flashing, and not where a coat does', async () => {
    const touching = FIELD.replace('2 in', '0 in');
    expect(await gapsOf('air', { work: PAN + JAMBS + HEAD + touching + SEAL })).toEqual([]);
    const wall = SHEATHED.replace('product: coat', 'product: sheet');
    expect(await gapsOf('air', { wall, work: PAN + JAMBS + HEAD + touching + SEAL })).toEqual([
      'lap at head 0-36',
      'lap at left jamb 0-48',
      'lap at right jamb 0-48',
      'lap at sill 0-36',
    ]);
  });

  it('asks for what is not said instead of finding a gap', async () => {
    const work = PAN + JAMBS.replace(', intoOpening: full', '') + HEAD + FIELD + SEAL;
    expect(await gapsOf('air', { work })).toEqual([
      'return at left jamb 6-48 (work.intoOpening)',
      'return at right jamb 6-48 (work.intoOpening)',
    ]);
  });

  it('is open along the sides that the interior seal leaves out', async () => {
    const seal = SEAL.replace(' }', ', sides: [head, jambs] }');
    expect(await gapsOf('air', { work: PAN + JAMBS + HEAD + FIELD + seal })).toEqual(['seal at sill 0-36']);
  });

  it('may end in the next opening, where flashing fills the wall between the two', async () => {
    const page = await readPage(
      `kind: detail
id: d
title: Test
wall:
${SHEATHED}openings:
  - { id: a, roughOpening: { width: 36 in, height: 48 in, depth: 6 in } }
  - { id: b, at: { right: 40 in, up: 0 in }, roughOpening: { width: 36 in, height: 48 in, depth: 6 in } }
work:
${(PAN + JAMBS + HEAD).replaceAll('of: w, ', '')}${FIELD}${SEAL.replace('of: w, ', '')}${PRODUCTS}`,
      'd.yaml',
    );
    const detail = page.detail();
    expect(told(findGaps(detail, buildFace(detail), 'air'))).toEqual([]);
  });
});

describe('the water line at an opening', () => {
  const onFace = PAN + JAMBS.replace('full', '0 in') + HEAD.replace('full', '0 in') + FIELD;
  it('reaches a unit through flashing that lies over its flange', async () => {
    const set = '  - { id: set, set: unit, of: w }\n';
    const unit = ', unit: { mounting: flange, flange: 1-3/8 in }';
    expect(await gapsOf('water', { unit, work: set + onFace })).toEqual([]);
  });
  it('breaks beside a unit that is set back', async () => {
    expect(await gapsOf('water', { unit: ', unit: { mounting: recessed }', work: onFace })).toEqual([
      'return at head 0-36',
      'return at left jamb 6-48',
      'return at right jamb 6-48',
    ]);
  });
  it('asks how the unit is mounted when that decides', async () => {
    expect(await gapsOf('water', { work: onFace })).toContain('return at head 0-36 (openings.unit.mounting)');
  });
});

/**
 * Order of work after methods B and B1 of ASTM E2112: the head flashing goes on after the unit, over its flange (from
 * memory, confirm). It cannot turn into the opening; the air line has to close on the flange.
 */
describe('the air line at a head flashed after the unit', () => {
  const wall = SHEATHED.replace('product: coat', 'product: sheet');
  const FLANGE = ', unit: { mounting: flange, flange: 1-3/8 in }';
  const set = (bedding: string): string =>
    `  - { id: set, set: unit, of: w${bedding === '' ? '' : `, bedding: { ${bedding} }`} }\n`;
  const SHEET = '  - { id: field, place: field, layer: membrane }\n';
  const head = (words: string): string =>
    `  - { id: head, place: head, of: w, ${words}, ontoWall: 9 in, pastJambs: 10 in, tuckedUnder: field }\n`;
  const FLAP = '  - { id: flap, close: head flap, of: w }\n';
  const b1 = (words: string, bedding = 'head: sealed, jambs: sealed, sill: open', unit = FLANGE): Promise<string[]> =>
    gapsOf('air', { wall, unit, work: SHEET + PAN + JAMBS + set(bedding) + head(words) + FLAP + SEAL });

  it('closes where an adhered strip, or one sealed at its edge, lies over the flange', async () => {
    expect(await b1('product: adhered')).toEqual([]);
    expect(await b1('product: strip, edge: sealed')).toEqual([]);
  });

  it('breaks where metal only hangs over the flange, beneath a sheet that was held up', async () => {
    const lower = SHEET.replace('place: field,', 'place: field below sill,');
    const upper = '  - { id: upper, place: field above sill, layer: membrane, lapsOnto: { opening flashing: 4 in } }\n';
    const work = lower + PAN + JAMBS + set('head: sealed') + head('product: metal, edge: open') + upper + SEAL;
    expect(await gapsOf('air', { wall, unit: FLANGE, work: work.replace(', tuckedUnder: field', '') })).toEqual([
      'return at head 0-36',
    ]);
  });

  it('closes over a bead between the flange and the barrier behind it, and not over an interrupted one', async () => {
    const over = SHEET + PAN + JAMBS + set('head: sealed') + head('product: strip, edge: open') + SEAL;
    const onTheFace = (work: string): string => work.replace(', tuckedUnder: field', '');
    expect(await gapsOf('air', { wall, unit: FLANGE, work: onTheFace(over) })).toEqual([]);
    expect(
      await gapsOf('air', { wall, unit: FLANGE, work: onTheFace(over).replace('head: sealed', 'head: interrupted') }),
    ).toEqual(['return at head 0-36']);
  });

  it('asks how the strip and the flange are closed, never how far the strip turns in', async () => {
    expect(await b1('product: strip', 'head: open')).toEqual(['return at head 0-36 (work.edge)']);
    expect(await b1('product: strip', '')).toEqual(['return at head 0-36 (work.edge, work.bedding.head)']);
    expect(await b1('product: adhered', 'head: open', ', unit: { mounting: flange }')).toEqual([
      'return at head 0-36 (openings.unit.flange)',
    ]);
  });

  it('asks for both ways on where it is not told how the unit is mounted', async () => {
    expect(await b1('product: adhered', 'head: open', '')).toEqual([
      'return at head 0-36 (work.intoOpening, openings.unit.mounting)',
    ]);
  });

  it('is told as a gap at the flange, with what closes it', async () => {
    const { detail, face } = await draw({
      wall,
      unit: FLANGE,
      work: SHEET + PAN + JAMBS + set('head: open') + head('product: metal, edge: open') + FLAP + SEAL,
    });
    const [gap] = findGaps(detail, face, 'air').filter((g) => g.kind === 'side');
    expect(gapWords(gap!, '"field"')).toEqual({
      what: '"head" goes on after the unit, so it cannot turn in, and is not joined to the flange there',
      correct:
        'Adhere or seal "head" to the flange ("edge"), bed the flange in sealant along the head, or line the opening before the unit is set.',
    });
  });
});

describe('a gap', () => {
  const sides = (gaps: readonly Gap[]): SideGap[] => gaps.filter((g) => g.kind === 'side');
  it('is told with the stretch of the side and its length, in the units of the opening', async () => {
    const { detail, face } = await draw({ work: PAN + JAMBS.replace('full', '0 in') + HEAD + FIELD + SEAL });
    const [gap] = sides(findGaps(detail, face, 'air'));
    expect(gapPlace(gap!)).toBe('left jamb of "w", from 6 in to 48 in above the sill');
    expect(gapLength(gap!)).toBe('42 in');
    expect(gapPlace({ ...gap!, side: 'head', stretch: { fromMm: 0, toMm: 36 * IN } })).toBe(
      'head of "w", along all of it (36 in)',
    );
    expect(isToldElsewhere(detail, face, gap!)).toBe(false);
  });
  it('that is bare wall around the opening is left to the check of bare wall', async () => {
    // The field keeps off by the 6 in of the left strip; taken out on the face, 4 in of wall are bare along the jamb.
    const { detail, face } = await draw({ work: PAN + JAMBS + HEAD + FIELD + SEAL });
    const jambs = face.piecesOf('jambs')[0]!;
    const bare = {
      ...face,
      uncovered: () => [{ rect: { u0: -4 * 25.4, v0: 152.4, u1: 0, v1: 1219.2 }, areaMm2: 1 + 4 * 25.4 * 1066.8 }],
    };
    const gap = {
      cause: 'lap',
      opening: jambs.opening!,
      side: 'left jamb',
      stretch: { fromMm: 152.4, toMm: 1219.2 },
    } as unknown as Parameters<typeof isToldElsewhere>[2];
    expect(isToldElsewhere(detail, bare, gap)).toBe(true);
    expect(isToldElsewhere(detail, face, gap)).toBe(false);
  });
});

describe('edges of the wall', () => {
  const base = '  - { id: base, place: base of wall, product: liquid, upstand: 8 in }\n';
  const edge = (side: string, tie: string): string => `edges: { ${side}: { meets: foundation${tie} } }\n`;
  it('are tied in by a strip at the base that the field covers', async () => {
    expect(await gapsOf('air', { work: base + FIELD, more: edge('bottom', ', tieIn: base') })).not.toContain(
      'edge bottom apart',
    );
  });
  it('are not tied in by a strip the field does not reach', async () => {
    const work = base + FIELD.replace('place: field', 'place: field above sill');
    expect(await gapsOf('air', { work, more: edge('bottom', ', tieIn: base') })).toContain('edge bottom apart');
  });
  it('are not tied in by a strip at another edge, by nothing, or by the detail itself', async () => {
    expect(await gapsOf('air', { work: base + FIELD, more: edge('top', ', tieIn: base') })).toContain(
      'edge top elsewhere',
    );
    expect(await gapsOf('air', { work: base + FIELD, more: edge('top', '') })).toContain('edge top none');
    expect(await gapsOf('air', { work: base + FIELD, more: edge('top', ', tieIn: d') })).toContain('edge top itself');
  });
});

describe('the graph of the air line', () => {
  it('holds one part from the field to the unit, with the length of each contact', async () => {
    const { detail, face } = await draw({ work: PAN + JAMBS + HEAD + FIELD + SEAL });
    const graph = buildGraph(detail, face, 'air');
    expect(cutOff(graph)).toEqual([]);
    const lengthIn = (a: string, b: string): number | undefined =>
      graph.contacts.filter((c) => c.a.id === a && c.b.id === b).map((c) => inches(c.lengthMm ?? 0))[0];
    // The field stops 4 in from the opening: over the jamb strips two upright lines of 48 in.
    expect(lengthIn('piece jambs', 'piece field')).toBe(96);
    // Over the head: its outer line of 36 + 2 x 4 in, and 4 in of each end down to the level of the head.
    expect(lengthIn('piece head', 'piece field')).toBe(52);
    expect(lengthIn('seal seal of w', 'unit w')).toBe(2 * (36 + 48));
    expect(lengthIn('piece head', 'seal seal of w')).toBe(36);
  });

  it('shows what nothing ties to the field', async () => {
    const wall = SHEATHED.replace('product: coat', 'product: sheet');
    const { detail, face } = await draw({
      wall,
      work: HEAD.replace('pastJambs: 6 in, ', '') + FIELD.replace('2 in', '0 in'),
    });
    const graph = buildGraph(detail, face, 'air');
    expect(connectedParts(graph)[0]?.map((n) => n.id)).toEqual(['piece field']);
    expect(cutOff(graph).map((n) => n.id)).toEqual(['piece head', 'unit w']);
  });
});

describe('insulation and the unit', () => {
  const wall = (layers: string): string =>
    `  - { id: board, material: gypsum board, thickness: 5/8 in }\n${layers}  - { id: siding, material: fiber cement siding }\n`;
  const block = '  - { id: block, material: concrete masonry, thickness: 8 in }\n  - { id: membrane, product: coat }\n';
  const space = '  - { id: space, material: air space, thickness: 2 in }\n';
  const boards = '  - { id: boards, material: mineral wool board, thickness: 3 in }\n';
  const flange = ', unit: { mounting: flange, frameDepth: 3 in }';
  const recessed = ', unit: { mounting: recessed, frameDepth: 3 in }';
  it('stand in line when boards begin at the face the flange lies on', async () => {
    expect(await gapsOf('thermal', { wall: wall(block + boards), unit: flange, work: FIELD })).toEqual([]);
  });
  it('are apart by the space between', async () => {
    expect(await gapsOf('thermal', { wall: wall(block + space + boards), unit: flange, work: FIELD })).toEqual([
      'unit 2',
    ]);
  });
  it('may or may not meet when the unit is set back by an unknown depth', async () => {
    expect(await gapsOf('thermal', { wall: wall(block + boards), unit: recessed, work: FIELD })).toEqual([
      'unit (openings.unit.setBack)',
    ]);
  });
  it('stand in line or apart by the set-back that is told', async () => {
    const told = (setBack: string): string => `, unit: { mounting: recessed, frameDepth: 3 in, setBack: ${setBack} }`;
    expect(await gapsOf('thermal', { wall: wall(block + boards), unit: told('0 in'), work: FIELD })).toEqual([]);
    expect(await gapsOf('thermal', { wall: wall(block + boards), unit: told('2 in'), work: FIELD })).toEqual([
      'unit 2',
    ]);
  });
  it('meet wherever the unit stands when the whole depth of the opening is insulated', async () => {
    const studs =
      '  - { id: studs, material: mineral wool batt, thickness: 6 in }\n  - { id: sheathing, material: plywood sheathing, thickness: 1/2 in }\n  - { id: membrane, product: coat }\n';
    expect(await gapsOf('thermal', { wall: wall(studs), unit: recessed, work: FIELD })).toEqual([]);
  });
  it('ask for a thickness that is not stated', async () => {
    const thick = space.replace(', thickness: 2 in', '');
    expect(await gapsOf('thermal', { wall: wall(block + thick + boards), unit: flange, work: FIELD })).toEqual([
      'unit (wall.thickness)',
    ]);
  });
  it('leave the lower part of the wall bare when the boards are hung above the sill', async () => {
    const hang = '  - { id: hang, place: field above sill, layer: boards }\n';
    expect(await gapsOf('thermal', { wall: wall(block + boards), unit: flange, work: FIELD + hang })).toEqual([
      'boards none below the sill',
    ]);
  });
});
