/** What a value is about: a known property where the words clearly say so, else the section's own words. */
import type { Property, Subject } from '../model/measures.js';
import type { Comparator } from './comparators.js';
import { propertyOf, subjectOf } from './properties.js';
import type { Statement } from './statements.js';
import type { Value } from './values.js';

export interface Name {
  readonly property?: Property;
  /** The property was found in the titles above only. */
  readonly weak: boolean;
  readonly subject?: Subject;
  readonly characteristic?: string;
}

/** Words kept of a clause; more would be the sentence again. */
const MOST_WORDS = 12;
const EDGES = /^[\s,;:()[\]"·-]+|[\s,;:([\]"·-]+$/g;
const LEADING = /^(?:and|or|but|that|which|then|to|of|a|an|the)\s+/i;
const TRAILING = /\s(?:a|an|the|of|for|to|is|are|be|shall|must|with|at|by|not|and|or|within|than|shall be|must be)$/i;

function tidy(words: string): string {
  let result = words
    .replaceAll('~', ' ')
    .replace(/\(\s*[\s,]*\)/g, ' ')
    .replace(/\s+/g, ' ')
    .replace(EDGES, '');
  for (let before = ''; before !== result;) {
    before = result;
    result = result.replace(TRAILING, '').replace(LEADING, '').replace(EDGES, '');
  }
  return result;
}

/** The words from the start of the clause up to a place, at most so many, and those behind it. */
function clause(plain: string, body: number, start: number): string {
  const stretch = plain.slice(body, Math.max(body, start));
  const from = Math.max(stretch.lastIndexOf(';') + 1, 0);
  return stretch
    .slice(from)
    .split(' ')
    .filter((word) => word !== '')
    .slice(-MOST_WORDS)
    .join(' ');
}

/**
 * The name of a value.
 *
 * @param until where the words before it end: at its comparator, or at the value
 * @param value undefined for a result in words
 */
export function nameOf(
  statement: Statement,
  until: number,
  value: Value | undefined,
  comparator: Comparator | undefined,
): Name {
  const { plain, prose, body, label, titles } = statement;
  const behindFrom = value?.end ?? until;
  const near = `${label ?? ''} ${prose.text.slice(0, until)} ${nearBehind(prose.text.slice(behindFrom))} ${filmWords(value)}`;
  const title = titles.at(-1) ?? '';
  const strong = propertyOf(near, value?.kind) ?? propertyOf(prose.text, value?.kind);
  const property = strong ?? propertyOf(`${title} ${near}`, value?.kind);
  const named = subjectOf(near) ?? subjectOf(prose.text);
  const subject = named === undefined ? subjectOf(title) : named;
  const before = tidy(clause(plain, body, until));
  const behind = tidy(plain.slice(behindFrom).split(/[.;]/)[0] ?? '')
    .split(' ')
    .slice(0, 8)
    .join(' ');
  const characteristic = label ?? (before.length > 2 ? before : behind.length > 2 ? behind : title);
  const shown = comparator?.threshold === true ? `${characteristic} ${comparator.words}` : characteristic;
  return {
    ...(property !== undefined && { property }),
    weak: strong === undefined,
    ...(subject?.sole === true && { subject: subject.subject }),
    ...(shown !== '' && { characteristic: shown.slice(0, 180) }),
  };
}

/** The clause behind a value, which says what it reaches: "75 mm over transition membrane". */
function nearBehind(text: string): string {
  return text.split(/[;.](?:\s|$)/)[0]?.slice(0, 120) ?? '';
}

function filmWords(value: Value | undefined): string {
  return value?.found.film === undefined ? '' : `${value.found.film} mils`;
}

/** A size that describes what stands behind it: `3/8-inch backer rod`, `90-degree corners`, `at 5, 50 and 95 percent`. */
export function isDescriptor({ plain }: Statement, value: Value): boolean {
  if (value.kind === 'slope' && value.unit?.spelling === 'deg') return true;
  const behind = plain.slice(value.twin?.found.end ?? value.found.end, value.end + 40);
  // "16 inches on center" is the spacing itself.
  if (/^\s*(?:on centers?|o\.?c\b|apart)/i.test(behind)) return true;
  return (value.found.attributive || value.twin?.found.attributive === true) && /^[\s)\]]*[a-z]/i.test(behind);
}
