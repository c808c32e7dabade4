/** The answer of a county is that of reviewing the detail with a project in it. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { BUILT_IN_RULES } from '../generated/rules.js';
import { allCounties } from '../src/climate/counties.js';
import { ruleSettings } from '../src/engine/settings.js';
import { wallYearOf } from '../src/moisture/wall/of-detail.js';
import { TABLE_RULES } from '../src/where/code-table.js';
import { whereFits, type InCounty } from '../src/where/where.js';
import { readPage, reviewWith } from './support/documents.js';

const FIXTURE = readFileSync(path.join(import.meta.dirname, '../fixtures/where/P-1-painted-board.yaml'), 'utf8');
const POLY = FIXTURE.replace(
  'finish: latex paint }',
  'finish: latex paint }\n  - { id: film, material: polyethylene sheet }',
).replace('title: IRC', 'title: IBC');
const UNSAID = FIXTURE.replace(', finish: latex paint', '').replace(', vented: true', '');
const RULES = BUILT_IN_RULES.filter((r) => TABLE_RULES.includes(r.id));
/** Every 120th county, and the odd ones: two cities with a county of their name, gaps, Alaska, Hawaii. */
const SAMPLE = [
  ...allCounties()
    .filter((_, i) => i % 120 === 7)
    .map((c) => c.fips),
  '24005',
  '24510',
  '02158',
  '51520',
  '02020',
  '15003',
];

describe.each([
  ['paint inside, IRC', FIXTURE],
  ['polyethylene inside, IBC', POLY],
  ['finish and venting not stated, IRC', UNSAID],
])('%s', (_, text) => {
  it('has in each county of a sample the answer of a review there', async () => {
    const where = whereFits((await readPage(text, 'wall.yaml')).detail(), {
      rules: BUILT_IN_RULES,
      settings: ruleSettings(undefined, BUILT_IN_RULES),
    });
    const byFips = new Map(where.counties.map((c) => [c.county.fips, c]));
    for (const fips of SAMPLE) {
      const placed = text.replace(/^code:/m, `place: { county: "${fips}" }\ncode:`);
      const detail = (await readPage(placed, 'wall.yaml')).detail();
      const one = byFips.get(fips) as InCounty;
      const results = reviewWith(detail, RULES);
      const errors = results.filter((r) => r.kind === 'fail' && r.level === 'error');
      const open = results.filter((r) => r.kind === 'open');
      // A breach of a table that was not read in the code is a warning, and the answer is to be confirmed.
      const breaches = results.filter((r) => r.kind === 'fail' && r.sources?.[0]?.basis === 'code');
      expect([fips, one.table.answer === 'does not fit'], fips).toEqual([fips, breaches.length > 0]);
      expect(one.table.toConfirm === true, fips).toBe(breaches.length > 0 && errors.length === 0);
      expect(one.table.answer === 'cannot tell', fips).toBe(breaches.length === 0 && open.length > 0);
      expect(one.table.answer === 'fits', fips).toBe(
        results.every((r) => r.kind === 'pass' && !/class-(three|two)/.test(r.ruleId)),
      );
      // A zone that the table lacks is told in other words than a zone that nobody stated.
      if (one.zone !== undefined)
        for (const reason of one.table.reasons) expect(results.map((r) => r.message)).toContain(reason);

      const year = wallYearOf(detail);
      if (year.kind === 'not followed') {
        expect(one.months.answer, fips).toBe('cannot tell');
        continue;
      }
      const { kind, typical, hangsOn } = year.judgement;
      const accepted = typical.outcome === 'dry' || typical.outcome === 'dries';
      expect(one.months, fips).toMatchObject({
        answer:
          kind === 'accepted'
            ? 'fits'
            : kind === 'refused'
              ? 'estimate over limit'
              : accepted
                ? 'fits with conditions'
                : 'cannot tell',
        missing: hangsOn,
        outcome: typical.outcome,
        residualKgPerM2: typical.year.residualKgPerM2,
      });
      expect([one.months.plane, one.months.month]).toEqual([typical.worst?.plane.name, typical.worst?.month]);
      expect([one.station?.id, one.distanceKm]).toEqual([year.climate.station.id, year.climate.distanceKm]);
    }
  });
});
