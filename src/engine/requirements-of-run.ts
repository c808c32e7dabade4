/** The requirements of a whole run: which were held, by what, and what is wrong with them as a whole. */
import { contradictionOutcome, contradictionsIn } from './contradictions.js';
import type { DetailRequirements, RequirementOfDetail } from './requirements-held.js';
import { about, asks } from './requirement-words.js';
import type { Outcome, Result } from './result.js';
import { nearest } from '../model/nearest.js';
import type { Requirement } from '../model/types.js';

/** One requirement with everything that depended on it, over all details of a run. */
export interface HeldRequirement {
  readonly requirement: Requirement;
  /** In the order of the details; each knows its detail, rule, kind, what was provided, its place and its level. */
  readonly results: readonly Result[];
  /** Details that show what it is about and give no answer, when others do. */
  readonly silent: readonly string[];
  /** Why no result depended on it, as a sentence; absent when one did. */
  readonly unheld?: string;
}

function unheldBecause(requirement: Requirement, details: readonly RequirementOfDetail[]): string {
  const { product } = requirement;
  if (requirement.property === undefined)
    return requirement.characteristic === undefined
      ? 'It is in words; a person has to look.'
      : 'No check knows this characteristic; a person has to look.';
  if (requirement.values.length === 0) return 'Its value could not be read as a quantity of its property.';
  if (product !== undefined && details.every((d) => d.product === 'unknown'))
    return `No product "${product.value}" was submitted.`;
  if (product !== undefined && details.every((d) => d.product !== 'used'))
    return `No detail of this review uses the product "${product.value}".`;
  if (details.some((d) => d.elsewhere)) return 'Its condition holds for no detail of this review.';
  return 'No check of this review asked for it.';
}

/** Every requirement in reach of a detail, once, in the order in which it was first met. */
function joined(reviews: readonly DetailRequirements[]): Map<Requirement, RequirementOfDetail[]> {
  const known = new Map<Requirement, RequirementOfDetail[]>();
  for (const { requirementsHeld } of reviews) {
    for (const one of requirementsHeld) {
      const before = known.get(one.requirement);
      if (before === undefined) known.set(one.requirement, [one]);
      else before.push(one);
    }
  }
  return known;
}

/** Joins what the details say about requirements, in the order in which each requirement was first met. */
export function requirementsOfRun(reviews: readonly DetailRequirements[]): HeldRequirement[] {
  return [...joined(reviews)].map(([requirement, details]) => {
    const results = details.flatMap((d) => d.results);
    if (results.length === 0) return { requirement, results, silent: [], unheld: unheldBecause(requirement, details) };
    const silent = details.filter(
      (d) => d.results.length === 0 && d.concerned && !d.elsewhere && (d.product ?? 'used') === 'used',
    );
    return { requirement, results, silent: silent.map((d) => d.documentId) };
  });
}

/** A requirement on a product that no detail has in reach, or that none uses. */
function productOutcome(
  requirement: Requirement,
  details: readonly RequirementOfDetail[],
  products: readonly string[],
): { readonly ruleId: string; readonly outcome: Outcome } | undefined {
  const { product, citation } = requirement;
  if (product === undefined || details.some((d) => d.product === 'used')) return undefined;
  const what = `${about(requirement) ?? 'in words'}, ${asks(requirement)}`;
  const common = { at: product.at, subject: `product of ${citation}`, provided: product.value };
  if (details.some((d) => d.product === 'unused'))
    return {
      ruleId: 'requirement/product-not-used',
      outcome: {
        ...common,
        kind: 'informational',
        message: `${citation} is about the product "${product.value}" (${what}), and no detail of this review uses it.`,
      },
    };
  const close = nearest(product.value, products);
  return {
    ruleId: 'requirement/unknown-product',
    outcome: {
      ...common,
      kind: 'fail',
      message: `${citation} is about the product "${product.value}" (${what}), and no such product was submitted${close === undefined ? '.' : `; did you mean "${close}"?`}`,
      correct:
        'Submit the product data, correct the id, or leave "product" out when the requirement is for every product.',
    },
  };
}

/**
 * What the requirements of a run say as a whole: pairs that contradict each other, products that nobody submitted.
 *
 * @param products ids of all products in reach of the details, for a guess at a misspelled one
 */
export function outcomesOfRun(
  reviews: readonly DetailRequirements[],
  products: readonly string[],
): { readonly ruleId: string; readonly outcome: Outcome }[] {
  const known = joined(reviews);
  const contradictions = contradictionsIn(
    [...known.keys()],
    reviews.flatMap((r) => r.clashes),
  );
  return [
    ...contradictions.flatMap((c) => {
      const outcome = contradictionOutcome(c);
      return outcome === undefined ? [] : [{ ruleId: 'requirement/contradiction', outcome }];
    }),
    ...[...known].flatMap(([requirement, details]) => productOutcome(requirement, details, products) ?? []),
  ];
}
