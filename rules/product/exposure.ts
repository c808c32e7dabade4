import { defineRule } from '../../src/engine/rule.js';
import { againstLimit } from '../../src/engine/against-limit.js';
import type { Source } from '../../src/engine/result.js';
import { declaredBetweenS, hangsOver } from '../../src/model/order.js';
import { productsUsed } from '../../src/model/products-used.js';
import type { Apply, Detail, Measured, Product, Work } from '../../src/model/types.js';

const CLAUSE: Source = {
  basis: 'guide',
  citation: 'Air Barrier Association of America, master specification 07 27 26 (2014), exposure before it is covered',
  provenance: 'seen',
};
const DATA: Source = {
  basis: 'product data',
  citation: 'exposure limit of the data sheet',
  provenance: 'project document',
};

/** The first work that hangs insulation, furring or cladding over a product, with the one that put the product on. */
function covering(detail: Detail, product: Product): { from: Apply; by: Work; seconds: number } | undefined {
  for (const from of detail.work) {
    if (from.action !== 'apply' || (from.product ?? from.layer?.product) !== product) continue;
    const by = detail.work.find((w) => w.step > from.step && w.action === 'apply' && hangsOver(detail, w, from));
    const seconds = by === undefined ? undefined : declaredBetweenS(detail, from, by);
    if (by !== undefined && seconds !== undefined) return { from, by, seconds };
  }
  return undefined;
}

/** Nothing stays uncovered longer than its data sheet allows. */
export default defineRule({
  id: 'product/exposure',
  title: 'Exposure before cover',
  summary: 'No product stays uncovered longer than its data sheet allows.',
  level: 'error',
  once: 'per product',
  reads: ['product.exposureLimit', 'project.siteConditions.uncovered', 'work.wait'],
  sources: [DATA, CLAUSE],
  caution:
    'The waits are those that the documents state, not those on site. What has been uncovered too long is for its manufacturer to judge.',
  *review({ detail }) {
    const used = productsUsed(detail, () => true).flatMap(({ product }) =>
      product.exposureLimitS === undefined ? [] : [{ product, most: product.exposureLimitS }],
    );
    const planned = detail.project?.uncoveredS;
    const hold = (product: Product, most: Measured) => ({
      dimension: 'time' as const,
      comparison: 'at most' as const,
      limit: {
        value: most.value,
        text: most.text,
        source: { ...DATA, citation: `product data of ${product.id}`, at: most.at },
        others: [],
      },
      missing: [],
    });
    for (const { product, most } of used) {
      const wait = covering(detail, product);
      // Waits alone only show the least time; they can break the limit but not keep it.
      if (wait !== undefined && wait.seconds > most.value)
        yield againstLimit({
          ...hold(product, most),
          subject: `waits over ${product.id}`,
          at: wait.from.at,
          provided: wait.seconds,
          sentence: (p) => `Between "${wait.from.id}" (${product.id}) and "${wait.by.id}" the waits add up to ${p}`,
          correct: (required) => `Cover "${product.id}" after ${required}, or use a product that may stay longer.`,
          related: [{ message: `"${wait.by.id}" covers it`, at: wait.by.at }],
        });
      const subject = `exposure of ${product.id}`;
      // What is planned holds for all details of a project: it is told once, with the limit of the product.
      if (planned === undefined) {
        yield {
          kind: 'open',
          message: `"${product.id}" may stay uncovered for ${most.text}, and how long the work stays so is not said; state "siteConditions: { uncovered: ... }" in the project.`,
          at: most.at,
          subject,
          required: `at most ${most.text}`,
          missing: ['project.siteConditions.uncovered'],
          sources: [{ ...DATA, citation: `product data of ${product.id}`, at: most.at }, CLAUSE],
        };
        continue;
      }
      yield againstLimit({
        ...hold(product, most),
        subject,
        at: most.at,
        provided: planned.upper ?? planned.value,
        like: planned,
        sentence: (p) => `The project plans to leave work uncovered for ${p}, "${product.id}" with it`,
        correct: (required) => `Cover "${product.id}" after ${required}, or use a product that may stay longer.`,
        related: [{ message: 'the time planned', at: planned.at }],
      });
    }
  },
});
