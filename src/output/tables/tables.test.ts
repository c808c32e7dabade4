import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { sampleReview } from '../../../tests/golden/output/sample-review.js';
import { CAUTION } from '../report.js';
import { printExplanation } from './explain.js';
import { printRulesList } from './rules-list.js';

const golden = (name: string): string =>
  fileURLToPath(new URL(`../../../tests/golden/output/${name}`, import.meta.url));

describe('the list of rules', () => {
  test('reads as it did', async () => {
    await expect(printRulesList(sampleReview.rules, 80)).toMatchFileSnapshot(golden('rules-80.txt'));
  });

  test('names every rule once, with its level', () => {
    const text = printRulesList(sampleReview.rules, 200);
    for (const rule of sampleReview.rules) {
      expect(text).toMatch(new RegExp(`^${rule.id} +${rule.level} +${rule.summary.slice(0, 20)}`, 'm'));
    }
  });

  test('sets the summary below in a narrow terminal', () => {
    const text = printRulesList(sampleReview.rules, 44);
    expect(text).toContain('water/end-dams           error\n    The pan is dammed at both ends.\n');
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(44);
  });

  test('says so when there are none', () => {
    expect(printRulesList([])).toBe('No rules are loaded.\n');
  });
});

describe('the explanation of a rule', () => {
  const rule = sampleReview.rules.find((card) => card.id === 'extend/onto-wall')!;
  const text = printExplanation(rule, { color: false, columns: 60 });

  test('reads as it did', async () => {
    await expect(text).toMatchFileSnapshot(golden('explain-60.txt'));
  });

  test('names parameters with default and source, and ends with the caution', () => {
    const joined = text.replace(/\s+/g, ' ').trim();
    expect(joined).toContain('least: Least width on the wall. Default 4 in, common practice, no source.');
    expect(joined.endsWith(CAUTION)).toBe(true);
  });

  test('does not repeat the title, but keeps another heading', () => {
    expect(text).not.toContain('WIDTH ON THE WALL');
    expect(printExplanation({ ...rule, title: 'Other' }, { color: false })).toContain('WIDTH ON THE WALL');
  });

  test('prints the caution of the rule', () => {
    const dangerous = sampleReview.rules.find((card) => card.caution !== undefined)!;
    expect(printExplanation(dangerous, { color: false })).toContain('caution     Water held in a wall rots framing');
  });
});
