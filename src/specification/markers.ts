/**
 * The marks that number the paragraphs of a section (`A.`, `1.`, `a.`, `1)`, `a)`, `(1)`, `(a)`, `i.`), and the level
 * each one has. The level comes from the order in which the styles first appear under an article, so a section that
 * begins its articles with `a.` is read as well as one that begins with `A.`.
 */

export interface Marker {
  /** The style: what stands around and inside: `A.`, `1.`, `a.`, `i.`, `1)`, `(a)`. */
  readonly style: string;
  /** The letter or number itself. */
  readonly value: string;
  /** Length of the mark with the white space after it. */
  readonly length: number;
}

const MARKER = /^(?:\(([A-Za-z]{1,4}|\d{1,3})\)|([A-Za-z]{1,4}|\d{1,3})([.)]))(?:\s+|$)/;
const ROMAN = /^(?:i{1,3}|iv|vi{0,3}|ix|xi{0,3}|xiv|xvi{0,3})$/;

/** The mark a line begins with, if it does. */
export function markerAt(text: string): Marker | undefined {
  const found = MARKER.exec(text);
  if (found === null) return undefined;
  const value = found[1] ?? found[2] ?? '';
  const inner = /^\d/.test(value) ? '1' : /^[A-Z]/.test(value) ? 'A' : 'a';
  // Several letters are a mark only as a Roman number, or doubled after z.
  if (value.length > 1 && inner !== '1' && !ROMAN.test(value) && !/^([a-zA-Z])\1$/.test(value)) return undefined;
  const style = found[1] === undefined ? `${inner}${found[3] ?? ''}` : `(${inner})`;
  return { style, value, length: found[0].length };
}

/** Position of a value in its list: `A` and `a` are 1, `aa` is 27. */
export function ordinal(value: string): number {
  if (/^\d/.test(value)) return Number(value);
  return value.toLowerCase().charCodeAt(0) - 96 + (value.length - 1) * 26;
}

const ROMAN_ORDER = 'i ii iii iv v vi vii viii ix x xi xii xiii xiv xv xvi xvii xviii'.split(' ');

/** One level that is open: its style and the last value read on it. */
interface Level {
  readonly style: string;
  value: string;
}

/** The open levels under one article. */
export class Levels {
  #open: Level[] = [];

  /** Forgets all levels: a new article begins. */
  clear(): void {
    this.#open = [];
  }

  /**
   * The values from the article down to this marker, or undefined when the mark does not fit: inside of running
   * text, only the next of a list, or the first of a new one, is believed.
   */
  enter(marker: Marker, insideText: boolean): readonly string[] | undefined {
    const style = this.#styleOf(marker);
    const depth = this.#open.findIndex((level) => level.style === style);
    if (insideText && !this.#follows(style, marker.value, depth)) return undefined;
    if (depth === -1) this.#open.push({ style, value: marker.value });
    else {
      this.#open.length = depth + 1;
      const level = this.#open[depth];
      if (level !== undefined) level.value = marker.value;
    }
    return this.#open.map((level) => level.value);
  }

  /** `i.` is a letter after `h.`, else a Roman number where one fits. */
  #styleOf({ style, value }: Marker): string {
    if (!style.includes('a') || !ROMAN.test(value)) return style;
    const letters = this.#open.find((level) => level.style === style);
    if (value.length === 1 && letters !== undefined && ordinal(letters.value) + 1 === ordinal(value)) return style;
    const roman = style.replace('a', 'i');
    if (value === 'i' || this.#open.some((level) => level.style === roman)) return roman;
    return style;
  }

  #follows(style: string, value: string, depth: number): boolean {
    const number = style.includes('i') ? ROMAN_ORDER.indexOf(value) + 1 : ordinal(value);
    const level = this.#open[depth];
    if (level === undefined) return number === 1;
    const before = style.includes('i') ? ROMAN_ORDER.indexOf(level.value) + 1 : ordinal(level.value);
    return number === before + 1 || number === 1;
  }
}
