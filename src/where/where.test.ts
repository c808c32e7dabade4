import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { counted, MONTHS_ANSWERS, strictest } from './answer.js';
import { placedIn, tableAnswer, TABLE_RULES, type TableRules } from './code-table.js';
import { whereFits, type InZone } from './where.js';
import { BUILT_IN_RULES } from '../../generated/rules.js';
import { ruleSettings } from '../engine/settings.js';
import type { Detail } from '../model/types.js';
import { readPage } from '../../tests/support/documents.js';

const ASKED: TableRules = { rules: BUILT_IN_RULES, settings: ruleSettings(undefined, BUILT_IN_RULES) };
const STUDS =
  '  - { id: studs, material: mineral wool batt, thickness: 5-1/2 in, rValue: R-21, framing: { material: wood, spacing: 16 in, depth: 5-1/2 in } }';
const OUTSIDE = `  - { id: sheathing, material: plywood, thickness: 1/2 in }
  - { id: paper, material: No. 15 felt }`;
const VENTED = '  - { id: cavity, material: air space, thickness: 3/4 in, drained: true, vented: true }\n';
const SIDING = '  - { id: siding, material: fiber cement panel, thickness: 5/16 in, vented: false }';
const PAINT = '  - { id: board, material: gypsum board, thickness: 1/2 in, finish: latex paint }';
const BARE = '  - { id: board, material: gypsum board, thickness: 1/2 in }';
const POLY = `${PAINT}\n  - { id: film, material: polyethylene sheet }`;

/** A detail of the layers given, inside to outside. */
async function detailOf(layers: readonly string[], project?: string, more = ''): Promise<Detail> {
  const own = project === undefined ? '' : `kind: project\nid: p\ntitle: P\n${project}\n---\n`;
  const named = project === undefined ? '' : 'project: p\n';
  const text = `${own}kind: detail\nid: D\ntitle: D\n${named}wall:\n${layers.join('\n')}\n${more}`;
  return (await readPage(text, 'd.yaml')).detail();
}
const code = (title: string, edition = 2021): string => `code: { title: ${title}, edition: ${edition} }`;
const zonesOf = (detail: Detail, asked = ASKED): Map<string, InZone> =>
  new Map(whereFits(detail, asked).zones.map((z) => [z.zone, z]));
const tables = (zones: Map<string, InZone>, ...names: string[]): string[] =>
  names.map((n) => `${n} ${zones.get(n)!.table.answer}${zones.get(n)!.table.toConfirm === true ? ', to confirm' : ''}`);

