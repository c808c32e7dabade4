/** The demo's second submission: the folder as it stood later, and what became of each finding. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { DATE, DEMO, lapwright, ROOT } from './support/command.js';

const LATER = path.join(ROOT, 'fixtures/demo-resubmitted');
const SUBMITTAL = 'submittal-07-27-26-03.md';

describe('the second submission of the demo', () => {
  it('stands among the same project, specification and products', () => {
    const products = readdirSync(path.join(DEMO, 'products')).map((name) => `products/${name}`);
    for (const name of ['lapwright.yaml', 'project.yaml', 'specification.md', ...products])
      expect(readFileSync(path.join(LATER, name), 'utf8'), name).toBe(readFileSync(path.join(DEMO, name), 'utf8'));
  });

  it('corrects all but the collar, which is wider and still short', async () => {
    const { out } = await lapwright([
      ...['compare', path.join(DEMO, SUBMITTAL), path.join(LATER, SUBMITTAL)],
      ...['--date', DATE, '--format', 'terminal', '--fail-on', 'never'],
    ]);
    const told = out.replace(/\s+/g, ' ');
    expect(told).toMatch(/\d+ corrected, 5 still open, 0 new, 0 newly broken; 1 newly open; 1 answered; 2 accepted/);
    const [, open] = out.split(/^Still open/m);
    // By hand: 2 in, then 2-1/2 in, of 3 in that 3.4.A asks for.
    expect(open?.replace(/\s+/g, ' ')).toContain('2 in -> 2-1/2 in; required at least 3 in');
    expect(open).toContain('extension/penetration-collar');
  });

  it('is answered by a letter that asks for one correction and one answer', async () => {
    const { out } = await lapwright([
      ...['review', path.join(LATER, SUBMITTAL)],
      ...['--date', DATE, '--format', 'markdown', '--fail-on', 'never'],
    ]);
    const corrections = out.split('## To be corrected')[1]!.split('\n## ')[0]!;
    expect(corrections.match(/^- \*\*\d+\. /gm)?.length).toBe(1);
    expect(corrections).toContain('Collars at penetrations');
    const questions = out.split('## Questions')[1]!.split('\n## ')[0]!;
    expect(questions).toContain('For the contractor');
    expect(out).toContain('accepted by architect of record until 2026-12-31');
  });
});
