import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { rodOf, sealantJoints } from '../../src/joints/sealant-joints.js';

const SECTION: Source = {
  basis: 'guide',
  citation: 'public project section on sealants, bond-breaker where there is no backing',
  provenance: 'seen',
};
const UFGS: Source = {
  basis: 'guide',
  citation: 'UFGS 07 92 00, 3.4.6, bond breaker (heading)',
  provenance: 'seen',
};

/** Sealant bonds to the two sides of a joint and not to its back. */
export default defineRule({
  id: 'joint/two-faces',
  title: 'Bonded faces of the joint',
  summary: 'Sealant bonds to the two sides of the joint and is kept off its back.',
  level: 'warning',
  reads: ['work.bondedFaces', 'work.joint.back', 'work.joint.backerRod'],
  sources: [SECTION, UFGS],
  *review({ detail }) {
    for (const work of sealantJoints(detail)) {
      const base = { subject: `bond of joint ${work.id}`, required: 'two bonded faces', sources: [SECTION, UFGS] };
      const faces = work.bondedFaces;
      const back = work.joint?.back;
      const rod = work.joint?.backerRodMm !== undefined || rodOf(detail, work) !== undefined;
      const keeper = back !== undefined && back.value !== 'none' ? back.value : rod ? 'backer rod' : undefined;
      if (faces !== undefined && faces.value > 2) {
        yield {
          kind: 'fail',
          message: `The sealant of joint "${work.id}" bonds to ${faces.value} faces: held at its back it cannot stretch, and tears.`,
          at: faces.at,
          provided: `${faces.value} faces`,
          correct: 'Put backer rod or bond-breaker tape behind the sealant ("bondedFaces: 2").',
          ...base,
        };
      } else if (faces !== undefined && faces.value < 2) {
        yield {
          kind: 'fail',
          message: `The sealant of joint "${work.id}" bonds to ${faces.value} face: the joint is not closed.`,
          at: faces.at,
          provided: `${faces.value} face`,
          correct: 'Bond the sealant to both sides of the joint ("bondedFaces: 2").',
          ...base,
        };
      } else if (back?.value === 'none') {
        yield {
          kind: 'fail',
          message: `Nothing keeps the sealant of joint "${work.id}" off the back of the joint.`,
          at: back.at,
          provided: 'no backing',
          correct: 'Put backer rod behind the sealant, or bond-breaker tape where there is no room for a rod ("back").',
          ...base,
        };
      } else if (keeper !== undefined || faces !== undefined) {
        yield {
          kind: 'pass',
          message: `The sealant of joint "${work.id}" bonds to two faces${keeper === undefined ? '' : `; ${keeper} keeps it off the back`}.`,
          at: back?.at ?? faces?.at ?? work.at,
          provided: keeper ?? '2 faces',
          ...base,
        };
      } else {
        yield {
          kind: 'open',
          message: `What keeps the sealant of joint "${work.id}" off the back of the joint is not declared; declare "joint: { back }" or "bondedFaces".`,
          at: work.joint?.at ?? work.at,
          missing: ['work.joint.back', 'work.bondedFaces'],
          ...base,
        };
      }
    }
  },
});
