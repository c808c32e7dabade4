/** How wide text stands in a terminal, and how it wraps. Free of locale. */

const WIDE =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]/u;
const COMBINING = /[\p{Mn}\p{Me}]/u;
// Printable ASCII is nearly all there is; it need not be looked at letter by letter.
const PLAIN = /^[ -~]*$/;

/** Cells that text takes in a terminal: 2 for East Asian wide characters, 0 for combining marks, else 1. */
export function textWidth(text: string): number {
  if (PLAIN.test(text)) return text.length;
  let cells = 0;
  for (const character of text) cells += WIDE.test(character) ? 2 : COMBINING.test(character) ? 0 : 1;
  return cells;
}

/** Text filled up with spaces to a number of cells; longer text is left as it is. */
export function padTo(text: string, cells: number): string {
  return text + ' '.repeat(Math.max(0, cells - textWidth(text)));
}

/**
 * Breaks text at spaces into lines of at most `cells` cells. A word longer than a line is cut, never lost.
 *
 * @param text one paragraph, already free of control characters
 * @returns at least one line
 */
export function wrap(text: string, cells: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').filter((part) => part !== '')) {
    let rest = word;
    if (line !== '' && textWidth(line) + 1 + textWidth(rest) <= cells) {
      line += ` ${rest}`;
      continue;
    }
    if (line !== '') lines.push(line);
    while (textWidth(rest) > cells) {
      const head = firstCells(rest, cells);
      lines.push(head);
      rest = rest.slice(head.length);
    }
    line = rest;
  }
  if (line !== '' || lines.length === 0) lines.push(line);
  return lines;
}

/** The longest beginning that fits, at least one character. */
export function firstCells(text: string, cells: number): string {
  let used = 0;
  let end = 0;
  for (const character of text) {
    used += textWidth(character);
    if (used > cells && end > 0) break;
    end += character.length;
  }
  return text.slice(0, end);
}
