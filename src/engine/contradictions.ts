/** Requirements that no value can meet together, each pair once, with both places. */
import type { Allowed, LimitQuery, OfferedLimit } from './limits.js';
import { rangesOf } from './limits-of-specification.js';
import { levelFor } from './levels.js';
import { about, asks } from './requirement-words.js';
import type { Clash } from './requirements-asked.js';
import { LEVEL_ORDER, type Level, type Outcome, type Source } from './result.js';
import { BROADER } from '../model/measures.js';
import type { Requirement } from '../model/types.js';
import { spanOfLocus } from '../reading/locus.js';

interface Side {
  readonly asks: string;
  readonly source: Source;
}

/** Two sources that contradict each other, and what about. */
export interface Contradiction {
  readonly about: string;
  readonly sides: readonly [Side, Side];
}

const sideOf = (o: OfferedLimit, comparison: LimitQuery['comparison']): Side => ({
  asks: o.asks ?? `${comparison} ${o.text}`,
  source: o.source,
});

function ofClash({ query, limit }: Clash): Contradiction | undefined {
  if (limit.conflict === undefined) return undefined;
  const opposite = query.comparison === 'at least' ? 'at most' : 'at least';
  return {
    about: query.subject === undefined ? query.property : `${query.property} of ${query.subject}`,
    sides: [sideOf(limit, query.comparison), sideOf(limit.conflict, opposite)],
  };
}

const overlap = (a: Allowed['ranges'], b: Allowed['ranges']): boolean =>
  a.some((x) =>
    b.some((y) => {
      const least = Math.max(x.least ?? -Infinity, y.least ?? -Infinity);
      const most = Math.min(x.most ?? Infinity, y.most ?? Infinity);
      return least <= most + Math.abs(most) * 1e-9;
    }),
  );

/** Whether there may be a thing that both are about. */
function meet(a: Requirement, b: Requirement): boolean {
  if (a.product !== undefined && b.product !== undefined && a.product.value !== b.product.value) return false;
  if (a.subject === undefined || b.subject === undefined || a.subject === b.subject) return true;
  return BROADER[a.subject] === b.subject || BROADER[b.subject] === a.subject;
}

/** Pairs of requirements that hold everywhere and exclude each other, whether or not a rule asks for them. */
function amongRequirements(requirements: readonly Requirement[]): Contradiction[] {
  const groups = new Map<string, { readonly requirement: Requirement; readonly ranges: Allowed['ranges'] }[]>();
  for (const r of requirements) {
    // Under different conditions two requirements may never meet; where they do, the review of that detail tells.
    if (r.property === undefined || r.values.length === 0 || !r.confirmed || r.when !== undefined) continue;
    const group = groups.get(r.property) ?? [];
    groups.set(r.property, group);
    group.push({ requirement: r, ranges: rangesOf(r) });
  }
  return [...groups.values()].flatMap((group) =>
    group.flatMap((a, i) =>
      group
        .slice(i + 1)
        .filter((b) => !overlap(a.ranges, b.ranges) && meet(a.requirement, b.requirement))
        .map((b): Contradiction => ({
          about: about(a.requirement) ?? '',
          sides: [whole(a.requirement), whole(b.requirement)],
        })),
    ),
  );
}

function whole(requirement: Requirement): Side {
  const { basis, citation, asked, at } = requirement;
  const place = asked[0]?.at ?? at;
  return {
    asks: asks(requirement),
    source: { basis, citation, provenance: 'project document', at: place, requirement },
  };
}

const placeKey = ({ at, citation }: Source): string =>
  at === undefined ? citation : `${at.document.file.uri} ${at.document.spanOf(at.path.slice(0, 2)).start}`;

/**
 * All contradictions, each pair once, those of the specification first.
 *
 * @param requirements of all specifications in reach, each once
 * @param clashes that the rules met on their way
 */
export function contradictionsIn(requirements: readonly Requirement[], clashes: readonly Clash[]): Contradiction[] {
  const known = new Map<string, Contradiction>();
  const all = [...amongRequirements(requirements), ...clashes.flatMap((clash) => ofClash(clash) ?? [])];
  for (const contradiction of all) {
    const key = contradiction.sides
      .map(({ source }) => placeKey(source))
      .sort()
      .join(' | ');
    if (!known.has(key)) known.set(key, contradiction);
  }
  return [...known.values()];
}

/** The finding; `undefined` where neither side stands in a document of the project. */
export function contradictionOutcome({ about: what, sides }: Contradiction): Outcome | undefined {
  const places = sides.filter(({ source }) => source.at !== undefined);
  // The later of two places in one file: it is the one that contradicts what was read before.
  const [second, first] = places.sort((a, b) => before(b, a)) as [Side | undefined, Side | undefined];
  if (second?.source.at === undefined) return undefined;
  const other = sides[0] === second ? sides[1] : sides[0];
  const level: Level = sides
    .map(({ source }) => levelFor('error', source))
    .reduce((a, b) => (LEVEL_ORDER[a] <= LEVEL_ORDER[b] ? a : b));
  return {
    kind: 'fail',
    level,
    at: second.source.at,
    subject: `${what}: ${second.source.citation} and ${other.source.citation}`,
    required: other.asks,
    provided: second.asks,
    message: `No value meets both: ${second.source.citation} asks for ${second.asks}, ${other.source.citation} for ${other.asks} (${what}).`,
    correct:
      'Have the designer settle which governs and state one value, or state the "precedence" of the contract in the project.',
    sources: [second.source, other.source],
    ...(first?.source.at === undefined
      ? {}
      : { related: [{ message: `${first.source.citation} asks for ${first.asks}`, at: first.source.at }] }),
  };
}

function before(a: Side, b: Side): number {
  const [x, y] = [a.source.at, b.source.at];
  if (x === undefined || y === undefined) return 0;
  const [p, q] = [x.document.file.uri, y.document.file.uri];
  return p < q ? -1 : p > q ? 1 : spanOfLocus(x).start - spanOfLocus(y).start;
}
