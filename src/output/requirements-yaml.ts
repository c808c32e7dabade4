/**
 * A reading as a specification document in YAML: every requirement unconfirmed, with its place, confidence and reasons
 * in a comment. What could not be read stands in comments below, so that the whole output is one valid document.
 */
import { isQuantity } from '../specification/printed.js';
import type { PassedOver, Proposal, Question, ReadValue } from '../specification/types.js';
import type { Submittal } from '../specification/submittal-items.js';
import { MEASURES } from '../model/measures.js';
import { lineColumn } from '../reading/source.js';
import type { SourceFile } from '../reading/types.js';
import { oneLine, safeJson } from './escape.js';
import { countsText, isCitable, paragraphText, REQUIREMENTS_CAUTION } from './requirements.js';
import type { ReadSpecification } from './requirements.js';

/** Longest texts that the schema of a specification takes. */
const PROSE_LENGTH = 2000;
const WORD_LENGTH = 200;

const place = (file: SourceFile, offset: number): string => {
  const { line, column } = lineColumn(file, offset);
  return `${line}:${column}`;
};

/** A scalar in double quotes: JSON strings are YAML. */
const quoted = (text: string, length = PROSE_LENGTH): string => safeJson(oneLine(text).slice(0, length));

/** A comment never leaves its line, whatever the section holds. */
const comment = (text: string): string => `# ${oneLine(text)}`;

/** The document, or comments alone when nothing was found that a document could hold. */
export function printRequirementsYaml(read: ReadSpecification): string {
  return `${[...documentLines(read), '', ...remarkLines(read)].join('\n')}\n`;
}

/** The document without the remarks below it; empty when it would hold nothing. */
export function documentLines({ file, reading, section, title }: ReadSpecification): string[] {
  const proposals = reading.proposals.filter(isCitable);
  const submittals = reading.submittals.filter(isCitable);
  if (proposals.length + submittals.length === 0) return [];
  const lines = [
    comment(REQUIREMENTS_CAUTION),
    'kind: specification',
    `section: ${quoted(section)}`,
    `title: ${quoted(title, WORD_LENGTH)}`,
  ];
  if (proposals.length > 0) {
    lines.push('requirements:');
    for (const proposal of proposals) lines.push(...requirementLines(file, proposal));
  }
  if (submittals.length > 0) {
    lines.push('submittals:');
    for (const submittal of submittals) lines.push(...submittalLines(file, submittal));
  }
  return lines;
}

/** What else was read from the value: kept in the comment, because a requirement has one value. */
function alsoText({ also, conditions, sequence }: Proposal): string {
  return [
    ...(also === undefined ? [] : [`also printed: ${also.text}`]),
    ...(conditions.length === 0 ? [] : [`measured at ${conditions.map(({ text }) => text).join(', ')}`]),
    ...(sequence === undefined ? [] : [`order: ${sequence}`]),
  ].join('; ');
}

function requirementLines(file: SourceFile, proposal: Proposal): string[] {
  const { number = '', property, characteristic, subject, compare, value, methods, text } = proposal;
  const named =
    property !== undefined && value !== undefined && fits(property, value)
      ? [`    property: ${property}`]
      : characteristic !== undefined || property !== undefined
        ? [`    characteristic: ${quoted(characteristic ?? property ?? '', WORD_LENGTH)}`]
        : [];
  const also = alsoText(proposal);
  return [
    `  ${comment(`${place(file, proposal.span.start)} ${proposal.confidence}: ${proposal.reasons.join('; ')}`)}`,
    ...(also === '' ? [] : [`  ${comment(also)}`]),
    `  - paragraph: ${quoted(number)}`,
    '    confirmed: false',
    ...named,
    ...(subject === undefined ? [] : [`    subject: ${subject}`]),
    ...(compare === undefined || value === undefined ? [] : [`    ${keyOf(compare)}: ${valueText(property, value)}`]),
    ...(methods.length === 0 ? [] : [`    method: ${quoted(methods.join(', '), WORD_LENGTH)}`]),
    `    text: ${quoted(text)}`,
  ];
}

const keyOf = (compare: NonNullable<Proposal['compare']>): string => (compare === 'between' ? 'equals' : compare);

function fits(property: keyof typeof MEASURES, value: ReadValue): boolean {
  const { dimension } = MEASURES[property];
  return dimension === 'count' ? Number.isInteger(value.base) : isQuantity(value.text, dimension);
}

/** A number of pieces is a number; every other value is text with its unit. */
function valueText(property: Proposal['property'], value: ReadValue): string {
  const isCount = property !== undefined && MEASURES[property].dimension === 'count' && fits(property, value);
  return isCount ? String(value.base) : quoted(value.text, WORD_LENGTH);
}

function submittalLines(file: SourceFile, { number = '', item, of, text, span }: Submittal): string[] {
  return [
    `  ${comment(place(file, span.start))}`,
    `  - paragraph: ${quoted(number)}`,
    `    item: ${item}`,
    ...(of === undefined ? [] : [`    of: ${quoted(of, WORD_LENGTH)}`]),
    `    text: ${quoted(text)}`,
    '    confirmed: false',
  ];
}

/** Questions, what has no number to be cited by, and the counts, as comments. */
function remarkLines({ file, reading }: ReadSpecification): string[] {
  const lines: string[] = [];
  const uncited = [...reading.proposals, ...reading.submittals].filter((one) => !isCitable(one));
  if (uncited.length > 0) {
    lines.push(comment('Found in paragraphs without a number; number the paragraph, then read again:'));
    for (const one of uncited) lines.push(comment(`${place(file, one.span.start)} ${uncitedText(one)}`));
    lines.push('#');
  }
  if (reading.questions.length > 0) {
    lines.push(comment('Not read, because it can be meant in more than one way:'));
    for (const question of reading.questions) lines.push(comment(questionText(file, question)));
    lines.push('#');
  }
  if (reading.passedOver.length > 0) {
    lines.push(comment('Numbers passed over, because nothing is asked of them or they cannot be read:'));
    for (const passed of reading.passedOver) lines.push(comment(passedOverText(file, passed)));
    lines.push('#');
  }
  lines.push(comment(`${countsText(reading)}.`));
  return lines;
}

export function uncitedText(one: Proposal | Submittal): string {
  if ('item' in one) return `submittal: ${one.item}${one.of === undefined ? '' : ` of ${one.of}`}`;
  const { property, characteristic, compare, value, sequence } = one;
  return [property ?? characteristic, compare === undefined ? sequence : keyOf(compare), value?.text]
    .filter((part) => part !== undefined)
    .join(' ');
}

/** `212:14 3.3.3.b choice left open: The value is ... Which value applies? Printed: 1 mm, 40 mil.` */
export function questionText(file: SourceFile, question: Question): string {
  const { kind, read, ask, values } = question;
  const printed = values.length === 0 ? '' : ` Printed: ${values.map(({ text }) => text).join(', ')}.`;
  return `${place(file, question.span.start)} ${paragraphText(question)}, ${kind}: ${read} ${ask}${printed}`;
}

/** `30:14 1.1.A, 1.27 L/(s m2): in a definition` */
export function passedOverText(file: SourceFile, passed: PassedOver): string {
  const { span, value, reason } = passed;
  return `${place(file, span.start)} ${paragraphText(passed)}, ${value.text}: ${reason}`;
}
