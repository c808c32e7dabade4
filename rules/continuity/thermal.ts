import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import { partTold } from '../../src/continuity/gap-told.js';
import { findGaps } from '../../src/continuity/gaps.js';
import type { DepthGap } from '../../src/continuity/layer-gaps.js';
import { planeOf } from '../../src/continuity/planes.js';
import { listed } from '../../src/continuity/words.js';
import { showsWholeWall } from '../../src/model/drawn.js';
import type { Detail } from '../../src/model/types.js';
import { formatQuantity } from '../../src/quantity/format.js';

const PRACTICE: Source = {
  basis: 'practice',
  citation: 'common practice: insulation that goes on over the wall, at its edges and to units set in line with it',
  provenance: 'common practice, no source',
};
const base = { required: 'insulation continuous to the unit', sources: [PRACTICE] };

/** The insulation covers the wall, and each unit stands in line with it. */
export default defineRule({
  id: 'continuity/thermal',
  title: 'Thermal line',
  summary: 'The insulation covers the whole wall, and the frame of each unit stands in line with it.',
  level: 'warning',
  reads: [
    'wall.material',
    'wall.thickness',
    'wall.framing',
    'wall.controls',
    'openings.roughOpening.depth',
    'openings.unit.mounting',
    'openings.unit.frameDepth',
    'openings.unit.setBack',
    'work.place',
    'edges.tieIn',
  ],
  sources: [PRACTICE],
  *review({ detail, face }) {
    if (detail.work.length === 0) return;
    const plane = planeOf(detail, face, 'thermal');
    if (plane?.on !== 'layers') return;
    const gaps = findGaps(detail, face, 'thermal');
    const names = listed(plane.layers.map((l) => `"${l.id}"`));
    if (showsWholeWall(detail) && plane.layers.every((l) => l.framing !== undefined))
      yield {
        kind: 'informational',
        message: `The insulation of the wall, ${names}, lies between framing only: every stud crosses it.`,
        at: plane.layers[0].at,
        subject: 'framing through the insulation',
        sources: [PRACTICE],
      };
    for (const gap of gaps) if (gap.kind === 'part') yield { ...partTold(detail, gap, 'there is none'), ...base };
    for (const opening of detail.openings) {
      const gap = gaps.find((g): g is DepthGap => g.kind === 'depth' && g.opening === opening);
      if (gap !== undefined) yield depthOutcome(detail, gap, names);
      else
        yield {
          kind: 'pass',
          message: `The frame of the unit in "${opening.id}" stands in line with the insulation (${names}).`,
          at: opening.unit?.at ?? opening.at,
          subject: `thermal line at ${opening.id}`,
          provided: 'in line',
          ...base,
        };
    }
    for (const gap of gaps)
      if (gap.kind === 'edge' && gap.missing.length > 0)
        yield {
          kind: 'open',
          message: `How the insulation goes on at the ${gap.edge.side} of the wall, where it meets ${gap.edge.meets.value}, is not shown; name the detail that shows it.`,
          at: gap.edge.tieIn?.at ?? gap.edge.at,
          subject: `thermal line at the ${gap.edge.side} edge`,
          missing: gap.missing,
          ...base,
        };
  },
});

function depthOutcome(detail: Detail, gap: DepthGap, names: string): Outcome {
  const { opening } = gap;
  const length = (mm: number): string => formatQuantity(mm, 'length', opening.heightMm);
  const shared = { at: opening.unit?.at ?? opening.at, subject: `thermal line at ${opening.id}`, ...base };
  if (gap.missing.length > 0)
    return {
      kind: 'open',
      message: `Whether the unit in "${opening.id}" stands in line with the insulation (${names}) is not told; declare ${listed(gap.missing)}.`,
      missing: gap.missing,
      ...shared,
    };
  const message = `The frame of the unit in "${opening.id}" stands ${length(gap.distanceMm ?? 0)} clear of the insulation (${names}) along all ${length(gap.lengthMm)} around the opening`;
  return showsWholeWall(detail)
    ? {
        kind: 'fail',
        message: `${message}.`,
        provided: `${length(gap.distanceMm ?? 0)} clear of it`,
        correct: 'Set the unit in line with the insulation, or insulate the opening between the two.',
        ...shared,
      }
    : {
        kind: 'open',
        message: `${message}, and the drawing does not show the whole wall; show all layers.`,
        missing: ['wall'],
        ...shared,
      };
}
