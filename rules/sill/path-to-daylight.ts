import { CANADA_SILLS, DRAINS } from '../../src/engine/clauses.js';
import { defineRule } from '../../src/engine/rule.js';
import type { FlowStep, Source } from '../../src/engine/result.js';
import { panOf } from '../../src/water/at-opening.js';
import { blockedPassages, findWay, passagesFrom, type Passage } from '../../src/water/daylight.js';

const STAYS: Source = {
  basis: 'physics',
  citation: 'water that is not let out stays in the wall',
  provenance: 'computed',
};
const SOURCES: readonly Source[] = [STAYS, ...DRAINS, CANADA_SILLS];

const DRAINED_SPACE: Source = {
  basis: 'practice',
  citation: 'common practice: a drained space behind cladding',
  provenance: 'common practice, no source',
};

/** What would slow the water down once the way is open. */
function beyond(passages: readonly Passage[]): string {
  const slow = passages.flatMap((p) => p.slow ?? [])[0];
  return slow === undefined
    ? ''
    : ` Beyond that it has no drained space, only the joint between the barrier and ${slow.message}.`;
}

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
  sources: SOURCES,
  *review({ detail, face }) {
    for (const opening of detail.openings) {
      const pan = panOf(detail, opening);
      if (pan === undefined) continue;
      const base = {
        subject: `drainage of the pan of ${opening.id}`,
        required: 'an open path from pan to daylight',
        sources: SOURCES,
      };
      const passages = passagesFrom(detail, face, opening, pan);
      const clear = findWay(passages, (p) => p.blockers.length === 0 && p.unknown.length === 0);
      const possible = clear ?? findWay(passages, (p) => p.blockers.length === 0);
      const steps = (way: typeof passages): FlowStep[] => way.map((p) => ({ message: p.step.message, at: p.step.at }));
      const slow = (clear ?? []).flatMap((p) => p.slow ?? [])[0];
      if (clear !== undefined && slow !== undefined) {
        yield {
          kind: 'fail',
          level: 'warning',
          message: `Water on the pan "${pan.id}" of "${opening.id}" has no drained space on its way: it gets out only between the barrier and ${slow.message}. Codes accept lapped siding on the barrier; it drains and dries slowly.`,
          at: slow.at,
          ...base,
          required: 'a drained space outside the barrier',
          provided: 'lapped siding on the barrier',
          correct:
            'Set the siding on furring or over a drainage mat ("drained: true"), or say which barrier drains there.',
          sources: [DRAINED_SPACE, ...SOURCES.filter((s) => s.basis === 'code')],
          flow: steps(clear),
        };
      } else if (clear !== undefined) {
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
        // What lies farther on is told too: who opens the first passage should not find the next one closed.
        const all = [...blocked, ...passages.filter((p) => !blocked.includes(p))];
        const blockers = [...new Map(all.flatMap((p) => p.blockers).map((b) => [b.message, b])).values()];
        // Blocked passages begin where water gets to, so there is always one.
        const [first, ...rest] = blockers as [(typeof blockers)[number], ...typeof blockers];
        const upTo = findWay(passages, (p) => p.blockers.length === 0, blocked[0]?.from) ?? [];
        yield {
          kind: 'fail',
          message: `Water on the pan "${pan.id}" of "${opening.id}" cannot reach daylight: ${blockers.map((b) => b.message).join('; ')}.${beyond(passages)}`,
          at: first.at,
          ...base,
          provided: `blocked by ${first.message}`,
          correct:
            blockers.length === 1
              ? 'Open the passage that is named, or give the pan another way out.'
              : 'Open each passage that is named, or give the pan another way out.',
          related: rest.map((b) => ({ message: b.message, at: b.at })),
          flow: [...steps(upTo), { message: `It is stopped by ${first.message}.`, at: first.at, essential: true }],
        };
      }
    }
  },
});
