/** `lapwright requirements` through the built command, and what a review makes of what it prints. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { lapwright, review, scratch } from '../support/command.js';
import type { Ran } from '../support/command.js';

const PLAIN = `SECTION 07 27 26 - AIR BARRIERS

PART 3 - EXECUTION

3.1 FLASHING

A. Extend liquid flashing of openings at least 6 inches onto the wall.
B. Film thickness: 40 mils.
C. Use mesh from row 12.
`;
const MARKDOWN = PLAIN.replace('SECTION', '# SECTION')
  .replace('PART 3', '## PART 3')
  .replace('3.1 ', '### 3.1 ')
  .replace('at least', 'at **least**');
const PROPOSED = 'atLeast: "6 in"';

const FOLDER = scratch({
  's.txt': PLAIN,
  's.md': MARKDOWN,
  'no-number.txt': 'Lap at least 3 inches.\n',
  'empty.txt': ' \n',
});
const read = (args: readonly string[], input?: string | Buffer): Promise<Ran> =>
  lapwright(['requirements', ...args], { cwd: FOLDER, ...(input === undefined ? {} : { input }) });

describe('lapwright requirements', () => {
  it.each(['s.txt', 's.md'])('reads %s', async (name) => {
    const { status, out, err } = await read([name]);
    expect([status, err]).toEqual([0, '']);
    expect(out).toContain('section: "07 27 26"\ntitle: "AIR BARRIERS"');
    expect(out).toContain('  - paragraph: "3.1.A"\n    confirmed: false\n    property: extension onto wall\n');
    expect(out).toContain(PROPOSED);
    expect(out).toContain('# 8:20 3.1.B, no comparator: ');
    expect(out).toContain('# 9:22 3.1.C, 12: no unit');
  });

  it('reads standard input, as Markdown when it has headings', async () => {
    expect((await read(['-'], PLAIN)).out).toContain(PROPOSED);
    const { out } = await read(['-'], MARKDOWN);
    expect(out).toContain('text: "Extend liquid flashing of openings at least 6 inches onto the wall."');
  });

  it('prints JSON with places, values and counts', async () => {
    const { out } = await read(['s.txt', '--format', 'json']);
    expect(JSON.parse(out)).toMatchObject({
      section: '07 27 26',
      requirements: [{ line: 7, column: 48, number: '3.1.A', compare: 'atLeast', value: { text: '6 in' } }],
      questions: [{ line: 8, kind: 'no comparator' }],
      passedOver: [{ line: 9, value: { text: '12' }, reason: 'no unit' }],
      counts: { proposals: 1, questions: 1, passedOver: 1 },
    });
  });

  it('prints Markdown whose block is the document', async () => {
    const { out } = await read(['s.txt', '--format', 'markdown']);
    expect(out).toContain('```yaml specification\n');
    expect(out).toContain('## Questions to ask');
    expect(out).toContain('## Numbers passed over');
  });

  it('takes number and title from the options, before those of the text', async () => {
    const { out } = await read(['no-number.txt', '--section', '07 92 00', '--title', 'Sealants', '--format', 'json']);
    expect(JSON.parse(out)).toMatchObject({ section: '07 92 00', title: 'Sealants' });
  });

  it('writes to a file and prints nothing', async () => {
    const { status, out } = await read(['s.txt', '--output', 'out.yaml']);
    expect([status, out]).toEqual([0, '']);
    expect(readFileSync(path.join(FOLDER, 'out.yaml'), 'utf8')).toContain(PROPOSED);
  });
});

describe('what cannot be read is an error with what to do, and exit status 2', () => {
  it.each([
    [['missing.txt'], /"missing\.txt"/],
    [['empty.txt'], /"empty\.txt" is empty/],
    [[], /Name one file/],
    [['s.txt', 's.md'], /Name one file/],
    [['no-number.txt'], /does not say which section.*--section/],
    [['no-number.txt', '--section', '7'], /three pairs of digits/],
    [['no-number.txt', '--section', '07 92 00'], /no title.*--title/],
    [['s.txt', '--format', 'html'], /html/],
    [['.'], /"\."/],
  ] as const)('%j', async (args, message) => {
    const { status, out, err } = await read(args);
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(message);
    expect(err).not.toMatch(/\n\s+at /);
  });

  it('bytes that are no text', async () => {
    const bytes = Buffer.from([0x00, 0xff, 0xfe, 0x00, 0x81, 0x00, 0x50, 0x4b]);
    writeFileSync(path.join(FOLDER, 'binary.txt'), bytes);
    for (const ran of [await read(['binary.txt']), await read(['-'], bytes)]) {
      expect([ran.status, ran.out]).toEqual([2, '']);
      expect(ran.err).toMatch(/binary\.txt|Standard input/);
    }
  });

  it('a text longer than any section', async () => {
    const { status, err } = await read(['-'], `${PLAIN}${'Lap at least 3 inches. '.repeat(50_000)}`);
    expect(status).toBe(2);
    expect(err).toMatch(/characters; a section has at most 1000000/);
  });

  it('and nothing is written', async () => {
    await read(['no-number.txt', '--output', 'never.yaml']);
    expect(existsSync(path.join(FOLDER, 'never.yaml'))).toBe(false);
  });
});

describe('a printed document in a review', () => {
  const DETAIL = `kind: detail
id: D-1
title: Window
project: project.yaml
wall:
  - { id: sheathing, material: plywood, thickness: 1/2 in }
  - { id: membrane, product: coat }
openings:
  - { id: w, roughOpening: { width: 36 in, height: 48 in, depth: 5-1/2 in } }
work:
  - { id: pan, place: sill, of: w, product: flash, ontoWall: 4 in, pastJambs: 6 in, intoOpening: full, slope: 6 %, endDams: 6 in }
  - { id: jambs, place: jambs, of: w, product: flash, ontoWall: 4 in, intoOpening: full }
  - { id: head, place: head, of: w, product: flash, ontoWall: 4 in, pastJambs: 6 in, intoOpening: full }
  - { id: field, place: field, layer: membrane, lapsOnto: { opening flashing: 2 in } }
`;
  const PRODUCTS =
    'kind: product\nid: coat\nname: Coating\nfamily: fluid-applied membrane\n---\nkind: product\nid: flash\nname: Flashing\nfamily: fluid-applied flashing\n';
  interface Log {
    readonly runs: readonly {
      readonly results: readonly {
        readonly ruleId: string;
        readonly kind: string;
        readonly level: string;
        readonly message: { readonly text: string };
      }[];
    }[];
  }

  /** Kind and level of each result that speaks of the paragraph. */
  async function told(specification: string): Promise<string[]> {
    const folder = scratch({
      'lapwright.yaml': 'kind: settings\ndocuments: [products.yaml]\n',
      'project.yaml': 'kind: project\nid: p\ntitle: P\nplace: { zone: 5A }\ndocuments: [specification.yaml]\n',
      'products.yaml': PRODUCTS,
      'specification.yaml': specification,
      'detail.yaml': DETAIL,
    });
    const { out, err } = await review(['.', '--format', 'sarif', '--fail-on', 'never'], { cwd: folder });
    expect(err).toBe('');
    const results = (JSON.parse(out) as Log).runs.flatMap((run) => run.results);
    return [
      ...new Set(
        results.filter(({ message }) => message.text.includes('3.1.A')).map(({ kind, level }) => `${kind} ${level}`),
      ),
    ].sort();
  }

  it('fails nothing while nobody has confirmed it, and is held once somebody has', async () => {
    const { out } = await read(['s.txt']);
    expect(await told(out)).toEqual(['review none']);
    expect(await told(out.replaceAll('    confirmed: false\n', ''))).toContain('fail error');
  });

  it('is read without a problem, whatever the section', async () => {
    for (const name of ['07-27-26.txt', 'own-lettered.txt', 'own-tables.md']) {
      const source = path.join(import.meta.dirname, '../data/requirements', name);
      const { out, err } = await read([source]);
      expect(err).toBe('');
      const folder = scratch({
        'lapwright.yaml': 'kind: settings\ndocuments: [products.yaml]\n',
        'project.yaml': 'kind: project\nid: p\ntitle: P\nplace: { zone: 5A }\ndocuments: [specification.yaml]\n',
        'products.yaml': PRODUCTS,
        'specification.yaml': out,
        'detail.yaml': DETAIL,
      });
      const ran = await review(['.', '--format', 'sarif', '--fail-on', 'never'], { cwd: folder });
      expect([ran.status, ran.err], name).toEqual([0, '']);
      const results = (JSON.parse(ran.out) as Log).runs.flatMap((run) => run.results);
      expect(results.filter(({ ruleId }) => ruleId.startsWith('document/'))).toEqual([]);
      expect(results.filter(({ ruleId }) => ruleId === 'requirement/not-confirmed').length, name).toBeGreaterThan(0);
    }
  });
});
