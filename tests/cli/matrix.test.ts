/** The compliance matrix through the built command, over a small project of its own. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Log } from 'sarif';
import { describe, expect, it } from 'vitest';
import { DEMO, lapwright, scratch } from '../support/command.js';
import { sarifErrors } from '../support/sarif-schema.js';

const SPECIFICATION = `kind: specification
section: "07 27 26"
title: Membranes
requirements:
  - { paragraph: "3.10.A", subject: sill pan, property: sill slope, atLeast: 2 % }
  - { paragraph: "3.2.B", subject: sill pan, property: end dam height, atLeast: 6 in }
  - { paragraph: "3.2.A", subject: opening flashing, property: extension onto wall, atLeast: 6 in }
  - { paragraph: "2.1.A", characteristic: elongation, atLeast: 300 %, method: ASTM D412 }
  - { paragraph: "1.5", text: "Keep the membrane dry | until covered." }
  - { paragraph: "3.3", subject: field membrane, property: lap, atLeast: 2 in, confirmed: false }
  - { paragraph: "3.4", subject: sill pan, property: extension past jambs, atLeast: 8 in, when: { zones: ["8"] } }
`;
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
  - { id: pan, place: sill, of: w, product: flash, ontoWall: 6 in, pastJambs: 6 in, intoOpening: full, slope: 6 %, endDams: 2 in }
  - { id: jambs, place: jambs, of: w, product: flash, ontoWall: 4 in, intoOpening: full }
  - { id: head, place: head, of: w, product: flash, ontoWall: 6 in, pastJambs: 6 in, intoOpening: full }
  - { id: field, place: field, layer: membrane, lapsOnto: { opening flashing: 2 in } }
deviations:
  - { rule: extension/end-dams, reason: The frame leaves no more., acceptedBy: architect of record }
`;
const PRODUCTS = `kind: product
id: coat
name: Coating
family: fluid-applied membrane
---
kind: product
id: flash
name: Flashing
family: fluid-applied flashing
`;

const LIBRARY = scratch({
  'lapwright.yaml': 'kind: settings\ndocuments: [products.yaml]\n',
  'project.yaml': 'kind: project\nid: p\ntitle: P\nplace: { zone: 5A }\ndocuments: [specification.yaml]\n',
  'specification.yaml': SPECIFICATION,
  'products.yaml': PRODUCTS,
  'detail.yaml': DETAIL,
});
const BARE = scratch({ 'detail.yaml': DETAIL.replace('project: project.yaml\n', '') });

async function matrix(format: string, folder = LIBRARY): Promise<string> {
  const { status, out, err } = await lapwright(['matrix', '.', '--format', format, '--date', '2026-03-02'], {
    cwd: folder,
  });
  expect(err).toBe('');
  expect(status).toBe(0);
  return out;
}

describe('the compliance matrix', () => {
  it('has a row for each requirement, in the order of the section, whether or not a check holds it', async () => {
    const rows = (await matrix('markdown'))
      .split('## For the reviewer')[0]!
      .split('\n')
      .filter((line) => /^\| \d/.test(line))
      .map((line) => line.split(/(?<!\\)\|/).map((cell) => cell.trim()));
    expect(rows.map((cells) => [cells[1], cells[3]])).toEqual([
      ['1.5', 'for the reviewer'],
      ['2.1.A', 'for the reviewer'],
      ['3.2.A', '**does not comply**'],
      ['3.2.B', expect.stringMatching(/does not comply|deviation accepted/)],
      ['3.3', 'for the reviewer'],
      ['3.4', 'for the reviewer'],
      ['3.10.A', 'complies'],
    ]);
    expect(rows[2]![4]).toContain('D-1: 4 in');
    expect(rows[0]![2]).toContain('dry \\| until');
  });

  it('says why a person has to look', async () => {
    const [, reviewer] = (await matrix('markdown')).split('## For the reviewer');
    expect(reviewer).toContain('No check knows this characteristic');
    expect(reviewer).toContain('Its condition holds for no detail');
    expect(reviewer).toContain('It is in words');
  });

  it('is a table that fits 80 cells where no format is named', async () => {
    const { out, status, err } = await lapwright(['matrix', '.', '--date', '2026-03-02'], { cwd: LIBRARY });
    expect([status, err]).toEqual([0, '']);
    expect(out.split('\n').filter((line) => line.length > 80)).toEqual([]);
    const lines = out.split('\n');
    const head = lines.find((line) => line.startsWith('Paragraph'))!;
    expect(head.split(/ {2,}/)).toEqual(['Paragraph', 'Requirement', 'Provided', 'Result']);
    // Each cell of a row stands under the head of its column.
    const row = lines.find((line) => line.startsWith('3.2.A '))!;
    const under = (name: string): string => row.slice(head.indexOf(name));
    expect(under('Requirement')).toMatch(/^extension onto wall/);
    expect(under('Provided')).toMatch(/^D-1: 4 in/);
    expect(under('Result')).toBe('does not comply');
    const paragraphs = lines.slice(lines.indexOf(head) + 1).flatMap((line) => /^\d[^ ]*/.exec(line)?.[0] ?? []);
    expect(paragraphs).toEqual(['1.5', '2.1.A', '3.2.A', '3.2.B', '3.3', '3.4', '3.10.A']);
    const [, places = ''] = out.split('To correct or to answer\n');
    expect(places).toMatch(/^ {2}3\.2\.A, D-1: detail\.yaml:12:\d+$/m);
    expect(out).toContain('For the reviewer');
    expect(out).toContain('An aid to review');
    expect(await matrix('terminal')).toBe(out);
  });

  it('is Markdown in a file for which no format is named', async () => {
    const file = path.join(scratch({}), 'matrix.md');
    await lapwright(['matrix', '.', '--output', file, '--date', '2026-03-02'], { cwd: LIBRARY });
    expect(readFileSync(file, 'utf8')).toBe(await matrix('markdown'));
  });

  it('is CSV with a line for each requirement and detail that answers it', async () => {
    const lines = (await matrix('csv')).trimEnd().split('\r\n');
    expect(lines[0]).toContain('paragraph,requirement');
    expect(lines.filter((l) => l.includes(',3.2.A,')).length).toBe(1);
    expect(lines.length).toBe(8);
  });

  it('is SARIF in which every paragraph is a taxon and every requirement has a result', async () => {
    const log = JSON.parse(await matrix('sarif')) as Log;
    expect(sarifErrors(log)).toBe('');
    const run = log.runs[0]!;
    // Of the whole review: an error that answers no requirement still counts.
    const reviewed = await lapwright(['review', '.', '--format', 'json', '--date', '2026-03-02'], { cwd: LIBRARY });
    const { suggestedAction } = JSON.parse(reviewed.out) as { suggestedAction: string };
    expect(run.properties?.['suggestedAction']).toBe(suggestedAction);
    const taxa = run.taxonomies?.find((t) => t.name === 'specification')?.taxa?.map((t) => t.id) ?? [];
    for (const paragraph of ['1.5', '2.1.A', '3.2.A', '3.2.B', '3.3', '3.4', '3.10.A'])
      expect(taxa).toContain(`Section 07 27 26, ${paragraph}`);
    const answered = new Set(run.results?.flatMap((r) => r.taxa?.map((t) => t.id) ?? []));
    expect([...answered].filter((id) => id?.startsWith('Section ') === true).length).toBe(7);
    expect(run.results?.filter((r) => r.ruleId === 'requirement/for-the-reviewer').map((r) => r.kind)).toEqual([
      'review',
      'review',
      'review',
    ]);
  });

  it('is a page without scripts in HTML', async () => {
    const html = await matrix('html');
    expect(html).toContain('<h1>Compliance matrix</h1>');
    expect(html).not.toContain('<script');
  });

  it('has a row for each thing to be submitted, with what the submittal contains for it', async () => {
    const { out } = await lapwright([
      'matrix',
      path.join(DEMO, 'submittal-07-27-26-03.md'),
      '--format',
      'markdown',
      '--date',
      '2026-03-02',
    ]);
    const row = (paragraph: string): string =>
      out.split('\n').find((line) => line.startsWith(`| ${paragraph} |`)) ?? '';
    expect(row('1.3.C')).toContain(
      'submit test reports (air leakage of the assembly, ASTM E2357) | **does not comply**',
    );
    expect(row('1.3.D')).toContain(
      '| received; content for the reviewer | 07 27 26-03: Membrane with flashing and transition membrane',
    );
    expect(row('1.3.F')).toContain('(not confirmed) | for the reviewer |');
    // Without the submittal the same rows stand, unanswered.
    const { out: bare } = await lapwright([
      'matrix',
      path.join(DEMO, 'details/W-1-flanged-window.yaml'),
      '--format',
      'markdown',
    ]);
    expect(bare).toContain('| for the reviewer | No submittal under review answers it. |');
  });

  it('says that nothing was asked where no specification is in reach', async () => {
    expect(await matrix('markdown', BARE)).toContain('No specification within reach of 1 detail holds a requirement.');
  });
});

