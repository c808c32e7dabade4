import { describe, expect, it } from 'vitest';
import { readPage } from '../../../tests/support/documents.js';
import { outdoorAir, yearOfAir, type MonthOfAir } from '../interior-climate.js';
import { coldSide, judgeWall, type WallJudgement } from './judge.js';
import { wallOf } from './wall.js';

const winter = (outsideC: number): MonthOfAir[] =>
  yearOfAir(
    Array.from({ length: 12 }, (_, m) => outdoorAir(m < 3 ? outsideC : 18, m < 3 ? 0.8 : 0.6)),
    { by: 'set points', temperatureC: 20, relativeHumidity: 0.5 },
  );

async function judge(year: readonly MonthOfAir[], ...layers: string[]): Promise<WallJudgement> {
  const lines = layers.map((l) => `  - ${l}`).join('\n');
  const page = await readPage(`\`\`\`yaml detail\nkind: detail\nid: d\ntitle: d\nwall:\n${lines}\n\`\`\`\n`);
  const read = wallOf(page.detail());
  if (read.kind !== 'read') throw new Error(read.missing.map((m) => m.reason).join());
  return judgeWall(read, year);
}
const STUDS = '{ id: studs, material: batt, thickness: 5-1/2 in, rValue: R-19, framing: { material: wood } }';
const OSB = '{ id: sheathing, material: OSB, thickness: 7/16 in, permeance: 1 perm }';
const VENT = '{ id: gap, material: air space, vented: true }';
const bare = '{ id: board, material: gypsum board, permeance: 30 perm }';

describe('the cold side', () => {
  it('is outside in frost, inside where cooled rooms stand in damp heat', () => {
    expect(coldSide(winter(-10))).toBe('outside');
    const damp = yearOfAir(
      Array.from({ length: 12 }, () => outdoorAir(28, 0.8)),
      { by: 'set points', temperatureC: 23, relativeHumidity: 0.5 },
    );
    expect(coldSide(damp)).toBe('inside');
  });
});

describe('a wall with settled figures', () => {
  it('is refused where more gathers than its wood bears: 3 % of 6.67 kg/m2 is 0.2 kg/m2', async () => {
    // By hand: some 500 Pa over 30 perm and 1 perm in series for three months of -10 degC: about 0.4 kg/m2.
    const { kind, typical } = await judge(winter(-10), bare, STUDS, OSB, VENT);
    expect(kind).toBe('refused');
    expect(typical.outcome).toBe('too much');
    expect(typical.worst?.plane.name).toBe('between studs and sheathing');
    expect(typical.worst?.limit?.mostKgPerM2).toBeCloseTo(0.03 * 6.6675, 4);
  });
  it('is accepted behind a tight sheet', async () => {
    const { kind, typical } = await judge(
      winter(-10),
      bare,
      '{ id: sheet, material: vapor retarder, permeance: 0.06 perm }',
      STUDS,
      OSB,
      VENT,
    );
    expect([kind, typical.outcome]).toEqual(['accepted', 'dry']);
  });
});

describe('the layers of a judged year', () => {
  it('are those that its planes know, also for an equal wall that was judged before', async () => {
    const year = winter(-10);
    for (let i = 0; i < 2; i++) {
      const { typical } = await judge(year, bare, STUDS, OSB, VENT);
      expect(typical.year.section.planes[0]?.outer).toBe(typical.layers[0]);
    }
  });
});

describe('a wall that its drawing leaves open', () => {
  it('names the permeance that turns the answer', async () => {
    const range = '{ id: sheet, material: vapor retarder, permeance: 0.05-20 perm }';
    const { kind, hangsOn } = await judge(winter(-10), bare, range, STUDS, OSB, VENT);
    expect(kind).toBe('undecided');
    expect(hangsOn).toContain('wall "sheet": permeance');
  });
  it.each([
    // "At most 20 perm" may be 0.06 perm, with which the wall above stays dry.
    ['at most 20 perm', 'undecided'],
    ['at most 0.06 perm', 'accepted'],
    ['at least 0.06 perm', 'undecided'],
    ['at least 30 perm', 'refused'],
  ])('takes "%s" for all it may mean', async (permeance, kind) => {
    const sheet = `{ id: sheet, material: vapor retarder, permeance: ${permeance} }`;
    const judged = await judge(winter(-10), bare, sheet, STUDS, OSB, VENT);
    expect(judged.kind).toBe(kind);
    if (kind === 'undecided') expect(judged.hangsOn).toContain('wall "sheet": permeance');
  });
  it('names the venting that turns it', async () => {
    // Frost all year: 0.05 perm lets in less than OSB of 1 perm lets out, unless a tight panel holds it in.
    const frost = yearOfAir(
      Array.from({ length: 12 }, () => outdoorAir(-10, 0.8)),
      { by: 'set points', temperatureC: 20, relativeHumidity: 0.5 },
    );
    const panel = '{ id: panel, material: fiber cement, thickness: 5/16 in, permeance: 0.02 perm }';
    const { kind, hangsOn } = await judge(
      frost,
      '{ id: board, material: gypsum board, permeance: 0.05 perm }',
      STUDS,
      OSB,
      '{ id: gap, material: air space, thickness: 1 in }',
      panel,
    );
    expect(kind).toBe('undecided');
    expect(hangsOn).toEqual(['wall "gap": vented']);
  });
  it('asks for the thickness where wood has no mass to take a share of', async () => {
    const thin = '{ id: sheathing, material: OSB, permeance: 1 perm }';
    const { kind, hangsOn, typical } = await judge(winter(-10), bare, STUDS, thin, VENT);
    expect([kind, typical.outcome]).toEqual(['undecided', 'no limit']);
    expect(hangsOn).toEqual(['wall "sheathing": thickness']);
  });
  it('is not accepted on the word that it may be vented, and is refused without it', async () => {
    const cladding = '{ id: cladding, material: cladding }';
    const sheet = '{ id: sheet, material: vapor retarder, permeance: 0.06 perm }';
    const good = await judge(winter(-10), bare, sheet, STUDS, OSB, cladding);
    expect([good.kind, good.hangsOn]).toEqual(['undecided', ['wall "cladding": vented']]);
    expect((await judge(winter(-10), bare, STUDS, OSB, cladding)).kind).toBe('refused');
  });
});
