/** Rows of tables: cells divided by strokes, by tabs, by wide gaps or by dot leaders. */
import type { Span } from '../reading/types.js';

/** A cell's stretch of the source. */
export type Cell = Span;

const PIPE_ROW = /^\s*\|.*\|\s*$/;
const PIPE_RULE = /^\s*\|?(?:\s*:?-{2,}:?\s*\|)+(?:\s*:?-{2,}:?\s*)?\|?\s*$/;
const TEXT_RULE = /^\s*(?:[-=_]{3,}|\+[-=+]+\+)(?:\s+[-=_]{3,})*\s*$/;
/** Two spaces end a sentence in many sections, so a gap is at least three. */
const GAP = /\t+\s*|\s{3,}|\s*\.{4,}\s*|(?:\s\.){3,}\s*/g;

/** Whether a line only draws a rule between rows. */
export function isRule(text: string): boolean {
  return PIPE_RULE.test(text) || TEXT_RULE.test(text);
}

/** Whether a line is a row whose cells stand between strokes. */
export function isPipeRow(text: string): boolean {
  return PIPE_ROW.test(text) && !PIPE_RULE.test(text);
}

function trimmed(text: string, from: number, to: number, start: number): Cell {
  let first = from;
  let last = to;
  while (first < last && /\s/.test(text[first] ?? '')) first++;
  while (last > first && /\s/.test(text[last - 1] ?? '')) last--;
  return { start: start + first, end: start + last };
}

/**
 * The cells of a row.
 *
 * @param text the line from `from` on
 * @param start offset of the line in the source
 * @returns one cell when the line is no row
 */
export function cellsOf(text: string, from: number, start: number): readonly Cell[] {
  if (isPipeRow(text.slice(from))) {
    const cells: Cell[] = [];
    let cell = text.indexOf('|', from) + 1;
    for (let at = cell; at < text.length; at++) {
      if (text[at] !== '|' || text[at - 1] === '\\') continue;
      cells.push(trimmed(text, cell, at, start));
      cell = at + 1;
    }
    return cells;
  }
  const cells: Cell[] = [];
  let cell = from;
  for (const gap of text.slice(from).matchAll(GAP)) {
    const at = from + gap.index;
    if (at <= cell || at + gap[0].length >= text.length) continue;
    cells.push(trimmed(text, cell, at, start));
    cell = at + gap[0].length;
  }
  cells.push(trimmed(text, cell, text.length, start));
  return cells;
}

/**
 * The cells of a row under a head of plain text, each in the column above it; an empty cell where nothing stands.
 *
 * @param starts columns at which the cells of the head begin
 */
export function alignedCells(text: string, start: number, starts: readonly number[]): readonly Cell[] | undefined {
  const cuts = starts.slice(1);
  // Every cut has to fall on white space, else the line does not follow the columns.
  if (text.includes('\t') || cuts.some((at) => at < text.length && /\S/.test(text[at - 1] ?? ' '))) return undefined;
  return starts.map((from, at) =>
    trimmed(
      text,
      Math.min(at === 0 ? 0 : from, text.length),
      Math.min(starts[at + 1] ?? text.length, text.length),
      start,
    ),
  );
}

const HEAD =
  /^(?:physical |performance |material |test )?(?:propert(?:y|ies)|characteristics?|tests?|(?:test )?methods?|standards?|values?|typical values?|requirements?|criteria|criterion|(?:min|max)(?:imum|\.)?|limits?|results?|units?|item|description|acceptance|performance|metric|si|us|english|inch-pound)\b/i;

/** Whether the cells are the head of a table: the words that heads have, and no values. */
export function isHead(cells: readonly string[]): boolean {
  return (
    cells.length > 1 && cells.filter((cell) => HEAD.test(cell)).length >= 2 && !cells.some((cell) => /\d/.test(cell))
  );
}

/** What a column holds, from the words of its head. */
export type Column = 'label' | 'method' | 'unit' | 'value' | 'other';

/** What each column holds; without a head, the first cell is the label and every other is read for what it has. */
export function columnsOf(head: readonly string[] | undefined, count: number): readonly Column[] {
  if (head === undefined) return Array.from({ length: count }, (_, at) => (at === 0 ? 'label' : 'value'));
  const columns = head.map((cell): Column => {
    if (/\b(?:propert|characteristic|description|item)/i.test(cell)) return 'label';
    if (/\b(?:method|standard)/i.test(cell)) return 'method';
    if (/^units?\b/i.test(cell)) return 'unit';
    if (
      /\b(?:value|requirement|criteri|limit|result|min|max|metric|si|us|english|inch-pound|acceptance|performance)/i.test(
        cell,
      )
    )
      return 'value';
    return /^tests?\b/i.test(cell) ? 'label' : 'other';
  });
  if (!columns.includes('label')) columns[0] = 'label';
  // "Test" beside "Property" names the method.
  let seen = false;
  return columns.map((column) => {
    if (column !== 'label') return column;
    if (seen) return 'method';
    seen = true;
    return column;
  });
}
