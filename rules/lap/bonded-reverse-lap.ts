import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { isApplied, isAtPlace } from '../../src/geometry/around-opening.js';
import type { Piece, ReverseLap } from '../../src/geometry/types.js';
import { defaultEdge } from '../../src/model/families.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { BONDED_ORDER, HABIT, habit, inches, isBondedCoat, nominalMm } from '../../src/water/laps.js';

const NO_SUBSTITUTE: Source = {
  basis: 'guide',
  citation: 'FEMA P-499, fact sheet 1.9',
  provenance: 'seen',
};

/** At a sill or a head the water is collected or led, and a bonded edge is not trusted with it. */
function critical(piece: Piece): boolean {
  return (
    piece.role === 'sill flashing' ||
    piece.role === 'head flashing' ||
    (isApplied(piece) && isAtPlace(piece, 'flange head'))
  );
}

/** Edges that face the water and are bonded or sealed: sound for a coat, an exception for a sheet. */
export default defineRule({
  id: 'lap/bonded-reverse-lap',
  title: 'Bond of laps that face the water',
  summary: 'An edge that faces the water is part of a fluid-applied coat, or is accepted as a recorded exception.',
  level: 'warning',
  reads: ['work.place', 'work.edge', 'work.edgeSeal', 'product.edge', 'product.least.lap', 'deviations'],
  sources: [HABIT, NO_SUBSTITUTE],
  parameters: {
    normalLap: {
      type: 'length',
      default: '2 in',
      meaning: 'lap of a sheet in the right order, where no document of the project states one',
      source: HABIT,
    },
    share: {
      type: 'count',
      default: 1.5,
      meaning: 'how many times the normal lap a bonded reverse lap has',
      source: HABIT,
    },
  },
  *review({ detail, face, limit, number }) {
    if (detail.work.length === 0) return;
    const groups = new Map<string, ReverseLap[]>();
    for (const lap of face.reverseLaps) {
      // The flange of a unit has a rule of its own: what covers it.
      if (lap.edge === 'open' || lap.over.apply === undefined) continue;
      const key = `${lap.over.id} over ${lap.under.id}`;
      groups.set(key, [...(groups.get(key) ?? []), lap]);
    }
    for (const [subject, laps] of groups) {
      const { over, under } = laps[0] as ReverseLap;
      const apply = over.apply;
      if (apply === undefined) continue;
      const lapMm = Math.min(...laps.map((l) => l.lapMm));
      const like = apply.lapsOnto[0]?.lapMm ?? apply.ontoWallMm ?? { system: 'US' as const };
      const provided = `${over.edge} edge, lap ${formatQuantity(lapMm, 'length', like)}`;
      const related = [{ message: `water comes down "${under.id}"`, at: under.at }];
      if (isBondedCoat(over)) {
        yield {
          kind: 'pass',
          at: over.at,
          subject,
          related,
          provided,
          sources: this.sources,
          message: `The upper edge of "${over.id}" faces the water coming down "${under.id}"; it is fluid-applied and laps ${formatQuantity(lapMm, 'length', like)}. ${BONDED_ORDER}`,
        };
        continue;
      }
      const normal = limit({
        property: 'lap',
        product: over.product,
        comparison: 'at least',
        offered: habit(number('normalLap')),
      });
      const neededMm = (normal?.value ?? nominalMm(number('normalLap'))) * number('share');
      // A seal along the edge does not undo the bond of the product behind it.
      const bonded = over.edge === 'bonded' || (over.product?.edge?.value ?? defaultEdge(apply.family)) === 'bonded';
      const lacking = [
        ...(critical(over) || critical(under) ? ['it is at a sill or a head, where no reverse lap is accepted'] : []),
        ...(bonded ? [] : ['it is not bonded over its full width']),
        ...(apply.edgeSeal === undefined ? ['its edge has no edge seal'] : []),
        ...(lapMm >= neededMm - 0.1 ? [] : [`it laps less than ${inches(neededMm)}`]),
      ];
      yield {
        kind: 'fail',
        at: over.at,
        subject,
        related,
        provided,
        message: `Reverse lap: "${over.id}" lies over "${under.id}" with a ${over.edge} upper edge that faces the water; ${lacking.length === 0 ? 'it is bonded, sealed and long enough, and needs to be accepted as a deviation' : lacking.join('; ')}.`,
        required: `upper piece over lower piece, or bonded and edge-sealed with at least ${inches(neededMm)} of lap and accepted as a deviation`,
        correct:
          lacking.length === 0
            ? 'Record it under "deviations" with the reason and who accepted it.'
            : `Do "${over.id}" before "${under.id}", or slip it under with "tuckedUnder: ${under.work.id}".`,
        sources: this.sources,
      };
    }
  },
});
