import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import type { Piece, PieceRole, WallFace } from '../../src/geometry/types.js';
import { SIDES, type Detail, type Opening, type Place, type Side, type WallEdge } from '../../src/model/types.js';

const PEN: Source = {
  basis: 'guide',
  citation: 'EPA 402-F-13053, tracing the air barrier without lifting the pen',
  provenance: 'seen at second hand',
  url: 'https://associationdatabase.co/NFBA/November2023/inc/html/22.html',
};
const IECC: Source = {
  basis: 'code',
  citation: 'IECC C402.5, joints and changes of material sealed',
  provenance: 'seen',
  url: 'https://up.codes/s/air-leakage-thermal-envelope-mandatory',
};
const LIST: Source = {
  basis: 'guide',
  citation: 'Air Barrier Association of America, master specification 07 27 26, list of connections',
  provenance: 'seen',
  url: 'https://studylib.net/doc/10123778/abaa-072726-fluid-applied-membrane-air-barrier-specification',
};

/** Places where work can carry the air barrier on past the drawn piece of wall. */
const TIES: ReadonlySet<Place> = new Set<Place>([
  'base of wall',
  'top of wall',
  'movement joint',
  'shelf angle',
  'inside corner of building',
  'outside corner of building',
  'interior face',
  'field',
  'field above sill',
  'field below sill',
]);
const ROLE: Record<Side, PieceRole> = {
  head: 'head flashing',
  sill: 'sill flashing',
  'left jamb': 'jamb flashing',
  'right jamb': 'jamb flashing',
};

function edgeOutcome(detail: Detail, edge: WallEdge): Outcome {
  const what = `${edge.side} of the wall, where it meets ${edge.meets.value}`;
  const base = { subject: `${edge.side} edge: ${edge.meets.value}`, required: 'a tie-in', sources: [IECC, LIST, PEN] };
  const tie = edge.tieIn;
  if (tie === undefined)
    return {
      kind: 'fail',
      message: `Nothing ties in the air barrier at the ${what}.`,
      at: edge.at,
      provided: 'none',
      correct: 'Name the detail or the work item that carries the barrier on, under "tieIn".',
      ...base,
    };
  const work = detail.work.find((w) => w.id === tie.value);
  if (work === undefined && tie.value === detail.id)
    return {
      kind: 'fail',
      message: `The tie-in at the ${what}, is this very detail.`,
      at: tie.at,
      provided: tie.value,
      correct: 'Name the detail or the work item that carries the barrier on.',
      ...base,
    };
  if (work === undefined)
    return {
      kind: 'pass',
      message: `The air barrier is tied in at the ${what}, by detail "${tie.value}".`,
      at: tie.at,
      provided: `detail "${tie.value}"`,
      ...base,
    };
  if (work.action === 'apply' && work.places.some((p) => TIES.has(p.value)))
    return {
      kind: 'pass',
      message: `The air barrier is tied in at the ${what}, by "${work.id}".`,
      at: tie.at,
      provided: `"${work.id}"`,
      ...base,
    };
  const does =
    work.action === 'apply' ? `is placed at ${work.places.map((p) => p.value).join(', ')}` : 'puts no material there';
  return {
    kind: 'fail',
    message: `The tie-in at the ${what}, names "${work.id}", which ${does}.`,
    at: tie.at,
    provided: `"${work.id}"`,
    correct: 'Name the work item or the detail that carries the barrier on there.',
    related: [{ message: 'the work that is named', at: work.at }],
    ...base,
  };
}

/** From the barrier of the field to the returns of the opening, where the interior seal takes over. */
function* openingOutcomes(face: WallFace, opening: Opening, field: readonly Piece[]): Iterable<Outcome> {
  const fieldIds = new Set(field.map((p) => p.work.id));
  for (const side of SIDES) {
    const subject = `air barrier at the ${side} of ${opening.id}`;
    const lining = face.pieces.filter(
      (p) => p.opening === opening && p.role === ROLE[side] && p.apply !== undefined && p.sheds,
    );
    // A side without flashing of its own is reported where the flashing is missing.
    const [leading] = lining;
    if (leading === undefined) continue;
    const base = { subject, required: 'field, flashing and return connected', sources: [PEN, IECC] };
    const returning = lining.filter((p) => (p.returns[side] ?? []).length > 0);
    const first = returning[0] ?? leading;
    const unsaid = lining.find(
      (p) =>
        p.apply?.intoOpeningMm === undefined || (p.apply.intoOpeningMm === 'full' && opening.depthMm === undefined),
    );
    if (returning.length === 0 && unsaid !== undefined) {
      const field = unsaid.apply?.intoOpeningMm === undefined ? 'work.intoOpening' : 'openings.roughOpening.depth';
      yield {
        kind: 'open',
        message: `Whether "${unsaid.work.id}" carries the air barrier into the ${side} of "${opening.id}" is not told: ${field} is not declared.`,
        at: field === 'work.intoOpening' ? unsaid.at : opening.at,
        missing: [field],
        ...base,
      };
    } else if (returning.length === 0) {
      yield {
        kind: 'fail',
        message: `"${first.work.id}" stays on the face of the wall at the ${side} of "${opening.id}": nothing leads the air barrier to the interior seal.`,
        at: first.at,
        provided: 'flashing on the face only',
        correct: 'Let the flashing reach into the opening ("intoOpening").',
        ...base,
      };
    } else if (
      returning.some((p) => fieldIds.has(p.work.id) || field.some((f) => face.lapBetween(p, f) !== undefined))
    ) {
      yield {
        kind: 'pass',
        message: `"${first.work.id}" leads the air barrier from the field into the ${side} of "${opening.id}".`,
        at: first.at,
        provided: 'connected',
        ...base,
      };
    } else {
      yield {
        kind: 'fail',
        message: `"${first.work.id}" at the ${side} of "${opening.id}" and the barrier of the field do not meet: the air barrier has a gap there.`,
        at: first.at,
        provided: 'no overlap with the field',
        correct: `Lap the field and "${first.work.id}" onto each other.`,
        related: [{ message: 'the barrier of the field', at: (field[0] as Piece).at }],
        ...base,
      };
    }
  }
}

/** The air barrier can be traced through the drawn piece of wall and on past its edges. */
export default defineRule({
  id: 'air/continuous-line',
  title: 'Continuous air barrier',
  summary: 'The air barrier runs from the field into each opening and on past every edge of the drawn wall.',
  level: 'error',
  reads: ['edges.meets', 'edges.tieIn', 'work.place', 'work.intoOpening'],
  sources: [PEN, IECC, LIST],
  *review({ detail, face }) {
    if (detail.work.length === 0) return;
    for (const edge of detail.edges) if (edge.meets.value !== 'same wall') yield edgeOutcome(detail, edge);
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
    }
    const field = face.pieces.filter(
      (p) =>
        p.role === 'field' &&
        p.sheds &&
        !(p.layer?.controls.length !== 0 && p.layer?.controls.every((c) => c.value !== 'air')),
    );
    if (field.length === 0) return;
    for (const opening of detail.openings) yield* openingOutcomes(face, opening, field);
  },
});
