import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { fieldPieces, flashingAt } from '../../src/geometry/around-opening.js';
import { edgeOverlap, leastSpan } from '../../src/geometry/overlap.js';
import { openingRect } from '../../src/geometry/pieces.js';
import { isFluid } from '../../src/model/families.js';
import { HABIT, habit } from '../../src/water/laps.js';

const GUIDE: Source = {
  basis: 'guide',
  citation: 'Building Science Corporation, information sheet 302, pan flashing',
  provenance: 'seen',
  url: 'http://www.buildingscience.com/documents/information-sheets/pan-flashing-for-exterior-wall-openings?searchterm=flashing+end+dams',
};
const PHYSICS: Source = { basis: 'physics', citation: 'water runs down', provenance: 'computed' };

/** What leaves the pan at its outer leg runs down in front of the barrier below. */
export default defineRule({
  id: 'lap/pan-over-barrier',
  title: 'Lap of pan and barrier below',
  summary:
    'The outer leg of the sill pan laps over the barrier below the opening, or a coat of the barrier is bonded over it.',
  level: 'error',
  reads: ['work.place', 'work.ontoWall', 'work.lapsOnto', 'work.tuckedUnder', 'product.least.lap'],
  sources: [GUIDE],
  parameters: {
    lap: {
      type: 'length',
      default: '2 in',
      meaning: 'lap between pan and barrier where no document of the project states one',
      source: HABIT,
    },
  },
  *review({ detail, face, limit, number }) {
    const field = fieldPieces(face);
    const [first] = field;
    if (first === undefined) return;
    for (const opening of detail.openings) {
      const sill = openingRect(opening).v0;
      for (const pan of flashingAt(face, opening, 'sill')) {
        const subject = `${pan.id} of ${opening.id}`;
        const { apply } = pan;
        if (apply.ontoWallMm === undefined) {
          yield {
            kind: 'open',
            subject,
            at: pan.at,
            missing: ['work.ontoWall'],
            message: `Whether "${pan.id}" drains onto the barrier cannot be told: it does not say how far its outer leg comes down the wall; add "ontoWall".`,
          };
          continue;
        }
        const leg = pan.face.filter((r) => r.v1 <= sill + 0.1);
        // Water comes off the leg at its lower edge; what laps over its upper part from above is in order.
        const low = Math.min(...leg.map((r) => r.v0));
        const edge = leg.filter((r) => r.v0 === low).map((r) => ({ ...r, v1: Math.min(r.v1, low + 1) }));
        const there = field.filter((p) => leastSpan(edge, p.face, 'height') > 0);
        const outside = there.filter((p) => face.lapBetween(p, pan)?.over === p);
        const behind = field.filter((p) => face.lapBetween(p, pan)?.over === pan);
        const loose = outside.find((p) => !(isFluid(p.apply.family) && p.edge === 'bonded'));
        if (loose !== undefined) {
          yield {
            kind: 'fail',
            subject,
            at: loose.apply.lapsOnto[0]?.lapMm.at ?? loose.at,
            related: [{ message: 'the pan', at: pan.at }],
            sources: [loose.edge === 'open' ? PHYSICS : GUIDE, GUIDE],
            message: `The barrier "${loose.id}" lies over the outer leg of "${pan.id}", so the pan drains behind it.`,
            required: `"${pan.id}" over "${loose.id}"`,
            provided: `"${loose.id}" outside, edge ${loose.edge}`,
            correct: `Lap "${pan.id}" over the barrier: put the barrier below the opening up first, or tuck it under the leg ("tuckedUnder: ${pan.work.id}").`,
          };
          continue;
        }
        // A pan that ends at the sill line has no leg to lap.
        const lap =
          leg.length === 0
            ? { leastMm: 0, bareMm: 0 }
            : edgeOverlap(
                leg,
                'bottom',
                [...outside, ...behind].flatMap((p) => p.face),
                face.bounds,
              );
        if (lap === undefined) continue;
        const over = outside.at(-1);
        const stated = over?.apply.lapsOnto.find((l) => l.onto === 'opening flashing' || l.onto === pan.work.id)?.lapMm;
        const result = againstLimit({
          subject,
          at: stated?.at ?? apply.ontoWallMm.at,
          dimension: 'length',
          comparison: 'at least',
          like: stated ?? apply.ontoWallMm,
          provided: lap.leastMm,
          related: [{ message: 'the barrier', at: (over ?? behind[0] ?? first).at }],
          limit: limit({
            property: 'lap',
            subject: over === undefined ? 'sill pan' : 'field membrane',
            product: over === undefined ? pan.product : over.product,
            comparison: 'at least',
            offered: habit(number('lap')),
          }),
          sentence: (p) =>
            over === undefined
              ? `The outer leg of "${pan.id}" laps ${p} over the barrier below "${opening.id}"`
              : `The coat "${over.id}" is bonded over the outer leg of "${pan.id}" by ${p}`,
          correct: (required) => `Lap "${pan.id}" and the barrier by ${required}.`,
          missing: ['product.least.lap'],
        });
        yield result.kind === 'fail' ? { ...result, sources: [...(result.sources ?? []), GUIDE] } : result;
      }
    }
  },
});
