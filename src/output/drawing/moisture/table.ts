/** Tables of numbers: on the sheet in columns, and as data for a page that writes them out for readers who hear it. */
import { INNER } from '../page.js';
import { LINE_HEIGHT, SIZE, type Sheet } from '../sheet.js';
import { line } from '../svg.js';
import { textWidthMm, wrapMm } from '../text-size.js';

export interface NumberTable {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** What the drawing assumes and leaves out, a sentence each. */
  readonly notes?: readonly string[];
}

export interface ColumnPlace {
  /** Left edge, or right edge of a column of numbers, mm. */
  readonly x: number;
  readonly anchor: 'start' | 'end';
  /** Room for wrapped text, mm. */
  readonly width: number;
}

const row = SIZE.small * LINE_HEIGHT;

/**
 * Draws a table with its head in bold.
 *
 * @param y baseline of the first line of its head
 */
export function drawTable(sheet: Sheet, table: NumberTable, columns: readonly ColumnPlace[], y: number): void {
  const write = (cells: readonly string[], top: number, bold: boolean): number => {
    const size = SIZE.small;
    const wrapped = cells.map((cell, i) => {
      const width = columns[i]?.width ?? 0;
      // Bold letters are wider than the ones lines are broken by.
      return wrapMm(cell, bold ? width / 1.27 : width, size, 3);
    });
    wrapped.forEach((lines, i) => {
      const column = columns[i];
      if (column === undefined) return;
      lines.forEach((text, k) => {
        if (text !== '') sheet.text([column.x, top + k * row], text, { size, anchor: column.anchor, bold });
      });
    });
    return top + Math.max(...wrapped.map((lines) => lines.length)) * row;
  };
  let at = write(table.head, y, true);
  sheet.add('light', line([INNER.x0, at - row + 0.9], [INNER.x1, at - row + 0.9]));
  at += 0.9;
  for (const cells of table.rows) at = write(cells, at, false);
  sheet.reserve({ x0: INNER.x0, y0: at - row, x1: INNER.x1, y1: at - row + 1 });
}

/** Width of the widest of some texts in small print, mm. */
export function widestMm(texts: readonly string[]): number {
  return Math.max(0, ...texts.map((t) => textWidthMm(t, SIZE.small)));
}

/** 7 points on paper: what is assumed has to be read by whoever relies on the drawing. */
const NOTE_MM = 2.5;
const INDENT_MM = 3;

/** Notes under a heading, one below the other. */
export function drawSmallPrint(sheet: Sheet, top: number, notes: readonly string[]): void {
  let y = top;
  for (const note of notes) {
    sheet.text([INNER.x0, y], '-', { size: NOTE_MM });
    for (const text of wrapMm(note, INNER.x1 - INNER.x0 - INDENT_MM, NOTE_MM)) {
      sheet.text([INNER.x0 + INDENT_MM, y], text, { size: NOTE_MM });
      y += NOTE_MM * LINE_HEIGHT;
    }
    y += 0.4;
  }
}
