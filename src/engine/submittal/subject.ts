/** What the checks of a submittal see. */
import type { DetailReview } from '../review.js';
import type { Outcome, Source } from '../result.js';
import type { Submittal } from '../../model/submittal.js';
import type { Detail, Product, RequiredSubmittal, Stated } from '../../model/types.js';

/** A detail of the submittal with its review. */
export interface SubmittalDetail {
  /** Absent when its document could not be typed. */
  readonly detail: Detail | undefined;
  readonly review: DetailReview;
}

export interface SubmittalSubject {
  readonly submittal: Submittal;
  readonly details: readonly SubmittalDetail[];
  /** Words under `details` that name no detail, with the nearest id there is. */
  readonly unknown: readonly { readonly word: Stated<string>; readonly nearest: string | undefined }[];
  /** Specifications in reach: section number and title. */
  readonly sections: readonly { readonly number: string; readonly title: string }[];
  /** What the section of the submittal asks for. */
  readonly required: readonly RequiredSubmittal[];
  /** In reach of the submittal or of its details, by id. */
  readonly products: ReadonlyMap<string, Product>;
  /** Other submittals that were read, by number; of several revisions the highest. */
  readonly others: ReadonlyMap<string, Submittal>;
  /** Roles that may accept deviations and substitutions. */
  readonly acceptingRoles: readonly string[];
  /** ISO date of the review. */
  readonly today: string;
}

/** One of the checks: outcomes of one rule. */
export interface SubmittalCheck {
  readonly ruleId: string;
  review(subject: SubmittalSubject): Iterable<Outcome>;
}

/** The paragraph that asks for an item, as the source of a finding. */
export function sourceOfItem(required: RequiredSubmittal): Source {
  return {
    basis: 'specification',
    citation: required.citation,
    provenance: 'project document',
    at: required.paragraph?.at ?? required.at,
  };
}
