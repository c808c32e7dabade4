/** What pages cannot show: how strongly a lap that is too short is reported. */
import { describe, expect, it } from 'vitest';
import windDrivenRise from './wind-driven-rise.js';
import type { Rule } from '../../src/engine/rule.js';
import { readPage, reviewWith } from '../../tests/support/documents.js';

const SHEET =
  '```yaml product\nkind: product\nid: sheet\nname: Sheet barrier\nfamily: mechanically fastened sheet\n```\n';

async function levelsOf(lap: string): Promise<readonly string[]> {
  const page = await readPage(
    `\`\`\`yaml detail\nkind: detail\nid: D\ntitle: D\nopenings:\n  - { id: window, roughOpening: { width: 36 in, height: 48 in, depth: 5-1/2 in }, unit: { waterTest: 4.5 psf } }\nwork:\n  - { id: head, place: head, of: window, product: sheet, ontoWall: 9 in, pastJambs: 10 in }\n  - { id: field, place: field, product: sheet, lapsOnto: { opening flashing: ${lap} } }\n\`\`\`\n\n${SHEET}`,
  );
  const failed = reviewWith(page.detail(), [windDrivenRise as Rule]).filter((r) => r.kind === 'fail');
  for (const { sources } of failed) expect(sources?.map((s) => s.citation)).toContain('gap of a loose lap 1 mm');
  return failed.map(({ level }) => level);
}

// 4.5 psf is 215.5 Pa: 215.5 / (998 x 9.80665) = 22.0 mm of head, and 14.9 mm more by capillarity in 1 mm.
describe('a loose lap', () => {
  it('below the head alone, which is physics, is an error', async () =>
    expect(await levelsOf('20 mm')).toEqual(['error']));
  it('below what only the assumed gap adds to it is a warning', async () => {
    expect(await levelsOf('24 mm')).toEqual(['warning']);
    expect(await levelsOf('34 mm')).toEqual(['warning']);
  });
  it('above both passes', async () => expect(await levelsOf('40 mm')).toEqual([]));
});
