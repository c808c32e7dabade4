/** What the pages of the family do not show: levels by source, editions not held, and details that say almost nothing. */
import { describe, expect, it } from 'vitest';
import { readPage, reviewWith } from '../../tests/support/documents.js';
import { FAMILIES } from '../../src/model/types.js';
import type { Result } from '../../src/engine/result.js';
import type { Rule } from '../../src/engine/rule.js';
import classThree from './class-three-conditions.js';
import classTwo from './class-two-with-foam.js';
import doubleBarrier from './double-barrier.js';
import interiorClass from './interior-retarder-class.js';
import atFilm from './permeance-at-film.js';
import required from './required-retarder.js';

const ALL = [interiorClass, classThree, classTwo, doubleBarrier, atFilm, required] as unknown as readonly Rule[];
const STUDS = '{ id: studs, material: mineral wool batt, thickness: 5-1/2 in, framing: { material: wood } }';
const PAINTED = '{ id: board, material: gypsum board, finish: latex paint }';
const BARE = '{ id: board, material: gypsum board, finish: none }';
const SHEET = '{ id: sheet, material: polyethylene sheet }';

async function review(place: string, ...layers: string[]): Promise<Result[]> {
  const project = place === '' ? '' : `\`\`\`yaml project\nkind: project\nid: p\ntitle: p\n${place}\n\`\`\`\n`;
  const wall = layers.length === 0 ? '' : `wall:\n${layers.map((l) => `  - ${l}`).join('\n')}\n`;
  const page = await readPage(`\`\`\`yaml detail\nkind: detail\nid: d\ntitle: d\n${wall}\`\`\`\n${project}`);
  return reviewWith(page.detail(), ALL);
}
const at = (zone: string, title: string, edition: number): string =>
  `place: { zone: "${zone}" }\ncode: { title: ${title}, edition: ${edition} }`;
const brief = (results: readonly Result[]): string[] => results.map((r) => `${r.ruleId} ${r.kind} ${r.level}`).sort();

describe('a class that the zone bars', () => {
  it('is an error where the table was read', async () => {
    expect(
      brief((await review(at('1A', 'IRC', 2021), PAINTED, SHEET, STUDS)).filter((r) => r.kind === 'fail')),
    ).toEqual(['vapor/interior-retarder-class fail error']);
  });
  it('is a warning that asks to confirm where the table is from memory', async () => {
    const found = (await review(at('3A', 'IRC', 2021), PAINTED, SHEET, STUDS)).filter((r) => r.kind === 'fail');
    expect(brief(found)).toEqual(['vapor/interior-retarder-class fail warning']);
    expect(found[0]?.message).toContain('confirm in the code');
  });
  it('is none before the tables barred it', async () => {
    expect((await review(at('3A', 'IRC', 2018), PAINTED, SHEET, STUDS)).filter((r) => r.kind === 'fail')).toEqual([]);
  });
});

describe('class III in a cold zone', () => {
  const stucco = [PAINTED, STUDS, '{ id: sheathing, material: OSB }', '{ id: stucco, material: stucco }'];
  it('short of insulation is a warning, for no row of the table was read itself, and asks to confirm it', async () => {
    expect(brief(await review(at('5A', 'IRC', 2021), ...stucco))).toEqual([
      'vapor/class-three-conditions fail warning',
    ]);
    expect(brief(await review(at('6A', 'IRC', 2021), ...stucco))).toEqual([
      'vapor/class-three-conditions fail warning',
    ]);
  });
  it('is a warning when the shortfall rests on a generic R-value', async () => {
    const [found] = await review(
      at('5A', 'IRC', 2021),
      PAINTED,
      STUDS,
      '{ id: sheathing, material: OSB }',
      '{ id: foam, material: XPS, thickness: 1 in }',
      '{ id: stucco, material: stucco }',
    );
    expect(found).toMatchObject({ kind: 'fail', level: 'warning' });
    expect(found?.message).toContain('R 5 per inch taken for extruded polystyrene');
  });
  it('passes under vinyl siding over wood panels in zone 5 but not in zone 6', async () => {
    const vinyl = [PAINTED, STUDS, '{ id: sheathing, material: OSB }', '{ id: siding, material: vinyl siding }'];
    expect(brief(await review(at('5A', 'IRC', 2021), ...vinyl))).toEqual(['vapor/class-three-conditions pass none']);
    expect(brief(await review(at('6A', 'IRC', 2021), ...vinyl))).toEqual(['vapor/class-three-conditions fail warning']);
  });
  it('asks for the depth of the studs only where it decides', async () => {
    const layers = (r: string): string[] => [
      PAINTED,
      '{ id: studs, material: mineral wool batt, framing: { material: wood } }',
      `{ id: foam, material: XPS, rValue: ${r} }`,
      '{ id: stucco, material: stucco }',
    ];
    const [between] = await review(at('5A', 'IRC', 2021), ...layers('R-6'));
    expect(between).toMatchObject({ kind: 'open', missing: ['wall "studs": framing.depth'] });
    expect(brief(await review(at('5A', 'IRC', 2021), ...layers('R-8')))).toEqual([
      'vapor/class-three-conditions pass none',
    ]);
    expect(brief(await review(at('5A', 'IRC', 2021), ...layers('R-4')))).toEqual([
      'vapor/class-three-conditions fail warning',
    ]);
  });
  it('over deeper studs is handed to the reviewer, not passed', async () => {
    const [found] = await review(
      at('5A', 'IRC', 2021),
      PAINTED,
      '{ id: studs, material: cellulose, thickness: 12 in, framing: { material: wood } }',
      '{ id: foam, material: XPS, rValue: R-10 }',
      '{ id: stucco, material: stucco }',
    );
    expect(found).toMatchObject({ ruleId: 'vapor/class-three-conditions', kind: 'review' });
  });
});

