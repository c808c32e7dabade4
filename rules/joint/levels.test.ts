/** What pages cannot show: the choice of depth rule, and what the specification asks in its place. */
import { expect, it } from 'vitest';
import depth from './depth.js';
import { reviewDetail } from '../../src/engine/review.js';
import type { Rule } from '../../src/engine/rule.js';
import { readPage, reviewWith } from '../../tests/support/documents.js';

const PRODUCT = '```yaml product\nkind: product\nid: sealant\nname: Sealant\nfamily: sealant\n```\n';
const bead = (shape: string): string =>
  `\`\`\`yaml detail\nkind: detail\nid: D\ntitle: D\nopenings:\n  - { id: window, roughOpening: { width: 36 in, height: 48 in } }\nwork:\n  - { id: bead, place: interior perimeter, product: sealant, joint: { ${shape} } }\n\`\`\`\n\n${PRODUCT}\n`;
const rule = depth as unknown as Rule;

it('1/2 in of sealant in a 1/2 in joint breaks one published rule and keeps the other', async () => {
  const page = await readPage(bead('width: 1/2 in, depth: 1/2 in'));
  const values = (chosen: string) => ({
    levelOf: () => undefined,
    parametersOf: () =>
      new Map<string, string | number>([
        ['rule', chosen],
        ['tolerance', 25.4 / 16],
      ]),
    problems: [],
  });
  const fails = (chosen: string): number =>
    reviewDetail(page.detail(), { rules: [rule], settings: values(chosen), today: '2026-01-15' }).results.filter(
      (r) => r.kind === 'fail',
    ).length;
  expect([fails('half width'), fails('equal width')]).toEqual([1, 0]);
});
it('a depth that the specification states stands in place of the rule', async () => {
  const specification =
    '```yaml specification\nkind: specification\nsection: "07 92 00"\ntitle: Joint sealants\nrequirements:\n  - { paragraph: 3.4.1, property: joint depth, equals: 1/2 in }\n```\n';
  const judged = async (shape: string): Promise<string[]> =>
    reviewWith((await readPage(bead(shape) + specification)).detail(), [rule]).map((r) => `${r.kind} ${r.level}`);
  expect(await judged('width: 1/2 in, depth: 1/2 in')).toEqual(['pass none', 'pass none']);
  expect(await judged('width: 1/2 in, depth: 1/4 in')).toContain('fail error');
});
