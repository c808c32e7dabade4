import { againstLimit } from '../../src/engine/against-limit.js';
import type { OfferedLimit } from '../../src/engine/limits.js';
import { defineRule } from '../../src/engine/rule.js';
import { flashingAt, FLASHING_SUBJECT, isApplied } from '../../src/geometry/around-opening.js';
import { returnDepth } from '../../src/geometry/overlap.js';
import { openingRect } from '../../src/geometry/pieces.js';
import { SIDES } from '../../src/model/types.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { HABIT, linesOpening } from '../../src/water/laps.js';

/** Opening flashing reaches inward to where the interior seal is bonded. */
export default defineRule({
  id: 'extension/into-opening',
  title: 'Flashing reach into the opening',
  summary: 'Flashing of the sill, jambs and head runs far enough into the opening for the interior seal to bond to it.',
  level: 'error',
  reads: ['work.intoOpening', 'openings.roughOpening.depth', 'openings.unit.frameDepth', 'product.least.intoOpening'],
  sources: [HABIT],
  parameters: {
    bond: {
      type: 'length',
      default: '1/2 in',
      meaning: 'width of flashing that the interior seal needs beyond the back of the frame',
      source: HABIT,
    },
  },
  *review({ detail, face, limit, number }) {
    for (const opening of detail.openings) {
      const o = openingRect(opening);
      const frame = opening.unit?.frameDepthMm;
      const set = detail.work.find((w) => w.action === 'set' && w.openings.includes(opening));
      for (const side of SIDES) {
        // What goes on after the unit covers its flange and cannot turn into the opening.
        const main = flashingAt(face, opening, side).findLast(
          (p) =>
            p.apply.intoOpeningMm !== undefined ||
            (linesOpening(p.apply.family) && (set === undefined || p.apply.step < set.step)),
        );
        if (main === undefined) continue;
        const { apply } = main;
        const into = apply.intoOpeningMm;
        const subject = `${side} of ${opening.id}`;
        if (into === undefined) {
          yield {
            kind: 'open',
            subject,
            at: main.at,
            missing: ['work.intoOpening'],
            message: `The flashing "${main.id}" at the ${subject} does not say how far it runs into the opening; add "intoOpening".`,
          };
          continue;
        }
        if (into === 'full' && opening.depthMm === undefined) {
          yield {
            kind: 'open',
            subject,
            at: opening.at,
            missing: ['openings.roughOpening.depth'],
            message: `"${main.id}" lines the full depth of the ${subject}, but the depth of the rough opening is not stated; add "depth".`,
          };
          continue;
        }
        if (into === 'full') {
          yield {
            kind: 'pass',
            subject,
            at: main.at,
            provided: `full depth, ${opening.depthMm?.text ?? ''}`,
            sources: this.sources,
            message: `"${main.id}" lines the full depth of the ${subject}.`,
          };
          continue;
        }
        const upright = side === 'left jamb' || side === 'right jamb';
        const lining = face.pieces
          .filter(isApplied)
          .filter((p) => p.opening === opening && p.sheds)
          .flatMap((p) => p.returns[side] ?? []);
        const reachMm = returnDepth(upright ? o.v0 : o.u0, upright ? o.v1 : o.u1, lining);
        const offered: OfferedLimit[] = [];
        if (frame !== undefined) {
          // Flashing cannot run farther than the opening is deep.
          const neededMm = Math.min(frame.value + number('bond'), opening.depthMm?.value ?? Infinity);
          offered.push({
            value: neededMm,
            text: `${formatQuantity(neededMm, 'length', { ...frame, toward: 'up' })} (back of the frame and ${formatQuantity(number('bond'), 'length', frame)} of bond)`,
            source: HABIT,
          });
        }
        yield againstLimit({
          subject,
          at: into.at,
          dimension: 'length',
          comparison: 'at least',
          like: into,
          provided: reachMm,
          limit: limit({
            property: 'extension into opening',
            subject: FLASHING_SUBJECT[side],
            product: main.product,
            comparison: 'at least',
            offered,
            practiceYields: false,
          }),
          sentence: (p) => `Flashing at the ${subject} runs ${p} into the opening`,
          correct: (required) => `Run "${main.id}" ${required} into the opening ("intoOpening").`,
          missing: [
            'openings.unit.frameDepth',
            'product.least.intoOpening',
            'a specification requirement for "extension into opening"',
          ],
          ...(frame === undefined ? {} : { related: [{ message: 'depth of the frame', at: frame.at }] }),
        });
      }
    }
  },
});
