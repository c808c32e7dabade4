import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { productsUsed } from '../../src/model/products-used.js';
import type { Measured } from '../../src/model/types.js';

const DATA: Source = {
  basis: 'product data',
  citation: 'application temperatures of the data sheet',
  provenance: 'project document',
};
const HABIT: Source = {
  basis: 'practice',
  citation: 'common practice: the weather planned for lies within the limits of each product',
  provenance: 'common practice, no source',
};

/** The weather planned for is weather that each product may be applied in. */
export default defineRule({
  id: 'product/work-temperature',
  title: 'Temperature at the work',
  summary: 'The temperatures expected during the work lie within those at which each product may be applied.',
  level: 'warning',
  once: 'per product',
  reads: ['product.temperature', 'project.siteConditions.temperature'],
  sources: [DATA, HABIT],
  *review({ detail }) {
    const { workMinC: coldest, workMaxC: warmest } = detail.project ?? {};
    // The weather holds for all details of a project: it is told once, with the limit of the product.
    for (const { product } of productsUsed(detail, () => true)) {
      const ends: readonly (readonly ['at least' | 'at most', Measured | undefined, Measured | undefined, string])[] = [
        ['at least', coldest, product.temperatureMinC, 'min'],
        ['at most', warmest, product.temperatureMaxC, 'max'],
      ];
      const open = ends.flatMap(([comparison, expected, bound, field]) =>
        bound === undefined || expected !== undefined ? [] : [{ comparison, bound, field }],
      );
      const [first] = open;
      if (first !== undefined) {
        const asked = open.map((o) => `${o.comparison} ${o.bound.text}`).join(' and ');
        yield {
          kind: 'open',
          message: `"${product.id}" is applied at ${asked}, and how ${open.map((o) => (o.field === 'min' ? 'cold' : 'warm')).join(' and ')} it gets while the work goes on is not said; state "siteConditions: { temperature: { ${open.map((o) => `${o.field}: ...`).join(', ')} } }" in the project.`,
          at: first.bound.at,
          subject: `temperature for ${product.id}`,
          required: asked,
          missing: open.map((o) => `project.siteConditions.temperature.${o.field}`),
          sources: [{ ...DATA, citation: `product data of ${product.id}`, at: first.bound.at }, HABIT],
        };
      }
      for (const [comparison, expected, bound] of ends) {
        if (bound === undefined || expected === undefined) continue;
        const isCold = comparison === 'at least';
        const subject = `${isCold ? 'lowest' : 'highest'} temperature for ${product.id}`;
        const source = { ...DATA, citation: `product data of ${product.id}`, at: bound.at };
        yield againstLimit({
          subject,
          at: bound.at,
          dimension: 'temperature',
          comparison,
          provided: expected.value,
          like: expected,
          limit: { value: bound.value, text: bound.text, source, others: [] },
          sentence: (p) =>
            `Work with "${product.id}" is expected at temperatures ${isCold ? 'as low' : 'as high'} as ${p}`,
          correct: (required) =>
            isCold
              ? `Put "${product.id}" on when air and substrate have ${required}: later in the year, in a heated enclosure, or use a product for the cold.`
              : `Put "${product.id}" on when air and substrate have ${required}: early in the day, in the shade, or use a product for the heat.`,
          missing: [],
          related: [{ message: 'the temperature expected', at: expected.at }],
        });
      }
    }
  },
});
