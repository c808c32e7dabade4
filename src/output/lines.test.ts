import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { sampleReview } from '../../tests/golden/output/sample-review.js';
import { printLines } from './lines.js';

const lines = printLines(sampleReview).split('\n').slice(0, -1);

describe('the line form', () => {
  test('reads as it did', async () => {
    await expect(printLines(sampleReview)).toMatchFileSnapshot(
      fileURLToPath(new URL('../../tests/golden/output/lines.txt', import.meta.url)),
    );
  });

  // GNU Coding Standards, Formatting Error Messages: sourcefile:lineno:column: message
  test('gives file, line, column, level, text and rule on one line each', () => {
    expect(lines).toHaveLength(5);
    for (const line of lines) expect(line).toMatch(/^[^:]+:\d+:\d+: (error|warning|note): .+ \[[a-z-]+\/[a-z-]+\]$/);
    expect(lines[2]).toBe(
      'walls/w-3.yaml:11:59: warning: The field membrane laps 1 in onto the jamb flashing. [extend/field-lap]',
    );
  });

  test('says what could not be checked and what is missing', () => {
    expect(lines[1]).toMatch(
      /note: cannot be checked: .* Missing: openings\[0\]\.unit\.waterTest\. \[water\/back-dam\]$/,
    );
  });

  test('leaves out passes and accepted deviations', () => {
    expect(lines.join('\n')).not.toMatch(/end-dams|extend\/onto-wall/);
  });

  test('repeats the caution of a rule that has one', () => {
    expect(lines[3]).toContain('Caution: Water held in a wall rots framing');
  });

  test('is empty when there is nothing to do', () => {
    expect(
      printLines({ ...sampleReview, results: sampleReview.results.filter((result) => result.kind === 'pass') }),
    ).toBe('');
  });
});
