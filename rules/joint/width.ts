import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { sealantJoints, subjectOf } from '../../src/joints/sealant-joints.js';
import { formatQuantity } from '../../src/quantity/format.js';

const LEAST: Source = {
  basis: 'guide',
  citation: 'architectural detailing text and handbook of sealants, least joint width',
  provenance: 'seen',
};
const MOST: Source = {
  basis: 'guide',
  citation: 'architectural detailing text, joints up to 1 to 2 in',
  provenance: 'seen',
};

/** A sealant joint is wide enough to be filled and not wider than sealant stands. */
export default defineRule({
  id: 'joint/width',
  title: 'Joint width',
  summary: 'Each sealant joint is wide enough to be filled and tooled, and no wider than its sealant allows.',
  level: 'error',
  reads: ['work.joint.width', 'product.jointWidth'],
  sources: [LEAST, MOST],
  parameters: {
    least: { type: 'length', default: '1/4 in', meaning: 'least width of a sealant joint', source: LEAST },
    most: { type: 'length', default: '2 in', meaning: 'greatest width without a special detail', source: MOST },
  },
  *review({ detail, limit, number }) {
    for (const work of sealantJoints(detail)) {
      const width = work.joint?.widthMm;
      const subject = `width of joint ${work.id}`;
      if (width === undefined) {
        yield {
          kind: 'open',
          message: `The width of the sealant joint "${work.id}" is not declared; declare "joint: { width }".`,
          at: work.joint?.at ?? work.at,
          subject,
          missing: ['work.joint.width'],
          sources: [LEAST],
        };
        continue;
      }
      const of = subjectOf(work);
      for (const comparison of ['at least', 'at most'] as const) {
        const value = number(comparison === 'at least' ? 'least' : 'most');
        yield againstLimit({
          subject: `${subject}, ${comparison}`,
          at: width.at,
          dimension: 'length',
          comparison,
          like: width,
          provided: comparison === 'at most' ? (width.upper ?? width.value) : width.value,
          limit: limit({
            property: 'joint width',
            product: work.product,
            comparison,
            bothEnds: true,
            ...(of === undefined ? {} : { subject: of }),
            offered: [
              { value, text: formatQuantity(value, 'length', width), source: comparison === 'at least' ? LEAST : MOST },
            ],
          }),
          sentence: (p) => `The sealant joint "${work.id}" is ${p} wide`,
          correct: (required) =>
            comparison === 'at least'
              ? `Make the joint ${required} wide.`
              : `Narrow the joint to ${required}, or detail it on its own.`,
          missing: ['product.jointWidth'],
        });
      }
    }
  },
});
