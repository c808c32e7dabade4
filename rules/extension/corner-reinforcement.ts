import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import { flashingAt } from '../../src/geometry/around-opening.js';
import { isFluid } from '../../src/model/families.js';
import { SIDES, type Apply, type Place } from '../../src/model/types.js';
import { HABIT, habit } from '../../src/water/laps.js';

const CORNERS = ['inside corners', 'opening edges'] as const satisfies readonly Place[];

/** Corners of openings that are flashed with a coat have a fillet or strip under it. */
export default defineRule({
  id: 'extension/corner-reinforcement',
  title: 'Reinforcement at the corners of the opening',
  summary:
    'Inside corners and edges of an opening with fluid-applied flashing are treated first, with legs of the width asked for.',
  level: 'warning',
  reads: ['work.place', 'work.extends', 'product.least.cornerLeg'],
  sources: [HABIT],
  parameters: {
    leg: {
      type: 'length',
      default: '3 in',
      meaning: 'width of a corner strip on each face where no document of the project states one',
      source: HABIT,
    },
  },
  *review({ detail, face, limit, number }) {
    for (const opening of detail.openings) {
      const coated = SIDES.flatMap((side) => flashingAt(face, opening, side)).find((p) => isFluid(p.apply.family));
      const treats = (place: Place): Apply[] =>
        detail.work.filter(
          (w): w is Apply =>
            w.action === 'apply' && w.openings.includes(opening) && w.places.some((p) => p.value === place),
        );
      const judged = new Set<Apply>();
      if (coated !== undefined && CORNERS.every((place) => treats(place).length === 0)) {
        yield {
          kind: 'fail',
          subject: `corners of ${opening.id}`,
          at: coated.at,
          sources: this.sources,
          required: 'treatment of corners and edges',
          provided: 'none',
          message: `The inside corners and edges of "${opening.id}" have no fillet or strip under the fluid-applied flashing "${coated.work.id}".`,
          correct: `Reinforce the corners and edges of the opening before "${coated.work.id}". Add work with "place: [inside corners, opening edges]" and "of: ${opening.id}".`,
        };
        continue;
      }
      for (const place of CORNERS) {
        const treatments = treats(place);
        const subject = `${place} of ${opening.id}`;
        if (treatments.length === 0) {
          if (coated === undefined) continue;
          yield {
            // The other place is treated, which shows that corners were thought of.
            kind: 'fail',
            level: 'note',
            subject,
            at: coated.at,
            sources: this.sources,
            required: `treatment of the ${place}`,
            provided: 'none',
            message: `The ${place} of "${opening.id}" have no fillet or strip under the fluid-applied flashing "${coated.work.id}".`,
            correct: `Reinforce the ${place} of the opening before "${coated.work.id}". Add work with "place: ${place}" and "of: ${opening.id}".`,
          };
          continue;
        }
        for (const work of treatments) {
          if (judged.has(work)) continue;
          judged.add(work);
          if (work.extendsMm === undefined) {
            yield {
              kind: 'open',
              subject,
              at: work.at,
              missing: ['work.extends'],
              message: `"${work.id}" does not say how wide it is on each face of the corner; add "extends".`,
            };
            continue;
          }
          const both = CORNERS.every((c) => treats(c).includes(work));
          yield againstLimit({
            subject: both ? `corners of ${opening.id}` : subject,
            at: work.extendsMm.at,
            dimension: 'length',
            comparison: 'at least',
            like: work.extendsMm,
            provided: work.extendsMm.value,
            // How wide a fillet has to be depends on its film; only the data sheet can say.
            limit: limit({
              property: 'corner leg',
              subject: 'corner treatment',
              product: work.product,
              comparison: 'at least',
              offered: isFluid(work.family) ? [] : habit(number('leg')),
            }),
            sentence: (p) => `"${work.id}" has legs of ${p} at the corners of "${opening.id}"`,
            correct: (required) => `Widen "${work.id}" to ${required} on each face ("extends").`,
            missing: ['product.least.cornerLeg', 'a specification requirement for "corner leg"'],
          });
        }
      }
    }
  },
});
