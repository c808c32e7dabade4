import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';

const HABIT: Source = {
  basis: 'practice',
  citation: 'each penetration has its place in the order of work',
  provenance: 'common practice, no source',
};

/** Whether a penetration is there before the barrier or is driven through it later decides how it is sealed. */
export default defineRule({
  id: 'sequence/penetrations-in-work',
  title: 'Penetrations in the order of work',
  summary: 'Every penetration has a step that puts it in.',
  level: 'note',
  reads: ['penetrations', 'work.set'],
  sources: [HABIT],
  *review({ detail }) {
    if (detail.work.length === 0) return;
    for (const penetration of detail.penetrations) {
      const set = detail.work.find(
        (w) => w.action === 'set' && w.sets === 'penetration' && w.penetrations.includes(penetration),
      );
      const subject = `penetration ${penetration.id}`;
      if (set !== undefined)
        yield {
          kind: 'pass',
          message: `"${penetration.id}" is put in by "${set.id}".`,
          at: set.at,
          subject,
          sources: [HABIT],
        };
      else {
        yield {
          kind: 'fail',
          message: `No step puts in the ${penetration.type} "${penetration.id}", so nobody can tell whether it comes before the barrier or through it.`,
          at: penetration.at,
          subject,
          required: 'a step that puts it in',
          provided: 'none',
          correct: `Add "{ set: penetration, of: ${penetration.id} }" where it comes in the order of work.`,
          sources: [HABIT],
        };
      }
    }
  },
});
