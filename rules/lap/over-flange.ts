import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { isApplied } from '../../src/geometry/around-opening.js';
import type { Piece } from '../../src/geometry/types.js';
import type { Side } from '../../src/model/types.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { HABIT, habit } from '../../src/water/laps.js';

const GUIDE: Source = {
  basis: 'guide',
  citation: 'DOE Building America Solution Center, fully flashed window and door openings',
  provenance: 'seen',
  url: 'https://basc.pnnl.gov/resource-guides/fully-flashed-window-and-door-openings',
};
const E2112: Source = {
  basis: 'standard',
  citation: 'ASTM E2112, methods A and B',
  provenance: 'from memory, confirm',
};
const SIDES_COVERED = ['head', 'left jamb', 'right jamb'] as const satisfies readonly Side[];

/** Flashing or barrier covers the flange of the set unit at head and jambs, and the wall beyond it. */
export default defineRule({
  id: 'lap/over-flange',
  title: 'Cover of the flange',
  summary: 'Flashing or barrier covers the flange of the unit at head and jambs and laps onto what lies beyond it.',
  level: 'warning',
  reads: [
    'openings.unit.mounting',
    'openings.unit.flange',
    'work.place',
    'work.ontoWall',
    'work.pastJambs',
    'method',
    'product.least.lap',
  ],
  sources: [GUIDE, E2112],
  parameters: {
    lap: {
      type: 'length',
      default: '2 in',
      meaning: 'lap beyond the flange where no document of the project states one',
      source: HABIT,
    },
  },
  *review({ detail, face, limit, number }) {
    for (const opening of detail.openings) {
      const unit = opening.unit;
      const set = face.pieces.find((p) => p.role === 'unit flange' && p.opening === opening);
      if (set === undefined || unit?.mounting?.value !== 'flange') continue;
      const flangeMm = unit.flangeMm;
      if (flangeMm === undefined) {
        yield {
          kind: 'open',
          at: unit.at,
          subject: `flange of ${opening.id}`,
          missing: ['openings.unit.flange'],
          message: `The unit in "${opening.id}" is mounted by a flange of unknown width; add "flange".`,
        };
        continue;
      }
      const covers = (p: Piece): boolean => p.sheds && p !== set && face.lapBetween(p, set)?.over === p;
      for (const reach of face.extensions(opening, covers)) {
        const { side } = reach;
        const part = SIDES_COVERED.find((s) => s === side);
        if (part === undefined) continue;
        const subject = `flange at the ${side} of ${opening.id}`;
        // In the methods of family B the jamb flange is bedded on the flashing and left in sight.
        if (side !== 'head' && (detail.method?.value === 'B' || detail.method?.value === 'B1')) {
          yield {
            kind: 'notApplicable',
            at: detail.method.at,
            subject,
            sources: [E2112],
            message: `By method ${detail.method.value} the jamb flanges of "${opening.id}" are bedded on the flashing behind them and need no cover.`,
          };
          continue;
        }
        const reachMm = side === 'head' ? Math.min(reach.straightMm, reach.cornerMm) : reach.straightMm;
        const strips = reach.pieces.filter(isApplied).filter((p) => p.opening === opening);
        const main =
          strips.findLast((p) => p.role === 'counterflashing') ??
          strips.at(-1) ??
          reach.pieces.filter(isApplied).at(-1);
        if (main === undefined || reachMm < flangeMm.value - 0.1) {
          const bareMm = main === undefined ? flangeMm.value : flangeMm.value - reachMm;
          yield {
            kind: 'fail',
            subject,
            at: main === undefined ? set.at : (main.apply.ontoWallMm?.at ?? main.at),
            sources: this.sources,
            related: [{ message: 'the flange', at: flangeMm.at }],
            message:
              main === undefined
                ? `Nothing covers the ${subject}.`
                : `"${main.id}" leaves ${formatQuantity(bareMm, 'length', flangeMm)} of the ${subject} uncovered.`,
            required: `the ${flangeMm.text} flange covered`,
            provided: `${formatQuantity(bareMm, 'length', flangeMm)} bare`,
            correct: `Counterflash the flange at the ${side === 'head' ? 'head' : 'jambs'} after the unit is set, and lap onto the wall beyond it.`,
          };
          continue;
        }
        const lap = limit({
          property: 'lap',
          subject: main.role === 'field' ? 'field membrane' : 'counterflashing',
          product: main.product,
          comparison: 'at least',
          offered: habit(number('lap')),
        });
        // What a data sheet asks of flashing from the edge of the opening is not meant here; a requirement of
        // counterflashing is, and it is counted from the flange as "ontoWall" is.
        const reachAsked =
          main.role === 'counterflashing'
            ? limit({ property: 'extension onto wall', subject: 'counterflashing', comparison: 'at least' })
            : undefined;
        const governing = reachAsked !== undefined && reachAsked.value > (lap?.value ?? 0) ? reachAsked : lap;
        const also = [...(lap?.also ?? []), ...(reachAsked?.also ?? [])];
        const result = againstLimit({
          subject,
          at: main.apply.ontoWallMm?.at ?? main.at,
          dimension: 'length',
          comparison: 'at least',
          like: main.apply.ontoWallMm ?? flangeMm,
          provided: reachMm - flangeMm.value,
          limit: governing === undefined ? undefined : { ...governing, also },
          sentence: (p) => `"${main.id}" covers the ${subject} and laps ${p} beyond it`,
          correct: (required) => `Carry "${main.id}" ${required} beyond the flange ("ontoWall").`,
          missing: ['product.least.lap'],
          related: [{ message: 'the flange', at: flangeMm.at }],
        });
        yield result.kind === 'fail' ? { ...result, sources: [...(result.sources ?? []), ...this.sources] } : result;
      }
    }
  },
});
