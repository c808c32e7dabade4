/**
 * Which results of two submissions are the same check of the same thing. What a result is about decides: its detail,
 * rule and subject, in new names; what it says decides only between results that could both be meant.
 */
import { saysTheSame, translated, type Names, type Renames } from './names.js';
import { dice, pairUp, tokensOf } from './similarity.js';
import type { Told } from './types.js';

export interface MatchedResults {
  readonly before: Told;
  readonly after: Told;
}

/** Weights: the subject outweighs all else together, so that no likeness of words can part what belongs together. */
const SUBJECT = 100;
const PLACE = 8;
const SENSE = 8;
const WORDS = 8;
const KIND = 2;
const VALUE = 1;
/** Without the same subject, at the same place: the words must at least be related. */
const AT_SAME_PLACE = 0.5;
/** Without the same subject and place: nearly the same words, about the same ids. */
const ELSEWHERE = 0.8;
/** Results of one rule and detail beyond which only equal subjects are paired. */
const MOST_COMPARISONS = 250_000;

/** One result of the old submission in the names of the new one. */
interface Candidate {
  readonly told: Told;
  readonly renames: Renames;
  readonly path: string;
  readonly words: readonly string[];
}

/** @returns pairs, one to one, in the order of the old results */
export function matchResults(
  before: readonly Told[],
  after: readonly Told[],
  names: Names,
  knownIds: (detail: string) => ReadonlySet<string> | undefined,
): MatchedResults[] {
  const pairs: MatchedResults[] = [];
  const left: { old: Told[]; now: Told[] } = { old: [], now: [] };
  const newGroups = groups(after, (one) => one.detail);
  for (const [key, old] of groups(before, (one) => names.document('detail', one.detail))) {
    const now = newGroups.get(key) ?? [];
    newGroups.delete(key);
    const detail = old[0]?.detail ?? '';
    const renames = names.within('detail', detail);
    const found = matchGroup(old, now, renames, knownIds(now[0]?.detail ?? detail));
    append(pairs, found);
    const used = new Set(found.flatMap((pair) => [pair.before, pair.after]));
    append(
      left.old,
      old.filter((one) => !used.has(one)),
    );
    append(
      left.now,
      now.filter((one) => !used.has(one)),
    );
  }
  for (const rest of newGroups.values()) append(left.now, rest);
  append(pairs, matchProblems(left.old, left.now));
  return pairs.sort((a, b) => a.before.number - b.before.number);
}

/** Not `push(...)`: a submission has more results than a call can take arguments. */
function append<T>(to: T[], more: readonly T[]): void {
  for (const one of more) to.push(one);
}

/** Results of one rule about one detail (the key has both). */
function matchGroup(
  old: readonly Told[],
  now: readonly Told[],
  renames: Renames,
  ids: ReadonlySet<string> | undefined,
): MatchedResults[] {
  const pairs = sameInEverything(old, now, renames);
  const used = new Set(pairs.flatMap((pair) => [pair.before, pair.after]));
  const olds = old.filter((one) => !used.has(one)).map((told) => candidate(told, renames));
  const nows = now.filter((one) => !used.has(one)).map((told) => candidate(told, new Map()));
  if (olds.length * nows.length > MOST_COMPARISONS) return pairs;
  const matched = pairUp(olds.length, nows.length, (i, j) => score(olds[i] as Candidate, nows[j] as Candidate, ids));
  for (const { before, after } of matched)
    pairs.push({ before: (olds[before] as Candidate).told, after: (nows[after] as Candidate).told });
  return pairs;
}

/** Nearly all results of a resubmission are what they were: these need no comparing each with each. */
function sameInEverything(old: readonly Told[], now: readonly Told[], renames: Renames): MatchedResults[] {
  const key = (one: Told, names: Renames): string =>
    [
      one.kind,
      ...[one.subject, one.path, one.required ?? '', one.provided ?? '', one.message].map((text) =>
        translated(text, names),
      ),
    ].join('\0');
  const waiting = new Map<string, Told[]>();
  for (const one of now) {
    const text = key(one, new Map());
    const same = waiting.get(text);
    if (same === undefined) waiting.set(text, [one]);
    else same.push(one);
  }
  // The first one is taken first; from the end of a long list that is quick.
  for (const list of waiting.values()) list.reverse();
  return old.flatMap((before) => {
    const after = waiting.get(key(before, renames))?.pop();
    return after === undefined ? [] : [{ before, after }];
  });
}

function candidate(told: Told, renames: Renames): Candidate {
  const words = tokensOf(translated(`${told.subject} ${told.message}`, renames)).filter((word) => !/^\d/.test(word));
  return { told, renames, path: withoutDocument(translated(told.path, renames)), words };
}

/** The path of a value without its document: a detail may have a new id. */
function withoutDocument(path: string): string {
  return path.slice(path.indexOf('/') + 1);
}

function score(old: Candidate, now: Candidate, ids: ReadonlySet<string> | undefined): number | undefined {
  const [a, b] = [old.told, now.told];
  const isSameSubject = saysTheSame(a.subject, b.subject, old.renames);
  const isSamePlace = old.path === now.path;
  const alike = dice(old.words, now.words);
  if (!isSameSubject) {
    const isRelated = isSamePlace ? alike >= AT_SAME_PLACE : alike >= ELSEWHERE && sameIds(old, now, ids);
    if (!isRelated) return undefined;
  }
  return (
    (isSameSubject ? SUBJECT : 0) +
    (isSamePlace ? PLACE : 0) +
    (senseOf(a.required) === senseOf(b.required) ? SENSE : 0) +
    alike * WORDS +
    (a.kind === b.kind ? KIND : 0) +
    (a.required === b.required ? VALUE : 0) +
    (a.provided === b.provided ? VALUE : 0)
  );
}

/** `at least` of `at least 6 in`: a floor and a ceiling of one value are two checks. */
function senseOf(required: string | undefined): string {
  return /^(?:at least|at most|between|exactly)\b/.exec(required ?? '')?.[0] ?? '';
}

/** Whether two subjects speak of the same things of the wall: what was taken out is not what was put in. */
function sameIds(old: Candidate, now: Candidate, ids: ReadonlySet<string> | undefined): boolean {
  const of = (text: string): string =>
    tokensOf(text)
      .filter((word) => ids === undefined || ids.has(word))
      .sort()
      .join(' ');
  return of(translated(old.told.subject, old.renames)) === of(now.told.subject);
}

/** Problems of files that cannot be read go by the name of the file, which may have changed. */
function matchProblems(old: readonly Told[], now: readonly Told[]): MatchedResults[] {
  const key = (one: Told): string => `${one.rule}\0${one.message}`;
  const isProblem = (one: Told): boolean => one.rule.startsWith('document/');
  const waiting = groups(now.filter(isProblem), key);
  return old.filter(isProblem).flatMap((before) => {
    const after = waiting.get(key(before))?.shift();
    return after === undefined ? [] : [{ before, after }];
  });
}

function groups(results: readonly Told[], key: (one: Told) => string): Map<string, Told[]> {
  const map = new Map<string, Told[]>();
  for (const one of results) {
    const name = `${one.rule}\0${key(one)}`;
    const same = map.get(name);
    if (same === undefined) map.set(name, [one]);
    else same.push(one);
  }
  return map;
}
