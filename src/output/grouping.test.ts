import { describe, expect, test } from 'vitest';
import { sampleReview } from '../../tests/golden/output/sample-review.js';
import type { Result } from '../engine/result.js';
import { acceptanceText, byDetail, missingText } from './grouping.js';

const found = (ruleId: string): Result => {
  const result = sampleReview.results.find((one) => one.ruleId === ruleId);
  if (result === undefined) throw new Error(`the sample has no ${ruleId}`);
  return result;
};

describe('results by detail', () => {
  test('follow the order of the details and keep details without results', () => {
    expect(byDetail(sampleReview).map((group) => [group.detail.id, group.findings.length])).toEqual([
      ['B|1', 1],
      ['W-3', 2],
      ['W-4', 0],
    ]);
  });

  test('stand in exactly one list each, an accepted deviation under accepted only', () => {
    const w3 = byDetail(sampleReview).find((group) => group.detail.id === 'W-3');
    expect(w3?.accepted.map((result) => result.ruleId)).toEqual(['extend/onto-wall']);
    expect(w3?.findings.map((result) => result.ruleId)).toEqual(['extend/field-lap', 'water/sill-drains']);
  });

  test('get a group of their own for a document that is not a detail', () => {
    const stray = { ...found('extend/field-lap'), documentId: 'lapwright.yaml' };
    const groups = byDetail({ details: sampleReview.details, results: [stray] });
    expect(groups.at(-1)?.detail).toEqual({ id: 'lapwright.yaml', uri: 'walls/w-3.yaml' });
  });

  test('stay with their detail when the place to change is in another file', () => {
    const elsewhere = {
      ...found('extend/field-lap'),
      file: { uri: 'products.yaml', text: 'x' },
      span: { start: 0, end: 1 },
    };
    const groups = byDetail({ details: sampleReview.details, results: [elsewhere] });
    expect(groups.filter((group) => group.findings.length > 0).map((group) => group.detail.uri)).toEqual([
      'walls/w-3.yaml',
    ]);
  });

  test('are told apart by file when two details carry one id', () => {
    const details = [
      { id: 'W-3', uri: 'other.yaml' },
      { id: 'W-3', uri: 'walls/w-3.yaml' },
    ];
    const groups = byDetail({ details, results: [found('extend/field-lap')] });
    expect(groups.map((group) => group.findings.length)).toEqual([0, 1]);
  });
});

test('an open result says what is missing', () => {
  expect(missingText(found('water/back-dam'))).toBe('openings[0].unit.waterTest');
  expect(missingText(found('seal/bedding-compatible'))).toBe('see message');
});

test('an accepted deviation says why, by whom and until when', () => {
  expect(acceptanceText(found('extend/onto-wall'))).toBe(
    'Mock-up M-1 passed its water test with this width (by architect of record, until 2031-06-30)',
  );
});
