/** The values of a sentence: metric and US twins as one, conditions of test kept apart from what is required. */
import { agreement } from './agreement.js';
import type { Agreement } from './agreement.js';
import { quantitiesIn } from './quantities.js';
import type { Found } from './quantities.js';
import type { ReadUnit, ValueKind } from './units.js';

/** A quantity with the reading of its unit that fits the words around it. */
export interface Part {
  readonly found: Found;
  readonly unit: ReadUnit | undefined;
}

/** Under which a value is measured, not the value itself: `at 75 Pa`. */
export interface Condition extends Part {
  /** Where it begins, with the word `at`. */
  readonly start: number;
  readonly end: number;
  /** No `at` stands before it: it may have been lost. */
  readonly bare: boolean;
  /** A length where a pressure or a temperature is expected. */
  readonly odd: boolean;
}

export interface Value extends Part {
  readonly start: number;
  /** Behind its twin and its conditions. */
  readonly end: number;
  readonly kind: ValueKind | undefined;
  readonly twin?: Part;
  readonly agreement?: Agreement;
  readonly conditions: readonly Condition[];
}

const AT_PRESSURE =
  /(?:\bat(?! (?:least|most)\b)|@|\bunder|\bdifference of|\bdifferential of|\bpressure of)\s*(?:an? |the )?(?:[a-z-]+ ){0,5}\(?$/i;
const LIMITED =
  /\bpressure (?:differen(?:ce|tial) )?(?:of )?(?:no[t]? less than|not below|at least|a minimum of|no[t]? more than|at most|a maximum of)\s*$|\b(?:minimum|maximum) (?:[a-z-]+ ){0,2}pressure(?: differen(?:ce|tial))? of\s*$/i;
const AT =
  /(?:\bat(?! (?:(?:a|the) )?(?:least|most|min(?:imum)?|max(?:imum)?)\b)|@|\bconditioned at)\s*(?:an? |the )?(?:[a-z-]+ ){0,3}$/i;
const SPAN_OF = /^\s*(?:in|per|over|for) (?:(?:any|each|every|a) )?(?:(?:distance|length|span) of )?$/i;
/** "For at least 20 minutes": a limit of its own. */
const LIMITED_TIME =
  /\b(?:at least|at most|up to|(?:not?|never) (?:less|fewer|shorter|more|longer) than|(?:a |the )?(?:minimum|maximum)(?: of)?)\s*$/i;
const DURING = /\b(?:for|after)\s+(?:an? |the )?(?:[a-z-]+ ){0,2}$/i;
const TWIN =
  /^[\s()[\],]*(?:\/|or|approximately|approx\.?|nominal|about|\bdry|\bwet|min(?:imum)?\.?|max(?:imum)?\.?)?[\s([\],]*(?:min(?:imum)?\.?|max(?:imum)?\.?)?[\s([]*$/i;
const TWIN_IN_PARENTHESES =
  /^\s*(?:(?:wet|dry|minimum|min\.?|maximum|max\.?|thick|wide|deep|film|thickness|total|dft|wft|or (?:less|more|greater)),?\s*){0,4}\(\s*$/i;
const DIFFERENCE = /\b(?:above|below|over|of) (?:the )?dew[- ]?point|\btemperature (?:difference|rise)\b/i;
/** "A range of 120 degrees F" is how far apart two temperatures are; one with both its ends is no difference. */
const SPAN = /\b(?:range|change|swing|difference|rise|drop) of\b/i;
const FILM_WORDS =
  /\bfilm\b|\bDFT\b|\bWFT\b|\bmils?\b|\bcoat(?:ing|s)?\b.*\bthick|\bthick\w*.*\b(?:coat|membrane|dry|wet)/i;

/** The reading of a unit that the words around it ask for. */
function chosen(found: Found, words: string, twin: Found | undefined): ReadUnit | undefined {
  const { units } = found;
  const kinds = new Set(units.map(({ kind }) => kind));
  const pick = (kind: ValueKind): ReadUnit | undefined => units.find((unit) => unit.kind === kind);
  const twinKinds = twin === undefined ? undefined : new Set(twin.units.map(({ kind }) => kind));
  if (kinds.has('film') && kinds.has('length')) {
    const isFilm =
      found.film !== undefined || (twinKinds !== undefined && !twinKinds.has('length')) || FILM_WORDS.test(words);
    return pick(isFilm ? 'film' : 'length');
  }
  if (kinds.has('fraction')) {
    if (/\bslop|\bpitch/i.test(words)) return pick('slope');
    return pick(/movement capability|joint movement/i.test(words) ? 'movement' : 'fraction');
  }
  if (kinds.has('temperature'))
    return pick(
      DIFFERENCE.test(words) || (found.upper === undefined && SPAN.test(words))
        ? 'temperatureDifference'
        : 'temperature',
    );
  return units[0];
}

function areTwins(one: Found, other: Found): boolean {
  return one.units.some((a) =>
    other.units.some(
      (b) => a.kind === b.kind && a.system !== b.system && a.system !== 'either' && b.system !== 'either',
    ),
  );
}

const is = (found: Found | undefined, ...kinds: ValueKind[]): boolean =>
  found?.units.some(({ kind }) => kinds.includes(kind)) ?? false;

const lengthOf = (found: Found | undefined): number =>
  found?.units.find(({ kind }) => kind === 'length')?.toBase(found.number.value) ?? NaN;

/** As near as the two systems of one length are printed. */
const areClose = (a: number, b: number): boolean => Math.abs(a - b) <= 0.1 * Math.max(a, b);

/** Whether a quantity is a condition of test, and where the words that say so begin. */
function conditionAt(
  text: string,
  found: readonly Found[],
  at: number,
  kept: readonly Found[],
  conditions: readonly Condition[],
  isTest: boolean,
): Omit<Condition, 'unit'> | undefined {
  const one = found[at];
  if (one === undefined) return undefined;
  const previous = found[at - 1];
  const from = previous?.end ?? 0;
  const before = text.slice(from, one.start);
  const lead = (pattern: RegExp): number | undefined => {
    const match = pattern.exec(before);
    return match === null ? undefined : from + match.index;
  };
  const plain = { found: one, end: one.end, bare: false, odd: false };
  const lastCondition = conditions.at(-1);
  const hasValue =
    kept.length > 0 ||
    /\bpass(?:es)?\b|\bno (?:visible |water )?(?:leakage|growth|cracking|penetration)/i.test(text.slice(0, one.start));
  // "1/8 inch in 10 feet (3 mm in 3 m)": behind the length comes the other value again.
  const isOtherValue = is(one, 'length') && is(previous, 'length') && !areClose(lengthOf(one), lengthOf(previous));
  if (lastCondition?.found === previous && previous !== undefined && !isOtherValue) {
    const isSame = previous.units.some(({ kind }) => is(one, kind)) && /^\s*\($/.test(before);
    if (isSame || (areTwins(previous, one) && TWIN.test(before))) return { ...plain, start: one.start };
    const start = lead(AT);
    if (start !== undefined && is(one, 'length') && is(previous, 'pressure')) return { ...plain, start, odd: true };
  }
  // "At 23 degrees C and 50 percent relative humidity".
  const isHumid = is(one, 'fraction') && /^\s*(?:relative humidity|RH)\b/i.test(text.slice(one.end));
  if (isHumid && lastCondition?.found === previous && previous !== undefined && /^[\s),]*(?:and|at)?\s*$/.test(before))
    return { ...plain, start: one.start };
  if (is(one, 'pressure')) {
    const start = lead(AT_PRESSURE);
    // "At a test pressure not less than 8 psf": the pressure is limited itself.
    if (start !== undefined && LIMITED.test(before)) return undefined;
    if (start !== undefined && !/\b(?:strength|adhesion)\b[^.]*$/i.test(before))
      return hasValue || isTest || /\btest|\bdifferen/i.test(before) ? { ...plain, start } : undefined;
    if (previous !== undefined && is(previous, 'airLeakage') && /^[\s,(]*$/.test(before))
      return { ...plain, start: one.start, bare: true };
  }
  if (is(one, 'temperature') && hasValue) {
    const start = lead(AT);
    if (start !== undefined) return { ...plain, start };
  }
  // "In 10 feet": over which a line may be out by less.
  const isSpan = is(one, 'length') && is(previous, 'length') && !one.attributive && lengthOf(one) > lengthOf(previous);
  if (isSpan && previous !== lastCondition?.found) {
    const start = lead(SPAN_OF);
    if (start !== undefined) return { ...plain, start };
  }
  if (is(one, 'time') && (hasValue || conditions.length > 0) && isTest) {
    if (LIMITED_TIME.test(before)) return undefined;
    const start = lead(DURING);
    if (start !== undefined) return { ...plain, start };
  }
  return undefined;
}

/**
 * The values of a text and their conditions.
 *
 * @param text plain characters, with `~` over what is no value
 * @param words what is spoken of, to tell a film from a length and a slope from a share
 * @param isTest a property is tested here, so a time or a pressure can belong to the test
 */
export function valuesIn(text: string, words: string, isTest: boolean): readonly Value[] {
  const found = quantitiesIn(text);
  const kept: Found[] = [];
  const conditions: Condition[] = [];
  const owner = new Map<Found, Condition[]>();
  found.forEach((one, at) => {
    const condition = conditionAt(text, found, at, kept, conditions, isTest);
    if (condition === undefined) {
      kept.push(one);
      return;
    }
    const full = { ...condition, unit: chosen(one, words, undefined) };
    conditions.push(full);
    const value = kept.at(-1);
    if (value !== undefined) owner.set(value, [...(owner.get(value) ?? []), full]);
  });
  const values: Value[] = [];
  for (let at = 0; at < kept.length; at++) {
    const one = kept[at];
    if (one === undefined) continue;
    const next = kept[at + 1];
    const isTwin = next !== undefined && areTwins(one, next) && stand(text, one, next, owner.get(one) ?? []);
    const twin = isTwin ? asRange(next, one) : undefined;
    const own = [...(owner.get(one) ?? []), ...(isTwin ? (owner.get(next) ?? []) : [])];
    const behind = kept[at + (isTwin ? 2 : 1)];
    const near = text.slice(kept[at - 1]?.end ?? 0, behind?.start ?? text.length);
    const unit = chosen(one, kept.length === 1 || near.length < 24 ? words : near, twin);
    const twinUnit = twin?.units.find(({ kind }) => kind === unit?.kind);
    const end = Math.max(twin?.end ?? one.end, ...own.map((condition) => condition.end));
    const open = one.number.choices !== undefined || twin?.number.choices !== undefined;
    values.push({
      found: one,
      unit,
      kind: unit?.kind,
      start: one.start,
      end,
      conditions: own,
      ...(twin !== undefined && { twin: { found: twin, unit: twinUnit } }),
      ...(twin !== undefined &&
        unit !== undefined &&
        twinUnit !== undefined &&
        !open && { agreement: agreement({ ...ends(one), unit }, { ...ends(twin), unit: twinUnit }) }),
    });
    if (isTwin) at++;
  }
  // A condition that stands before every value, or beside none: `Pass at minus 26 degrees C`.
  const orphans = conditions.filter((condition) => ![...owner.values()].some((list) => list.includes(condition)));
  const first = values[0];
  if (first !== undefined && orphans.length > 0)
    values[0] = { ...first, conditions: [...orphans, ...first.conditions] };
  return values;
}

function alone(found: Found, number: Found['number']): Found {
  const { start, end, units, unitText, attributive, unknownUnit, bareDegrees } = found;
  return { start, end, number, units, unitText, attributive, unknownUnit, bareDegrees };
}

/**
 * The values of a list that shares one unit: `5, 50, and 95 percent` are three. A choice (`3 or 5 percent`) stays one.
 */
export function membersOf(value: Value): readonly Value[] {
  const { found, twin } = value;
  const { others, alternatives, ...shared } = found;
  if (others === undefined || alternatives === true) return [value];
  const numbers = [found.number, ...others];
  const twins = twin === undefined ? [] : [twin.found.number, ...(twin.found.others ?? [])];
  return numbers.map((number, at) => {
    const end = at === numbers.length - 1 ? found.end : number.end;
    const own = twins.length === numbers.length ? twins[at] : undefined;
    return {
      found: { ...shared, number, start: number.start, end },
      unit: value.unit,
      kind: value.kind,
      start: number.start,
      end: value.end,
      conditions: value.conditions,
      ...(own !== undefined && twin !== undefined && { twin: { unit: twin.unit, found: alone(twin.found, own) } }),
    };
  });
}

/** The conditions of a text that has no value of its own. */
export function conditionsIn(text: string, words: string): readonly Condition[] {
  const conditions: Condition[] = [];
  const found = quantitiesIn(text);
  found.forEach((one, at) => {
    const condition = conditionAt(text, found, at, [], conditions, true);
    if (condition !== undefined) conditions.push({ ...condition, unit: chosen(one, words, undefined) });
  });
  return conditions;
}

function ends({ number, upper }: Found): { readonly number: Found['number']; readonly upper?: Found['number'] } {
  return { number, ...(upper && { upper }) };
}

/** `(4 and 38 deg C)` beside a range is the same range. */
function asRange(found: Found, beside: Found): Found {
  const [upper, ...more] = found.others ?? [];
  if (beside.upper === undefined || upper === undefined || more.length > 0) return found;
  return { ...found, upper };
}

/** Whether nothing but brackets and conditions stands between two quantities. */
function stand(text: string, one: Found, next: Found, conditions: readonly Condition[]): boolean {
  let between = '';
  let at = one.end;
  for (const condition of conditions) {
    if (condition.start >= next.start) continue;
    between += text.slice(at, Math.max(at, condition.start));
    at = Math.max(at, condition.end);
  }
  between += text.slice(at, next.start);
  return TWIN.test(between) || TWIN_IN_PARENTHESES.test(between);
}
