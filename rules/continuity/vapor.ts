import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import { findGaps, type Gap } from '../../src/continuity/gaps.js';
import type { PartGap } from '../../src/continuity/layer-gaps.js';
import { planeOf, samePlane, type Plane } from '../../src/continuity/planes.js';
import type { SideGap } from '../../src/continuity/side-gaps.js';
import { isToldElsewhere } from '../../src/continuity/told.js';
import { gapLength, gapPlace, gapWords, listed } from '../../src/continuity/words.js';
import { interiorSeals } from '../../src/joints/perimeter-seals.js';
import { showsWholeWall } from '../../src/model/drawn.js';
import { SIDES, type Detail } from '../../src/model/types.js';
import { formatQuantity } from '../../src/quantity/format.js';

const PRACTICE: Source = {
  basis: 'practice',
  citation: 'common practice: the vapor retarder drawn to the openings and edges of the wall',
  provenance: 'common practice, no source',
};
const base = { required: 'vapor retarder continuous', sources: [PRACTICE] };

/** The layer that slows vapor covers the wall and is drawn to its openings and edges. */
export default defineRule({
  id: 'continuity/vapor',
  title: 'Vapor line',
  summary: 'The layer that slows vapor covers the whole wall and is connected to the openings and edges shown.',
  level: 'warning',
  reads: ['wall.controls', 'wall.permeance', 'work.place', 'work.layer', 'work.intoOpening', 'edges.tieIn'],
  sources: [PRACTICE],
  *review({ detail, face }) {
    if (detail.work.length === 0 || detail.layers.length === 0) return;
    const plane = planeOf(detail, face, 'vapor');
    if (plane === undefined) {
      yield {
        kind: 'notApplicable',
        message:
          'No layer shown is named for vapor, and no retarder of class I or II is known: there is no line to follow.',
        at: { document: detail.at.document, path: ['wall'], part: 'key' },
        subject: 'vapor line',
        sources: [PRACTICE],
      };
      return;
    }
    if (samePlane(plane, planeOf(detail, face, 'air'))) {
      yield {
        kind: 'notApplicable',
        message: `${nameOf(plane)} slows vapor and stops air: its gaps are those of the air barrier.`,
        at: atOf(plane),
        subject: 'vapor line',
        sources: [PRACTICE],
      };
      return;
    }
    const gaps = findGaps(detail, face, 'vapor');
    for (const gap of gaps) if (gap.kind === 'part') yield partOutcome(detail, gap);
    if (plane.on === 'layers' && !gaps.some((g) => g.kind === 'part'))
      yield {
        kind: 'pass',
        message: `${nameOf(plane)} is drawn over the whole wall.`,
        at: atOf(plane),
        subject: `${plane.layers[0].id} over the wall`,
        provided: 'the whole wall',
        ...base,
      };
    const air = findGaps(detail, face, 'air');
    for (const opening of detail.openings) {
      if (plane.on === 'layers') {
        yield* atOpening(detail, plane, opening);
        continue;
      }
      for (const side of SIDES) {
        const subject = `vapor line at the ${side} of ${opening.id}`;
        const here = gaps.filter(
          (g): g is SideGap => g.kind === 'side' && g.cause !== 'seal' && g.opening === opening && g.side === side,
        );
        if (here.length === 0)
          yield {
            kind: 'pass',
            message: `${nameOf(plane)} is connected to the flashing along all of the ${side} of "${opening.id}".`,
            at: plane.pieces[0].at,
            subject,
            provided: 'connected',
            ...base,
          };
        for (const gap of here)
          if (!isToldElsewhere(detail, face, gap) && !air.some((a) => isSame(a, gap)))
            yield { ...sideOutcome(gap, nameOf(plane)), subject, ...base };
      }
    }
    for (const gap of gaps)
      if (gap.kind === 'edge' && gap.missing.length > 0)
        yield {
          kind: 'open',
          message: `How ${nameOf(plane)} ends at the ${gap.edge.side} of the wall, where it meets ${gap.edge.meets.value}, is not shown; name the detail that shows it.`,
          at: gap.edge.tieIn?.at ?? gap.edge.at,
          subject: `vapor line at the ${gap.edge.side} edge`,
          missing: gap.missing,
          ...base,
        };
  },
});

const nameOf = (plane: Plane): string => `"${plane.on === 'face' ? plane.pieces[0].work.id : plane.layers[0].id}"`;
const atOf = (plane: Plane): Outcome['at'] => (plane.on === 'face' ? plane.pieces[0].at : plane.layers[0].at);

const isSame = (a: Gap, gap: SideGap): boolean =>
  a.kind === 'side' && a.cause === gap.cause && a.opening === gap.opening && a.side === gap.side;

/** A retarder inside the wall ends at the interior seal; sides that the seal leaves out are told by its own check. */
function* atOpening(
  detail: Detail,
  plane: Extract<Plane, { on: 'layers' }>,
  opening: Detail['openings'][number],
): Iterable<Outcome> {
  const subject = `vapor line at ${opening.id}`;
  const [seal] = interiorSeals(detail, opening);
  if (seal === undefined)
    yield {
      kind: 'open',
      message: `How ${nameOf(plane)} ends at "${opening.id}" is not shown; show what seals it to the unit ("place: interior perimeter").`,
      at: opening.at,
      subject,
      missing: ['work.place: interior perimeter'],
      ...base,
    };
  else
    yield {
      kind: 'pass',
      message: `${nameOf(plane)} ends at "${opening.id}" at the interior seal "${seal.id}".`,
      at: seal.at,
      subject,
      provided: `"${seal.id}"`,
      ...base,
    };
}

function partOutcome(detail: Detail, gap: PartGap): Outcome {
  const width = formatQuantity(gap.lengthMm, 'length', detail.openings[0]?.heightMm ?? { system: 'US' });
  const [work] = gap.works;
  const message = `"${work.id}" puts "${gap.layer.id}" on only part of the wall: nothing slows vapor ${gap.without}, ${width} wide as drawn`;
  const shared = { at: work.at, subject: `${gap.layer.id} over the wall`, ...base };
  return showsWholeWall(detail)
    ? {
        kind: 'fail',
        message: `${message}.`,
        provided: `none ${gap.without}`,
        correct: `Put "${gap.layer.id}" on ${gap.without} too ("place: field").`,
        ...shared,
      }
    : {
        kind: 'open',
        message: `${message}, and the drawing does not show the whole wall; show the rest.`,
        missing: ['work.place: field'],
        ...shared,
      };
}

function sideOutcome(gap: SideGap, field: string): Outcome {
  const { what, correct } = gapWords(gap, field);
  const at = gap.flashing[0]?.at ?? gap.opening.at;
  if (gap.missing.length > 0)
    return {
      kind: 'open',
      message: `Whether the vapor line is led into the opening at the ${gapPlace(gap)}, is not told; declare ${listed(gap.missing)}.`,
      at: gap.missing.some((m) => m.startsWith('openings')) ? gap.opening.at : at,
      missing: gap.missing,
    };
  return {
    kind: 'fail',
    message: `The vapor line has a gap of ${gapLength(gap)} at the ${gapPlace(gap)}: ${what}.`,
    at,
    provided: `a gap of ${gapLength(gap)}`,
    correct,
    related: [{ message: 'the opening', at: gap.opening.at }],
  };
}
