import { OPENINGS_FLASHED } from '../../src/engine/clauses.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Outcome } from '../../src/engine/result.js';
import type { EdgeGap } from '../../src/continuity/edge-gaps.js';
import { findGaps, type Gap } from '../../src/continuity/gaps.js';
import { planeOf } from '../../src/continuity/planes.js';
import type { SideGap } from '../../src/continuity/side-gaps.js';
import { isToldElsewhere } from '../../src/continuity/told.js';
import { gapLength, gapPlace, gapWords, listed } from '../../src/continuity/words.js';
import { flashingAt } from '../../src/geometry/around-opening.js';
import { SIDES } from '../../src/model/types.js';

/** The water line runs from the field over flashing and pan to the unit, along the whole of each side. */
export default defineRule({
  id: 'continuity/water',
  title: 'Water line at openings',
  summary: 'Along the whole of each side of an opening, the layer that sheds water is connected to the unit.',
  level: 'error',
  reads: [
    'work.place',
    'work.ontoWall',
    'work.intoOpening',
    'wall.controls',
    'openings.unit.mounting',
    'openings.unit.flange',
    'edges.tieIn',
  ],
  sources: OPENINGS_FLASHED,
  *review({ detail, face }) {
    if (detail.work.length === 0) return;
    const plane = planeOf(detail, face, 'water');
    if (plane?.on !== 'face') return;
    // What breaks the air line at the same place is told there.
    const air = findGaps(detail, face, 'air');
    const gaps = findGaps(detail, face, 'water');
    const field = `"${plane.pieces[0].work.id}"`;
    const base = { required: 'field, flashing and unit connected', sources: OPENINGS_FLASHED };
    for (const opening of detail.openings) {
      for (const side of SIDES) {
        const [first] = flashingAt(face, opening, side);
        // A side without flashing is asked for by the check of the air line, of the pan and of the steps.
        if (first === undefined && !gaps.some((g) => isSure(g, opening.id, side))) continue;
        const subject = `water line at the ${side} of ${opening.id}`;
        const here = gaps.filter((g): g is SideGap => g.kind === 'side' && g.opening === opening && g.side === side);
        if (here.length === 0)
          yield {
            kind: 'pass',
            message: `The water line runs from ${field} to the unit along all of the ${side} of "${opening.id}".`,
            at: first?.at ?? opening.at,
            subject,
            provided: 'connected',
            ...base,
          };
        for (const gap of here)
          if (!isToldElsewhere(detail, face, gap) && !air.some((a) => sameGap(a, gap)))
            yield { ...outcome(gap, field), subject, ...base };
      }
    }
    for (const gap of gaps)
      if (gap.kind === 'edge' && gap.cause === 'apart' && !air.some((a) => a.kind === 'edge' && a.edge === gap.edge))
        yield { ...edgeOutcome(gap, field), ...base };
  },
});

const isSure = (g: Gap, opening: string, side: SideGap['side']): boolean =>
  g.kind === 'side' && g.opening.id === opening && g.side === side && g.missing.length === 0;

function sameGap(air: Gap, water: SideGap): boolean {
  return (
    air.kind === 'side' &&
    air.cause === water.cause &&
    air.opening === water.opening &&
    air.side === water.side &&
    air.stretch.fromMm <= water.stretch.fromMm + 0.1 &&
    air.stretch.toMm >= water.stretch.toMm - 0.1
  );
}

function outcome(gap: SideGap, field: string): Outcome {
  const { what, correct } = gapWords(gap, field);
  const at = gap.flashing[0]?.at ?? gap.opening.at;
  if (gap.missing.length > 0)
    return {
      kind: 'open',
      message: `Whether the water line reaches the unit at the ${gapPlace(gap)}, is not told; declare ${listed(gap.missing)}.`,
      at: gap.missing.some((m) => m.startsWith('openings')) ? gap.opening.at : at,
      missing: gap.missing,
    };
  const flange = gap.cause === 'return' && !gap.isAfterUnit && gap.opening.unit?.mounting?.value === 'flange';
  return {
    kind: 'fail',
    message: `The water line has a gap of ${gapLength(gap)} at the ${gapPlace(gap)}: ${what}${flange ? ', clear of the flange' : ''}.`,
    at,
    provided: `a gap of ${gapLength(gap)}`,
    correct,
    related: [{ message: 'the opening', at: gap.opening.at }],
  };
}

function edgeOutcome(gap: EdgeGap, field: string): Outcome {
  const name = gap.edge.tieIn?.value ?? '';
  return {
    kind: 'fail',
    message: `"${name}" ties in the ${gap.edge.side} of the wall, where it meets ${gap.edge.meets.value}, and does not meet ${field}: water behind the cladding has no way over it.`,
    at: gap.edge.tieIn?.at ?? gap.edge.at,
    subject: `water line at the ${gap.edge.side} edge`,
    provided: 'no contact',
    correct: `Lap ${field} and "${name}" onto each other.`,
  };
}
