import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { productsUsed } from '../../src/model/products-used.js';
import type { Family } from '../../src/model/types.js';

interface FlashingClass {
  readonly number: string;
  readonly kind: string;
  readonly source: Source;
}

/** The standard for each kind of flexible flashing. */
const CLASSES: Partial<Record<Family, FlashingClass>> = {
  'fluid-applied flashing': {
    number: '714',
    kind: 'fluid-applied',
    source: {
      basis: 'code',
      citation: 'AAMA 714, referenced by IRC and IBC',
      provenance: 'seen at second hand',
      url: 'https://buildingenclosureonline.com/articles/88347-aama-releases-updated-liquid-applied-flashing-standard',
    },
  },
  'self-adhered flashing': {
    number: '711',
    kind: 'self-adhered',
    source: {
      basis: 'code',
      citation: 'AAMA 711, referenced by IRC',
      provenance: 'seen at second hand',
      url: 'https://www.dwmmag.com/aama-analysis-september-2019/',
    },
  },
  'flexible flashing': {
    number: '712',
    kind: 'mechanically attached',
    source: { basis: 'standard', citation: 'AAMA 712', provenance: 'from memory, confirm' },
  },
};

const names = (standard: string, number: string): boolean =>
  new RegExp(`\\bAAMA[\\s/-]*${number}(?!\\d)`, 'i').test(standard);

/** Each flexible flashing is made to the standard of its kind. */
export default defineRule({
  id: 'submittal/standard-class-named',
  title: 'Standard of the flashing',
  summary:
    'Each flexible flashing names the standard of its kind: AAMA 714 for fluid-applied, AAMA 711 for self-adhered, AAMA 712 for mechanically attached.',
  level: 'error',
  reads: ['product.family', 'product.standards'],
  sources: Object.values(CLASSES).map((c) => c.source),
  *review({ detail }) {
    for (const { product, at } of productsUsed(detail, (family) => CLASSES[family] !== undefined)) {
      const asked = CLASSES[product.family];
      if (asked === undefined) continue;
      const designation = `AAMA ${asked.number}`;
      const base = { at, subject: `standard of ${product.id}`, sources: [asked.source], required: designation };
      const stated = product.standards.map((s) => s.value).join(', ');
      const met = product.standards.find((s) => names(s.value, asked.number));
      if (met !== undefined) {
        yield {
          kind: 'pass',
          ...base,
          provided: met.value,
          message: `The ${asked.kind} flashing "${product.id}" names ${met.value}.`,
          related: [{ message: 'standard named here', at: met.at }],
        };
      } else if (product.standards.length === 0) {
        yield {
          kind: 'open',
          ...base,
          message: `The ${asked.kind} flashing "${product.id}" names no standard; its kind has ${designation}: state "standards".`,
          missing: ['product.standards'],
          related: [{ message: 'product document', at: product.at }],
        };
      } else {
        yield {
          kind: 'fail',
          ...base,
          provided: stated,
          message: `The ${asked.kind} flashing "${product.id}" names ${stated}; its kind has ${designation} (${asked.source.citation}).`,
          correct: `Use a flashing made to ${designation}, or add it to "standards" if the data sheet states it.`,
          related: [{ message: 'standards named here', at: product.standards[0]?.at ?? product.at }],
        };
      }
    }
  },
});
