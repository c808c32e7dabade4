import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import { isApplied } from '../../src/geometry/around-opening.js';
import { HABIT, habit } from '../../src/water/laps.js';

/** Each penetration of the barrier has a collar or boot that reaches beyond it all around. */
export default defineRule({
  id: 'extension/penetration-collar',
  title: 'Collars at penetrations',
  summary: 'Each penetration has a collar or boot that reaches far enough beyond it all around.',
  level: 'error',
  reads: [
    'penetrations',
    'penetrations.gap',
    'penetrations.selfSealing',
    'work.place',
    'work.extends',
    'product.least.collar',
    'product.maxGap',
  ],
  sources: [HABIT],
  parameters: {
    collar: {
      type: 'length',
      default: '3 in',
      meaning: 'reach of a collar where no document of the project states one',
      source: HABIT,
    },
  },
  *review({ detail, face, limit, number }) {
    if (detail.work.length === 0) return;
    for (const p of detail.penetrations) {
      const subject = `penetration ${p.id}`;
      const collars = face.pieces
        .filter(isApplied)
        .filter((c) => c.role === 'penetration collar' && c.penetration === p && c.sheds);
      const main = collars.at(-1);
      if (main === undefined) {
        const sealed = detail.work.find((w) => w.action === 'apply' && w.penetrations.includes(p));
        if (p.selfSealing !== undefined) {
          yield {
            kind: 'pass',
            at: p.selfSealing.at,
            subject,
            sources: this.sources,
            message: `"${p.id}" has no collar; the barrier is declared to seal around it (${p.selfSealing.value}).`,
          };
          continue;
        }
        yield {
          kind: 'fail',
          at: p.at,
          subject,
          sources: this.sources,
          required: 'a collar or boot',
          provided: sealed === undefined ? 'nothing' : `"${sealed.id}" alone`,
          message:
            sealed === undefined
              ? `Nothing seals the penetration "${p.id}" to the barrier.`
              : `The penetration "${p.id}" has "${sealed.id}" but no collar or boot that ties it to the barrier.`,
          correct: `Add work with "place: penetration" and "of: ${p.id}", or name the test that shows the barrier seals around it ("selfSealing").`,
          ...(sealed === undefined ? {} : { related: [{ message: 'the seal', at: sealed.at }] }),
        };
        continue;
      }
      const { apply } = main;
      if (collars.every((c) => c.apply.extendsMm === undefined)) {
        yield {
          kind: 'open',
          at: main.at,
          subject,
          missing: ['work.extends'],
          message: `"${apply.id}" does not say how far it reaches beyond "${p.id}"; add "extends".`,
        };
        continue;
      }
      const reach = face.collar(p, (c) => c.role === 'penetration collar' && c.sheds);
      yield againstLimit({
        subject,
        at: apply.extendsMm?.at ?? main.at,
        dimension: 'length',
        comparison: 'at least',
        like: apply.extendsMm,
        provided: reach.leastMm,
        limit: limit({
          property: 'collar extension',
          subject: 'penetration',
          product: main.product,
          comparison: 'at least',
          offered: habit(number('collar')),
        }),
        sentence: (found) => `"${apply.id}" reaches ${found} beyond the penetration "${p.id}"`,
        correct: (required) => `Carry "${apply.id}" ${required} beyond "${p.id}" all around ("extends").`,
        missing: ['product.least.collar'],
        related: [{ message: 'the penetration', at: p.at }],
      });
      const maxGap = main.product?.maxGapMm;
      if (p.gapMm !== undefined && maxGap !== undefined) {
        yield againstLimit({
          subject: `gap around ${p.id}`,
          at: p.gapMm.at,
          dimension: 'length',
          comparison: 'at most',
          like: p.gapMm,
          provided: p.gapMm.value,
          limit: {
            value: maxGap.value,
            text: maxGap.text,
            others: [],
            source: {
              basis: 'product data',
              citation: `product data of ${main.product?.id ?? ''}`,
              provenance: 'project document',
              at: maxGap.at,
            },
          },
          sentence: (found) => `The gap around "${p.id}" is ${found}`,
          correct: () => `Close the gap with a sleeve or backing, or use a collar made for it.`,
          missing: [],
        });
      }
    }
  },
});
