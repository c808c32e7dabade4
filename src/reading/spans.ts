/**
 * Where each entry of a document stands, as a table of numbers.
 *
 * The table replaces the syntax tree once a document is read: six numbers an entry instead of a few hundred
 * bytes, so that a library of thousands of details stays small, and it can be handed to a worker.
 * Entries stand in the order of the text, parents before their children.
 */
import { visibleSpan } from './offsets.js';
import type { Part, Path, PathStep, Span } from './types.js';

/** What an entry's value is. */
export const SCALAR = 0;
export const MAP = 1;
export const LIST = 2;
type Shape = typeof SCALAR | typeof MAP | typeof LIST;

const KEY_START = 0;
const KEY_END = 1;
const VALUE_START = 2;
const VALUE_END = 3;
const NEXT = 4; // row after the last descendant
const SHAPE = 5;
const WIDTH = 6;
const NOWHERE = -1;

/** Collects the rows while a document is walked. */
export class SpanRows {
  readonly #numbers: number[] = [];
  readonly #keys: PathStep[] = [];

  /** Begins an entry; its children follow before `close`. Key offsets are -1 for list items and for the root. */
  open(key: PathStep, keyStart: number, keyEnd: number, shape: Shape, valueStart: number): number {
    this.#numbers.push(keyStart, keyEnd, valueStart, valueStart, 0, shape);
    return this.#keys.push(key) - 1;
  }

  /** Ends an entry: all rows since `open` are its descendants. */
  close(row: number, valueEnd: number): void {
    this.#numbers[row * WIDTH + VALUE_END] = valueEnd;
    this.#numbers[row * WIDTH + NEXT] = this.#keys.length;
  }

  get count(): number {
    return this.#keys.length;
  }

  table(text: string): SpanTable {
    return new SpanTable(text, Int32Array.from(this.#numbers), this.#keys);
  }
}

/** Answers where an entry of one document stands; offsets count in the text the document was read from. */
export class SpanTable {
  constructor(
    private readonly text: string,
    private readonly numbers: Int32Array,
    private readonly keys: readonly PathStep[],
  ) {}

  /**
   * The place of an entry.
   *
   * - Part `value` of a scalar: the scalar as written, quotes included, a block scalar from its `|` or `>` to
   *   the end of its last line. An empty value has no place of its own: its key stands in, or the `-`.
   * - Part `value` of a map or a list: a short place to point at. That is its key; for an item of a list the
   *   item's `id` entry, else its first entry.
   * - Part `key`: the key as written, quotes included. Items of a list have none: as `value`.
   * - Part `entry`: all of `key: value`, or all of an item, however many lines it takes.
   * - The root: its `kind` entry, else its first entry, whichever part is asked for; never the whole text.
   * - A path that does not exist: the `value` of the nearest ancestor that does.
   */
  spanOf(path: Path, part: Part = 'value'): Span {
    let row = 0;
    for (const step of path) {
      const child = this.#child(row, step);
      if (child === undefined) return this.#short(row);
      row = child;
    }
    if (row === 0) return this.#short(0);
    const hasKey = this.#number(row, KEY_START) !== NOWHERE;
    if (part === 'key' && hasKey) return this.#key(row);
    if (part === 'entry') return this.#entry(row);
    return this.#number(row, SHAPE) === SCALAR ? this.#scalar(row) : this.#short(row);
  }

  #number(row: number, column: number): number {
    return this.numbers[row * WIDTH + column] ?? NOWHERE;
  }

  #child(row: number, step: PathStep): number | undefined {
    const end = this.#number(row, NEXT);
    for (let child = row + 1; child < end; child = this.#number(child, NEXT)) {
      if (this.keys[child] === step) return child;
    }
    return undefined;
  }

  #key(row: number): Span {
    return { start: this.#number(row, KEY_START), end: this.#number(row, KEY_END) };
  }

  #entry(row: number): Span {
    const { end } = this.#scalar(row);
    const keyStart = this.#number(row, KEY_START);
    return keyStart === NOWHERE
      ? { start: this.#scalar(row).start, end }
      : { start: keyStart, end: Math.max(end, this.#number(row, KEY_END)) };
  }

  #scalar(row: number): Span {
    const start = this.#number(row, VALUE_START);
    const end = this.#number(row, VALUE_END);
    if (end > start) return { start, end };
    if (this.#number(row, KEY_START) !== NOWHERE) return this.#key(row);
    return this.text[start - 1] === '-' ? { start: start - 1, end: start } : { start, end };
  }

  #short(row: number): Span {
    if (row !== 0 && this.#number(row, KEY_START) !== NOWHERE) return this.#key(row);
    const isMap = this.#number(row, SHAPE) === MAP;
    const named = isMap ? this.#child(row, row === 0 ? 'kind' : 'id') : undefined;
    const first = named ?? (this.#number(row, NEXT) > row + 1 ? row + 1 : undefined);
    if (first === undefined) {
      const { start, end } = this.#scalar(row);
      return row === 0 ? visibleSpan(this.text, start, end) : { start, end };
    }
    // A first entry that is itself a map or a list is pointed at by its own short place.
    return this.#number(first, SHAPE) === SCALAR ? this.#entry(first) : this.#short(first);
  }
}
