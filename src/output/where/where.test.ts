import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { csvField } from '../csv.js';
import { printWhereCsv } from './csv.js';
import { printWhereJson } from './json.js';
import { drawWhereMap } from './map.js';
import { printWhereMarkdown } from './markdown.js';
import { outlines } from './outlines.js';
import { printWhereTerminal } from './terminal.js';
import { cautionsOf, WANTED } from './text.js';
import { CAUTION } from '../report.js';
import { textWidth } from '../text-width.js';
import { BUILT_IN_RULES } from '../../../generated/rules.js';
import { ruleSettings } from '../../engine/settings.js';
import { ANSWERS, strictest, type Answer } from '../../where/answer.js';
import { whereFits, type Where } from '../../where/where.js';
import { readPage } from '../../../tests/support/documents.js';
import { collisions, readXml } from '../../../tests/support/drawings.js';

const ROOT = path.resolve(import.meta.dirname, '../../..');
const FIXTURE = readFileSync(path.join(ROOT, 'fixtures/where/P-1-painted-board.yaml'), 'utf8');
const SETTINGS = ruleSettings(undefined, BUILT_IN_RULES);
const whereOf = async (text: string): Promise<Where> =>
  whereFits((await readPage(text, 'wall.yaml')).detail(), { rules: BUILT_IN_RULES, settings: SETTINGS });

let where: Where;
beforeAll(async () => {
  where = await whereOf(FIXTURE);
});

