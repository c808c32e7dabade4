import { AIR_SEALED } from '../../src/engine/clauses.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { sideTold } from '../../src/continuity/gap-told.js';
import { findGaps } from '../../src/continuity/gaps.js';
import { planeOf } from '../../src/continuity/planes.js';
import type { SideGap } from '../../src/continuity/side-gaps.js';
import { isToldElsewhere } from '../../src/continuity/told.js';
import { listed } from '../../src/continuity/words.js';
import { flashingAt } from '../../src/geometry/around-opening.js';
import { SIDES } from '../../src/model/types.js';

const PEN: Source = {
  basis: 'guide',
  citation: 'EPA 402-F-13053, tracing the air barrier without lifting the pen',
  provenance: 'seen at second hand',
  url: 'https://associationdatabase.co/NFBA/November2023/inc/html/22.html',
};
/** The air barrier runs from the field into each opening, along the whole of each side. */
export default defineRule({
  id: 'continuity/air',
  title: 'Air line at openings',
  summary: 'Along the whole of each side of an opening, the air barrier runs from the field over the flashing into it.',
  level: 'error',
  reads: [
    'work.place',
    'work.ontoWall',
    'work.intoOpening',
    'work.lapsOnto',
    'work.bedding',
    'wall.controls',
    'openings.unit.mounting',
    'openings.unit.flange',
  ],
  sources: [...AIR_SEALED, PEN],
  *review({ detail, face }) {
    if (detail.work.length === 0) return;
    const plane = planeOf(detail, face, 'air');
    if (plane?.on !== 'face') return;
    const gaps = findGaps(detail, face, 'air').filter((g): g is SideGap => g.kind === 'side' && g.cause !== 'seal');
    const field = `"${plane.pieces[0].work.id}"`;
    const base = { required: 'field, flashing and return connected', sources: [...AIR_SEALED, PEN] };
    for (const opening of detail.openings) {
      const unflashed = SIDES.filter((side) => flashingAt(face, opening, side).length === 0);
      for (const side of SIDES) {
        const subject = `air barrier at the ${side} of ${opening.id}`;
        const here = gaps.filter((g) => g.opening === opening && g.side === side);
        const [first] = flashingAt(face, opening, side);
        const turnsIn = face.pieces.some((p) => p.opening === opening && (p.returns[side] ?? []).length > 0);
        if (here.length === 0)
          yield {
            kind: 'pass',
            message: `The air barrier runs from ${field} ${turnsIn ? 'into' : 'to the flange of the unit in'} "${opening.id}" along all of its ${side}.`,
            at: first?.at ?? opening.at,
            subject,
            provided: 'connected',
            ...base,
          };
        for (const gap of here) {
          // Sides that are not drawn are asked for together.
          if (gap.missing.length > 0 && unflashed.includes(side)) continue;
          if (!isToldElsewhere(detail, face, gap)) yield { ...sideTold(gap, 'air barrier', field), subject, ...base };
        }
      }
      const asked = unflashed.filter((side) =>
        gaps.some((g) => g.opening === opening && g.side === side && g.missing.length > 0),
      );
      if (asked.length > 0)
        yield {
          kind: 'open',
          message: `No flashing is shown at the ${listed(asked)} of "${opening.id}", so the air barrier cannot be followed there; show what leads it into the opening.`,
          at: opening.at,
          subject: `air barrier at sides of ${opening.id} that are not shown`,
          missing: asked.map((side) => `work.place: ${side}`),
          ...base,
        };
    }
  },
});
