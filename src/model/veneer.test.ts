import { describe, expect, it } from 'vitest';
import { buildFace } from '../geometry/face.js';
import { runOfWater } from '../water/run/run.js';
import { readPage } from '../../tests/support/documents.js';
import { anchoredVeneer, cavityFeet, wayOut } from './veneer.js';
import type { Detail } from './types.js';

const PRODUCTS = `
\`\`\`yaml product
kind: product
id: coat
name: Fluid-applied membrane
family: fluid-applied membrane
\`\`\`

\`\`\`yaml product
kind: product
id: metal
name: Metal flashing
family: metal flashing
\`\`\`
`;
const CAVITY_WALL = `
  - { id: sheathing, material: glass-mat gypsum sheathing }
  - { id: membrane, product: coat }
  - { id: cavity, material: air space, thickness: 2 in, drained: true }
  - { id: veneer, material: clay brick, thickness: 3-5/8 in }`;
const WEEPS = 'weeps: { type: open head joints, spacing: 24 in, size: 3/8 in }';

async function detailOf(wall: string, more = ''): Promise<Detail> {
  const page = await readPage(
    `\`\`\`yaml detail\nkind: detail\nid: D\ntitle: D\nwall:${wall}\n${more}\n\`\`\`\n${PRODUCTS}`,
  );
  return page.detail();
}

/** Each foot of the cavity with what becomes of the water there. */
const feetOf = (detail: Detail): string[] =>
  cavityFeet(detail).map((foot) => `${foot.name}: ${wayOut(detail, foot).state}`);

describe('an anchored masonry veneer', () => {
  const rows: [string, string, string | undefined][] = [
    ['brick in front of an air space', CAVITY_WALL, 'veneer'],
    [
      'brick laid against sheathing',
      '\n  - { id: sheathing, material: plywood }\n  - { id: veneer, material: clay brick, thickness: 3-5/8 in }',
      'veneer',
    ],
    [
      'brick in front of block with an air space between',
      '\n  - { id: block, material: concrete masonry }\n  - { id: gap, material: air space }\n  - { id: veneer, material: clay brick }',
      'veneer',
    ],
    [
      'no solid wall that is lined inside',
      '\n  - { id: board, material: gypsum board }\n  - { id: lining, material: mineral wool batt }\n  - { id: brick, material: clay brick, thickness: 12 in }',
      undefined,
    ],
    [
      'no solid wall with furring inside',
      '\n  - { id: board, material: gypsum board }\n  - { id: gap, material: air space }\n  - { id: brick, material: clay brick, thickness: 12 in }',
      undefined,
    ],
    ['no wall of block alone', '\n  - { id: block, material: concrete masonry }', undefined],
    [
      'no thin brick',
      '\n  - { id: sheathing, material: plywood }\n  - { id: veneer, material: thin brick, thickness: 3-5/8 in }',
      undefined,
    ],
    [
      'no brick of half an inch',
      '\n  - { id: sheathing, material: plywood }\n  - { id: veneer, material: clay brick, thickness: 1/2 in }',
      undefined,
    ],
    [
      'no other cladding',
      '\n  - { id: sheathing, material: plywood }\n  - { id: gap, material: air space }\n  - { id: boards, material: fiber cement siding }',
      undefined,
    ],
  ];
  it.each(rows)('is %s', async (_, wall, id) => {
    expect(anchoredVeneer(await detailOf(wall))?.layer.id).toBe(id);
  });
});