describe('no retarder at all', () => {
  it('is an error where the clause was read, a warning elsewhere, nothing to say in a warm zone', async () => {
    expect(brief(await review(at('5A', 'IRC', 2009), BARE, STUDS))).toEqual(['vapor/required-retarder fail error']);
    expect(brief(await review(at('5A', 'IRC', 2018), BARE, STUDS))).toEqual(['vapor/required-retarder fail warning']);
    expect(brief(await review(at('2A', 'IRC', 2018), BARE, STUDS))).toEqual(['vapor/required-retarder pass none']);
    expect(brief(await review(at('4A', 'IBC', 2021), BARE, STUDS))).toEqual(['vapor/required-retarder review none']);
  });
  it('is for the reviewer when tight foam fills the cavity', async () => {
    expect(
      brief(
        await review(
          at('6A', 'IRC', 2018),
          BARE,
          '{ id: studs, material: closed-cell spray foam, thickness: 3-1/2 in, framing: { material: wood } }',
        ),
      ),
    ).toEqual(['vapor/required-retarder review none']);
  });
  it('is a finding in Canada without any zone', async () => {
    expect(brief(await review('code: { title: NBC, edition: 2020 }', PAINTED, STUDS))).toEqual([
      'vapor/required-retarder fail error',
    ]);
    expect(
      brief(
        (await review('code: { title: NBC, edition: 2020 }', PAINTED, SHEET, STUDS)).filter(
          (r) => r.ruleId === 'vapor/required-retarder',
        ),
      ),
    ).toEqual(['vapor/required-retarder pass none']);
  });
});

describe('an edition whose tables are not held', () => {
  it('is handed to the reviewer once', async () => {
    const found = await review(at('5A', 'IRC', 2024), PAINTED, STUDS);
    expect(brief(found)).toEqual(['vapor/interior-retarder-class review none']);
    expect(found[0]?.message).toContain('IRC 2024');
  });
});

describe('a project that says nothing', () => {
  it('leaves one open result that names all fields it needs', async () => {
    const found = await review('', PAINTED, STUDS);
    expect(found.map((r) => [r.kind, r.missing])).toEqual([['open', ['project.place.zone', 'project.code']]]);
  });
});

describe('a detail that says almost nothing', () => {
  const places = [
    '',
    at('5A', 'IRC', 2021),
    at('4', 'IBC', 2018),
    at('4A', 'IBC', 2021),
    'code: { title: NBC, edition: 2020 }',
  ];
  it('gets nothing without layers or framing', async () => {
    for (const place of places) {
      expect(await review(place)).toEqual([]);
      expect(await review(place, '{ id: block, material: concrete masonry }')).toEqual([]);
    }
  });
  it('is never a failure of a rule, nor a finding, whatever the family of its layers', async () => {
    // reviewWith throws when a rule does.
    for (const place of places) {
      for (const family of FAMILIES) {
        const layer = (id: string): string => `{ id: ${id}, material: something, family: ${family} }`;
        for (const layers of [
          [layer('a')],
          [layer('a'), STUDS],
          [STUDS, layer('a')],
          [layer('a'), STUDS, layer('b')],
        ]) {
          const found = await review(place, ...layers);
          expect(found.filter((r) => r.kind === 'fail').map((r) => `${place} ${family}: ${r.message}`)).toEqual([]);
        }
      }
    }
  });
});
