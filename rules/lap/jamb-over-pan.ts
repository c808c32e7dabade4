import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { faceOnSide, flashingAt, isOutside, type AppliedPiece } from '../../src/geometry/around-opening.js';
import { leastSpan } from '../../src/geometry/overlap.js';
import { isFluid } from '../../src/model/families.js';
import type { Opening, Side } from '../../src/model/types.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { BONDED_ORDER, HABIT, habit, isBondedCoat } from '../../src/water/laps.js';

const GUIDE: Source = {
  basis: 'guide',
  citation: 'DOE Building America Solution Center, fully flashed window and door openings',
  provenance: 'seen',
  url: 'https://basc.pnnl.gov/resource-guides/fully-flashed-window-and-door-openings',
};
const EPA: Source = {
  basis: 'guide',
  citation: 'EPA Indoor airPLUS technical guidance 1.6',
  provenance: 'seen',
  url: 'http://epa.gov/indoorairplus/technical/moisture/1_6.html',
};
const PHYSICS: Source = { basis: 'physics', citation: 'water runs down', provenance: 'computed' };
const JAMBS = ['left jamb', 'right jamb'] as const satisfies readonly Side[];

/** Height over which jamb flashing and the turned-up end of a pan cover each other, on the wall face or the return, mm. */
function lapHeight(jamb: AppliedPiece, pan: AppliedPiece, opening: Opening, side: Side): number {
  const onFace = leastSpan(faceOnSide(jamb, opening, side), pan.face, 'height');
  // On the return of a jamb the first axis runs up.
  const onReturn = leastSpan(jamb.returns[side] ?? [], pan.returns[side] ?? [], 'width');
  return Math.max(onFace, onReturn);
}

/** Jamb flashing comes down outside the turned-up ends of the pan. */
export default defineRule({
  id: 'lap/jamb-over-pan',
  title: 'Lap of jamb flashing and pan',
  summary: 'The jamb flashing laps over the turned-up end of the sill pan, outside it.',
  level: 'error',
  reads: ['work.place', 'work.endDams', 'work.pastJambs', 'work.belowSill', 'work.intoOpening', 'product.least.lap'],
  sources: [GUIDE, EPA],
  parameters: {
    lap: {
      type: 'length',
      default: '2 in',
      meaning:
        'lap of the jamb flashing over a sill flashing whose ends do not turn up, where no document of the project states one',
      source: HABIT,
    },
  },
  *review({ detail, face, limit, number }) {
    for (const opening of detail.openings) {
      const pans = flashingAt(face, opening, 'sill');
      for (const side of JAMBS) {
        const jambs = flashingAt(face, opening, side);
        const pairs = jambs
          .flatMap((jamb) => pans.map((pan) => ({ jamb, pan, lapMm: lapHeight(jamb, pan, opening, side) })))
          .sort((a, b) => b.lapMm - a.lapMm);
        const best = pairs.find((p) => p.jamb.work === p.pan.work) ?? pairs[0];
        if (best === undefined) continue;
        const { jamb, pan, lapMm } = best;
        const subject = `${side} of ${opening.id}`;
        const related = [{ message: 'the sill flashing', at: pan.at }];
        if (jamb.work === pan.work && isFluid(jamb.apply.family)) {
          yield {
            kind: 'pass',
            subject,
            related,
            at: jamb.at,
            sources: this.sources,
            message: `Sill and ${side} of "${opening.id}" are flashed in one fluid-applied step, "${jamb.work.id}", without a lap.`,
          };
          continue;
        }
        const upturn = pan.apply.endDamsMm;
        if (lapMm === 0 && upturn === undefined && jamb.apply.belowSillMm === undefined) {
          yield {
            kind: 'open',
            subject,
            related,
            at: pan.at,
            missing: ['work.endDams', 'work.belowSill'],
            message: `Whether "${jamb.id}" laps over the end of "${pan.id}" cannot be told; say how high the ends of "${pan.id}" turn up ("endDams") or how far "${jamb.id}" runs below the sill ("belowSill").`,
          };
          continue;
        }
        if (lapMm > 0 && !isOutside(face, jamb, pan)) {
          yield {
            kind: 'fail',
            subject,
            related,
            at: pan.at,
            sources: [isBondedCoat(pan) ? GUIDE : PHYSICS, EPA],
            message: `The sill flashing "${pan.id}" lies outside the jamb flashing "${jamb.id}" at the ${side} of "${opening.id}"${isBondedCoat(pan) ? `. ${BONDED_ORDER}` : ', so water on the jamb runs behind it.'}`,
            required: 'jamb flashing over sill flashing',
            provided: 'sill flashing over jamb flashing',
            correct: `Put "${pan.work.id}" before "${jamb.work.id}".`,
          };
          continue;
        }
        const whole =
          upturn !== undefined && upturn.value > 0
            ? [
                {
                  value: upturn.value,
                  text: `${formatQuantity(upturn.value, 'length', upturn)} (the height of the turned-up end)`,
                  source: HABIT,
                },
              ]
            : habit(number('lap'));
        const result = againstLimit({
          subject,
          related,
          at: jamb.apply.belowSillMm?.at ?? jamb.at,
          dimension: 'length',
          comparison: 'at least',
          provided: lapMm,
          like: upturn ?? jamb.apply.ontoWallMm,
          limit: limit({
            property: 'lap',
            subject: 'jamb flashing',
            product: jamb.product,
            comparison: 'at least',
            offered: whole,
          }),
          sentence: (p) =>
            `The jamb flashing "${jamb.id}" laps ${p} over the end of "${pan.id}" at the ${side} of "${opening.id}"`,
          correct: (required) =>
            `Run "${jamb.id}" down over the end of "${pan.id}" by ${required} ("belowSill", "ontoWall"), or turn the pan up the jamb ("endDams").`,
          missing: ['product.least.lap'],
        });
        yield result.kind === 'fail' ? { ...result, sources: [...(result.sources ?? []), GUIDE, EPA] } : result;
      }
    }
  },
});
