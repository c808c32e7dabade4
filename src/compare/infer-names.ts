/**
 * New names of old things, told from results alone: for submissions of which only a SARIF file is left. Two ids are
 * the same thing when nearly the same was checked of both.
 */
import { Names } from './names.js';
import { dice, pairUp, tokensOf, tooMany } from './similarity.js';
import type { Told } from './types.js';

const LEAST_ALIKE = 0.7;
const SAME_ID = 0.5;
const MOST_COMPARISONS = 40_000;

/** @returns the names, and what was too much to compare */
export function inferNames(
  before: readonly Told[],
  after: readonly Told[],
): { readonly names: Names; readonly remarks: readonly string[] } {
  const names = new Names();
  const remarks: string[] = [];
  const old = byDetail(before);
  const now = byDetail(after);
  const lost = [...old].filter(([id]) => !now.has(id));
  const found = [...now].filter(([id]) => !old.has(id));
  if (lost.length * found.length <= MOST_COMPARISONS) {
    const [was, is] = [lost, found].map((side) => side.map(([, told]) => told.map((t) => `${t.rule} ${t.subject}`)));
    for (const pair of pairUp(lost.length, found.length, (i, j) => {
      const alike = dice(was?.[i] ?? [], is?.[j] ?? []);
      // The details of one library are checked for much the same, so likeness alone says little.
      const isSameFile = fileOf(lost[i]) === fileOf(found[j]);
      return alike === 1 || (isSameFile && alike >= LEAST_ALIKE) ? alike : undefined;
    }))
      names.renameDocument('detail', lost[pair.before]?.[0] ?? '', found[pair.after]?.[0] ?? '');
  } else remarks.push(tooMany('details', lost.length, found.length));
  for (const [id, told] of old) inferEntries(id, told, now.get(names.document('detail', id)) ?? [], names);
  return { names, remarks };
}

function fileOf(detail: readonly [string, readonly Told[]] | undefined): string | undefined {
  return detail?.[1][0]?.position().uri;
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

/** Ids of one list of a detail, each with what was checked of it. */
function inferEntries(detail: string, before: readonly Told[], after: readonly Told[], names: Names): void {
  const old = byList(before);
  const now = byList(after);
  for (const [list, entries] of old) {
    const was = [...entries];
    const is = [...(now.get(list) ?? new Map<string, Check[]>())];
    const ids = new Set(is.map(([id]) => id));
    if (was.every(([id]) => ids.has(id)) && was.length === is.length && !areNumbers(was.map(([id]) => id))) continue;
    if (was.length * is.length > MOST_COMPARISONS) continue;
    for (const pair of pairUp(was.length, is.length, (i, j) => {
      const [[oldId, olds] = ['', []], [newId, nows] = ['', []]] = [was[i], is[j]];
      const alike = likeness(oldId, olds, newId, nows);
      if (oldId === newId) return alike + SAME_ID;
      return alike >= LEAST_ALIKE ? alike : undefined;
    }))
      names.renameEntry('detail', detail, was[pair.before]?.[0] ?? '', is[pair.after]?.[0] ?? '');
  }
}

/** Numbers move on when an entry is put in; names stay with what they name. */
function areNumbers(ids: readonly string[]): boolean {
  return ids.some((id) => /\d$/.test(id));
}

interface Check {
  readonly rule: string;
  readonly required: readonly string[];
  readonly words: readonly string[];
}

function byList(results: readonly Told[]): Map<string, Map<string, Check[]>> {
  const lists = new Map<string, Map<string, Check[]>>();
  for (const { rule, subject, required, path } of results) {
    // `W-3/work/pan/ontoWall`: the second step is the list, the third the entry.
    const [, list, id] = path.split('/');
    if (list === undefined || id === undefined || id === '') continue;
    const entries = lists.get(list) ?? new Map<string, Check[]>();
    lists.set(list, entries);
    const known = entries.get(id) ?? [];
    entries.set(id, known);
    known.push({ rule, required: tokensOf(required ?? ''), words: tokensOf(subject) });
  }
  return lists;
}

/** How many of the checks of two ids are the same but for the id; as with `dice`, over all checks of both. */
function likeness(oldId: string, before: readonly Check[], newId: string, after: readonly Check[]): number {
  const rest = [...after];
  // An id may be an ordinary word too, so each word may have kept its meaning.
  const same = (was: readonly string[], is: readonly string[]): boolean =>
    was.length === is.length && was.every((word, i) => word === is[i] || (word === oldId && is[i] === newId));
  let shared = 0;
  for (const { rule, required, words } of before) {
    const at = rest.findIndex((one) => one.rule === rule && same(required, one.required) && same(words, one.words));
    if (at < 0) continue;
    rest.splice(at, 1);
    shared += 1;
  }
  return (2 * shared) / Math.max(1, before.length + after.length);
}
