/** The four answers to "does this wall fit here?", and how they are counted and joined. */

/** From the best to the worst to build on. */
export const ANSWERS = ['fits', 'fits with conditions', 'cannot tell', 'does not fit'] as const;
export type Answer = (typeof ANSWERS)[number];

/** What each answer means, for keys and notes. A clause without capital and full stop. */
export const MEANINGS: Readonly<Record<Answer, string>> = {
  fits: 'permitted by the table; in the estimate stays dry, or dries within the limits',
  'fits with conditions': 'if a condition of the table is kept, or a field that is not stated is as hoped',
  'cannot tell': 'a fact is missing, or what is known leaves it open',
  'does not fit':
    'not permitted by the table, or by one quoted from memory that is to be confirmed; in the estimate gathers too much water, or does not dry',
};

export type Counts = Readonly<Record<Answer, number>>;

/** How many times each answer was given. */
export function counted(answers: Iterable<Answer>): Counts {
  const counts: Record<Answer, number> = { fits: 0, 'fits with conditions': 0, 'cannot tell': 0, 'does not fit': 0 };
  for (const answer of answers) counts[answer]++;
  return counts;
}

/** Of several answers the worst; `fits` for none. */
export function strictest(answers: readonly Answer[]): Answer {
  const place = Math.max(0, ...answers.map((a) => ANSWERS.indexOf(a)));
  return ANSWERS[place] as Answer;
}
