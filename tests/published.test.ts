/**
 * Details and walls transcribed from published guidance: the tool agrees with their sources, and finds what their
 * sources warn of. See fixtures/published/README.md.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Result } from '../src/engine/result.js';
import { lineColumn } from '../src/reading/source.js';
import { reviewPaths, ROOT } from './support/review-folder.js';

const FOLDER = 'fixtures/published';
const textOf = (file: string): string => readFileSync(path.join(ROOT, FOLDER, file), 'utf8');
const filesIn = (folder: string): string[] =>
  readdirSync(path.join(ROOT, FOLDER, folder))
    .filter((f) => f.endsWith('.yaml'))
    .sort()
    .map((f) => path.posix.join(folder, f))
    .filter((f) => /^kind: detail$/m.test(textOf(f)));

const OPENINGS = filesIn('.');
const WALLS = filesIn('walls');
const BROKEN = filesIn('broken');
const SOUND = [...OPENINGS, ...WALLS];

let results: readonly Result[] = [];
const of = (file: string): Result[] => results.filter((r) => r.file.uri === `${FOLDER}/${file}`);
const failsOf = (file: string): Result[] => of(file).filter((r) => r.kind === 'fail' && r.suppression === undefined);
const lineOf = (r: Result): number => lineColumn(r.file, r.span.start).line;
const told = (file: string, some: readonly Result[]): string =>
  `${file}:\n${some.map((r) => `  line ${String(lineOf(r))}: ${r.kind} ${r.level} ${r.ruleId}: ${r.message}`).join('\n')}`;

/** The source itself says that the wall is at risk or only just good enough. */
const isMarginal = (text: string): boolean => /^# Verdict of the source: (?:marginal|risk)/m.test(text);

interface Mark {
  readonly line: number;
  readonly rule: string;
}
const marksOf = (text: string): Mark[] =>
  text.split('\n').flatMap((line, i) =>
    (line.split('# <- finding: ')[1] ?? '')
      .split(',')
      .map((rule) => rule.trim())
      .filter((rule) => rule !== '')
      .map((rule) => ({ line: i + 1, rule })),
  );

/** The sound detail a broken one was copied from; a wall that was published as wrong has none. */
const originalOf = (file: string): string | undefined => {
  const name = /^broken\/(.+?)--.+\.yaml$/.exec(file)?.[1];
  return name === undefined ? undefined : SOUND.find((f) => path.posix.basename(f) === `${name}.yaml`);
};

/** Lines without comments, marks, ids and relative paths: what the detail says. */
const saying = (text: string): string[] =>
  text
    .split('\n')
    .map((l) => l.replace(/ # <- finding: .*$/, '').replace('../', ''))
    .filter((l) => l !== '' && !l.startsWith('#') && !/^(?:id|title): /.test(l));

/** How many lines of either text have no partner in the other, order counted (longest common subsequence). */
function changedLines(a: readonly string[], b: readonly string[]): number {
  const table = Array.from({ length: a.length + 1 }, () => new Array<number>(b.length + 1).fill(0));
  for (let i = 1; i <= a.length; i++) {
    for (let j = 1; j <= b.length; j++) {
      const [row, above] = [table[i] as number[], table[i - 1] as number[]];
      row[j] =
        a[i - 1] === b[j - 1] ? (above[j - 1] as number) + 1 : Math.max(above[j] as number, row[j - 1] as number);
    }
  }
  return Math.max(a.length, b.length) - ((table[a.length] as number[])[b.length] as number);
}

beforeAll(async () => {
  results = await reviewPaths([FOLDER]);
});

describe('the collection', () => {
  it('holds at least sixteen opening details and twelve walls', () => {
    expect(OPENINGS.length).toBeGreaterThanOrEqual(16);
    expect(WALLS.length).toBeGreaterThanOrEqual(12);
  });

  it.each(SOUND)('%s names its source, how well it is known, and carries both in its notes', (file) => {
    const text = textOf(file);
    expect(text, file).toMatch(/^# Source: /m);
    expect(text.split(/^notes:/m)[1], file).toMatch(/seen|from memory|common practice, no source/);
  });

  it.each(SOUND)('%s has a broken variant', (file) => {
    expect(BROKEN.map(originalOf), file).toContain(file);
  });

  it.each([...SOUND, ...BROKEN])('%s was read without a problem and reviewed', (file) => {
    const found = of(file);
    expect(
      found.filter((r) => r.ruleId.startsWith('document/')),
      told(file, found),
    ).toEqual([]);
    expect(found.length, `${file}: no rule had anything to say`).toBeGreaterThan(0);
  });
});

describe('a published detail', () => {
  it.each(SOUND)('%s has no finding that its source does not share', (file) => {
    const text = textOf(file);
    // A wall published as marginal or at risk may draw a warning; no other published detail may draw anything.
    const left = failsOf(file).filter((r) => !isMarginal(text) || r.level === 'error');
    expect(left, told(file, left)).toEqual([]);
  });
});

describe('a broken variant', () => {
  it.each(BROKEN)('%s is found at every marked line', (file) => {
    const marks = marksOf(textOf(file));
    expect(marks.length, `${file} marks no line`).toBeGreaterThan(0);
    const fails = failsOf(file);
    for (const { rule, line } of marks) {
      expect(
        fails.filter((r) => r.ruleId === rule).map(lineOf),
        `${rule} at line ${String(line)} of ${told(file, fails)}`,
      ).toContain(line);
    }
  });

  it.each(BROKEN.filter((f) => f.includes('--')))(
    '%s differs from its original in one place, and its original does not break the marked rule',
    (file) => {
      const original = originalOf(file);
      if (original === undefined) throw new Error(`${file} has no original`);
      expect(changedLines(saying(textOf(original)), saying(textOf(file))), file).toBeGreaterThan(0);
      expect(changedLines(saying(textOf(original)), saying(textOf(file))), file).toBeLessThanOrEqual(2);
      const before = new Set(failsOf(original).map((r) => r.ruleId));
      for (const { rule } of marksOf(textOf(file)))
        expect(before, told(original, failsOf(original))).not.toContain(rule);
    },
  );
});

it('counts', () => {
  const marks = BROKEN.flatMap((f) => marksOf(textOf(f)));
  const kinds = (files: readonly string[], kind: string): number =>
    files.reduce((n, f) => n + of(f).filter((r) => r.kind === kind).length, 0);
  process.stdout.write(
    `published: ${String(OPENINGS.length)} opening details, ${String(WALLS.length)} walls: ${String(kinds(SOUND, 'pass'))} pass, ${String(kinds(SOUND, 'open'))} open, ${String(kinds(SOUND, 'fail'))} fail; broken: ${String(BROKEN.length)} variants, ${String(marks.length)} marks, ${String(new Set(marks.map((m) => m.rule)).size)} rules\n`,
  );
  expect(kinds(SOUND, 'pass')).toBeGreaterThan(0);
});
