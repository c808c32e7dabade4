/**
 * The causes that a comparison names. Where one field of a submission is changed, the cause of every difference is known:
 * that field. Where two are, each result may name only the one that also changes it alone.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { compareSubmissions } from '../src/compare/compare.js';
import type { Comparison, Pair, Submission } from '../src/compare/types.js';
import { changeText, isCauseUnknown } from '../src/output/comparison/report.js';
import { printComparisonTerminal } from '../src/output/comparison/terminal.js';
import { nameOf, submissionAt } from './support/compare.js';
import { ROOT, scratch } from './support/command.js';

const FIXTURES = path.join(ROOT, 'fixtures/published');
const read = (file: string): string => readFileSync(path.join(FIXTURES, file), 'utf8');
const folder = scratch({
  'b1.yaml': read('method-b1.yaml'),
  'coats.yaml': read('composite-fluid-applied.yaml'),
  'products.yaml': read('products.yaml'),
  'project.yaml': read('project.yaml'),
});
const before = await submissionAt(folder);

/** The folder with some files written otherwise, for one review. */
async function with_(texts: Readonly<Record<string, string>>): Promise<Submission> {
  const kept = Object.keys(texts).map((file) => [file, readFileSync(path.join(folder, file), 'utf8')] as const);
  for (const [file, text] of Object.entries(texts)) writeFileSync(path.join(folder, file), text);
  const submission = await submissionAt(folder);
  for (const [file, text] of kept) writeFileSync(path.join(folder, file), text);
  return submission;
}

/** Each text that leaves out one `, key: value` of a flow mapping. */
function leftOut(file: string): string[] {
  const text = readFileSync(path.join(folder, file), 'utf8');
  return [...text.matchAll(/, [a-zA-Z]+: [^,{}[\]\n]+(?=[,}])/g)].map(
    (m) => text.slice(0, m.index) + text.slice(m.index + m[0].length),
  );
}

const isTold = ({ state, progress }: Pair): boolean => state !== 'unchanged' && progress !== 'unchanged';
const causes = (pair: Pair): string[] => pair.explanations.map(({ change }) => changeText(change));
const named = (comparison: Comparison, rule: string): Pair =>
  comparison.pairs.find((pair) => isTold(pair) && (pair.after ?? pair.before)?.rule === rule)!;

describe('one field left out', () => {
  it.each(['b1.yaml', 'coats.yaml'])(
    'is named by all that it changes, in %s',
    async (file) => {
      let told = 0;
      for (const text of leftOut(file)) {
        const comparison = compareSubmissions(before, await with_({ [file]: text }));
        // Some fields may not be left out: the detail cannot be read then.
        if (comparison.changes?.length !== 1 || comparison.changes[0]?.steps.length === 0) continue;
        const expected = comparison.changes.map(changeText);
        for (const pair of comparison.pairs.filter(isTold)) {
          told += 1;
          expect([nameOf(pair), ...causes(pair)]).toEqual([nameOf(pair), ...expected]);
        }
      }
      expect(told).toBeGreaterThan(40);
    },
    120_000,
  );
});

describe('several fields changed', () => {
  const b1 = read('method-b1.yaml');
  it('a result names the one it reads, not the others of the same entry', async () => {
    const coats = read('composite-fluid-applied.yaml');
    const text = coats
      .replace('sides: [head, jambs, sill]', 'sides: [head, jambs]')
      .replace('depth: 1/4 in', 'depth: 1/2 in');
    expect(text).not.toBe(coats);
    const comparison = compareSubmissions(before, await with_({ 'coats.yaml': text }));
    expect(causes(named(comparison, 'air/interior-seal-four-sides'))).toEqual([
      'composite-fluid-applied work/air-seal/sides changed: [head, jambs, sill] -> [head, jambs]',
    ]);
    expect(causes(named(comparison, 'joint/depth'))).toEqual([
      'composite-fluid-applied work/air-seal/joint/depth changed: 1/4 in -> 1/2 in',
    ]);
  });

  it('says so where nothing that the check reads has changed', async () => {
    // As after an update of the rules: the documents changed in one note, and a result came out another way.
    const after = await with_({ 'b1.yaml': b1.replace('Cut at the opening', 'Cut in the opening') });
    const [first] = after.results.filter((one) => one.rule === 'sill/slope-or-dam' && one.detail === 'method-b1');
    const changed = { ...after, results: after.results.map((one) => (one === first ? failed(one) : one)) };
    const comparison = compareSubmissions(before, changed);
    const pair = named(comparison, 'sill/slope-or-dam');
    expect(causes(pair)).toEqual([]);
    expect(isCauseUnknown(pair, comparison)).toBe(true);
    const text = printComparisonTerminal(
      { toolVersion: '0', comparison, cautions: new Map(), titles: new Map(), exitCode: 1 },
      { color: false, columns: 100 },
    );
    expect(text).toContain('cause     not known: no change was found in what this check reads');
  });
});

/** A result that came out as a failure. */
function failed(one: Submission['results'][number]): Submission['results'][number] {
  const other: unknown = Object.create(one, { kind: { value: 'fail' }, level: { value: 'error' } });
  return other as typeof one;
}
