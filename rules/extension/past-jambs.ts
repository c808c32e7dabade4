import { againstLimit } from '../../src/engine/against-limit.js';
import type { OfferedLimit } from '../../src/engine/limits.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { flashingAt, FLASHING_SUBJECT } from '../../src/geometry/around-opening.js';
import { openingRect } from '../../src/geometry/pieces.js';
import { bounding } from '../../src/geometry/rect.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { isLooseSheet } from '../../src/water/laps.js';

const HEAD_STRIP: Source = {
  basis: 'standard',
  citation: 'ASTM E2112, head strip past the jamb flashing',
  provenance: 'from memory, confirm',
};
const JAMB_WIDTH: Source = {
  basis: 'guide',
  citation: 'AAMA 2400-10, strips to the outer edge of the jamb flashing',
  provenance: 'seen at second hand',
};

/** Sill and head flashing run past the jambs of the rough opening. */
export default defineRule({
  id: 'extension/past-jambs',
  title: 'Flashing reach past the jambs',
  summary: 'Sill and head flashing run past both jambs of the rough opening by what the documents ask.',
  level: 'error',
  reads: ['work.pastJambs', 'work.ontoWall', 'product.least.pastJambs', 'method', 'project.standards'],
  sources: [HEAD_STRIP, JAMB_WIDTH],
  parameters: {
    beyond: {
      type: 'length',
      default: '1 in',
      meaning: 'how far a mechanically lapped head strip runs beyond the outer edge of the jamb flashing',
      source: HEAD_STRIP,
    },
  },
  *review({ detail, face, limit, number }) {
    // The extra inch is asked by one standard only; another published order stops at the jamb flashing.
    const e2112 =
      detail.method !== undefined || (detail.project?.standards.some((x) => x.value.includes('E2112')) ?? false);
    for (const opening of detail.openings) {
      const o = openingRect(opening);
      const jambs = [...flashingAt(face, opening, 'left jamb'), ...flashingAt(face, opening, 'right jamb')];
      const wide = jambs
        .map((p) => p.apply.ontoWallMm)
        .filter((m) => m !== undefined)
        .sort((a, b) => b.value - a.value)[0];
      for (const side of ['sill', 'head'] as const) {
        for (const piece of flashingAt(face, opening, side)) {
          const { apply } = piece;
          const area = bounding(piece.face);
          // A pan that lies within the opening has nothing to run past.
          if (area === undefined || apply.family === 'rigid pan') continue;
          const offered: OfferedLimit[] = [];
          const beyond = side === 'head' && e2112;
          if (wide !== undefined && isLooseSheet(apply.family)) {
            const neededMm = wide.value + (beyond ? number('beyond') : 0);
            const how = beyond
              ? `jamb flashing and ${formatQuantity(number('beyond'), 'length', wide)}`
              : 'jamb flashing';
            offered.push({
              value: neededMm,
              text: `${formatQuantity(neededMm, 'length', { ...wide, toward: 'up' })} (${how})`,
              source: beyond ? HEAD_STRIP : JAMB_WIDTH,
            });
          }
          const governing = limit({
            property: 'extension past jambs',
            subject: FLASHING_SUBJECT[side],
            product: piece.product,
            comparison: 'at least',
            offered,
          });
          // Metal is cut to the unit; only a document can ask for more.
          if (governing === undefined && apply.family === 'metal flashing') continue;
          yield againstLimit({
            subject: `${side} of ${opening.id}`,
            at: apply.pastJambsMm?.at ?? piece.at,
            dimension: 'length',
            comparison: 'at least',
            like: apply.pastJambsMm ?? apply.ontoWallMm,
            provided: Math.max(0, Math.min(o.u0 - area.u0, area.u1 - o.u1)),
            limit: governing,
            sentence: (p) => `The flashing "${piece.id}" at the ${side} of "${opening.id}" runs ${p} past the jambs`,
            correct: (required) => `Run "${piece.id}" ${required} past each jamb ("pastJambs").`,
            missing: ['product.least.pastJambs', 'a specification requirement for "extension past jambs"'],
            ...(wide === undefined ? {} : { related: [{ message: 'width of the jamb flashing', at: wide.at }] }),
          });
        }
      }
    }
  },
});
