/** The letter that a review of a submittal begins with: what it says, in which order, and that nothing breaks it. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Nodes, Root } from 'mdast';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { describe, expect, it } from 'vitest';
import { runReview, withPages } from '../src/cli/run.js';
import { printHtml } from '../src/output/html/report.js';
import { printMarkdown } from '../src/output/markdown.js';
import { countResults, errorsToDecide, suggestedAction } from '../src/output/report.js';
import { countsText } from '../src/output/terminal.js';
import type { Review } from '../src/output/report.js';
import { readMarkup } from './support/markup.js';
import { DEMO, review as runCommand, ROOT, scratch } from './support/command.js';

const TEXT = readFileSync(path.join(ROOT, 'tests/data/letter/submittal.md'), 'utf8');
/** Enough rules for every chapter, and few enough that the letter does not change with the others. */
const KEPT =
  /^(?:submittal\/(?!record|material|conditions|water|standard)|deviation\/|substitution\/|extension\/onto-wall|sill\/back-dam-height)/;

async function reviewOf(text: string, today = '2026-01-15'): Promise<Review> {
  const cwd = scratch({ 'submittal.md': text });
  const options = { packs: [], allowPacks: false, today, skipOthers: false, dependents: false };
  const { review } = await runReview({ inputs: ['submittal.md'], cwd, ...options });
  expect(review.results.filter((r) => r.ruleId.startsWith('document/')).map((r) => r.message)).toEqual([]);
  return withPages({ ...review, results: review.results.filter((r) => KEPT.test(r.ruleId)) });
}

const review = await reviewOf(TEXT);
const letter = printMarkdown(review);
const chapterOf = (markdown: string, title: string): string =>
  new RegExp(`^## ${title}\\n([^]*?)(?=^## )`, 'm').exec(markdown)?.[1] ?? '';

