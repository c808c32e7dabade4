/** How messages show what an author wrote and what the schema has to say about it. */
import { quoted } from '../quantity/problems.js';
import type { SchemaNode } from './schema-causes.js';
import type { Path } from './types.js';

/** What stands in the document, in words. */
export function found(value: unknown): string {
  if (typeof value === 'string') return value === '' ? 'an empty text' : quoted(value);
  if (typeof value === 'number') return `the number ${value}`;
  if (typeof value === 'boolean') return String(value);
  if (Array.isArray(value)) return 'a list';
  return value === null || value === undefined ? 'nothing' : 'a map of fields';
}

/** `a`, `a or b`, `a, b or c`. */
export function listed(words: readonly string[], last: 'or' | 'and' = 'or'): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}

/** The name of a field with what it is called in the trade: `"ontoWall" (extension onto wall)`. */
export function named(path: Path, node: SchemaNode): string {
  const last = path.at(-1);
  if (last === undefined) return 'The document';
  const key = path.findLast((step) => typeof step === 'string') ?? '';
  const entry = typeof last === 'number' ? `, entry ${last + 1}` : '';
  const title = node.title === undefined || node.title === key || entry !== '' ? '' : ` (${node.title})`;
  return `${quoted(key)}${entry}${title}`;
}

/** `here (rough opening)`, or `here` where the schema has no name for the place. */
export function here(node: SchemaNode): string {
  return node.title === undefined ? 'here' : `here (${node.title})`;
}

/** The first sentence of a description, as the continuation of a sentence. */
export function clause(description: string): string {
  const first = description.split(/\.(?:\s|$)/, 1)[0] ?? '';
  // Abbreviations and letters that stand for something keep their capitals.
  return /^[A-Z][a-z]|^A /.test(first) ? first.charAt(0).toLowerCase() + first.slice(1) : first;
}

/** A value as one would write it on one line of YAML. */
export function written(value: unknown): string {
  if (typeof value === 'string') {
    const plain = /^[A-Za-z0-9][A-Za-z0-9 ./-]*(?: %)?$/.test(value) && Number.isNaN(Number(value));
    return plain ? value : JSON.stringify(value);
  }
  if (Array.isArray(value)) return `[${value.map(written).join(', ')}]`;
  if (typeof value === 'object' && value !== null) {
    return `{ ${Object.entries(value)
      .map(([key, inner]) => `${written(key)}: ${written(inner)}`)
      .join(', ')} }`;
  }
  return String(value);
}

/** The first example of the schema on one line, when it is short enough to help. */
export function example(node: SchemaNode): string | undefined {
  const text = node.examples === undefined ? undefined : written(node.examples[0]);
  return text === undefined || text.length > 80 ? undefined : text;
}
