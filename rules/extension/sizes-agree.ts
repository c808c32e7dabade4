import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { statedSizes } from '../../src/continuity/stated-sizes.js';

const COMPUTED: Source = { basis: 'physics', citation: 'the sizes stated in the detail', provenance: 'computed' };

/** Sizes that are declared beside each other can all be so. */
export default defineRule({
  id: 'extension/sizes-agree',
  title: 'Agreement of declared sizes',
  summary: 'Sizes declared for a piece fit its opening, its roll and one another.',
  level: 'error',
  reads: [
    'work.roll',
    'work.courseLap',
    'work.intoOpening',
    'work.endDams',
    'work.pastJambs',
    'work.downJambs',
    'work.sealPosition',
    'work.weeps',
    'work.openLength',
    'openings.roughOpening',
    'openings.unit.frameDepth',
    'product.roll',
  ],
  sources: [COMPUTED],
  *review({ detail }) {
    for (const found of statedSizes(detail)) {
      const { agrees, subject, at, message, required, provided, correct, related } = found;
      const shared = { subject, at, message, required, provided, sources: this.sources };
      yield agrees
        ? { kind: 'pass', ...shared }
        : { kind: 'fail', correct, ...(related === undefined ? {} : { related: [related] }), ...shared };
    }
  },
});
