/**
 * What every printer receives, and the words they all share: the suggested review action, the counts and the
 * standard caution.
 */
import type { Card } from '../engine/cards.js';
import type { HeldRequirement } from '../engine/requirements-of-run.js';
import type { ReviewedSubmittal } from '../engine/submittal/facts.js';
import type { Level, Notification, Result } from '../engine/result.js';
import type { RequiredSubmittal } from '../model/types.js';

/** A finding at or above this level makes the exit code 1. */
export type FailOn = Exclude<Level, 'none'> | 'never';

/** A rule as the printers need it: what it is, without the function. */
export type RuleCard = Card;

/** A detail that was under review, whether or not anything was found in it. */
export interface ReviewedDetail {
  readonly id: string;
  readonly title?: string;
  /** File it stands in, relative to the library root. */
  readonly uri: string;
}

export interface Review {
  readonly toolVersion: string;
  /** Already in their final order; no printer sorts them again. */
  readonly results: readonly Result[];
  readonly rules: readonly RuleCard[];
  readonly notifications: readonly Notification[];
  readonly details: readonly ReviewedDetail[];
  /** Submittals under review; absent when there are none. */
  readonly submittals?: readonly ReviewedSubmittal[];
  /** Every requirement in reach of a detail with the results that depended on it; absent when nobody asked. */
  readonly requirementsHeld?: readonly HeldRequirement[];
  /** What the specifications in reach ask to be submitted. */
  readonly itemsRequired?: readonly RequiredSubmittal[];
  readonly failOn: FailOn;
  readonly exitCode: number;
  /** Arguments as given, recorded in SARIF. Leave out when they hold the name of a user or a machine. */
  readonly commandLine?: readonly string[];
}

/** Printed with every report; the only place where these words stand. */
export const CAUTION =
  'An aid to review: local code, the contract documents and licensed practice govern. ' +
  'A check that passes here does not show that the wall complies or that it will perform.';

export const STAMP_NOTE = "The stamp is the reviewer's.";

export type ReviewAction = 'No exceptions taken' | 'Make corrections noted' | 'Revise and resubmit';

export interface SuggestedAction {
  /** `undefined` when the review does not support any. */
  readonly action: ReviewAction | undefined;
  readonly because: string;
}

/** A breach that nobody has accepted: what a reader must act on. */
export function isFinding(result: Result): boolean {
  return result.kind === 'fail' && result.level !== 'none' && result.suppression === undefined;
}

/** Something no program may settle: a fact is missing, or a person has to judge. */
export function isUnsettled(result: Result): boolean {
  return (result.kind === 'open' || result.kind === 'review') && result.suppression === undefined;
}

/**
 * Proposes one of the three review actions that contract forms use.
 *
 * - An error means the work as shown is not acceptable: revise and resubmit.
 * - "Make corrections noted" lets the work go ahead with the marked changes, so it fits only what can be marked:
 *   warnings and notes.
 * - A missing fact cannot be marked as a correction, because nobody knows yet what the answer is. An open item
 *   (or one a person must judge) is therefore taken as the worst it can turn into, the level of its rule. A rule
 *   that is not listed counts as an error.
 * - "No exceptions taken" needs at least one check that passed, and a review that ran to its end: silence is
 *   not compliance.
 *
 * @see practice of contract review stamps (common wording, no single source)
 */
export function suggestedAction(review: Pick<Review, 'results' | 'rules' | 'notifications'>): SuggestedAction {
  const counts = countResults(review.results);
  const levels = new Map(review.rules.map((rule) => [rule.id, rule.level]));
  const grave = review.results.filter(
    (result) => isUnsettled(result) && (levels.get(result.ruleId) ?? 'error') === 'error',
  ).length;
  if (counts.errors > 0) {
    return { action: 'Revise and resubmit', because: `${plural(counts.errors, 'error')} found` };
  }
  if (grave > 0) {
    const because = `${plural(grave, 'item')} that could be an error cannot be settled from the documents`;
    return { action: 'Revise and resubmit', because };
  }
  const broken = review.notifications.filter((notification) => notification.level === 'error').length;
  if (broken > 0) {
    return {
      action: undefined,
      because: `the review is incomplete: ${plural(broken, 'problem')} of the review itself`,
    };
  }
  const light = counts.warnings + counts.notes;
  const unsettled = counts.open + counts.review;
  if (light + unsettled > 0) {
    const parts = [
      counts.warnings > 0 ? plural(counts.warnings, 'warning') : '',
      counts.notes > 0 ? plural(counts.notes, 'note') : '',
      unsettled > 0 ? `${plural(unsettled, 'item')} not settled` : '',
    ];
    return { action: 'Make corrections noted', because: `no errors; ${parts.filter(Boolean).join(', ')}` };
  }
  if (counts.passed === 0 && counts.accepted === 0) return { action: undefined, because: 'nothing was checked' };
  const accepted = counts.accepted > 0 ? `; ${plural(counts.accepted, 'deviation')} accepted in the documents` : '';
  return { action: 'No exceptions taken', because: `${plural(counts.passed, 'check')} passed, none failed${accepted}` };
}

export interface Counts {
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
  readonly open: number;
  readonly review: number;
  readonly accepted: number;
  readonly passed: number;
  readonly notApplicable: number;
  readonly informational: number;
}

/** Counts every result exactly once; an accepted deviation counts as accepted, whatever its kind. */
export function countResults(results: readonly Result[]): Counts {
  const counts = {
    errors: 0,
    warnings: 0,
    notes: 0,
    open: 0,
    review: 0,
    accepted: 0,
    passed: 0,
    notApplicable: 0,
    informational: 0,
  };
  for (const result of results) counts[countName(result)] += 1;
  return counts;
}

function countName(result: Result): keyof Counts {
  if (result.suppression !== undefined) return 'accepted';
  switch (result.kind) {
    case 'pass':
      return 'passed';
    case 'fail':
      // A breach whose level is `none` asks for nothing: it is told, not held against the detail.
      return ({ error: 'errors', warning: 'warnings', note: 'notes', none: 'informational' } as const)[result.level];
    default:
      return result.kind;
  }
}

/** `1 error`, `2 errors`. */
export function plural(count: number, word: string): string {
  return `${String(count)} ${word}${count === 1 ? '' : 's'}`;
}
