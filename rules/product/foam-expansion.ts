import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import type { Apply } from '../../src/model/types.js';

const DOE: Source = {
  basis: 'guide',
  citation: 'DOE Building America Solution Center, air sealing window and door rough openings: low-expansion foam',
  provenance: 'seen',
  url: 'https://basc.pnnl.gov/resource-guides/air-sealing-window-and-door-rough-openings',
};

/** Foam around a unit is of low expansion. */
export default defineRule({
  id: 'product/foam-expansion',
  title: 'Foam around the unit',
  summary: 'Foam in the gap around a unit is of low expansion, so that it does not bow the frame.',
  level: 'warning',
  reads: ['product.expansion', 'work.place', 'work.product'],
  sources: [DOE],
  *review({ detail }) {
    const foams = detail.work.filter(
      (w): w is Apply =>
        w.action === 'apply' &&
        w.family === 'spray foam' &&
        w.places.some((p) => p.value === 'interior perimeter' || p.value === 'exterior perimeter'),
    );
    for (const work of foams) {
      const { product } = work;
      // A generic foam has no data; that it has none is told elsewhere.
      if (product === undefined) continue;
      const base = {
        at: work.productId?.at ?? work.at,
        subject: `foam of ${work.id}`,
        required: 'low expansion',
        sources: [DOE],
      };
      const { expansion } = product;
      if (expansion === undefined)
        yield {
          kind: 'open',
          message: `"${work.id}" fills the gap around the unit with "${product.id}", whose expansion is not declared; foam that expands too much bows the frame.`,
          missing: ['product.expansion'],
          ...base,
        };
      else if (expansion.value === 'low')
        yield {
          kind: 'pass',
          message: `"${work.id}" fills the gap around the unit with foam of low expansion.`,
          provided: 'low expansion',
          ...base,
        };
      else
        yield {
          kind: 'fail',
          message: `"${work.id}" fills the gap around the unit with "${product.id}", a foam of ${expansion.value} expansion, which bows the frame.`,
          provided: `${expansion.value} expansion`,
          correct: 'Use a foam of low expansion made for windows and doors, or sealant over a backer rod.',
          related: [{ message: 'as its data sheet declares', at: expansion.at }],
          ...base,
        };
    }
  },
});
