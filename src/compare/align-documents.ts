/** Which documents of two submissions are the same one, whatever file they stand in. */
import type { ReadDocument } from '../reading/types.js';
import { Names } from './names.js';
import { pairUp, tooMany } from './similarity.js';
import { alikeness, idOf, sayingOf, isRecord, scalarText } from './values.js';
import { isListOfRecords, pairEntries } from './entries.js';

export interface Alignment {
  /** In the order of the new documents. */
  readonly pairs: readonly { readonly before: ReadDocument; readonly after: ReadDocument }[];
  readonly added: readonly ReadDocument[];
  readonly removed: readonly ReadDocument[];
  readonly names: Names;
  /** What was too much to compare. */
  readonly remarks: readonly string[];
}

/** A document under another id is the same one only if it has the same title and says much the same, */
const LEAST_ALIKE = 0.6;
/** or says nearly everything the same: the details of one library are like each other anyway. */
const LEAST_ALIKE_UNTITLED = 0.95;
const SAME_FILE = 0.5;
const MOST_COMPARISONS = 40_000;

/** By kind and id; then, of those left over, by what they say. */
export function alignDocuments(before: readonly ReadDocument[], after: readonly ReadDocument[]): Alignment {
  const partner = new Map<ReadDocument, ReadDocument>();
  const names = new Names();
  const remarks: string[] = [];
  const join = (old: ReadDocument, now: ReadDocument): void => {
    partner.set(now, old);
    names.renameDocument(now.kind, old.id, now.id);
  };
  const groups = (documents: readonly ReadDocument[], key: (one: ReadDocument) => string) => {
    const map = new Map<string, ReadDocument[]>();
    for (const one of documents) map.set(key(one), [...(map.get(key(one)) ?? []), one]);
    return map;
  };
  const named = groups(after, (one) => `${one.kind} ${one.id}`);
  for (const [key, old] of groups(before, (one) => `${one.kind} ${one.id}`))
    pairDocuments(old, named.get(key) ?? [], 0).forEach(([a, b]) => join(a, b));

  const taken = new Set(partner.values());
  const rest = groups(
    after.filter((one) => !partner.has(one)),
    (one) => one.kind,
  );
  const left = before.filter((one) => !taken.has(one));
  for (const [kind, old] of groups(left, (one) => one.kind)) {
    const now = rest.get(kind) ?? [];
    // A library has one project or one settings document more often than not; then there is nothing to choose.
    const only = kind !== 'detail' && kind !== 'product' && old.length === 1 && now.length === 1;
    if (only) pairDocuments(old, now, 0).forEach(([a, b]) => join(a, b));
    else pairRenamed(kind, old, now, remarks).forEach(([a, b]) => join(a, b));
  }

  const kept = new Set(partner.values());
  const pairs = after.flatMap((one) => {
    const old = partner.get(one);
    return old === undefined ? [] : [{ before: old, after: one }];
  });
  for (const pair of pairs)
    if (JSON.stringify(pair.before.data) !== JSON.stringify(pair.after.data)) gatherAllRenames(pair, names);
  return {
    pairs,
    added: after.filter((one) => !partner.has(one)),
    removed: before.filter((one) => !kept.has(one)),
    names,
    remarks,
  };
}

/** Where there are many, those that say just the same, and those with a title of their own, need no comparing. */
function pairRenamed(
  kind: string,
  old: readonly ReadDocument[],
  now: readonly ReadDocument[],
  remarks: string[],
): [ReadDocument, ReadDocument][] {
  if (old.length * now.length <= MOST_COMPARISONS) return pairDocuments(old, now, LEAST_ALIKE);
  const same = byKey(old, now, ({ data }) => sayingOf(data));
  const [left, right] = without(old, now, same);
  const titled = byKey(left, right, titleOf).filter(([a, b]) => alikeness(a.data, b.data) >= LEAST_ALIKE);
  const [was, is] = without(left, right, titled);
  if (was.length * is.length <= MOST_COMPARISONS) return [...same, ...titled, ...pairDocuments(was, is, LEAST_ALIKE)];
  remarks.push(tooMany(`${kind} documents`, was.length, is.length));
  return [...same, ...titled];
}

/** Pairs of which each side alone has its key. */
function byKey(
  old: readonly ReadDocument[],
  now: readonly ReadDocument[],
  key: (one: ReadDocument) => string,
): [ReadDocument, ReadDocument][] {
  const alone = (documents: readonly ReadDocument[]): Map<string, ReadDocument | undefined> => {
    const map = new Map<string, ReadDocument | undefined>();
    for (const one of documents) map.set(key(one), map.has(key(one)) ? undefined : one);
    return map;
  };
  const after = alone(now);
  return [...alone(old)].flatMap(([text, a]): [ReadDocument, ReadDocument][] => {
    const b = after.get(text);
    return a === undefined || b === undefined ? [] : [[a, b]];
  });
}

function without(
  old: readonly ReadDocument[],
  now: readonly ReadDocument[],
  pairs: readonly (readonly ReadDocument[])[],
): [ReadDocument[], ReadDocument[]] {
  const used = new Set(pairs.flat());
  return [old.filter((one) => !used.has(one)), now.filter((one) => !used.has(one))];
}

function pairDocuments(
  old: readonly ReadDocument[],
  now: readonly ReadDocument[],
  least: number,
): [ReadDocument, ReadDocument][] {
  const [only] = old;
  const [same] = now;
  if (least === 0 && old.length === 1 && now.length === 1 && only !== undefined && same !== undefined)
    return [[only, same]];
  if (old.length * now.length > MOST_COMPARISONS) return [];
  const matched = pairUp(old.length, now.length, (i, j) => {
    const [a, b] = [old[i] as ReadDocument, now[j] as ReadDocument];
    const alike = alikeness(a.data, b.data);
    const needed = least === 0 || titleOf(a) === titleOf(b) ? least : LEAST_ALIKE_UNTITLED;
    return alike < needed ? undefined : alike + (a.file.uri === b.file.uri ? SAME_FILE : 0);
  });
  return matched.map(({ before, after }) => [old[before] as ReadDocument, now[after] as ReadDocument]);
}

function titleOf({ data }: ReadDocument): string {
  return scalarText(data['title'] ?? data['name'] ?? '');
}

/** Steps may refer to steps that refer to steps; real work is no deeper than this. */
const MOST_ROUNDS = 4;

/** New ids of all entries of a document. What is renamed first lets what refers to it be recognized. */
function gatherAllRenames({ before, after }: Alignment['pairs'][number], names: Names): void {
  let known = -1;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    gatherRenames(before, before.data, after.data, names);
    const { size } = names.within(before.kind, before.id);
    if (size === known) return;
    known = size;
  }
}

/** New ids of entries, wherever in the document a list of entries stands. */
function gatherRenames(document: ReadDocument, before: unknown, after: unknown, names: Names): void {
  if (isListOfRecords(before) && isListOfRecords(after)) {
    for (const pair of pairEntries(before, after, names.within(document.kind, document.id))) {
      const [old, now] = [before[pair.before], after[pair.after]];
      const [oldId, newId] = [idOf(old), idOf(now)];
      if (oldId !== undefined && newId !== undefined) names.renameEntry(document.kind, document.id, oldId, newId);
      gatherRenames(document, old, now, names);
    }
  } else if (isRecord(before) && isRecord(after)) {
    for (const key of Object.keys(after)) gatherRenames(document, before[key], after[key], names);
  }
}
