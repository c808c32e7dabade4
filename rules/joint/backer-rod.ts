import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { rodCompression } from '../../src/joints/joints.js';
import { rodOf, sealantJoints, subjectOf } from '../../src/joints/sealant-joints.js';
import { formatQuantity } from '../../src/quantity/format.js';

const C1193: Source = {
  basis: 'standard',
  citation: 'ASTM C1193 and C1330, size and kind of sealant backing',
  provenance: 'from memory, confirm',
};

/** The backer rod is larger than the joint, so that it holds its place and gives the sealant its depth. */
export default defineRule({
  id: 'joint/backer-rod',
  title: 'Backer rod size',
  summary: 'The backer rod is larger than the joint by as much as its kind is to be pressed together.',
  level: 'warning',
  reads: ['work.joint.backerRod', 'work.joint.width', 'work.joint.back', 'product.cell'],
  sources: [C1193],
  parameters: {
    least: {
      type: 'fraction',
      default: '25 %',
      meaning: 'least oversize of a closed-cell or bi-cell rod',
      source: C1193,
    },
    most: { type: 'fraction', default: '50 %', meaning: 'greatest oversize of any rod', source: C1193 },
    leastOpenCell: { type: 'fraction', default: '40 %', meaning: 'least oversize of an open-cell rod', source: C1193 },
  },
  *review({ detail, limit, number }) {
    for (const work of sealantJoints(detail)) {
      const rod = work.joint?.backerRodMm;
      const width = work.joint?.widthMm;
      const rodWork = rodOf(detail, work);
      const subject = `backer rod of joint ${work.id}`;
      const cell = rodWork?.product?.cell;
      if (cell?.value === 'open' && rodWork !== undefined && subjectOf(work) === 'exterior seal') {
        yield {
          kind: 'fail',
          message: `The backer rod "${rodWork.id}" of the exterior joint "${work.id}" is open-cell and takes up water.`,
          at: rodWork.productId?.at ?? rodWork.at,
          subject: `${subject}, kind`,
          required: 'closed-cell or bi-cell rod at the exterior',
          provided: 'open-cell',
          correct: 'Use a closed-cell or bi-cell rod.',
          sources: [C1193],
        };
      }
      if (rod === undefined) {
        // A joint that is backed by tape, or by nothing, has no rod to measure.
        if (work.joint?.back?.value === 'backer rod' || rodWork !== undefined)
          yield {
            kind: 'open',
            message: `The diameter of the backer rod of joint "${work.id}" is not declared; declare "joint: { backerRod }".`,
            at: work.joint?.at ?? work.at,
            subject,
            missing: ['work.joint.backerRod'],
            sources: [C1193],
          };
        continue;
      }
      if (width === undefined || !(width.value > 0)) {
        yield {
          kind: 'open',
          message: `The backer rod of joint "${work.id}" is ${rod.text}, but the width of the joint is not declared; declare "joint: { width }".`,
          at: work.joint?.at ?? work.at,
          subject,
          missing: ['work.joint.width'],
          sources: [C1193],
        };
        continue;
      }
      const of = subjectOf(work);
      const open = cell?.value === 'open';
      for (const comparison of ['at least', 'at most'] as const) {
        const value = number(comparison === 'at most' ? 'most' : open ? 'leastOpenCell' : 'least');
        const governing = limit({
          property: 'backer rod compression',
          product: work.product,
          comparison,
          bothEnds: true,
          ...(of === undefined ? {} : { subject: of }),
          offered: [
            {
              value,
              text: formatQuantity(value, 'fraction'),
              source: C1193,
            },
          ],
        });
        yield againstLimit({
          subject: `${subject}, ${comparison}`,
          at: rod.at,
          dimension: 'fraction',
          provided: rodCompression(rod.value, width.value),
          like: { unit: '%', system: 'either' },
          comparison,
          limit: governing,
          sentence: (p) =>
            `The backer rod of ${rod.text} in the joint "${work.id}", ${width.text} wide, is ${rod.value > width.value ? `larger than the joint by ${p}` : 'no larger than the joint'}`,
          correct: (required) =>
            `Use a rod ${comparison === 'at least' ? 'no thinner' : 'no thicker'} than ${formatQuantity(width.value * (1 + (governing?.value ?? value)), 'length', { ...rod, toward: comparison === 'at least' ? 'up' : 'down' })} (${required}).`,
          missing: ['work.joint.width'],
          related: [{ message: 'width of the joint', at: width.at }],
        });
      }
    }
  },
});
