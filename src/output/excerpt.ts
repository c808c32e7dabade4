/** The line of a document that a result points at, cut to fit, with a pointer under the words that are meant. */
import type { SourceFile, Span } from '../reading/types.js';
import { visible } from './escape.js';
import { textWidth } from './text-width.js';

export interface Excerpt {
  readonly text: string;
  /** Spaces and `^`, at least one, standing under the region. */
  readonly pointer: string;
}

// A file of one endless line must not be read from end to end for each finding in it.
const REACH = 400;
const CUT = '...';

/**
 * @param file the file as read
 * @param span region in UTF-16 code units; of a region over several lines, the first line is shown
 * @param cells room for one line, at least 20
 */
export function excerpt(file: SourceFile, span: Span, cells: number): Excerpt {
  const around = file.text.slice(Math.max(0, span.start - REACH), span.start);
  const before = around.slice(Math.max(around.lastIndexOf('\n'), around.lastIndexOf('\r')) + 1);
  const after = (/^[^\r\n]*/.exec(file.text.slice(span.start, span.start + REACH)) ?? [''])[0];
  const cutAhead = before.length === REACH;
  const cutBehind = after.length === REACH;

  const indent = cutAhead ? 0 : (/^[ \t]*/.exec(before) ?? [''])[0].length;
  const lead = toCells(before.slice(indent));
  const region = toCells(after.slice(0, Math.max(0, span.end - span.start)));
  const tail = toCells(after.slice(Math.max(0, span.end - span.start)));

  const total = lead.length + region.length + tail.length;
  const dropAhead = cutAhead || total > cells ? ahead(lead.length, region.length, cells) : 0;
  const head = cutAhead || dropAhead > 0 ? CUT : '';
  const shown = [...lead.slice(dropAhead), ...region, ...tail];
  const room = cells - head.length;
  const cut = cutBehind || shown.length > room;
  const body = cut ? shown.slice(0, room - CUT.length).join('') + CUT : shown.join('');
  const offset = head.length + lead.length - dropAhead;
  const width = Math.max(1, Math.min(region.length, cells - offset - (cut ? CUT.length : 0)));
  return { text: (head + body).trimEnd(), pointer: ' '.repeat(offset) + '^'.repeat(width) };
}

/** How many cells to leave out before the region: the region whole if it can be, then as much lead as fits. */
function ahead(lead: number, region: number, cells: number): number {
  const room = cells - 2 * CUT.length;
  const wanted = lead + Math.min(region, room) - room;
  return Math.max(0, Math.min(lead, wanted));
}

/** One entry for each cell; a wide character is followed by an empty one, so that counting is measuring. */
function toCells(text: string): string[] {
  const cells: string[] = [];
  for (const character of text) {
    const shown = character === '\t' ? '  ' : visible(character);
    if (shown !== character) {
      // A tab or a character spelled out: plain ASCII, one cell each.
      cells.push(...Array.from(shown));
      continue;
    }
    const width = textWidth(shown);
    const last = cells.pop();
    if (width === 0 && last !== undefined) cells.push(last + shown);
    else cells.push(...(last === undefined ? [] : [last]), shown, ...(width === 2 ? [''] : []));
  }
  return cells;
}
