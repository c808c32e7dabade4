/** From one value to a proposal, with its confidence and reasons, or to the question of what is asked of it. */
import { confidenceOf, howAsked } from './confidence.js';
import type { Comparator } from './comparators.js';
import { frequencyBefore, frequencyName, isCountForEach, isCountOf } from './frequency.js';
import { isDescriptor, isRating, isStage, nameOf } from './naming.js';
import { ORDERS } from './orders.js';
import { endOf, isOptional, methodsOf, placed } from './placing.js';
import { readValue } from './printed.js';
import { whyPlain } from './plain-values.js';
import { shownText } from './questions.js';
import type { Statement } from './statements.js';
import type { Proposal, Question } from './types.js';
import type { Value } from './values.js';

const ORDER = /\b(?:prior to|before|after|until|not later than|no later than|following)\b(?:[^.;]|\.(?=\d))*/i;
const ASKS = new RegExp(
  String.raw`\b(?:shall|must|required|is to be|are to be|do not|ensure|verify)\b|^[[\]\s"(]*(?:(?:where|when|if|at|for|on|over|after|before|in|with|prior|using|unless)\b[^,]*,\s*)?(?:[a-z]+ly )?(?:${ORDERS})\b`,
  'i',
);
/** Without a verb that asks: a text with one of these tells something; without, it is an order or an entry of a list. */
const DESCRIBES =
  /\b(?:is|are|was|were|has|have|had|covers?|includes?|contains?|may|can|might|for example|e\.g)\b|\bexample:/i;
/** The values of a list before the one that is read. */
const LIST_BEFORE = /(?:[\d./-]+\s?,?\s?(?:and )?)+$/i;
const WAY = /^[\s)\].]*(wide|high|long|deep|thick|tall)\b/i;
const JOINTS = /\b(?:and|but|or|nor|for|also|wide|thick|deep|high|long)\b/gi;

/** The room of a value between its neighbors, in characters of the statement. */
export interface Place {
  readonly from: number;
  readonly to: number;
  /** Where the words before it end: at its start, or at that of the list it is in. */
  readonly until: number;
}

/** A value with what was found out about it. */
export interface Weighed {
  readonly value: Value;
  readonly previous: Value | undefined;
  readonly comparator: Comparator | undefined;
  /** The words are those of the value beside it. */
  readonly isInherited: boolean;
  /** One of several that share a unit. */
  readonly isListed: boolean;
}

