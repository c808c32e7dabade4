import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { coversSide, panOf, worksAt } from '../../src/water/at-opening.js';

const PHYSICS: Source = {
  basis: 'physics',
  citation: 'a seal outboard of the back dam holds water in the pan',
  provenance: 'computed',
};
const SHEET: Source = {
  basis: 'guide',
  citation: 'building science information sheet on air sealing windows',
  provenance: 'seen',
  url: 'http://buildingscienceconsulting.com/documents/information-sheets/air-sealing-windows',
};

/** The interior seal stands at the back dam and leaves the drained space free. */
export default defineRule({
  id: 'sill/interior-seal-behind-dam',
  title: 'Interior seal at the back dam',
  summary:
    'Along the sill the interior seal is at the back dam or inboard of it, and the space that drains stays free.',
  level: 'error',
  reads: ['work.sealPosition', 'work.fillsCavity', 'work.sides'],
  sources: [PHYSICS, SHEET],
  *review({ detail }) {
    for (const opening of detail.openings) {
      const pan = panOf(detail, opening);
      if (pan === undefined) continue;
      for (const seal of worksAt(detail, opening, 'interior perimeter').filter((w) => coversSide(w, 'sill'))) {
        const base = {
          subject: `interior seal "${seal.id}" at the sill of ${opening.id}`,
          required: 'at or inboard of the back dam, drained space free',
          sources: [PHYSICS, SHEET],
        };
        const related = [{ message: `the pan "${pan.id}" that has to drain`, at: pan.at }];
        if (seal.fillsCavity?.value === true) {
          yield {
            kind: 'fail',
            message: `"${seal.id}" fills the space between unit and pan at the sill of "${opening.id}": water on the pan cannot get out.`,
            at: seal.fillsCavity.at,
            provided: 'fills the drained space',
            correct:
              'Keep it to the interior edge, at the back dam ("fillsCavity: false", "sealPosition: at back dam").',
            related,
            ...base,
          };
        } else if (seal.sealPosition?.value === 'outboard of back dam') {
          yield {
            kind: 'fail',
            message: `"${seal.id}" lies outboard of the back dam at the sill of "${opening.id}": it stands in the drained space of the pan.`,
            at: seal.sealPosition.at,
            provided: 'outboard of the back dam',
            correct: 'Move the seal to the back dam, or inboard of it.',
            related,
            ...base,
          };
        } else if (seal.sealPosition !== undefined) {
          yield {
            kind: 'pass',
            message: `"${seal.id}" lies ${seal.sealPosition.value} at the sill of "${opening.id}".`,
            at: seal.sealPosition.at,
            provided: seal.sealPosition.value,
            ...base,
          };
        } else if (seal.family !== 'backer rod' && seal.family !== 'primer') {
          yield {
            kind: 'open',
            message: `Where "${seal.id}" lies at the sill of "${opening.id}" is not declared; declare "sealPosition".`,
            at: seal.at,
            missing: ['work.sealPosition'],
            ...base,
          };
        }
      }
    }
  },
});
