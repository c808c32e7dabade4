/**
 * Values that no words compare, and that are still the one value meant: a time that is counted from an event, what a
 * unit has to withstand, a size that has its tolerance beside it. They are proposed as they stand, and never as sure.
 */
import type { Statement } from './statements.js';
import type { Value } from './values.js';

/** Why a value without a comparator can be proposed. */
export type PlainReason = 'time' | 'count' | 'demand' | 'toleranced' | 'nominal' | 'further share' | 'sample' | 'test';

const NOT_DECIDED = /\b(?:if|when|where|whenever|unless|in case|not|never|may|can|or)\b[^.;,]*$/i;
const AFTER_EVENT = /\b(?:after|at)\s*(?:an? |the )?(?:[\d./-]+\s?(?:and|,)\s?)*$/i;
/** "7 days in water" goes on with the time before it. */
const GOES_ON = /\b(?:after|following)\b[^.;]*\band\s*$/i;
const FROM_EVENT =
  /^[\s)]*(?:later\b|(?:before|after|from|prior to|ahead of|following)\b|['’]?s?['’]? notice\b|in advance\b)/i;
const WARRANTY = /\bwarrant(?:y|ies)\b|\bguarantees?\b/i;
const DEMANDED =
  /\b(?:withstands?|withstanding|resists?|allow(?:ing)? for|accommodat(?:e|es|ing)|provide for)\b[^.;]*$/i;
/** A tolerance that has its own unit, or another on each side. */
const TOLERANCED =
  /^[\s),]*(?:with )?(?:(?:a |an )?tolerances? (?:of )?(?:plus or minus|\+\/-|±|[-+\d])|[-+]\s?\d[\d./]*\s?\/\s?[-+]\s?\d)/i;

/** "Test 5 percent of the windows", "ASTM E1186, at 5 percent of all pipes"; not "25 percent of its volume". */
const TESTED = /\b(?:test|inspect|check|probe|examine|sample)\b(?![^.;]*\b(?:after|at)\b)[^.;]*$/i;
const AT = /\b(?:at|on|in)\s*$/i;
const SAMPLED = /^ of (?:(?:the|all|all of the|installed) )?(?:rest\b|remainder\b|[a-z]+(?:-[a-z]+)?s\b)/i;

/** "Nominal 40 mils", "40 mils thick, nominal". */
const NOMINAL = /\bnominal(?:ly)?\s*(?:(?:thickness|width|depth|length|size) (?:of )?)?(?:an? )?$/i;
const IS_NOMINAL = /^[\s,)]*(?:(?:thick|wide|deep|high|long)[\s,]+)?\(?nominal\b/i;

/**
 * Why a value that no words compare is the one that is meant.
 *
 * @returns undefined where nothing says so, and the reader has to be asked
 */
export function whyPlain({ plain, body, titles, designations }: Statement, value: Value): PlainReason | undefined {
  const { start, end, kind, found, twin } = value;
  const stretch = plain.slice(Math.max(body, start - 160), start);
  const before = stretch.slice(Math.max(stretch.lastIndexOf('. '), stretch.lastIndexOf(';')) + 1);
  const behind = plain.slice(twin?.found.end ?? found.end);
  if (TOLERANCED.test(behind)) return 'toleranced';
  if (NOMINAL.test(before) || IS_NOMINAL.test(behind)) return 'nominal';
  if (kind === 'count') return isPieces(before, found.unitText) && !found.attributive ? 'count' : undefined;
  if (NOT_DECIDED.test(before)) return undefined;
  if (kind === 'fraction' && /\b(?:a further|an additional|another)\s*$/i.test(before)) return 'further share';
  if (
    kind === 'fraction' &&
    SAMPLED.test(behind) &&
    (TESTED.test(before) || (designations.length > 0 && AT.test(before)))
  )
    return 'sample';
  if ((kind === 'pressure' || kind === 'temperatureDifference' || kind === 'speed') && DEMANDED.test(before))
    return 'demand';
  if (kind === 'pressure' && designations.length > 0 && isHeld(plain, value)) return 'test';
  if (kind !== 'time' && kind !== 'long time') return undefined;
  const isWarranty = WARRANTY.test(`${titles.at(-1) ?? ''} ${before}`);
  return AFTER_EVENT.test(before) || GOES_ON.test(before) || FROM_EVENT.test(plain.slice(end)) || isWarranty
    ? 'time'
    : undefined;
}

/** "ASTM E1105, 6 psf for 15 minutes": what a test is done at; a strength is not held for a time. */
function isHeld(plain: string, { start, conditions }: Value): boolean {
  return (
    !/\b(?:strength|adhesion|peel|bond|modulus|stress)\b/i.test(plain.slice(0, start)) &&
    conditions.some((one) => one.unit?.kind === 'time' && /^for\b/i.test(plain.slice(one.start, one.end)))
  );
}

/** "Ten tests", "a mock-up of one window"; a number before a title that begins with a noun counts nothing. */
function isPieces(before: string, counted: string): boolean {
  return /s$/i.test(counted) || /\bmock-?ups? of\s*$/i.test(before);
}
