import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import { partTold, sideTold } from '../../src/continuity/gap-told.js';
import { findGaps, type Gap } from '../../src/continuity/gaps.js';
import { planeOf, samePlane, type Plane } from '../../src/continuity/planes.js';
import type { SideGap } from '../../src/continuity/side-gaps.js';
import { isToldElsewhere } from '../../src/continuity/told.js';
import { interiorSeals } from '../../src/joints/perimeter-seals.js';
import { SIDES, type Detail } from '../../src/model/types.js';

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
    for (const gap of gaps) if (gap.kind === 'part') yield { ...partTold(detail, gap, 'nothing slows vapor'), ...base };
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
            yield { ...sideTold(gap, 'vapor line', nameOf(plane)), subject, ...base };
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