describe('by the code table, zone by zone', () => {
  it('polyethylene inside is kept out of the south', async () => {
    const vented = VENTED.trimEnd();
    // IBC 2021 Table 1404.3(2), seen at second hand: class I is not permitted in zones 1 to 4 except marine 4.
    const ibc = zonesOf(await detailOf([POLY, STUDS, OUTSIDE, vented, SIDING], code('IBC')));
    expect(tables(ibc, '1A', '2A', '3C', '4A', '4B')).toEqual(
      ['1A', '2A', '3C', '4A', '4B'].map((z) => `${z} does not fit`),
    );
    expect(tables(ibc, '4C', '5A', '6B', '7', '8')).toEqual(['4C', '5A', '6B', '7', '8'].map((z) => `${z} fits`));
    // IRC 2021 Table R702.7(2): its row of zone 1 was read, the others are quoted from memory.
    const irc = zonesOf(await detailOf([POLY, STUDS, OUTSIDE, vented, SIDING], code('IRC')));
    expect(tables(irc, '1A', '2A', '5A')).toEqual(['1A does not fit', '2A does not fit, to confirm', '5A fits']);
    expect(irc.get('1A')!.table.reasons.join()).toContain('permits class III only');
  });
  it('paint alone fits where it is permitted, and under conditions where cladding must be vented', async () => {
    const vented = zonesOf(await detailOf([PAINT, STUDS, OUTSIDE, VENTED + SIDING], code('IRC')));
    // IRC 2021 Table R702.7(3), seen at second hand: marine 4 and 5 with vented cladding over wood panels.
    expect(tables(vented, '1A', '2A', '4A', '4C', '5A')).toEqual([
      '1A fits',
      '2A fits',
      '4A fits',
      '4C fits with conditions',
      '5A fits with conditions',
    ]);
    const tight = zonesOf(await detailOf([PAINT, STUDS, OUTSIDE, SIDING], code('IRC')));
    expect(tables(tight, '2A', '5A')).toEqual(['2A fits', '5A does not fit, to confirm']);
  });
  it('a finish that is not stated leaves it open and names the field', async () => {
    const zones = zonesOf(await detailOf([BARE, STUDS, OUTSIDE, VENTED + SIDING], code('IBC')));
    expect(tables(zones, '5A')).toEqual(['5A cannot tell']);
    expect(zones.get('5A')!.table.missing).toContain('wall "board": finish');
  });
  it.each([
    [
      'a wall without frame',
      [PAINT, '  - { id: wall, material: concrete, thickness: 8 in }'],
      code('IBC'),
      'none is drawn',
    ],
    ['the Canadian code', [PAINT, STUDS, OUTSIDE, SIDING], code('NBC', 2015), 'The code of the project is Canadian'],
    [
      'an edition that is not held',
      [PAINT, STUDS, OUTSIDE, SIDING],
      code('IBC', 2024),
      'tables of IBC 2024 are not held',
    ],
  ])('%s cannot be told, and why is said', async (_, layers, project, reason) => {
    for (const { table } of zonesOf(await detailOf(layers, project)).values()) {
      expect(table.answer).toBe('cannot tell');
      expect(table.reasons.join()).toContain(reason);
    }
  });
  it('takes the levels and switches of the library', async () => {
    const detail = await detailOf([POLY, STUDS, OUTSIDE, VENTED + SIDING], code('IRC'));
    const settings = { ...ASKED.settings, levelOf: () => 'error' as const };
    expect(tables(zonesOf(detail, { ...ASKED, settings }), '2A')).toEqual(['2A does not fit']);
    const off = { ...ASKED.settings, levelOf: () => 'off' as const };
    expect(zonesOf(detail, { ...ASKED, settings: off }).get('2A')!.table).toMatchObject({ answer: 'cannot tell' });
  });
  it('asks no other rule, and tells of one that breaks', async () => {
    const detail = await detailOf([PAINT, STUDS, OUTSIDE, VENTED + SIDING]);
    expect(TABLE_RULES.every((id) => BUILT_IN_RULES.some((r) => r.id === id))).toBe(true);
    const at = { at: detail.at, title: 'IBC', edition: 2021 } as const;
    const broken = BUILT_IN_RULES.filter((r) => r.id === 'vapor/double-barrier').map((rule) => ({
      ...rule,
      review: () => {
        throw new Error('no more');
      },
    }));
    expect(tableAnswer(detail, '2A', at, { ...ASKED, rules: broken })).toMatchObject({ answer: 'cannot tell' });
    const other = broken.map((r) => ({ ...r, id: 'vapor/permeance-at-film' }));
    expect(tableAnswer(detail, '2A', at, { ...ASKED, rules: [...BUILT_IN_RULES, ...other] }).answer).toBe('fits');
  });
});

describe('what of the project counts', () => {
  it('its place does not, nor do deviations accepted for it', async () => {
    const layers = [POLY, STUDS, OUTSIDE, VENTED + SIDING];
    const free = whereFits(await detailOf(layers, code('IBC')), ASKED);
    const accepted =
      'deviations:\n  - { rule: vapor/interior-retarder-class, reason: Agreed, acceptedBy: architect, until: 2099-01-01 }\n';
    const placed = whereFits(
      await detailOf(layers, `place: { county: Cook, state: IL }\n${code('IBC')}`, accepted),
      ASKED,
    );
    const answers = (where: typeof free): string[] =>
      where.zones.map((z) => `${z.zone} ${z.table.answer} ${z.months.reason}`);
    expect(answers(placed)).toEqual(answers(free));
    const perCounty = (where: typeof free): string[] => where.counties.map((c) => `${c.county.fips} ${c.table.answer}`);
    expect(perCounty(placed)).toEqual(perCounty(free));
    const bristol = await detailOf(layers, `place: { county: "51520" }\n${code('IBC')}`);
    expect(perCounty(whereFits(bristol, ASKED))).toEqual(perCounty(free));
    const at = placedIn(placed.detail, '7', { at: placed.detail.at, title: 'IRC', edition: 2018 });
    expect(at.project).toMatchObject({ zone: { value: '7' }, code: { title: 'IRC', edition: 2018 } });
    expect(at.project?.county).toBeUndefined();
  });
  it('the edition does: it picks the county table', async () => {
    const layers = [PAINT, STUDS, OUTSIDE, VENTED + SIDING];
    const [old, recent] = [
      whereFits(await detailOf(layers, code('IRC', 2018)), ASKED),
      whereFits(await detailOf(layers, code('IRC', 2021)), ASKED),
    ];
    // Coffee, Alabama (01031): 3A in the table of 2015, 2A in that of 2021.
    const coffee = (where: typeof old): string | undefined =>
      where.counties.find((c) => c.county.fips === '01031')?.zone;
    expect([old.year, coffee(old), recent.year, coffee(recent)]).toEqual([2015, '3A', 2021, '2A']);
    expect(old.zones.some((z) => z.zone === '5C')).toBe(false);
    // A second published table has 3B for Alameda, California.
    expect(old.counties.find((c) => c.county.fips === '06001')!.table.reasons.join()).toContain('zone 3B');
    expect(recent.counties.find((c) => c.county.fips === '06001')!.table.reasons.join()).not.toContain('3B');
  });
  it('a project without code is told which was taken', async () => {
    const where = whereFits(await detailOf([PAINT, STUDS, OUTSIDE, VENTED + SIDING]), ASKED);
    expect(where).toMatchObject({ codeText: 'IBC 2021', codeAssumed: true, year: 2021 });
    expect(where.indoor.assumed).toBe(true);
  });
  it('indoor air does: a dry room keeps a wall dry that a damp one wets', async () => {
    const layers = [PAINT, STUDS, OUTSIDE, VENTED + SIDING];
    const fitting = async (humidity: string): Promise<number> =>
      whereFits(
        await detailOf(layers, `${code('IRC')}\nindoor: { temperature: 68 degF, humidity: ${humidity} }`),
        ASKED,
      ).counties.filter((c) => c.months.answer === 'fits').length;
    const [dry, damp] = [await fitting('20 %'), await fitting('50 %')];
    expect(dry).toBeGreaterThan(2 * damp);
    expect(damp).toBeGreaterThan(0);
  });
});

