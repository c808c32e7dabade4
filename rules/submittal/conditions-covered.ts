import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import type { Detail, Place } from '../../src/model/types.js';

const LIST: Source = {
  basis: 'guide',
  citation:
    'public project section 07 27 00, shop drawings: substrate joints, counterflashing, penetrations, corners, terminations, tie-ins, head, jamb, sill',
  provenance: 'seen',
};
const TIE_INS: Source = {
  basis: 'guide',
  citation: 'Air Barrier Association of America, master specification 07 27 26 (2014), list of tie-ins',
  provenance: 'seen',
};

type Locus = Detail['at'];

/** Something the detail holds, and the conditions that have to be drawn for it; of each group one is enough. */
interface Condition {
  readonly what: string;
  readonly at: Locus;
  readonly drawings: readonly (readonly string[])[];
  readonly source: Source;
}

/** Drawings that show how the wall ends, by what it meets there. */
const AT_EDGE: Readonly<Record<string, readonly string[]>> = {
  roof: ['top of wall', 'terminations', 'tie-ins'],
  foundation: ['base of wall', 'terminations', 'tie-ins'],
  grade: ['base of wall', 'terminations', 'tie-ins'],
  'floor line': ['tie-ins', 'terminations'],
  'expansion joint': ['tie-ins', 'terminations'],
  'other wall': ['tie-ins', 'terminations', 'inside corner', 'outside corner'],
};
const AT_CORNER: readonly (readonly [Place, string])[] = [
  ['inside corner of building', 'inside corner'],
  ['outside corner of building', 'outside corner'],
];

function conditions(detail: Detail): Condition[] {
  const found: Condition[] = [];
  const [opening] = detail.openings;
  if (opening !== undefined)
    found.push({
      what: 'openings',
      at: opening.at,
      drawings: [['head'], ['jamb'], ['sill'], ['lower corner']],
      source: LIST,
    });
  const [penetration] = detail.penetrations;
  if (penetration !== undefined)
    found.push({ what: 'penetrations', at: penetration.at, drawings: [['penetrations']], source: LIST });
  const placed = (place: Place): Locus | undefined =>
    detail.work.flatMap((w) => (w.action === 'apply' ? w.places : [])).find((p) => p.value === place)?.at;
  const joints = placed('sheathing joints');
  if (joints !== undefined)
    found.push({ what: 'sheathing joints', at: joints, drawings: [['sheathing joints']], source: LIST });
  for (const [place, drawing] of AT_CORNER) {
    const at = placed(place);
    if (at !== undefined) found.push({ what: `the ${place}`, at, drawings: [[drawing]], source: LIST });
  }
  for (const edge of detail.edges) {
    const drawings = AT_EDGE[edge.meets.value];
    if (drawings !== undefined)
      found.push({
        what: `the ${edge.meets.value} at the ${edge.side}`,
        at: edge.at,
        drawings: [drawings],
        source: TIE_INS,
      });
  }
  return found;
}

/** The drawings of the submittal show each condition that the detail holds. */
export default defineRule({
  id: 'submittal/conditions-covered',
  title: 'Drawings of the conditions',
  summary:
    'The submittal has drawings of each condition that the detail holds: openings with their lower corner, penetrations, joints, corners and edges.',
  level: 'warning',
  reads: ['drawings', 'openings', 'penetrations', 'edges', 'work.place'],
  sources: [LIST, TIE_INS],
  *review({ detail }) {
    const needed = conditions(detail);
    if (needed.length === 0) return;
    if (detail.drawingsAt === undefined) {
      const wanted = [...new Set(needed.flatMap((c) => c.drawings.map((group) => group[0] ?? '')))].join(', ');
      yield {
        kind: 'open',
        at: detail.at,
        subject: 'drawings',
        message: `The detail does not say which conditions are drawn; it holds ${needed.map((c) => c.what).join(', ')}: list them under "drawings".`,
        required: wanted,
        missing: ['drawings'],
        sources: this.sources,
      };
      return;
    }
    const drawn = new Set(detail.drawings.map((d) => d.value));
    for (const { what, at, drawings, source } of needed) {
      const missing = drawings
        .filter((group) => !group.some((d) => drawn.has(d)))
        .map((group) => group.map((d) => `"${d}"`).join(' or '));
      const base = {
        at: detail.drawingsAt,
        subject: `drawings of ${what}`,
        sources: [source],
        required: drawings.map((group) => group.join(' or ')).join(', '),
        provided: [...drawn].join(', '),
      };
      if (missing.length === 0) yield { kind: 'pass', ...base, message: `The conditions of ${what} are drawn.` };
      else
        yield {
          kind: 'fail',
          ...base,
          message: `The detail holds ${what}, and no drawing shows ${missing.join(', ')}.`,
          correct: `Draw the condition and add ${missing.join(', ')} to "drawings".`,
          related: [{ message: `${what} here`, at }],
        };
    }
  },
});
