/**
 * Findings by their source: on which paragraph, clause or data sheet more or fewer of them rest now. That no finding is
 * left does not say that the requirement is met: only what was checked was looked at.
 */
import { standingOf } from './progress.js';
import type { Pair, RequirementChange, CitedSource, Told } from './types.js';

/** The documents of the project come before what is published, and habits come last. */
const ORDER = ['specification', 'code', 'product data', 'standard', 'guide', 'physics', 'practice'] as const;

interface Count {
  readonly source: CitedSource;
  before: number;
  after: number;
  readonly details: Set<string>;
}

/**
 * Only sources whose findings changed in number, each with the details in which one came or went. A finding that was
 * accepted, or can no longer be settled, still counts; one that is not checked any more counts on neither side.
 */
export function requirementChanges(pairs: readonly Pair[]): RequirementChange[] {
  const counts = new Map<string, Count>();
  const countOf = (told: Told): Count | undefined => {
    const [source] = told.sources;
    if (source === undefined) return undefined;
    const key = `${source.basis}\0${source.citation}`;
    const known = counts.get(key) ?? { source, before: 0, after: 0, details: new Set<string>() };
    counts.set(key, known);
    return known;
  };
  for (const { before, after, progress } of pairs) {
    if (progress === 'no longer checked') continue;
    const was = before !== undefined && isUnmet(before, after) ? countOf(before) : undefined;
    const is = after !== undefined && isUnmet(after, before) ? countOf(after) : undefined;
    if (was !== undefined) was.before += 1;
    if (is !== undefined) is.after += 1;
    if (was === is) continue;
    was?.details.add(before?.detail ?? '');
    is?.details.add(after?.detail ?? '');
  }
  return [...counts.values()]
    .filter((one) => one.before !== one.after)
    .map((one) => ({ ...one, status: statusOf(one), details: [...one.details] }))
    .sort(
      (a, b) =>
        ORDER.indexOf(a.source.basis) - ORDER.indexOf(b.source.basis) ||
        (a.source.citation < b.source.citation ? -1 : 1),
    );
}

function isUnmet(told: Told, other: Told | undefined): boolean {
  const standing = standingOf(told);
  return (
    standing === 'finding' || standing === 'accepted' || (standing === 'unsettled' && standingOf(other) === 'finding')
  );
}

function statusOf({ before, after }: Count): RequirementChange['status'] {
  if (after === 0) return 'no finding now';
  if (before === 0) return 'new finding';
  return after < before ? 'fewer findings' : 'more findings';
}
