/**
 * From one statement to what it asks for: proposals with a confidence and its reasons, and questions wherever the text
 * can be read in more than one way. Nothing ambiguous is decided here.
 */
import { comparatorOf } from './comparators.js';
import type { Comparator } from './comparators.js';
import { isDescriptor, nameOf } from './naming.js';
import { openQuestion, questionsAbout } from './questions.js';
import { readValue } from './printed.js';
import { sourceSpan } from './prose.js';
import { wordResult } from './results.js';
import type { Statement } from './statements.js';
import type { PassedOver, Proposal, Question, Confidence } from './types.js';
import { conditionsIn, valuesIn } from './values.js';
import type { Value } from './values.js';

/** What one statement gives. */
export interface StatementReading {
  readonly proposals: readonly Proposal[];
  readonly questions: readonly Question[];
  readonly passedOver: readonly PassedOver[];
}

const ORDER = /\b(?:prior to|before|after|until|not later than|no later than|following)\b[^.;]*/i;
const ASKS =
  /\b(?:shall|must|required|is to be|are to be|do not|ensure|verify)\b|^[[\]\s"(]*(?:(?:where|when|if|at|for|on|over|after|before|in|with|prior|using|unless)\b[^,]*,\s*)?(?:[a-z]+ly )?(?:apply|extend|lap|overlap|install|space|provide|allow|cure|set|place|turn|hold|leave|maintain|store|test|submit|notify|keep|use|fill|seal|reinforce|treat|cover|carry|continue|terminate|anchor|fasten|limit|perform|conduct|take|wait|prime|clean|protect|form|slope|project|run|bed|tool|coat|embed|locate|position|measure|repair|obtain|retain|deliver|build|construct|flash|wrap|center|attach|secure|expose|complete|remove|replace|make|mix|recoat|stop|begin|do|mask)\b/i;
const FREQUENCY =
  /\b(?:(?:at least |minimum (?:of )?|not (?:less|fewer) than )?(?:one|two|three|four|five|a|an|\d+)\s(?:[\w-]+\s){0,5}(?:per|for (?:each|every)|in (?:each|every)|every)|every|at intervals of|for each|per)\s*$/i;

function lower(confidence: Confidence): Confidence {
  return confidence === 'high' ? 'medium' : 'low';
}

/** What comes behind and before a value belongs to it up to the next one. */
function around(statement: Statement, values: readonly Value[], at: number): Comparator | undefined {
  const value = values[at];
  if (value === undefined) return undefined;
  const from = values[at - 1]?.end ?? 0;
  const to = values[at + 1]?.start ?? statement.plain.length;
  const near = (end: number): Comparator | undefined =>
    comparatorOf({ text: statement.plain, start: value.start, end, from, to, kind: value.kind });
  // Behind the twin first; then between the two: "3 inches minimum (75 mm)".
  const whole = near(value.end);
  if (whole !== undefined) return whole;
  return near(value.found.end);
}

/** Reads one statement. */
export function readStatement(statement: Statement): StatementReading {
  const proposals: Proposal[] = [];
  const questions: Question[] = [...questionsAbout(statement)];
  const passedOver: PassedOver[] = [];
  const { prose, plain, body, designations, titles, node } = statement;
  const words = `${titles.at(-1) ?? ''} ${prose.text}`;
  const placed = { ...(node.number !== undefined && { number: node.number }), text: prose.text };
  const methods = designations.map(({ text }) => text.replace(/\s+/g, ' '));
  const order = ORDER.exec(plain)?.[0].trim();

  const result = wordResult(prose.text, body, designations.length > 0);
  const values = valuesIn(plain, words, designations.length > 0 || body > 0).filter(
    (value) =>
      result === undefined ||
      value.start >= result.end ||
      (/\d/.test(prose.text.slice(value.start, value.end)) && value.found.units.length > 0),
  );
  if (result !== undefined && values.every((value) => value.start >= result.end)) {
    const name = nameOf(statement, result.start, undefined, undefined);
    const isNamed = statement.label !== undefined && methods.length > 0;
    const bracketed = inBrackets(prose.text, result.start) || node.optional;
    proposals.push({
      ...placed,
      span: sourceSpan(prose, result.start, result.end),
      characteristic: name.characteristic ?? result.words,
      ...(name.subject && { subject: name.subject }),
      compare: 'equals',
      value: { text: result.words },
      methods,
      conditions: conditionsIn(plain, words).map((condition) => readValue(condition.found, condition.unit)),
      confidence: bracketed ? lower(isNamed ? 'high' : 'medium') : isNamed ? 'high' : 'medium',
      reasons: [
        'a result in words',
        isNamed ? 'a named property with its method' : 'no label names the property',
        ...(bracketed ? ['it stands in brackets that are still to be decided'] : []),
      ],
    });
    return { proposals, questions, passedOver };
  }

  let shared: Comparator | undefined;
  values.forEach((value, at) => {
    const own = around(statement, values, at);
    const asked = openQuestion(statement, value, own);
    if (asked === 'nothing') return;
    if (asked !== undefined) {
      questions.push(asked);
      shared = own;
      return;
    }
    const span = sourceSpan(prose, value.start, value.twin?.found.end ?? value.found.end);
    const read = readValue(value.found, value.unit);
    const also = value.twin === undefined ? undefined : readValue(value.twin.found, value.twin.unit);
    const frequency = FREQUENCY.exec(plain.slice(0, value.start));
    const isFrequency =
      frequency !== null && (value.kind === 'area' || value.kind === 'length' || value.kind === 'time');
    const previous = values[at - 1];
    const joint = previous === undefined ? '' : plain.slice(previous.end, value.start);
    const inherited =
      own === undefined &&
      shared !== undefined &&
      previous?.kind === value.kind &&
      /^\s*[^.;:]{0,60}\b(?:and|or|by|x)\s(?:[a-z]+ ){0,4}$/i.test(joint)
        ? shared
        : undefined;
    const comparator = own ?? inherited;
    shared = comparator;
    const reasons: string[] = [];
    let score = 0;
    let compare: Proposal['compare'];
    if (isFrequency) {
      // "One test per 1000 square feet" asks for at least that many.
      compare = 'atLeast';
      score++;
      reasons.push('a frequency: at least once in each such stretch');
    } else if (value.found.upper !== undefined) {
      compare = 'between';
      score++;
      reasons.push('a range');
    } else if (comparator !== undefined) {
      compare = comparator.compare === 'unclear' ? undefined : comparator.compare;
      if (inherited === undefined) score++;
      reasons.push(
        inherited === undefined
          ? `the comparator "${comparator.words}"`
          : `the comparator "${comparator.words}" of the value before`,
      );
      if (comparator.turned) reasons.push('turned around by a prohibition');
      if (comparator.strict) reasons.push('the value itself is not allowed');
    } else if (isDescriptor(statement, value)) {
      if (!ASKS.test(plain) || value.kind === 'slope' || value.kind === 'count') {
        passedOver.push({ ...placed, span, value: read });
        return;
      }
      compare = 'equals';
      reasons.push('a size that describes what is asked for, without a comparator');
    } else if (body > 0 || ASKS.test(plain)) {
      questions.push(noComparator(statement, value));
      return;
    } else {
      passedOver.push({ ...placed, span, value: read });
      return;
    }
    if (compare === undefined) return;
    const name = nameOf(
      statement,
      comparator !== undefined && comparator.start < value.start ? comparator.start : value.start,
      value,
      comparator,
    );
    const isThreshold = comparator?.threshold === true;
    if (value.kind === undefined) reasons.push('no unit, a number only');
    else if (!isFrequency) {
      score++;
      reasons.push('a known unit');
    }
    if (isFrequency) score++;
    const property = isThreshold || isFrequency || value.found.others !== undefined ? undefined : name.property;
    if (property !== undefined) reasons.push(`the words name ${property}`);
    else if (statement.label !== undefined) reasons.push('the property has a label');
    else reasons.push("the property is in the section's words");
    if (property !== undefined || statement.label !== undefined) score++;
    let confidence: Confidence = score >= 3 ? 'high' : score === 2 ? 'medium' : 'low';
    if (isThreshold) {
      confidence = 'low';
      reasons.push('it may only say where something applies');
    }
    if (property !== undefined && name.weak) {
      confidence = lower(confidence);
      reasons.push('the property is named by the title above');
    }
    if (inBrackets(prose.text, value.start) || node.optional) {
      confidence = lower(confidence);
      reasons.push('it stands in brackets that are still to be decided');
    }
    if (also !== undefined) reasons.push('metric and US values agree');
    proposals.push({
      ...placed,
      span,
      ...(property === undefined
        ? { characteristic: isFrequency ? frequencyName(plain, frequency) : (name.characteristic ?? 'not named') }
        : { property }),
      ...(name.subject && { subject: name.subject }),
      compare,
      value: read,
      ...(also && { also }),
      methods,
      conditions: value.conditions.map((condition) => readValue(condition.found, condition.unit)),
      ...(order !== undefined && { sequence: order }),
      confidence,
      reasons,
    });
  });
  if (values.length === 0 && order !== undefined && /\b(?:prior to|before|until)\b/i.test(order) && ASKS.test(plain)) {
    const name = nameOf(statement, plain.indexOf(order), undefined, undefined);
    proposals.push({
      ...placed,
      span: sourceSpan(prose, 0, prose.text.length),
      ...(name.subject && { subject: name.subject }),
      methods,
      conditions: [],
      sequence: order,
      confidence: 'medium',
      reasons: [`an order of work: "${order.split(' ').slice(0, 3).join(' ')}"`],
    });
  }
  return { proposals, questions: withoutRepetition(questions), passedOver };
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
  const before = plain
    .slice(Math.max(0, frequency.index - 60), frequency.index)
    .replace(/^\S*\s/, '')
    .replace(/^.*[.;:]\s*/, '')
    .trim();
  return `frequency: ${`${before} ${words}`.trim()}`.slice(0, 120);
}

function noComparator(statement: Statement, value: Value): Question {
  const { prose, node, label } = statement;
  const shown = prose.text.slice(value.start, value.twin?.found.end ?? value.found.end);
  const values = [
    readValue(value.found, value.unit),
    ...(value.twin === undefined ? [] : [readValue(value.twin.found, value.twin.unit)]),
  ];
  return {
    kind: 'no comparator',
    ...(node.number !== undefined && { number: node.number }),
    span: sourceSpan(prose, value.start, value.twin?.found.end ?? value.found.end),
    text: prose.text,
    read: `"${shown}" stands${label === undefined ? '' : ` under "${label}"`} without words such as "at least" or "maximum".`,
    ask: 'Is it the least value, the greatest, or the only one allowed?',
    compare: 'unclear',
    values,
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
