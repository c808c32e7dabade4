import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { isFluid } from '../../src/model/families.js';
import { panOf } from '../../src/water/at-opening.js';

const GUIDE: Source = {
  basis: 'guide',
  citation: 'deep energy retrofit builder guide of a public utility program, pan corners',
  provenance: 'seen',
};

/** Lower corners of the pan are made without a slit. */
export default defineRule({
  id: 'sill/corners',
  title: 'Corners of the pan',
  summary: 'The corners of the sill pan are preformed, soldered, fluid-applied or formed, not folded from flat sheet.',
  level: 'warning',
  reads: ['work.corners', 'product.family'],
  sources: [GUIDE],
  *review({ detail }) {
    for (const opening of detail.openings) {
      const pan = panOf(detail, opening);
      if (pan === undefined) continue;
      const base = { subject: `pan corners of ${opening.id}`, required: 'corners without a slit', sources: [GUIDE] };
      if (pan.corners?.value === 'folded') {
        yield {
          kind: 'fail',
          message: `The corners of the pan "${pan.id}" of "${opening.id}" are folded from flat sheet: the slit lies where the water collects.`,
          at: pan.corners.at,
          provided: 'folded',
          correct: 'Use preformed, soldered or fluid-applied corners, or a membrane that forms to the corner.',
          ...base,
        };
      } else if (pan.corners !== undefined) {
        yield {
          kind: 'pass',
          message: `The corners of the pan "${pan.id}" of "${opening.id}" are ${pan.corners.value}.`,
          at: pan.corners.at,
          provided: pan.corners.value,
          ...base,
        };
      } else if (isFluid(pan.family)) {
        yield {
          kind: 'pass',
          message: `The pan "${pan.id}" of "${opening.id}" is ${pan.family}, corners included.`,
          at: pan.at,
          provided: pan.family,
          ...base,
        };
      } else {
        yield {
          kind: 'open',
          message: `How the corners of the pan "${pan.id}" of "${opening.id}" are made is not declared; declare "corners".`,
          at: pan.at,
          missing: ['work.corners'],
          ...base,
        };
      }
    }
  },
});
