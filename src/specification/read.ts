/** Reads a whole section: outline, statements, proposals, submittals and questions. */
import { outlineOf, walk } from './outline.js';
import type { OutlineOptions } from './outline.js';
import { readStatement } from './propose.js';
import { statementsOf } from './statements.js';
import { SubmittalReader } from './submittal-items.js';
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
  let statements = 0;
  for (const { node, titles } of walk(outline.nodes)) {
    submittals.read(node, titles);
    if (submittals.entries.has(node)) continue;
    for (const statement of statementsOf(node, titles)) {
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
