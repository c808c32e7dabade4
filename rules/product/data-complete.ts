import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { productsUsed } from '../../src/model/products-used.js';
import type { Product } from '../../src/model/types.js';
import { missingOf, neededOf } from '../../src/products/needed-fields.js';

const DATA: Source = {
  basis: 'guide',
  citation: 'UFGS 01 33 00, SD-03 product data, in three-part sections',
  provenance: 'seen',
};
const HABIT: Source = {
  basis: 'practice',
  citation: 'common practice: the values a review of each family needs',
  provenance: 'common practice, no source',
};

/** True when the document of a product states the value that a name in `sources` means. */
function states(product: Product, name: string): boolean {
  let value: unknown = product.at.document.data;
  for (const step of name.split('.')) value = (value as Record<string, unknown> | null | undefined)?.[step];
  return value !== undefined && value !== null;
}

/** The data of a product hold what a review of its family needs, and point at nothing that is not there. */
export default defineRule({
  id: 'product/data-complete',
  title: 'Extent of product data',
  summary: 'The data of each product used hold the values that a review of its family needs.',
  level: 'note',
  once: 'per product',
  reads: ['product', 'product.sources', 'wall.product', 'work.product'],
  sources: [DATA, HABIT],
  *review({ detail }) {
    for (const { product } of productsUsed(detail, (family) => neededOf(family).length > 0)) {
      const needed = neededOf(product.family);
      const missing = missingOf(product);
      const subject = `data of ${product.id}`;
      const base = {
        at: product.at,
        subject,
        required: needed.map((f) => f.name).join(', '),
        sources: [DATA, HABIT],
      };
      if (missing.length > 0) {
        const list = missing.map((f) => `"${f.name}" (${f.use})`).join(', ');
        yield {
          kind: 'open',
          message: `The data of "${product.id}" (${product.family}) leave out ${list}; add what its data sheet says.`,
          missing: missing.map((f) => `product.${f.name}`),
          ...base,
        };
      } else {
        yield {
          kind: 'pass',
          message: `The data of "${product.id}" hold the ${needed.length === 1 ? 'value' : `${needed.length} values`} that a review of a ${product.family} needs.`,
          ...base,
        };
      }
      for (const source of product.sources) {
        if (states(product, source.value)) continue;
        yield {
          kind: 'fail',
          message: `The data of "${product.id}" say where "${source.value}" stands on the data sheet, and do not state it.`,
          at: source.at,
          subject: `source of ${source.value} of ${product.id}`,
          required: 'a value for each entry of "sources"',
          provided: 'none',
          correct: `State "${source.value}", or take it out of "sources".`,
          sources: [HABIT],
        };
      }
    }
  },
});
