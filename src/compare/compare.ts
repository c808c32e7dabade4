/**
 * Two submissions side by side: documents are aligned, results matched, each told what became of it, what changed in
 * the documents is found, and each difference gets the changes that explain it. Each arrow is one call below.
 */
import { alignDocuments } from './align-documents.js';
import { changesOf } from './changes.js';
import { Explainer } from './explain.js';
import { inferNames } from './infer-names.js';
import { matchResults } from './match.js';
import { differencesOf, progressOf, stateOf } from './progress.js';
import { requirementChanges } from './requirements.js';
import { PROGRESS, type Comparison, type Pair, type Progress, type Submission, type Told } from './types.js';
import type { Names } from './names.js';
import { idOf } from './values.js';

/** Pure: the same two submissions, the same comparison. */
export function compareSubmissions(before: Submission, after: Submission): Comparison {
  const alignment =
    before.documents === undefined || after.documents === undefined
      ? undefined
      : alignDocuments(before.documents, after.documents);
  const inferred = alignment ?? inferNames(before.results, after.results);
  const { names } = inferred;
  const changes = alignment === undefined ? undefined : changesOf(alignment);
  const explainer = new Explainer(changes ?? [], before, after);
  const matched = matchResults(before.results, after.results, names, idsOf(before, after));
  const predecessor = new Map(matched.map((pair) => [pair.after, pair.before]));
  const stillThere = new Set(matched.map((pair) => pair.before));
  const isStillChecked = stillChecked(after, names);

  const pairOf = (old: Told | undefined, now: Told | undefined): Pair => {
    const renames = names.within('detail', old?.detail ?? '');
    const differences = old === undefined || now === undefined ? [] : differencesOf(old, now, renames);
    const progress = progressOf(old, now, isStillChecked);
    const state = stateOf(old, now, differences);
    return {
      ...(old === undefined ? {} : { before: old }),
      ...(now === undefined ? {} : { after: now }),
      state,
      progress,
      differences,
      explanations: state === 'unchanged' ? [] : explainer.of(old, now, progress !== 'unchanged'),
    };
  };
  const pairs = [
    ...after.results.map((now) => pairOf(predecessor.get(now), now)),
    ...before.results.filter((old) => !stillThere.has(old)).map((old) => pairOf(old, undefined)),
  ];
  return {
    before,
    after,
    pairs,
    changes,
    withoutEffect: explainer.unused(),
    requirements: requirementChanges(pairs),
    counts: countProgress(pairs),
    remarks: inferred.remarks,
  };
}

function countProgress(pairs: readonly Pair[]): Record<Progress, number> {
  const counts = Object.fromEntries(PROGRESS.map((one) => [one, 0])) as Record<Progress, number>;
  for (const { progress } of pairs) counts[progress] += 1;
  return counts;
}

/** Every id that stands in the documents a detail is made of; `undefined` where the documents are not at hand. */
function idsOf(before: Submission, after: Submission): (detail: string) => ReadonlySet<string> | undefined {
  if (before.documents === undefined || after.documents === undefined) return () => undefined;
  const known = new Map<string, Set<string>>();
  for (const document of [...before.documents, ...after.documents]) {
    const ids = known.get(document.id) ?? new Set<string>();
    known.set(document.id, ids);
    gatherIds(document.data, ids);
  }
  return (detail) => known.get(detail);
}

function gatherIds(value: unknown, into: Set<string>): void {
  if (typeof value !== 'object' || value === null) return;
  const id = idOf(value);
  if (id !== undefined) into.add(id);
  for (const item of Object.values(value)) gatherIds(item, into);
}

/**
 * Whether a finding that is not there any more was looked for: its rule ran on its detail, and the entry it pointed
 * at still stands. Else nothing can be said of it.
 */
function stillChecked(after: Submission, names: Names): (before: Told) => boolean {
  const details = new Set(after.details.map((one) => one.id));
  const files = new Set([
    ...(after.documents ?? []).map((one) => one.file.uri),
    ...after.details.map((one) => one.uri),
  ]);
  const documents = new Map((after.documents ?? []).filter((one) => one.kind === 'detail').map((one) => [one.id, one]));
  const broken = new Set(after.results.filter((one) => one.rule.startsWith('document/')).map((one) => one.detail));
  return (old) => {
    if (old.rule.startsWith('document/')) return files.has(old.position().uri) && !broken.has(old.detail);
    const detail = names.document('detail', old.detail);
    if (!details.has(detail) || !after.isAsked(old.rule, detail)) return false;
    const [, list, id] = old.path.split('/');
    const entries = documents.get(detail)?.data[list ?? ''];
    if (id === undefined || !Array.isArray(entries)) return true;
    const meant = [id, ...(names.within('detail', old.detail).get(id) ?? [])];
    return entries.some((entry, i) => meant.includes(idOf(entry) ?? String(i)));
  };
}
