import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { DEPTH_RULES, depthForWidth, type DepthRule } from '../../src/joints/joints.js';
import { sealantJoints, subjectOf } from '../../src/joints/sealant-joints.js';
import { formatQuantity } from '../../src/quantity/format.js';

const HALF: Source = {
  basis: 'guide',
  citation: 'public project section 07 92 00, depth half the width, 1/4 to 1/2 in',
  provenance: 'seen',
};
const EQUAL: Source = {
  basis: 'guide',
  citation: 'Handbook of Adhesives and Sealants, depth equal to the width up to 1/2 in',
  provenance: 'seen',
};
const OFF: Source = {
  basis: 'practice',
  citation: 'common practice: depth held to a sixteenth of an inch',
  provenance: 'common practice, no source',
};

/** Sealant depth follows the rule chosen for the project; the published rules disagree. */
export default defineRule({
  id: 'joint/depth',
  title: 'Sealant depth',
  summary: 'The depth of sealant follows from the width of the joint by the rule the project names.',
  level: 'error',
  reads: ['work.joint.width', 'work.joint.depth'],
  sources: [HALF, EQUAL, OFF],
  parameters: {
    rule: {
      type: DEPTH_RULES,
      default: 'half width',
      meaning:
        'which of the published rules is used: half the width, 1/4 to 1/2 in; or equal to the width, up to 1/2 in',
      source: HALF,
    },
    tolerance: { type: 'length', default: '1/16 in', meaning: 'how far the depth may be off the rule', source: OFF },
  },
  *review({ detail, limit, number, word }) {
    const rule = word('rule') as DepthRule;
    const source = rule === 'half width' ? HALF : EQUAL;
    for (const work of sealantJoints(detail)) {
      const { widthMm: width, depthMm: depth } = work.joint ?? {};
      const subject = `depth of joint ${work.id}`;
      const missing = [
        ...(width === undefined ? ['work.joint.width'] : []),
        ...(depth === undefined ? ['work.joint.depth'] : []),
      ];
      if (width === undefined || depth === undefined || !(width.value > 0)) {
        if (missing.length > 0)
          yield {
            kind: 'open',
            message: `The depth of the sealant joint "${work.id}" cannot be checked: ${missing.map((m) => `"${m.slice('work.joint.'.length)}"`).join(' and ')} of "joint" ${missing.length === 1 ? 'is' : 'are'} not declared.`,
            at: work.joint?.at ?? work.at,
            subject,
            missing,
            sources: [source],
          };
        continue;
      }
      const asked = depthForWidth(rule, width.value);
      const of = subjectOf(work);
      const mm = (lengthMm: number): string => formatQuantity(lengthMm, 'length', depth);
      for (const comparison of ['at least', 'at most'] as const) {
        const query = {
          property: 'joint depth',
          product: work.product,
          comparison,
          bothEnds: true,
          ...(of === undefined ? {} : { subject: of }),
        } as const;
        // Where the project states depths, they stand in place of a rule that other sources contradict.
        const stated = limit({ ...query, comparison: 'at least' }) ?? limit({ ...query, comparison: 'at most' });
        const value =
          comparison === 'at least' ? asked.leastMm - number('tolerance') : asked.mostMm + number('tolerance');
        const governing =
          stated === undefined
            ? limit({
                ...query,
                offered: [
                  {
                    value,
                    text: `${mm(comparison === 'at least' ? asked.leastMm : asked.mostMm)} (to within ${mm(number('tolerance'))})`,
                    source,
                  },
                ],
              })
            : limit(query);
        if (governing === undefined) continue;
        yield againstLimit({
          subject: `${subject}, ${comparison}`,
          at: depth.at,
          dimension: 'length',
          provided: depth.value,
          like: depth,
          comparison,
          limit: governing,
          sentence: (p) =>
            `The sealant of joint "${work.id}" is ${p} deep in a joint ${width.text} wide${stated === undefined ? ` (rule: ${rule})` : ''}`,
          correct: () =>
            stated === undefined
              ? `Set the sealant ${mm(comparison === 'at least' ? asked.leastMm : asked.mostMm)} deep, with the backer rod to match, or state the rule of the project in the settings.`
              : `Set the sealant ${comparison} ${governing.text} deep.`,
          missing: ['work.joint.depth'],
          related: [{ message: 'width of the joint', at: width.at }],
        });
      }
    }
  },
});
