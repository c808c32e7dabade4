/**
 * A detail that is right has no step, order, extent or lap to spare: over all good details of the demo library,
 * every edit that breaks one gives a finding that was not there before.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { BUILT_IN_RULES } from '../generated/rules.js';
import { OWN_RULES } from '../src/engine/own-rules.js';
import { resultOfProblem, reviewDetail } from '../src/engine/review.js';
import { ruleSettings } from '../src/engine/settings.js';
import type { Result } from '../src/engine/result.js';
import { buildDetail } from '../src/model/detail.js';
import { readYamlDocuments } from '../src/reading/documents.js';
import { loadLibrary, type Library } from '../src/reading/library.js';
import { sourceFile } from '../src/reading/source.js';
import type { ReadDocument } from '../src/reading/types.js';
import {
  withOneExtentHalved,
  withOneLapReversed,
  withoutOneStep,
  withTwoStepsSwapped,
  type Edit,
} from './support/edits.js';
import { ROOT } from './support/review-folder.js';
import { mayBeSwapped } from './support/interchangeable.js';

const library: Library = await loadLibrary(['fixtures/demo/details'], { cwd: ROOT });
const details = library.documents.filter((d) => d.kind === 'detail' && library.reviewed(d));
const settings = ruleSettings(
  library.settings,
  BUILT_IN_RULES,
  OWN_RULES.map((r) => r.id),
);

function review(document: ReadDocument, original: ReadDocument): Result[] {
  const { detail, problems } = buildDetail(document, library.reach(original));
  if (detail === undefined) return problems.map((p) => resultOfProblem(p, document.id));
  return [...reviewDetail(detail, { rules: BUILT_IN_RULES, settings, today: '2026-01-15' }).results];
}

const findings = (results: readonly Result[]): Set<string> =>
  new Set(results.filter((r) => r.kind === 'fail').map((r) => `${r.ruleId} ${r.subject ?? ''} ${r.message}`));

/** Ids of edits after which nothing new was found. */
function missed(original: ReadDocument, edits: readonly Edit[]): string[] {
  const before = findings(review(original, original));
  return edits.flatMap((edit) => {
    const { documents, problems } = readYamlDocuments(sourceFile(original.file.uri, stringify(edit.data)), {
      named: true,
    });
    if (problems.length > 0 || documents[0] === undefined)
      throw new Error(`${edit.name}: ${problems.map((p) => p.message).join('; ')}`);
    const after = findings(review(documents[0], original));
    return [...after].some((f) => !before.has(f)) ? [] : [edit.name];
  });
}

describe.each(details.map((d) => [d.id, d] as const))('%s', (_, document) => {
  const data = document.data as Record<string, unknown>;

  it('has no findings as it stands', () => {
    expect([...findings(review(document, document))]).toEqual([]);
    expect(readFileSync(path.join(ROOT, 'fixtures/demo', document.file.uri), 'utf8')).toBe(document.file.text);
  });
  it('misses each step that is taken out', () => {
    expect(missed(document, withoutOneStep(data)).join('\n')).toBe('');
  });
  it('notices every two steps that are swapped, save those that may come in either order', () => {
    const edits = withTwoStepsSwapped(data).filter((e) => mayBeSwapped(e) === undefined);
    expect(missed(document, edits).join('\n')).toBe('');
  });
  it('notices each extent that is halved', () => {
    expect(missed(document, withOneExtentHalved(data)).join('\n')).toBe('');
  });
  it('notices each lap that is turned around', () => {
    const { detail } = buildDetail(document, library.reach(document));
    expect(missed(document, withOneLapReversed(data, detail!)).join('\n')).toBe('');
  });
});
