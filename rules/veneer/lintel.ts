import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { anchoredVeneer } from '../../src/model/veneer.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { nominalMm } from '../../src/water/laps.js';

const CODE: Source = {
  basis: 'code',
  citation: 'IRC R703.8.3, lintels of masonry veneer',
  provenance: 'from memory, confirm',
};

/** Something carries the veneer over each opening, and rests long enough on the veneer beside it. */
export default defineRule({
  id: 'veneer/lintel',
  title: 'Lintel over an opening in masonry veneer',
  summary: 'Each opening in a masonry veneer names what carries the veneer over it, and how far that bears.',
  level: 'warning',
  reads: ['openings.lintel', 'work.place', 'wall.material'],
  sources: [CODE],
  parameters: {
    bearing: { type: 'length', default: '4 in', meaning: 'least bearing of a lintel on the veneer', source: CODE },
  },
  *review({ detail, number }) {
    const veneer = anchoredVeneer(detail);
    if (veneer === undefined || detail.work.length === 0) return;
    const angle = detail.work.find((w) => w.action === 'apply' && w.places.some((p) => p.value === 'shelf angle'));
    for (const opening of detail.openings) {
      const { lintel } = opening;
      const subject = `lintel over ${opening.id}`;
      const common = { subject, sources: [CODE] };
      if (lintel === undefined) {
        // A shelf angle that is drawn may carry the veneer over the opening too.
        if (angle !== undefined) continue;
        yield {
          kind: 'open',
          ...common,
          at: opening.at,
          missing: ['openings.lintel'],
          message: `What carries the veneer "${veneer.layer.id}" over "${opening.id}" is not told; add "lintel: { material, bearing }".`,
        };
      } else if (lintel.carriedBy?.value === 'structure') {
        yield {
          kind: 'pass',
          ...common,
          at: lintel.at,
          message: `The veneer over "${opening.id}" is carried by the structure (${lintel.material.value}).`,
        };
      } else if (lintel.bearingMm === undefined) {
        yield {
          kind: 'open',
          ...common,
          at: lintel.at,
          missing: ['openings.lintel.bearing', 'openings.lintel.carriedBy'],
          message: `The lintel over "${opening.id}" does not say how far it bears on the veneer beside the opening; add "bearing", or "carriedBy: structure".`,
        };
      } else {
        const least = number('bearing');
        yield againstLimit({
          subject,
          at: lintel.bearingMm.at,
          dimension: 'length',
          comparison: 'at least',
          like: lintel.bearingMm,
          provided: lintel.bearingMm.value,
          limit: {
            value: nominalMm(least),
            text: formatQuantity(least, 'length', lintel.bearingMm),
            source: CODE,
            others: [],
          },
          sentence: (p) => `The lintel over "${opening.id}" bears ${p} on the veneer at each end`,
          correct: (required) =>
            `Bear the lintel ${required} at each end, and have its size confirmed by the engineer.`,
          missing: [],
        });
      }
    }
  },
});
