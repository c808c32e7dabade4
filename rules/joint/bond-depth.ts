import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { sealantJoints } from '../../src/joints/sealant-joints.js';
import { formatQuantity } from '../../src/quantity/format.js';

const BOND: Source = {
  basis: 'guide',
  citation: 'Handbook of Adhesives and Sealants, 1/4 in of depth for adhesion',
  provenance: 'seen',
};

/** Sealant bonds to each side on enough depth. */
export default defineRule({
  id: 'joint/bond-depth',
  title: 'Bond to the sides of the joint',
  summary: 'Sealant bonds to each side of the joint on enough depth.',
  level: 'warning',
  reads: ['work.joint.depth'],
  sources: [BOND],
  parameters: {
    bond: { type: 'length', default: '1/4 in', meaning: 'least depth of bond on each side', source: BOND },
  },
  *review({ detail, number }) {
    for (const work of sealantJoints(detail)) {
      const depth = work.joint?.depthMm;
      const subject = `bond of joint ${work.id}`;
      if (depth === undefined) {
        yield {
          kind: 'open',
          message: `The depth of bond of the sealant joint "${work.id}" is not declared; declare "joint: { depth }".`,
          at: work.joint?.at ?? work.at,
          subject,
          missing: ['work.joint.depth'],
          sources: [BOND],
        };
        continue;
      }
      yield againstLimit({
        subject,
        at: depth.at,
        dimension: 'length',
        provided: depth.value,
        like: depth,
        comparison: 'at least',
        limit: {
          value: number('bond'),
          text: formatQuantity(number('bond'), 'length', depth),
          source: BOND,
          others: [],
        },
        sentence: (p) => `The sealant of joint "${work.id}" bonds to its sides on ${p}`,
        correct: (required) => `Set the sealant ${required} deep at its sides.`,
        missing: ['work.joint.depth'],
      });
    }
  },
});
