import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import { productsUsed } from '../../src/model/products-used.js';
import type { Product } from '../../src/model/types.js';
import { cupsOf } from '../../src/products/cups.js';
import { printedHalfStep } from '../../src/quantity/printed.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { classOfPermeance } from '../../src/vapor/classes.js';

const CLASSES: Source = {
  basis: 'code',
  citation: 'IRC 2021 Table R702.7(1): class I up to 0.1 perm, II up to 1.0, III up to 10, by ASTM E96 procedure A',
  provenance: 'seen',
};
const E96: Source = {
  basis: 'standard',
  citation: 'ASTM E96: procedures A, C and E by the dry cup, B and D by the wet cup',
  provenance: 'from memory, confirm',
};
const HABIT: Source = {
  basis: 'practice',
  citation: 'common practice: a wet cup shows no less than a dry cup',
  provenance: 'common practice, no source',
};

function* statedClass(product: Product): Iterable<Outcome> {
  const { vaporRetarderClass: stated, permeanceDry: dry } = product;
  if (stated === undefined) return;
  const base = {
    at: stated.at,
    subject: `class of ${product.id}`,
    provided: `class ${stated.value}`,
    sources: [CLASSES],
  };
  if (dry === undefined) {
    yield {
      kind: 'open',
      message: `The data of "${product.id}" state class ${stated.value}, and not the dry cup permeance that the class goes by.`,
      missing: ['product.permeance.dry'],
      ...base,
    };
    return;
  }
  const found = [...new Set([dry.value, dry.upper ?? dry.value].map(classOfPermeance))];
  const told = found.map((c) => (c === 'none' ? 'none of the classes' : `class ${c}`)).join(' or ');
  const agrees = found.includes(stated.value);
  const related = [{ message: `dry cup permeance ${dry.text}`, at: dry.at }];
  const message = `The data of "${product.id}" state class ${stated.value} and ${dry.text} by the dry cup, which is ${told}`;
  yield agrees
    ? { kind: 'pass', message: `${message}.`, required: told, related, ...base }
    : {
        kind: 'fail',
        message: `${message}: the two do not agree.`,
        required: told,
        related,
        correct: 'Ask for the test report, and state the class that its dry cup value gives.',
        ...base,
      };
}

function* procedure(product: Product): Iterable<Outcome> {
  const { permeanceMethod: method, permeanceDry: dry, permeanceWet: wet } = product;
  const cups = method === undefined ? undefined : cupsOf(method.value);
  if (method === undefined || cups === undefined) return;
  for (const [cup, value] of [
    ['dry', dry],
    ['wet', wet],
  ] as const) {
    if (value === undefined) continue;
    const base = {
      at: value.at,
      subject: `${cup} cup of ${product.id}`,
      required: `a procedure of the ${cup} cup`,
      provided: method.value,
      sources: [E96],
      related: [{ message: 'the method declared', at: method.at }],
    };
    yield cups.has(cup)
      ? {
          kind: 'pass',
          message: `The ${cup} cup value of "${product.id}", ${value.text}, was measured by ${method.value}.`,
          ...base,
        }
      : {
          kind: 'fail',
          message: `The data of "${product.id}" give ${value.text} as a ${cup} cup value, and the method named is of the ${cup === 'dry' ? 'wet' : 'dry'} cup: ${method.value}.`,
          correct: `Move the value to the cup it was measured by, or name the procedure of the ${cup} cup too.`,
          ...base,
        };
  }
}

function* wetOverDry(product: Product): Iterable<Outcome> {
  const { permeanceDry: dry, permeanceWet: wet } = product;
  if (dry === undefined || wet === undefined) return;
  const most = (wet.upper ?? wet.value) + printedHalfStep(wet);
  const base = {
    at: wet.at,
    subject: `wet and dry cup of ${product.id}`,
    required: `at least ${formatQuantity(dry.value, 'permeance', wet)} by the wet cup`,
    provided: wet.text,
    sources: [HABIT],
    related: [{ message: `dry cup ${dry.text}`, at: dry.at }],
  };
  yield most >= dry.value - printedHalfStep(dry)
    ? {
        kind: 'pass',
        message: `"${product.id}" has a permeance of ${wet.text} by the wet cup and ${dry.text} by the dry.`,
        ...base,
      }
    : {
        kind: 'fail',
        message: `"${product.id}" is declared with ${wet.text} by the wet cup, less than ${dry.text} by the dry cup; damp material passes no less vapor.`,
        correct: 'Look whether the two values were exchanged, or come from different films.',
        ...base,
      };
}

/** The permeance of a data sheet agrees with the class and the test it states. */
export default defineRule({
  id: 'product/permeance-agrees',
  title: 'Permeance of a data sheet',
  summary: 'The permeance of a data sheet agrees with the vapor retarder class and the test procedure that it names.',
  level: 'warning',
  once: 'per product',
  reads: ['product.permeance', 'product.permeance.method', 'product.vaporRetarderClass'],
  sources: [CLASSES, E96, HABIT],
  *review({ detail }) {
    for (const { product } of productsUsed(detail, () => true)) {
      yield* statedClass(product);
      yield* procedure(product);
      yield* wetOverDry(product);
    }
  },
});
