/** Where something stands, as it is printed: the only door of this room to offsets, lines and columns. */
import { spanOfLocus } from '../reading/locus.js';
import type { Result } from '../engine/result.js';
import { lineColumn } from '../reading/source.js';
import type { Locus, SourceFile, Span } from '../reading/types.js';
import { visible } from './escape.js';

/** Lines and columns from 1, columns in UTF-16 code units, end exclusive. */
export interface Place {
  readonly uri: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** The place of a span in a file. */
export function placeInFile(file: SourceFile, span: Span): Place {
  const start = lineColumn(file, span.start);
  const end = lineColumn(file, Math.max(span.start, span.end));
  return { uri: file.uri, line: start.line, column: start.column, endLine: end.line, endColumn: end.column };
}

/** The place a result points at. */
export function placeOfResult(result: Result): Place {
  return placeInFile(result.file, result.span);
}

/** The place of a locus in its document. */
export function placeOfLocus(locus: Locus): Place {
  return placeInFile(locus.document.file, spanOfLocus(locus));
}

/** `walls/w-3.yaml:24:41`, safe for a terminal. */
export function placeText(place: Place): string {
  return `${visible(place.uri)}:${String(place.line)}:${String(place.column)}`;
}

/**
 * The path of an entry in words that outlive renumbering: `W-3/work/pan/ontoWall`. Entries of a list are named by
 * their `id`; those without one by their number, from 0.
 */
export function logicalPath(locus: Locus): string {
  const names = [locus.document.id];
  let at: unknown = locus.document.data;
  for (const step of locus.path) {
    at = typeof at === 'object' && at !== null ? (at as Readonly<Record<string, unknown>>)[String(step)] : undefined;
    const id =
      typeof step === 'number' && typeof at === 'object' && at !== null ? (at as { id?: unknown }).id : undefined;
    names.push(typeof id === 'string' ? id : String(step));
  }
  return names.join('/');
}
