/** What a line of a section is: the heading of a part or an article, a bullet, a title without a number. */
import type { Span } from '../reading/types.js';
import type { Line } from './lines.js';
import { markerAt } from './markers.js';

export const PART = /^\s*\[?PART\s+(\d+|[IVX]+|ONE|TWO|THREE)\b[\s.:-]*(.*)$/i;
export const PART_NUMBERS: Readonly<Record<string, string>> = {
  I: '1',
  II: '2',
  III: '3',
  ONE: '1',
  TWO: '2',
  THREE: '3',
};
export const SECTION = /^\s*(?:document|section)\s+(\d\d ?\d\d ?\d\d(?:\.\d\d)?)(?:\s+\d\d)?\b[\s.:-]*(.*)$/i;
const ARTICLE = /^\s*([[\]\s]*)(\d{1,2}(?:\.\d{1,3})+)\.?(?:\s+-)?\s+(\S.*)$/;
export const BULLET = /^\s*[-*•▪◦]\s+(?=\S)/;
export const SUBMITTAL_GROUP = /^\s*SD-\d\d\b/;
export const BRACKETS = /^\s*[[\]]*\s*/;
/** A line shorter than this was not broken because it was full. */
export const FULL_LINE = 50;

/** A few words without an end, as headings are. */
export function isTitle(text: string): boolean {
  return text.length < 60 && /^[A-Z]/.test(text) && !/[.;:,\d\])%]$|:/.test(text);
}

/** A line without the white space it begins with; offsets in the source. */
export function contentOf(line: Line): Span {
  return { start: line.start + line.indent, end: line.end };
}

/** A section number in pairs of digits: `072726.13` as `07 27 26.13`. */
export function spaced(number: string): string {
  const digits = number.replaceAll(' ', '');
  return `${digits.slice(0, 2)} ${digits.slice(2, 4)} ${digits.slice(4)}`;
}

/** A short line of capitals, as headings are in many sections. */
export function isCapitals(text: string): boolean {
  const trimmed = text.trim();
  return (
    trimmed.length <= 90 &&
    /[A-Z]{3}/.test(trimmed) &&
    !/[a-z]/.test(trimmed) &&
    !/[.;:|]$/.test(trimmed) &&
    !/\s{3,}|^SD-/.test(trimmed)
  );
}

/** After a page break: the sentence before is not finished, and this line begins nothing. */
export function goesOn(before: string, { text }: Line): boolean {
  return !/[.;:]\s*$/.test(before) && /^\s*[a-z\d(]/.test(text) && markerAt(text.trim()) === undefined;
}

/** The heading of an article, or a paragraph with an article's number. */
export interface ArticleLine {
  readonly number: string;
  /** What stands behind the number. */
  readonly rest: string;
  readonly isTitle: boolean;
}

/** An article's number begins with that of its part and is followed by a title; a wrapped value is not one. */
export function articleAt(text: string, part: string | undefined): ArticleLine | undefined {
  const [, , number = '', rest = ''] = ARTICLE.exec(text) ?? [];
  const belongs = part === undefined || Number(number.split('.')[0]) === Number(part);
  if (number === '' || !belongs || !/^[A-Z[("]/.test(rest) || /^(?:Pa|L|K|C|F|CFM|PSF|PSI)\b/i.test(rest))
    return undefined;
  return { number, rest, isTitle: rest.length <= 100 && !/[.;:]\s*$/.test(rest) };
}
