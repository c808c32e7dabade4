import { describe, expect, it } from 'vitest';
import { readPage } from '../../../tests/support/documents.js';
import { permToNg, usRToSi } from '../../vapor/classes.js';
import type { Detail } from '../../model/types.js';
import { outdoorAir, type MonthOfAir } from '../interior-climate.js';
import { dewPointC } from '../psychrometrics.js';
import { highestInside, insulationSpot, leastInsulation, retarderSpot } from './cure.js';
import { curesOf } from './cures-told.js';
import { wallYearOf, type WallYear } from './of-detail.js';
import { wallOf, type ReadWall } from './wall.js';

const BOARD = '{ id: board, material: gypsum board, permeance: 10 perm, thickness: 1/2 in, rValue: R-0.5 }';
const STUDS =
  '{ id: studs, material: mineral wool batt, thickness: 5-1/2 in, rValue: R-20, permeance: 100 perm, framing: { material: wood } }';
const SHEATHING = '{ id: sheathing, material: gypsum sheathing, thickness: 1/2 in, permeance: 1 perm, rValue: R-0.5 }';
const OSB = '{ id: sheathing, material: OSB, thickness: 7/16 in }';
const OUTSIDE = [
  '{ id: cavity, material: air space, thickness: 1 in, vented: true }',
  '{ id: veneer, material: clay brick }',
];

async function detailOf(layers: readonly string[], zone = '6A'): Promise<Detail> {
  const page = await readPage(
    `\`\`\`yaml detail\nkind: detail\nid: d\ntitle: d\nwall:\n${layers.map((l) => `  - ${l}\n`).join('')}\`\`\`\n` +
      `\`\`\`yaml project\nkind: project\nid: p\ntitle: p\nplace: { zone: "${zone}" }\ncode: { title: IRC, edition: 2021 }\n\`\`\`\n`,
  );
  return page.detail();
}
function readOf(detail: Detail): ReadWall {
  const read = wallOf(detail);
  if (read.kind !== 'read') throw new Error('not read');
  return read;
}
function followed(detail: Detail): WallYear {
  const year = wallYearOf(detail);
  if (year.kind !== 'followed') throw new Error(year.reason);
  return year;
}
/** A year without drying: what condenses stays, so that passing means no condensation and algebra gives the answer. */
const STEADY = new Array<MonthOfAir>(12).fill({ inside: outdoorAir(20, 0.4), outside: outdoorAir(-5, 0.8) });
const SD_M_PER_PERM = 200 / permToNg(1);

describe('least insulation outside', () => {
  it('is what one line of algebra gives in steady weather, to the safe side of a tenth of an R', async () => {
    const detail = await detailOf([BOARD, STUDS, SHEATHING, ...OUTSIDE]);
    const read = readOf(detail);
    const spot = insulationSpot(detail, read.walls);
    expect(spot).toEqual({ index: 3 });
    const cure = leastInsulation(read, STEADY, spot);
    if (cure.kind !== 'found') throw new Error(cure.kind);
    // Inner face of the sheathing: as warm as the dew point of the straight line there. The new board is as open as
    // fibrous board of its thickness, 0.04 W/mK. Surfaces 0.13 inside and, to a vented cavity, 0.13 m2 K/W outside.
    const r = (us: number): number => us * 0.1761102;
    const sdIn = SD_M_PER_PERM / 10 + Math.max(SD_M_PER_PERM / 100, 0.1397);
    const inside = 0.13 + r(20.5);
    const [pi, pe] = [STEADY[0]!.inside.vaporPressurePa, STEADY[0]!.outside.vaporPressurePa];
    const short = (added: number): boolean => {
      const sd = sdIn + SD_M_PER_PERM + added * 0.04;
      const planeC = 20 - (25 * inside) / (inside + r(0.5) + added + 0.13);
      return planeC < dewPointC(pi - ((pi - pe) * sdIn) / sd);
    };
    expect(short(cure.value - 2 * usRToSi(0.1))).toBe(true);
    expect(short(cure.value)).toBe(false);
    expect(cure.value / usRToSi(0.1)).toBeCloseTo(Math.round(cure.value / usRToSi(0.1)), 6);
  });
  it('changes insulation that is there, and names where new insulation goes', async () => {
    const foam = '{ id: foam, material: XPS, thickness: 1 in, rValue: R-5 }';
    const there = await detailOf([BOARD, STUDS, OSB, foam, ...OUTSIDE]);
    expect(insulationSpot(there, readOf(there).walls)).toEqual({ index: 3, changes: 'foam' });
    const stucco = await detailOf([BOARD, STUDS, OSB, '{ id: stucco, material: stucco, thickness: 7/8 in }']);
    expect(insulationSpot(stucco, readOf(stucco).walls)).toEqual({ index: 3 });
    const block = await detailOf([BOARD, '{ id: block, material: concrete masonry, thickness: 8 in }', ...OUTSIDE]);
    expect(insulationSpot(block, readOf(block).walls)).toEqual({ index: 2 });
  });
  it('passes when built, and a tenth of an R less than needed does not', async () => {
    const year = followed(await detailOf(['{ id: board, material: gypsum board, thickness: 1/2 in, finish: latex paint }', STUDS.replace(', permeance: 100 perm', ''), OSB, ...OUTSIDE])); // prettier-ignore
    expect(year.judgement.kind).toBe('refused');
    const cure = leastInsulation(year.read, year.air, { index: year.read.walls[0].layers.length });
    if (cure.kind !== 'found') throw new Error(cure.kind);
    const usR = cure.value / usRToSi(1);
    // The same wall as a drawing of its own, its board declared as fibrous board of that thickness.
    const built = async (added: number): Promise<string> => {
      const perm = SD_M_PER_PERM / (usRToSi(added) * 0.04);
      const insulation = `{ id: board-outside, material: mineral wool board, thickness: 1 in, rValue: R-${added.toFixed(2)}, permeance: ${perm.toFixed(3)} perm }`;
      const detail = await detailOf(['{ id: board, material: gypsum board, thickness: 1/2 in, finish: latex paint }', STUDS.replace(', permeance: 100 perm', ''), OSB, insulation, ...OUTSIDE]); // prettier-ignore
      return followed(detail).judgement.kind;
    };
    expect(await built(usR)).toBe('accepted');
    expect(await built(usR - 0.5)).not.toBe('accepted');
  });
});

