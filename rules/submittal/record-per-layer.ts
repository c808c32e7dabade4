import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { shedsWater } from '../../src/model/families.js';
import { productsUsed } from '../../src/model/products-used.js';
import { fieldOfLayer, fieldOfWork } from '../../src/model/named-field.js';
import type { Family, Product } from '../../src/model/types.js';

const FORMAT: Source = {
  basis: 'guide',
  citation: 'UFGS 01 33 00, SD-03 product data, in three-part sections',
  provenance: 'seen',
};

/** Membranes, flashings, joint treatments and what seals between them. */
const isSubmitted = (family: Family): boolean => shedsWater(family) || family === 'sealant';

function lacking(product: Product): string[] {
  return [
    ...(product.section === undefined ? ['section'] : []),
    ...(product.dataSheet === undefined ? ['dataSheet'] : []),
    ...(product.standards.length === 0 ? ['standards'] : []),
  ];
}

/** A reviewer can look each product up: section, data sheet, standard. */
export default defineRule({
  id: 'submittal/record-per-layer',
  title: 'Product records',
  summary:
    'Each membrane, flashing and sealant names its specification section, its data sheet and the standards it meets.',
  level: 'warning',
  reads: ['product.section', 'product.dataSheet', 'product.standards', 'wall.product', 'work.product'],
  sources: [FORMAT],
  *review({ detail }) {
    for (const { product, at } of productsUsed(detail, isSubmitted)) {
      const missing = lacking(product);
      const base = {
        at,
        subject: `record of ${product.id}`,
        sources: this.sources,
        required: 'section, dataSheet and standards',
      };
      if (missing.length === 0) {
        yield {
          kind: 'pass',
          ...base,
          provided: `Section ${product.section?.value ?? ''}; ${product.dataSheet?.value ?? ''}; ${product.standards.map((s) => s.value).join(', ')}`,
          message: `The record of "${product.id}" names section, data sheet and standards.`,
        };
      } else {
        const names = missing.map((m) => `"${m}"`).join(', ');
        yield {
          kind: 'fail',
          ...base,
          provided: `no ${missing.join(', ')}`,
          message: `The record of "${product.id}" lacks ${names}, so its values cannot be traced.`,
          correct: `Add ${names} to the product document of "${product.id}".`,
          related: [{ message: `record of "${product.id}"`, at: product.at }],
        };
      }
    }
    // A generic name without a product document has no record at all.
    for (const work of detail.work) {
      if (
        work.action !== 'apply' ||
        work.productId !== undefined ||
        work.layer !== undefined ||
        !isSubmitted(work.family)
      )
        continue;
      yield {
        kind: 'open',
        at: work.at,
        subject: `record of ${work.id}`,
        sources: this.sources,
        message: `"${work.id}" names a material but no product, so there is no record to review; state "product".`,
        missing: [fieldOfWork(work, 'product')],
      };
    }
    for (const layer of detail.layers) {
      if (layer.productId !== undefined || !isSubmitted(layer.family)) continue;
      yield {
        kind: 'open',
        at: layer.at,
        subject: `record of ${layer.id}`,
        sources: this.sources,
        message: `Layer "${layer.id}" names a material but no product, so there is no record to review; state "product".`,
        missing: [fieldOfLayer(layer, 'product')],
      };
    }
  },
});
