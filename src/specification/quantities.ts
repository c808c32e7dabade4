/** Numbers with their units in a sentence: single values, ranges, lists that share a unit, choices left open. */
import { numbersIn } from './numbers.js';
import type { ReadNumber } from './numbers.js';
import { unitsNamed } from './units.js';
import type { ReadUnit, ValueKind } from './units.js';

export interface Found {
  readonly start: number;
  readonly end: number;
  readonly number: ReadNumber;
  /** The readings of the unit; empty for a bare number and for an unknown unit. */
  readonly units: readonly ReadUnit[];
  /** The unit as it stands there; for a count, what is counted. */
  readonly unitText: string;
  /** Upper end of a range, or the further numbers of a list. */
  readonly upper?: ReadNumber;
  readonly others?: readonly ReadNumber[];
  /** `4-inch`: the value describes what follows. */
  readonly attributive: boolean;
  readonly film?: 'wet' | 'dry';
  /** Something that looks like a unit but is none that is known. */
  readonly unknownUnit: boolean;
  /** Degrees of which scale is not said. */
  readonly bareDegrees: boolean;
}

/** After the bare word `in` only these make it inches. */
const AFTER_INCH =
  /^(?:$|[^\w\s]|\s*(?:[^\w\s(]|\(|\d|wide|thick|deep|long|high|tall|min\b|max\b|minimum|maximum|on|onto|by|beyond|past|above|below|from|and|or|at|per|over|into|to|x\b|diameter|nominal|square|o\.?c|apart|each|of water|below|beneath|along|around|up|down|wider|minus|one\b|two\b))/i;
const FEET_AND_INCHES =
  /^(\d+)\s*(?:'|ft\.?|feet|foot)\s*-?\s*(\d+(?:[- ]\d+\/\d+)?|\d+\/\d+)\s*(?:"|in\b\.?|inch(?:es)?\b)/i;
const R_VALUE = /\bR(?:-|-value of )(\d+(?:\.\d+)?)\b/g;
const MOST_WORDS = 8;
/** No section lists more values before their unit. */
const LONGEST_LIST = 12;

interface UnitRead {
  readonly units: readonly ReadUnit[];
  readonly text: string;
  readonly end: number;
  readonly film?: 'wet' | 'dry';
  readonly attributive: boolean;
}

/** The longest spelling of a unit that begins at `at`. */
function unitAt(text: string, at: number): UnitRead | undefined {
  const lead = /^(?:-| ?)(?:(wet|dry)[- ](?=mils?\b))?/i.exec(text.slice(at, at + 8));
  const begin = at + (lead?.[0].length ?? 0);
  const film = lead?.[1]?.toLowerCase() as 'wet' | 'dry' | undefined;
  const stretch = /^[^\s~[\];:,]{1,24}(?: [^\s\d~[\];:,][^\s~[\];:,]{0,23}){0,7}/.exec(
    text.slice(begin, begin + 96),
  )?.[0];
  if (stretch === undefined) return undefined;
  const ends: number[] = [];
  for (const word of stretch.matchAll(/[^ -]+/g)) {
    ends.push(word.index + word[0].length);
    if (ends.length === MOST_WORDS) break;
  }
  for (const end of ends.reverse()) {
    for (const written of new Set([
      stretch.slice(0, end),
      stretch.slice(0, end).replace(/[).']+$/, ''),
      stretch.slice(0, end).replace(/\)[^)]*$/, ''),
    ])) {
      const units = written === '' ? [] : unitsNamed(written);
      if (units.length === 0) continue;
      const stop = begin + written.length;
      const after = text.slice(stop, stop + 60);
      if (/^in$/i.test(written) && !AFTER_INCH.test(after)) continue;
      if (
        /^[a-z]$/i.test(written) &&
        /^\s?[\w']/.test(after) &&
        !/^\s(?:or|and|to|minus|at|in|for|on|\d|\()/.test(after)
      )
        continue;
      // "10 min. mils" and "3 a day" are no units.
      if (/^min\.?$/i.test(written) && /^\.?\s(?:dry|wet|mils?|in\b|inch|mm)/i.test(after)) continue;
      return { units, text: written, end: stop, ...(film && { film }), attributive: text[at] === '-' };
    }
  }
  return undefined;
}

/** A count: a bare number before a plural noun. */
const COUNTED =
  /^[ -]((?:[a-z][\w-]*\s){0,2}?(?:weeps?|coats?|tests?|samples?|specimens?|fasteners?|locations?|readings?|measurements?|layers?|plies|projects?|copies|sets?|cycles|installations?|mockups?|pulls?|per\b))/i;
const LIKE_UNIT =
  /^[ -]?([A-Za-zµ°]+(?:\/[\w().·-]+)+|[A-Za-zµ]{1,4}\d(?!\d)|[bcdfghjklmnpqrstvwxz]{2,4}\b(?!\.?\s*(?:of|and)\b))/i;

/**
 * The quantities of a text, in order.
 *
 * @param text plain characters, with `~` over what is no value
 */
export function quantitiesIn(text: string): readonly Found[] {
  const numbers = numbersIn(text);
  const found: Found[] = [];
  let last = 0;
  numbers.forEach((number) => {
    if (number.start < last) return;
    const feet = FEET_AND_INCHES.exec(text.slice(number.start, number.start + 24));
    if (feet !== null) {
      last = number.start + feet[0].length;
      found.push(feetAndInches(number, feet, last));
      return;
    }
    const one = withUnit(text, number);
    found.push(one);
    last = one.end;
  });
  for (const match of text.matchAll(R_VALUE)) {
    const start = match.index;
    const units = unitsNamed('R');
    const value = Number(match[1]);
    const number = {
      start,
      end: start + match[0].length,
      text: match[1] ?? '',
      value,
      halfStep: 0.5,
      tolerance: false,
    };
    found.push({
      start,
      end: number.end,
      number,
      units,
      unitText: 'R',
      attributive: false,
      unknownUnit: false,
      bareDegrees: false,
    });
  }
  found.sort((a, b) => a.start - b.start);
  return joined(text, found);
}

function feetAndInches(number: ReadNumber, feet: RegExpExecArray, end: number): Found {
  const [, whole = '0', inches = '0'] = feet;
  const rest = numbersIn(inches)[0]?.value ?? 0;
  const value = Number(whole) * 12 + rest;
  const text = String(value);
  return {
    start: number.start,
    end,
    number: { ...number, end, text, value, halfStep: 1 / 32 },
    units: unitsNamed('in'),
    unitText: 'in',
    attributive: false,
    unknownUnit: false,
    bareDegrees: false,
  };
}

function withUnit(text: string, number: ReadNumber): Found {
  const unit = unitAt(text, number.end);
  const plain = {
    start: number.start,
    end: number.end,
    number,
    units: [],
    unitText: '',
    attributive: false,
    unknownUnit: false,
    bareDegrees: false,
  };
  if (unit !== undefined) {
    const bareDegrees = /^degrees?\.?$|^deg\.?$|^°$/i.test(unit.text);
    return {
      ...plain,
      end: unit.end,
      units: unit.units,
      unitText: unit.text,
      attributive: unit.attributive,
      bareDegrees,
      ...(unit.film && { film: unit.film }),
    };
  }
  const rest = text.slice(number.end, number.end + 60);
  const like = LIKE_UNIT.exec(rest);
  if (like?.[1] !== undefined && !/^(?:st|nd|rd|th|by|x)$/i.test(like[1]))
    return { ...plain, end: number.end + like[0].length, unitText: like[1].replace(/[.,]+$/, ''), unknownUnit: true };
  const counted = COUNTED.exec(rest);
  if (counted?.[1] !== undefined && !/^per\b/i.test(counted[1])) {
    const unitText = counted[1].trim();
    const unit: ReadUnit = { spelling: unitText, kind: 'count', system: 'either', toBase: (x) => x };
    return {
      ...plain,
      end: number.end + counted[0].length,
      unitText,
      units: [unit],
      attributive: rest.startsWith('-'),
    };
  }
  return plain;
}

const RANGE = /^\s?(?:to|through|thru|-|up to)\s?$/i;
const SHARED = /^(?:\s?(?:,|and|or|\/|, and|, or|by|x|and\/or)\s?)$/i;

/** Puts ranges together, and gives a bare number the unit of the one it is listed with. */
function joined(text: string, found: readonly Found[]): readonly Found[] {
  const result: Found[] = [];
  for (let at = 0; at < found.length; at++) {
    let one = found[at];
    if (one === undefined) continue;
    const next = found[at + 1];
    if (next !== undefined && one.number.choices === undefined && !(one.unknownUnit || next.unknownUnit)) {
      const joint = text.slice(one.end, next.start);
      const before = text.slice(Math.max(0, one.start - 24), one.start);
      const isBetween = /\bbetween\s+(?:\w+\s+)?$/i.test(before) && /^\s?(?:and|to)\s?$/i.test(joint);
      const fits = one.units.length === 0 || shares(one, next);
      if ((RANGE.test(joint) || isBetween) && next.units.length > 0 && fits && !next.number.tolerance) {
        one = { ...next, start: one.start, number: one.number, upper: next.number, attributive: next.attributive };
        at++;
      } else if (
        next.number.tolerance &&
        /^\s?,?\s?$/.test(joint) &&
        one.units.length > 0 &&
        (next.units.length === 0 || shares(one, next))
      ) {
        one = spread(one, next);
        at++;
      } else if (one.units.length === 0) {
        const list = listed(text, found, at);
        if (list !== undefined) {
          one = list.found;
          at = list.last;
        }
      }
    }
    result.push(one);
  }
  return result;
}

function shares(one: Found, other: Found): boolean {
  return one.units.some(({ kind, system }) => other.units.some((unit) => unit.kind === kind && unit.system === system));
}

/** `12 mm plus or minus 3 mm` as the range it allows. */
function spread(one: Found, by: Found): Found {
  const unit = one.units[0];
  const other = by.units[0] ?? unit;
  const factor = unit === undefined || other === undefined ? 1 : other.toBase(1) / (unit.toBase(1) || 1);
  const step = by.number.value * factor;
  const end = (value: number): ReadNumber => ({ ...one.number, value, text: String(Number(value.toPrecision(6))) });
  return { ...one, end: by.end, number: end(one.number.value - step), upper: end(one.number.value + step) };
}

/** `5, 50, and 95 percent`: bare numbers up to the one that has the unit of all. */
function listed(
  text: string,
  found: readonly Found[],
  at: number,
): { readonly found: Found; readonly last: number } | undefined {
  const first = found[at];
  if (first === undefined) return undefined;
  const others: ReadNumber[] = [];
  for (let i = at + 1; i < Math.min(found.length, at + LONGEST_LIST); i++) {
    const next = found[i];
    const before = found[i - 1];
    if (next === undefined || before === undefined || !SHARED.test(text.slice(before.end, next.start)))
      return undefined;
    others.push(next.number);
    if (next.units.length > 0) return { found: { ...next, start: first.start, number: first.number, others }, last: i };
    if (next.unknownUnit) return undefined;
  }
  return undefined;
}

/** Whether a quantity can be of a kind. */
export function hasKind(found: Found, kind: ValueKind): boolean {
  return found.units.some((unit) => unit.kind === kind);
}
