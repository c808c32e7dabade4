/** What has to be asked about one value: no unit, no comparator, a lost sign, twins that disagree. */
import { agreement } from './agreement.js';
import type { Measurement } from './agreement.js';
import type { Comparator } from './comparators.js';
import { isRating } from './naming.js';
import { placed } from './placing.js';
import { offeredValues, readValue } from './printed.js';
import { shownText } from './questions.js';
import type { Statement } from './statements.js';
import type { Question, QuestionKind } from './types.js';
import type { ReadUnit } from './units.js';
import type { Part, Value } from './values.js';

const INDEX =
  /\b(?:flame[- ]spread|smoke[- ]develop\w*|rating|index|pH|hardness|grade|class|coefficient|SHGC|CRF|STC|OITC)\b[^;.]*$/i;
/** What has a unit. */
const MEASURED =
  /\b(?:thickness|width|depth|height|length|diameter|spacing|weight|density|strength|adhesion|elongation|permeance|transmission|absorption|shrinkage|temperature|pressure|leakage|peel|tear|tensile|solids|content)\b/i;
/** What may stand beside a lone number: a standard that is covered, and the words that name it. */
const BESIDE = /^(?:[\s.,;()[\]~]|\b(?:by|per|to|using|tested|when tested|in accordance with|according to)\b)*$/i;
const SIZE = /^(?:(?:high|wide|long|deep|thick|tall)\b|in (?:height|width|length|depth|thickness|diameter)\b)/i;
/** Words that can hold for one value only. */
const ONE_LIMIT =
  /^(?:not? less than|at least|(?:a |the )?min(?:imum)?\b.*|not? more than|at most|(?:a |the )?max(?:imum)?\b.*)$/i;

/**
 * The question a value raises, if any.
 *
 * @returns `nothing` for a number that is no value: without a unit, and without words that make it a limit
 */
export function openQuestion(
  statement: Statement,
  value: Value,
  comparator: Comparator | undefined,
): Question | 'nothing' | undefined {
  const { found, unit, twin } = value;
  const { text } = statement.prose;
  const stop = twin?.found.end ?? found.end;
  const shown = shownText(text, value.start, stop);
  const values = [...offeredValues(found, unit), ...(twin === undefined ? [] : offeredValues(twin.found, twin.unit))];
  const ask = (kind: QuestionKind, read: string, question: string): Question => ({
    kind,
    ...placed(statement, value.start, stop),
    read,
    ask: question,
    values,
    ...(comparator !== undefined && { compare: comparator.compare }),
    ...(statement.label !== undefined && { label: statement.label }),
  });
  if (found.number.choices !== undefined || twin?.found.number.choices !== undefined) {
    if (value.kind === undefined && values.length === 0) return 'nothing';
    return ask(
      'choice left open',
      `The value is a choice left open: "${shown}".`,
      'Which value applies to this project?',
    );
  }
  if (found.unknownUnit) {
    if (comparator === undefined) return 'nothing';
    return ask('unknown unit', `"${found.unitText}" in "${shown}" is not a unit known here.`, 'Which unit is meant?');
  }
  if (found.units.length === 0) return bare(statement, value, comparator, ask);
  if (found.bareDegrees && /\btemperatures?\b|\bambient\b|\bcold|\bwarm|\bheat/i.test(text) && comparator !== undefined)
    return ask('no unit', `"${shown}" does not say which degrees.`, 'Are degrees C or degrees F meant?');
  const condition = value.conditions.find(({ bare, odd }) => bare || odd);
  if (condition?.bare === true) {
    return ask(
      'lost sign',
      `"${text.slice(found.start, condition.end)}": a pressure follows the value without "at".`,
      'Is the second value the test pressure, and has "at" got lost?',
    );
  }
  if (condition?.odd === true) {
    return ask(
      'lost sign',
      `"${text.slice(condition.start, condition.end)}" stands where a test pressure is expected, and is a length.`,
      'Is it a height of water, a thickness, or left over from another text?',
    );
  }
  if (value.agreement?.agree === false) {
    return value.agreement.lostSign
      ? ask(
          'lost sign',
          `"${shown}" do not agree as printed, but would with a minus sign.`,
          'Has a minus sign got lost?',
        )
      : ask('values disagree', `The values in "${shown}" do not say the same.`, 'Which of the two governs?');
  }
  if (twin !== undefined && (twin.unit === undefined || unit === undefined))
    return ask('unknown unit', `The units in "${shown}" do not measure the same thing.`, 'Which unit is meant?');
  if (
    found.upper !== undefined &&
    unit !== undefined &&
    unit.toBase(found.number.value) > unit.toBase(found.upper.value)
  )
    return ask(
      'reversed range',
      `The range "${shown}" begins with its larger end.`,
      'Are the two values swapped, or is one of them wrong?',
    );
  // "A minimum of 2 to 4 hours": one limit, with two values.
  if (found.upper !== undefined && found.nominal === undefined && ONE_LIMIT.test(comparator?.words ?? ''))
    return ask(
      'conflicting comparators',
      `"${shown}" is a range, and is called "${comparator?.words ?? ''}".`,
      'Which of the two values is the limit?',
    );
  if (comparator?.unclear === true)
    return ask(
      'no comparator',
      `"${comparator.words}" before "${shown}" may name what is refused, or where something else is done.`,
      'Is it the least value, the greatest, or no limit at all?',
    );
  if (comparator?.conflicting !== undefined)
    return ask(
      'conflicting comparators',
      `"${shown}" is called both "${comparator.conflicting}" and "${comparator.words}".`,
      'Is it the least or the greatest value?',
    );
  return (
    lostPower(statement, value, ask) ??
    lostMinus(statement, value, ask) ??
    doubtfulCondition(statement, value.conditions)
  );
}

