/** What was read from a section, in the words and the order that every format prints. */
import type { Confidence, Proposal, Question, SectionReading } from '../specification/types.js';
import type { SourceFile } from '../reading/types.js';

/** A reading with the file it counts in, and the heading of the document to write. */
export interface ReadSpecification {
  readonly file: SourceFile;
  readonly reading: SectionReading;
  /** `07 27 26` */
  readonly section: string;
  readonly title: string;
}

export const REQUIREMENTS_CAUTION =
  'Proposals read from prose. Each has to be confirmed against the section by a person; the contract documents govern.';

export interface Counts {
  readonly proposals: number;
  readonly byConfidence: Readonly<Record<Confidence, number>>;
  readonly submittals: number;
  readonly questions: number;
  readonly passedOver: number;
  readonly statements: number;
}

export function countsOf({ proposals, submittals, questions, passedOver, statements }: SectionReading): Counts {
  const byConfidence = { high: 0, medium: 0, low: 0 };
  for (const { confidence } of proposals) byConfidence[confidence]++;
  return {
    proposals: proposals.length,
    byConfidence,
    submittals: submittals.length,
    questions: questions.length,
    passedOver: passedOver.length,
    statements,
  };
}

/** `24 requirements proposed (10 high, 8 medium, 6 low), 18 submittals, 12 questions, ...` */
export function countsText(reading: SectionReading): string {
  const { proposals, byConfidence, submittals, questions, passedOver, statements } = countsOf(reading);
  const { high, medium, low } = byConfidence;
  return [
    `${plural(statements, 'sentence or row', 'sentences and rows')} read`,
    `${plural(proposals, 'requirement')} proposed (${high} high, ${medium} medium, ${low} low confidence)`,
    plural(submittals, 'submittal'),
    `${plural(questions, 'question')} to ask`,
    `${plural(passedOver, 'number')} passed over`,
  ].join(', ');
}

function plural(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** Words to tell what a question is about: its paragraph, or that it has none. */
export function paragraphText({ number }: Pick<Question | Proposal, 'number'>): string {
  return number ?? 'no number';
}

/** The paragraph numbers that the schema of a specification takes. */
const PARAGRAPH = /^\d{1,2}\.\d{1,2}(\.[A-Za-z0-9]{1,4}){0,8}$/;

/** Whether a requirement can be cited, which an entry of a specification needs. */
export function isCitable({ number }: { readonly number?: string }): boolean {
  return number !== undefined && PARAGRAPH.test(number);
}
