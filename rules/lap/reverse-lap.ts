import { BARRIER_LAPS } from '../../src/engine/clauses.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { pieceName } from '../../src/geometry/piece-name.js';
import type { ReverseLap } from '../../src/geometry/types.js';
import { formatQuantity } from '../../src/quantity/format.js';

const PHYSICS: Source = { basis: 'physics', citation: 'water runs down', provenance: 'computed' };
const SOURCES: readonly Source[] = [
  PHYSICS,
  ...BARRIER_LAPS,
  {
    basis: 'guide',
    citation: 'FEMA P-499, fact sheet 1.9',
    provenance: 'seen',
  },
];

/** The same two pieces may meet the wrong way in several places, left and right of an opening for one. */
function byPieces(laps: readonly ReverseLap[]): (readonly [ReverseLap, ...ReverseLap[]])[] {
  const groups = new Map<string, [ReverseLap, ...ReverseLap[]]>();
  for (const lap of laps) {
    const group = groups.get(`${lap.over.id} ${lap.under.id}`);
    if (group === undefined) groups.set(`${lap.over.id} ${lap.under.id}`, [lap]);
    else group.push(lap);
  }
  return [...groups.values()];
}

/** Water comes down the inner piece and goes behind the upper edge of the outer one. */
export default defineRule({
  id: 'lap/reverse-lap',
  title: 'Direction of laps',
  summary: 'At every lap that faces the water, the upper piece lies over the lower one.',
  level: 'error',
  reads: ['work.place', 'work.tuckedUnder', 'work.edge', 'work.edgeSeal', 'product.edge'],
  sources: SOURCES,
  *review({ detail, face }) {
    if (detail.work.length === 0) return;
    const groups = byPieces(face.reverseLaps.filter((lap) => lap.edge === 'open'));
    for (const laps of groups) {
      const { over, under } = laps[0];
      const [outer, inner] = [pieceName(over), pieceName(under)];
      const widthMm = laps.reduce((sum, lap) => sum + lap.u1 - lap.u0, 0);
      const width = formatQuantity(widthMm, 'length', { system: 'US' });
      yield {
        kind: 'fail',
        message: `Reverse lap: ${outer} lies over ${inner}, and its open upper edge faces the water that comes down ${inner}, over ${width}${laps.length === 1 ? '' : ` in ${laps.length} places`}.`,
        at: over.at,
        subject: `${over.id} over ${under.id}`,
        required: 'upper piece over lower piece',
        provided: `${outer} outside, its upper edge open`,
        correct: `Lap ${inner} over ${outer}: do "${over.work.id}" first, or slip it under with "tuckedUnder: ${under.work.id}".`,
        sources: SOURCES,
        related: [{ message: `${inner}, which the water comes down`, at: under.at }],
        flow: [
          { message: `Water runs down ${inner}.`, at: under.at },
          { message: `It meets the open upper edge of ${outer} and goes behind it.`, at: over.at, essential: true },
        ],
      };
    }
    if (groups.length === 0 && face.laps.length > 0) {
      yield {
        kind: 'pass',
        message: `No open edge faces the water in ${face.laps.length} laps.`,
        at: detail.at,
        subject: 'all laps',
        sources: SOURCES,
      };
    }
  },
});
