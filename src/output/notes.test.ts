import { expect, test } from 'vitest';
import { sampleReview } from '../../tests/golden/output/sample-review.js';
import { printJson } from './json.js';
import { printMarkdown } from './markdown.js';
import { printSarif } from './sarif.js';
import { printTerminal } from './terminal.js';

const NOTES = ['Indoor air is that of normal occupancy.', 'Air that leaks is not counted.'];
const noted = {
  ...sampleReview,
  results: sampleReview.results.map((r) => (r.kind === 'fail' ? { ...r, notes: NOTES } : r)),
};

test('notes stand whole in files and are counted on a terminal', () => {
  for (const text of [printMarkdown(noted), printJson(noted), printSarif(noted, { profile: 'full' })])
    for (const note of NOTES) expect(text.replace(/\s+/g, ' ')).toContain(note);
  const terminal = printTerminal(noted, { color: false, columns: 80 });
  expect(terminal).toContain('2 notes on what this rests on');
  expect(terminal).not.toContain(NOTES[1]);
});
