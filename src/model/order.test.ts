import { describe, expect, it } from 'vitest';
import { readPage } from '../../tests/support/documents.js';
import {
  barrierWorks,
  baseIndex,
  claddingWorks,
  declaredBetweenS,
  flashingAt,
  hangsOver,
  inOrder,
  layerOf,
  penetrationSet,
  spotsAt,
  unitSet,
  worksNamed,
} from './order.js';
import type { Apply, Detail, Work } from './types.js';

const PRODUCTS = [
  ['liquid', 'fluid-applied flashing'],
  ['coat', 'fluid-applied membrane'],
  ['strip', 'flexible flashing'],
  ['prime', 'primer'],
]
  .map(([id, family]) => `\`\`\`yaml product\nkind: product\nid: ${id}\nname: ${id}\nfamily: ${family}\n\`\`\``)
  .join('\n');

/** A detail with one window; `wall` and `work` are lines of YAML. */
async function detailOf(wall: string, work: string): Promise<Detail> {
  const lines = (text: string): string =>
    text
      .trim()
      .split('\n')
      .map((l) => `  - { ${l.trim()} }`)
      .join('\n');
  const text = `\`\`\`yaml detail\nkind: detail\nid: d\ntitle: d\nwall:\n${lines(wall)}\nopenings:\n  - { id: window, roughOpening: { width: 36 in, height: 48 in, depth: 5 in } }\npenetrations:\n  - { id: pipe, at: { right: 60 in, up: 20 in }, diameter: 1 in }\nwork:\n${lines(work)}\n\`\`\`\n${PRODUCTS}\n`;
  return (await readPage(text)).detail();
}
const SHEATHED =
  'id: studs, material: studs\nid: boards, material: gypsum sheathing\nid: membrane, product: coat\nid: veneer, material: clay brick';
const find = (detail: Detail, id: string): Work => detail.work.find((w) => w.id === id) as Work;

