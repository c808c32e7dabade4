/** Which entries of two lists are the same thing, though ids, order or values may have changed. */
import { pairUp, type Matched } from './similarity.js';
import { saysTheSame, type Renames } from './names.js';
import { alikeness, idOf, inWords, isRecord } from './values.js';

/** Entries with different ids, or without any, are one thing only if they say nearly the same. */
const LEAST_ALIKE = 0.7;
/** What an entry is and where it belongs: another value here is another thing, unless the id is the same. */
const WHAT_IT_IS = ['material', 'type', 'place', 'of', 'layer', 'set', 'hold', 'close', 'rule', 'subject', 'property'];
/** The same id speaks for the same thing, but not against an entry of another id that says exactly what it said. */
const SAME_ID = 0.5;
/** Numbers move on when an entry is put in: the same number on another material is a weak sign. */
const SAME_ID_ONLY = 0.1;

/** Comparing each with each takes too long beyond this; lists of real details have some dozens of entries. */
const MOST_COMPARISONS = 40_000;

/**
 * @param renames of entries that these may refer to
 * @returns pairs in the order of the first list
 */
export function pairEntries(before: readonly unknown[], after: readonly unknown[], renames: Renames): Matched[] {
  if (before.length * after.length > MOST_COMPARISONS) return pairByName(before, after);
  return pairUp(before.length, after.length, (i, j) => {
    const [old, now] = [before[i], after[j]];
    const alike = alikeness(old, now);
    const id = idOf(old);
    const isSame = isSameSort(old, now, renames);
    if (id !== undefined && id === idOf(now)) return alike + (isSame ? SAME_ID : SAME_ID_ONLY);
    return alike >= LEAST_ALIKE && isSame ? alike : undefined;
  });
}

function isSameSort(old: unknown, now: unknown, renames: Renames): boolean {
  if (!isRecord(old) || !isRecord(now)) return false;
  return WHAT_IT_IS.every((key) => saysTheSame(inWords(old[key] ?? ''), inWords(now[key] ?? ''), renames));
}

/** By id where there is one, else by place in the list. */
function pairByName(before: readonly unknown[], after: readonly unknown[]): Matched[] {
  const nameOf = (entry: unknown, i: number): string => idOf(entry) ?? `#${i}`;
  const places = new Map(after.map((entry, i) => [nameOf(entry, i), i]));
  const used = new Set<number>();
  return before.flatMap((entry, i) => {
    const j = places.get(nameOf(entry, i));
    if (j === undefined || used.has(j)) return [];
    used.add(j);
    return [{ before: i, after: j }];
  });
}

/** Whether a value is a list of entries that are records. */
export function isListOfRecords(value: unknown): value is readonly unknown[] {
  return Array.isArray(value) && value.length > 0 && value.every(isRecord);
}

/** Members of a sequence that keep their order; the rest were moved. The longest such run, the earliest of equals. */
export function inSameOrder(sequence: readonly number[]): Set<number> {
  const best: number[] = [];
  const from: number[] = [];
  sequence.forEach((value, i) => {
    best[i] = 1;
    from[i] = -1;
    for (let j = 0; j < i; j++) {
      if ((sequence[j] as number) < value && (best[j] as number) + 1 > best[i]) {
        best[i] = (best[j] as number) + 1;
        from[i] = j;
      }
    }
  });
  let at = best.indexOf(Math.max(0, ...best));
  const kept = new Set<number>();
  while (at >= 0) {
    kept.add(sequence[at] as number);
    at = from[at] ?? -1;
  }
  return kept;
}
