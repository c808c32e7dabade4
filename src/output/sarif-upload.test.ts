import { gzipSync } from 'node:zlib';
import type { Log, Notification as SarifNotification, ThreadFlowLocation } from 'sarif';
import { describe, expect, test } from 'vitest';
import { sampleReview } from '../../tests/golden/output/sample-review.js';
import { printSarif } from './sarif.js';
import { limitResult, limitRule, selectForUpload, UPLOAD_LIMITS } from './sarif-upload.js';

const findings = sampleReview.results.filter((result) => result.kind === 'fail' && result.suppression === undefined);
const [error, warning] = [findings[0]!, findings[1]!];

// The numbers: GitHub Docs, SARIF support for code scanning, table of limits (stored copy; confirm).
describe('the limits of the service', () => {
  test('are those published', () => {
    expect(UPLOAD_LIMITS).toMatchObject({
      results: 5000,
      tagsPerRule: 10,
      flowLocationsPerResult: 1000,
      locationsPerResult: 100,
      ruleTextLength: 1024,
      ruleNameLength: 255,
      bytes: 10_000_000,
    });
  });

  test('leave a small review whole and silent', () => {
    expect(selectForUpload(sampleReview.results)).toEqual({ results: findings, notices: [] });
  });

  test('keep the gravest findings, in the order of the review, and say how many', () => {
    const { results, notices } = selectForUpload([warning, error, warning, error], 3);
    expect(results).toEqual([warning, error, error]);
    expect(notices[0]?.message).toMatch(/^3 of 4 findings/);
  });

  test('cut long rule texts, names and lists of tags', () => {
    const tags = Array.from({ length: 14 }, (_, index) => `clause ${String(index)}`);
    const { rule, notices } = limitRule({
      id: 'a/b',
      name: 'N'.repeat(300),
      shortDescription: { text: 'short' },
      fullDescription: { text: 'x'.repeat(2000) },
      properties: { tags },
    });
    expect(rule.name).toHaveLength(255);
    expect(rule.fullDescription?.text).toHaveLength(1024);
    expect(rule.shortDescription?.text).toBe('short');
    expect(rule.properties?.tags).toEqual(tags.slice(0, 10));
    expect(notices).toHaveLength(3);
  });

  test('never split a character in two', () => {
    const { rule } = limitRule({ id: 'a/b', fullDescription: { text: `${'x'.repeat(1020)}🏠${'x'.repeat(20)}` } });
    expect(rule.fullDescription?.text).toBe(`${'x'.repeat(1020)}...`);
  });

  test('keep the source and the end of a long path', () => {
    const locations: ThreadFlowLocation[] = Array.from({ length: 1500 }, (_, index) => ({ executionOrder: index + 1 }));
    const { result, notices } = limitResult({ message: { text: 'x' }, codeFlows: [{ threadFlows: [{ locations }] }] });
    const kept = result.codeFlows?.[0]?.threadFlows[0]?.locations ?? [];
    expect(kept).toHaveLength(1000);
    expect([kept[0]?.executionOrder, kept[1]?.executionOrder, kept.at(-1)?.executionOrder]).toEqual([1, 502, 1500]);
    expect(notices).toHaveLength(1);
  });

  test('keep the first of many related places', () => {
    const relatedLocations = Array.from({ length: 130 }, (_, index) => ({ id: index + 1 }));
    const { result, notices } = limitResult({ message: { text: 'x' }, relatedLocations });
    expect(result.relatedLocations?.map((place) => place.id).at(-1)).toBe(100);
    expect(notices).toHaveLength(1);
  });

  test('shorten a file that would not compress enough, and say so', { timeout: 60_000 }, () => {
    // Text without repetition does not compress: 24 random-looking megabytes in 40 findings.
    let seed = 1;
    const noise = (): string => {
      let text = '';
      while (text.length < 600_000) {
        seed = (seed * 48_271) % 2_147_483_647;
        text += seed.toString(36);
      }
      return text;
    };
    const results = Array.from({ length: 40 }, () => ({ ...error, message: noise() }));
    const text = printSarif({ ...sampleReview, results }, { profile: 'upload' });
    expect(gzipSync(text).length).toBeLessThanOrEqual(10_000_000);
    const run = (JSON.parse(text) as Log).runs[0];
    expect(run?.results?.length).toBeGreaterThan(5);
    const told = (run?.invocations?.[0]?.toolExecutionNotifications ?? []).map(
      (one: SarifNotification) => one.message.text,
    );
    expect(told.join('\n')).toMatch(/larger than the service takes[\s\S]*of 40 findings/);
  });
});
