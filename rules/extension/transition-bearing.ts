import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { shedsWater } from '../../src/model/families.js';
import type { Apply, Place } from '../../src/model/types.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { nominalMm } from '../../src/water/laps.js';

const GUIDE: Source = {
  basis: 'guide',
  citation: 'air barrier guide specifications, 3 in bearing each side',
  provenance: 'from memory, confirm',
};

/** Places where a membrane passes from one thing to another. */
const CHANGES: ReadonlySet<Place> = new Set<Place>([
  'base of wall',
  'top of wall',
  'movement joint',
  'inside corner of building',
  'outside corner of building',
]);

/** True for membranes that tie two things together; metal, sealant and rods do not bear. */
function ties(apply: Apply): boolean {
  if (!shedsWater(apply.family) || apply.family === 'metal flashing' || apply.family === 'rigid pan') return false;
  return (
    apply.family === 'transition membrane' ||
    apply.bearingMm !== undefined ||
    apply.places.some((p) => CHANGES.has(p.value))
  );
}

/** Transition membranes are bonded to sound substrate on both sides. */
export default defineRule({
  id: 'extension/transition-bearing',
  title: 'Bearing of transition membranes',
  summary: 'A transition membrane is bonded over enough width on each side of the joint or change of plane.',
  level: 'error',
  reads: ['work.place', 'work.bearing', 'product.least.bearing'],
  sources: [GUIDE],
  parameters: {
    bearing: {
      type: 'length',
      default: '3 in',
      meaning: 'bonded width on each side, taken beside what the documents of the project state',
      source: GUIDE,
    },
  },
  *review({ detail, limit, number }) {
    for (const work of detail.work) {
      if (work.action !== 'apply' || !ties(work)) continue;
      const subject = `bearing of ${work.id}`;
      if (work.bearingMm === undefined) {
        // At the base the laps onto wall and foundation say the same; they have a rule of their own.
        if (work.ontoFoundationMm !== undefined) continue;
        yield {
          kind: 'open',
          subject,
          at: work.at,
          missing: ['work.bearing'],
          message: `"${work.id}" does not say over what width it is bonded on each side; add "bearing".`,
        };
        continue;
      }
      yield againstLimit({
        subject,
        at: work.bearingMm.at,
        dimension: 'length',
        comparison: 'at least',
        like: work.bearingMm,
        provided: work.bearingMm.value,
        limit: limit({
          property: 'bearing each side',
          subject: 'transition membrane',
          product: work.product,
          comparison: 'at least',
          offered: [
            {
              value: nominalMm(number('bearing')),
              text: formatQuantity(
                work.bearingMm.system === 'SI' ? nominalMm(number('bearing')) : number('bearing'),
                'length',
                work.bearingMm,
              ),
              source: GUIDE,
            },
          ],
        }),
        sentence: (p) => `"${work.id}" is bonded over ${p} on each side`,
        correct: (required) => `Bond "${work.id}" over ${required} on each side ("bearing").`,
        missing: [],
      });
    }
  },
});
