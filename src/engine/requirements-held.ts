/** The requirements within reach of a detail, each with the results that depended on it. */
import type { FinishedResult } from './finished-result.js';
import type { Bearing } from './limits-of-specification.js';
import { concerns } from './requirement-concerns.js';
import { conditionUnknown, notConfirmed } from './requirement-outcomes.js';
import type { Asked, Clash } from './requirements-asked.js';
import type { Outcome, Result } from './result.js';
import { productsUsed } from '../model/products-used.js';
import type { Detail, Requirement } from '../model/types.js';

/** One requirement and one detail. */
export interface RequirementOfDetail {
  readonly requirement: Requirement;
  readonly documentId: string;
  /** The detail shows what the requirement is about. */
  readonly concerned: boolean;
  /** In the order in which they were found. Each knows its detail, rule, kind, what was provided and its place. */
  readonly results: readonly Result[];
  /** A rule asked for it where its condition does not hold. */
  readonly elsewhere: boolean;
  /** Of a requirement on one product: whether the detail has it in reach, and uses it. */
  readonly product?: 'unknown' | 'unused' | 'used';
}

/** What the review of one detail says about requirements. */
export interface DetailRequirements {
  readonly requirementsHeld: readonly RequirementOfDetail[];
  /** Limits that no value meets together. */
  readonly clashes: readonly Clash[];
}

/** Gathers, while the rules of a detail are asked, what depends on which requirement. */
export class Ledger {
  readonly #results = new Map<Requirement, Set<Result>>();
  readonly #elsewhere = new Set<Requirement>();
  readonly #told = new Set<string>();
  readonly #clashes: Clash[] = [];

  constructor(
    private readonly detail: Detail,
    /** Adds a result of the engine's own; `undefined` when the settings turn it off. */
    private readonly add: (ruleId: string, outcome: Outcome) => FinishedResult | undefined,
  ) {}

  /** The result of an outcome, and the requirements it depended on. */
  answered(ruleId: string, result: FinishedResult, bearing: readonly Bearing[]): void {
    for (const b of bearing) {
      if (b.state === 'held') this.#link(b.requirement, result);
      else this.#unheld(ruleId, b, result);
    }
  }

  /** What a rule asked for without an outcome, and what no value could meet. */
  asked(ruleId: string, { unanswered }: Asked, clashes: readonly Clash[]): void {
    for (const b of unanswered) if (b.state !== 'held') this.#unheld(ruleId, b, undefined);
    this.#clashes.push(...clashes);
  }

  summary(): DetailRequirements {
    let used: Set<string> | undefined;
    const productOf = ({ product }: Requirement): RequirementOfDetail['product'] => {
      if (product === undefined) return undefined;
      used ??= new Set(productsUsed(this.detail, () => true).map((use) => use.product.id));
      return used.has(product.value) ? 'used' : this.detail.products.has(product.value) ? 'unused' : 'unknown';
    };
    const requirementsHeld = this.detail.requirements.map((requirement): RequirementOfDetail => {
      const product = productOf(requirement);
      return {
        requirement,
        documentId: this.detail.id,
        concerned: concerns(this.detail, requirement),
        results: [...(this.#results.get(requirement) ?? [])],
        elsewhere: this.#elsewhere.has(requirement),
        ...(product === undefined ? {} : { product }),
      };
    });
    return { requirementsHeld, clashes: this.#clashes };
  }

  #link(requirement: Requirement, result: Result): void {
    const known = this.#results.get(requirement);
    if (known === undefined) this.#results.set(requirement, new Set([result]));
    else known.add(result);
  }

  #unheld(ruleId: string, { requirement, state }: Bearing, result: FinishedResult | undefined): void {
    if (state === 'held') return;
    if (state === 'elsewhere') {
      this.#elsewhere.add(requirement);
      return;
    }
    const at = result?.at ?? this.detail.at;
    // One for each place that a rule looks at; a missing fact is told once.
    const place = state === 'not confirmed' ? `${ruleId} ${at.document.file.uri} ${at.path.join('.')}` : state.missing;
    const key = `${this.detail.requirements.indexOf(requirement)} ${place}`;
    if (this.#told.has(key)) return;
    this.#told.add(key);
    const added =
      state === 'not confirmed'
        ? this.add('requirement/not-confirmed', notConfirmed(requirement, ruleId, at, result))
        : this.add('requirement/condition-unknown', conditionUnknown(requirement, state));
    if (added !== undefined) this.#link(requirement, added);
  }
}
