/** Product data for every product that the details use. */
import type { Outcome, Source } from '../result.js';
import { PRODUCT_DATA } from './rules.js';
import { sourceOfItem, type SubmittalCheck } from './subject.js';
import { productsUsed } from '../../model/products-used.js';
import type { Locus } from '../../reading/types.js';

export const productData: SubmittalCheck = {
  ruleId: 'submittal/product-data',
  *review({ submittal, details, required, others }) {
    const asking = required.filter((r) => r.item.value === 'product data');
    // Where the section asks for it, the section governs; a proposal nobody confirmed does not.
    const sources: readonly Source[] = [...asking.filter((r) => r.confirmed).map(sourceOfItem), ...PRODUCT_DATA];
    const uses = new Map<string, { readonly at: Locus; readonly details: Set<string> }>();
    for (const { detail } of details) {
      if (detail === undefined) continue;
      for (const { product, at } of productsUsed(detail, () => true)) {
        const known = uses.get(product.id);
        if (known === undefined) uses.set(product.id, { at, details: new Set([detail.id]) });
        else known.details.add(detail.id);
      }
    }
    const data = submittal.contains.filter((c) => c.item.value === 'product data');
    const unclear = data.filter((c) => c.of.length === 0);
    for (const [id, use] of uses) {
      const where = [...use.details].join(', ');
      const sent = data.find((c) => c.of.some((o) => o.value === id));
      const base = {
        at: sent?.at ?? { document: submittal.document, path: ['contains'] },
        subject: `product data of ${id}`,
        required: `product data of ${id}`,
        sources,
        related: [{ message: `"${id}" is used in ${where}`, at: use.at }],
      };
      yield outcomeFor();

      function outcomeFor(): Outcome {
        if (sent !== undefined) {
          const elsewhere = sent.sentWith?.value;
          if (elsewhere !== undefined && others.get(elsewhere) === undefined)
            return {
              ...base,
              kind: 'review',
              provided: `${sent.title.value}, sent with ${elsewhere}`,
              message: `Product data of "${id}" is said to be sent with ${elsewhere}, which is not part of this review: see the submittal log.`,
            };
          return {
            ...base,
            kind: 'pass',
            provided: sent.title.value,
            message: `"${sent.title.value}" is product data of "${id}".`,
          };
        }
        if (unclear.length > 0)
          return {
            ...base,
            kind: 'open',
            provided: unclear.map((c) => c.title.value).join(', '),
            message: `"${id}" is used in ${where}, and ${unclear.map((c) => `"${c.title.value}"`).join(', ')} does not say which product it is about: state "of".`,
            missing: unclear.map((c) => `contains[${c.index}].of`),
          };
        return {
          ...base,
          kind: 'fail',
          provided: `no product data of ${id}`,
          message: `"${id}" is used in ${where}, and the submittal contains no product data of it.`,
          correct: `Send in the product data of "${id}", or name the submittal that it was sent with. List it under "contains", and the other submittal under "sentWith".`,
        };
      }
    }
  },
};
