import { describe, expect, test } from 'vitest';
import { sampleReview } from '../../tests/golden/output/sample-review.js';
import type { Level, Notification, Result } from '../engine/result.js';
import { countResults, isFinding, plural, suggestedAction, type RuleCard } from './report.js';

const [template] = sampleReview.results;
const suppression = sampleReview.results.find((result) => result.suppression)?.suppression;
const rules = sampleReview.rules;

function made(kind: Result['kind'], level: Level = 'none', more: Partial<Result> = {}): Result {
  if (template === undefined) throw new Error('the sample has no results');
  return { ...template, kind, level, ruleId: 'lap/reverse-lap', ...more };
}

function action(
  results: Result[],
  notifications: Notification[] = [],
  cards: readonly RuleCard[] = rules,
): string | undefined {
  return suggestedAction({ results, rules: cards, notifications }).action;
}

describe('the suggested action', () => {
  const pass = made('pass');

  test('is "No exceptions taken" when all that was checked passed', () => {
    expect(action([pass])).toBe('No exceptions taken');
  });

  test('is none when nothing was checked: silence is not compliance', () => {
    expect(action([])).toBeUndefined();
    expect(action([made('notApplicable'), made('informational')])).toBeUndefined();
  });

  test('is "Make corrections noted" for warnings and notes', () => {
    expect(action([pass, made('fail', 'warning')])).toBe('Make corrections noted');
    expect(action([pass, made('fail', 'note')])).toBe('Make corrections noted');
  });

  test('is "Revise and resubmit" for one error among many passes', () => {
    expect(action([pass, pass, made('fail', 'error')])).toBe('Revise and resubmit');
  });

  test('is "Make corrections noted" when every error is corrected by a number to build to, and nothing is open', () => {
    const collar = made('fail', 'error', { ruleId: 'extension/penetration-collar', definite: true });
    expect(action([pass, collar])).toBe('Make corrections noted');
    expect(action([pass, collar, made('fail', 'error', { message: 'The sill is sealed.' })])).toBe(
      'Revise and resubmit',
    );
    expect(action([pass, collar, made('open')])).toBe('Revise and resubmit');
  });

  test('is "Questions to answer" where nothing is wrong and a missing fact could be an error', () => {
    expect(action([pass, made('open')])).toBe('Questions to answer');
    expect(action([pass, made('open'), made('fail', 'warning')])).toBe('Questions to answer');
  });

  test('does not hold against the sender what the reviewer has to judge, and stamps nothing before it is judged', () => {
    const declared = made('fail', 'error', { declared: { name: 'deviation DEV-1', reason: 'The surround.' } });
    expect(action([pass, declared])).toBeUndefined();
    expect(action([pass, made('review')])).toBeUndefined();
    const { action: word, because } = suggestedAction({
      results: [pass, declared, made('fail', 'warning')],
      rules,
      notifications: [],
    });
    expect(word).toBe('Make corrections noted');
    expect(because).toContain('1 item for the reviewer to judge');
  });

  test('takes an open item as the worst it can turn into', () => {
    expect(action([pass, made('open')])).toBe('Questions to answer');
    expect(action([pass, made('open', 'none', { ruleId: 'extend/onto-wall' })])).toBe('Make corrections noted');
  });

  test('takes an open item of a rule that is not listed as an error', () => {
    expect(action([pass, made('open', 'none', { ruleId: 'extend/onto-wall' })], [], [])).toBe('Questions to answer');
  });

  test('is none when the review itself broke, but errors found still count', () => {
    const broken: Notification[] = [{ level: 'error', message: 'A rule stopped.' }];
    expect(action([pass], broken)).toBeUndefined();
    expect(action([pass, made('fail', 'warning')], broken)).toBeUndefined();
    expect(action([pass, made('fail', 'error')], broken)).toBe('Revise and resubmit');
  });

  test('does not hold an accepted deviation against the detail, but mentions it', () => {
    if (suppression === undefined) throw new Error('the sample has no suppression');
    const { action: word, because } = suggestedAction({
      results: [pass, made('fail', 'error', { suppression })],
      rules,
      notifications: [],
    });
    expect(word).toBe('No exceptions taken');
    expect(because).toContain('1 deviation accepted');
  });

  test('says why', () => {
    expect(
      suggestedAction({
        results: [made('fail', 'error'), made('fail', 'error', { message: 'Another.' })],
        rules,
        notifications: [],
      }).because,
    ).toBe('2 errors found');
  });
});

test('every result is counted exactly once', () => {
  const counts = countResults(sampleReview.results);
  expect(counts).toEqual({
    errors: 2,
    warnings: 1,
    notes: 0,
    open: 1,
    review: 1,
    accepted: 1,
    passed: 1,
    notApplicable: 1,
    informational: 1,
  });
  expect(Object.values<number>({ ...counts }).reduce((a, b) => a + b, 0)).toBe(sampleReview.results.length);
});

test('a breach at level none is told, not a finding', () => {
  expect(isFinding(made('fail', 'none'))).toBe(false);
  expect(countResults([made('fail', 'none')]).informational).toBe(1);
});

test('one is singular', () => {
  expect([plural(0, 'error'), plural(1, 'error'), plural(2, 'error')]).toEqual(['0 errors', '1 error', '2 errors']);
});
