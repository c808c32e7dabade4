/**
 * Reads checked plain data with its positions: the one place where a document's keys become model values.
 *
 * The schema has been checked before, so a value of an unexpected shape is treated as absent, not as an error.
 */
import { isProblem, parseQuantity } from '../quantity/parse.js';
import type { Dimension } from '../quantity/types.js';
import type { Locus, Path, ReadDocument } from '../reading/types.js';
import type { Measured, Stated } from './types.js';

export class Entry {
  readonly document: ReadDocument;
  readonly path: Path;
  readonly value: unknown;

  constructor(document: ReadDocument, path: Path, value: unknown) {
    this.document = document;
    this.path = path;
    this.value = value;
  }

  static root(document: ReadDocument): Entry {
    return new Entry(document, [], document.data);
  }

  get at(): Locus {
    return { document: this.document, path: this.path };
  }

  /** The entry under a key; `undefined` when the document does not have it. */
  get(key: string): Entry | undefined {
    const value = (this.value as Record<string, unknown> | null | undefined)?.[key];
    return value === undefined || value === null ? undefined : new Entry(this.document, [...this.path, key], value);
  }

  /** Keys of a map, in the author's order. */
  keys(): string[] {
    return typeof this.value === 'object' && this.value !== null && !Array.isArray(this.value)
      ? Object.keys(this.value)
      : [];
  }

  has(key: string): boolean {
    return this.get(key) !== undefined;
  }

  /** Entries of a list; none when it is absent. */
  items(key: string): Entry[] {
    const list = this.get(key);
    return Array.isArray(list?.value)
      ? list.value.map((value: unknown, i) => new Entry(this.document, [...list.path, i], value))
      : [];
  }

  /** Entries of a map with their keys, in the author's order. */
  pairs(key: string): [string, Entry][] {
    const map = this.get(key);
    if (map === undefined || typeof map.value !== 'object' || Array.isArray(map.value)) return [];
    return Object.keys(map.value as object).flatMap((name) => {
      const entry = map.get(name);
      return entry === undefined ? [] : [[name, entry] as [string, Entry]];
    });
  }

  /** A word or text. Numbers count as their text, so that an id like 12 stays usable. */
  word<T extends string = string>(key: string): Stated<T> | undefined {
    const entry = this.get(key);
    if (entry === undefined || (typeof entry.value !== 'string' && typeof entry.value !== 'number')) return undefined;
    return { value: String(entry.value) as T, at: entry.at };
  }

  /** A word or a list of words. */
  words<T extends string = string>(key: string): Stated<T>[] {
    const single = this.word<T>(key);
    if (single !== undefined) return [single];
    return this.items(key).flatMap((e) =>
      typeof e.value === 'string' || typeof e.value === 'number' ? [{ value: String(e.value) as T, at: e.at }] : [],
    );
  }

  truth(key: string): Stated<boolean> | undefined {
    const entry = this.get(key);
    return typeof entry?.value === 'boolean' ? { value: entry.value, at: entry.at } : undefined;
  }

  count(key: string): Stated<number> | undefined {
    const entry = this.get(key);
    return typeof entry?.value === 'number' ? { value: entry.value, at: entry.at } : undefined;
  }

  /** A quantity in the base unit of its dimension. */
  quantity(key: string, dimension: Dimension): Measured | undefined {
    const entry = this.get(key);
    if (entry === undefined || (typeof entry.value !== 'string' && typeof entry.value !== 'number')) return undefined;
    const quantity = parseQuantity(String(entry.value), dimension);
    return isProblem(quantity) ? undefined : { ...quantity, at: entry.at };
  }

  length(key: string): Measured | undefined {
    return this.quantity(key, 'length');
  }

  /** A thickness in mm: a length, or for films and sheets one in mils or micrometers. */
  thickness(key: string): Measured | undefined {
    const length = this.length(key);
    const film = length === undefined ? this.quantity(key, 'film') : undefined;
    if (film === undefined) return length;
    const { value, upper } = film;
    return {
      ...film,
      dimension: 'length',
      value: value / 1000,
      ...(upper === undefined ? {} : { upper: upper / 1000 }),
    };
  }
}

/**
 * Takes fields that may be `undefined` for optional ones. They stay there as `undefined`: readers compare with it, and
 * leaving them out would cost more than building the wall does.
 */
export function given<T extends object>(fields: { [K in keyof T]: T[K] | undefined }): T {
  return fields as T;
}