describe('of masonry that stores rain', () => {
  const BRICK = '  - { id: brick, material: clay brick, thickness: 12 in }';
  it('neither answer says that it fits, and both say why', async () => {
    for (const inside of [[POLY], [PAINT]]) {
      const where = whereFits(await detailOf([...inside, STUDS, BRICK], code('IBC')), ASKED);
      for (const { table, months } of [...where.zones, ...where.counties])
        for (const [answer, why] of [
          [table.answer, table.reasons.join()],
          [months.answer, months.reason],
        ] as const) {
          expect(['estimate over limit', 'cannot tell', 'does not fit']).toContain(answer);
          // Counties without zone or station, and zone 4 without its letter, lack more than that.
          if (answer === 'cannot tell' && !/county table|zone 4 stands/.test(why))
            expect(why).toContain('Rain that "brick" stores');
        }
    }
    // IBC 2021 Table 1404.3(2), seen at second hand, permits class I in 4C to 8; masonry full of rain it does not judge.
    const zones = zonesOf(await detailOf([POLY, STUDS, BRICK], code('IBC')));
    expect(tables(zones, '2A', '4C', '6A', '8')).toEqual(['2A does not fit', '4C cannot tell', '6A cannot tell', '8 cannot tell']); // prettier-ignore
  });
});

describe('by the months', () => {
  it('paint alone over R-21 and plywood fits in 1A and 2A and not in 7 and 8', async () => {
    const zones = zonesOf(await detailOf([PAINT, STUDS, OUTSIDE, VENTED + SIDING], code('IRC')));
    for (const zone of ['1A', '2A']) {
      expect(zones.get(zone)!.months).toMatchObject({ answer: 'fits', outcome: 'dry', residualKgPerM2: 0 });
      expect(zones.get(zone)!.spread.fits).toBe(zones.get(zone)!.counties);
    }
    for (const zone of ['7', '8']) {
      const { months, spread, counties } = zones.get(zone)!;
      // What condenses does so on the inner face of the plywood, and is most when the cold ends.
      expect(months).toMatchObject({ answer: 'estimate over limit', plane: 'between studs and sheathing' });
      expect([3, 4, 5]).toContain(months.month);
      expect(spread['estimate over limit']).toBe(counties);
      expect(spread['does not fit']).toBe(0);
    }
    // 3 % of the dry mass of a wood panel (DIN 4108-3, seen at second hand): 0.5 in of plywood at 500 kg/m3
    // (ISO 10456, from memory, confirm) is 6.35 kg/m2.
    expect(zones.get('6A')!.months.limitKgPerM2).toBeCloseTo(0.03 * 6.35, 3);
  });
  it('what hangs on a figure that nobody stated is a condition or cannot be told, with the field named', async () => {
    const where = whereFits(await detailOf([PAINT, STUDS, OUTSIDE, VENTED + SIDING], code('IRC')), ASKED);
    for (const { months } of where.counties) {
      if (months.answer !== 'fits with conditions') continue;
      expect(['dry', 'dries']).toContain(months.outcome);
      expect(months.missing.length).toBeGreaterThan(0);
      expect(months.reason).toContain(months.missing[0]);
    }
    const kinds = counted(where.counties.map((c) => c.months.answer));
    for (const kind of MONTHS_ANSWERS) expect(kinds[kind], kind).toBeGreaterThan(0);
    // Only the table of a code refuses.
    expect(kinds['does not fit']).toBe(0);
  });
  it('a wall without a figure is told everywhere alike', async () => {
    const where = whereFits(
      await detailOf([
        PAINT,
        '  - { id: studs, material: wood studs, framing: { material: wood } }',
        '  - { id: odd, material: some board }',
      ]),
      ASKED,
    );
    const reasons = new Set(where.counties.filter((c) => c.station !== undefined).map((c) => c.months.reason));
    expect(reasons.size).toBe(1);
    expect([...reasons][0]).toContain('"some board" has no generic permeance');
    expect(where.zones[0]!.months).toMatchObject({ answer: 'cannot tell' });
  });
});

