/** The allowed word that a misspelled one was probably meant to be. */

/** Longer words are cut before they are compared: no name in these documents is longer. */
const LONGEST = 64;

/** Capitals, dashes, underscores and spaces are what people mix up most; they do not count. */
function folded(word: string): string {
  return word
    .slice(0, LONGEST)
    .toLowerCase()
    .replace(/[\s_-]+/g, '');
}

/**
 * Number of letters to insert, delete, replace or swap with a neighbor to get from one word to the other.
 *
 * @see the "optimal string alignment" form of the Damerau-Levenshtein distance
 */
export function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let least = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + (same ? 0 : 1));
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) least = Math.min(least, (beforeLast[j - 2] ?? 0) + 1);
      row.push(least);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length] ?? 0;
}

/**
 * The nearest of the allowed words, or nothing when none is near: one slip is forgiven in a short word, two from
 * six letters, three from twelve. Of equally near words the first.
 */
export function nearest(word: string, allowed: readonly string[]): string | undefined {
  const wanted = folded(word);
  let best: string | undefined;
  let least = Math.min(3, 1 + Math.floor(wanted.length / 6)) + 1;
  // A word of one or two letters is one slip away from too much.
  if (wanted.length < 3) least = 1;
  for (const candidate of allowed) {
    const other = folded(candidate);
    if (Math.abs(other.length - wanted.length) >= least) continue;
    const distance = editDistance(wanted, other);
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}
