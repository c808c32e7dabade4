import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import { HABIT, habit } from '../../src/water/laps.js';

/** Gaps between sheathing panels are within what the joint treatment bridges. */
export default defineRule({
  id: 'extension/sheathing-gap',
  title: 'Gap between sheathing panels',
  summary: 'Gaps between sheathing panels are no wider than the joint treatment bridges.',
  level: 'error',
  reads: ['work.place', 'work.joint.width', 'product.maxGap'],
  sources: [HABIT],
  parameters: {
    gap: {
      type: 'length',
      default: '1/4 in',
      meaning: 'widest gap where no document of the project states one',
      source: HABIT,
    },
  },
  *review({ detail, limit, number }) {
    for (const work of detail.work) {
      if (work.action !== 'apply' || !work.places.some((p) => p.value === 'sheathing joints')) continue;
      const query = {
        property: 'sheathing gap',
        subject: 'joint treatment',
        product: work.product,
        comparison: 'at most',
      } as const;
      const subject = `gaps under ${work.id}`;
      const gap = work.joint?.widthMm;
      if (gap === undefined) {
        const stated = limit(query);
        // A document that limits the gap wants it stated; otherwise nobody asks.
        if (stated !== undefined) {
          yield {
            kind: 'open',
            subject,
            at: work.at,
            missing: ['work.joint.width'],
            required: `at most ${stated.text}`,
            sources: [stated.source],
            message: `"${work.id}" does not say how wide the gaps between the panels may be; add "joint: { width }" (at most ${stated.text} by ${stated.source.citation}).`,
          };
        }
        continue;
      }
      // The widest gap that is allowed on the wall has to be bridged.
      yield againstLimit({
        subject,
        at: gap.at,
        dimension: 'length',
        comparison: 'at most',
        like: gap,
        provided: gap.upper ?? gap.value,
        limit: limit({ ...query, offered: habit(number('gap')) }),
        sentence: (p) => `The gaps between the panels under "${work.id}" are up to ${p} wide`,
        correct: (required) => `Keep the gaps to ${required}, or back them with mesh or a cover strip.`,
        missing: ['product.maxGap'],
      });
    }
  },
});
