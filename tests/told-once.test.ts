/** What is wrong in the data of a product is told once in a run, under the product, however many details use it. */
import { describe, expect, it } from 'vitest';
import { defineRule, type Rule } from '../src/engine/rule.js';
import { reviewDetail } from '../src/engine/review.js';
import { ruleSettings } from '../src/engine/settings.js';
import type { Result } from '../src/engine/result.js';
import { productsUsed } from '../src/model/products-used.js';
import { readPage } from './support/documents.js';

/** Finds every product wanting, at its own place and at the place that uses it. */
const rule = (once: boolean): Rule =>
  defineRule({
    id: 'test/wanting',
    title: 'Wanting',
    summary: 'Every product is found wanting.',
    level: 'warning',
    ...(once ? { once: 'per product' as const } : {}),
    reads: ['product'],
    sources: [{ basis: 'practice', citation: 'made for this test', provenance: 'common practice, no source' }],
    *review({ detail }) {
      for (const { product, at } of productsUsed(detail, () => true)) {
        yield { kind: 'fail', message: `${product.id} is wanting.`, at: product.at, correct: 'Mend it.' };
        yield { kind: 'fail', message: `${product.id} is used.`, at, correct: 'Mend it.' };
      }
    },
  });

const detail = (id: string, more = ''): string =>
  `\`\`\`yaml detail\nkind: detail\nid: ${id}\ntitle: ${id}\nwall:\n  - { id: a, product: P }\n${more}\`\`\`\n\n`;
const PAGE = `${detail('D-1')}${detail('D-2')}${detail('D-3', 'deviations:\n  - { rule: test/wanting, reason: agreed, acceptedBy: architect }\n')}
\`\`\`yaml product
kind: product
id: P
name: P
family: sheathing
\`\`\`
`;

async function results(once: boolean): Promise<Map<string, Result[]>> {
  const page = await readPage(PAGE);
  const rules = [rule(once)];
  const told = new Set<string>();
  const all = new Map<string, Result[]>();
  for (const id of ['D-1', 'D-2', 'D-3']) {
    const options = { rules, settings: ruleSettings(undefined, rules), today: '2026-01-15', told };
    all.set(id, [...reviewDetail(page.detail(id), options).results]);
  }
  return all;
}
const said = (some: readonly Result[] | undefined): string[] =>
  (some ?? []).map((r) => `${r.documentId}: ${r.message}`);

describe('a rule that speaks once of each product', () => {
  it('tells with the first detail, under the product; what lies in the detail is told of each', async () => {
    const all = await results(true);
    expect(said(all.get('D-1')).sort()).toEqual(['D-1: P is used.', 'P: P is wanting.']);
    expect(said(all.get('D-2'))).toEqual(['D-2: P is used.']);
  });

  it('leaves a deviation of a later detail in force', async () => {
    const all = await results(true);
    expect(said(all.get('D-3'))).toEqual(['D-3: P is used.']);
    expect(all.get('D-3')?.map((r) => r.ruleId)).not.toContain('deviation/unused');
  });

  it('differs from one that speaks in each detail', async () => {
    const all = await results(false);
    for (const id of ['D-1', 'D-2'])
      expect(said(all.get(id)).sort()).toEqual([`${id}: P is used.`, `${id}: P is wanting.`]);
  });
});
