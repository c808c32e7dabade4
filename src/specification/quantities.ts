/** Numbers with their units in a sentence: single values, ranges, lists that share a unit, choices left open. */
import { numbersIn } from './numbers.js';
import type { ReadNumber } from './numbers.js';
import { joined } from './ranges.js';
import { unitAt } from './unit-at.js';
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
  /** The list offers a choice: `3 or 5 percent`. */
  readonly alternatives?: boolean;
  /** The size that a tolerance stands beside; `number` and `upper` are the range it allows. */
  readonly nominal?: ReadNumber;
  /** `4-inch`: the value describes what follows. */
  readonly attributive: boolean;
  readonly film?: 'wet' | 'dry';
  /** Something that looks like a unit but is none that is known. */
  readonly unknownUnit: boolean;
  /** Degrees of which scale is not said. */
  readonly bareDegrees: boolean;
}

const FEET_AND_INCHES =
  /^(\d+)\s*(?:'|ft\.?|feet|foot)\s*-?\s*(\d+(?:[- ]\d+\/\d+)?|\d+\/\d+)\s*(?:"|in\b\.?|inch(?:es)?\b)/i;
/** A slope as rise and run; a time of day has the same form, so a word has to speak of slope. */
const RATIO = /(?<![\d:.])1:(\d{1,3}(?:\.\d+)?)(?![\d:])/g;
const SLOPE_WORDS = /\bslop\w*|\bpitch|\bflatter\b|\bsteeper\b|^\s*1:\d+\s*$/i;
const R_VALUE = /\bR(?:-|-value of )(\d+(?:\.\d+)?)\b/g;

/** Deflection as a share of the span: `L/175`. */
const SPAN_SHARE = /(?<![\w/])L\/(\d{2,4})(?![\w/])/g;
/** "Test three windows", "a mock-up of one window", "readings at five places". */
const TESTED = /(?:^|[.;:]\s+|\b(?:and|to|shall|must)\s)(?:re)?(?:test|inspect|probe|check)\s*$/i;
const MOCK_UP = /\bmock-?ups? of\s*$/i;
const ONE_PIECE = /^ ((?:[a-z-]+ )?(?:windows?|doors?|openings?|units?|bays?|panels?))\b/i;
const PLACES = /^ ((?:[a-z-]+ )?(?:places|points|spots|locations))\b/i;
/** A count: a bare number before a plural noun. */
const COUNTED =
  /^[ -]((?:[a-z][\w-]*\s){0,2}?(?:weeps?|coats?|tests?|samples?|specimens?|fasteners?|locations?|readings?|measurements?|layers?|plies|projects?|copies|sets?|cycles|installations?|mockups?|pulls?)|[a-z][\w-]*(?= per\b))/i;
const OR_MORE = /^ or (?:more|fewer|less|greater)(?= )/i;
/** Behind these words a bare number counts what follows it. */
const COUNTS =
  /\b(?:at least|at most|not? (?:fewer|less|more) than|(?:a |the )?(?:minimum|maximum) of|fewer than|up to)\s*(?:an? |the )?$/i;
/** "Do not stack pallets more than two high". */
const STACKED = /\b(?:stack\w*|pallets?|cartons|rolls|pails|drums|bundles|units)\b/i;
const HIGH = /^ (high|deep|layers)\b/i;
/** A number of what is not named. */
const ONLY_COUNTED: Pick<Found, 'unitText' | 'units'> = {
  unitText: 'each',
  units: [{ spelling: '', kind: 'count', system: 'either', toBase: (x) => x }],
};
const PLURAL =
  /^ ((?:(?!(?:times|of|and|or|in|to|at|by|for|per|the|is|as)\b)[a-z][a-z'-]*\s){0,2}?(?!(?:times|is|as|this|its|was|has|plus|thickness\w*)\b)[a-z][a-z'-]*[a-rt-z]s)\b/i;
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
  if (SLOPE_WORDS.test(text)) for (const match of text.matchAll(RATIO)) putRatio(found, match);
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
  for (const match of text.matchAll(SPAN_SHARE)) found.push(shareOfSpan(match));
  found.sort((a, b) => a.start - b.start);
  return joined(text, found);
}

/** How far a member of length L may bend. */
function shareOfSpan(match: RegExpExecArray): Found {
  const start = match.index;
  const end = start + match[0].length;
  const value = 1 / Number(match[1]);
  return {
    start,
    end,
    number: { start, end, text: match[0], value, halfStep: 0, tolerance: false },
    units: Number.isFinite(value) ? [{ spelling: '', kind: 'share of span', system: 'either', toBase: (x) => x }] : [],
    unitText: '',
    attributive: false,
    unknownUnit: false,
    bareDegrees: false,
  };
}

/** Puts a slope in the place of the two numbers it is written with. */
function putRatio(found: Found[], match: RegExpExecArray): void {
  const start = match.index;
  const end = start + match[0].length;
  const unit: ReadUnit = { spelling: '', kind: 'slope', system: 'either', toBase: (x) => x };
  const value = 1 / Number(match[1]);
  const first = found.findIndex((one) => one.start >= start && one.start < end);
  const inside = found.filter((one) => one.start >= start && one.start < end).length;
  found.splice(first === -1 ? found.length : first, inside, {
    start,
    end,
    number: { start, end, text: match[0], value, halfStep: 0, tolerance: false },
    units: Number.isFinite(value) ? [unit] : [],
    unitText: '',
    attributive: false,
    unknownUnit: false,
    bareDegrees: false,
  });
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
  // "Three or more years": the unit stands behind the words that compare.
  const orMore = OR_MORE.exec(text.slice(number.end, number.end + 16))?.[0].length ?? 0;
  const unit = unitAt(text, number.end) ?? (orMore === 0 ? undefined : unitAt(text, number.end + orMore));
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
  const before = text.slice(Math.max(0, number.start - 40), number.start);
  const counted = COUNTED.exec(rest) ?? piecesAt(before, rest);
  if (COUNTS.test(before) && /^ (?:per|for each|at each|in each|on each)\b/i.test(rest))
    return { ...plain, ...ONLY_COUNTED };
  // "Not fewer than three, by the method": only what is counted is fewer.
  if (counted === null && /\bfewer than\s*$/i.test(before)) return { ...plain, ...ONLY_COUNTED };
  if (counted?.[1] !== undefined && !/^(?:per|or|and)\b/i.test(counted[1])) {
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

/** What a bare number counts by the words before it. */
function piecesAt(before: string, rest: string): RegExpExecArray | null {
  const high = STACKED.test(before) ? HIGH.exec(rest) : null;
  if (high !== null) return high;
  if (COUNTS.test(before) || TESTED.test(before)) return PLURAL.exec(rest);
  if (MOCK_UP.test(before)) return ONE_PIECE.exec(rest);
  return /\bat\s*$/i.test(before) ? PLACES.exec(rest) : null;
}

/** Whether a quantity can be of a kind. */
export function hasKind(found: Found, kind: ValueKind): boolean {
  return found.units.some((unit) => unit.kind === kind);
}
