/**
 * What changed in the documents, by meaning: values by the path of ids that leads to them. Lines, indentation, order
 * of keys, names of files and the way a list is broken do not count.
 */
import type { Path, ReadDocument } from '../reading/types.js';
import type { Alignment } from './align-documents.js';
import { inSameOrder, isListOfRecords, pairEntries } from './entries.js';
import { saysTheSame, type Renames } from './names.js';
import type { Change, ChangeKind, Written } from './types.js';
import { idOf, inWords, isRecord, isScalar, scalarText, stepsOf, written } from './values.js';

/** All changes: by document in the order of the new submission, then documents that are gone. */
export function changesOf({ pairs, added, removed, names }: Alignment): Change[] {
  const changes: Change[] = [];
  for (const { before, after } of pairs) {
    const one = new Difference(before, after, names.within(before.kind, before.id));
    changes.push(...one.all());
  }
  const whole = (document: ReadDocument): Written => {
    const title = document.data['title'] ?? document.data['name'];
    return written(document, [], typeof title === 'string' ? title : `the ${document.kind}`);
  };
  const about = ({ kind, id }: ReadDocument) => ({ document: { kind, id }, steps: [] });
  for (const one of added) changes.push({ kind: 'added', ...about(one), after: whole(one) });
  for (const one of removed) changes.push({ kind: 'removed', ...about(one), before: whole(one) });
  return changes;
}

/** The difference between two states of one document. */
class Difference {
  readonly #changes: Change[] = [];

  constructor(
    private readonly before: ReadDocument,
    private readonly after: ReadDocument,
    private readonly renames: Renames,
  ) {}

  all(): Change[] {
    const { before, after } = this;
    if (before.id !== after.id && before.data['id'] !== undefined)
      this.#tell('renamed', ['id'], ['id'], before.id, after.id);
    if (before.file.uri !== after.file.uri) this.#tell('moved', [], [], before.file.uri, after.file.uri);
    // Most documents of a library are the same in both submissions.
    if (JSON.stringify(before.data) !== JSON.stringify(after.data)) this.#records(before.data, after.data, [], []);
    return this.#changes;
  }

  #tell(kind: ChangeKind, oldPath: Path | undefined, newPath: Path | undefined, was?: string, is?: string): void {
    const { before, after } = this;
    this.#changes.push({
      kind,
      document: { kind: after.kind, id: after.id },
      steps: newPath === undefined ? stepsOf(before, oldPath ?? []) : stepsOf(after, newPath),
      ...(oldPath === undefined || was === undefined ? {} : { before: written(before, oldPath, was) }),
      ...(newPath === undefined || is === undefined ? {} : { after: written(after, newPath, is) }),
    });
  }

  #values(old: unknown, now: unknown, oldPath: Path, newPath: Path): void {
    if (old === undefined && now === undefined) return;
    // Each setting speaks of a rule of its own, so a block of them is told one by one.
    if (this.after.kind === 'settings' && isRecord(old ?? now) && (old === undefined || now === undefined))
      return this.#records(isRecord(old) ? old : {}, isRecord(now) ? now : {}, oldPath, newPath);
    if (old === undefined) this.#tell('added', undefined, newPath, undefined, inWords(now));
    else if (now === undefined) this.#tell('removed', oldPath, undefined, inWords(old));
    else if (isRecord(old) && isRecord(now)) this.#records(old, now, oldPath, newPath);
    else if (isListOfRecords(old) && isListOfRecords(now)) this.#entries(old, now, oldPath, newPath);
    else this.#leaves(old, now, oldPath, newPath);
  }

  #records(
    old: Readonly<Record<string, unknown>>,
    now: Readonly<Record<string, unknown>>,
    oldPath: Path,
    newPath: Path,
  ): void {
    const keys = [...Object.keys(now), ...Object.keys(old).filter((key) => !Object.hasOwn(now, key))];
    // The id of an entry was looked at when the entry got its partner.
    for (const key of keys) if (key !== 'id') this.#values(old[key], now[key], [...oldPath, key], [...newPath, key]);
  }

  #entries(old: readonly unknown[], now: readonly unknown[], oldPath: Path, newPath: Path): void {
    const pairs = pairEntries(old, now, this.renames);
    const inPlace = inSameOrder(pairs.map((pair) => pair.after));
    const partner = new Map(pairs.map((pair) => [pair.after, pair.before]));
    const kept = new Set(pairs.map((pair) => pair.before));
    now.forEach((entry, j) => {
      const i = partner.get(j);
      const to: Path = [...newPath, j];
      if (i === undefined) return this.#tell('added', undefined, to, undefined, inWords(entry));
      const from: Path = [...oldPath, i];
      const [oldId, newId] = [idOf(old[i]), idOf(entry)];
      if (oldId !== newId) this.#tell('renamed', from, to, oldId ?? 'no id', newId ?? 'no id');
      if (!inPlace.has(j)) this.#tell('moved', from, to, placeIn(old, i), placeIn(now, j));
      this.#values(old[i], entry, from, to);
    });
    old.forEach((entry, i) => {
      if (!kept.has(i)) this.#tell('removed', [...oldPath, i], undefined, inWords(entry));
    });
  }

  /** Scalars and lists of scalars; one value alone and a list of it alone mean the same. */
  #leaves(old: unknown, now: unknown, oldPath: Path, newPath: Path): void {
    const olds = Array.isArray(old) ? (old as unknown[]) : [old];
    const nows = Array.isArray(now) ? (now as unknown[]) : [now];
    const same = (a: unknown, b: unknown): boolean =>
      isScalar(a) && isScalar(b)
        ? saysTheSame(scalarText(a), scalarText(b), this.renames)
        : inWords(a) === inWords(b) && JSON.stringify(a) === JSON.stringify(b);
    if (olds.length === nows.length && olds.every((one, i) => same(one, nows[i]))) return;
    const rest = [...nows];
    const isShuffled =
      olds.length === nows.length &&
      olds.every((one) => {
        const at = rest.findIndex((other) => same(one, other));
        if (at >= 0) rest.splice(at, 1);
        return at >= 0;
      });
    this.#tell(isShuffled ? 'moved' : 'changed', oldPath, newPath, inWords(old), inWords(now));
  }
}

/** `place 3, after "pan"`. */
function placeIn(entries: readonly unknown[], index: number): string {
  const previous = index === 0 ? undefined : idOf(entries[index - 1]);
  return `place ${index + 1}${previous === undefined ? '' : `, after "${previous}"`}`;
}
