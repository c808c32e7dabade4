/** What has to be asked where a whole paragraph or article stands in brackets: which of its values apply. */
import { placed } from './placing.js';
import type { Statement } from './statements.js';
import type { Proposal, Question, ReadValue } from './types.js';

const numbersOf = (proposals: readonly Proposal[]): readonly ReadValue[] =>
  proposals.flatMap(({ value, also, conditions }) => [
    ...(value?.base === undefined ? [] : [value]),
    ...(also === undefined ? [] : [also]),
    ...(value?.base === undefined ? conditions : []),
  ]);

/** The questions, where the one about the bracket names the values that stand in it. */
export function askWhichApplies(
  statement: Statement,
  proposals: readonly Proposal[],
  questions: readonly Question[],
): readonly Question[] {
  const values = numbersOf(proposals);
  return questions.map((question) =>
    question.kind === 'choice left open' && question.values.length === 0 && statement.node.optional
      ? { ...question, values }
      : question,
  );
}

/** One question for each value in an article whose bracket is open. */
export function askAboutOpenArticle(statement: Statement, proposals: readonly Proposal[]): readonly Question[] {
  const { text } = statement.prose;
  return proposals.flatMap((proposal): Question[] => {
    const values = numbersOf([proposal]);
    if (values.length === 0) return [];
    return [
      {
        kind: 'choice left open',
        ...placed(statement, 0, text.length),
        span: proposal.span,
        read: `"${values.map((value) => value.text).join(', ')}" stands in an article whose bracket is still to be decided.`,
        ask: 'Does the article apply to this project?',
        values,
      },
    ];
  });
}
