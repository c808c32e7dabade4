import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { isFluid } from '../../src/model/families.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { panOf } from '../../src/water/at-opening.js';

const LEVEL: Source = {
  basis: 'physics',
  citation: 'water leaves over the lowest edge: end dams no lower than the back dam',
  provenance: 'computed',
};
const UPTURN: Source = {
  basis: 'practice',
  citation: 'common practice: upturn of membrane pans at the jambs',
  provenance: 'common practice, no source',
};

/** Pan ends turn up the jambs: no lower than the back dam, and further where the pan is a membrane. */
export default defineRule({
  id: 'sill/end-dam-height',
  title: 'End dams of the pan',
  summary: 'The ends of the sill pan turn up the jambs, no lower than the back dam.',
  level: 'error',
  reads: ['work.endDams', 'work.backDam'],
  sources: [LEVEL, UPTURN],
  parameters: {
    upturn: {
      type: 'length',
      default: '6 in',
      meaning: 'least upturn of a membrane pan at the jambs where no document of the project states one',
      source: UPTURN,
    },
  },
  *review({ detail, limit, number }) {
    for (const opening of detail.openings) {
      const pan = panOf(detail, opening);
      if (pan === undefined) continue;
      const { endDamsMm: ends, backDamMm: back } = pan;
      const subject = `end dams of ${opening.id}`;
      if (ends === undefined) {
        // Fluid work that runs on up the jambs in the same step has no end to turn up.
        if (isFluid(pan.family) && pan.places.some((p) => p.value === 'jambs' || p.value === 'opening edges')) {
          yield {
            kind: 'pass',
            message: `The pan "${pan.id}" of "${opening.id}" runs on up the jambs in the same fluid-applied work.`,
            at: pan.at,
            subject,
            provided: 'continuous up the jambs',
            sources: [LEVEL],
          };
        } else {
          yield {
            kind: 'open',
            message: `The pan "${pan.id}" of "${opening.id}" does not say how far its ends turn up the jambs; declare "endDams".`,
            at: pan.at,
            subject,
            missing: ['work.endDams'],
            sources: [LEVEL],
          };
        }
        continue;
      }
      const query = {
        property: 'end dam height',
        subject: 'sill pan',
        product: pan.product,
        comparison: 'at least',
      } as const;
      const common = {
        subject,
        at: ends.at,
        dimension: 'length',
        provided: ends.value,
        like: ends,
        comparison: 'at least',
        missing: ['work.backDam'],
        sentence: (p: string) => `The ends of the pan "${pan.id}" of "${opening.id}" turn up ${p}`,
        correct: (required: string) => `Turn the ends of "${pan.id}" up ${required} ("endDams").`,
      } as const;
      const held = limit({
        ...query,
        offered:
          back === undefined
            ? []
            : [{ value: back.value, text: formatQuantity(back.value, 'length', ends), source: LEVEL }],
      });
      const first =
        held === undefined
          ? undefined
          : againstLimit({
              ...common,
              limit: held,
              ...(back === undefined ? {} : { related: [{ message: `back dam ${back.text}`, at: back.at }] }),
            });
      if (first !== undefined) yield first;
      else
        yield {
          kind: 'open',
          message: `The ends of the pan "${pan.id}" of "${opening.id}" turn up ${ends.text}, but the back dam they have to match is not declared; declare "backDam".`,
          at: pan.at,
          subject,
          provided: ends.text,
          missing: ['work.backDam'],
          sources: [LEVEL],
        };

      // The habit holds for membranes; a rigid or metal pan has its ends formed to the back dam.
      if (first?.kind === 'fail' || pan.family === 'rigid pan' || pan.family === 'metal flashing') continue;
      const habit = limit({
        ...query,
        offered: [{ value: number('upturn'), text: formatQuantity(number('upturn'), 'length', ends), source: UPTURN }],
      });
      if (habit?.source.basis === 'practice')
        yield againstLimit({ ...common, subject: `upturn of the pan of ${opening.id}`, limit: habit });
    }
  },
});
