import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { faceOnSide, flashingAt, isApplied, isAtPlace, isOutside } from '../../src/geometry/around-opening.js';
import { edgeOverlap } from '../../src/geometry/overlap.js';
import { isFluid } from '../../src/model/families.js';
import type { Side } from '../../src/model/types.js';
import { BONDED_ORDER, HABIT, habit, inches, isBondedCoat } from '../../src/water/laps.js';

const GUIDE: Source = {
  basis: 'guide',
  citation: 'DOE Building America Solution Center, fully flashed window and door openings',
  provenance: 'seen',
  url: 'https://basc.pnnl.gov/resource-guides/fully-flashed-window-and-door-openings',
};
const PHYSICS: Source = { basis: 'physics', citation: 'water runs down', provenance: 'computed' };
const JAMBS = ['left jamb', 'right jamb'] as const satisfies readonly Side[];

/** Head flashing covers the tops of the jamb flashing, out to its outer edge. */
export default defineRule({
  id: 'lap/head-over-jamb',
  title: 'Lap of head and jamb flashing',
  summary: 'The head flashing laps over the top of the jamb flashing, over its whole width.',
  level: 'error',
  reads: ['work.place', 'work.ontoWall', 'work.pastJambs', 'work.downJambs', 'work.aboveHead', 'product.least.lap'],
  sources: [GUIDE],
  parameters: {
    lap: {
      type: 'length',
      default: '2 in',
      meaning: 'lap of the head flashing over the jamb flashing where no document of the project states one',
      source: HABIT,
    },
  },
  *review({ detail, face, limit, number }) {
    for (const opening of detail.openings) {
      // The strips over the flange of the unit follow the same order.
      const strips = face.pieces.filter(isApplied).filter((p) => p.opening === opening && p.role === 'counterflashing');
      for (const jamb of strips.filter((p) => isAtPlace(p, 'flange jambs'))) {
        for (const head of strips.filter((p) => isAtPlace(p, 'flange head') && p.work !== jamb.work)) {
          const lap = face.lapBetween(head, jamb);
          if (lap === undefined) continue;
          const subject = `${jamb.id} and ${head.id} of ${opening.id}`;
          const related = [{ message: 'the strip over the head flange', at: head.at }];
          yield lap.over === head
            ? {
                kind: 'pass',
                subject,
                related,
                at: jamb.at,
                sources: this.sources,
                message: `The strip "${head.id}" over the head flange lies over the strip "${jamb.id}" over the jamb flanges.`,
              }
            : {
                kind: 'fail',
                subject,
                related,
                at: jamb.at,
                sources: jamb.edge === 'bonded' ? [GUIDE] : [PHYSICS, GUIDE],
                message: `The strip "${jamb.id}" over the jamb flanges of "${opening.id}" lies over the strip "${head.id}" over the head flange.${isBondedCoat(jamb) ? ` ${BONDED_ORDER}` : ''}`,
                required: 'head strip over jamb strips',
                provided: 'jamb strips over head strip',
                correct: `Put "${jamb.work.id}" before "${head.work.id}".`,
              };
        }
      }
      const heads = flashingAt(face, opening, 'head').filter((p) => p.face.length > 0);
      const main = heads.at(-1);
      if (main === undefined) continue;
      for (const side of JAMBS) {
        for (const jamb of flashingAt(face, opening, side)) {
          const strip = faceOnSide(jamb, opening, side);
          if (strip.length === 0) continue;
          const subject = `${jamb.id} at the ${side} of ${opening.id}`;
          const same = heads.find((h) => h.work === jamb.work);
          if (same !== undefined && isFluid(jamb.apply.family)) {
            yield {
              kind: 'pass',
              subject,
              at: jamb.at,
              sources: this.sources,
              message: `Head and ${side} of "${opening.id}" are flashed in one fluid-applied step, "${jamb.work.id}", without a lap.`,
            };
            continue;
          }
          const inside = heads.find((h) => face.lapBetween(h, jamb)?.over === jamb);
          const outside = heads.filter((h) => isOutside(face, h, jamb));
          const cover = edgeOverlap(
            strip,
            'top',
            outside.flatMap((h) => h.face),
            face.bounds,
          );
          if (cover === undefined) continue;
          const related = [{ message: 'the head flashing', at: main.at }];
          if (inside !== undefined && cover.leastMm === 0) {
            yield {
              kind: 'fail',
              subject,
              related,
              at: jamb.at,
              sources: isBondedCoat(jamb) ? [GUIDE] : [PHYSICS, GUIDE],
              message: `The jamb flashing "${jamb.id}" lies outside the head flashing "${inside.id}" at the ${side} of "${opening.id}"${isBondedCoat(jamb) ? `. ${BONDED_ORDER}` : ', so water on the head runs behind it.'}`,
              required: 'head flashing over jamb flashing',
              provided: 'jamb flashing over head flashing',
              correct: `Put "${jamb.work.id}" before "${inside.work.id}".`,
            };
            continue;
          }
          const bare = cover.bareMm > 0.1;
          const result = againstLimit({
            subject,
            related: [{ message: 'the jamb flashing', at: jamb.at }],
            dimension: 'length',
            comparison: 'at least',
            provided: cover.leastMm,
            at: main.apply.downJambsMm?.at ?? (bare ? main.apply.pastJambsMm?.at : undefined) ?? main.at,
            like: main.apply.downJambsMm ?? main.apply.ontoWallMm ?? main.apply.upstandMm,
            limit: limit({
              property: 'lap',
              subject: 'head flashing',
              product: main.product,
              comparison: 'at least',
              offered: habit(number('lap')),
            }),
            sentence: (p) =>
              bare
                ? `The head flashing leaves ${inches(cover.bareMm)} of the top of "${jamb.id}" uncovered at the ${side} of "${opening.id}" (lap ${p})`
                : `The head flashing laps ${p} over the top of "${jamb.id}" at the ${side} of "${opening.id}"`,
            correct: (required) =>
              `Run "${main.id}" past the outer edge of "${jamb.id}" ("pastJambs") and over its top by ${required} ("downJambs" of the head, or "aboveHead" of the jamb).`,
            missing: ['product.least.lap'],
          });
          yield result.kind === 'fail' ? { ...result, sources: [...(result.sources ?? []), GUIDE] } : result;
        }
      }
    }
  },
});
