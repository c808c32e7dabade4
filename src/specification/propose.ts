/**
 * From one statement to what it asks for: proposals with a confidence and its reasons, and questions wherever the text
 * can be read in more than one way. Nothing ambiguous is decided here, and no number is lost: what is neither proposed
 * nor asked about is passed over with a reason.
 */
import { comparatorOf } from './comparators.js';
import type { Comparator } from './comparators.js';
import { isCountOf } from './frequency.js';
import { cover } from './masks.js';
import { isRating } from './naming.js';
import { askAboutOpenArticle, askWhichApplies } from './open-brackets.js';
import { endOf, placed } from './placing.js';
import { offeredValues, readValue } from './printed.js';
import { questionsAbout } from './questions.js';
import { conditionsOf, resultProposal, statedConditions } from './result-proposals.js';
import { wordResult } from './results.js';
import type { Statement } from './statements.js';
import type { PassedOver, PassedReason, Proposal, Question, QuestionKind, ReadValue } from './types.js';
import type { ValueKind } from './units.js';
import { orderOfWork, readOne } from './value-proposals.js';
import type { Place } from './value-proposals.js';
import { doubtfulCondition, openQuestion } from './value-questions.js';
import { membersOf, valuesIn } from './values.js';
import type { Value } from './values.js';

/** What one statement gives. */
export interface StatementReading {
  readonly proposals: readonly Proposal[];
  readonly questions: readonly Question[];
  readonly passedOver: readonly PassedOver[];
}

/** What a test is done at. */
const TEST_KINDS: ReadonlySet<ValueKind> = new Set(['pressure', 'time', 'temperature']);

const MISFIT: QuestionKind = 'method and property differ';
const WRONG_METHOD = 'the method named beside it is not known to measure it';

const valuesRead = ({ found, unit, twin }: Value): readonly ReadValue[] => [
  ...offeredValues(found, unit),
  ...(twin === undefined ? [] : offeredValues(twin.found, twin.unit)),
];

/** Reads one statement. */
export function readStatement(statement: Statement): StatementReading {
  const { prose, plain, body, designations, titles } = statement;
  const questions = questionsAbout(statement);
  const shown = designations.reduce((text, { start, end }) => cover(text, start, end), prose.text);
  const result = wordResult(shown, body, designations.length > 0);
  const words = `${titles.at(-1) ?? ''} ${prose.text}`;
  const values = valuesIn(plain, words, designations.length > 0 || body > 0);
  if (statement.isDefinition) {
    const open = questions.filter(({ kind }) => kind === 'choice left open' || kind === 'lost sign');
    const passedOver = values.map((value) => passed(statement, value, 'in a definition'));
    return { proposals: [], questions: open, passedOver };
  }
  if (statement.isSummary && placesOf(statement, values).every(({ own }) => own === undefined)) {
    const passedOver = values
      .filter(({ kind }) => kind !== undefined)
      .map((value) => passed(statement, value, 'in a summary'));
    return { proposals: [], questions: questions.filter(({ kind }) => kind === 'choice left open'), passedOver };
  }
  const isOfTest = (value: Value): boolean =>
    value.start >= (result?.end ?? 0) || (body === 0 && TEST_KINDS.has(value.kind ?? 'count'));
  const isOfResult = (value: Value): boolean =>
    isOfTest(value) || (value.kind === undefined && !isRating(statement, value));
  if (result !== undefined && values.every(isOfResult)) {
    const { parts, read } = conditionsOf(plain, words, values.filter(isOfTest));
    const doubt = doubtfulCondition(statement, parts);
    if (doubt !== undefined) return { proposals: [], questions: [...questions, doubt], passedOver: [] };
    const passedOver = values.filter((value) => !isOfTest(value)).map((value) => passed(statement, value, 'no unit'));
    return finished(statement, [resultProposal(statement, result, read)], questions, passedOver);
  }
  if (values.length === 0) {
    const stated = statedConditions(statement, words);
    return finished(statement, stated.length > 0 ? stated : orderOfWork(statement), questions, []);
  }
  const read = readValues(statement, values);
  const doubted = questions.some(({ kind }) => kind === MISFIT);
  if (doubted) {
    const named = values.flatMap(valuesRead);
    const about = questions.map((one) => (one.kind === MISFIT ? { ...one, values: named } : one));
    const proposals = read.proposals.map((one): Proposal => ({
      ...one,
      confidence: 'low',
      reasons: [...one.reasons, WRONG_METHOD],
    }));
    return finished(statement, proposals, [...about, ...read.questions], read.passedOver);
  }
  return finished(statement, read.proposals, [...questions, ...read.questions], read.passedOver);
}

