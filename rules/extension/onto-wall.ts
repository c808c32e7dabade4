import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import type { PieceRole } from '../../src/geometry/types.js';
import type { Subject } from '../../src/model/measures.js';
import type { Side } from '../../src/model/types.js';
import { formatQuantity } from '../../src/quantity/format.js';

const SUBJECT: Record<Side, Subject> = {
  sill: 'sill pan',
  head: 'head flashing',
  'left jamb': 'jamb flashing',
  'right jamb': 'jamb flashing',
};
const ROLE: Record<Side, PieceRole> = {
  sill: 'sill flashing',
  head: 'head flashing',
  'left jamb': 'jamb flashing',
  'right jamb': 'jamb flashing',
};
const FLASHING: ReadonlySet<PieceRole> = new Set<PieceRole>([
  'sill flashing',
  'jamb flashing',
  'head flashing',
  'opening corners',
]);
const STRIP: Source = {
  basis: 'standard',
  citation: 'ASTM E2112, flashing strip 9 in wide',
  provenance: 'seen at second hand',
  url: 'http://www.awdi.com/Manual20/inc/html/23.html',
};

/** Reach of the opening flashing onto the wall face, the least anywhere along each side and in its corners. */
export default defineRule({
  id: 'extension/onto-wall',
  title: 'Flashing reach onto the wall',
  summary: 'Rough-opening flashing covers enough of the wall on every side of the opening, corners included.',
  level: 'error',
  reads: ['work.ontoWall', 'work.pastJambs', 'work.aboveHead', 'work.belowSill', 'product.least.ontoWall'],
  sources: [STRIP],
  parameters: {
    sheetReach: {
      type: 'length',
      default: '9 in',
      meaning: 'least reach of mechanically lapped strips where no document of the project states one',
      source: STRIP,
    },
  },
  *review({ detail, face, limit, number }) {
    for (const opening of detail.openings) {
      const isFlashing = (role: PieceRole, of: typeof opening | undefined): boolean =>
        of === opening && FLASHING.has(role);
      if (!face.pieces.some((p) => isFlashing(p.role, p.opening) && p.face.length > 0)) continue;
      for (const reach of face.extensions(opening, (p) => isFlashing(p.role, p.opening))) {
        // A side with no flashing of its own is the business of the sequence and sill rules; rigid flashings do not
        // lie flat on the wall.
        const main = reach.pieces.findLast((p) => p.role === ROLE[reach.side]);
        if (main?.apply === undefined || main.apply.family === 'metal flashing' || main.apply.family === 'rigid pan')
          continue;
        // Corner squares are covered by what runs past the jambs, so they count with the sill and the head.
        const corner = reach.side === 'sill' || reach.side === 'head' ? reach.cornerMm : Infinity;
        const atCorner = corner < reach.straightMm - 0.1;
        const subject = `${reach.side} of ${opening.id}`;
        const id = main.work.id;
        const reachText = formatQuantity(number('sheetReach'), 'length', { system: 'US' });
        yield againstLimit({
          subject,
          dimension: 'length',
          comparison: 'at least',
          like: main.apply.ontoWallMm,
          at: (atCorner ? main.apply.pastJambsMm?.at : undefined) ?? main.apply.ontoWallMm?.at ?? main.at,
          provided: Math.min(reach.straightMm, corner),
          limit: limit({
            property: 'extension onto wall',
            subject: SUBJECT[reach.side],
            product: main.product,
            comparison: 'at least',
            offered:
              main.apply.family === 'flexible flashing'
                ? [{ value: number('sheetReach'), text: reachText, source: STRIP }]
                : [],
          }),
          sentence: (provided) =>
            `Flashing at the ${subject} reaches ${provided} onto the wall${atCorner ? ' at its corners' : ''}`,
          correct: (required) =>
            atCorner
              ? `Cover the corner squares: run "${id}" ${required} past the jambs ("pastJambs").`
              : `Widen "${id}" to ${required} ("ontoWall").`,
          missing: ['product.least.ontoWall', 'a specification requirement for "extension onto wall"'],
        });
      }
    }
  },
});
