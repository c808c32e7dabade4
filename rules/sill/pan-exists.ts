import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { showsWholeWall } from '../../src/model/drawn.js';
import { panOf, worksAt } from '../../src/water/at-opening.js';
import { fieldOfOpening } from '../../src/model/named-field.js';

const IRC: Source = {
  basis: 'code',
  citation: 'IRC R703.4.1',
  provenance: 'seen at second hand',
  url: 'http://finehomebuilding.com/2011/09/30/2012-irc-codifies-window-and-door-pan-flashings',
};
const IBC: Source = {
  basis: 'code',
  citation: 'IBC flashing section (1405.4 in 2015, 1404.4 in 2018)',
  provenance: 'seen at second hand',
  url: 'https://wconline.com/articles/print/92643-managing-sill-pan-flashings-and-the-flow-of-water',
};

const NBC: Source = {
  basis: 'guide',
  citation: 'Canadian Board for Harmonized Construction Codes, proposed change 1950 on rough-opening sills',
  provenance: 'seen',
  url: 'https://cbhcc-cchcc.ca/eng/public-review/2024_3/pcfs/nbc20_divb_09.07.06.01._001950.html',
};

/** Each opening has a pan that lines its sill, or a written alternative. */
export default defineRule({
  id: 'sill/pan-exists',
  title: 'Sill pan',
  summary: 'Each opening has a sill pan that reaches into the opening, or a written alternative.',
  level: 'error',
  reads: ['work.place', 'work.intoOpening', 'work.backDam', 'openings.panAlternative'],
  sources: [IRC, IBC, NBC],
  *review({ detail }) {
    if (detail.work.length === 0) return;
    const title = detail.project?.code?.title;
    const sources = title === 'NBC' ? [NBC, IRC] : title === 'IBC' ? [IBC, IRC] : [IRC, IBC];
    for (const opening of detail.openings) {
      const base = { subject: `sill of ${opening.id}`, required: 'a sill pan, or a written alternative', sources };
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
