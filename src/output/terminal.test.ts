import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { sampleReview } from '../../tests/golden/output/sample-review.js';
import { CAUTION } from './report.js';
import { printTerminal } from './terminal.js';
import { textWidth } from './text-width.js';

const golden = (name: string): string => fileURLToPath(new URL(`../../tests/golden/output/${name}`, import.meta.url));
const SGR = /\u001b\[\d+m/g;

describe('the terminal report', () => {
  test.each([44, 80, 120])('reads as it did at %i columns', async (columns) => {
    await expect(printTerminal(sampleReview, { color: false, columns })).toMatchFileSnapshot(
      golden(`terminal-${String(columns)}.txt`),
    );
  });

  test.each([40, 60, 80, 100, 200])('keeps within %i columns, and within 100', (columns) => {
    const lines = printTerminal(sampleReview, { color: false, columns }).split('\n');
    expect(Math.max(...lines.map(textWidth))).toBeLessThanOrEqual(Math.min(columns, 100));
  });

  test('says the same with and without color', () => {
    const plain = printTerminal(sampleReview, { color: false, columns: 80 });
    const colored = printTerminal(sampleReview, { color: true, columns: 80 });
    expect(colored).not.toBe(plain);
    expect(colored.replace(SGR, '')).toBe(plain);
  });

  test('obeys nothing that stands in a document', () => {
    const colored = printTerminal(sampleReview, { color: true, columns: 80 }).replace(SGR, '');
    expect(colored).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e]/);
    expect(colored).toContain('\\u{202E}desrever');
  });

  test('says nothing of a detail that has nothing to report', () => {
    expect(printTerminal(sampleReview, { color: false })).not.toContain('W-4');
  });

  test('gathers open items under what is missing', () => {
    const open = sampleReview.results.filter((result) => result.kind === 'open');
    const twice = {
      ...sampleReview,
      results: [...open, ...open.map((result) => ({ ...result, ruleId: 'water/end-dams' }))],
    };
    const text = printTerminal(twice, { color: false });
    expect(text.match(/missing: openings\[0\]\.unit\.waterTest/g)).toHaveLength(1);
    expect(text).toContain('Cannot be checked: 2');
    expect(text).toContain('[water/end-dams]');
  });

  test('ends with the suggested action and the caution, also when nothing was found', () => {
    const text = printTerminal({ ...sampleReview, results: [], notifications: [] }, { color: false, columns: 400 });
    const joined = text.replaceAll('\n', ' ');
    expect(joined).toContain('Suggested action: none (nothing was checked).');
    expect(joined.trim().endsWith(CAUTION)).toBe(true);
  });

  test('shows the caution of the rule with its finding only', () => {
    expect(printTerminal(sampleReview, { color: false }).match(/caution {3}Water held in a wall/g)).toHaveLength(1);
  });
});
