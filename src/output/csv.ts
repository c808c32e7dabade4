/** Comma-separated values that a spreadsheet opens as text and numbers, never as formulas. */
import { oneLine } from './escape.js';

/** A cell that begins like this is computed by spreadsheets. */
const FORMULA = /^[=+\-@\t\r]/;
const NUMBER = /^-?\d+(\.\d+)?$/;

function cell(value: string | number): string {
  const text = typeof value === 'number' ? String(value) : oneLine(value);
  // A leading apostrophe is shown by none and obeyed by all: the rest is text.
  const safe = FORMULA.test(text) && !NUMBER.test(text) ? `'${text}` : text;
  return /[",\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/**
 * @param rows the first one is the head
 * @see RFC 4180
 */
export function csv(rows: readonly (readonly (string | number)[])[]): string {
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}
