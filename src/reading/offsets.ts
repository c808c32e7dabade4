/** Spans carried from a text that was cut out of a file back into the file, and kept short and visible. */
import type { Span } from './types.js';

/** From an offset in a text to the offset of the same character in its file. */
export type OffsetMap = (offset: number) => number;

/** The span of the same characters in the file. */
export function mapSpan(map: OffsetMap, { start, end }: Span): Span {
  return { start: map(start), end: map(end) };
}

/**
 * The first line of a stretch of text, at least one visible character. Where a stretch begins with white space, the
 * visible character behind it on the same line is meant; at the end of a line, the one before it.
 */
export function visibleSpan(text: string, start: number, end: number): Span {
  let first = Math.min(start, text.length);
  while (isBlank(text, first)) first += 1;
  if (isLineEnd(text, first)) {
    while (first > 0 && isSpace(text, first - 1)) first -= 1;
    first = Math.max(first - 1, 0);
  }
  let last = Math.min(Math.max(end, first + 1), text.length);
  const lineEnd = text.indexOf('\n', first);
  if (lineEnd > first && lineEnd < last) last = lineEnd;
  return { start: first, end: Math.max(trimmedEnd(text, first, last), Math.min(first + 1, text.length)) };
}

/** The end of the text between two offsets without the white space it ends with. */
export function trimmedEnd(text: string, start: number, end: number): number {
  let last = end;
  while (last > start && isSpace(text, last - 1)) last -= 1;
  return last;
}

/** The line an offset stands on. */
export function lineAround(text: string, offset: number): string {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  const end = text.indexOf('\n', offset);
  return text.slice(start, end === -1 ? text.length : end).trim();
}

function isBlank(text: string, offset: number): boolean {
  return text[offset] === ' ' || text[offset] === '\t';
}

function isLineEnd(text: string, offset: number): boolean {
  return offset >= text.length || text[offset] === '\n' || text[offset] === '\r';
}

function isSpace(text: string, offset: number): boolean {
  return isBlank(text, offset) || text[offset] === '\n' || text[offset] === '\r';
}
