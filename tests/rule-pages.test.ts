/**
 * Every page of every built-in rule: its examples are run and must do what the page says, at the line it marks.
 */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { BUILT_IN_RULES } from '../generated/rules.js';
import { readParameter } from '../src/engine/parameters.js';
import { buildDetail } from '../src/model/detail.js';
import { lineColumn } from '../src/reading/source.js';
import type { ReadDocument } from '../src/reading/types.js';
import { productsUsed } from '../src/model/products-used.js';
import { readPage, reviewWith } from './support/documents.js';

const ROOT = path.resolve(import.meta.dirname, '..');
const SECTIONS = ['What is checked', 'Why it matters', 'Source', 'How to correct', 'Passes', 'Fails'];

/** The second-level heading a place in the page stands under. */
function sectionAt(page: string, offset: number): string {
  return [...page.slice(0, offset).matchAll(/^## (.+)$/gm)].at(-1)?.[1] ?? '';
}

/** Lines of one document of the page that carry a mark, 1-based in the page. */
function markedLines(page: string, document: ReadDocument, mark: string): number[] {
  const start = document.spanOf(['kind'], 'entry').start;
  const first = page.slice(0, start).split('\n').length;
  const block = page.slice(start).split(/^(?:```|---$)/m)[0] as string;
  return block.split('\n').flatMap((line, i) => (line.includes(`# <- ${mark}`) ? [first + i] : []));
}

describe.each(BUILT_IN_RULES.map((rule) => [rule.id, rule] as const))('%s', (id, rule) => {
  const file = path.join(ROOT, 'rules', `${id}.md`);
  const page = existsSync(file) ? readFileSync(file, 'utf8') : '';

  it('has a page with all its parts, opened by its title and summary', () => {
    expect(page.startsWith(`# ${rule.title}\n\n`)).toBe(true);
    expect(page.split('\n## ')[0]?.replace(/\s+/g, ' ')).toContain(rule.summary);
    const headings = [...page.matchAll(/^## (.+)$/gm)].map((m) => m[1]);
    for (const section of SECTIONS) expect(headings).toContain(section);
  });

  it('declares parameters whose defaults pass their own type', () => {
    for (const [name, parameter] of Object.entries(rule.parameters ?? {}))
      expect(readParameter(name, parameter, parameter.default)).toHaveProperty('value');
  });

  it('does on every example what the page says', async () => {
    const read = await readPage(page, `${id}.md`);
    const seen = { Passes: 0, Fails: 0 };
    for (const document of read.documents.filter((d) => d.kind === 'detail')) {
      const section = sectionAt(page, document.spanOf(['kind'], 'entry').start);
      const { detail, problems } = buildDetail(document, read.reach(document));
      expect(
        problems.map((p) => p.message),
        document.id,
      ).toEqual([]);
      const results = reviewWith(detail!, [rule]);
      const linesOf = (kind: string): number[] =>
        [...new Set(results.filter((r) => r.kind === kind).map((r) => lineColumn(r.file, r.span.start).line))].sort(
          (a, b) => a - b,
        );
      // A finding may lie in the data of a product that the detail uses.
      const marks = (mark: string): number[] =>
        [document, ...productsUsed(detail!, () => true).map(({ product }) => product.at.document)]
          .flatMap((d) => markedLines(page, d, mark))
          .sort((a, b) => a - b);
      const told = `${document.id}: ${results.map((r) => `${r.kind} line ${String(lineColumn(r.file, r.span.start).line)}: ${r.message}`).join('\n')}`;
      if (section === 'Passes') {
        expect(linesOf('fail'), told).toEqual([]);
        expect(
          results.some((r) => r.kind === 'pass'),
          told,
        ).toBe(true);
        seen.Passes += 1;
      } else if (section === 'Fails') {
        const marked = marks('finding');
        expect(marked.length, `${document.id} marks no line`).toBeGreaterThan(0);
        expect(linesOf('fail'), told).toEqual(marked);
        seen.Fails += 1;
      } else if (section === 'Open') {
        expect(linesOf('open'), told).toEqual(marks('open'));
        expect(linesOf('fail'), told).toEqual([]);
      } else if (section === 'Left to the reviewer') {
        expect(marks('review').length, `${document.id} marks no line`).toBeGreaterThan(0);
        expect(linesOf('review'), told).toEqual(marks('review'));
        expect(linesOf('fail'), told).toEqual([]);
        expect(linesOf('pass'), told).toEqual([]);
      } else
        expect.fail(`${document.id} stands under "${section}", not under Passes, Fails, Open or Left to the reviewer`);
      // Every outcome can be acted on.
      for (const r of results) {
        expect(r.message.trim(), told).not.toBe('');
        if (r.kind === 'fail') expect(r.correct ?? '', told).not.toBe('');
        if (r.kind === 'open') expect(r.missing ?? [], told).not.toEqual([]);
      }
    }
    expect(seen.Passes, 'examples that pass').toBeGreaterThan(0);
    expect(seen.Fails, 'examples that fail').toBeGreaterThan(0);
  });
});
