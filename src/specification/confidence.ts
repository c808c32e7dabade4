/** How sure a proposal is, and why: the reasons are printed with it. */
import type { Property } from '../model/measures.js';
import type { Compare, Comparator } from './comparators.js';
import type { PlainReason } from './plain-values.js';
import type { Confidence } from './types.js';
import type { ValueKind } from './units.js';
import type { Value } from './values.js';

/** Values that no words compare. */
const PLAIN: Readonly<Record<PlainReason, string>> = {
  time: 'a time counted from an event, without a comparator',
  count: 'a count of pieces, without a comparator',
  demand: 'what has to be borne, without a comparator',
  toleranced: 'a size with its tolerance beside it',
  sample: 'a share to be tested, without a comparator',
  test: 'what a test is done at, without a comparator',
  nominal: 'a nominal size, without a comparator',
  'further share': 'a further share of the work, without a comparator',
};

export const IN_BRACKETS = 'it stands in brackets that are still to be decided';

/** What the words ask of a value, and how explicit they are. */
export interface Asked {
  readonly compare: Exclude<Compare, 'unclear'>;
  readonly explicit: boolean;
  readonly reason: string;
}

const FIXED = {
  rating: 'a rating',
  stage: 'a stage of the work',
  list: 'one of a list of values',
} as const;

/** From the words around a value to what they ask of it. */
export function howAsked(
  value: Value,
  comparator: Comparator | undefined,
  isInherited: boolean,
  special: 'often' | 'rating' | 'stage' | 'list' | PlainReason | undefined,
): Asked {
  // "One test per 1000 square feet" asks for at least that many.
  if (special === 'often')
    return { compare: 'atLeast', explicit: true, reason: 'a frequency: at least once in each such stretch' };
  if (value.found.upper !== undefined) return { compare: 'between', explicit: true, reason: 'a range' };
  if (value.found.number.tolerance) return { compare: 'equals', explicit: true, reason: 'a tolerance to both sides' };
  if (special !== undefined && comparator === undefined)
    return special in PLAIN
      ? { compare: 'equals', explicit: special === 'toleranced', reason: PLAIN[special as PlainReason] }
      : { compare: 'equals', explicit: true, reason: FIXED[special as keyof typeof FIXED] };
  if (comparator === undefined || comparator.compare === 'unclear')
    return {
      compare: 'equals',
      explicit: false,
      reason: 'a size that describes what is asked for, without a comparator',
    };
  const words = `the comparator "${comparator.words}"`;
  return {
    compare: comparator.compare,
    explicit: !isInherited,
    reason: isInherited ? `${words} of the value before` : words,
  };
}

/** One step less sure; low stays low. */
export function lower(confidence: Confidence): Confidence {
  return confidence === 'high' ? 'medium' : 'low';
}

export interface Grounds {
  readonly given: Asked;
  readonly comparator: Comparator | undefined;
  readonly kind: ValueKind | undefined;
  readonly property: Property | undefined;
  /** Further properties that the words name. */
  readonly besides: readonly Property[];
  /** The property is named by the title above, or by what is said of another value. */
  readonly isWeak: boolean;
  readonly hasLabel: boolean;
  readonly isOptional: boolean;
  readonly hasTwin: boolean;
}

/** High: an explicit comparator, a known unit and a named property. Each that is missing takes one step. */
export function confidenceOf(grounds: Grounds): {
  readonly confidence: Confidence;
  readonly reasons: readonly string[];
} {
  const { given, comparator, kind, property, besides, isWeak, hasLabel, isOptional, hasTwin } = grounds;
  const isNamed = property !== undefined || hasLabel;
  const score = Number(given.explicit) + Number(kind !== undefined) + Number(isNamed);
  let confidence: Confidence = score === 3 ? 'high' : score === 2 ? 'medium' : 'low';
  const reasons = [given.reason];
  if (comparator?.turned === true) reasons.push('turned around by a prohibition');
  if (comparator?.strict === true) reasons.push('the value itself is not allowed');
  reasons.push(
    kind === undefined ? 'a number without a unit' : kind === 'count' ? 'a number of pieces' : 'a known unit',
  );
  if (property !== undefined) reasons.push(`the words name ${property}`);
  else reasons.push(hasLabel ? 'the property has a label' : "the property is in the section's words");
  if (comparator?.threshold === true) {
    confidence = 'low';
    reasons.push('it may only say where something applies');
  }
  if (property !== undefined && isWeak) {
    confidence = lower(confidence);
    reasons.push('the property is named by the title above, or by words farther off');
  }
  if (property !== undefined && besides.length > 0) {
    confidence = lower(confidence);
    reasons.push(`${besides.join(' and ')} named beside it`);
  }
  if (isOptional) {
    confidence = lower(confidence);
    reasons.push(IN_BRACKETS);
  }
  if (hasTwin) reasons.push('metric and US values agree');
  return { confidence, reasons };
}
