/** New names of old things: ids that were changed between two submissions. */
import type { DocumentKind } from '../reading/types.js';
import { tokensOf } from './similarity.js';

/** Old id to new ids; only those that differ. Several, because a layer and a step may share an id. */
export type Renames = ReadonlyMap<string, readonly string[]>;

const NONE: Renames = new Map();

/** What was renamed: documents, and entries inside of each document. */
export class Names {
  readonly #documents = new Map<string, string>();
  readonly #ids = new Map<string, string[]>();
  readonly #entries = new Map<string, Map<string, string[]>>();

  renameDocument(kind: DocumentKind, oldId: string, newId: string): void {
    if (oldId === newId) return;
    this.#documents.set(`${kind} ${oldId}`, newId);
    add(this.#ids, oldId, newId);
  }

  /** @param oldDocument id of the document before it was renamed */
  renameEntry(kind: DocumentKind, oldDocument: string, oldId: string, newId: string): void {
    if (oldId === newId) return;
    const key = `${kind} ${oldDocument}`;
    const known = this.#entries.get(key) ?? new Map<string, string[]>();
    this.#entries.set(key, known);
    add(known, oldId, newId);
  }

  /** The new id of a document. */
  document(kind: DocumentKind, oldId: string): string {
    return this.#documents.get(`${kind} ${oldId}`) ?? oldId;
  }

  /** Everything that a text about one document may call by an old name; its own entries come before documents. */
  within(kind: DocumentKind, oldDocument: string): Renames {
    const entries = this.#entries.get(`${kind} ${oldDocument}`);
    if (entries === undefined) return this.#ids.size === 0 ? NONE : this.#ids;
    return this.#ids.size === 0 ? entries : new Map([...this.#ids, ...entries]);
  }
}

function add(map: Map<string, string[]>, oldId: string, newId: string): void {
  const known = map.get(oldId);
  if (known === undefined) map.set(oldId, [newId]);
  else if (!known.includes(newId)) known.push(newId);
}

/** A text with every renamed id under its new name. */
export function translated(text: string, renames: Renames): string {
  if (renames.size === 0) return text;
  const { tokens, gaps } = partsOf(text);
  return gaps.map((gap, i) => gap + (renames.get(tokens[i] ?? '')?.[0] ?? tokens[i] ?? '')).join('');
}

/**
 * Whether two texts say the same, one in old names and one in new ones. Each word may keep its own meaning, because
 * an id can also be an ordinary word: "field", "head".
 */
export function saysTheSame(before: string, after: string, renames: Renames): boolean {
  if (before === after) return true;
  if (renames.size === 0) return false;
  const old = partsOf(before);
  const now = partsOf(after);
  return (
    old.tokens.length === now.tokens.length &&
    old.tokens.every((token, i) => isSameWord(token, now.tokens[i] as string, renames)) &&
    old.gaps.every((gap, i) => gap === now.gaps[i])
  );
}

function isSameWord(before: string, after: string, renames: Renames): boolean {
  return before === after || renames.get(before)?.includes(after) === true;
}

/** The words of a text and what stands before, between and behind them; one gap more than words. */
function partsOf(text: string): { tokens: string[]; gaps: string[] } {
  const tokens = tokensOf(text);
  const gaps: string[] = [];
  let from = 0;
  for (const token of tokens) {
    const at = text.indexOf(token, from);
    gaps.push(text.slice(from, at));
    from = at + token.length;
  }
  gaps.push(text.slice(from));
  return { tokens, gaps };
}
