import { describe, expect, it } from 'vitest';
import { readPage } from '../../../tests/support/documents.js';
import { frameOf } from '../../vapor/frame.js';
import { permToNg } from '../../vapor/classes.js';
import type { Detail, Layer } from '../../model/types.js';
import { balanceOf, tightOutside } from './balance.js';
import { reservoirWall } from './behind-cladding.js';
import { storesRain } from './stores-rain.js';
import { wallOf, type ReadWall } from './wall.js';

const WALL = [
  '{ id: board, material: gypsum board, permeance: 10 perm, rValue: R-0.5 }',
  '{ id: film, material: retarder sheet, family: vapor retarder, permeance: 0.5 perm }',
  '{ id: studs, material: mineral wool batt, thickness: 5-1/2 in, rValue: R-20, permeance: 25 perm, framing: { material: wood } }',
  '{ id: sheathing, material: gypsum sheathing, permeance: 20 perm, rValue: R-0.5 }',
  '{ id: membrane, material: membrane, family: self-adhered membrane, permeance: 4 perm }',
  '{ id: insulation, material: mineral wool board, rValue: R-8, permeance: 50 perm }',
];
const BRICK = [
  '{ id: cavity, material: air space, thickness: 1 in, vented: true }',
  '{ id: veneer, material: clay brick, thickness: 3-5/8 in }',
];

async function drawn(layers: readonly string[]): Promise<{ detail: Detail; read: ReadWall; frame: Layer }> {
  const page = await readPage(
    `\`\`\`yaml detail\nkind: detail\nid: d\ntitle: d\nwall:\n${layers.map((l) => `  - ${l}\n`).join('')}\`\`\`\n`,
  );
  const detail = page.detail();
  const [read, frame] = [wallOf(detail), frameOf(detail)];
  if (read.kind !== 'read' || frame === undefined) throw new Error('not read');
  return { detail, read, frame };
}

describe('the balance of a wall about its frame', () => {
  it('adds vapor resistances in series on each side, the fill of the frame on neither', async () => {
    const { read, frame } = await drawn([...WALL, ...BRICK]);
    const [wall] = read.walls;
    const layers = wall.layers.map((l) => ({ id: l.id, rM2KW: l.rM2KW, sdM: l.dry.typicalM, storage: l.storage }));
    const { insideSdM, outsideSdM, outsideM2KW, totalM2KW } = balanceOf(wall, layers, frame);
    // 1/10 + 1/0.5 and 1/20 + 1/4 + 1/50 of a perm's resistance; R-8.5 of R-29.
    const onePermM = 200 / permToNg(1);
    expect(insideSdM / onePermM).toBeCloseTo(2.1, 6);
    expect(outsideSdM / onePermM).toBeCloseTo(0.32, 6);
    expect(outsideM2KW / totalM2KW).toBeCloseTo(8.5 / 29, 6);
  });
  it('names the first tight membrane or insulation outside, and none inside', async () => {
    const open = await drawn([...WALL, ...BRICK]);
    expect(tightOutside(open.read.walls[0], open.frame)).toBeUndefined();
    const tight = await drawn([...WALL.map((l) => l.replace('permeance: 4 perm', 'permeance: 0.05 perm')), ...BRICK]);
    expect(tightOutside(tight.read.walls[0], tight.frame)).toMatchObject({
      layer: { id: 'membrane' },
      vaporClass: 'I',
    });
  });
});

describe('the wall behind a cladding that stores rain', () => {
  it('ends at the space behind it, or at its own back', async () => {
    const brick = await drawn([...WALL, ...BRICK]);
    const found = reservoirWall(brick.detail, brick.read);
    expect(found?.wall.layers.at(-1)?.id).toBe('insulation');
    expect(found?.vented).toEqual([true]);
    const stucco = await drawn([...WALL, '{ id: stucco, material: stucco, thickness: 7/8 in }']);
    const onWall = reservoirWall(stucco.detail, stucco.read);
    expect(onWall?.wall.layers.at(-1)?.id).toBe('insulation');
    expect(onWall?.vented).toEqual([false]);
  });
  it('is none behind vinyl, and either way where a cavity does not say', async () => {
    const vinyl = await drawn([...WALL, '{ id: siding, material: vinyl siding }']);
    expect(reservoirWall(vinyl.detail, vinyl.read)).toBeUndefined();
    expect(storesRain(vinyl.detail.layers.at(-1)!)).toBe(false);
    const unsaid = await drawn([...WALL, '{ id: gap, material: air space, thickness: 1 in }', '{ id: panels, material: fiber cement panel, thickness: 5/16 in }']); // prettier-ignore
    expect(reservoirWall(unsaid.detail, unsaid.read)).toMatchObject({
      vented: [true, false],
      unsaidVenting: 'wall "gap": vented',
    });
  });
});
