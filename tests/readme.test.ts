/** What the README shows is what the program prints, on the demo it names. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { DEMO, lapwright, ROOT } from './support/command.js';

const README = readFileSync(path.join(ROOT, 'README.md'), 'utf8');
const DATE = '2026-03-02';
const SUBMITTAL = 'submittal-07-27-26-03.md';

/** The fenced block that follows some words. */
function blockAfter(words: string): string {
  const [, block] = /```\w*\n([\s\S]*?)```/.exec(README.slice(README.indexOf(words))) ?? [];
  if (!README.includes(words) || block === undefined) throw new Error(`the README has no block after "${words}"`);
  return block;
}
const linesOf = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '' && line !== '...');
/** Running text: white space, list signs and marks of Markdown are nothing. */
const plain = (text: string): string => text.replace(/[*#`\\>-]/g, '').replace(/\s+/g, ' ');

/** Lines of the block that are not among those printed. */
const notPrinted = (block: string, printed: string): string[] => {
  const lines = new Set(linesOf(printed));
  return linesOf(block).filter((line) => !lines.has(line));
};

describe('the README', () => {
  it('shows findings as they are printed', async () => {
    const { out } = await lapwright(['review', SUBMITTAL, '--date', DATE], { cwd: DEMO });
    expect(notPrinted(blockAfter('answers, among others'), out)).toEqual([]);
  });

  it('shows the steps as the demo has them', () => {
    const text = plain(readFileSync(path.join(DEMO, SUBMITTAL), 'utf8'));
    for (const step of blockAfter('Two of the steps').split(/\n(?=- )/)) {
      const [known = ''] = plain(step).split('...');
      expect(text).toContain(known.trim().replace(/, ?$/, ''));
    }
  });

  it('shows requirements as they are proposed', async () => {
    const { out } = await lapwright(['requirements', 'specification.md'], { cwd: DEMO });
    expect(notPrinted(blockAfter('until then nothing fails by it'), out)).toEqual([]);
  });

  it('shows the letter as it is written', async () => {
    const { out } = await lapwright(['review', SUBMITTAL, '--format', 'markdown', '--date', DATE], { cwd: DEMO });
    const printed = plain(out);
    for (const part of blockAfter('its number is that of the triangle').split(/\n(?=\S| \d)/))
      expect(printed).toContain(plain(part).trim());
  });

  it('shows rows of the matrix as they are printed', async () => {
    const { out } = await lapwright(['matrix', SUBMITTAL, '--format', 'markdown', '--date', DATE], { cwd: DEMO });
    const rows = README.split('\n').filter((line) => line.startsWith('| 3.'));
    expect(rows.length).toBeGreaterThan(1);
    expect(notPrinted(rows.join('\n'), out)).toEqual([]);
  });

  it('shows the comparison as it is printed', async () => {
    const [old, now] = ['demo', 'demo-resubmitted'].map((folder) => path.join('fixtures', folder, SUBMITTAL));
    const { out } = await lapwright(['compare', old ?? '', now ?? '', '--date', DATE], { cwd: ROOT });
    expect(notPrinted(blockAfter('with the values that changed'), out)).toEqual([]);
  });
});
