/**
 * The physical lines of a section, without what is not part of its text: notes to the specifier, page headers and
 * footers, the mark at its end.
 */
import type { Span } from '../reading/types.js';

export interface Line extends Span {
  /** Without the line break. */
  readonly text: string;
  /** Number of columns before the first character. */
  readonly indent: number;
}

/** The lines to read, and those passed over. */
export interface Lines {
  readonly lines: readonly Line[];
  /** Indexes into `lines` that are no text of the section. */
  readonly skipped: ReadonlySet<number>;
  /** Indexes of page headers and footers, which may stand in the middle of a sentence. */
  readonly pageBreaks: ReadonlySet<number>;
  readonly notes: readonly Span[];
}

const RULER = /^\s*\*{8,}\s*$/;
const NOTE =
  /^[\s[<(*]*(?:(?:specifier|editor|designer|transcription|drafting)'?s?'?\s+notes?\b|notes?\s+to\s+(?:the\s+)?(?:specifier|designer|editor)\b)/i;
const NOTE_IN_BOX = /^\s*(?:NOTES?\b|SPECIFIER)/i;
const END = /^[\s\-*]*end\s+of\s+(?:the\s+)?section\b/i;
const PART = /^\s*PART\s+(?:\d|[IVX]+\b|ONE|TWO|THREE)/i;
const PAGE = /\bpage\s+\d+(?:\s+of\s+\d+)?\b|^\s*(?:section\s+)?\d\d ?\d\d ?\d\d(?:\.\d+)?\s*[-/]\s*\d{1,3}\s*$/i;
/** A header is short; a sentence that speaks of a page is not one. */
const HEADER_LENGTH = 100;
const REPEATS = 3;

/** Splits a text into lines and says which are passed over. */
export function linesOf(text: string): Lines {
  const lines: Line[] = [];
  for (let start = 0; start <= text.length;) {
    const next = text.indexOf('\n', start);
    const stop = next === -1 ? text.length : next;
    const end = text[stop - 1] === '\r' && stop > start ? stop - 1 : stop;
    const content = text.slice(start, end);
    lines.push({ text: content, start, end, indent: content.search(/\S|$/) });
    if (next === -1) break;
    start = next + 1;
  }
  const skipped = new Set<number>();
  const notes = specifierNotes(lines, skipped);
  const pageBreaks = pageHeaders(lines);
  for (const at of pageBreaks) skipped.add(at);
  lines.forEach((line, at) => {
    if (END.test(line.text) && line.text.length < HEADER_LENGTH) skipped.add(at);
  });
  return { lines, skipped, pageBreaks, notes };
}

/** Boxes of asterisks whose first line says that they are a note, and paragraphs that say so themselves. */
function specifierNotes(lines: readonly Line[], skipped: Set<number>): Span[] {
  const notes: Span[] = [];
  const leaveOut = (from: number, to: number): void => {
    for (let at = from; at <= to; at++) skipped.add(at);
    notes.push({ start: lines[from]?.start ?? 0, end: lines[to]?.end ?? 0 });
  };
  for (let at = 0; at < lines.length; at++) {
    const text = lines[at]?.text ?? '';
    if (RULER.test(text)) {
      const first = lines.slice(at + 1, at + 4).find((line) => line.text.trim() !== '');
      const close = closing(lines, at);
      if (first !== undefined && close !== undefined && NOTE_IN_BOX.test(first.text)) {
        leaveOut(at, close);
        at = close;
      } else skipped.add(at);
    } else if (NOTE.test(text)) {
      let last = at;
      while ((lines[last + 1]?.text ?? '').trim() !== '') last++;
      leaveOut(at, last);
      at = last;
    }
  }
  return notes;
}

/** The ruler that closes the box opened at `at`; a box never runs into another part. */
function closing(lines: readonly Line[], at: number): number | undefined {
  for (let i = at + 1; i < lines.length; i++) {
    const text = lines[i]?.text ?? '';
    if (RULER.test(text)) return i;
    if (PART.test(text)) return undefined;
  }
  return undefined;
}

/** Lines with a page number, and short lines that come back with other numbers beside one. */
function pageHeaders(lines: readonly Line[]): Set<number> {
  const found = new Set<number>();
  const byShape = new Map<string, number[]>();
  lines.forEach(({ text }, at) => {
    const trimmed = text.trim();
    if (trimmed === '' || trimmed.length > HEADER_LENGTH) return;
    if (trimmed.replaceAll('\f', '') === '') return;
    if (PAGE.test(trimmed) && !/[.;:]$/.test(trimmed)) found.add(at);
    const shape = trimmed.replace(/\d+/g, '#');
    const same = byShape.get(shape);
    if (same === undefined) byShape.set(shape, [at]);
    else same.push(at);
  });
  for (const same of byShape.values()) {
    if (same.length < REPEATS) continue;
    if (same.every((at) => touches(lines, found, at))) for (const at of same) found.add(at);
  }
  return found;
}

/** Whether a line stands at a form feed or, blank lines aside, beside a page number. */
function touches(lines: readonly Line[], found: ReadonlySet<number>, at: number): boolean {
  if (found.has(at) || (lines[at]?.text ?? '').includes('\f')) return true;
  for (const step of [-1, 1]) {
    let beside = at + step;
    while (beside >= 0 && beside < lines.length && Math.abs(beside - at) < 4) {
      const text = lines[beside]?.text ?? '';
      if (found.has(beside) || text.includes('\f')) return true;
      if (text.trim() !== '') break;
      beside += step;
    }
  }
  return false;
}
