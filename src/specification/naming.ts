/** What a value is about: a known property where the words clearly say so, else the section's own words. */
import type { Property, Subject } from '../model/measures.js';
import type { Comparator } from './comparators.js';
import { ORDERS } from './orders.js';
import { propertyOf, subjectOf } from './properties.js';
import type { Statement } from './statements.js';
import type { Value } from './values.js';

export interface Name {
  readonly property?: Property;
  /** Further properties that the words name. */
  readonly besides?: readonly Property[];
  /** The property was found in the titles above only. */
  readonly weak: boolean;
  readonly subject?: Subject;
  readonly characteristic?: string;
}

/** Words kept of a clause; more would be the sentence again. */
const MOST_WORDS = 12;
const EDGES = /^[\s,;:()[\]"·-]+|[\s,;:([\]"·-]+$/g;
const LEADING = /^(?:by|and|or|but|that|which|then|to|of|a|an|the)\s+/i;
const TRAILING =
  /\s(?:a|an|the|of|for|to|in|is|are|be|shall|must|with|at|by|not|and|or|within|between|from|than|shall be|must be)$/i;

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

/** Words of a clause that speaks of something of its own. */
const OWN_MATTER = new RegExp(
  String.raw`\b(?:${ORDERS}|width|depth|height|thickness|length|diameter|spacing|gap|bead)s?\b`,
  'i',
);
const MEASURED_BY: readonly (readonly [RegExp, string])[] = [
  [/thinner|thicker/i, 'thickness'],
  [/narrower|wider/i, 'width'],
  [/shorter|longer/i, 'length or time'],
  [/taller/i, 'height'],
  [/deeper|shallower/i, 'depth'],
  [/colder|cooler|hotter|warmer/i, 'temperature'],
  [/heavier|lighter/i, 'weight'],
  [/older|newer|younger/i, 'age'],
];

/** A value among the others of its statement. */
export interface Position {
  /** Where the words before the value end: at its comparator, or at the value. */
  readonly until: number;
  /** End of the value before, and start of the one behind. */
  readonly from: number;
  readonly to: number;
}

/**
 * The name of a value.
 *
 * @param value undefined for a result in words
 */
export function nameOf(
  statement: Statement,
  { until, from, to }: Position,
  value: Value | undefined,
  comparator: Comparator | undefined,
): Name {
  const { plain, prose, body, label, titles } = statement;
  const behindFrom = value?.end ?? until;
  // What stands right behind the value before belongs to that one: "6 inches onto the wall and 4 inches into ...".
  const start = from === 0 ? 0 : afterJoint(plain, from, until);
  const before = prose.text.slice(start, until);
  const shownValue = value === undefined ? '' : prose.text.slice(value.start, value.end);
  const behindWords = nearBehind(prose.text.slice(behindFrom, Math.max(to, behindFrom)), to < plain.length);
  const near = `${label ?? ''} ${before} ${shownValue}${behindWords} ${filmWords(value)}`;
  const title = titles.at(-1) ?? '';
  const isOneOfSeveral = from > 0 || to < plain.length;
  const own = `${label ?? ''} ${before}`;
  // "Lap 3 inches and space nails at 8 inches": the lap is not what the second value is of.
  const isApart = from > 0 && OWN_MATTER.test(before);
  const sentence = isOneOfSeveral ? `${prose.text.slice(0, from)} ${near}` : prose.text;
  const inNear = propertyOf(near, value?.kind, own);
  const inSentence = propertyOf(sentence, value?.kind, own, isApart ? from : 0);
  const strong = inNear ?? (from > 0 && !isApart ? undefined : inSentence);
  const named = strong ?? inSentence ?? (isApart ? undefined : propertyOf(`${title} ${near}`, value?.kind, own));
  const subject =
    value === undefined && label === undefined
      ? undefined
      : (subjectOf(own) ?? subjectOf(near) ?? subjectOf(prose.text) ?? subjectOf(title));
  // "Minimum thickness of aluminum 0.8 mm": the words stand behind the comparator.
  const middle =
    comparator !== undefined && value !== undefined && comparator.start >= from
      ? tidy(plain.slice(comparator.end, Math.max(comparator.end, value.start)))
      : '';
  const ahead = `${tidy(clause(plain, Math.max(body, start), until))} ${middle}`.trim();
  const behind = tidy(
    plain.slice(Math.max(behindFrom, comparator?.end ?? 0), Math.max(to, behindFrom)).split(/[.;]/)[0] ?? '',
  )
    // "No later" is of the value that follows.
    .replace(to < plain.length ? /(?:^|\s)(?:no|not|nor|never|at)(?: be)? [a-z]+$/i : /^$/, '')
    // A tolerance is said of the value beside it.
    .replace(/^with (?:a )?tolerance.*/i, '')
    .split(' ')
    .slice(0, 8)
    .join(' ');
  // A count is about what is counted.
  const counted =
    value?.kind === 'count' && comparator !== undefined && !/^(?:each|high|deep)$/i.test(value.found.unitText)
      ? [value.found.unitText]
      : [];
  // A second value without words of its own is about what stands before the first.
  const earlier = from === 0 ? '' : tidy(clause(plain, body, from));
  // What a number counts that stands alone was said before it: "5 percent of the rest, but not fewer than three".
  const isAlone = value?.found.unitText === 'each' && !/^(?:per|for|at|in|on|of)\s(?:each|every|[a-z]+$)/i.test(behind);
  const nearest = isAlone ? [ahead, earlier, behind] : [ahead, behind, earlier];
  const implied = from === 0 ? undefined : measuredBy(comparator);
  const isSaid = [...counted, ahead].some((some) => some.length > 3) || implied === undefined;
  const words = isSaid
    ? [...counted, ...nearest].find((some) => some.length > 3)
    : `${tidy(clause(plain, body, from)).replace(/\s(?:at least|at most|not? .*|[\d~].*)$/i, '')}: ${implied}`;
  const phrase =
    label === undefined ? (words ?? title) : isOneOfSeveral && words !== undefined ? `${label}: ${words}` : label;
  const isCase = comparator?.threshold === true && !phrase.toLowerCase().includes(comparator.words.toLowerCase());
  const shown = `${phrase}${isCase ? ` ${comparator.words}` : ''}${value === undefined ? '' : fromWhere(plain, value)}`;
  return {
    ...(named !== undefined && { property: named.property, besides: named.besides }),
    weak: strong === undefined,
    ...(subject?.sole === true && { subject: subject.subject }),
    ...(shown !== '' && { characteristic: shown.slice(0, 180) }),
  };
}

