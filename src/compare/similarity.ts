/** How alike two texts or two sets are, as numbers from 0 to 1. */

const TOKEN = /[\p{L}\p{N}](?:[\p{L}\p{N}_.-]*[\p{L}\p{N}_])?/gu;

/** Words, numbers and ids of a text, in order. */
export function tokensOf(text: string): string[] {
  return text.match(TOKEN) ?? [];
}

/**
 * Twice what two collections share, over what both hold; 1 for two empty ones.
 *
 * @see L. R. Dice, "Measures of the amount of ecologic association between species", Ecology 26 (1945): the coefficient
 */
export function dice(a: readonly string[], b: readonly string[]): number {
  if (a.length + b.length === 0) return 1;
  const left = new Map<string, number>();
  for (const one of a) left.set(one, (left.get(one) ?? 0) + 1);
  let shared = 0;
  for (const one of b) {
    const count = left.get(one) ?? 0;
    if (count === 0) continue;
    shared += 1;
    left.set(one, count - 1);
  }
  return (2 * shared) / (a.length + b.length);
}

/** What to say where two lists are too long to compare each with each. */
export function tooMany(what: string, before: number, after: number): string {
  return `${before} ${what} of the old submission and ${after} of the new one have other names and are too many to compare each with each, so they are told as removed and new; keep their ids, or compare smaller parts.`;
}

export interface Matched {
  readonly before: number;
  readonly after: number;
}

/**
 * Pairs things one to one: the most alike first, then those least apart in their lists, then the earlier ones. The
 * answer for two lists in the other order is the same, turned around, unless two things are exactly alike.
 *
 * @param score from 0 to 1 or more; `undefined` when the two may not be paired
 * @returns in the order of the first list
 */
export function pairUp(
  before: number,
  after: number,
  score: (before: number, after: number) => number | undefined,
): Matched[] {
  const candidates: (Matched & { readonly score: number })[] = [];
  for (let i = 0; i < before; i++) {
    for (let j = 0; j < after; j++) {
      const value = score(i, j);
      if (value !== undefined) candidates.push({ before: i, after: j, score: value });
    }
  }
  candidates.sort(
    (a, b) =>
      b.score - a.score ||
      Math.abs(a.before - a.after) - Math.abs(b.before - b.after) ||
      a.before + a.after - (b.before + b.after) ||
      a.before - b.before,
  );
  const usedBefore = new Set<number>();
  const usedAfter = new Set<number>();
  const pairs: Matched[] = [];
  for (const { before: i, after: j } of candidates) {
    if (usedBefore.has(i) || usedAfter.has(j)) continue;
    usedBefore.add(i);
    usedAfter.add(j);
    pairs.push({ before: i, after: j });
  }
  return pairs.sort((a, b) => a.before - b.before);
}
