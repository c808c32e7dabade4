import { BARRIER_LAPS } from '../../src/engine/clauses.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { pieceName } from '../../src/geometry/piece-name.js';
import { isShown } from '../../src/water/run/shown.js';
import { runOfWater } from '../../src/water/run/run.js';
import { endText, stepsOf } from '../../src/water/run/tell.js';
import { endsRight, type WaterPath, type WaterStep } from '../../src/water/run/types.js';

const GRAVITY: Source = {
  basis: 'physics',
  citation: 'water runs down, and inward where an upper edge is open',
  provenance: 'computed',
};
const LAPPING: Source = {
  basis: 'guide',
  citation: 'FEMA P-499, fact sheet 1.9',
  provenance: 'seen',
};

/**
 * The step at which the way went wrong: where the water got behind a piece and did not come out again, or else where it
 * dropped off the last piece.
 */
function breachOf(path: WaterPath): WaterStep | undefined {
  const out = path.steps.findLastIndex((s) => s.what === 'comes out');
  const behind = path.steps.slice(out + 1).find((s) => s.what === 'behind');
  return behind ?? path.steps.findLast((s) => s.what === 'drops' && s.onto === undefined);
}

/** Paths from one source that go wrong at the same piece in the same way are one finding. */
function together(paths: readonly WaterPath[]): (readonly [WaterPath, ...WaterPath[]])[] {
  const groups = new Map<string, [WaterPath, ...WaterPath[]]>();
  for (const path of paths) {
    const key = [path.source.name, path.end.kind, path.end.opening?.id, breachOf(path)?.piece?.id].join(' | ');
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [path]);
    else group.push(path);
  }
  return [...groups.values()];
}

/** Water on the wall face, traced from every source to its end. */
export default defineRule({
  id: 'water/run-of-water',
  title: 'Run of water on the wall face',
  summary:
    'Water that runs down the wall face, from wherever it comes, stays outside the barrier and ends at daylight.',
  level: 'error',
  reads: ['work.place', 'work.tuckedUnder', 'work.edge', 'product.edge', 'openings', 'penetrations', 'wall.sheet'],
  sources: [GRAVITY, ...BARRIER_LAPS, LAPPING],
  *review({ detail, face }) {
    if (!detail.work.some((w) => w.action === 'apply')) return;
    const shown = runOfWater(detail, face).face.filter((p) => isShown(p, detail, face));
    const sources = this.sources;
    // Water that a veneer holds is told once, by veneer/way-out.
    for (const paths of together(shown.filter((p) => !endsRight(p.end) && p.end.kind !== 'behind veneer'))) {
      const [path] = paths;
      const breach = breachOf(path);
      const piece = breach?.piece;
      const at = piece?.at ?? path.end.opening?.at ?? path.end.penetration?.at ?? detail.at;
      const width = formatQuantity(
        paths.reduce((sum, p) => sum + p.u1 - p.u0, 0),
        'length',
        { system: 'US' },
      );
      const how =
        piece === undefined
          ? ''
          : breach?.what === 'behind'
            ? `, because it gets behind ${pieceName(piece)}`
            : `, because nothing takes it up below ${pieceName(piece)}`;
      const source = path.source.name.replace(/^./, (c) => c.toUpperCase());
      yield {
        kind: 'fail',
        message: `${source} ends ${endText(path.end)} over a width of ${width}${how}.`,
        at,
        subject: path.source.name,
        required: 'an end at daylight',
        provided: endText(path.end),
        correct:
          piece === undefined
            ? 'Cover the bare wall, or close the joint where the water goes in.'
            : breach?.what === 'behind'
              ? `Lap what lies above over ${pieceName(piece)}, or close its upper edge.`
              : `Lap ${pieceName(piece)} over what lies below it.`,
        sources,
        flow: stepsOf(path, detail.at),
      };
    }
    const right = shown.filter((p) => endsRight(p.end));
    // `isShown` leaves out ends that are not told, and those behind a veneer are not daylight.
    const all = runOfWater(detail, face).face.every((p) => p.end.kind !== 'behind veneer');
    if (shown.length > 0 && right.length === shown.length && all) {
      const goesOn = right.some((p) => p.end.kind === 'goes on');
      const ends = !goesOn
        ? 'all of it ends at daylight'
        : right.every((p) => p.end.kind === 'goes on')
          ? 'all of it stays outside the barrier to the foot of the wall that is drawn'
          : 'all of it ends at daylight or runs on outside the barrier below the wall that is drawn';
      yield {
        kind: 'pass',
        message: `Water on the wall face was traced from ${new Set(shown.map((p) => p.source)).size} sources; ${ends}.`,
        at: detail.at,
        subject: 'wall face',
        sources,
      };
    }
  },
});
