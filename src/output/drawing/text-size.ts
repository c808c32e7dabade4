/** How much room text takes on paper, in whatever plain sans-serif font the reader's machine has. */

/** The font that every drawing asks for: no particular one. */
export const FONT = 'sans-serif';

/**
 * Widths of the characters U+0020 to U+007E in hundredths of the font size: for each character the greater one of two
 * common sans-serif fonts, one narrow and one wide, rounded up (measured). A reader's font is hardly ever wider.
 */
const WIDTHS = [
  32, 41, 46, 84, 64, 96, 78, 28, 40, 40, 50, 84, 32, 37, 32, 34, 64, 64, 64, 64, 64, 64, 64, 64, 64, 64, 34, 34, 84,
  84, 84, 56, 102, 69, 69, 73, 78, 67, 62, 78, 76, 30, 50, 67, 56, 87, 75, 79, 67, 79, 73, 67, 64, 74, 69, 99, 69, 67,
  69, 40, 34, 40, 84, 56, 50, 62, 64, 55, 64, 62, 36, 64, 64, 28, 28, 58, 28, 98, 64, 62, 64, 64, 42, 53, 40, 64, 60,
  82, 60, 60, 53, 64, 34, 64, 84,
];
/** Any other character: as wide as the font is high, which covers ideographs. */
const OTHER = 105;
/** Bold letters of the same fonts are at most this much wider. */
const BOLD = 1.27;

export interface TextStyle {
  readonly bold?: boolean;
}

/**
 * Width of text on paper, never less than what a common font needs.
 *
 * @param size font size, mm
 * @returns mm
 */
export function textWidthMm(text: string, size: number, style: TextStyle = {}): number {
  let hundredths = 0;
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0;
    hundredths += WIDTHS[code - 32] ?? OTHER;
  }
  return (hundredths / 100) * size * (style.bold === true ? BOLD : 1);
}

/**
 * Breaks text at spaces into lines that fit a width. A word that is wider than a line is cut, never lost.
 *
 * @param most greatest number of lines; what does not fit ends in `...`
 */
export function wrapMm(text: string, widthMm: number, size: number, most = Infinity): string[] {
  const lines: string[] = [];
  let line = '';
  const fits = (candidate: string): boolean => textWidthMm(candidate, size) <= widthMm;
  for (const word of text.split(' ').filter((w) => w !== '')) {
    if (line !== '' && fits(`${line} ${word}`)) {
      line = `${line} ${word}`;
      continue;
    }
    if (line !== '') lines.push(line);
    let rest = word;
    while (!fits(rest)) {
      let head = '';
      for (const next of rest) {
        // At least one character goes on each line, however narrow the line.
        if (head !== '' && !fits(head + next)) break;
        head += next;
      }
      lines.push(head);
      rest = rest.slice(head.length);
      if (rest === '') break;
    }
    line = rest;
  }
  if (line !== '' || lines.length === 0) lines.push(line);
  if (lines.length <= most) return lines;
  let last = lines[most - 1] ?? '';
  while (last !== '' && !fits(`${last} ...`)) last = last.slice(0, -1).trimEnd();
  return [...lines.slice(0, most - 1), `${last} ...`];
}
