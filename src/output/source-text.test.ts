import { expect, test } from 'vitest';
import { sampleReview } from '../../tests/golden/output/sample-review.js';
import { shortSourceLabels, sourceLabels, sourceText } from './source-text.js';

test('a source always says how well it is known', () => {
  expect(sourceText({ basis: 'code', citation: 'IRC R703.4', provenance: 'from memory, confirm' })).toBe(
    'IRC R703.4 (code; from memory, confirm)',
  );
  expect(sourceText({ basis: 'physics', citation: 'p = rho g h', provenance: 'computed' })).toBe(
    'p = rho g h (physics; computed)',
  );
});

test('common practice is said once', () => {
  expect(sourceText({ basis: 'practice', citation: 'common practice', provenance: 'common practice, no source' })).toBe(
    'common practice, no source',
  );
  expect(
    sourceText({ basis: 'practice', citation: 'half the width of a joint', provenance: 'common practice, no source' }),
  ).toBe('half the width of a joint (practice; common practice, no source)');
});

test('a project document is cited with its line, and the governing source stands apart from the others', () => {
  const sources = sampleReview.results.find((result) => result.ruleId === 'extend/field-lap')?.sources ?? [];
  expect(sourceLabels(sources)).toEqual([
    { label: 'source', text: 'Section 07 27 26, 3.4.B (specification; project document, at spec/07-27-26.md:3)' },
    { label: 'also', text: 'IRC R703.4 (code; from memory, confirm)' },
  ]);
});

test('only a code is to be confirmed in the code', () => {
  const unsure = { citation: 'C', provenance: 'seen at second hand' } as const;
  expect(shortSourceLabels([{ basis: 'code', ...unsure }])[0]?.text).toBe('C (code; confirm in the code)');
  expect(shortSourceLabels([{ basis: 'guide', ...unsure }])[0]?.text).toBe('C (guide; confirm in the source)');
});