describe('the counties', () => {
  const table = readFileSync(path.resolve(import.meta.dirname, '../../data/climate/us-counties.txt'), 'utf8')
    .split('\n')
    .filter((line) => /^\d/.test(line))
    .map((line) => line.split('\t'));
  it('are there once each, with the zone of the table; gaps are named', async () => {
    const where = whereFits(await detailOf([PAINT, STUDS, OUTSIDE, VENTED + SIDING], code('IRC')), ASKED);
    expect(where.counties.map((c) => [c.county.fips, c.zone ?? '', c.station?.id ?? ''])).toEqual(
      table.map(([fips, , , zone, station]) => [fips, zone, station]),
    );
    expect(where.counties.filter((c) => c.zone !== undefined)).toHaveLength(3141);
    const at = (fips: string) => where.counties.find((c) => c.county.fips === fips)!;
    // Kusilvak, Alaska, has neither zone nor station; Bristol, Virginia, has zone 4 without its letter.
    expect(at('02158')).toMatchObject({ table: { answer: 'cannot tell' }, months: { answer: 'cannot tell' } });
    expect(at('51520')).toMatchObject({ zone: '4', table: { answer: 'cannot tell', missing: ['project.place.zone'] } });
    expect(where.gaps.join(' ')).toMatch(/Kusilvak.*78 counties of Puerto Rico.*Bristol city, Virginia/s);
  });
  it('add up to the spread of their zones', async () => {
    const where = whereFits(await detailOf([PAINT, STUDS, OUTSIDE, VENTED + SIDING], code('IRC')), ASKED);
    expect(where.zones.map((z) => z.zone)).toEqual([
      '1A',
      '2A',
      '2B',
      '3A',
      '3B',
      '3C',
      '4A',
      '4B',
      '4C',
      '5A',
      '5B',
      '5C',
      '6A',
      '6B',
      '7',
      '8',
    ]);
    for (const { zone, counties, spread } of where.zones) {
      expect(counties).toBe(table.filter((row) => row[3] === zone).length);
      expect(Object.values(spread).reduce((sum, n) => sum + n, 0)).toBe(counties);
    }
    expect(where.zones.reduce((sum, z) => sum + z.counties, 0)).toBe(3140);
  });
});

describe('amounts of water', () => {
  const inZone7 = async (layers: readonly string[]): Promise<InZone['months']> =>
    zonesOf(await detailOf(layers)).get('7')!.months;
  it('are told in ounces, as in a review: 1 oz/ft2 is 0.305 152 kg/m2 (NIST SP 811)', async () => {
    const found = await inZone7([BARE, STUDS, OUTSIDE, VENTED + SIDING]);
    expect(found.peakKgPerM2).toBeGreaterThan(0.1);
    expect(found.reason).toContain(`${(found.peakKgPerM2! / 0.305152).toFixed(2)} oz/ft2 gather`);
    expect(found.reason).not.toMatch(/lb|kg/);
  });
  it('are told in kilograms on a metric drawing', async () => {
    const metric = [BARE, STUDS, OUTSIDE, VENTED + SIDING].map((layer) =>
      layer.replace(/thickness: [\d/ -]+ in/g, (text) =>
        text.includes('5-1/2') ? 'thickness: 140 mm' : 'thickness: 13 mm',
      ),
    );
    const found = await inZone7(metric);
    expect(found.reason).toContain(`${found.peakKgPerM2!.toFixed(2)} kg/m2 gather`);
  });
});

describe('small parts', () => {
  it('of several answers the strictest holds', () => {
    expect(strictest(['fits', 'fits with conditions'])).toBe('fits with conditions');
    expect(strictest(['cannot tell', 'fits with conditions'])).toBe('cannot tell');
    expect(strictest(['cannot tell', 'does not fit', 'fits'])).toBe('does not fit');
    expect(strictest(['fits', 'estimate over limit'])).toBe('estimate over limit');
    expect(strictest(['does not fit', 'estimate over limit'])).toBe('does not fit');
    expect(strictest([])).toBe('fits');
  });
});
