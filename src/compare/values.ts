/** Plain data of documents: records, lists and scalars, flattened, compared and written in a few words. */
import type { ReadDocument } from '../reading/types.js';
import type { Position, Written } from './types.js';
import { lineColumn } from '../reading/source.js';
import { dice } from './similarity.js';

export type PlainRecord = Readonly<Record<string, unknown>>;

/** An object that is no list. */
export function isRecord(value: unknown): value is PlainRecord {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** A value without parts: text, number, yes or no, nothing. */
export function isScalar(value: unknown): boolean {
  return typeof value !== 'object' || value === null;
}

/** The `id` of an entry, when it has one. */
export function idOf(value: unknown): string | undefined {
  const id = isRecord(value) ? value['id'] : undefined;
  return typeof id === 'string' || typeof id === 'number' ? String(id) : undefined;
}

/** A scalar as it counts: white space and the difference between `2` and `"2"` do not. */
export function scalarText(value: unknown): string {
  return String(value).replace(/\s+/g, ' ').trim();
}

interface Leaves {
  readonly keys: readonly string[];
  readonly leaves: readonly string[];
}

/**
 * Leaves with their keys. Numbers of list items are left out, so that order does not count.
 *
 * @param without keys of the top level to leave out
 */
function leavesOf(value: unknown, without: ReadonlySet<string>): Leaves {
  const keys: string[] = [];
  const leaves: string[] = [];
  const walk = (at: unknown, path: string): void => {
    if (Array.isArray(at)) for (const item of at) walk(item, `${path}/*`);
    else if (isRecord(at)) {
      for (const [key, item] of Object.entries(at)) if (path !== '' || !without.has(key)) walk(item, `${path}/${key}`);
    } else {
      keys.push(path);
      leaves.push(`${path}=${scalarText(at)}`);
    }
  };
  walk(value, '');
  return { keys, leaves };
}

const ID: ReadonlySet<string> = new Set(['id']);
const known = new WeakMap<object, Leaves>();

/** Leaves without the id; each value is asked for them as often as there are others to compare it with. */
function ownLeaves(value: unknown): Leaves {
  if (typeof value !== 'object' || value === null) return leavesOf(value, ID);
  const found = known.get(value) ?? leavesOf(value, ID);
  known.set(value, found);
  return found;
}

/** What an entry says, its id aside, as one text: the same for two entries that differ in nothing but order. */
export function sayingOf(value: unknown): string {
  return [...ownLeaves(value).leaves].sort().join('\n');
}

/** How alike two entries are by what they say, their ids aside: half for the same fields, half for the same values. */
export function alikeness(a: unknown, b: unknown): number {
  const one = ownLeaves(a);
  const other = ownLeaves(b);
  return (dice(one.keys, other.keys) + dice(one.leaves, other.leaves)) / 2;
}

const MOST_LETTERS = 90;

/** A value in a few words: `{ place: sill, ontoWall: 6 in }`, cut where it grows long. */
export function inWords(value: unknown): string {
  const text = whole(value);
  return text.length <= MOST_LETTERS ? text : `${text.slice(0, MOST_LETTERS - 3).replace(/[\ud800-\udbff]$/, '')}...`;
}

function whole(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(whole).join(', ')}]`;
  if (!isRecord(value)) return scalarText(value);
  return `{ ${Object.entries(value)
    .map(([key, item]) => `${key}: ${whole(item)}`)
    .join(', ')} }`;
}

/** Ids and keys instead of list positions, on the way to a value of a document. */
export function stepsOf(document: ReadDocument, path: readonly (string | number)[]): string[] {
  return named(document, path, (entry) => idOf(entry) ?? requirementName(entry));
}

/** `W-3/work/pan/ontoWall`, as the logical location in a SARIF file has it; entries without an id by their number. */
export function pathOf(document: ReadDocument, path: readonly (string | number)[]): string {
  return [document.id, ...named(document, path, idOf)].join('/');
}

function named(
  document: ReadDocument,
  path: readonly (string | number)[],
  nameOf: (entry: unknown) => string | undefined,
): string[] {
  let at: unknown = document.data;
  return path.map((step) => {
    at = typeof at === 'object' && at !== null ? (at as Readonly<Record<string, unknown>>)[String(step)] : undefined;
    return typeof step === 'number' ? (nameOf(at) ?? String(step)) : step;
  });
}

/** Requirements have no ids; people call them by paragraph and property. */
function requirementName(entry: unknown): string | undefined {
  if (!isRecord(entry)) return undefined;
  const { paragraph, property } = entry;
  return typeof paragraph === 'string' && typeof property === 'string' ? `${paragraph} ${property}` : undefined;
}

export function positionAt(document: ReadDocument, offset: number): Position {
  return { uri: document.file.uri, ...lineColumn(document.file, offset) };
}

/** One side of a change. */
export function written(document: ReadDocument, path: readonly (string | number)[], text: string): Written {
  const { start } = document.spanOf(path);
  return { text, document, steps: stepsOf(document, path), position: positionAt(document, start) };
}
