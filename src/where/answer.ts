/** The answers to "does this wall fit here?", and how they are counted and joined. */

/**
 * From the best to the worst to build on.
 *
 * Only a table of the code refuses a wall. The limits of the estimate are those of a foreign standard at second hand, so
 * a wall over them is neither permitted nor refused by it; it has an answer of its own.
 */
export const ANSWERS = ['fits', 'fits with conditions', 'estimate over limit', 'cannot tell', 'does not fit'] as const;
/** Those that the monthly estimate gives. */
export const MONTHS_ANSWERS = ['fits', 'fits with conditions', 'estimate over limit', 'cannot tell'] as const;
export type Answer = (typeof ANSWERS)[number];

/** What each answer means, for keys and notes. A clause without capital and full stop. */
export const MEANINGS: Readonly<Record<Answer, string>> = {
  fits: 'permitted by the table; in the estimate stays dry, or dries within the limits',
  'fits with conditions': 'if a condition of the table is kept, or a field that is not stated is as hoped',
  'cannot tell': 'a fact is missing, or what is known leaves it open',
  'estimate over limit':
    'not refused by the table; in the estimate more water gathers, or stays, than a limit known at second hand',
  'does not fit': 'not permitted by the table, or by one quoted from memory or at second hand that is to be confirmed',
};

export type Counts = Readonly<Record<Answer, number>>;

/** How many times each answer was given. */
export function counted(answers: Iterable<Answer>): Counts {
  const counts = Object.fromEntries(ANSWERS.map((a) => [a, 0])) as Record<Answer, number>;
  for (const answer of answers) counts[answer]++;
  return counts;
}

/** Of several answers the worst; `fits` for none. */
export function strictest(answers: readonly Answer[]): Answer {
  const place = Math.max(0, ...answers.map((a) => ANSWERS.indexOf(a)));
  return ANSWERS[place] as Answer;
}
