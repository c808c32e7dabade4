import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { panOf, unitSetIn } from '../../src/water/at-opening.js';

const DAM: Source = {
  basis: 'physics',
  citation: 'a shim across the way of the water holds it in the pan',
  provenance: 'computed',
};
const PRACTICE: Source = {
  basis: 'practice',
  citation: 'common practice: shims in a pan',
  provenance: 'common practice, no source',
};
/** Materials that take up water, as words of the shim's material. */
const ABSORBENT = /\b(wood|wooden|timber|plywood|cedar|pine|spruce|hardboard|fiberboard|strand board)\b/i;

/** Shims in the pan neither hold the water nor soak it up. */
export default defineRule({
  id: 'sill/shims',
  title: 'Shims in the pan',
  summary: 'Shims under the unit do not absorb water, do not run across its way, and leave a clear gap.',
  level: 'error',
  reads: ['work.shims.material', 'work.shims.continuous', 'work.shims.gap'],
  sources: [DAM, PRACTICE],
  parameters: {
    gap: { type: 'length', default: '1/8 in', meaning: 'least clear gap between pan and unit', source: PRACTICE },
  },
  *review({ detail, limit, number }) {
    for (const opening of detail.openings) {
      const pan = panOf(detail, opening);
      const set = unitSetIn(detail, opening);
      // Without a pan, or without the unit in it, there is nothing for shims to stand in.
      if (pan === undefined || set === undefined) continue;
      const { shims } = set;
      const about = `shims under the unit of "${opening.id}"`;
      const missing = [
        ...(shims?.material === undefined ? ['material'] : []),
        ...(shims?.continuous === undefined ? ['continuous'] : []),
        ...(shims?.gapMm === undefined ? ['gap'] : []),
      ];
      if (missing.length > 0) {
        yield {
          kind: 'open',
          message: `The ${about} cannot be checked: "${set.id}" does not declare ${missing.map((m) => `"${m}"`).join(', ')} under "shims".`,
          at: shims?.at ?? set.at,
          subject: `shims of ${opening.id}`,
          missing: missing.map((m) => `work.shims.${m}`),
          sources: [PRACTICE],
        };
      }
      if (shims?.continuous !== undefined) {
        const base = {
          at: shims.continuous.at,
          subject: `shims of ${opening.id}, way of the water`,
          required: 'shims with gaps between them',
          sources: [DAM, PRACTICE],
        };
        yield shims.continuous.value
          ? {
              kind: 'fail',
              message: `The ${about} run across the way of the water: the pan "${pan.id}" cannot drain.`,
              provided: 'continuous',
              correct: 'Use separate shims with gaps between them ("continuous: false").',
              related: [{ message: 'the pan that has to drain', at: pan.at }],
              ...base,
            }
          : {
              kind: 'pass',
              message: `The ${about} leave the way of the water free.`,
              provided: 'not continuous',
              ...base,
            };
      }
      if (shims?.material !== undefined) {
        const base = {
          at: shims.material.at,
          subject: `shims of ${opening.id}, material`,
          required: 'a material that does not absorb water',
          provided: shims.material.value,
          sources: [PRACTICE],
        };
        const absorbs = ABSORBENT.test(shims.material.value) && !/\b(plastic|composite)\b/i.test(shims.material.value);
        yield absorbs
          ? {
              kind: 'fail',
              message: `The ${about} are of ${shims.material.value}, which soaks up the water of the pan.`,
              correct: 'Use shims that do not absorb water, such as plastic.',
              ...base,
            }
          : { kind: 'pass', message: `The ${about} are of ${shims.material.value}.`, ...base };
      }
      if (shims?.gapMm !== undefined) {
        yield againstLimit({
          subject: `gap under the unit of ${opening.id}`,
          at: shims.gapMm.at,
          dimension: 'length',
          provided: shims.gapMm.value,
          like: shims.gapMm,
          comparison: 'at least',
          limit: limit({
            property: 'gap under unit',
            subject: 'sill pan',
            product: pan.product,
            comparison: 'at least',
            offered: [
              { value: number('gap'), text: formatQuantity(number('gap'), 'length', shims.gapMm), source: PRACTICE },
            ],
          }),
          sentence: (p) => `The gap between pan and unit of "${opening.id}" is ${p}`,
          correct: (required) => `Leave a gap of ${required} under the unit.`,
          missing: ['work.shims.gap'],
        });
      }
    }
  },
});
