/**
 * From one statement to what it asks for: proposals with a confidence and its reasons, and questions wherever the text
 * can be read in more than one way. Nothing ambiguous is decided here.
 */
import { confidenceOf, howAsked, IN_BRACKETS, lower } from './confidence.js';
import { comparatorOf } from './comparators.js';
import type { Comparator } from './comparators.js';
import { isDescriptor, nameOf } from './naming.js';
import { doubtfulCondition, openQuestion, questionsAbout, shownText } from './questions.js';
import { readValue } from './printed.js';
import { sourceSpan } from './prose.js';
import { wordResult } from './results.js';
import type { WordResult } from './results.js';
import type { Statement } from './statements.js';
import type { PassedOver, Proposal, Question, Confidence, ReadValue } from './types.js';
import type { ValueKind } from './units.js';
import { conditionsIn, valuesIn } from './values.js';
import type { Part, Value } from './values.js';

/** What one statement gives. */
export interface StatementReading {
  readonly proposals: readonly Proposal[];
  readonly questions: readonly Question[];
  readonly passedOver: readonly PassedOver[];
}

const ORDER = /\b(?:prior to|before|after|until|not later than|no later than|following)\b[^.;]*/i;
const ASKS =
  /\b(?:shall|must|required|is to be|are to be|do not|ensure|verify)\b|^[[\]\s"(]*(?:(?:where|when|if|at|for|on|over|after|before|in|with|prior|using|unless)\b[^,]*,\s*)?(?:[a-z]+ly )?(?:apply|extend|lap|overlap|install|space|provide|allow|cure|set|place|turn|hold|leave|maintain|store|test|submit|notify|keep|use|fill|seal|reinforce|treat|cover|carry|continue|terminate|anchor|fasten|limit|perform|conduct|take|wait|prime|clean|protect|form|slope|project|run|bed|tool|coat|embed|locate|position|measure|repair|obtain|retain|deliver|build|construct|flash|wrap|center|attach|secure|expose|complete|remove|replace|make|mix|recoat|stop|begin|do|mask|conform|comply|meet|discard|roll|report|record|schedule|inspect)\b/i;
const JOINTS = /\b(?:and|but|or|nor|also|wide|thick|deep|high|long)\b/gi;
/** What a test is done at. */
const TEST_KINDS: ReadonlySet<ValueKind> = new Set(['pressure', 'time', 'temperature']);
const FREQUENCY =
  /\b(?:(?:at least |minimum (?:of )?|not (?:less|fewer) than )?(?:one|two|three|four|five|a|an|\d+)\s(?:[\w-]+\s){0,5}(?:per|for (?:each|every)|in (?:each|every)|every)|every|at intervals of|for each|per)\s*$/i;

/** Reads one statement. */
export function readStatement(statement: Statement): StatementReading {
  const { prose, plain, body, designations, titles } = statement;
  const questions: Question[] = [...questionsAbout(statement)];
  const result = wordResult(prose.text, body, designations.length > 0);
  const words = `${titles.at(-1) ?? ''} ${prose.text}`;
  const values = valuesIn(plain, words, designations.length > 0 || body > 0).filter(
    (value) => result === undefined || value.start >= result.end || value.found.units.length > 0,
  );
  const isOfTest = ({ start, kind }: Value): boolean =>
    result !== undefined && (start >= result.end || (body === 0 && TEST_KINDS.has(kind ?? 'count')));
  if (result !== undefined && values.every(isOfTest)) {
    const { parts, read } = conditionsOf(plain, words, values);
    const doubt = doubtfulCondition(statement, parts);
    if (doubt !== undefined) return { proposals: [], questions: [...questions, doubt], passedOver: [] };
    return { proposals: [resultProposal(statement, result, read)], questions, passedOver: [] };
  }

  const proposals: Proposal[] = [];
  const passedOver: PassedOver[] = [];
  let before: Comparator | undefined;
  let from = 0;
  values.forEach((value, at) => {
    const place = { from, to: values[at + 1]?.start ?? plain.length };
    const own = comparatorAt(statement, value, place);
    from = Math.max(value.end, own?.end ?? 0);
    const asked = openQuestion(statement, value, own);
    if (asked === undefined && !isCountOf(statement, value, values[at + 1])) {
      const comparator = own ?? inherited(statement, value, values[at - 1], before);
      const read = readOne(statement, value, values[at - 1], comparator, own === undefined, place, proposals.at(-1));
      if (read === undefined) passedOver.push(passed(statement, value));
      else if ('kind' in read) questions.push(read);
      else proposals.push(read);
      before = comparator;
    } else {
      if (asked !== undefined && asked !== 'nothing') questions.push(asked);
      before = own;
    }
  });
  if (values.length === 0) proposals.push(...orderOfWork(statement));
  return { proposals, questions: withoutRepetition(questions), passedOver };
}

interface Place {
  readonly from: number;
  readonly to: number;
}

/** What comes behind and before a value belongs to it up to the next one. */
function comparatorAt({ plain }: Statement, value: Value, { from, to }: Place): Comparator | undefined {
  const near = (end: number): Comparator | undefined =>
    comparatorOf({ text: plain, start: value.start, end, from, to, kind: value.kind });
  // Behind the twin first, then between the two: "3 inches minimum (75 mm)".
  return near(value.end) ?? near(endOf(value)) ?? near(value.found.end);
}

/** "At least 6 inches onto the wall and 4 inches into the opening": the words hold for both. */
function inherited(
  { plain }: Statement,
  value: Value,
  previous: Value | undefined,
  before: Comparator | undefined,
): Comparator | undefined {
  if (before === undefined || previous === undefined || !areAlike(previous.kind, value.kind)) return undefined;
  const joint = plain.slice(previous.end, value.start);
  return /^\s*[^.;:]{0,60}\b(?:and|or|by|x)\s(?:[a-z]+ ){0,4}$/i.test(joint) ? before : undefined;
}

function areAlike(one: ValueKind | undefined, other: ValueKind | undefined): boolean {
  const kind = (some: ValueKind | undefined): ValueKind | undefined => (some === 'film' ? 'length' : some);
  return kind(one) === kind(other);
}

/** Whether a count is the one of a frequency that follows: "one test per 1000 square feet". */
function isCountOf({ plain }: Statement, value: Value, next: Value | undefined): boolean {
  if (next === undefined || (value.kind !== 'count' && value.kind !== undefined)) return false;
  const frequency = frequencyBefore(plain, next);
  return frequency !== null && frequency.index <= value.start;
}

function frequencyBefore(plain: string, value: Value): RegExpExecArray | null {
  if (value.kind !== 'area' && value.kind !== 'length' && value.kind !== 'time') return null;
  const from = Math.max(0, value.start - 120);
  const found = FREQUENCY.exec(plain.slice(from, value.start));
  if (found !== null) found.index += from;
  return found;
}

function placed({ node, prose }: Statement, start: number, end: number): Pick<Proposal, 'number' | 'span' | 'text'> {
  return {
    ...(node.number !== undefined && { number: node.number }),
    span: sourceSpan(prose, start, end),
    text: prose.text,
  };
}

const endOf = (value: Value): number => value.twin?.found.end ?? value.found.end;

function passed(statement: Statement, value: Value): PassedOver {
  return { ...placed(statement, value.start, endOf(value)), value: readValue(value.found, value.unit) };
}

/** Whether the place, or the whole paragraph, stands in brackets. */
function isOptional({ prose, node }: Statement, at: number): boolean {
  return node.optional || inBrackets(prose.text, at);
}

const methodsOf = ({ designations }: Statement): readonly string[] =>
  designations.map(({ text }) => text.replace(/\s+/g, ' '));

function resultProposal(statement: Statement, result: WordResult, conditions: readonly ReadValue[]): Proposal {
  const { plain, label } = statement;
  const name = nameOf(statement, { until: result.start, from: 0, to: plain.length }, undefined, undefined);
  const methods = methodsOf(statement);
  const isNamed = label !== undefined && methods.length > 0;
  const isOpen = isOptional(statement, result.start);
  const confidence: Confidence = isNamed ? 'high' : 'medium';
  return {
    ...placed(statement, result.start, result.end),
    characteristic: label ?? result.words.replace(/^no (?:(?:visible|evidence of|signs? of|uncontrolled) )?/i, ''),
    ...(name.subject && { subject: name.subject }),
    compare: 'equals',
    value: { text: result.words },
    methods,
    conditions,
    confidence: isOpen ? lower(confidence) : confidence,
    reasons: [
      'a result in words',
      isNamed ? 'a named property with its method' : 'no label with a method names the property',
      ...(isOpen ? [IN_BRACKETS] : []),
    ],
  };
}

/** All that a result in words is measured at, in the order of the text. */
function conditionsOf(
  plain: string,
  words: string,
  values: readonly Value[],
): { readonly parts: readonly Part[]; readonly read: readonly ReadValue[] } {
  const own = values.flatMap((value): readonly Part[] => [
    value,
    ...(value.twin === undefined ? [] : [value.twin]),
    ...value.conditions,
  ]);
  const parts = own.length === 0 ? conditionsIn(plain, words) : own;
  const inOrder = [...parts].sort((a, b) => a.found.start - b.found.start);
  return { parts: inOrder, read: inOrder.map(({ found, unit }) => readValue(found, unit)) };
}

/** A proposal, a question, or undefined for a value that nothing is asked of. */
function readOne(
  statement: Statement,
  value: Value,
  previous: Value | undefined,
  comparator: Comparator | undefined,
  isInherited: boolean,
  place: Place,
  earlier: Proposal | undefined,
): Proposal | Question | undefined {
  const { plain, body, label, titles } = statement;
  const frequency = frequencyBefore(plain, value);
  const asks = body > 0 || earlier !== undefined || ASKS.test(plain);
  const isDescribing = isDescriptor(statement, value);
  if (
    frequency === null &&
    value.found.upper === undefined &&
    comparator === undefined &&
    !value.found.number.tolerance
  ) {
    const isAnswer = isDescribing && value.kind !== 'slope';
    const isListed = titles.some((title) => /\bsubmittals?\b/i.test(title));
    if (!asks || isListed || (isDescribing && !isAnswer)) return undefined;
    if (!isDescribing) return noComparator(statement, value);
  }
  const until =
    comparator !== undefined && comparator.start < value.start && !isInherited ? comparator.start : value.start;
  const name = nameOf(statement, { until, ...place }, value, comparator);
  // "Not less than 6 mm and not more than 13 mm": the second is about the same as the first.
  const isSameAgain =
    earlier !== undefined &&
    earlier.value?.kind === value.kind &&
    !/[a-z]{3}/i.test(plain.slice(place.from, until).replace(JOINTS, ''));
  const isLimit =
    !isSameAgain && frequency === null && comparator?.threshold !== true && value.found.others === undefined;
  const property = isSameAgain ? earlier.property : isLimit ? name.property : undefined;
  const ownWords = isSameAgain ? earlier.characteristic : name.characteristic;
  const read = readValue(value.found, value.unit);
  const given = howAsked(value, comparator, isInherited, frequency !== null);
  const trust = confidenceOf({
    given,
    comparator,
    kind: value.kind,
    property,
    besides: isSameAgain ? [] : (name.besides ?? []),
    isWeak: name.weak,
    hasLabel: label !== undefined || frequency !== null,
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

/** A sentence that asks for an order of work and has no value. */
function orderOfWork(statement: Statement): readonly Proposal[] {
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

/** Brackets around numbers are asked about once, with the value. */
function withoutRepetition(questions: readonly Question[]): readonly Question[] {
  const open = questions.filter(({ kind, values }) => kind === 'choice left open' && values.length > 0);
  return questions.filter(
    (question) =>
      question.kind !== 'choice left open' ||
      open.includes(question) ||
      !open.some(({ span }) => span.start - 1 <= question.span.start && span.end + 24 >= question.span.end),
  );
}

function frequencyName(plain: string, frequency: RegExpExecArray): string {
  const words = frequency[0].trim();
  const from = Math.max(0, frequency.index - 60);
  const before = plain
    .slice(from, frequency.index)
    // A word that was cut in two is left out.
    .replace(from === 0 ? /^$/ : /^\S*\s/, '')
    .replace(/^.*[.;:]\s*/, '')
    .trim();
  return `frequency: ${`${before} ${words}`.trim()}`.slice(0, 120);
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

/** Whether a place stands inside of square brackets. */
export function inBrackets(text: string, at: number): boolean {
  let depth = 0;
  for (let i = 0; i < at; i++) {
    if (text[i] === '[') depth++;
    else if (text[i] === ']' && depth > 0) depth--;
  }
  return depth > 0;
}
