import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { shedsWater } from '../../src/model/families.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { HABIT } from '../../src/water/laps.js';

const LOOP: Source = {
  basis: 'physics',
  citation: 'a loop as long as the movement is never stretched',
  provenance: 'computed',
};

/** A membrane across a movement joint has free length enough to follow it. */
export default defineRule({
  id: 'extension/movement-joint',
  title: 'Slack at movement joints',
  summary: 'A membrane across a movement joint has enough unbonded width and slack to follow the movement.',
  level: 'warning',
  reads: ['work.place', 'work.unbonded', 'work.slack', 'work.movement', 'product.movement'],
  sources: [HABIT, LOOP],
  *review({ detail }) {
    for (const work of detail.work) {
      if (work.action !== 'apply' || !shedsWater(work.family) || !work.places.some((p) => p.value === 'movement joint'))
        continue;
      const subject = `movement joint at ${work.id}`;
      const { movementMm, slackMm, unbondedMm } = work;
      if (movementMm === undefined) {
        yield {
          kind: 'open',
          subject,
          at: work.at,
          missing: ['work.movement'],
          message: `"${work.id}" crosses a movement joint whose movement is not stated; add "movement".`,
        };
        continue;
      }
      const like = movementMm;
      if (slackMm === undefined && unbondedMm === undefined) {
        yield {
          kind: 'open',
          subject,
          at: work.at,
          missing: ['work.slack', 'work.unbonded'],
          message: `"${work.id}" does not say how much of it is free to follow a movement of ${movementMm.text}; add "slack" or "unbonded".`,
        };
        continue;
      }
      const strain = work.product?.movement;
      // Where nobody says how far it may be stretched, a loop that never stretches is enough.
      if (strain === undefined && slackMm !== undefined && slackMm.value >= movementMm.value - 0.1) {
        yield {
          kind: 'pass',
          subject,
          at: slackMm.at,
          required: `at least ${movementMm.text}`,
          provided: slackMm.text,
          sources: [LOOP],
          message: `The loop of "${work.id}" (${slackMm.text}) takes up the whole movement of ${movementMm.text}.`,
        };
        continue;
      }
      if (strain === undefined || strain.value <= 0) {
        yield {
          kind: 'open',
          subject,
          at: work.product?.at ?? work.at,
          missing: ['product.movement'],
          message: `How far "${work.id}" may be stretched is not declared, so its free width cannot be judged; add "movement" to the product.`,
          related: [{ message: 'the work', at: work.at }],
        };
        continue;
      }
      const neededMm = movementMm.value / strain.value;
      yield againstLimit({
        subject,
        at: (unbondedMm ?? slackMm)?.at ?? work.at,
        dimension: 'length',
        comparison: 'at least',
        like,
        provided: (unbondedMm?.value ?? 0) + (slackMm?.value ?? 0),
        limit: {
          value: neededMm,
          text: `${formatQuantity(neededMm, 'length', { ...like, toward: 'up' })} (movement ${movementMm.text} over ${strain.text})`,
          source: HABIT,
          others: [],
        },
        sentence: (p) => `"${work.id}" has ${p} of unbonded width and slack across the movement joint`,
        correct: (required) =>
          `Leave ${required} of "${work.id}" unbonded, or give it a loop of ${movementMm.text} ("slack").`,
        missing: [],
        related: [
          { message: 'movement of the joint', at: movementMm.at },
          { message: 'movement the product takes', at: strain.at },
        ],
      });
    }
  },
});
