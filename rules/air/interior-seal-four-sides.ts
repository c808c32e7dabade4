import { AIR_SEALED } from '../../src/engine/clauses.js';
import { defineRule } from '../../src/engine/rule.js';
import { showsInside } from '../../src/model/drawn.js';
import type { Source } from '../../src/engine/result.js';
import { sealGaps } from '../../src/continuity/side-gaps.js';
import { gapLength, listed } from '../../src/continuity/words.js';
import { interiorSeals, openSides } from '../../src/joints/perimeter-seals.js';
import { fieldOfWork } from '../../src/model/named-field.js';

const DOE: Source = {
  basis: 'guide',
  citation: 'DOE Building America Solution Center, air sealing window and door rough openings',
  provenance: 'seen',
  url: 'https://basc.pnnl.gov/resource-guides/air-sealing-window-and-door-rough-openings',
};

/** The interior air seal closes around the opening; only the outside of the sill is left open. */
export default defineRule({
  id: 'air/interior-seal-four-sides',
  title: 'Sides of the interior air seal',
  summary: 'The interior air seal runs along head, both jambs and sill of each opening, corners included.',
  level: 'error',
  reads: ['work.place', 'work.sides', 'work.cornersContinuous'],
  sources: [...AIR_SEALED, DOE],
  *review({ detail }) {
    if (detail.work.length === 0) return;
    for (const opening of detail.openings) {
      const base = {
        subject: `interior seal of ${opening.id}`,
        required: 'sealed at head, jambs and sill, around the corners',
        sources: [...AIR_SEALED, DOE],
      };
      const seals = interiorSeals(detail, opening);
      const first = seals[0];
      if (first === undefined && !showsInside(detail)) {
        yield {
          kind: 'open',
          message: `The drawing stops outside the interior air seal of "${opening.id}"; show the seal on all four sides ("place: interior perimeter").`,
          at: opening.at,
          missing: ['work.place: interior perimeter'],
          ...base,
        };
        continue;
      }
      if (first === undefined) {
        yield {
          kind: 'fail',
          message: `The opening "${opening.id}" has no interior air seal: no work seals its interior perimeter.`,
          at: opening.at,
          provided: 'none',
          correct: 'Add a work item with "place: interior perimeter" on all four sides.',
          ...base,
        };
        continue;
      }
      const gaps = sealGaps(detail, opening);
      const open = gaps.map((g) => g.side);
      const lengths = gaps.map((g) => `${gapLength(g)} at the ${g.side}`);
      const names = seals.map((s) => `"${s.id}"`).join(', ');
      if (open.length > 0) {
        yield {
          kind: 'fail',
          message: `The interior air seal of "${opening.id}" (${names}) leaves out ${listed(lengths)}; leaving the sill open outside does not mean leaving it open inside.`,
          at:
            first.sides[0] === undefined
              ? first.at
              : { document: first.at.document, path: [...first.at.path, 'sides'] },
          provided: `open for ${listed(lengths)}`,
          correct: `Run the seal along ${listed(open)} too ("sides").`,
          ...base,
        };
        continue;
      }
      // One seal that closes the ring by itself is enough, whatever else lies in the joint.
      const closed = seals.find((s) => s.cornersContinuous?.value === true && openSides([s]).length === 0);
      const needed = closed === undefined ? seals : [closed];
      const broken = needed.find((s) => s.cornersContinuous?.value === false);
      const unsaid = needed.filter((s) => s.cornersContinuous === undefined);
      if (broken !== undefined) {
        yield {
          kind: 'fail',
          message: `The interior air seal "${broken.id}" of "${opening.id}" breaks at the corners.`,
          at: broken.cornersContinuous?.at ?? broken.at,
          provided: 'broken at the corners',
          correct: 'Carry the bead around the corners ("cornersContinuous: true").',
          ...base,
        };
      } else if (unsaid[0] !== undefined) {
        yield {
          kind: 'open',
          message: `The interior air seal of "${opening.id}" (${names}) leaves out no side, but whether ${listed(unsaid.map((s) => `"${s.id}"`))} ${unsaid.length === 1 ? 'turns' : 'turn'} the corners without a break is not told; declare "cornersContinuous".`,
          at: unsaid[0].at,
          missing: unsaid.map((s) => fieldOfWork(s, 'cornersContinuous')),
          ...base,
        };
      } else {
        yield {
          kind: 'pass',
          message: `The interior air seal of "${opening.id}" (${names}) leaves out no side and goes around the corners without a break.`,
          at: first.at,
          provided: 'head, jambs and sill, corners continuous',
          ...base,
        };
      }
    }
  },
});
