import { heldForRain } from '../../src/engine/rain-storage.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Detail } from '../../src/model/types.js';
import type { Source } from '../../src/engine/result.js';
import { exposedMasonry } from '../../src/moisture/wall/exposed-masonry.js';
import { outerSide, sensitiveBetween } from '../../src/vapor/double-barrier.js';
import { frameOf } from '../../src/vapor/frame.js';
import { jurisdiction, permitted } from '../../src/vapor/permitted.js';
import { interiorSide } from '../../src/vapor/interior-side.js';

const CODE: Source = {
  basis: 'code',
  citation: 'IRC 2021 R702.7 and IBC 2021 1404.3, note to class I',
  provenance: 'seen at second hand',
};
const PRACTICE: Source = { basis: 'practice', citation: 'common practice', provenance: 'common practice, no source' };

/** Wood or gypsum shut in between two class I layers has no way to dry. */
export default defineRule({
  id: 'vapor/double-barrier',
  title: 'Vapor barriers on the two sides',
  summary: 'Wood and gypsum do not stand between a class I layer inside and a class I layer outside.',
  level: 'warning',
  reads: [
    'wall.material',
    'wall.product',
    'wall.permeance',
    'wall.finish',
    'wall.vented',
    'product.permeance',
    'product.responsive',
    'project.code',
  ],
  sources: [CODE, PRACTICE],
  caution: 'An aid to review: an approved design may show that such a wall stays dry.',
  *review({ detail }) {
    const frame = frameOf(detail);
    if (frame === undefined) return;
    const side = interiorSide(detail, frame);
    if (side.kind !== 'retarder' || side.retarder.vaporClass !== 'I') return;
    const { retarder } = side;
    const subject = 'class I inside and outside';
    const code = detail.project?.code;
    const sources = code !== undefined && code.title !== 'NBC' && code.edition === 2021 ? [CODE, PRACTICE] : [PRACTICE];
    const inside = `"${retarder.layer.id}" inside is class I (${retarder.words})`;
    if (retarder.responsive) {
      yield heldForRain(detail, {
        kind: 'pass',
        at: retarder.at,
        subject,
        sources,
        message: `The class I retarder "${retarder.layer.id}" is responsive and lets the wall dry to the room when it is damp.`,
      });
      return;
    }
    const outer = outerSide(detail, frame);
    // Masonry full of rain wets the wall from outside; nothing dries through it then.
    const masonry = exposedMasonry(detail).kind !== 'drained';
    if (outer.barrier === undefined && outer.unknown.length > 0) {
      const missing = [...new Set(outer.unknown.flatMap((u) => u.missing))];
      yield {
        kind: 'open',
        at: (outer.unknown[0] as (typeof outer.unknown)[number]).layer.at,
        subject,
        sources,
        missing,
        related: [{ message: inside, at: retarder.at }],
        message: `Whether the wall is shut in between two class I layers cannot be told: ${outer.unknown.map((u) => u.words).join('; ')}. State ${missing.join(', ')}.`,
      };
      return;
    }
    const between = outer.barrier === undefined ? undefined : sensitiveBetween(detail, retarder.layer, outer.barrier);
    if (outer.barrier === undefined || between === undefined) {
      yield heldForRain(detail, {
        kind: 'pass',
        at: retarder.at,
        subject,
        sources,
        message:
          outer.barrier === undefined
            ? `${inside}, and no class I layer closes the outside${masonry ? '' : ': vapor can leave outward'}.`
            : `${inside} and "${outer.barrier.id}" outside is class I, with nothing of wood or gypsum between.`,
      });
      return;
    }
    yield {
      kind: 'fail',
      at: retarder.at,
      subject,
      sources,
      message: `${inside} and "${outer.barrier.id}" outside is class I too (${outer.words ?? ''}): "${between.id}" between them cannot dry.`,
      required: 'class I on one side only, or an approved design',
      provided: 'class I on both sides',
      correct: `Use ${inPlaceOfClassOne(detail)} inside, a permeable layer for "${outer.barrier.id}", or submit an approved design.`,
      related: [
        { message: `class I outside (${outer.words ?? ''})`, at: outer.barrier.at },
        { message: 'shut in between', at: between.at },
      ],
    };
  },
});

/** What may stand inside instead, by the table of the place where that is known. */
function inPlaceOfClassOne(detail: Detail): string {
  const place = jurisdiction(detail.project);
  const next = (['II', 'III'] as const).find((c) => place.kind !== 'known' || permitted(place, c).permission === 'yes');
  return next === undefined ? 'a responsive retarder' : `a responsive or class ${next} retarder`;
}
