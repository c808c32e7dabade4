import { CANADA_SILLS, OPENINGS_FLASHED } from '../../src/engine/clauses.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { showsWholeWall } from '../../src/model/drawn.js';
import { panOf, worksAt } from '../../src/water/at-opening.js';
import { fieldOfOpening } from '../../src/model/named-field.js';

const SOURCES: readonly Source[] = [...OPENINGS_FLASHED, CANADA_SILLS];

/** Each opening has a pan that lines its sill, or a written alternative. */
export default defineRule({
  id: 'sill/pan-exists',
  title: 'Sill pan',
  summary: 'Each opening has a sill pan that reaches into the opening, or a written alternative.',
  level: 'error',
  reads: ['work.place', 'work.intoOpening', 'work.backDam', 'openings.panAlternative'],
  sources: SOURCES,
  *review({ detail }) {
    if (detail.work.length === 0) return;
    for (const opening of detail.openings) {
      const base = {
        subject: `sill of ${opening.id}`,
        required: 'a sill pan, or a written alternative',
        sources: SOURCES,
      };
      const pan = panOf(detail, opening);
      const into = pan?.intoOpeningMm;
      const depthMm = into === undefined || into === 'full' ? undefined : into.value;
      const linesSill =
        into === 'full' || (depthMm ?? 0) > 0 || pan?.family === 'rigid pan' || (pan?.backDamMm?.value ?? 0) > 0;
      if (pan !== undefined && linesSill) {
        yield {
          kind: 'pass',
          message: `The sill of "${opening.id}" has a pan, "${pan.id}".`,
          at: pan.at,
          provided: `pan "${pan.id}"`,
          ...base,
        };
      } else if (opening.panAlternative !== undefined) {
        yield {
          kind: 'pass',
          message: `The sill of "${opening.id}" has no pan; the documents name what takes its place: ${opening.panAlternative.value}.`,
          at: opening.panAlternative.at,
          provided: opening.panAlternative.value,
          ...base,
        };
      } else if (
        pan === undefined &&
        !showsWholeWall(detail) &&
        worksAt(detail, opening, 'jambs', 'left jamb', 'right jamb').length === 0
      ) {
        yield {
          kind: 'open',
          message: `The drawing shows neither sill nor jambs of "${opening.id}", so its pan cannot be checked; show the sill, or name the alternative under "panAlternative".`,
          at: opening.at,
          missing: ['work.place: sill', fieldOfOpening(opening, 'panAlternative')],
          ...base,
        };
      } else if (pan === undefined) {
        yield {
          kind: 'fail',
          message: `The opening "${opening.id}" has no sill pan: no flashing in its work is placed at the sill.`,
          at: opening.at,
          provided: 'none',
          correct:
            'Add a work item with "place: sill" that lines the sill before the unit is set, or name the alternative under "panAlternative".',
          ...base,
        };
      } else if (depthMm === undefined) {
        yield {
          kind: 'open',
          message: `The flashing "${pan.id}" at the sill of "${opening.id}" does not say how far it reaches into the opening, so it may be a strip on the wall face and no pan; declare "intoOpening".`,
          at: pan.at,
          missing: ['work.intoOpening'],
          ...base,
        };
      } else {
        yield {
          kind: 'fail',
          message: `The flashing "${pan.id}" at the sill of "${opening.id}" stays on the wall face: it does not reach into the opening and is no pan.`,
          at: into === 'full' || into === undefined ? pan.at : into.at,
          provided: 'flashing on the wall face only',
          correct: 'Line the sill: "intoOpening: full", with a back dam or a slope to the exterior.',
          ...base,
        };
      }
    }
  },
});