/** The first "and", "or" or comma behind a value, up to `until`; the value's end when there is none. */
function afterJoint(plain: string, from: number, until: number): number {
  const joint = /(?:[,;]\s|\s(?:and|or|by)\s)/i.exec(plain.slice(from, until));
  return joint === null ? from : from + joint.index + joint[0].length;
}

/**
 * The clause behind a value, which says what it reaches: "75 mm over transition membrane". Where another value follows,
 * what is joined by "and" belongs to that one.
 */
function nearBehind(text: string, isFollowed: boolean): string {
  const end = isFollowed ? /[;.](?:\s|$)|,?\s(?:and|but|then)\s|,\s(?=with\b)/i : /[;.](?:\s|$)/;
  return text.split(end)[0]?.slice(0, 120) ?? '';
}

/** From where a difference of temperature counts: without it "3 degrees C" would be the temperature itself. */
function fromWhere(plain: string, { kind, end }: Value): string {
  if (kind !== 'temperatureDifference') return '';
  const words = /^[\s)\]]*(?:or more )?((?:above|over|below) (?:the )?[a-z]+(?:[- ]point)?)/i.exec(
    plain.slice(end, end + 60),
  );
  return words?.[1] === undefined ? '' : `, ${words[1]}`;
}

/** What the words of a limit measure, where nothing else names it: "and be no thinner than". */
function measuredBy(comparator: Comparator | undefined): string | undefined {
  return MEASURED_BY.find(([words]) => words.test(comparator?.words ?? ''))?.[1];
}

function filmWords(value: Value | undefined): string {
  return value?.found.film === undefined ? '' : `${value.found.film} mils`;
}

/** A number that grades: `a rating of 8`, or `0` beside its result in words (`0, No growth`). */
export function isRating({ plain, body }: Statement, { found }: Value): boolean {
  if (found.units.length > 0 || found.unknownUnit || found.number.choices !== undefined) return false;
  if (/\b(?:rat(?:ings?|ed)|scores?)(?: (?:of|is|as|shall be|must be|at))?:?\s*$/i.test(plain.slice(0, found.start)))
    return true;
  const isFirst = body > 0 && /^[\s[(]*$/.test(plain.slice(body, found.start));
  return isFirst && /^\s*[,(:-]\s*no\b/i.test(plain.slice(found.end));
}

/** A share of the work after which something is due: `at 50 percent completion`, `when 25 percent complete`. */
export function isStage({ plain }: Statement, { found, kind, end }: Value): boolean {
  if (kind !== 'fraction') return false;
  const before = plain.slice(Math.max(0, found.start - 60), found.start);
  return (
    /^[^.;]{0,60}?\b(?:complet(?:e|ed|ion)\b|of (?:the |this )?(?:work|installation)\b|of (?:the |all )?[\w-]+ (?:are|have been) (?:set|placed|installed|in place|done)\b)/i.test(
      plain.slice(end),
    ) && /\b(?:at|when|after|upon|once)\b/i.test(before)
  );
}

/** A size that describes what stands behind it: `3/8-inch backer rod`, `90-degree corners`, `at 5, 50 and 95 percent`. */
export function isDescriptor({ plain }: Statement, value: Value): boolean {
  if (value.kind === 'slope' && value.unit?.spelling === 'deg') return true;
  if (value.kind === 'count') return /^(?:coats?|layers?|plies)$/i.test(value.found.unitText.split(' ').at(-1) ?? '');
  const behind = plain.slice(value.twin?.found.end ?? value.found.end, value.end + 40);
  // "16 inches on center" is the spacing itself.
  if (/^\s*(?:on centers?|o\.?c\b|apart)/i.test(behind)) return true;
  return (value.found.attributive || value.twin?.found.attributive === true) && /^[\s)\]]*[a-z]/i.test(behind);
}