function readValues(statement: Statement, values: readonly Value[]): StatementReading {
  const proposals: Proposal[] = [];
  const questions: Question[] = [];
  const passedOver: PassedOver[] = [];
  const places = placesOf(statement, values);
  let before: Comparator | undefined;
  values.forEach((value, at) => {
    const { place, own } = places[at] ?? {
      place: { from: 0, to: statement.plain.length, until: value.start },
      own: undefined,
    };
    const asked = openQuestion(statement, value, own);
    const isCount = isCountOf(statement, value, values[at + 1]);
    if (asked === 'nothing' && !isCount) {
      const reason = reasonOf(statement, value);
      if (reason !== undefined) passedOver.push(passed(statement, value, reason));
    } else if (asked !== undefined && asked !== 'nothing') questions.push(asked);
    if (asked !== undefined || isCount) {
      passedOver.push(...conditionsLeft(statement, value, asked));
      before = own;
      return;
    }
    const previous = values[at - 1];
    const shared = inherited(statement, value, previous, before) ?? ofTheNext(statement, value, values, places, at);
    before = own ?? shared;
    const members = differing(membersOf(value));
    for (const member of members) {
      const one = {
        value: member,
        previous,
        comparator: before,
        isInherited: own === undefined,
        isListed: members.length > 1,
      };
      const read = readOne(statement, one, place, proposals.at(-1));
      if (read !== undefined && !('kind' in read)) proposals.push(read);
      else {
        // What is asked of a list, or not asked of it, goes for all of it.
        if (read === undefined) passedOver.push(passed(statement, value, 'asks for nothing'));
        else questions.push(read);
        passedOver.push(...conditionsLeft(statement, value, read));
        break;
      }
    }
  });
  return { proposals, questions, passedOver };
}

/** "2.4 by 2.4 m" asks for one size twice. */
function differing(members: readonly Value[]): readonly Value[] {
  return members.filter(
    (one, at) => members.findIndex(({ found }) => found.number.value === one.found.number.value) === at,
  );
}

/** No number is lost: the conditions of a value that is not proposed, unless the question about it shows them. */
function conditionsLeft(
  statement: Statement,
  { conditions }: Value,
  asked: Question | 'nothing' | undefined,
): readonly PassedOver[] {
  const shown = typeof asked === 'object' ? asked.values.map(({ text }) => text) : [];
  return conditions
    .map(({ found, unit, start, end }): PassedOver => ({
      ...placed(statement, start, end),
      value: readValue(found, unit),
      reason: 'a condition of something that is not proposed',
    }))
    .filter(({ value }) => !shown.includes(value.text));
}

interface Placed {
  readonly place: Place;
  readonly own: Comparator | undefined;
}

/** The room of each value, and its own comparator: what comes behind and before a value belongs to it up to the next. */
function placesOf(statement: Statement, values: readonly Value[]): readonly Placed[] {
  const { plain } = statement;
  let from = 0;
  return values.map((value, at) => {
    const place = { from, to: values[at + 1]?.start ?? plain.length, until: value.start };
    const near = (end: number): Comparator | undefined =>
      comparatorOf({ text: plain, start: value.start, end, ...place, kind: value.kind });
    // Behind the twin first, then between the two: "3 inches minimum (75 mm)".
    const own = near(value.end) ?? near(endOf(value)) ?? near(value.found.end);
    from = Math.max(value.end, own?.end ?? 0);
    return { place, own };
  });
}

/** The statement's reading, with what has to be asked because it stands in a bracket. */
function finished(
  statement: Statement,
  proposals: readonly Proposal[],
  questions: readonly Question[],
  passedOver: readonly PassedOver[],
): StatementReading {
  const open = statement.isOpen ? askWhichApplies(statement, proposals, questions) : questions;
  const article = statement.isOpen && !statement.node.optional ? askAboutOpenArticle(statement, proposals) : [];
  return { proposals, questions: withoutRepetition([...open, ...article]), passedOver };
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

/** "8 feet by 6 feet minimum": what stands behind the last of two sizes holds for both. */
function ofTheNext(
  { plain }: Statement,
  value: Value,
  values: readonly Value[],
  places: readonly Placed[],
  at: number,
): Comparator | undefined {
  const next = values[at + 1];
  if (next === undefined || !areAlike(next.kind, value.kind)) return undefined;
  return /^\s*(?:by|x)\s*$/i.test(plain.slice(value.end, next.start)) ? places[at + 1]?.own : undefined;
}

const SHARE =
  /^\s*(?:of\b|times\b|that\b|x\b)|^\s*(?:the )?(?:\w+ )?(?:width|depth|thickness|diameter|height|length)\b/i;

/** Why a number that is no value is passed over; undefined for what is none at all, as the word "one". */
function reasonOf({ plain }: Statement, { found }: Value): PassedReason | undefined {
  // A blank holds no number, and is asked about as a bracket.
  if (found.number.choices !== undefined) return undefined;
  if (found.unknownUnit) return 'no known unit';
  const written = plain.slice(found.start, found.end);
  if (/\bhalf|third|quarter|fourth|eighth|^\d+\/\d+$/i.test(written) || SHARE.test(plain.slice(found.end)))
    return 'a share of something else';
  return /^one$/i.test(written) ? undefined : 'no unit';
}

function passed(statement: Statement, value: Value, reason: PassedReason): PassedOver {
  return { ...placed(statement, value.start, endOf(value)), value: readValue(value.found, value.unit), reason };
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
