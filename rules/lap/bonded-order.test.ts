/** Coats that bond where they lap are spoken of in one way, whichever rule looks at them. */
import { expect, it } from 'vitest';
import bondedReverseLap from './bonded-reverse-lap.js';
import headOverJamb from './head-over-jamb.js';
import jambOverPan from './jamb-over-pan.js';
import type { Result } from '../../src/engine/result.js';
import type { Rule } from '../../src/engine/rule.js';
import { BONDED_ORDER } from '../../src/water/laps.js';
import { readPage, reviewWith } from '../../tests/support/documents.js';

const RULES = [bondedReverseLap, headOverJamb, jambOverPan] as unknown as Rule[];

/** Head first, then jambs, then pan. */
async function flashedFromTheTop(family: string): Promise<Result[]> {
  const page = await readPage(
    `\`\`\`yaml detail
kind: detail
id: D
title: D
openings:
  - { id: window, roughOpening: { width: 36 in, height: 48 in, depth: 5-1/2 in } }
work:
  - { id: head, place: head, of: window, product: strip, ontoWall: 6 in, pastJambs: 6 in, downJambs: 2 in, intoOpening: full }
  - { id: jambs, place: jambs, of: window, product: strip, ontoWall: 6 in, intoOpening: full }
  - { id: pan, place: sill, of: window, product: strip, ontoWall: 6 in, pastJambs: 6 in, intoOpening: full, endDams: 6 in }
\`\`\`

\`\`\`yaml product
kind: product
id: strip
name: Flashing
family: ${family}
\`\`\`
`,
  );
  return reviewWith(page.detail(), RULES);
}
const told = (results: readonly Result[], rule: string): Result[] => results.filter((r) => r.ruleId === rule);

it('of coats that bond, no rule says that water runs behind them, and all say the same of the order', async () => {
  const results = await flashedFromTheTop('fluid-applied flashing');
  expect(results.map((r) => r.message).join('\n')).not.toMatch(/behind|no edge/);
  for (const rule of [headOverJamb.id, jambOverPan.id]) {
    const [first] = told(results, rule).filter((r) => r.kind === 'fail');
    expect(first?.message).toContain(BONDED_ORDER);
    // One correction with the order rules, so that a letter makes one comment of them.
    expect(first?.correct).toMatch(/^Put "\w+" before "\w+"\.$/);
    expect(first?.level).toBe('warning');
    // The guide that is not followed, once.
    expect(new Set(first?.sources?.map((s) => s.citation)).size).toBe(first?.sources?.length);
  }
  const reversed = told(results, bondedReverseLap.id);
  expect(reversed.length).toBeGreaterThan(0);
  for (const result of reversed) expect(result.message).toContain(BONDED_ORDER);
});

it('of strips with an edge that is not part of a coat, the water runs behind them', async () => {
  const results = await flashedFromTheTop('flexible flashing');
  for (const rule of [headOverJamb.id, jambOverPan.id]) {
    const [first] = told(results, rule).filter((r) => r.kind === 'fail');
    expect(first?.message).toMatch(/runs behind it\.$/);
    expect(first?.level).toBe('error');
  }
});
