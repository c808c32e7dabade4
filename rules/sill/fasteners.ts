import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import { panOf, unitSetIn } from '../../src/water/at-opening.js';

const PRACTICE: Source = {
  basis: 'practice',
  citation: 'common practice: nothing pierces the bottom of a pan',
  provenance: 'common practice, no source',
};
const E2112: Source = {
  basis: 'standard',
  citation: 'ASTM E2112, fasteners of barrier and flashing do not pierce the flange',
  provenance: 'seen at second hand',
};

/** Fasteners of the pan and anchors of the unit keep out of the bottom of the pan. */
export default defineRule({
  id: 'sill/fasteners',
  title: 'Fasteners at the pan',
  summary: 'No fastener or anchor goes through the bottom of the sill pan.',
  level: 'warning',
  reads: ['work.fasteners', 'work.anchors'],
  sources: [PRACTICE, E2112],
  *review({ detail }) {
    for (const opening of detail.openings) {
      const pan = panOf(detail, opening);
      if (pan === undefined) continue;
      const set = unitSetIn(detail, opening);
      const base = { required: 'nothing through the bottom of the pan', sources: [PRACTICE, E2112] };
      const judged = (stated: { value: string; at: Outcome['at'] }, what: string, correct: string): Outcome =>
        stated.value === 'through pan'
          ? {
              kind: 'fail',
              message: `${what} go through the bottom of the pan "${pan.id}" of "${opening.id}"; each hole lets water into the sill.`,
              at: stated.at,
              subject: `${what.toLowerCase()} at the sill of ${opening.id}`,
              provided: 'through the pan',
              correct,
              related: [{ message: 'the pan', at: pan.at }],
              ...base,
            }
          : {
              kind: 'pass',
              message: `${what} keep out of the bottom of the pan "${pan.id}" of "${opening.id}": ${stated.value}.`,
              at: stated.at,
              subject: `${what.toLowerCase()} at the sill of ${opening.id}`,
              provided: stated.value,
              ...base,
            };
      if (pan.fastenersThroughPan !== undefined)
        yield judged(
          pan.fastenersThroughPan,
          'Fasteners of the pan',
          'Fasten the pan at its upturned edges or on the wall face, or bond it ("fasteners: none").',
        );
      if (set?.anchors !== undefined)
        yield judged(
          set.anchors,
          'Anchors of the unit',
          'Anchor the unit at the jambs, or to a sealed upstand above the water ("anchors").',
        );
      const missing = [
        ...(pan.fastenersThroughPan === undefined ? ['work.fasteners'] : []),
        ...(set !== undefined && set.anchors === undefined ? ['work.anchors'] : []),
      ];
      if (missing.length > 0)
        yield {
          kind: 'open',
          message: `Whether anything goes through the bottom of the pan "${pan.id}" of "${opening.id}" is not told: ${missing.map((m) => `"${m.slice(5)}" of "${m === 'work.anchors' ? (set?.id ?? '') : pan.id}"`).join(' and ')} ${missing.length === 1 ? 'is' : 'are'} not declared.`,
          at: missing[0] === 'work.anchors' ? (set?.at ?? pan.at) : pan.at,
          subject: `fasteners at the sill of ${opening.id}`,
          missing,
          ...base,
        };
    }
  },
});
