/**
 * From bytes to text, and from an offset in the text to the line and column a person looks up.
 *
 * Everything inside counts offsets; lines and columns exist only where something is printed.
 */
import { isUtf8 } from 'node:buffer';
import type { SourceFile } from './types.js';

/** Lines and columns count from 1, columns in UTF-16 code units, as SARIF's `utf16CodeUnits` does. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

const BYTE_ORDER_MARK = 0xfeff;

/**
 * A file from its text. A byte order mark is taken off here, once, and remembered.
 *
 * @param uri relative to the library root, with `/`
 * @param text as read, with or without a byte order mark
 */
export function sourceFile(uri: string, text: string): SourceFile {
  if (text.charCodeAt(0) !== BYTE_ORDER_MARK) return { uri, text };
  return { uri, text: text.slice(1), byteOrderMark: true };
}

/**
 * The text of a file's bytes, or the reason why they are not text.
 *
 * Bytes that are not UTF-8 are refused: replaced characters would shift every position behind them.
 *
 * @param bytes content of the file
 * @returns `{ text }` (byte order mark kept), or `{ reason }`, half a sentence that follows the file's name
 */
export function decodeText(bytes: Uint8Array): { readonly text: string } | { readonly reason: string } {
  if (!isUtf8(bytes)) return { reason: 'is not UTF-8 text; save it as UTF-8' };
  if (bytes.includes(0)) return { reason: 'holds a zero byte, so it is not a text file' };
  return { text: Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('utf8') };
}

const startsOfFile = new WeakMap<SourceFile, readonly number[]>();

/**
 * Line and column of an offset.
 *
 * @param file the file the offset counts in
 * @param offset UTF-16 code units into `file.text`, from 0 up to and including its length
 * @returns counted from 1; true to the file on disk, so a byte order mark takes column 1 of line 1
 * @throws RangeError when the offset is not a whole number inside the text: a position that was clamped
 *   would send the reader to a wrong line
 * @see SARIF 2.1.0 section 3.30 (region), section 3.14.27 (columnKind)
 */
export function lineColumn(file: SourceFile, offset: number): Position {
  if (!Number.isInteger(offset) || offset < 0 || offset > file.text.length) {
    throw new RangeError(`${file.uri}: offset ${offset} is outside of the text (0 to ${file.text.length})`);
  }
  const starts = lineStarts(file);
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] ?? 0) <= offset) low = middle;
    else high = middle - 1;
  }
  const shift = low === 0 && file.byteOrderMark === true ? 1 : 0;
  return { line: low + 1, column: offset - (starts[low] ?? 0) + 1 + shift };
}

/** Offsets at which the lines of a file begin. `\n` and `\r\n` end a line; kept as long as the file is. */
function lineStarts(file: SourceFile): readonly number[] {
  const known = startsOfFile.get(file);
  if (known) return known;
  const starts = [0];
  for (let at = file.text.indexOf('\n'); at !== -1; at = file.text.indexOf('\n', at + 1)) starts.push(at + 1);
  startsOfFile.set(file, starts);
  return starts;
}
