import { describe, expect, it } from 'vitest';
import { readPage } from '../../../tests/support/documents.js';
import { moistureLayers, wallOf, type ReadWall, type UnreadWall } from './wall.js';
import { permToNg, usRToSi } from '../../vapor/classes.js';
import { sdFromPermeanceM } from '../resistance.js';

const PRODUCTS = `
\`\`\`yaml product
{ kind: product, id: coating, name: Coating, family: fluid-applied membrane, permeance: { dry: 10 perm, wet: 14 perm } }
\`\`\`
\`\`\`yaml product
{ kind: product, id: silent, name: Silent coating, family: fluid-applied membrane }
\`\`\`
`;
const BOARD = '{ id: board, material: gypsum board, thickness: 1/2 in, finish: latex paint }';
const STUDS = '{ id: studs, material: batt, thickness: 3-1/2 in, rValue: R-13, framing: { material: wood } }';
const OSB = '{ id: sheathing, material: OSB, thickness: 7/16 in }';

async function read(...layers: string[]): Promise<ReadWall | UnreadWall> {
  const lines = layers.map((l) => `  - ${l}`).join('\n');
  const page = await readPage(`\`\`\`yaml detail\nkind: detail\nid: d\ntitle: d\nwall:\n${lines}\n\`\`\`\n${PRODUCTS}`);
  return wallOf(page.detail());
}
async function wall(...layers: string[]): Promise<ReadWall> {
  const found = await read(...layers);
  if (found.kind !== 'read') throw new Error(found.missing.map((m) => m.reason).join());
  return found;
}
const missing = async (...layers: string[]): Promise<string[]> => {
  const found = await read(...layers);
  return found.kind === 'unread' ? found.missing.map((m) => m.missing) : [];
};
const perm = (value: number): number => sdFromPermeanceM(permToNg(value));

describe('the layers of a drawn wall', () => {
  it('are its layers inside to outside, paint on the room side of its board', async () => {
    const { walls } = await wall(BOARD, STUDS, OSB);
    expect(walls[0].layers.map((l) => l.id)).toEqual(['board finish', 'board', 'studs', 'sheathing']);
  });
  it('have the stated R-value, or thickness times that of the material', async () => {
    const { walls } = await wall(BOARD, STUDS, OSB, '{ id: wool, material: mineral wool board, thickness: 100 mm }');
    const r = new Map(walls[0].layers.map((l) => [l.id, l.rM2KW]));
    expect(r.get('studs')).toBeCloseTo(usRToSi(13), 9);
    expect(r.get('wool')).toBeCloseTo(0.1 / 0.04, 4); // 0.04 W/(m K), the larger conductivity of the table
  });
  it('have the permeance of their product, dry inside and wet on the cold side', async () => {
    const { walls } = await wall(BOARD, STUDS, OSB, '{ id: membrane, product: coating }');
    const at = (cold: 'inside' | 'outside'): number => {
      const layer = moistureLayers(walls[0], cold, () => 'typicalM').find((l) => l.id === 'membrane');
      return layer !== undefined && 'sdM' in layer ? layer.sdM : NaN;
    };
    expect(at('outside')).toBeCloseTo(perm(14), 6);
    expect(at('inside')).toBeCloseTo(perm(10), 6);
  });
  it('lie between the bounds of a declared range', async () => {
    const { walls } = await wall('{ id: board, material: gypsum board, permeance: 4-9 perm }', STUDS, OSB);
    const board = walls[0].layers[0];
    expect(board?.dry.leastM).toBeCloseTo(perm(9), 6);
    expect(board?.dry.typicalM).toBeCloseTo(perm(6), 6); // sqrt(4 x 9) = 6
    expect(board?.dry.mostM).toBeCloseTo(perm(4), 6);
  });
  it('are as thick as their material needs for the R-value they are sold by', async () => {
    const { walls } = await wall(BOARD, STUDS, OSB, '{ id: foam, material: XPS, rValue: R-5 }');
    // XPS: R-5 to the inch and 1.2 perm-in, so R-5 is one inch of 1.2 perm.
    expect(walls[0].layers.find((l) => l.id === 'foam')?.dry.typicalM).toBeCloseTo(perm(1.2), 4);
  });
  it('know the mass of wood, which its limit is a share of', async () => {
    const { walls } = await wall(BOARD, STUDS, OSB);
    // 7/16 in of OSB at 600 kg/m3: 0.0111125 x 600.
    expect(walls[0].layers.find((l) => l.id === 'sheathing')?.areaMassKgPerM2).toBeCloseTo(6.6675, 4);
  });
  it('fill the framing where they state no thickness', async () => {
    const studs = '{ id: studs, material: mineral wool batt, framing: { material: wood, depth: 100 mm } }';
    const { walls } = await wall(BOARD, studs, OSB);
    expect(walls[0].layers.find((l) => l.id === 'studs')?.rM2KW).toBeCloseTo(0.1 / 0.04, 4);
  });
  it('may be all that a thing of their family is, where the drawing names no kind', async () => {
    const { walls, assumptions } = await wall(BOARD, STUDS, '{ id: skin, material: sheathing, thickness: 1/2 in }');
    const skin = walls[0].layers.at(-1);
    expect(skin?.dry.leastM).toBeCloseTo(perm(50), 4);
    expect(skin?.dry.mostM).toBeCloseTo(perm(0.5), 4);
    expect(assumptions.join(' ')).toContain('"sheathing" names no kind');
  });
  it('go from bare to painted where the finish of the room side is not said, and say so', async () => {
    const { walls, assumptions } = await wall('{ id: board, material: gypsum board }', STUDS, OSB);
    expect(walls[0].layers[0]).toMatchObject({ id: 'board finish', field: 'wall "board": finish' });
    expect(assumptions.join(' ')).toContain('finish of "board" is not stated');
  });
});

