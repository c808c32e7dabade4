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

/** The weather planned for is weather that each product may be put on in. */
export default defineRule({
  id: 'product/work-temperature',
  title: 'Temperature at the work',
  summary: 'The temperatures expected while the work goes on lie within those each product may be put on at.',
  level: 'warning',
  reads: ['product.temperature', 'project.siteConditions.temperature'],
  sources: [DATA, HABIT],
  *review({ detail }) {
    const used = productsUsed(detail, () => true).filter(
      ({ product }) => (product.temperatureMinC ?? product.temperatureMaxC) !== undefined,
    );
    const { workMinC: coldest, workMaxC: warmest } = detail.project ?? {};
    const missing = new Set<string>();
    for (const { product, at } of used) {
      const ends: readonly (readonly ['at least' | 'at most', Measured | undefined, Measured | undefined, string])[] = [
        ['at least', coldest, product.temperatureMinC, 'min'],
        ['at most', warmest, product.temperatureMaxC, 'max'],
      ];
      for (const [comparison, expected, bound, field] of ends) {
        if (bound === undefined) continue;
        if (expected === undefined) {
          missing.add(`project.siteConditions.temperature.${field}`);
          continue;
        }
        const cold = comparison === 'at least';
        yield againstLimit({
          subject: `${cold ? 'lowest' : 'highest'} temperature for ${product.id}`,
          at,
          dimension: 'temperature',
          comparison,
          provided: expected.value,
          like: expected,
          limit: {
            value: bound.value,
            text: bound.text,
            source: { ...DATA, citation: `product data of ${product.id}`, at: bound.at },
            others: [],
          },
          sentence: (p) =>
            `Work with "${product.id}" is expected at temperatures ${cold ? 'as low' : 'as high'} as ${p}`,
          correct: (required) =>
            cold
              ? `Put "${product.id}" on when air and substrate have ${required}: later in the year, in a heated enclosure, or use a product for the cold.`
              : `Put "${product.id}" on when air and substrate have ${required}: early in the day, in the shade, or use a product for the heat.`,
          missing: [],
          related: [{ message: 'the temperature expected', at: expected.at }],
        });
      }
    }
    const [first] = used;
    if (missing.size > 0 && first !== undefined)
      yield {
        kind: 'open',
        message: `How warm it is while the work goes on is not said, and ${used.length === 1 ? 'one product has' : `${used.length} products have`} limits, such as "${first.product.id}" with ${[first.product.temperatureMinC?.text, first.product.temperatureMaxC?.text].filter((t) => t !== undefined).join(' to ')}. State "siteConditions: { temperature: ... }" in the project.`,
        at: first.at,
        subject: 'temperature at the work',
        missing: [...missing],
        sources: [DATA, HABIT],
      };
  },
});
