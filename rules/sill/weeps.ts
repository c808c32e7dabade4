import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { coversSide, worksAt } from '../../src/water/at-opening.js';

const PRACTICE: Source = {
  basis: 'practice',
  citation: 'common practice: weeps at the sill line',
  provenance: 'common practice, no source',
};

/** An exterior seal that runs along the sill leaves weeps. */
export default defineRule({
  id: 'sill/weeps',
  title: 'Weeps at the sill',
  summary: 'An exterior seal that runs along the sill leaves enough weeps, close enough together.',
  level: 'warning',
  reads: ['work.weeps', 'work.sides', 'openings.roughOpening.width'],
  sources: [PRACTICE],
  parameters: {
    count: { type: 'count', default: 2, meaning: 'least number of weeps at each sill', source: PRACTICE },
    spacing: { type: 'length', default: '24 in', meaning: 'greatest distance from weep to weep', source: PRACTICE },
  },
  *review({ detail, limit, number }) {
    for (const opening of detail.openings) {
      for (const seal of worksAt(detail, opening, 'exterior perimeter').filter((w) => coversSide(w, 'sill'))) {
        const { weeps } = seal;
        const about = `The exterior seal "${seal.id}" at the sill of "${opening.id}"`;
        const query = { subject: 'exterior seal', product: seal.product } as const;
        const counted = limit({
          ...query,
          property: 'weep count',
          comparison: 'at least',
          offered: [{ value: number('count'), text: String(number('count')), source: PRACTICE }],
        });
        const ofCount = {
          subject: `weeps at the sill of ${opening.id}`,
          dimension: 'count',
          comparison: 'at least',
          limit: counted,
          missing: ['work.weeps.count'],
          correct: (required: string) =>
            `Leave ${required} weeps in "${seal.id}" at the sill ("weeps: { count, spacing }"), or leave the sill out of its "sides".`,
        } as const;
        if (weeps === undefined) {
          yield againstLimit({ ...ofCount, at: seal.at, provided: 0, sentence: () => `${about} declares no weeps` });
          continue;
        }
        if (weeps.count === undefined)
          yield {
            kind: 'open',
            message: `${about} does not say how many weeps it leaves; declare "count".`,
            at: weeps.at,
            subject: ofCount.subject,
            missing: ['work.weeps.count'],
            sources: [PRACTICE],
          };
        else {
          const outcome = againstLimit({
            ...ofCount,
            at: weeps.count.at,
            provided: weeps.count.value,
            sentence: (p) => `${about} leaves ${p} weeps`,
          });
          yield outcome;
          if (weeps.count.value === 0) continue;
        }
        const spaced = limit({
          ...query,
          property: 'weep spacing',
          comparison: 'at most',
          offered: [
            {
              value: number('spacing'),
              text: formatQuantity(number('spacing'), 'length', opening.widthMm),
              source: PRACTICE,
            },
          ],
        });
        const subject = `weep spacing at the sill of ${opening.id}`;
        if (weeps.spacingMm !== undefined) {
          yield againstLimit({
            subject,
            at: weeps.spacingMm.at,
            dimension: 'length',
            provided: weeps.spacingMm.value,
            like: weeps.spacingMm,
            comparison: 'at most',
            limit: spaced,
            sentence: (p) => `${about} leaves weeps ${p} apart`,
            correct: (required) => `Set the weeps of "${seal.id}" ${required} apart.`,
            missing: ['work.weeps.spacing'],
          });
        } else if (spaced !== undefined && opening.widthMm.value > spaced.value) {
          yield {
            kind: 'open',
            message: `${about} does not say how far apart its weeps are, and the sill is ${opening.widthMm.text} wide; declare "spacing".`,
            at: weeps.at,
            subject,
            required: `at most ${spaced.text}`,
            missing: ['work.weeps.spacing'],
            sources: [spaced.source],
          };
        }
      }
    }
  },
});
