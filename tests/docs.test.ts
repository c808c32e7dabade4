/**
 * The pages of docs/ say what the program does: written ones hold only examples that are read, complete examples
 * review without an error, and pages written by scripts are up to date.
 */
import { copyFileSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { BUILT_IN_RULES } from '../generated/rules.js';
import { OWN_RULES } from '../src/engine/own-rules.js';
import { buildDetail } from '../src/model/detail.js';
import { readDocuments } from '../src/reading/documents.js';
import { lineColumn, sourceFile } from '../src/reading/source.js';
import { readPage, reviewWith } from './support/documents.js';

const ROOT = path.resolve(import.meta.dirname, '..');
const PAGES = [
  ...(existsSync(path.join(ROOT, 'README.md')) ? ['README.md'] : []),
  ...readdirSync(path.join(ROOT, 'docs'))
    .filter((name) => name.endsWith('.md'))
    .map((name) => `docs/${name}`),
];
const textOf = (page: string): string => readFileSync(path.join(ROOT, page), 'utf8');

/** Stands on the line before the fence of a detail that is complete: it must review without an error. */
const COMPLETE = '<!-- complete -->';

/** Whether the fenced block that holds a place in a page is marked as complete. */
function isComplete(page: string, offset: number): boolean {
  const fence = page.lastIndexOf('\n```', offset);
  return page.slice(0, fence).trimEnd().endsWith(COMPLETE);
}

/** Fenced blocks that say only `yaml`: parts of documents, or documents that have no place in a Markdown file. */
function partsOf(page: string): string[] {
  return [...page.matchAll(/^```ya?ml[ \t]*\n([\s\S]*?)^```/gm)].map((match) => match[1] as string);
}

const folder = mkdtempSync(path.join(tmpdir(), 'lapwright-docs-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const script = (name: string, ...args: string[]) =>
  spawnSync(process.execPath, [path.join(ROOT, 'scripts', name), ...args], { cwd: ROOT, encoding: 'utf8' });

describe.each([
  ['format-reference.mjs', 'format-reference.md'],
  ['checks-reference.mjs', 'checks.md'],
])('the page of %s', (name, page) => {
  it('is up to date', () => {
    const { status, stderr } = script(name, '--check');
    expect(stderr).toBe('');
    expect(status).toBe(0);
  });

  it('is refused when a word of it has changed', () => {
    copyFileSync(path.join(ROOT, 'docs', page), path.join(folder, page));
    writeFileSync(
      path.join(folder, page),
      readFileSync(path.join(folder, page), 'utf8').replace('required', 'wanted').replace('level', 'height'),
    );
    const { status, stderr } = script(name, '--check', folder);
    expect(stderr).toContain(`${page} is out of date`);
    expect(status).toBe(1);
  });
});

describe.each(PAGES)('%s', (name) => {
  const page = textOf(name);

  it('holds only documents that are read without a problem', async () => {
    const { problems } = await readDocuments(sourceFile(name, page), { named: true });
    expect(problems.map((p) => `line ${lineColumn(p.file, p.span.start).line}: ${p.message}`)).toEqual([]);
  });

  it('holds only parts that a detail may hold', async () => {
    for (const part of partsOf(page)) {
      const text = /^kind:/m.test(part) ? part : `kind: detail\nid: part\ntitle: Part of a detail\n${part}`;
      const { problems } = await readDocuments(sourceFile('part.yaml', text), { named: true });
      expect(
        problems.map((p) => p.message),
        part,
      ).toEqual([]);
    }
  });

  it('names only checks that exist', () => {
    const ids = new Set([...BUILT_IN_RULES, ...OWN_RULES].map((rule) => rule.id));
    const families = new Set([...ids].map((id) => id.split('/')[0]));
    const named = [...page.matchAll(/\b([a-z]+)\/([a-z][a-z-]+[a-z])\b(?![./-])/g)]
      .filter((m) => families.has(m[1]) && m[2] !== 'name')
      .map((m) => m[0]);
    expect([...new Set(named)].filter((id) => !ids.has(id))).toEqual([]);
  });

  it('links only to pages and headings that exist', () => {
    const linked = [...page.matchAll(/\]\((?!https?:)([^)#\s]*)(?:#([^)\s]+))?\)/g)];
    for (const [, file = '', heading] of linked) {
      const target = path.join(ROOT, path.dirname(name), file === '' ? path.basename(name) : file);
      expect(existsSync(target), `${file} is linked to`).toBe(true);
      if (heading === undefined) continue;
      const anchors = [...readFileSync(target, 'utf8').matchAll(/^#+ (.+)$/gm)].map((m) =>
        (m[1] as string)
          .toLowerCase()
          .replace(/[^a-z0-9 _-]/g, '')
          .replaceAll(' ', '-'),
      );
      expect(anchors, `${file}#${heading} is linked to`).toContain(heading);
    }
  });

  it('calls complete only what reviews without an error', async () => {
    const read = await readPage(page, name);
    for (const document of read.documents.filter(
      (d) => d.kind === 'detail' && isComplete(page, d.spanOf(['id']).start),
    )) {
      const { detail, problems } = buildDetail(document, read.reach(document));
      expect(
        problems.map((p) => p.message),
        document.id,
      ).toEqual([]);
      const errors = reviewWith(detail!, BUILT_IN_RULES).filter((r) => r.kind === 'fail' && r.level === 'error');
      expect(
        errors.map((r) => `${document.id} line ${lineColumn(r.file, r.span.start).line}: ${r.message} [${r.ruleId}]`),
      ).toEqual([]);
    }
  });
});

it('the guide shows complete details of both kinds of barrier', async () => {
  const page = textOf('docs/writing-details.md');
  const { documents } = await readPage(page, 'docs/writing-details.md');
  const complete = documents
    .filter((d) => d.kind === 'detail' && isComplete(page, d.spanOf(['id']).start))
    .map((d) => d.id);
  expect(complete).toEqual(['W-1', 'W-2']);
});
