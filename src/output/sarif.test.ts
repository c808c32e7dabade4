import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import type { Log, Result as SarifResult, Run } from 'sarif';
import { beforeAll, describe, expect, test } from 'vitest';
import { sampleReview } from '../../tests/golden/output/sample-review.js';
import type { Review } from './report.js';
import { printSarif, sarifChunks, type SarifOptions } from './sarif.js';

const tests = new URL('../../tests/', import.meta.url);
const full = printSarif(sampleReview, { profile: 'full' });
const upload = printSarif(sampleReview, { profile: 'upload' });

function runOf(text: string): Run & { results: SarifResult[] } {
  const run = (JSON.parse(text) as Log).runs[0];
  if (run?.results === undefined) throw new Error('no run');
  return { ...run, results: run.results };
}

function resultOf(ruleId: string, text = full): SarifResult {
  const result = runOf(text).results.find((one) => one.ruleId === ruleId);
  if (result === undefined) throw new Error(`no result of ${ruleId}`);
  return result;
}

describe('the schema of SARIF 2.1.0', () => {
  let validate: (log: unknown) => boolean;
  beforeAll(() => {
    // Draft-07 copy of the published schema; its license stands beside it.
    const schema = JSON.parse(
      readFileSync(new URL('data/sarif/sarif-2.1.0.schemastore.json', tests), 'utf8'),
    ) as object;
    const ajv = new Ajv({ strict: false, allErrors: true });
    addFormats.default(ajv);
    const compiled = ajv.compile(schema);
    validate = (log) => {
      const valid = compiled(log);
      if (!valid) lastErrors = ajv.errorsText(compiled.errors);
      return valid;
    };
  });
  let lastErrors = '';

  const empty: Review = { ...sampleReview, results: [], rules: [], notifications: [], details: [] };
  test.each([
    ['the full record', sampleReview, 'full'],
    ['the upload', sampleReview, 'upload'],
    ['an empty record', empty, 'full'],
    ['an empty upload', empty, 'upload'],
  ] as const)('accepts %s', (_, review, profile: SarifOptions['profile']) => {
    expect(validate(JSON.parse(printSarif(review, { profile }))), lastErrors).toBe(true);
  });

  test('refuses a log with a wrong level, so that the check above can fail', () => {
    expect(validate(JSON.parse(full.replace('"level":"error"', '"level":"fatal"')))).toBe(false);
  });
});