/** Reads comma-separated values by the grammar of RFC 4180, letter by letter. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let field = '';
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const letter = text[i]!;
    if (quoted) {
      if (letter !== '"') field += letter;
      else if (text[i + 1] === '"') {
        field += '"';
        i++;
      } else quoted = false;
    } else if (letter === '"') {
      if (field !== '') throw new Error(`a quote within a field, at ${i}`);
      quoted = true;
    } else if (letter === ',') {
      row.push(field);
      field = '';
    } else if (letter === '\r') {
      if (text[i + 1] !== '\n') throw new Error(`a lone CR at ${i}`);
      i++;
      rows.push([...row, field]);
      row = [];
      field = '';
    } else if (letter === '\n') throw new Error(`a lone LF at ${i}`);
    else field += letter;
  }
  if (row.length > 0 || field !== '') throw new Error('the last line has no end');
  return rows;
}
const records = (text: string): Record<string, string>[] => {
  const [head = [], ...rows] = readCsv(text);
  return rows.map((row) => {
    expect(row).toHaveLength(head.length);
    return Object.fromEntries(head.map((name, i) => [name, row[i]!]));
  });
};
interface Json {
  readonly zones: { zone: string; spread?: Record<Answer, number> }[];
  readonly counties?: {
    fips: string;
    table?: { answer: Answer; reasons: string[] };
    months?: { answer: Answer; peakKgPerM2?: number; plane?: string; month?: number };
  }[];
  readonly [key: string]: unknown;
}
const json = (wanted: (typeof WANTED)[number] = 'both', by: 'zone' | 'county' = 'county'): Json =>
  JSON.parse(printWhereJson(where, wanted, by)) as Json;

describe('as CSV', () => {
  it('reads back as the answers, a line for each county', () => {
    const rows = records(printWhereCsv(where, 'both', 'county'));
    expect(rows).toHaveLength(3220);
    expect(new Set(rows.map((r) => r['fips'])).size).toBe(3220);
    rows.forEach((row, i) => {
      const { county, zone, station, distanceKm, table, months } = where.counties[i]!;
      // Two spaces of a name become one.
      const text = (value: string | number | undefined): string => String(value ?? '').replace(/ +/g, ' ');
      const kg = (value: number | undefined): string =>
        value === undefined ? '' : String(Math.round(value * 1e4) / 1e4);
      expect(row).toEqual({
        detail: 'P-1',
        fips: county.fips,
        county: county.name,
        state: county.stateCode,
        zone: text(zone),
        station: text(station?.id),
        station_name: text(station?.name),
        distance_km: text(distanceKm),
        table: table.answer,
        table_to_confirm: table.toConfirm === true ? 'yes' : 'no',
        table_reason: table.reasons.join(' '),
        months: months.answer,
        plane: text(months.plane),
        month: text(months.month),
        peak_kg_per_m2: kg(months.peakKgPerM2),
        limit_kg_per_m2: kg(months.limitKgPerM2),
        residual_kg_per_m2: kg(months.residualKgPerM2),
        months_reason: months.reason,
      });
    });
  });
  it('by zone counts the counties of each zone', () => {
    const rows = records(printWhereCsv(where, 'both', 'zone'));
    expect(rows.map((r) => r['zone'])).toEqual(where.zones.map((z) => z.zone));
    for (const row of rows)
      expect(
        ['fit', 'fit_with_conditions', 'over_limit', 'cannot_tell'].reduce((sum, name) => sum + Number(row[name]), 0),
      ).toBe(Number(row['counties']));
  });
  it('gives only the answer that is wanted', () => {
    const head = (wanted: (typeof WANTED)[number]): string => printWhereCsv(where, wanted, 'county').split('\r\n')[0]!;
    expect(head('table')).toBe('detail,fips,county,state,zone,table,table_to_confirm,table_reason');
    expect(head('months')).not.toContain('table');
    expect(head('months')).toContain('distance_km,months,plane');
  });
  it('runs nothing in a spreadsheet', async () => {
    // What begins a formula: see OWASP, CSV injection (from memory).
    for (const text of ['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', ' =1', '\n=1', '\uff1d1'])
      expect(csvField(text)).toMatch(/^'/);
    expect(csvField('a "b", c')).toBe('"a ""b"", c"');
    expect(csvField('=HYPERLINK("a","b")')).toBe(`"'=HYPERLINK(""a"",""b"")"`);
    expect(csvField(-1)).toBe('-1');
    const formula = '=HYPERLINK("a","b"), x';
    const evil = await whereOf(
      FIXTURE.replace('title: Painted', `title: '${formula}' #`).replace('material: plywood', `material: '${formula}'`),
    );
    for (const by of ['county', 'zone'] as const)
      for (const row of records(printWhereCsv(evil, 'both', by)))
        for (const value of Object.values(row)) expect(value).not.toMatch(/^[=+\-@\t\r]/);
    expect(printWhereCsv(evil, 'both', 'zone')).toContain('""=HYPERLINK(""a"",""b""), x""');
  });
});

describe('as JSON', () => {
  it('holds each zone and county with what is known of it', () => {
    const read = json();
    expect(read).toMatchObject({
      format: 'lapwright-where/1',
      detail: { id: 'P-1', file: 'wall.yaml' },
      code: 'IRC 2021',
      caution: CAUTION,
    });
    expect(read.zones).toHaveLength(16);
    expect(read.counties!.map((c) => c.months!.answer)).toEqual(where.counties.map((c) => c.months.answer));
    expect(read['leftOut']).toContainEqual(expect.stringContaining('A typical year is not a design year.'));
  });
  it('leaves out what is not asked', () => {
    expect(json('both', 'zone').counties).toBeUndefined();
    const table = json('table').counties![0]!;
    expect(Object.keys(table)).toEqual(['fips', 'county', 'state', 'zone', 'table']);
    expect(json('months').counties![0]!.table).toBeUndefined();
  });
});

describe('as a map', () => {
  it('draws every county of the outlines once, in the class that the JSON has', () => {
    for (const wanted of WANTED) {
      const answers = new Map(
        json(wanted).counties!.map((c) => [
          c.fips,
          strictest([c.table?.answer, c.months?.answer].filter((a) => a !== undefined)),
        ]),
      );
      const svg = drawWhereMap(where, wanted);
      const drawn = new Map<string, string>();
      for (const [group] of svg.matchAll(/<g data-answer="[^"]*"[\s\S]*?<\/g>/g)) {
        const answer = /data-answer="([^"]*)"/.exec(group)![1]!;
        for (const [, fips] of group.matchAll(/data-fips="(\d{5})"/g)) {
          expect(drawn.has(fips!)).toBe(false);
          drawn.set(fips!, answer);
        }
      }
      expect(drawn.size).toBe(3142);
      for (const [fips, answer] of drawn) expect([fips, answer]).toEqual([fips, answers.get(fips)]);
      // The key counts what is drawn.
      const counts = readXml(svg).flatMap((e) =>
        e.attributes['data-count'] === undefined ? [] : [[e.attributes['data-count'], Number(e.text)] as const],
      );
      const shown = wanted === 'both' ? 'on this map' : wanted === 'table' ? 'by code table' : 'by months';
      for (const answer of ANSWERS)
        expect(new Map(counts).get(`${shown}: ${answer}`)).toBe([...drawn.values()].filter((a) => a === answer).length);
    }
  });
  it('is well formed, with no text on another or off the sheet', () => {
    for (const wanted of WANTED) expect(collisions(drawWhereMap(where, wanted))).toEqual([]);
  });
  it('carries what is left out, the cautions, the sources and the gaps', () => {
    const told = readXml(drawWhereMap(where, 'both'))
      .filter((e) => e.name === 'text')
      .map((e) => e.text)
      .join(' ');
    for (const sentence of cautionsOf('both')) expect(told).toContain(sentence);
    expect(told).toContain('Not for construction.');
    expect(told).toContain('IRC 2021');
    expect(told).toContain('TMY3');
    expect(told).toContain('78 counties of Puerto Rico');
  });
  it('tells the classes apart without color: each but the plain one has marks of its own', () => {
    const marks = [...drawWhereMap(where, 'both').matchAll(/<pattern id="([\w-]+)-on-map"[^>]*>(.*?)<\/pattern>/g)].map(
      ([, id, content]) => [id, content!.replace(/fill="#[0-9a-f]+"/g, '')],
    );
    expect(marks.map(([id]) => id)).toEqual([
      'answer-fits-with-conditions',
      'answer-estimate-over-limit',
      'answer-cannot-tell',
      'answer-does-not-fit',
    ]);
    expect(new Set(marks.map(([, content]) => content)).size).toBe(4);
  });
  it('escapes what documents say, and is the same at each call', async () => {
    const evil = await whereOf(FIXTURE.replace('title: Painted', 'title: <script>alert(1)</script> & Painted'));
    const svg = drawWhereMap(evil, 'both');
    expect(svg).not.toContain('<script');
    readXml(svg);
    expect(drawWhereMap(evil, 'both')).toBe(svg);
  });
  it('gives every county an area, in outlines that meet', () => {
    const { counties, width, height } = outlines();
    expect(counties.size).toBe(3142);
    for (const [fips, d] of counties) {
      let doubled = 0;
      for (const ring of d.split('z').filter((r) => r !== '')) {
        const numbers = ring.match(/-?\d+/g)!.map(Number);
        let [x, y] = [0, 0];
        const points: [number, number][] = [];
        for (let i = 0; i < numbers.length; i += 2) {
          x += numbers[i]!;
          y += numbers[i + 1]!;
          expect(x >= 0 && x <= width && y >= 0 && y <= height, fips).toBe(true);
          points.push([x, y]);
        }
        points.forEach(([px, py], i) => {
          const [qx, qy] = points[(i + 1) % points.length]!;
          doubled += px * qy - qx * py;
        });
      }
      expect(Math.abs(doubled), fips).toBeGreaterThan(0);
    }
  });
});

describe('for readers', () => {
  it('a terminal gets lines that fit, by zone and with reasons', () => {
    const text = printWhereTerminal(where, 'both', 'zone', 80);
    expect(Math.max(...text.split('\n').map(textWidth))).toBeLessThanOrEqual(80);
    expect(text).toMatch(/^1A +fits +fits +12 +0 +0 +0$/m);
    expect(text).toMatch(/^8 +does not fit \* +estimate over limit +0 +0 +7 +0$/m);
    expect(text.replace(/\s+/g, ' ')).toContain('1A, 2A, 2B, 3A, 3B, 3C, 4A, 4B: fits. The interior vapor retarder');
    expect(text).not.toMatch(/\u001b/);
  });
  it('both get the cautions', () => {
    for (const text of [printWhereTerminal(where, 'both', 'zone', 80), printWhereMarkdown(where, 'both', 'zone')])
      for (const sentence of cautionsOf('both')) expect(text.replace(/\s+/g, ' ')).toContain(sentence);
  });
  it('by county there is a row for each', () => {
    expect(printWhereTerminal(where, 'months', 'county').match(/^\d{5} /gm)).toHaveLength(3220);
    expect(printWhereMarkdown(where, 'table', 'county').match(/^\| \d{5} \|/gm)).toHaveLength(3220);
  });
  it('Markdown from documents stays text', async () => {
    const evil = await whereOf(
      FIXTURE.replace('title: Painted', "title: '# <b>x</b> | [a](b)'\nsection: '07 27 26' #"),
    );
    const text = printWhereMarkdown(evil, 'both', 'zone');
    expect(text).toContain('\\# \\<b>x\\</b> | \\[a]\\(b)');
  });
});
