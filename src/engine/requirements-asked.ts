/**
 * Which requirements a rule asked for on the way to each of its outcomes, so that every requirement can be listed with
 * the results that depended on it.
 *
 * A rule is a generator: what it asks for between two outcomes belongs to the second of them, beside the requirements
 * its sources name.
 */
import type { Bearing } from './limits-of-specification.js';
import type { Limit, LimitQuery } from './limits.js';
import type { Outcome } from './result.js';

/** An outcome with the requirements it depended on. */
export interface Answer {
  readonly outcome: Outcome;
  readonly bearing: readonly Bearing[];
}

/** What one rule asked of one detail. */
export interface Asked {
  readonly answers: readonly Answer[];
  /** Asked for, and no outcome came of it. */
  readonly unanswered: readonly Bearing[];
}

/** No value meets both. */
export interface Clash {
  readonly query: LimitQuery;
  readonly limit: Limit;
}

interface Question {
  readonly bearing: readonly Bearing[];
  /** Nothing was found that may be held: the rule may pass on to the next thing without an outcome. */
  readonly isEmpty: boolean;
  readonly query: LimitQuery;
}

/** Listens to one rule. */
export class Listener {
  readonly clashes: Clash[] = [];
  #questions: Question[] = [];
  readonly #unanswered: Bearing[] = [];

  /** To be told of each limit that is asked for. */
  heed(query: LimitQuery, bearing: readonly Bearing[], limit: Limit | undefined): void {
    if (limit?.conflict !== undefined) this.clashes.push({ query, limit });
    if (bearing.length === 0) return;
    const passedOn = (q: Question): boolean =>
      q.isEmpty && (q.query.product !== query.product || q.query.property !== query.property);
    for (const question of this.#questions) if (passedOn(question)) this.#unanswered.push(...question.bearing);
    this.#questions = this.#questions.filter((q) => !passedOn(q));
    this.#questions.push({ bearing, isEmpty: limit === undefined, query });
  }

  /** Runs a rule to its end. Throws what the rule throws. */
  listen(outcomes: Iterable<Outcome>): Asked {
    const answers: Answer[] = [];
    for (const outcome of outcomes) answers.push({ outcome, bearing: this.#take(outcome) });
    this.#unanswered.push(...this.#questions.flatMap(({ bearing }) => bearing));
    return { answers, unanswered: this.#unanswered };
  }

  #take(outcome: Outcome): readonly Bearing[] {
    const named = (outcome.sources ?? []).some((source) => source.requirement !== undefined);
    if (this.#questions.length === 0 && !named) return NONE;
    const bearing = new Map(this.#questions.flatMap((q) => q.bearing).map((b) => [b.requirement, b]));
    for (const { requirement } of outcome.sources ?? [])
      if (requirement !== undefined && !bearing.has(requirement))
        bearing.set(requirement, { requirement, state: 'held' });
    this.#questions = [];
    return [...bearing.values()];
  }
}

const NONE: readonly Bearing[] = [];
