import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import { faceOnSide, fieldPieces, flashingAt, isOutside } from '../../src/geometry/around-opening.js';
import { sideOverlap } from '../../src/geometry/overlap.js';
import { openingRect } from '../../src/geometry/pieces.js';
import { isFluid } from '../../src/model/families.js';
import { SIDES } from '../../src/model/types.js';
import { HABIT, habit } from '../../src/water/laps.js';

/** Field barrier and opening flashing overlap on all sides of the opening. */
export default defineRule({
  id: 'extension/field-lap',
  title: 'Lap of field and opening flashing',
  summary: 'Field barrier and opening flashing overlap by enough on every side of the opening.',
  level: 'error',
  reads: ['work.lapsOnto', 'work.ontoWall', 'product.least.lap'],
  sources: [HABIT],
  parameters: {
    lap: {
      type: 'length',
      default: '2 in',
      meaning: 'overlap of field and flashing where no document of the project states one',
      source: HABIT,
    },
  },
  *review({ detail, face, limit, number }) {
    const field = fieldPieces(face);
    const coat = field.at(-1);
    if (coat === undefined) return;
    const area = field.flatMap((p) => p.face);
    for (const opening of detail.openings) {
      const o = openingRect(opening);
      const sides = SIDES.flatMap((side) => {
        const flashing = flashingAt(face, opening, side).filter((p) => p.face.length > 0);
        const last = flashing.at(-1);
        const lapMm =
          last === undefined
            ? undefined
            : sideOverlap(
                o,
                side,
                face.bounds,
                flashing.flatMap((p) => faceOnSide(p, opening, side)),
                area,
              );
        return last === undefined || lapMm === undefined ? [] : [{ side, last, lapMm }];
      });
      // One outcome for each opening: the sides of one field coat stand or fall together. Equal laps (to a tenth of
      // a millimeter) keep the order of the sides.
      const worst = sides.sort((a, b) => Math.round(a.lapMm * 10) - Math.round(b.lapMm * 10))[0];
      if (worst === undefined) continue;
      const { side, last, lapMm } = worst;
      const met = field.filter((p) => face.lapBetween(p, last) !== undefined).at(-1) ?? coat;
      const flashingOutside = isOutside(face, last, met);
      const stated = met.apply.lapsOnto.find((l) => l.onto === 'opening flashing' || l.onto === last.work.id)?.lapMm;
      const over = flashingOutside ? last : met;
      // What the documents ask of the field is not answered by a flashing that lies over it. A coat has no courses, so
      // its lap is the one onto the flashing.
      const asked =
        flashingOutside && isFluid(met.apply.family)
          ? limit({ property: 'lap', subject: 'field membrane', product: undefined, comparison: 'at least' })
          : undefined;
      if (asked?.source.requirement !== undefined)
        yield {
          kind: 'fail',
          level: 'warning',
          subject: `order of field and flashing at ${opening.id}`,
          at: met.at,
          message: `"${last.id}" lies over "${met.id}" at the ${side} of "${opening.id}"; the field lapped ${asked.asks ?? `at least ${asked.text}`} onto the flashing is required (${asked.source.citation}).`,
          required: `${asked.asks ?? `at least ${asked.text}`} onto the flashing`,
          provided: 'flashing over the field',
          correct: `Do "${last.work.id}" before "${met.work.id}" and bring the field onto it, or declare the order as a deviation.`,
          sources: [asked.source],
          related: [{ message: 'the flashing', at: last.at }],
        };
      yield againstLimit({
        subject: `field at ${opening.id}`,
        dimension: 'length',
        comparison: 'at least',
        provided: lapMm,
        like: stated ?? last.apply.ontoWallMm,
        at: flashingOutside ? (last.apply.ontoWallMm?.at ?? last.at) : (stated?.at ?? met.at),
        limit: limit({
          property: 'lap',
          subject: flashingOutside ? 'opening flashing' : 'field membrane',
          product: over.product,
          comparison: 'at least',
          offered: habit(number('lap')),
        }),
        sentence: (p) =>
          `"${over.id}" laps ${p} over "${(flashingOutside ? met : last).id}" at the ${side} of "${opening.id}"${sides.length > 1 ? ', its least lap there' : ''}`,
        correct: (required) =>
          flashingOutside
            ? `Widen "${last.id}" so that it laps ${required} over the field ("ontoWall").`
            : `Bring "${met.id}" ${required} onto the flashing ("lapsOnto: { opening flashing }"), and make the flashing wide enough for it.`,
        missing: ['product.least.lap'],
        related: [{ message: flashingOutside ? 'the field' : 'the flashing', at: (flashingOutside ? met : last).at }],
      });
    }
  },
});
