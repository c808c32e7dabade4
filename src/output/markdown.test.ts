import { fileURLToPath } from 'node:url';
import type { Nodes, Root } from 'mdast';
import fc from 'fast-check';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { describe, expect, test } from 'vitest';
import { sampleReview } from '../../tests/golden/output/sample-review.js';
import { printMarkdown } from './markdown.js';
import { reportTree } from './markdown-tree.js';
import type { Review } from './report.js';

// An independent reader of the same Markdown flavor decides what the text means.
const parse = (text: string): Root => unified().use(remarkParse).use(remarkGfm).parse(text);

function all(node: Nodes): Nodes[] {
  return [node, ...('children' in node ? node.children.flatMap((child) => all(child)) : [])];
}

/**
 * A bare address that a reader links to itself. Some readers do so even when its colon is escaped; it hides
 * nothing, so it counts as text.
 */
function isBareAddress(node: Nodes): boolean {
  const [only, ...others] = node.type === 'link' ? node.children : [];
  if (node.type !== 'link' || only?.type !== 'text' || others.length > 0) return false;
  return [only.value, `http://${only.value}`, `mailto:${only.value}`].includes(node.url);
}

/** Type and number of children of each node, in order: what a reader's eye would see as structure. */
function shape(node: Nodes): string[] {
  if (node.type === 'text' || isBareAddress(node)) return [];
  const inside = 'children' in node ? node.children.flatMap((child) => shape(child)) : [];
  return [`<${node.type}>`, ...inside, `</${node.type}>`];
}

const text = printMarkdown(sampleReview);

/** The sample with one text everywhere a document can put one. */
function filledWith(hostile: string): Review {
  return {
    ...sampleReview,
    details: sampleReview.details.map((detail) => ({ ...detail, title: hostile })),
    results: sampleReview.results.map((result) => ({
      ...result,
      message: hostile,
      ...(result.required === undefined ? {} : { required: hostile }),
      ...(result.missing === undefined ? {} : { missing: [hostile] }),
    })),
  };
}

describe('the Markdown report', () => {
  test('reads as it did', async () => {
    await expect(text).toMatchFileSnapshot(
      fileURLToPath(new URL('../../tests/golden/output/markdown.txt', import.meta.url)),
    );
  });

  test('begins with the suggested action and the counts', () => {
    const [title, action, , counts] = parse(text).children;
    expect([title?.type, action?.type, counts?.type]).toEqual(['heading', 'paragraph', 'table']);
    expect(text).toMatch(
      /^# .*\n\n\*\*Suggested action: Revise and resubmit\*\* \(2 errors found; 1 open question that could be an error;/,
    );
  });

  test('lets nothing from a document become HTML, a link or an image', () => {
    const nodes = all(parse(text));
    expect(nodes.filter((node) => node.type === 'html' || node.type === 'image')).toEqual([]);
    const links = nodes.filter((node) => node.type === 'link' && !isBareAddress(node));
    const urls = new Set(links.flatMap((node) => (node.type === 'link' ? [node.url] : [])));
    expect([...urls]).toEqual(['https://basc.pnnl.gov/resource-guides/fully-flashed-window-and-door-openings']);
  });

  test('keeps every row of every table as wide as its head', () => {
    const tables = all(parse(text)).filter((node) => node.type === 'table');
    expect(tables).toHaveLength(3);
    for (const table of tables) expect(new Set(table.children.map((row) => row.children.length)).size).toBe(1);
  });

  test('keeps its structure whatever a document says', () => {
    const marks = fc.constantFrom(
      '|',
      '<b>',
      '`',
      '``',
      '\\',
      '*',
      '_',
      '[a](b)',
      '![x](y)',
      '# ',
      '\n',
      '\n\n',
      '- ',
      '1. ',
      '~~',
      '&lt;',
      '<!--',
      '***',
      '| - |',
      '```',
      'http://a.example',
      'www.a.example',
      ' ',
      'x',
      '\t',
      '$',
      '[^1]',
      '[ ] ',
    );
    const hostile = fc.array(marks, { minLength: 1, maxLength: 12 }).map((parts) => `x${parts.join('')}x`);
    const expected = shape(parse(printMarkdown(filledWith('x'))));
    fc.assert(
      fc.property(hostile, (given) => {
        expect(shape(parse(printMarkdown(filledWith(given))))).toEqual(expected);
      }),
      { numRuns: 60 },
    );
  });

  test('shows the exact text of a document to its reader', () => {
    const given = 'Pan | <b>sill</b> `x` *y* [z](w) & 1. 5-1/2 in';
    const words = all(parse(printMarkdown(filledWith(given)))).flatMap((node) =>
      node.type === 'paragraph' ? [node.children.map((child) => ('value' in child ? child.value : '')).join('')] : [],
    );
    expect(words).toContain(given);
  });

  test('names each open question, each accepted deviation and the sources with their provenance', () => {
    expect(text).toContain('openings\\[0].unit.waterTest');
    expect(text).toContain('(by architect of record, until 2031-06-30)');
    expect(text).toContain('IRC R703.4 (code; from memory, confirm)');
    expect(text).toContain('common practice, no source');
  });

  test('says so when there are no findings', () => {
    const passes = sampleReview.results.filter((result) => result.kind === 'pass');
    expect(printMarkdown({ ...sampleReview, results: passes })).toContain('## Findings\n\nNone.');
  });

  test('counts the details it does not name', () => {
    const [pass] = sampleReview.results.filter((result) => result.kind === 'pass');
    const results = Array.from({ length: 11 }, (_, index) => ({ ...pass!, documentId: `D-${String(index)}` }));
    expect(printMarkdown({ ...sampleReview, details: [], results })).toContain(
      '| 11 | D-0, D-1, D-2, D-3, D-4, D-5, D-6, D-7 and 3 more |',
    );
  });

  test('comes from a tree that others can start from', () => {
    const headings = reportTree(sampleReview).children.filter((node) => node.type === 'heading');
    expect(headings.at(-1)).toMatchObject({ depth: 2, children: [{ value: 'Caution' }] });
  });
});
