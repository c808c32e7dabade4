/** Which changes of the documents explain a result: those of the values it rests on, else those nearest to it. */
import type { ReadDocument } from '../reading/types.js';
import { mayRead } from './fields-read.js';
import { tokensOf } from './similarity.js';
import type { Change, Explanation, Submission, Told, Written } from './types.js';

/** Changes by the document they stand in, on either side. */
export class Explainer {
  readonly #byDocument = new Map<string, { change: Change; side: Written }[]>();
  readonly #used = new Set<Change>();
  readonly #settings: readonly Change[];
  readonly #details: ReadonlyMap<string, readonly ReadDocument[]>;

  constructor(
    private readonly changes: readonly Change[],
    private readonly before: Submission,
    private readonly after: Submission,
  ) {
    this.#settings = changes.filter((change) => change.document.kind === 'settings');
    const details = new Map<string, ReadDocument[]>();
    for (const one of [...(before.documents ?? []), ...(after.documents ?? [])])
      if (one.kind === 'detail') details.set(one.id, [...(details.get(one.id) ?? []), one]);
    this.#details = details;
    for (const change of changes) {
      for (const side of [change.before, change.after]) {
        if (side === undefined) continue;
        // What was added stands in the new document only, and explains what was said of the old one too.
        for (const name of new Set([nameOf(side.document), nameOf(change.document)])) {
          const known = this.#byDocument.get(name);
          if (known === undefined) this.#byDocument.set(name, [{ change, side }]);
          else known.push({ change, side });
        }
      }
    }
  }

  /**
   * @param isAsking whether the result asks something of the reader: only then is it worth saying that something
   *   else in the same detail has changed
   */
  of(before: Told | undefined, after: Told | undefined, isAsking: boolean): Explanation[] {
    const read = this.#read(before, after);
    const found = read.length > 0 ? read : this.#near(before, after, isAsking);
    for (const change of found) this.#used.add(change);
    return found.map((change) => ({ change, how: read.length > 0 ? 'read' : 'near' }));
  }

  /** Changes that were given for no result so far. */
  unused(): Change[] {
    return this.changes.filter((change) => !this.#used.has(change));
  }

  /** Changes of the very values that the result of either side points at. */
  #read(before: Told | undefined, after: Told | undefined): Change[] {
    const found = new Set<Change>();
    const reads = this.#reads(before, after);
    for (const told of [after, before]) {
      for (const spot of told?.evidence() ?? []) {
        for (const { change, side } of this.#byDocument.get(nameOf(spot.document)) ?? []) {
          if (isFileMoved(change) || !isOnTheWay(spot.steps, side.steps)) continue;
          // What a result points at is often a whole entry, of which its rule reads a few fields.
          if (side.steps.length <= spot.steps.length || mayRead(reads, change)) found.add(change);
        }
      }
    }
    const rule = (after ?? before)?.rule ?? '';
    for (const change of this.#settings) if (change.steps.includes(rule)) found.add(change);
    return [...found];
  }

  /** Fields that the rule reads; `undefined` when neither side knows. */
  #reads(before: Told | undefined, after: Told | undefined): readonly string[] | undefined {
    const rule = (after ?? before)?.rule ?? '';
    return this.after.reads(rule) ?? this.before.reads(rule);
  }

  /**
   * Changes of fields the rule reads: in the entries the result names; failing that, in its detail and what that uses.
   * A specification is left out: the results that depend on one of its values cite it, and were found by that.
   */
  #near(before: Told | undefined, after: Told | undefined, isAsking: boolean): Change[] {
    const named = new Set<Change>();
    const others = new Set<Change>();
    const reads = this.#reads(before, after);
    for (const [told, submission] of [[after, this.after] as const, [before, this.before] as const]) {
      if (told === undefined) continue;
      const words = new Set([...tokensOf(told.subject), ...quoted(told.message), ...told.path.split('/').slice(1, 3)]);
      const details = this.#details.get(told.detail) ?? [];
      const pointed = told.evidence().map((spot) => spot.document);
      for (const document of new Set([...pointed, ...details, ...submission.reach(told.detail)])) {
        if (document.kind === 'specification' || document.kind === 'settings') continue;
        for (const { change, side } of this.#byDocument.get(nameOf(document)) ?? []) {
          if (isFileMoved(change) || !mayRead(reads, change)) continue;
          if (words.has(side.steps[1] ?? '')) named.add(change);
          // Of a check that does not tell what it reads, only the coming and going of a whole document is sure.
          else if (reads !== undefined || side.steps.length === 0) others.add(change);
        }
      }
    }
    if (named.size > 0) return [...named];
    return isAsking ? [...others] : [];
  }
}

/** A document of either submission; what has a new id is found by both. */
function nameOf({ kind, id }: Pick<ReadDocument, 'kind' | 'id'>): string {
  return `${kind} ${id}`;
}

/** Where a file lies explains nothing. */
function isFileMoved({ kind, steps }: Change): boolean {
  return kind === 'moved' && steps.length === 0;
}

/** Whether one path leads to the other. A whole document is too much to rest on. */
function isOnTheWay(a: readonly string[], b: readonly string[]): boolean {
  if (a.length === 0 && b.length > 0) return false;
  const shorter = Math.min(a.length, b.length);
  for (let i = 0; i < shorter; i++) if (a[i] !== b[i]) return false;
  return true;
}

/** Ids stand in quotes in messages. */
function quoted(text: string): string[] {
  return [...text.matchAll(/"([^"]{1,64})"/g)].map((match) => match[1] as string);
}
