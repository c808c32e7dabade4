/** Comma-separated values that a spreadsheet opens as text and numbers, never as formulas. */
import { oneLine } from './escape.js';

export type Cell = string | number | undefined;

/** What a spreadsheet would take for a formula; it then stands behind an apostrophe. */
const FORMULA = /^[=+\-@\uff1d\uff0b\uff0d\uff20]/;

/** One field: a text that a spreadsheet would run is made plain, and quoted where it holds quotes or commas. */
export function csvField(value: Cell): string {
  if (value === undefined) return '';
  if (typeof value === 'number') return String(value);
  const line = oneLine(value);
  const plain = FORMULA.test(line) ? `'${line}` : line;
  return /[",]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}

/** Lines of fields that are written already, each ended by CR LF. @see RFC 4180 */
export function csvLines(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.join(',')}\r\n`).join('');
}

/** A number computes to itself, so its text needs no apostrophe. */
const NUMBER = /^-?\d+(\.\d+)?$/;

/** @param rows the first one is the head */
export function csv(rows: readonly (readonly (string | number)[])[]): string {
  return csvLines(rows.map((row) => row.map((cell) => (NUMBER.test(String(cell)) ? String(cell) : csvField(cell)))));
}
