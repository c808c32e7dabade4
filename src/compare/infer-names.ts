/**
 * New names of old things, told from results alone: for submissions of which only a SARIF file is left. Two ids are
 * the same thing when nearly the same was checked of both.
 */
import { Names } from './names.js';
import { dice, pairUp, tokensOf } from './similarity.js';
import type { Told } from './types.js';

const LEAST_ALIKE = 0.6;
const SAME_ID = 0.5;
const MOST_COMPARISONS = 40_000;

export function inferNames(before: readonly Told[], after: readonly Told[]): Names {
  const names = new Names();
  const old = byDetail(before);
  const now = byDetail(after);
  const lost = [...old].filter(([id]) => !now.has(id));
  const found = [...now].filter(([id]) => !old.has(id));
  if (lost.length * found.length <= MOST_COMPARISONS) {
    const [was, is] = [lost, found].map((side) => side.map(([, told]) => told.map((t) => `${t.rule} ${t.subject}`)));
    for (const pair of pairUp(lost.length, found.length, (i, j) => {
      const alike = dice(was?.[i] ?? [], is?.[j] ?? []);
      return alike >= LEAST_ALIKE ? alike : undefined;
    }))
      names.renameDocument('detail', lost[pair.before]?.[0] ?? '', found[pair.after]?.[0] ?? '');
  }
  for (const [id, told] of old) inferEntries(id, told, now.get(names.document('detail', id)) ?? [], names);
  return names;
}

function byDetail(results: readonly Told[]): Map<string, Told[]> {
  const map = new Map<string, Told[]>();
  for (const told of results) {
    const same = map.get(told.detail);
    if (same === undefined) map.set(told.detail, [told]);
    else same.push(told);
  }
  return map;
}

/** Ids of one list of a detail, each with what was checked of it, the id itself taken out. */
function inferEntries(detail: string, before: readonly Told[], after: readonly Told[], names: Names): void {
  const old = byList(before);
  const now = byList(after);
  for (const [list, entries] of old) {
    const was = [...entries];
    const is = [...(now.get(list) ?? [])];
    if (was.length * is.length > MOST_COMPARISONS) continue;
    for (const pair of pairUp(was.length, is.length, (i, j) => {
      const alike = dice(was[i]?.[1] ?? [], is[j]?.[1] ?? []);
      if (was[i]?.[0] === is[j]?.[0]) return alike + SAME_ID;
      return alike >= LEAST_ALIKE ? alike : undefined;
    }))
      names.renameEntry('detail', detail, was[pair.before]?.[0] ?? '', is[pair.after]?.[0] ?? '');
  }
}

function byList(results: readonly Told[]): Map<string, Map<string, string[]>> {
  const lists = new Map<string, Map<string, string[]>>();
  for (const { rule, subject, required, path } of results) {
    // `W-3/work/pan/ontoWall`: the second step is the list, the third the entry.
    const [, list, id] = path.split('/');
    if (list === undefined || id === undefined || id === '') continue;
    const entries = lists.get(list) ?? new Map<string, string[]>();
    lists.set(list, entries);
    const blind = tokensOf(subject).map((word) => (word === id ? '*' : word));
    const seen = entries.get(id) ?? [];
    entries.set(id, seen);
    seen.push([rule, ...blind, required ?? ''].join(' '));
  }
  return lists;
}
