import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { panOf } from '../../src/water/at-opening.js';

const PHYSICS: Source = { basis: 'physics', citation: 'water runs down the slope', provenance: 'computed' };
/** Of houses; the clauses for other buildings ask for flashing and name neither slope nor dam. */
const CODE: Source = {
  basis: 'code',
  citation: 'IRC R703.4.1, pan sealed or sloped to direct water out',
  provenance: 'seen at second hand',
  url: 'http://finehomebuilding.com/2011/09/30/2012-irc-codifies-window-and-door-pan-flashings',
  codes: ['IRC'],
};
const BOTH: Source = {
  basis: 'practice',
  citation: 'common practice: slope and back dam together',
  provenance: 'common practice, no source',
};
const SLOPE: Source = {
  basis: 'practice',
  citation: 'common practice: 1/4 in in a foot, 2 %',
  provenance: 'common practice, no source',
};
const ONTARIO: Source = {
  basis: 'guide',
  citation: 'Ontario Building Code, note A-9.27.3.8.(4), slope of flashings taken over for sills',
  provenance: 'seen',
  url: 'https://obc.hyperlinked.ca/volume-2/appendix-a/explanatory-b/b-9.27.3.8.(4)-appx',
  codes: ['NBC'],
};

const ONTARIO_SLOPE = { value: 0.06, text: '6 %', source: ONTARIO } as const;

/** The pan drains outward: a slope, a back dam, best both, and never a slope inward. */
export default defineRule({
  id: 'sill/slope-or-dam',
  title: 'Sill slope and back dam',
  summary: 'The sill pan slopes to the exterior and has a back dam; it never slopes to the interior.',
  level: 'error',
  reads: ['work.slope', 'work.backDam'],
  sources: [PHYSICS, CODE, BOTH, SLOPE, ONTARIO],
  parameters: {
    slope: { type: 'slope', default: '2 %', meaning: 'least slope of the pan to the exterior', source: SLOPE },
  },
  *review({ detail, limit, number }) {
    for (const opening of detail.openings) {
      const pan = panOf(detail, opening);
      if (pan === undefined) continue;
      const { slope, backDamMm: dam } = pan;
      const subject = `pan of ${opening.id}`;
      const damText = dam === undefined ? 'no back dam' : `back dam ${dam.text}`;
      if (slope !== undefined && slope.value < 0) {
        yield {
          kind: 'fail',
          message: `The pan "${pan.id}" of "${opening.id}" slopes ${formatQuantity(-slope.value, 'slope', slope)} to the interior: water runs into the room.`,
          at: slope.at,
          subject,
          required: 'slope to the exterior',
          provided: slope.text,
          correct: 'Slope the pan to the exterior, and write the slope as a value above zero.',
          sources: [PHYSICS, CODE],
        };
        continue;
      }
      if (slope === undefined && dam === undefined) {
        // A strip on the wall face is no pan; whether the sill may do without one is the business of sill/pan-exists.
        if (pan.intoOpeningMm !== undefined || opening.panAlternative === undefined)
          yield {
            kind: 'open',
            message: `Neither a slope nor a back dam of the pan "${pan.id}" of "${opening.id}" is declared; declare "slope" and "backDam".`,
            at: pan.at,
            subject,
            missing: ['work.slope', 'work.backDam'],
            sources: [PHYSICS, CODE],
          };
        continue;
      }
      const slopes = (slope?.value ?? 0) > 0;
      const dams = (dam?.value ?? 0) > 0;
      if (!slopes && !dams) {
        yield {
          kind: 'fail',
          message: `The pan "${pan.id}" of "${opening.id}" has neither a slope to the exterior nor a back dam: water stands on it and spills into the room.`,
          at: slope?.at ?? dam?.at ?? pan.at,
          subject,
          required: 'slope to the exterior or back dam',
          provided: `${slope === undefined ? 'no slope' : `slope ${slope.text}`}, ${damText}`,
          correct: 'Give the pan a slope to the exterior ("slope") and a back dam ("backDam").',
          sources: [PHYSICS, CODE],
        };
        continue;
      }
      const both = {
        at: (slopes ? dam?.at : slope?.at) ?? pan.at,
        subject,
        required: 'slope and back dam',
        provided: `${slopes ? `slope ${slope?.text ?? ''}` : 'no slope'}, ${damText}`,
      };
      if (slopes && dams)
        yield {
          kind: 'pass',
          message: `The pan "${pan.id}" of "${opening.id}" has a slope and a back dam.`,
          ...both,
          at: pan.at,
          sources: [BOTH, CODE],
        };
      else
        yield {
          kind: 'fail',
          level: 'warning',
          message: `The pan "${pan.id}" of "${opening.id}" has ${slopes ? 'a slope but no back dam' : 'a back dam but no slope'}; it should have both, one for the day the other fails.`,
          ...both,
          correct: slopes ? 'Add a back dam ("backDam").' : 'Slope the pan to the exterior ("slope").',
          sources: [BOTH],
        };

      const asked = limit({
        property: 'sill slope',
        subject: 'sill pan',
        product: pan.product,
        comparison: 'at least',
        offered: [
          { value: number('slope'), text: formatQuantity(number('slope'), 'slope'), source: SLOPE },
          // A note to a Canadian code: asked where that code is, and not of a project that does not say.
          ...(detail.project?.code?.title === 'NBC' ? [ONTARIO_SLOPE] : []),
        ],
      });
      if (slope !== undefined && slopes) {
        yield againstLimit({
          subject: `slope of the pan of ${opening.id}`,
          at: slope.at,
          dimension: 'slope',
          provided: slope.value,
          like: slope,
          comparison: 'at least',
          limit: asked,
          sentence: (p) => `The pan "${pan.id}" of "${opening.id}" slopes ${p} to the exterior`,
          correct: (required) => `Slope the pan ${required} to the exterior.`,
          missing: ['a specification requirement for "sill slope"'],
        });
      } else {
        // A habit or a guide may ask for more than the documents do; what they ask for is missing all the same.
        const stated = asked && [asked, ...asked.others].find((l) => l.source.provenance === 'project document');
        if (stated === undefined) continue;
        const required = stated.asks ?? `at least ${stated.text}`;
        yield {
          kind: 'fail',
          message: `The pan "${pan.id}" of "${opening.id}" ${slope === undefined ? 'declares no slope' : 'is declared level (' + slope.text + ')'}; ${required} is required (${stated.source.citation}).`,
          at: slope?.at ?? pan.at,
          subject: `slope of the pan of ${opening.id}`,
          required,
          provided: slope?.text ?? 'none',
          correct: `Slope the pan ${required} to the exterior ("slope").`,
          sources: [stated.source],
        };
      }
    }
  },
});
