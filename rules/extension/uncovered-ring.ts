import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { fieldPieces, flashingAt, FLASHING_ROLE, isApplied } from '../../src/geometry/around-opening.js';
import { openingRect } from '../../src/geometry/pieces.js';
import { inches } from '../../src/water/laps.js';
import { SIDES, type Side } from '../../src/model/types.js';

const COMPUTED: Source = {
  basis: 'physics',
  citation: 'bare sheathing holds off neither water nor air',
  provenance: 'computed',
};

/** No bare sheathing around an opening between its flashing and the field. */
export default defineRule({
  id: 'extension/uncovered-ring',
  title: 'Cover of the wall around an opening',
  summary: 'Flashing and field together leave no bare sheathing around an opening.',
  level: 'error',
  reads: ['work.ontoWall', 'work.pastJambs', 'work.aboveHead', 'work.belowSill', 'work.lapsOnto'],
  sources: [COMPUTED],
  *review({ detail, face }) {
    // A detail that shows only the barrier below the sill does not say what is beside the opening.
    const coat = fieldPieces(face).findLast((p) => p.apply.places.some((x) => x.value !== 'field below sill'));
    if (coat === undefined) return;
    for (const opening of detail.openings) {
      const o = openingRect(opening);
      const flashing = SIDES.flatMap((side) => flashingAt(face, opening, side));
      const reachMm = Math.max(
        0,
        ...flashing.flatMap((p) => p.face).map((r) => Math.max(o.u0 - r.u0, r.u1 - o.u1, o.v0 - r.v0, r.v1 - o.v1)),
      );
      if (reachMm === 0) continue;
      const bare = face.uncovered(opening, reachMm).filter((a) => a.areaMm2 > 1);
      const subject = `wall around ${opening.id}`;
      const largest = [...bare].sort((a, b) => b.areaMm2 - a.areaMm2)[0];
      if (largest === undefined) {
        yield {
          kind: 'pass',
          at: opening.at,
          subject,
          sources: this.sources,
          message: `Flashing and field leave no bare wall within ${inches(reachMm)} of "${opening.id}".`,
        };
        continue;
      }
      const { rect } = largest;
      const side: Side =
        rect.v0 >= o.v1 - 0.1
          ? 'head'
          : rect.v1 <= o.v0 + 0.1
            ? 'sill'
            : rect.u1 <= o.u0 + 0.1
              ? 'left jamb'
              : 'right jamb';
      const corner = (side === 'head' || side === 'sill') && (rect.u1 <= o.u0 + 0.1 || rect.u0 >= o.u1 - 0.1);
      const main =
        flashing.findLast((p) => p.role === FLASHING_ROLE[side]) ??
        face.pieces.filter(isApplied).findLast((p) => p === coat) ??
        coat;
      const where = corner ? `at a corner of the ${side}` : `at the ${side}`;
      yield {
        kind: 'fail',
        subject,
        at: (corner ? main.apply.pastJambsMm?.at : main.apply.ontoWallMm?.at) ?? main.at,
        sources: this.sources,
        message: `Neither flashing nor field covers ${inches(rect.u1 - rect.u0)} by ${inches(rect.v1 - rect.v0)} of wall ${where} of "${opening.id}"${bare.length > 1 ? `; there are ${bare.length} bare spots around the opening` : ''}.`,
        required: 'no bare wall',
        provided: `${bare.length} bare ${bare.length === 1 ? 'spot' : 'spots'}`,
        correct: corner
          ? `Run "${main.id}" past the jambs so that the corner is covered ("pastJambs"), or bring "${coat.id}" in to the opening.`
          : `Widen "${main.id}" ("ontoWall"), or bring "${coat.id}" in to it.`,
        related: [{ message: 'the field', at: coat.at }],
      };
    }
  },
});
