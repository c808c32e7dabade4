/**
 * A value of the specification bears on the results that say they depend on it and on no other: over the demo
 * library, each one is raised past all that is provided and lowered to nearly nothing.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { BUILT_IN_RULES } from '../generated/rules.js';
import { Fingerprints } from '../src/engine/finished-result.js';
import { OWN_RULES } from '../src/engine/own-rules.js';
import { requirementsOfRun, type HeldRequirement } from '../src/engine/requirements-of-run.js';
import type { Result } from '../src/engine/result.js';
import { resultsOfRequirements, reviewDetail } from '../src/engine/review.js';
import { ruleSettings } from '../src/engine/settings.js';
import { buildDetail } from '../src/model/detail.js';
import { readMarkdownDocuments } from '../src/reading/documents.js';
import { loadLibrary, type Library } from '../src/reading/library.js';
import { sourceFile } from '../src/reading/source.js';
import type { ReadDocument } from '../src/reading/types.js';
import { ROOT } from './support/review-folder.js';

const library: Library = await loadLibrary(['fixtures/demo/details', 'fixtures/demo/returned'], { cwd: ROOT });
const details = library.documents.filter((d) => d.kind === 'detail' && library.reviewed(d));
const original = library.documents.find((d) => d.kind === 'specification') as ReadDocument;
const settings = ruleSettings(
  library.settings,
  BUILT_IN_RULES,
  OWN_RULES.map((r) => r.id),
);

interface Reviewed {
  readonly results: readonly Result[];
  readonly held: readonly HeldRequirement[];
}

/** All details with the demo's specification in another wording. */
async function reviewWith(text: string): Promise<Reviewed> {
  const { documents, problems } = await readMarkdownDocuments(sourceFile(original.file.uri, text));
  expect(problems.map((p) => p.message)).toEqual([]);
  const fingerprints = new Fingerprints();
  const reviews = details.map((document) => {
    const { detail } = buildDetail(document, { ...library.reach(document), specifications: documents });
    return reviewDetail(detail!, { rules: BUILT_IN_RULES, settings, today: '2026-01-15', fingerprints });
  });
  const own = resultsOfRequirements(reviews, [], { settings, fingerprints });
  return { results: [...reviews.flatMap((r) => r.results), ...own], held: requirementsOfRun(reviews) };
}

/** What was checked, whatever came of it. Checks of one rule at one place keep their order. */
function byCheck(results: readonly Result[]): Map<string, Result> {
  const seen = new Map<string, number>();
  return new Map(
    results.map((r) => {
      const key = `${r.documentId} ${r.ruleId} ${r.at.document.file.uri} ${r.at.path.join('.')} ${r.subject ?? ''}`;
      const count = (seen.get(key) ?? 0) + 1;
      seen.set(key, count);
      return [`${key} ${count}`, r];
    }),
  );
}

const told = (r: Result | undefined): string =>
  r === undefined
    ? 'nothing'
    : JSON.stringify([r.kind, r.level, r.message, r.required, r.provided, r.sources?.map((s) => s.citation)]);

/** The specification with one value changed, which keeps its unit. */
function withValue(value: Result['span'], to: (amount: number) => number): string {
  const { text } = original.file;
  const [, amount = '', unit = ''] = /^([\d.]+)(.*)$/s.exec(text.slice(value.start, value.end)) ?? [];
  expect(amount).not.toBe('');
  return `${text.slice(0, value.start)}${to(Number(amount))}${unit}${text.slice(value.end)}`;
}

const values = (original.data['requirements'] as Record<string, string>[]).map((requirement, index) => {
  const name = `${requirement['paragraph'] ?? ''} ${requirement['subject'] ?? ''}, ${requirement['property'] ?? ''}`;
  return [name, index, original.spanOf(['requirements', index, 'atLeast'])] as const;
});

let before: Reviewed;
beforeAll(async () => {
  before = await reviewWith(original.file.text);
});

describe.each(values)('%s', (_, index, value) => {
  /** Checks that were told otherwise, by what they are. */
  async function changed(to: (amount: number) => number) {
    const after = await reviewWith(withValue(value, to));
    const [old, now] = [byCheck(before.results), byCheck(after.results)];
    const keys = [...new Set([...old.keys(), ...now.keys()])].filter(
      (key) => told(old.get(key)) !== told(now.get(key)),
    );
    return { keys, now, after, old };
  }
  const dependents = (): Set<string> => {
    const results = new Set(before.held[index]?.results);
    return new Set([...byCheck(before.results)].flatMap(([key, r]) => (results.has(r) ? [key] : [])));
  };

  it('is held by some check', () => {
    expect(before.held[index]?.results.length).toBeGreaterThan(0);
  });
  it('raised past all that is provided, breaks each check that depends on it and changes no other', async () => {
    const { keys, now } = await changed((amount) => amount * 40);
    expect(new Set(keys)).toEqual(dependents());
    const kept = keys.filter((key) => now.get(key)?.kind !== 'fail');
    expect(kept).toEqual([]);
  });
  it('lowered to nearly nothing, changes only checks that depend on it, and all that it governed', async () => {
    const { keys, now, old } = await changed((amount) => amount / 40);
    const mine = dependents();
    expect(keys.filter((key) => !mine.has(key))).toEqual([]);
    const governed = [...mine].filter(
      (key) => old.get(key)?.sources?.[0]?.requirement === before.held[index]?.requirement,
    );
    expect(keys).toEqual(expect.arrayContaining(governed));
    const broken = keys.filter(
      (key) => now.get(key)?.sources?.[0]?.requirement?.paragraph?.value === values[index]?.[0],
    );
    expect(broken).toEqual([]);
  });
  it('leaves every fingerprint that it does not bear on as it was', async () => {
    const mine = new Set(
      [...byCheck(before.results)].flatMap(([key, r]) => (dependents().has(key) ? [r.fingerprint] : [])),
    );
    const others = (results: readonly Result[]): string[] =>
      results.map((r) => r.fingerprint).filter((f) => !mine.has(f));
    const { after, keys, now } = await changed((amount) => amount * 40);
    const fresh = new Set(keys.map((key) => now.get(key)?.fingerprint));
    expect(
      after.results
        .map((r) => r.fingerprint)
        .filter((f) => !mine.has(f) && !fresh.has(f))
        .sort(),
    ).toEqual(others(before.results).sort());
  });
});
