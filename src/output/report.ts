/**
 * What every printer receives, and the words they all share: the suggested review action, the counts and the
 * standard caution.
 */
import type { Card } from '../engine/cards.js';
import type { HeldRequirement } from '../engine/requirements-of-run.js';
import type { ReviewedSubmittal } from '../engine/submittal/facts.js';
import type { Level, Notification, Result, Suppression } from '../engine/result.js';
import type { RequiredSubmittal } from '../model/types.js';
import { causesOf, countComments, isToDecide, resultsOf, type Cause } from './comments.js';

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

/** The three actions contract forms use for a submittal, and what is said before one of them can be. */
export type ReviewAction =
  'No exceptions taken' | 'Make corrections noted' | 'Revise and resubmit' | 'Questions to answer';

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
 * Proposes a review action.
 *
 * - "Make corrections noted" lets the work go ahead with the marked changes. It fits only what a reviewer can mark so
 *   that there is one way to read it: warnings and notes, and errors whose correction is a number to build to (a collar
 *   1/2 in short). An error that asks for another order, a missing piece, another material or a document that was not
 *   sent has to be drawn or sent again, because nobody has seen the answer yet.
 * - "Revise and resubmit": there is an error of that other kind, or errors stand beside open questions that could be
 *   errors too.
 * - "Questions to answer": no error was found, and a fact is missing that could make one. Nothing can be marked and
 *   nothing is known to be wrong, so it is a request for information; the action follows from the answers. A rule that
 *   is not listed counts as an error.
 * - What the reviewer has to judge, a declared deviation among it or one that the sender states as accepted, is not held against the sender. Until it is judged
 *   there is no ground for "No exceptions taken", so then none is suggested.
 * - "No exceptions taken" needs at least one check that passed, and a review that ran to its end: silence is not
 *   compliance.
 *
 * @see practice of contract review stamps (common wording, no single source)
 */
export function suggestedAction(review: Pick<Review, 'results' | 'rules' | 'notifications'>): SuggestedAction {
  const counts = countResults(review.results);
  const levels = new Map(review.rules.map((rule) => [rule.id, rule.level]));
  const causes = causesByDocument(review.results);
  const comments = countComments(causes);
  const toCorrect = causes.filter((cause) => !isToDecide(cause) && cause.lead.level === 'error');
  const toRevise = toCorrect.filter((cause) => !isDefinite(cause)).length;
  const toJudge = counts.review + comments.toDecide + statedAcceptances(review.results).length;
  const grave = review.results.filter(
    (r) => r.kind === 'open' && isUnsettled(r) && (levels.get(r.ruleId) ?? 'error') === 'error',
  ).length;
  const deviations = toJudge - counts.review;
  const ofThese = deviations === 0 ? '' : `, ${plural(deviations, 'declared deviation')} among them`;
  const judged = toJudge > 0 ? `; ${plural(toJudge, 'item')} for the reviewer to judge${ofThese}` : '';
  if (toRevise > 0 || (toCorrect.length > 0 && grave > 0)) {
    const asked = grave > 0 ? `; ${plural(grave, 'open question')} that could be an error` : '';
    return { action: 'Revise and resubmit', because: `${errorsText(toCorrect)}${asked}${judged}` };
  }
  const broken = review.notifications.filter((notification) => notification.level === 'error').length;
  if (broken > 0) {
    return {
      action: undefined,
      because: `the review is incomplete: ${plural(broken, 'problem')} of the review itself`,
    };
  }
  if (grave > 0) {
    const because = `no errors found; ${plural(grave, 'open question')} that could be an error; no stamp fits before the answers`;
    return { action: 'Questions to answer', because: `${because}${judged}` };
  }
  if (toCorrect.length + comments.warnings + comments.notes + counts.open > 0) {
    const parts = [
      comments.errors > 0 ? `${plural(comments.errors, 'error')}, each corrected by a number to build to` : 'no errors',
      comments.warnings > 0 ? plural(comments.warnings, 'warning') : '',
      comments.notes > 0 ? plural(comments.notes, 'note') : '',
      counts.open > 0 ? plural(counts.open, 'open question') : '',
    ];
    return { action: 'Make corrections noted', because: `${parts.filter(Boolean).join('; ')}${judged}` };
  }
  if (toJudge > 0)
    return {
      action: undefined,
      because: `no errors found; ${plural(toJudge, 'item')} for the reviewer to judge first`,
    };
  if (counts.passed === 0 && counts.accepted === 0) return { action: undefined, because: 'nothing was checked' };
  const accepted = counts.accepted > 0 ? `; ${plural(counts.accepted, 'deviation')} accepted in the documents` : '';
  return { action: 'No exceptions taken', because: `${plural(counts.passed, 'check')} passed, none failed${accepted}` };
}

/** A deviation that a submittal states as accepted: the sender's own word, for the reviewer to verify. */
export interface StatedAcceptance {
  readonly suppression: Suppression;
  /** Ids of the details it covers something in. */
  readonly details: readonly string[];
}

/** The deviations that submittals state as accepted and that cover something, each once, in the order of the results. */
export function statedAcceptances(results: readonly Result[]): StatedAcceptance[] {
  const found = new Map<string, { suppression: Suppression; details: string[] }>();
  for (const { suppression, documentId } of results) {
    if (suppression?.at.document.kind !== 'submittal') continue;
    const { document, path } = suppression.at;
    const key = JSON.stringify([document.file.uri, document.id, ...path]);
    const known = found.get(key);
    if (known === undefined) found.set(key, { suppression, details: [documentId] });
    else if (!known.details.includes(documentId)) known.details.push(documentId);
  }
  return [...found.values()];
}

/** Errors that only a declared deviation stands behind: the reviewer decides them, and nobody has to correct them yet. */
export function errorsToDecide(results: readonly Result[]): number {
  const waiting = causesByDocument(results).filter(isToDecide).flatMap(resultsOf);
  return waiting.filter((r) => r.level === 'error').length;
}

/** `14 errors found, in 11 comments`; the comments are left out where there are as many. */
function errorsText(causes: readonly Cause[]): string {
  const errors = causes.flatMap(resultsOf).filter((r) => r.level === 'error').length;
  return `${plural(errors, 'error')} found${errors === causes.length ? '' : `, in ${plural(causes.length, 'comment')}`}`;
}

/** Every error of a cause can be noted as a number. */
const isDefinite = (cause: Cause): boolean => resultsOf(cause).every((r) => r.level !== 'error' || r.definite === true);

function causesByDocument(results: readonly Result[]): Cause[] {
  const groups = new Map<string, Result[]>();
  for (const result of results.filter(isFinding)) {
    const key = `${result.file.uri}\n${result.documentId}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [result]);
    else group.push(result);
  }
  return [...groups.values()].flatMap(causesOf);
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
