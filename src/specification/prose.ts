/**
 * Running text put together from the lines of a section, with the way back to the exact place of each character.
 *
 * Lines are joined, white space is single and typographic characters are plain, so that what follows can look for
 * words; the source is never changed.
 */
import type { Span } from '../reading/types.js';

/** Text on one line, and for each of its characters the offset in the source. */
export interface Prose {
  readonly text: string;
  /** As long as `text`; offsets in UTF-16 code units. */
  readonly offsets: readonly number[];
}

/** One character for each; where several are needed, all of them stand at the place of the one in the source. */
const PLAIN: Readonly<Record<string, string>> = {
  '\u00a0': ' ',
  '\u2007': ' ',
  '\u2009': ' ',
  '\u202f': ' ',
  '\u2010': '-',
  '\u2011': '-',
  '\u2012': '-',
  '\u2013': '-',
  '\u2014': '-',
  '\u2212': '-',
  '\u2018': "'",
  '\u2019': "'",
  '\u2032': "'",
  '\u201c': '"',
  '\u201d': '"',
  '\u2033': '"',
  '\u2044': '/',
  '\u2022': '·',
  '\u00bd': '1/2',
  '\u2153': '1/3',
  '\u2154': '2/3',
  '\u00bc': '1/4',
  '\u00be': '3/4',
  '\u215b': '1/8',
  '\u215c': '3/8',
  '\u215d': '5/8',
  '\u215e': '7/8',
};

/** A word that a line break divides keeps its hyphen and gets no space: `fluid-` + `applied`, `1-` + `1/2`. */
const DIVIDED = /[\p{L}\d]-$/u;

/**
 * The text of some stretches of the source, one after the other.
 *
 * @param source the whole text
 * @param stretches in their order; a space is put between two of them
 */
export function proseOf(source: string, stretches: readonly Span[]): Prose {
  // Pieces and the last two characters apart: to ask a growing string for its end copies all of it, each time.
  const pieces: string[] = [];
  const offsets: number[] = [];
  let end = '';
  const put = (characters: string, offset: number): void => {
    if (characters === ' ' && (end === '' || end.endsWith(' '))) return;
    pieces.push(characters);
    end = (end + characters).slice(-2);
    for (let i = 0; i < characters.length; i++) offsets.push(offset);
  };
  for (const stretch of stretches) {
    let start = stretch.start;
    while (start < stretch.end && /\s/.test(source[start] ?? '')) start++;
    if (!DIVIDED.test(end)) put(' ', start);
    for (let at = start; at < stretch.end; at++) {
      const character = source[at] ?? '';
      if (/\s/.test(character)) put(' ', at);
      else {
        const plain = PLAIN[character] ?? character;
        // A vulgar fraction after a digit is the second part of a mixed number.
        if (plain.length > 1 && /\d$/.test(end)) put(' ', at);
        put(plain, at);
      }
    }
    // The space before a line break is put again, or left out, at the start of the next line.
    if (end.endsWith(' ')) {
      pieces.pop();
      offsets.pop();
      end = pieces.slice(-2).join('').slice(-2);
    }
  }
  return { text: pieces.join(''), offsets };
}

/** Part of a prose. */
export function sliceProse({ text, offsets }: Prose, start: number, end: number): Prose {
  return { text: text.slice(start, end), offsets: offsets.slice(start, end) };
}

/** Where the characters from `start` to `end` (exclusive) stand in the source. */
export function sourceSpan({ offsets }: Prose, start: number, end: number): Span {
  const first = offsets[Math.min(start, offsets.length - 1)] ?? 0;
  const last = offsets[Math.min(Math.max(end - 1, start), offsets.length - 1)] ?? first;
  return { start: first, end: last + 1 };
}