/** A proposal, a question, or undefined for a value that nothing is asked of. */
export function readOne(
  statement: Statement,
  { value, previous, comparator, isInherited, isListed }: Weighed,
  place: Place,
  earlier: Proposal | undefined,
): Proposal | Question | undefined {
  const { plain, body, label, titles } = statement;
  const frequency = frequencyBefore(plain, value);
  const isOften = frequency !== null || (comparator === undefined && isCountForEach(statement, value));
  const asks = body > 0 || earlier !== undefined || ASKS.test(plain) || !DESCRIBES.test(plain);
  const fixed = whyFixed(statement, value, isListed);
  const isDescribing = isDescriptor(statement, value);
  const stated = comparator === undefined ? whyPlain(statement, value) : undefined;
  if (
    !isOften &&
    fixed === undefined &&
    value.found.upper === undefined &&
    comparator === undefined &&
    !value.found.number.tolerance
  ) {
    const isAnswer = isDescribing && value.kind !== 'slope';
    const isInList = titles.some((title) => /\bsubmittals?\b/i.test(title));
    if (!asks || isInList || (isDescribing && !isAnswer)) return undefined;
    if (!isDescribing && stated === undefined) return noComparator(statement, value);
  }
  const until =
    comparator !== undefined && comparator.start < place.until && !isInherited ? comparator.start : place.until;
  const name = nameOf(statement, { ...place, until }, value, comparator);
  // "Not less than 6 mm and not more than 13 mm": the second is about the same as the first.
  const isSameAgain =
    earlier !== undefined &&
    earlier.value?.kind === value.kind &&
    !/[a-z]{3}/i.test(plain.slice(place.from, until).replace(JOINTS, '')) &&
    !isOtherWay(plain, previous, value);
  const isLimit = !isSameAgain && !isOften && comparator?.threshold !== true && value.found.others === undefined;
  const property = isSameAgain ? earlier.property : isLimit ? name.property : undefined;
  const ownWords = isSameAgain ? earlier.characteristic : name.characteristic;
  const read = readValue(value.found, value.unit);
  const given = howAsked(value, comparator, isInherited, isOften ? 'often' : (fixed ?? stated));
  const trust = confidenceOf({
    given,
    comparator,
    kind: value.kind,
    property,
    besides: isSameAgain ? [] : (name.besides ?? []),
    isWeak: name.weak,
    hasLabel: label !== undefined || isOften,
    isOptional: isOptional(statement, value.start),
    hasTwin: value.twin !== undefined,
  });
  const order = ORDER.exec(plain)?.[0].trim();
  const count = previous !== undefined && isCountOf(statement, previous, value) ? previous.found.number.text : '1';
  return {
    ...placed(statement, value.start, endOf(value)),
    ...(property !== undefined
      ? { property }
      : {
          characteristic: frequency === null ? (ownWords ?? 'not named') : frequencyName(plain, frequency),
        }),
    ...(name.subject && { subject: name.subject }),
    compare: given.compare,
    value: frequency === null ? read : { ...read, text: `${count} per ${read.text}` },
    ...(value.twin && { also: readValue(value.twin.found, value.twin.unit) }),
    methods: methodsOf(statement),
    conditions: value.conditions.map((condition) => readValue(condition.found, condition.unit)),
    ...(order !== undefined && { sequence: order }),
    ...trust,
  };
}

/** "8 feet wide by 6 feet high": two sizes, not two limits of one. */
function isOtherWay(plain: string, previous: Value | undefined, value: Value): boolean {
  const way = (end: number): string | undefined => WAY.exec(plain.slice(end, end + 16))?.[1]?.toLowerCase();
  const first = previous === undefined ? undefined : way(endOf(previous));
  const second = way(endOf(value));
  return first !== undefined && second !== undefined && first !== second;
}

/** What makes a value the only one that is meant, though no words compare it. */
function whyFixed(statement: Statement, value: Value, isListed: boolean): 'rating' | 'stage' | 'list' | undefined {
  if (isRating(statement, value)) return 'rating';
  if (isStage(statement, value)) return 'stage';
  return isListed && /\bat\s*(?:the )?$/i.test(statement.plain.slice(0, value.start).replace(LIST_BEFORE, ''))
    ? 'list'
    : undefined;
}

/** A sentence that asks for an order of work and has no value. */
export function orderOfWork(statement: Statement): readonly Proposal[] {
  const { plain, prose } = statement;
  const order = ORDER.exec(plain)?.[0].trim();
  if (order === undefined || !/^(?:prior to|before|until)\b/i.test(order) || !ASKS.test(plain)) return [];
  const name = nameOf(statement, { until: plain.indexOf(order), from: 0, to: plain.length }, undefined, undefined);
  return [
    {
      ...placed(statement, 0, prose.text.length),
      ...(name.subject && { subject: name.subject }),
      methods: methodsOf(statement),
      conditions: [],
      sequence: order,
      confidence: 'medium',
      reasons: [`an order of work: "${order.split(' ').slice(0, 3).join(' ')}"`],
    },
  ];
}

function noComparator(statement: Statement, value: Value): Question {
  const { prose, label } = statement;
  const shown = shownText(prose.text, value.start, endOf(value));
  return {
    kind: 'no comparator',
    ...placed(statement, value.start, endOf(value)),
    read: `"${shown}" stands${label === undefined ? '' : ` under "${label}"`} without words such as "at least" or "maximum".`,
    ask: 'Is it the least value, the greatest, or the only one allowed?',
    compare: 'unclear',
    values: [
      readValue(value.found, value.unit),
      ...(value.twin === undefined ? [] : [readValue(value.twin.found, value.twin.unit)]),
    ],
    ...(label !== undefined && { label }),
  };
}