describe('where the cavity ends', () => {
  const opening = 'openings:\n  - { id: window, roughOpening: { width: 36 in, height: 48 in } }';
  const laid = '  - { id: brick, place: field, layer: veneer }';
  const field = '  - { id: field, place: field, layer: membrane }';
  const onto = 'edges: { bottom: { meets: foundation } }';

  it('is nowhere in a wall that goes on and has no opening', async () => {
    expect(feetOf(await detailOf(CAVITY_WALL, `edges: same wall\nwork:\n${field}\n${laid}`))).toEqual([]);
  });
  it('is at the foundation and over each opening, where nothing brings the water out', async () => {
    expect(feetOf(await detailOf(CAVITY_WALL, `${onto}\n${opening}\nwork:\n${field}\n${laid}`))).toEqual([
      'at the base of the wall: missing',
      'over "window": missing',
    ]);
  });
  it('is a question where the veneer is laid by another trade', async () => {
    expect(feetOf(await detailOf(CAVITY_WALL, `${onto}\n${opening}\nwork:\n${field}`))).toEqual([
      'at the base of the wall: not told',
      'over "window": not told',
    ]);
  });
  it('is shown by another detail that the edge names', async () => {
    const edge = 'edges: { bottom: { meets: foundation, tieIn: other-detail } }';
    expect(feetOf(await detailOf(CAVITY_WALL, `${edge}\nwork:\n${field}\n${laid}`))).toEqual([]);
  });
  it('is not drained by a strip that laps onto the foundation', async () => {
    const strip = '  - { id: strip, place: base of wall, product: coat, upstand: 8 in, ontoFoundation: 4 in }';
    expect(feetOf(await detailOf(CAVITY_WALL, `${onto}\nwork:\n${strip}\n${field}\n${laid}`))).toEqual([
      'at the base of the wall: missing',
    ]);
  });

  const flashing = (more: string): string =>
    `  - { id: f, place: base of wall, product: metal, upstand: 8 in${more === '' ? '' : `, ${more}`} }`;
  const cases: [string, string, string][] = [
    ['flashing that reaches the face, with weeps', `projects: 1/4 in, ${WEEPS}`, 'shown'],
    ['flashing without weeps', 'projects: 1/4 in', 'missing'],
    ['flashing with a count of no weeps', 'projects: 1/4 in, weeps: { count: 0 }', 'missing'],
    ['flashing that does not say that it reaches the face', WEEPS, 'not told'],
  ];
  it.each(cases)('with %s', async (_, more, state) => {
    expect(feetOf(await detailOf(CAVITY_WALL, `${onto}\nwork:\n${flashing(more)}\n${field}\n${laid}`))).toEqual([
      `at the base of the wall: ${state}`,
    ]);
  });
  it('may have its weeps in the work that lays the veneer', async () => {
    const work = `${flashing('projects: 1/4 in')}\n${field}\n  - { id: brick, place: field, layer: veneer, ${WEEPS} }`;
    expect(feetOf(await detailOf(CAVITY_WALL, `${onto}\nwork:\n${work}`))).toEqual(['at the base of the wall: shown']);
  });

  // Worked out by hand: rain on the field comes down to the bottom of the drawing, and what it meets there decides.
  const ends: [string, string, string][] = [
    ['a wall that goes on', `edges: same wall\nwork:\n${field}\n${laid}`, 'goes on'],
    ['a wall that says nothing of its edges', `work:\n${field}\n${laid}`, 'goes on'],
    ['brick on the foundation', `${onto}\nwork:\n${field}\n${laid}`, 'behind veneer'],
    [
      'brick on flashing with weeps',
      `${onto}\nwork:\n${flashing(`projects: 1/4 in, ${WEEPS}`)}\n${field}\n${laid}`,
      'daylight',
    ],
  ];
  it.each(ends)('%s: the water on the barrier ends so', async (_, more, kind) => {
    const detail = await detailOf(CAVITY_WALL, more);
    const run = runOfWater(detail, buildFace(detail));
    expect([...new Set(run.face.map((p) => p.end.kind))]).toEqual([kind]);
  });
  it('panels on the foundation let it out at their foot', async () => {
    const wall = CAVITY_WALL.replace('clay brick', 'fiber cement panel');
    const detail = await detailOf(wall, `${onto}\nwork:\n${field}`);
    expect([...new Set(runOfWater(detail, buildFace(detail)).face.map((p) => p.end.kind))]).toEqual(['daylight']);
  });
});
