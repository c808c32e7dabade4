import { AIR_SEALED } from '../../src/engine/clauses.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import type { EdgeGap } from '../../src/continuity/edge-gaps.js';
import { unnamedTie } from '../../src/continuity/edges.js';
import { findGaps } from '../../src/continuity/gaps.js';
import { planeOf } from '../../src/continuity/planes.js';
import { inches } from '../../src/water/laps.js';
import type { WallFace } from '../../src/geometry/types.js';
import type { Detail, WallEdge } from '../../src/model/types.js';

const PEN: Source = {
  basis: 'guide',
  citation: 'EPA 402-F-13053, tracing the air barrier without lifting the pen',
  provenance: 'seen at second hand',
  url: 'https://associationdatabase.co/NFBA/November2023/inc/html/22.html',
};
const LIST: Source = {
  basis: 'guide',
  citation: 'Air Barrier Association of America, master specification 07 27 26, list of connections',
  provenance: 'seen',
};

function edgeOutcome(detail: Detail, face: WallFace, edge: WallEdge, gap: EdgeGap | undefined, field: string): Outcome {
  const what = `${edge.side} of the wall, where it meets ${edge.meets.value}`;
  const base = {
    subject: `${edge.side} edge: ${edge.meets.value}`,
    required: 'a tie-in',
    sources: [...AIR_SEALED, LIST, PEN],
  };
  const name = edge.tieIn?.value ?? '';
  const at = edge.tieIn?.at ?? edge.at;
  const work = detail.work.find((w) => w.id === name);
  const related = work === undefined ? {} : { related: [{ message: 'the work that is named', at: work.at }] };
  if (gap === undefined) {
    const provided = work === undefined ? `detail "${name}"` : `"${name}"`;
    return {
      kind: 'pass',
      message: `The air barrier is tied in at the ${what}, by ${provided}.`,
      at,
      provided,
      ...base,
    };
  }
  if (gap.missing.length > 0)
    return {
      kind: 'open',
      message: `Whether "${name}" meets the air barrier at the ${what}, is not told: declare ${gap.missing.join(', ')}.`,
      at,
      missing: gap.missing,
      ...base,
    };
  switch (gap.cause) {
    case 'none': {
      const there = unnamedTie(detail, face, edge);
      if (there !== undefined)
        return {
          kind: 'open',
          message: `"${there.id}" reaches the ${edge.meets.value} at the ${edge.side} of the wall but is not named as the tie-in of the air barrier; name it ("tieIn: ${there.id}"), or name what carries the barrier on.`,
          at,
          missing: [`edges.${edge.side}.tieIn`],
          related: [{ message: 'the work that reaches it', at: there.at }],
          ...base,
        };
      return {
        kind: 'fail',
        message: `Nothing ties in the air barrier at the ${what}.`,
        at,
        provided: 'none',
        correct: 'Name the detail or the work item that carries the barrier on ("tieIn").',
        ...base,
      };
    }
    case 'itself':
      return {
        kind: 'fail',
        message: `The tie-in at the ${what}, is this very detail.`,
        at,
        provided: name,
        correct: 'Name the detail or the work item that carries the barrier on.',
        ...base,
      };
    case 'other work': {
      const does =
        work?.action === 'apply'
          ? `is placed at ${work.places.map((p) => p.value).join(', ')}`
          : 'puts no material there';
      return {
        kind: 'fail',
        message: `The tie-in at the ${what}, names "${name}", which ${does}.`,
        at,
        provided: `"${name}"`,
        correct: 'Name the work item or the detail that carries the barrier on there.',
        ...related,
        ...base,
      };
    }
    case 'elsewhere':
      return {
        kind: 'fail',
        message: `The tie-in at the ${what}, names "${name}", which by its place and size does not reach that edge.`,
        at,
        provided: `"${name}", which lies elsewhere`,
        correct: 'Name the work item or the detail that carries the barrier on there.',
        ...related,
        ...base,
      };
    case 'apart':
      return {
        kind: 'fail',
        message: `"${name}" at the ${what}, and ${field} do not meet: the air barrier has a gap of ${inches(gap.lengthMm)}, the whole edge as drawn.`,
        at,
        provided: 'no contact with the barrier of the wall',
        correct: `Lap ${field} and "${name}" onto each other.`,
        ...related,
        ...base,
      };
  }
}

/** The air barrier goes on past the edges of the drawn piece of wall. */
export default defineRule({
  id: 'air/continuous-line',
  title: 'Tie-in of the air barrier at the edges',
  summary: 'At every edge where the drawn wall meets something else, the air barrier is tied in.',
  level: 'error',
  reads: ['edges.meets', 'edges.tieIn', 'work.place', 'work.ontoFoundation'],
  sources: [PEN, ...AIR_SEALED, LIST],
  *review({ detail, face }) {
    if (detail.work.length === 0) return;
    if (detail.edges.length === 0) {
      yield {
        kind: 'open',
        message:
          'How the drawn wall ends is not declared, so its tie-ins cannot be checked; declare "edges", with "meets: same wall" where it simply goes on.',
        at: detail.at,
        subject: 'edges of the wall',
        missing: ['edges'],
        sources: [LIST],
      };
      return;
    }
    const gaps = findGaps(detail, face, 'air').filter((g): g is EdgeGap => g.kind === 'edge');
    const plane = planeOf(detail, face, 'air');
    const field = plane?.on === 'face' ? `"${plane.pieces[0].work.id}"` : 'the air barrier';
    for (const edge of detail.edges)
      if (edge.meets.value !== 'same wall')
        yield edgeOutcome(
          detail,
          face,
          edge,
          gaps.find((g) => g.edge === edge),
          field,
        );
  },
});