/** The flashing of D-2 is done after its sheet, so nothing answers what is asked of the lap of the field. */
const SILENT = scratch({
  'lapwright.yaml': 'kind: settings\ndocuments: [products.yaml]\n',
  'project.yaml': 'kind: project\nid: p\ntitle: P\nplace: { zone: 5A }\ndocuments: [specification.yaml]\n',
  'specification.yaml': `kind: specification
section: "07 27 26"
title: Membranes
requirements:
  - { paragraph: "3.3", subject: field membrane, property: lap, atLeast: 2 in }
`,
  'products.yaml': `${PRODUCTS}---\nkind: product\nid: sheet\nname: Sheet\nfamily: self-adhered membrane\n`,
  'd-1.yaml': DETAIL,
  'd-2.yaml': DETAIL.replace('D-1', 'D-2')
    .replace('product: coat', 'product: sheet')
    .replace(/ {2}- \{ id: field.*\n/, '')
    .replace('work:\n', 'work:\n  - { id: field, place: field, layer: membrane }\n'),
});

describe('a detail that says nothing of a requirement', () => {
  it('is named beside those that comply, and the requirement is in question', async () => {
    const row = (await matrix('markdown', SILENT)).split('\n').find((l) => l.startsWith('| 3.3 '));
    expect(row).toContain('| question |');
    expect(row).toContain('D-1: 2 in');
    expect(row).toContain('D-2: not shown');
    const lines = (await matrix('csv', SILENT)).trimEnd().split('\r\n');
    expect(lines.some((l) => l.includes(',D-2,open,') && l.includes('does not say'))).toBe(true);
  });
});

describe('the matrix of the demo submittal', () => {
  const rows = async (): Promise<Map<string, string>> => {
    const { out } = await lapwright(
      ['matrix', 'submittal-07-27-26-03.md', '--format', 'markdown', '--date', '2026-01-15'],
      { cwd: DEMO },
    );
    const lines = out.split('## For the reviewer')[0]!.split('\n');
    return new Map(lines.filter((l) => /^\| \d/.test(l)).map((l) => [l.split('|')[1]!.trim(), l]));
  };
  it('says of a document that it came, and not that its content complies', async () => {
    const of = await rows();
    for (const paragraph of ['1.3.B', '1.3.D']) {
      expect(of.get(paragraph)).toContain('received; content for the reviewer');
      expect(of.get(paragraph)).not.toContain('complies');
    }
  });
  it('counts product data that are missing for one product against the paragraph that asks for them', async () => {
    expect((await rows()).get('1.3.A')).toMatch(/does not comply.*no product data of interior-sealant/);
  });
  it('does not drop the detail whose flashing lies over the field', async () => {
    expect((await rows()).get('3.3.A')).toMatch(/does not comply.*N-2: flashing over the field/);
  });
});