describe('the full record', () => {
  test('reads as it did', async () => {
    await expect(full).toMatchFileSnapshot(fileURLToPath(new URL('golden/output/sarif-full.txt', tests)));
  });

  test('is the same bytes each time, and in pieces', () => {
    expect(printSarif(sampleReview, { profile: 'full' })).toBe(full);
    expect([...sarifChunks(sampleReview, { profile: 'full' })].join('')).toBe(full);
  });

  test('holds every result, and a level only for breaches', () => {
    const { results } = runOf(full);
    expect(results.map((result) => result.kind)).toEqual(sampleReview.results.map((result) => result.kind));
    const loud = {
      ...sampleReview,
      results: sampleReview.results.map((result) => ({ ...result, level: 'error' as const })),
    };
    const levels = runOf(printSarif(loud, { profile: 'full' })).results.map((result) => result.level);
    expect(levels).toEqual(sampleReview.results.map((result) => (result.kind === 'fail' ? 'error' : 'none')));
  });

  test('points each result at its rule, its file and its region', () => {
    const run = runOf(full);
    for (const result of run.results) {
      expect(run.tool.driver.rules?.[result.ruleIndex ?? -1]?.id).toBe(result.ruleId);
      const place = result.locations?.[0]?.physicalLocation;
      expect(run.artifacts?.[place?.artifactLocation?.index ?? -1]?.location?.uri).toBe(place?.artifactLocation?.uri);
    }
    expect(resultOf('water/sill-drains').locations?.[0]?.physicalLocation?.region).toEqual({
      startLine: 12,
      startColumn: 97,
      endLine: 12,
      endColumn: 109,
      snippet: { text: 'sill: sealed' },
    });
    expect(resultOf('water/sill-drains').locations?.[0]?.logicalLocations?.[0]?.fullyQualifiedName).toBe(
      'W-3/work/set/bedding/sill',
    );
  });

  test('says first what is wrong, links the related place in the text, and repeats the clause', () => {
    const [first, ...rest] = resultOf('extend/field-lap').message.text?.split('\n') ?? [];
    expect(first).toBe('The field membrane laps 1 in onto [the jamb flashing](1).');
    expect(rest.join('\n')).toContain('Also asked by: IRC R703.4 (code; from memory, confirm)');
    expect(resultOf('extend/field-lap').relatedLocations?.[0]?.id).toBe(1);
  });

  test('links a related place in a sentence of its own when the message does not name it', () => {
    expect(resultOf('water/sill-drains').message.text).toContain('sealed. See [End of the back dam](1).');
  });

  // SARIF 2.1.0 sections 3.11.5 and 3.11.6.
  test('lets no text of a document become a link or a placeholder', () => {
    const text = resultOf('document/wrong-value').message.text ?? '';
    expect(text).toContain('\\[link\\](http://example.com) {{0}}');
    expect(text).not.toMatch(/(?<!\\)\]\(/);
  });

  test('gives the path of the water as one thread flow with the breach essential', () => {
    const flow = resultOf('water/sill-drains').codeFlows?.[0]?.threadFlows[0]?.locations ?? [];
    expect(flow.map((step) => [step.location?.physicalLocation?.region?.startLine, step.importance])).toEqual([
      [7, 'important'],
      [9, 'important'],
      [12, 'essential'],
    ]);
  });

  // SARIF 2.1.0 section 3.27.23: all results of a run have the list, or none.
  test('marks an accepted deviation, and only that, as suppressed', () => {
    const { results } = runOf(full);
    expect(results.map((result) => result.suppressions?.length)).toEqual(
      sampleReview.results.map((result) => (result.suppression ? 1 : 0)),
    );
    expect(resultOf('extend/onto-wall').suppressions?.[0]).toMatchObject({
      kind: 'inSource',
      status: 'accepted',
      properties: { until: '2031-06-30' },
      location: { physicalLocation: { artifactLocation: { uri: 'lapwright.yaml' }, region: { startLine: 3 } } },
    });
  });

  test('ties rules and results to their clauses', () => {
    const run = runOf(full);
    const targets = [
      ...(run.tool.driver.rules ?? []).flatMap((rule) => (rule.relationships ?? []).map((one) => one.target)),
      ...run.results.flatMap((result) => result.taxa ?? []),
    ];
    expect(targets.length).toBeGreaterThan(8);
    for (const target of targets) {
      const component = run.taxonomies?.[target.toolComponent?.index ?? -1];
      expect(component?.name).toBe(target.toolComponent?.name);
      expect(component?.taxa?.[target.index ?? -1]?.id).toBe(target.id);
    }
    expect(run.taxonomies?.map((one) => one.name)).toEqual(['code', 'specification', 'guide', 'practice', 'physics']);
  });

  test('keeps the fingerprint under its own name', () => {
    expect(resultOf('extend/field-lap').partialFingerprints).toEqual({
      'lapwrightResult/v1': 'extend/field-lap#W-3#work/2/lapsOnto',
    });
  });

  test('does not call a review successful that could not run, or in which a rule broke', () => {
    const success = (review: Review): boolean | undefined =>
      runOf(printSarif(review, { profile: 'full' })).invocations?.[0]?.executionSuccessful;
    expect(success(sampleReview)).toBe(true);
    expect(success({ ...sampleReview, exitCode: 2 })).toBe(false);
    expect(success({ ...sampleReview, notifications: [{ level: 'error', message: 'A rule stopped.' }] })).toBe(false);
  });

  test('encodes a space in a file name', () => {
    expect(resultOf('document/wrong-value').locations?.[0]?.physicalLocation?.artifactLocation?.uri).toBe(
      'walls/b%201.md',
    );
  });
});

describe('the upload', () => {
  test('reads as it did', async () => {
    await expect(upload).toMatchFileSnapshot(fileURLToPath(new URL('golden/output/sarif-upload.txt', tests)));
  });

  test('holds breaches only, none of them accepted', () => {
    expect(runOf(upload).results.map((result) => result.ruleId)).toEqual([
      'document/wrong-value',
      'extend/field-lap',
      'water/sill-drains',
    ]);
    expect(upload).not.toContain('suppressions');
  });

  // Required properties: GitHub Docs, SARIF support for code scanning.
  test('gives each rule and result what the service requires', () => {
    const run = runOf(upload);
    for (const rule of run.tool.driver.rules ?? []) {
      for (const text of [rule.shortDescription?.text, rule.fullDescription?.text, rule.help?.text])
        expect(text).toBeTruthy();
    }
    for (const result of run.results) {
      const place = result.locations?.[0]?.physicalLocation;
      expect(place?.artifactLocation?.uri).toBeTruthy();
      expect(Object.keys(place?.region ?? {})).toEqual(['startLine', 'startColumn', 'endLine', 'endColumn']);
      expect(Object.keys(result.partialFingerprints ?? {})).not.toEqual([]);
    }
  });

  test('names no artifact list it does not carry', () => {
    expect(upload).not.toContain('"artifacts"');
    expect(runOf(upload).results[0]?.locations?.[0]?.physicalLocation?.artifactLocation).not.toHaveProperty('index');
  });
});