type Ask = (kind: QuestionKind, read: string, question: string) => Question;

/** A number without a unit: a count when a noun follows, a question under a label, else no value. */
function bare(
  statement: Statement,
  value: Value,
  comparator: Comparator | undefined,
  ask: Ask,
): Question | 'nothing' | undefined {
  const { plain, body, label } = statement;
  const behind = plain.slice(value.end).trim();
  if (isRating(statement, value) || (value.found.upper !== undefined && value.found.nominal === undefined))
    return undefined;
  const isAlone = body > 0 && BESIDE.test(plain.slice(body, value.start)) && BESIDE.test(behind);
  // An index alone under its label: "Flame spread index: 25", "Hardness: 30, ASTM C661".
  if (comparator === undefined && isAlone && INDEX.test(label ?? ''))
    return ask(
      'no comparator',
      `"${plain.slice(value.start, value.end)}" stands under "${label ?? ''}" without words such as "at least" or "maximum".`,
      'Is it the least value, the greatest, or the only one allowed?',
    );
  // "Elongation: ASTM D412, 450."
  if (comparator === undefined && isAlone && MEASURED.test(label ?? ''))
    return ask(
      'no unit',
      `"${plain.slice(value.start, value.end)}" under "${label ?? ''}" has no unit, and no words such as "at least" or "maximum".`,
      'Which unit is meant, and is it the least value or the greatest?',
    );
  // "Do not walk on it for 24."
  if (
    comparator === undefined &&
    !/\b(?:is|are|was|were) for\s*$/i.test(plain.slice(0, value.start)) &&
    /\bfor\s*$/i.test(plain.slice(0, value.start)) &&
    /^\.?$/.test(behind)
  )
    return ask('no unit', `"for ${plain.slice(value.start, value.end)}" has no unit.`, 'Which unit is meant?');
  if (comparator === undefined || value.found.others !== undefined) return 'nothing';
  // "No less than 50 high": a size, whatever its unit was.
  if (SIZE.test(behind))
    return ask('no unit', `"${plain.slice(value.start, value.end)}" has no unit.`, 'Which unit is meant?');
  // Indexes have no unit.
  if (INDEX.test(plain.slice(Math.max(0, value.start - 120), value.start))) return undefined;
  if (
    /^[a-z][a-z-]{2,}/i.test(behind) &&
    !/^(?:or|and|of|at|in|for|when|per|by|minimum|maximum|min|max)\b/i.test(behind)
  )
    return 'nothing';
  if (body > 0 && value.start >= body && label !== undefined)
    return ask(
      'no unit',
      `"${plain.slice(value.start, value.end)}" under "${label}" has no unit.`,
      'Which unit is meant?',
    );
  return 'nothing';
}

/** A unit that has lost its exponent measures something else than the words beside it say. */
function lostPower({ prose, label }: Statement, { unit, found }: Value, ask: Ask): Question | undefined {
  if (unit?.kind !== 'permeability' && !(unit?.kind === 'speed' && unit.spelling === 'm/s')) return undefined;
  const words = label ?? prose.text;
  if (unit.kind === 'permeability' && /\bpermeance\b/i.test(words) && !/perm-?\s?in/i.test(found.unitText))
    return ask(
      'lost sign',
      `"${found.unitText}" is a unit of permeability, and the text speaks of permeance.`,
      'Has an exponent got lost (m2)?',
    );
  return undefined;
}

const COLD = /\blow[- ]temperature\b|\bcold[- ]temperature\b|\bcold flex/i;
/** In degrees C: no test of cold behavior is done above it. */
const COLD_TEST_DEGC = 5;

/** A test of cold behavior above freezing has probably lost its minus. */
function lostMinus({ prose, label }: Statement, { unit, found }: Part, ask: Ask): Question | undefined {
  if (unit?.kind !== 'temperature' || !COLD.test(label ?? prose.text)) return undefined;
  if (unit.toBase(found.number.value) <= COLD_TEST_DEGC) return undefined;
  return ask(
    'lost sign',
    `"${readValue(found, unit).text}" is warm for a test at low temperature.`,
    'Has a minus sign got lost?',
  );
}

/** Metric and US conditions of a test that do not agree, or one that has lost its sign. */
export function doubtfulCondition(statement: Statement, conditions: readonly Part[]): Question | undefined {
  const { prose, label } = statement;
  for (const [at, one] of conditions.entries()) {
    const ask: Ask = (kind, read, question) => ({
      kind,
      ...placed(statement, one.found.start, one.found.end),
      read,
      ask: question,
      values: conditions.map(({ found, unit }) => readValue(found, unit)),
      ...(label !== undefined && { label }),
    });
    const other = conditions.slice(at + 1).find(({ unit }) => unit?.kind === one.unit?.kind);
    const isTwin = other?.unit !== undefined && one.unit !== undefined && other.unit.system !== one.unit.system;
    const same = isTwin ? agreement(measured(one, one.unit), measured(other, other.unit)) : undefined;
    if (other !== undefined && same?.agree === false) {
      const shown = shownText(prose.text, one.found.start, other.found.end);
      return same.lostSign
        ? ask(
            'lost sign',
            `"${shown}" do not agree as printed, but would with a minus sign.`,
            'Has a minus sign got lost?',
          )
        : ask('values disagree', `The conditions in "${shown}" do not say the same.`, 'Which of the two governs?');
    }
    const warm = lostMinus(statement, one, ask);
    if (warm !== undefined) return warm;
  }
  return undefined;
}

function measured({ found }: Part, unit: ReadUnit): Measurement {
  return { number: found.number, ...(found.upper && { upper: found.upper }), unit };
}
