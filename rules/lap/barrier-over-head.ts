import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { fieldPieces, flashingAt, isApplied, isOutside } from '../../src/geometry/around-opening.js';
import { edgeOverlap } from '../../src/geometry/overlap.js';
import { isFluid } from '../../src/model/families.js';
import { HABIT, habit } from '../../src/water/laps.js';

const GUIDE: Source = {
  basis: 'guide',
  citation: 'DOE Building America Solution Center, fully flashed window and door openings',
  provenance: 'seen',
  url: 'https://basc.pnnl.gov/resource-guides/fully-flashed-window-and-door-openings',
};
const NBC: Source = {
  basis: 'code',
  citation: 'NBC 9.27.3.8',
  codes: ['NBC'],
  provenance: 'seen',
  url: 'https://www.oncodes.ca/building-envelope/flashing-installation/',
};
const PHYSICS: Source = { basis: 'physics', citation: 'water runs down', provenance: 'computed' };

/** The upper edge of each head flashing lies behind the barrier, all along. */
export default defineRule({
  id: 'lap/barrier-over-head',
  title: 'Lap of barrier and head flashing',
  summary: 'The barrier laps over the upper leg of the head flashing along its whole length.',
  level: 'error',
  reads: ['work.place', 'work.ontoWall', 'work.upstand', 'work.lapsOnto', 'work.tuckedUnder', 'product.least.lap'],
  sources: [GUIDE, NBC],
  parameters: {
    lap: {
      type: 'length',
      default: '2 in',
      meaning: 'lap of the barrier over the head flashing where no document of the project states one',
      source: HABIT,
    },
  },
  *review({ detail, face, limit, number }) {
    const field = fieldPieces(face);
    const last = field.at(-1);
    if (last === undefined) return;
    const [order, flashing] = detail.project?.code?.title === 'NBC' ? [NBC, GUIDE] : [GUIDE, NBC];
    for (const opening of detail.openings) {
      const heads = flashingAt(face, opening, 'head').filter((p) => p.face.length > 0);
      const strips = face.pieces.filter(isApplied).filter((p) => p.opening === opening && p.role === 'counterflashing');
      for (const head of heads) {
        const { apply } = head;
        const others = [...field, ...strips, ...heads].filter((p) => p !== head && p.work !== head.work);
        const covers = others.filter((p) => isOutside(face, p, head) && face.lapBetween(p, head) !== undefined);
        const cover = edgeOverlap(
          head.face,
          'top',
          covers.flatMap((p) => p.face),
          face.bounds,
        );
        if (cover === undefined) continue;
        const subject = `${head.id} of ${opening.id}`;
        const behind = field.filter((p) => face.lapBetween(p, head)?.over === head);
        const first = behind[0];
        if (cover.leastMm === 0 && first !== undefined) {
          const related = [{ message: `water comes down "${first.id}"`, at: first.at }];
          if (isFluid(apply.family) && head.edge === 'bonded') {
            yield againstLimit({
              subject,
              related,
              at: apply.ontoWallMm?.at ?? head.at,
              dimension: 'length',
              comparison: 'at least',
              like: apply.ontoWallMm,
              provided:
                edgeOverlap(
                  head.face,
                  'top',
                  behind.flatMap((p) => p.face),
                  face.bounds,
                )?.leastMm ?? 0,
              limit: limit({
                property: 'lap',
                subject: 'head flashing',
                product: head.product,
                comparison: 'at least',
                offered: habit(number('lap')),
              }),
              sentence: (p) =>
                `The fluid-applied flashing "${head.id}" is bonded over the face of "${first.id}" by ${p}`,
              correct: (required) =>
                `Bond "${head.id}" over the barrier by ${required}, or put it on first and lap the barrier over it.`,
              missing: ['product.least.lap'],
            });
          } else {
            yield {
              kind: 'fail',
              subject,
              related,
              at: head.at,
              sources: [head.edge === 'open' ? PHYSICS : order, flashing],
              message: `The head flashing "${head.id}" lies on the face of "${first.id}", so the wall above drains in behind it.`,
              required: `"${first.id}" over "${head.id}"`,
              provided: `"${head.id}" outside`,
              correct: `Put "${head.id}" on before "${first.id}", or slip it under with "tuckedUnder: ${first.work.id}".`,
            };
          }
          continue;
        }
        const by = covers.findLast((p) => p.role === 'field') ?? covers.at(-1) ?? last;
        const stated = by.apply.lapsOnto.find((l) => l.onto === 'opening flashing' || l.onto === head.work.id)?.lapMm;
        const bare = cover.bareMm > 0;
        const result = againstLimit({
          subject,
          at: stated?.at ?? (bare ? (apply.ontoWallMm?.at ?? head.at) : by.at),
          dimension: 'length',
          comparison: 'at least',
          like: stated ?? apply.ontoWallMm ?? apply.upstandMm,
          provided: cover.leastMm,
          limit: limit({
            property: 'lap',
            subject: by.role === 'field' ? 'field membrane' : 'counterflashing',
            product: by.product,
            comparison: 'at least',
            offered: habit(number('lap')),
          }),
          sentence: (p) =>
            bare
              ? `"${by.id}" leaves part of the upper edge of the head flashing "${head.id}" uncovered (lap ${p})`
              : `"${by.id}" laps ${p} over the head flashing "${head.id}"`,
          correct: (required) => `Lap "${by.id}" over "${head.id}" by ${required}, all along its upper edge.`,
          missing: ['product.least.lap'],
          related: [{ message: 'the head flashing', at: head.at }],
        });
        yield result.kind === 'fail' ? { ...result, sources: [...(result.sources ?? []), order, flashing] } : result;
      }
    }
  },
});
