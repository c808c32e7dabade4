import { BRICK_FLASHING } from '../../src/engine/clauses.js';
import { againstLimit } from '../../src/engine/against-limit.js';
import type { OfferedLimit } from '../../src/engine/limits.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import type { Apply, Detail } from '../../src/model/types.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { waterHeadMm } from '../../src/water/head.js';
import { hasMasonry } from '../../src/water/laps.js';

const HEAD: Source = {
  basis: 'physics',
  citation: 'head of water at the design wind pressure, P / (rho g)',
  provenance: 'computed',
  url: 'https://obc.hyperlinked.ca/volume-2/appendix-a/explanatory-b/b-9.27.3.8.(5)-appx',
};
/** Turned into a head joint of masonry. */
const MASONRY: OfferedLimit = { value: 25.4, text: '1 in', source: BRICK_FLASHING };

/** Horizontal flashing that ends within the wall; through-wall flashing at the base only where the wall ends too. */
function endsWithin(detail: Detail, apply: Apply): boolean {
  return apply.places.some(({ value: place }) => {
    if (place === 'head') return apply.family === 'metal flashing';
    if (place === 'shelf angle' || place === 'lintel')
      return apply.family !== 'sealant' && apply.family !== 'backer rod';
    const ends = detail.edges.some((e) => (e.side === 'left' || e.side === 'right') && e.meets.value !== 'same wall');
    return place === 'base of wall' && (apply.endDamsMm !== undefined || (ends && apply.upstandMm !== undefined));
  });
}

/** Ends of horizontal flashing turn up, higher than wind pushes the water. */
export default defineRule({
  id: 'lap/end-dam',
  title: 'End dams of horizontal flashing',
  summary: 'Horizontal flashing that stops within the wall has turned-up ends, higher than the wind raises water.',
  level: 'warning',
  reads: ['work.place', 'work.endDams', 'project.wind.designPressure', 'wall.material'],
  sources: [HEAD, BRICK_FLASHING],
  *review({ detail, limit }) {
    for (const work of detail.work) {
      if (work.action !== 'apply' || !endsWithin(detail, work)) continue;
      const subject = `ends of ${work.id}`;
      if (work.endDamsMm === undefined) {
        yield {
          kind: 'open',
          subject,
          at: work.at,
          missing: ['work.endDams'],
          message: `"${work.id}" stops within the wall and does not say how high its ends turn up; add "endDams".`,
        };
        continue;
      }
      const pressure = detail.project?.designPressurePa;
      const offered: OfferedLimit[] = hasMasonry(detail.layers) ? [MASONRY] : [];
      if (pressure !== undefined) {
        const headMm = waterHeadMm(pressure.value);
        offered.push({
          value: headMm,
          text: `${formatQuantity(headMm, 'length', { ...work.endDamsMm, toward: 'up' })} (head of water at ${pressure.text})`,
          source: { ...HEAD, at: pressure.at },
        });
      }
      const atHead = work.places.some((p) => p.value === 'head');
      yield againstLimit({
        subject,
        at: work.endDamsMm.at,
        dimension: 'length',
        comparison: 'at least',
        like: work.endDamsMm,
        provided: work.endDamsMm.value,
        limit: limit({
          property: 'end dam height',
          subject: atHead ? 'head flashing' : 'through-wall flashing',
          product: work.product,
          comparison: 'at least',
          offered,
        }),
        sentence: (p) => `The ends of "${work.id}" turn up ${p}`,
        correct: (required) => `Turn the ends up ${required} ("endDams").`,
        missing: ['project.wind.designPressure', 'a specification requirement for "end dam height"'],
      });
    }
  },
});
