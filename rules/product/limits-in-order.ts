import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import { productsUsed } from '../../src/model/products-used.js';
import type { Measured, Product } from '../../src/model/types.js';
import { formatQuantity } from '../../src/quantity/format.js';

const LOGIC: Source = {
  basis: 'physics',
  citation: 'a lower limit lies below its upper limit',
  provenance: 'computed',
};
const CURE: Source = {
  basis: 'practice',
  citation: 'common practice: coats cure no slower when it is warmer',
  provenance: 'common practice, no source',
};

/** Two values of which the first may not exceed the second. */
interface Order {
  readonly what: string;
  readonly low: Measured | undefined;
  readonly high: Measured | undefined;
  readonly lowName: string;
  readonly highName: string;
}

function ordersOf(p: Product): Order[] {
  return [
    {
      what: 'application temperature',
      low: p.temperatureMinC,
      high: p.temperatureMaxC,
      lowName: 'lowest application temperature',
      highName: 'highest application temperature',
    },
    {
      what: 'service temperature',
      low: p.serviceMinC,
      high: p.serviceMaxC,
      lowName: 'lowest service temperature',
      highName: 'highest service temperature',
    },
    {
      what: 'application and service temperature',
      low: p.serviceMinC,
      high: p.temperatureMinC,
      lowName: 'lowest service temperature',
      highName: 'lowest application temperature',
    },
    {
      what: 'application and service temperature',
      low: p.temperatureMaxC,
      high: p.serviceMaxC,
      lowName: 'highest application temperature',
      highName: 'highest service temperature',
    },
    {
      what: 'lap and roll',
      low: p.least.lapMm,
      high: p.rollWidthMm,
      lowName: 'least lap',
      highName: 'width of the roll',
    },
    ...p.waits.map((w): Order => ({
      what: `wait before ${w.before.value} and exposure limit`,
      low: w.timeS,
      high: p.exposureLimitS,
      lowName: `wait before ${w.before.value}`,
      highName: 'exposure limit',
    })),
  ];
}

function* inOrder(product: Product): Iterable<Outcome> {
  for (const { what, low, high, lowName, highName } of ordersOf(product)) {
    if (low === undefined || high === undefined) continue;
    const most = high.upper ?? high.value;
    const base = {
      at: low.at,
      subject: `${what} of ${product.id}`,
      required: `at most ${high.text}`,
      provided: low.text,
      sources: [LOGIC],
      related: [{ message: highName, at: high.at }],
    };
    yield low.value <= most + 1e-9
      ? {
          kind: 'pass',
          message: `The ${lowName} of "${product.id}", ${low.text}, is not above its ${highName}, ${high.text}.`,
          ...base,
        }
      : {
          kind: 'fail',
          message: `The ${lowName} of "${product.id}", ${low.text}, is above its ${highName}, ${high.text}: both cannot be kept.`,
          correct: 'Look on the data sheet whether the two were exchanged; else ask which of them holds.',
          ...base,
        };
  }
}

/** Waits for the same purpose: the warmer, the shorter. */
function* fallingWaits(product: Product): Iterable<Outcome> {
  for (const purpose of new Set(product.waits.map((w) => w.before.value))) {
    const waits = product.waits
      .flatMap((w) => (w.before.value === purpose && w.atC !== undefined ? [{ timeS: w.timeS, atC: w.atC }] : []))
      .sort((a, b) => a.atC.value - b.atC.value);
    if (waits.length < 2) continue;
    const wrong = waits.find((w, i) => i > 0 && w.timeS.value > (waits[i - 1]?.timeS.value ?? Infinity));
    const cold = wrong === undefined ? undefined : waits[waits.indexOf(wrong) - 1];
    const subject = `waits before ${purpose} of ${product.id}`;
    if (wrong === undefined || cold === undefined) {
      yield {
        kind: 'pass',
        message: `The waits of "${product.id}" before ${purpose} grow no longer as it gets warmer.`,
        at: waits[0]?.timeS.at ?? product.at,
        subject,
        sources: [CURE],
      };
      continue;
    }
    yield {
      kind: 'fail',
      message: `"${product.id}" waits ${wrong.timeS.text} before ${purpose} at ${wrong.atC.text}, longer than the ${cold.timeS.text} at ${cold.atC.text}.`,
      at: wrong.timeS.at,
      subject,
      required: `at most ${formatQuantity(cold.timeS.value, 'time', cold.timeS)}`,
      provided: wrong.timeS.text,
      correct: 'Look on the data sheet whether times or temperatures were exchanged.',
      sources: [CURE],
      related: [{ message: 'the wait when it is colder', at: cold.timeS.at }],
    };
  }
}

/** The limits of a data sheet leave something between them. */
export default defineRule({
  id: 'product/limits-in-order',
  title: 'Order of limits of a data sheet',
  summary: 'No lower limit of a data sheet lies above its upper limit, and no wait is longer than it may stay exposed.',
  level: 'error',
  once: 'per product',
  reads: [
    'product.temperature',
    'product.serviceTemperature',
    'product.waits',
    'product.exposureLimit',
    'product.least.lap',
    'product.roll',
  ],
  sources: [LOGIC, CURE],
  *review({ detail }) {
    for (const { product } of productsUsed(detail, () => true)) {
      yield* inOrder(product);
      yield* fallingWaits(product);
    }
  },
});
