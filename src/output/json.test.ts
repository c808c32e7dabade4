import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { sampleReview } from '../../tests/golden/output/sample-review.js';
import { jsonChunks, printJson } from './json.js';

const text = printJson(sampleReview);
const parsed = JSON.parse(text) as { results: Record<string, unknown>[]; suggestedAction: unknown };

describe('the JSON of a review', () => {
  test('reads as it did', async () => {
    await expect(text).toMatchFileSnapshot(
      fileURLToPath(new URL('../../tests/golden/output/json.txt', import.meta.url)),
    );
  });

  test('holds every result, in order, with its place and facts', () => {
    expect(parsed.results).toHaveLength(sampleReview.results.length);
    expect(parsed.results.map((result) => result['rule'])).toEqual(sampleReview.results.map((result) => result.ruleId));
    expect(parsed.results[5]).toMatchObject({
      file: 'walls/w-3.yaml',
      line: 11,
      column: 59,
      kind: 'fail',
      level: 'warning',
      required: '2 in',
      provided: '1 in',
      sources: [{ basis: 'specification', file: 'spec/07-27-26.md', line: 3 }, { citation: 'IRC R703.4' }],
    });
  });

  test('keeps the text of documents unchanged', () => {
    expect(parsed.results[0]?.['provided']).toBe(sampleReview.results[0]?.provided);
  });

  test('puts each result on a line of its own', () => {
    expect(text.split('\n').filter((line) => line.startsWith('{"file"'))).toHaveLength(sampleReview.results.length);
  });

  test('is valid with no results, and says null when no action is supported', () => {
    const empty = JSON.parse(printJson({ ...sampleReview, results: [] })) as {
      results: unknown[];
      suggestedAction: unknown;
    };
    expect(empty).toMatchObject({ results: [], suggestedAction: null });
  });

  test('is the same text in pieces', () => {
    expect([...jsonChunks(sampleReview)].join('')).toBe(text);
  });
});