describe('the most permeable interior layer', () => {
  it('is what one line of algebra gives in steady weather, to the safe side of two digits', async () => {
    const detail = await detailOf([BOARD, STUDS, SHEATHING, ...OUTSIDE]);
    const read = readOf(detail);
    const spot = retarderSpot(detail, read.walls);
    expect(spot).toEqual({ index: 1 });
    const cure = highestInside(read, STEADY, spot, 50);
    if (cure.kind !== 'found') throw new Error(cure.kind);
    const r = (us: number): number => us * 0.1761102;
    const inside = 0.13 + r(20.5);
    const planeC = 20 - (25 * inside) / (inside + r(0.5) + 0.13);
    const saturated = 610.5 * Math.exp((21.875 * planeC) / (265.5 + planeC));
    const [pi, pe] = [STEADY[0]!.inside.vaporPressurePa, STEADY[0]!.outside.vaporPressurePa];
    // (pressure at the plane - outside) / (inside - outside) is the share of resistance outside of it.
    const total = (SD_M_PER_PERM * (pi - pe)) / (saturated - pe);
    const neededSdM = total - SD_M_PER_PERM - SD_M_PER_PERM / 10 - Math.max(SD_M_PER_PERM / 100, 0.1397);
    const exactPerm = SD_M_PER_PERM / neededSdM;
    const perm = cure.value / permToNg(1);
    expect(perm).toBeLessThanOrEqual(exactPerm);
    expect(perm).toBeGreaterThan(exactPerm * 0.9);
  });
  it('is out of reach where nothing so tight may be built', async () => {
    const detail = await detailOf([BOARD, STUDS, SHEATHING.replace('1 perm', '0.01 perm'), ...OUTSIDE]);
    const read = readOf(detail);
    expect(highestInside(read, STEADY, retarderSpot(detail, read.walls), 5).kind).toBe('out of reach');
  });
});

describe('the words', () => {
  const PAINT = '{ id: board, material: gypsum board, thickness: 1/2 in, finish: latex paint }';
  const WOOL =
    '{ id: studs, material: mineral wool batt, thickness: 5-1/2 in, rValue: R-20, framing: { material: wood } }';
  it('name both changes with their units', async () => {
    const detail = await detailOf([PAINT, WOOL, OSB, ...OUTSIDE]);
    expect(curesOf(detail, followed(detail), 'US').text).toMatch(
      /^Add continuous insulation of at least R-11\.25 \(R-[\d.]+ for the year alone, R-11\.25 by IRC 2021 Table R702\.7\(3\) with class III inside\), open to vapor, outside "sheathing"; or put a layer of at most 1 perm \(class II by IRC 2021 Table R702\.7\(2\)\) on the room side of "studs"\. The code may ask for more\.$/,
    );
    expect(curesOf(detail, followed(detail), 'SI').text).toMatch(/RSI [\d.]+.* ng\/\(Pa s m2\)/);
  });
});
