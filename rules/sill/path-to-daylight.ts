import { defineRule } from '../../src/engine/rule.js';
import type { FlowStep, Source } from '../../src/engine/result.js';
import { panOf } from '../../src/water/at-opening.js';
import { blockedPassages, findWay, passagesFrom } from '../../src/water/daylight.js';

const CODE: Source = {
  basis: 'code',
  citation: 'IBC weather protection, means of draining water to the exterior (1403.2, now 1402.2)',
  provenance: 'seen',
  url: 'http://www.ibc-wiki.com/section-1403/',
};
const CANADA: Source = {
  basis: 'guide',
  citation: 'Canadian Board for Harmonized Construction Codes, proposed change 1950 on rough-opening sills',
  provenance: 'seen',
  url: 'https://cbhcc-cchcc.ca/eng/public-review/2024_3/pcfs/nbc20_divb_09.07.06.01._001950.html',
};

/** Searches the way of water from the pan to daylight, passage by passage. */
export default defineRule({
  id: 'sill/path-to-daylight',
  title: 'Way of water out of the pan',
  summary: 'Water on the sill pan has an unbroken path to daylight.',
  level: 'error',
  reads: [
    'work.bedding.sill',
    'work.fillsCavity',
    'work.sealPosition',
    'work.shims',
    'work.ontoWall',
    'work.projects',
    'work.weeps',
    'wall.drained',
    'openings.unit.mounting',
  ],
  sources: [CODE, CANADA],
  *review({ detail, face }) {
    const sources = [CODE, CANADA];
    for (const opening of detail.openings) {
      const pan = panOf(detail, opening);
      if (pan === undefined) continue;
      const base = {
        subject: `drainage of the pan of ${opening.id}`,
        required: 'an open path from pan to daylight',
        sources,
      };
      const passages = passagesFrom(detail, face, opening, pan);
      const clear = findWay(passages, (p) => p.blockers.length === 0 && p.unknown.length === 0);
      const possible = clear ?? findWay(passages, (p) => p.blockers.length === 0);
      const steps = (way: typeof passages): FlowStep[] => way.map((p) => ({ message: p.step.message, at: p.step.at }));
      if (clear !== undefined) {
        yield {
          kind: 'pass',
          message: `Water on the pan "${pan.id}" of "${opening.id}" gets out: ${clear
            .slice(1)
            .map((p) => p.to)
            .join(', ')}.`,
          at: pan.at,
          flow: steps(clear),
          ...base,
        };
      } else if (possible !== undefined) {
        const unknown = possible.flatMap((p) => p.unknown);
        const fields = [...new Set(unknown.map((u) => u.message))];
        yield {
          kind: 'open',
          message: `Whether water on the pan "${pan.id}" of "${opening.id}" gets out cannot be told: ${fields.join(', ')} ${fields.length === 1 ? 'is' : 'are'} not declared.`,
          at: unknown[0]?.at ?? pan.at,
          missing: fields,
          flow: steps(possible),
          ...base,
        };
      } else {
        const blocked = blockedPassages(passages);
        const blockers = [...new Map(blocked.flatMap((p) => p.blockers).map((b) => [b.message, b])).values()];
        // Blocked passages begin where water gets to, so there is always one.
        const [first, ...rest] = blockers as [(typeof blockers)[number], ...typeof blockers];
        const upTo = findWay(passages, (p) => p.blockers.length === 0, blocked[0]?.from) ?? [];
        yield {
          kind: 'fail',
          message: `Water on the pan "${pan.id}" of "${opening.id}" cannot reach daylight: ${blockers.map((b) => b.message).join('; ')}.`,
          at: first.at,
          ...base,
          provided: `blocked by ${first.message}`,
          correct: 'Open the passage that is named, or give the pan another way out.',
          related: rest.map((b) => ({ message: b.message, at: b.at })),
          flow: [...steps(upTo), { message: `It is stopped by ${first.message}.`, at: first.at, essential: true }],
        };
      }
    }
  },
});
