/** Reads a whole section: outline, statements, proposals, submittals and questions. */
import { covered } from './masks.js';
import { outlineOf, walk } from './outline.js';
import type { OutlineNode, OutlineOptions } from './outline.js';
import { readValue } from './printed.js';
import { sourceSpan } from './prose.js';
import { readStatement } from './propose.js';
import { quantitiesIn } from './quantities.js';
import { statementsOf } from './statements.js';
import type { Statement } from './statements.js';
import { SubmittalReader } from './submittal-items.js';
import { Surroundings } from './surroundings.js';
import type { PassedOver, Proposal, Question, SectionReading } from './types.js';

/**
 * Reads the text of a specification section.
 *
 * @param source plain text; for Markdown, with its markup blanked out at the same length
 * @returns proposals and questions in the order of the text; spans count in `source`
 */
export function readSection(source: string, options: OutlineOptions = {}): SectionReading {
  const outline = outlineOf(source, options);
  const proposals: Proposal[] = [];
  const questions: Question[] = outline.repeated.map(({ number, spans }) => ({
    kind: 'number used twice',
    number,
    span: spans[1] ?? { start: 0, end: 0 },
    text: '',
    read: `The number ${number} stands before ${spans.length} paragraphs.`,
    ask: 'Which number has each of them?',
    values: [],
  }));
  const passedOver: PassedOver[] = [];
  const submittals = new SubmittalReader();
  const surroundings = new Surroundings();
  let statements = 0;
  for (const { node, titles } of walk(outline.nodes)) {
    const within = surroundings.enter(node, titles);
    if (within.isOpen && node.type === 'article') questions.push(openArticle(node));
    submittals.read(node, titles);
    if (submittals.entries.has(node)) {
      const limits = limitsOfEntry(statementsOf(node, titles, within));
      proposals.push(...limits);
      passedOver.push(...numbersOfEntry(node, limits));
      continue;
    }
    for (const statement of statementsOf(node, titles, within)) {
      statements++;
      const read = readStatement(statement);
      proposals.push(...read.proposals);
      questions.push(...read.questions);
      passedOver.push(...read.passedOver);
    }
  }
  questions.sort((a, b) => a.span.start - b.span.start);
  return { outline, proposals, submittals: submittals.found, questions, passedOver, statements };
}

/** The bracket before the title of an article is asked about once. */
function openArticle(node: OutlineNode): Question {
  return {
    kind: 'choice left open',
    ...(node.number !== undefined && { number: node.number }),
    span: node.span,
    text: node.prose.text,
    read: `The article "${node.prose.text.replace(/^[[\]\s]+/, '').slice(0, 100)}" stands in a bracket that has still to be decided.`,
    ask: 'Does the article apply to this project?',
    values: [],
  };
}

/** "Strips of each color, at least 6 inches long": only what words limit; other numbers say what is submitted. */
function limitsOfEntry(statements: readonly Statement[]): readonly Proposal[] {
  return statements
    .flatMap((statement) => readStatement(statement).proposals)
    .filter(({ compare }) => compare === 'atLeast' || compare === 'atMost');
}

function numbersOfEntry(node: OutlineNode, limits: readonly Proposal[]): readonly PassedOver[] {
  const { prose, number } = node;
  return quantitiesIn(covered(prose.text))
    .filter((found) => found.units.length > 0)
    .map((found) => ({
      ...(number !== undefined && { number }),
      span: sourceSpan(prose, found.start, found.end),
      text: prose.text,
      value: readValue(found, found.units[0]),
      reason: 'in a list of submittals' as const,
    }))
    .filter(({ span }) => !limits.some((limit) => limit.span.start <= span.start && limit.span.end >= span.end));
}
