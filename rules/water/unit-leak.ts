import { DRAINS } from '../../src/engine/clauses.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { runOfWater } from '../../src/water/run/run.js';
import { endText } from '../../src/water/run/tell.js';
import { endsRight } from '../../src/water/run/types.js';

const STAYS: Source = {
  basis: 'physics',
  citation: 'water that is not let out stays in the wall',
  provenance: 'computed',
};
const LEAK: Source = {
  basis: 'guide',
  citation: 'Building Science information sheet 302, pan flashing',
  provenance: 'seen',
  url: 'http://www.buildingscience.com/documents/information-sheets/pan-flashing-for-exterior-wall-openings?searchterm=flashing+end+dams',
};

/** Water that leaks at the lower corners of a unit, traced over the pan to its end. */
export default defineRule({
  id: 'water/unit-leak',
  title: 'Water at the lower corners of the unit',
  summary: 'Water that leaks at the lower corners of a unit is caught by the pan and ends at daylight.',
  level: 'error',
  reads: [
    'work.place',
    'work.slope',
    'work.backDam',
    'work.endDams',
    'work.bedding',
    'openings.unit.waterTest',
    'wall.drained',
  ],
  sources: [STAYS, ...DRAINS, LEAK],
  *review({ detail, face }) {
    const sources = this.sources;
    for (const path of runOfWater(detail, face).pans) {
      const { opening, end, notes, unknown } = path;
      const subject = `leak at the unit in ${opening.id}`;
      const last = notes.at(-1) ?? { at: opening.at };
      // Whether a pan is there at all is the business of sill/pan-exists.
      if (end.kind === 'opening' && end.why === 'no pan lines the sill') continue;
      // That the cavity does not drain is told once, by veneer/way-out.
      if (end.kind === 'behind veneer') continue;
      if (!endsRight(end)) {
        yield {
          kind: 'fail',
          message: `A leak at the lower corners of the unit in "${opening.id}" ends ${endText(end)}.`,
          at: last.at,
          subject,
          required: 'an end at daylight',
          provided: endText(end),
          correct: 'Open the way that the last step names; the rules of the sill family say by how much.',
          sources,
          flow: [
            ...notes.map((n, i) => ({ ...n, essential: i === notes.length - 1 })),
            { message: `It ends ${endText(end)}.`, at: last.at, essential: true },
          ],
        };
      } else if (unknown.length > 0) {
        yield {
          kind: 'open',
          message: `Where a leak at the lower corners of the unit in "${opening.id}" ends cannot be told: ${unknown.map((u) => u.message).join(', ')} ${unknown.length === 1 ? 'is' : 'are'} not declared.`,
          at: unknown[0]?.at ?? opening.at,
          subject,
          missing: unknown.map((u) => u.message),
          sources,
        };
      } else {
        yield {
          kind: 'pass',
          message: `A leak at the lower corners of the unit in "${opening.id}" ends ${endText(end)}.`,
          at: notes[1]?.at ?? opening.at,
          subject,
          provided: endText(end),
          sources,
        };
      }
    }
  },
});
