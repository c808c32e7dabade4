/**
 * The pages of the checks that the engine makes of a submittal: each example, with the documents of its page, is
 * reviewed as a file of its own and must do what the page says, at the lines it marks.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { runReview } from '../src/cli/run.js';
import { SUBMITTAL_RULES } from '../src/engine/submittal/rules.js';
import { lineColumn } from '../src/reading/source.js';
import { ROOT, scratch } from './support/command.js';

const SECTIONS = ['What is checked', 'Why it matters', 'Source', 'How to correct', 'Documents of the examples'];
/** Checks that pass in silence, and those that never fail. */
const WITHOUT_PASS = ['deviation/covers-part'];
const WITHOUT_FAIL = ['submittal/unasked-items'];

interface Example {
  readonly section: string;
  readonly name: string;
  readonly text: string;
}

function examplesOf(page: string): Example[] {
  const shared = page.split('## Documents of the examples\n')[1] ?? '';
  return page
    .split(/^## /m)
    .slice(1)
    .flatMap((chapter) => {
      const [section = '', ...parts] = chapter.split(/^### /m);
      return parts.map((part) => ({
        section: section.split('\n')[0] ?? '',
        name: part.split('\n')[0] ?? '',
        text: `${part}\n${shared}`,
      }));
    });
}

const marked = (text: string, mark: string): number[] =>
  text.split('\n').flatMap((line, i) => (line.includes(`# <- ${mark}`) ? [i + 1] : []));

describe.each(SUBMITTAL_RULES.map((rule) => [rule.id, rule] as const))('%s', (id, rule) => {
  const file = path.join(ROOT, 'rules', `${id}.md`);
  const page = existsSync(file) ? readFileSync(file, 'utf8') : '';
  const examples = examplesOf(page);

  it('has a page with all its parts, opened by its title and summary', () => {
    expect(page.startsWith(`# ${rule.title}\n\n`)).toBe(true);
    expect(page.split('\n## ')[0]?.replace(/\s+/g, ' ')).toContain(rule.summary);
    const headings = [...page.matchAll(/^## (.+)$/gm)].map((m) => m[1]);
    for (const section of SECTIONS) expect(headings).toContain(section);
    const shown = new Set(examples.map((e) => e.section));
    expect(shown.has('Passes')).toBe(!WITHOUT_PASS.includes(id));
    expect(shown.has('Fails')).toBe(!WITHOUT_FAIL.includes(id));
  });

  it.each(examples.map((e) => [`${e.section}: ${e.name}`, e] as const))('%s', async (_, { section, text }) => {
    const folder = scratch({ 'example.md': text });
    const options = { packs: [], allowPacks: false, today: '2026-01-15', skipOthers: false, dependents: false };
    const { review } = await runReview({ inputs: ['example.md'], cwd: folder, ...options });
    expect(review.results.filter((r) => r.ruleId.startsWith('document/')).map((r) => r.message)).toEqual([]);
    const own = review.results.filter((r) => r.ruleId === id);
    const told = own.map((r) => `${r.kind}: ${r.message}`).join('\n');
    const linesOf = (kind: string): number[] =>
      [...new Set(own.filter((r) => r.kind === kind).map((r) => lineColumn(r.file, r.span.start).line))].sort(
        (a, b) => a - b,
      );
    expect(linesOf('fail'), told).toEqual(marked(text, 'finding'));
    expect(linesOf('open'), told).toEqual(marked(text, 'open'));
    const kind = { Passes: 'pass', Fails: 'fail', Open: 'open' }[section];
    expect(
      own.some((r) => r.kind === kind),
      told,
    ).toBe(true);
    for (const r of own) {
      if (r.kind === 'fail') expect(r.correct ?? '', told).not.toBe('');
      if (r.kind === 'open') expect(r.missing ?? [], told).not.toEqual([]);
    }
  });
});

it('every page without a rule beside it belongs to one of the checks of a submittal', () => {
  const ids = new Set(SUBMITTAL_RULES.map((rule) => rule.id));
  for (const family of ['submittal', 'deviation', 'substitution'])
    for (const name of readdirSync(path.join(ROOT, 'rules', family)).filter((n) => n.endsWith('.md')))
      if (!existsSync(path.join(ROOT, 'rules', family, name.replace(/md$/, 'ts'))))
        expect(ids).toContain(`${family}/${name.slice(0, -3)}`);
});