describe('order of work', () => {
  it('sorts the places of one sheet work in the order of its list, and those of a liquid as one', async () => {
    const detail = await detailOf(
      SHEATHED,
      'id: a, place: [head, sill], product: strip, of: window\nid: b, place: [head, sill], product: liquid, of: window',
    );
    const [sheetHead, sheetSill, liquidHead, liquidSill] = spotsAt(detail, detail.openings[0]!, ['sill', 'head']) as [
      never,
      never,
      never,
      never,
    ];
    expect(inOrder(sheetHead, sheetSill)).toBe(true);
    expect(inOrder(sheetSill, sheetHead)).toBe(false);
    expect(inOrder(liquidSill, liquidHead)).toBe(true);
    expect(inOrder(liquidHead, liquidSill)).toBe(true);
    expect(inOrder(sheetSill, liquidHead)).toBe(true);
    expect(inOrder(liquidHead, sheetSill)).toBe(false);
  });

  it('does not take primer for flashing, and keeps material it does not know', async () => {
    const detail = await detailOf(
      SHEATHED,
      'id: p, place: sill, product: prime, of: window\nid: tray, place: sill, material: folded tray, of: window',
    );
    const opening = detail.openings[0]!;
    expect(spotsAt(detail, opening, ['sill']).map((s) => s.work.id)).toEqual(['p', 'tray']);
    expect(flashingAt(detail, opening, ['sill']).map((s) => s.work.id)).toEqual(['tray']);
  });

  it('finds who sets the unit and the penetration, and nobody where nobody does', async () => {
    const detail = await detailOf(SHEATHED, 'id: u, set: unit, of: window\nid: p, set: penetration, of: pipe');
    expect(unitSet(detail, detail.openings[0]!)?.id).toBe('u');
    expect(penetrationSet(detail, 'pipe')?.id).toBe('p');
    const none = await detailOf(SHEATHED, 'id: pan, place: sill, product: liquid');
    expect(unitSet(none, none.openings[0]!)).toBeUndefined();
    expect(penetrationSet(none, 'pipe')).toBeUndefined();
  });

  it('knows the layer of a field work by its product, and of other work only when it says so', async () => {
    const detail = await detailOf(
      SHEATHED,
      'id: f, place: field, product: coat\nid: s, place: sheathing joints, product: coat\nid: v, place: field, layer: veneer',
    );
    expect(layerOf(detail, find(detail, 'f') as Apply)?.id).toBe('membrane');
    expect(layerOf(detail, find(detail, 's') as Apply)).toBeUndefined();
    expect(barrierWorks(detail).map((w) => w.id)).toEqual(['f']);
    expect(claddingWorks(detail).map((w) => w.id)).toEqual(['v']);
    expect(worksNamed(detail, 'veneer').map((w) => w.id)).toEqual(['v']);
    expect(worksNamed(detail, 's').map((w) => w.id)).toEqual(['s']);
  });

  it('takes the sheathing as the base, else what carries the membrane, else nothing', async () => {
    const work = 'id: f, place: field, product: coat';
    expect(baseIndex(await detailOf(SHEATHED, work))).toBe(1);
    expect(
      baseIndex(
        await detailOf(
          'id: block, material: concrete masonry\nid: m, product: coat\nid: foam, material: extruded polystyrene',
          work,
        ),
      ),
    ).toBe(0);
    expect(baseIndex(await detailOf('id: m, product: coat', work))).toBe(-1);
  });

  it('takes a wall of solid masonry for its own base, and a veneer for none', async () => {
    const work = 'id: pan, place: sill, product: liquid';
    const lined = 'id: board, material: gypsum board\nid: studs, material: studs\n';
    expect(baseIndex(await detailOf(`${lined}id: wall, material: clay brick, thickness: 12 in`, work))).toBe(2);
    expect(baseIndex(await detailOf(`${lined}id: wall, material: concrete masonry, thickness: 8 in`, work))).toBe(2);
    expect(
      baseIndex(
        await detailOf(
          'id: wall, material: concrete masonry\nid: gap, material: air space\nid: veneer, material: clay brick',
          work,
        ),
      ),
    ).toBe(0);
  });

  it('reads the thickness of a sheet in mils', async () => {
    const detail = await detailOf(
      'id: poly, material: polyethylene, thickness: 6 mil',
      'id: f, place: sill, product: liquid',
    );
    // 6 mil is 0.006 in, 0.1524 mm.
    expect(detail.layers[0]?.thicknessMm).toMatchObject({ dimension: 'length', text: '6 mil' });
    expect(detail.layers[0]?.thicknessMm?.value).toBeCloseTo(0.1524, 9);
  });

  it('takes cladding for hung over the flashing and the membrane, and the membrane for hung over nothing', async () => {
    const detail = await detailOf(
      SHEATHED,
      'id: pan, place: sill, product: liquid\nid: f, place: field, layer: membrane\nid: b, place: field, layer: boards\nid: v, place: field, layer: veneer',
    );
    const [pan, field, boards, veneer] = ['pan', 'f', 'b', 'v'].map((id) => find(detail, id) as Apply) as [
      Apply,
      Apply,
      Apply,
      Apply,
    ];
    expect(hangsOver(detail, veneer, pan)).toBe(true);
    expect(hangsOver(detail, veneer, field)).toBe(true);
    expect(hangsOver(detail, field, pan)).toBe(false);
    expect(hangsOver(detail, boards, pan)).toBe(false);
    expect(hangsOver(detail, field, veneer)).toBe(false);
  });

  it('adds up the waits from a work to the step before another, and says when none is declared', async () => {
    const detail = await detailOf(
      SHEATHED,
      'id: a, place: sill, product: liquid, wait: 1 h\nid: b, place: jambs, product: liquid\nid: c, place: head, product: liquid, wait: 30 min\nid: d, place: field, product: coat, wait: 9 h\nid: e, place: field, product: coat',
    );
    expect(declaredBetweenS(detail, find(detail, 'a'), find(detail, 'd'))).toBe(5400);
    expect(declaredBetweenS(detail, find(detail, 'b'), find(detail, 'd'))).toBe(1800);
    expect(declaredBetweenS(detail, find(detail, 'b'), find(detail, 'c'))).toBeUndefined();
  });
});