describe('a wall that cannot be followed', () => {
  it.each([
    ['a product without permeance', [BOARD, STUDS, '{ id: membrane, product: silent }'], ['product.permeance.dry']],
    ['a material nobody knows', [BOARD, STUDS, '{ id: skin, material: woven panel }'], ['wall "skin": permeance']],
    [
      'batts without thickness or R-value',
      [BOARD, '{ id: studs, material: batt, framing: { material: wood } }', OSB],
      ['wall "studs": thickness'],
    ],
    ['foam without thickness', [BOARD, STUDS, '{ id: foam, material: XPS }'], ['wall "foam": thickness']],
    [
      'a finish nobody knows',
      ['{ id: board, material: gypsum board, finish: silk }', STUDS, OSB],
      ['wall "board": permeance'],
    ],
  ])('names what is missing: %s', async (_, layers, fields) => {
    expect(await missing(...layers)).toEqual(fields);
  });
});

describe('the end of a wall', () => {
  const BRICK = '{ id: brick, material: clay brick, thickness: 3-5/8 in }';
  const last = async (...layers: string[]): Promise<(string | undefined)[]> =>
    (await wall(BOARD, STUDS, OSB, ...layers)).walls.map((w) => w.layers.at(-1)?.id);
  it('is the cavity that is vented', async () => {
    const { walls } = await wall(BOARD, STUDS, OSB, '{ id: gap, material: air space, vented: true }', BRICK);
    expect(walls.map((w) => w.endsAt?.id)).toEqual(['gap']);
    expect(walls[0].surfaces.outsideM2KW).toBe(0.13); // ISO 6946, well ventilated (from memory)
  });
  it('is the last layer where the cladding is not vented', async () => {
    expect(await last('{ id: gap, material: air space, thickness: 1 in, vented: false }', BRICK)).toEqual(['brick']);
    const { walls } = await wall(BOARD, STUDS, OSB, '{ id: stucco, material: stucco, thickness: 7/8 in }');
    expect(walls[0].surfaces.outsideM2KW).toBe(0.04);
  });
  it('may be either where the drawing does not say, and both are followed', async () => {
    const panel = '{ id: panel, material: fiber cement, thickness: 5/16 in }';
    expect(await last('{ id: gap, material: air space, thickness: 1 in }', panel)).toEqual(['sheathing', 'panel']);
    const { unsaidVenting } = await wall(BOARD, STUDS, OSB, '{ id: gap, material: air space }', panel);
    expect(unsaidVenting).toBe('wall "gap": vented');
  });
  it('is the cavity where the cladding itself has no figures, and that is said', async () => {
    const found = await wall(BOARD, STUDS, OSB, '{ id: cladding, material: cladding }');
    expect(found.walls.length).toBe(1);
    expect(found.unsaidVenting).toBe('wall "cladding": vented');
    expect(found.assumptions.join(' ')).toContain('followed as if it were');
  });
});