describe('the review letter', () => {
  it('reads as it did', async () => {
    const golden = fileURLToPath(new URL('golden/output/letter.md.txt', import.meta.url));
    await expect(letter).toMatchFileSnapshot(golden);
  });

  it('opens with the facts of the submittal and suggests, without approving', () => {
    const before = letter.split('## To be corrected')[0] ?? '';
    for (const words of [
      '# Review of submittal 07 27 26-04, revision 1',
      'Annex to a public library',
      '07 27 26, Fluid-applied membrane air barriers',
      '2026-01-12, from the contractor, to the architect of record',
      '**Reviewed**: 2026-01-15',
      '07 27 26-04, revision 0',
      'A-1, A-2, A-3',
      '**Suggested action: Revise and resubmit**',
      "The stamp is the reviewer's.",
    ])
      expect(before).toContain(words);
    expect(letter).not.toMatch(/\bapproved\b/i);
  });

  it('has its chapters in the order of what is to be done', () => {
    expect([...letter.matchAll(/^## (.+)$/gm)].map((m) => m[1])).toEqual([
      'Comments and replies',
      'To be corrected',
      'Questions',
      'For the reviewer to judge',
      'Deviations and substitutions',
      'What was checked',
      'Where to change the documents',
      'A-1 Reading room window',
      'A-2 Stair window',
      '07 27 26-04 Windows of the reading rooms',
      'For information',
      'What passed',
      'Rules used and their sources',
      'Caution',
    ]);
  });

  it('begins with one line for each comment, by detail, with room for the reply', () => {
    const table = chapterOf(letter, 'Comments and replies');
    expect(table).toContain('| Detail | No. | Comment | Level | Reply |');
    expect(table).toMatch(
      /\| A-1 \| 1 \| Flashing reach onto the wall, left and right jamb of window: 5 in; required: at least 6 in \| error \| \|/,
    );
    expect(table).toMatch(/\| A-2 \| 1 \| Flashing reach onto the wall, [^|]*4 in[^|]*\| error \| \|/);
    // What is accepted asks for nothing.
    expect(table).not.toContain('A-3');
  });

  it('tells each comment once, left and right together, under the number of its line', () => {
    const corrections = chapterOf(letter, 'To be corrected');
    expect(corrections.match(/Flashing reach onto the wall/g)).toHaveLength(2);
    expect(corrections).toContain(
      '- **1. Flashing reach onto the wall** (error). Flashing at the left jamb of window reaches 5 in onto the wall; at least 6 in is required (Section 07 27 26, 3.2.B.1). The same on the right. Widen the jamb flashing to at least 6 in.',
    );
  });

  it('tells errors before warnings in each detail', () => {
    for (const detail of chapterOf(letter, 'To be corrected').split(/^### /m).slice(1)) {
      const levels = [...detail.matchAll(/\*\* \((error|warning|note)\)/g)];
      const order = levels.map((m) => ['error', 'warning', 'note'].indexOf(m[1] ?? ''));
      expect(order.length).toBeGreaterThan(0);
      expect(order).toEqual([...order].sort());
    }
  });

  it('speaks of no field, no line and no check before the table of places', () => {
    const said = letter.split('## Where to change the documents')[0] ?? '';
    expect(said).not.toMatch(/submittal\.md:\d|ontoWall|sentWith|answers:|waterTest|extension\/|submittal\/|\(.?"/);
    const places = chapterOf(letter, 'Where to change the documents');
    expect(places).toContain('| A-1 | 1 | `submittal.md:68` | Widen "jambs" to at least 6 in ("ontoWall"). |');
    expect(places).toContain('openings.unit.waterTest');
  });

  it('leaves a declared deviation to the reviewer, and holds it against nobody before', async () => {
    const declared = TEXT.replace('    acceptedBy: architect of record\n    until: 2026-06-30\n', '');
    expect(declared).not.toBe(TEXT);
    const told = printMarkdown(await reviewOf(declared));
    expect(chapterOf(told, 'To be corrected')).not.toContain('### A-3');
    expect(chapterOf(told, 'Comments and replies')).toMatch(/\| A-3 \| 1 \| Flashing reach[^|]*\| to decide \|/);
    expect(chapterOf(told, 'For the reviewer to judge')).toMatch(
      /\*\*A-3, 1\. Flashing reach onto the wall\*\*.*Declared as deviation DEV-1: The precast surround leaves 5 in\./,
    );
  });

  it('counts so that the rows add up, a declared deviation in a row of its own', async () => {
    const review = await reviewOf(TEXT.replace('    acceptedBy: architect of record\n    until: 2026-06-30\n', ''));
    const { errors, warnings, notes } = countResults(review.results);
    const rows = new Map(
      [...chapterOf(printMarkdown(review), 'What was checked').matchAll(/^\| ([^|]+) \| (\d+) \| (\d+) \|$/gm)].map(
        ([, name = '', comments, results]) => [name, [Number(comments), Number(results)]] as const,
      ),
    );
    expect([...rows.keys()]).toEqual([
      'Errors',
      'Warnings',
      'Notes',
      'Declared deviations, for the reviewer to decide',
    ]);
    expect([...rows.values()].reduce((sum, [, results]) => sum + results, 0)).toBe(errors + warnings + notes);
    // Left and right jamb of A-3, and that nobody accepted it; 4 errors are to be corrected without them.
    expect(rows.get('Declared deviations, for the reviewer to decide')).toEqual([1, 3]);
    expect(rows.get('Errors')?.[1]).toBe(4);
    expect(countsText(countResults(review.results), errorsToDecide(review.results))).toMatch(
      /^6 errors \(2 declared as a deviation, for the reviewer to decide\), /,
    );
    expect(suggestedAction(review).because).toMatch(/^4 errors found.*, 1 declared deviation among them$/);
  });

  it('leaves to the reviewer to verify what the sender states as accepted', () => {
    const judged = chapterOf(letter, 'For the reviewer to judge');
    expect(judged).toContain(
      '**A-3**: Deviation DEV-1 is stated as accepted by architect of record until 2026-06-30; verify.',
    );
    expect(chapterOf(letter, 'To be corrected')).not.toContain('### A-3');
  });

  it('believes no acceptance by a role that may not accept, and says so', async () => {
    const told = printMarkdown(
      await reviewOf(TEXT.replace('acceptedBy: architect of record', 'acceptedBy: window installer')),
    );
    expect(chapterOf(told, 'For the reviewer to judge')).toMatch(
      /Declared as deviation DEV-1: .* It is stated as accepted by window installer, who may not accept it; architect, /,
    );
    expect(chapterOf(told, 'Deviations and substitutions')).toMatch(
      /DEV-1 .*declared, not accepted: window installer may not accept it/,
    );
    expect(told).not.toContain('Accepted, so not counted above');
  });

  it('asks each question once, of the one who answers, and why it matters', () => {
    const questions = chapterOf(letter, 'Questions')
      .split(/^(?=\d+\. )/m)
      .slice(1);
    const dam = questions.filter((q) => q.includes('The back dam of window is 1 in'));
    expect(dam).toHaveLength(1);
    expect(dam[0]).toMatch(/^\d+\. \*\*For the contractor\*\*, on A-1, A-2: /);
    expect(dam[0]).toContain('Why it matters: ');
  });

  it('says how each deviation and substitution stands, and which differences nobody declared', () => {
    const table = chapterOf(letter, 'Deviations and substitutions');
    expect(table).toMatch(/Deviation DEV-1 \| 3\.2\.B\.1 \| A-3 \|.*accepted by architect of record until 2026-06-30/);
    expect(table).toMatch(/Deviation DEV-2 \| 3\.9\.A \| A-1 \|.*declared, not accepted; covers no finding/);
    expect(table).toMatch(/Difference \| 3\.2\.B\.1 \| A-1, A-2 \|.*not declared/);
    expect(table).toMatch(/Substitution SUB-1 \| flashing-strip to liquid-flashing \|.*requested, not accepted/);
    expect(table).toContain('Accepted, so not counted above');
  });

  it('follows the calendar: what ended stands again', async () => {
    const later = printMarkdown(await reviewOf(TEXT, '2026-07-01'));
    expect(chapterOf(later, 'Deviations and substitutions')).toContain(
      'accepted by architect of record; ended on 2026-06-30',
    );
    expect(chapterOf(later, 'Comments and replies')).toMatch(/\| A-3 \| 1 \| [^|]*5 in[^|]*\| error \|/);
  });

  it('counts no accepted breach and asks for nothing where nothing is wrong', async () => {
    const good = TEXT.replaceAll('ontoWall: 5 in', 'ontoWall: 6 in').replace(
      'ontoWall: 4 in, pastJambs',
      'ontoWall: 6 in, pastJambs',
    );
    const table = chapterOf(printMarkdown(await reviewOf(good)), 'Deviations and substitutions');
    expect(table).not.toContain('Difference');
    expect(table).toMatch(/DEV-1.*covers no finding/);
  });
});

const all = (node: Nodes): Nodes[] => [node, ...('children' in node ? node.children.flatMap(all) : [])];
const shape = (markdown: string): string[] => {
  const tree: Root = unified().use(remarkParse).use(remarkGfm).parse(markdown);
  return all(tree).flatMap((n) => (n.type === 'text' ? [] : [n.type]));
};

describe('text of a submittal', () => {
  const HOSTILE = 'a | b <script>alert(1)</script> `c` [d](e.html) ![f](g) *h* # i';
  const hostile = (words: string): string =>
    [
      'Windows of the reading rooms',
      'The precast surround leaves 5 in.',
      'One trade does joints and openings.',
      'Details A-1 to A-3',
      'superintendent',
      'The joint to the precast is sealed over the flashing.',
      'Annex to a public library',
      'Fluid-applied membrane air barriers',
    ].reduce((text, old) => text.replace(old, JSON.stringify(words)), TEXT);

  it('stays text in Markdown', async () => {
    const [plain, evil] = [
      printMarkdown(await reviewOf(hostile('x'))),
      printMarkdown(await reviewOf(hostile(HOSTILE))),
    ];
    expect(shape(evil)).toEqual(shape(plain));
  });

  it('stays text in HTML', async () => {
    const tagsOf = async (words: string): Promise<string[]> =>
      readMarkup(printHtml(await reviewOf(hostile(words)), () => undefined)).tags.map((t) => t.name);
    expect(await tagsOf(HOSTILE)).toEqual(await tagsOf('x'));
  });
});

describe('the letter as a page', () => {
  const html = printHtml(review, () => undefined);
  const { tags, text } = readMarkup(html);

  it('has the corrections before the list of details, and every name once', () => {
    expect(html.indexOf('To be corrected')).toBeLessThan(html.indexOf('<nav'));
    expect(html.indexOf('<nav')).toBeLessThan(html.indexOf('id="detail-1"'));
    const ids = tags.flatMap((t) => t.attributes['id'] ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    const inside = tags.flatMap((t) => t.attributes['href'] ?? []).filter((h) => h.startsWith('#'));
    for (const address of inside) expect(ids).toContain(address.slice(1));
  });

  it('says what the Markdown letter says', () => {
    for (const words of ['Review of submittal 07 27 26-04, revision 1', 'not declared', 'For the contractor', 'DEV-1'])
      expect(text).toContain(words);
  });
});

describe('the command', () => {
  it('writes the letter of the submittal of the demo library', async () => {
    const { out, status } = await runCommand([
      path.join(DEMO, 'submittal-07-27-26-03.md'),
      '--format',
      'markdown',
      '--fail-on',
      'never',
    ]);
    expect(status).toBe(0);
    expect(out).toMatch(/^# Review of submittal 07 27 26-03, revision 1\n/);
    expect(out).toContain('DEV-1');
    expect(out).toContain('SUB-1');
  });

  it('reviews the details that a submittal names in other files, and says which are not there', async () => {
    const detail = (id: string): string => `kind: detail\nid: ${id}\ntitle: T\n`;
    const cwd = scratch({
      'lapwright.yaml': 'kind: settings\n',
      'sent/submittal.yaml':
        'kind: submittal\nnumber: 07 27 26-09\nsection: "07 27 26"\ntitle: T\ndetails: [../details/*.yaml, W-9]\n',
      'details/w-1.yaml': detail('W-1'),
      'details/w-2.yaml': detail('W-2'),
      'other/w-3.yaml': detail('W-3'),
    });
    const { out } = await runCommand(['sent/submittal.yaml', '--format', 'json', '--fail-on', 'never'], { cwd });
    const { details, results } = JSON.parse(out) as {
      details: { id: string }[];
      results: { rule: string; kind: string; message: string }[];
    };
    expect(details.map((d) => d.id)).toEqual(['W-1', 'W-2']);
    expect(results.filter((r) => r.rule === 'submittal/details-found' && r.kind === 'fail')).toMatchObject([
      { message: expect.stringContaining('"W-9"') as string },
    ]);
  });
});
