/** The review of a submittal as a whole, after the reviews of its details. */
import type { Fingerprints } from '../finished-result.js';
import { ownResult } from '../review.js';
import type { Notification, Result } from '../result.js';
import type { RuleSettings } from '../settings.js';
import { requiredItems, unaskedItems } from './contents.js';
import { declaredItems, outcomesOfDeclared, undeclared } from './declared.js';
import type { ReviewedSubmittal } from './facts.js';
import { productData } from './product-data.js';
import { contractorReview, detailsFound, resubmission, sectionNumber } from './record.js';
import type { SubmittalCheck, SubmittalSubject } from './subject.js';
import { substitutionAccepted, substitutionInDetails, substitutionItems } from './substitutions.js';
import type { Locus } from '../../reading/types.js';

const CHECKS: readonly SubmittalCheck[] = [
  contractorReview,
  sectionNumber,
  detailsFound,
  resubmission,
  requiredItems,
  unaskedItems,
  productData,
  substitutionAccepted,
  substitutionInDetails,
  undeclared,
];

export interface SubmittalReview {
  readonly facts: ReviewedSubmittal;
  readonly results: readonly Result[];
  readonly notifications: readonly Notification[];
}

export interface SubmittalOptions {
  readonly settings: RuleSettings;
  readonly fingerprints: Fingerprints;
  /** Ids of the rules that ran on the details. */
  readonly ran: ReadonlySet<string>;
  readonly projectTitle: string | undefined;
}

/** Reviews a submittal. Pure: same subject, settings and date, same answer. */
export function reviewSubmittal(subject: SubmittalSubject, options: SubmittalOptions): SubmittalReview {
  const { submittal } = subject;
  const ids = new Map(
    subject.details.flatMap(({ detail }) => (detail === undefined ? [] : [[detail.at.document, detail.id] as const])),
  );
  /** What points into a detail is told with that detail, the rest with the submittal. */
  const belongsTo = (at: Locus): string => ids.get(at.document) ?? submittal.document.id;
  const notifications: Notification[] = [];
  const outcomes = CHECKS.flatMap(({ ruleId, ...check }) => {
    try {
      return [...check.review(subject)].map((outcome) => ({ ruleId, outcome }));
    } catch (error) {
      notifications.push({
        level: 'error',
        ruleId,
        documentId: submittal.document.id,
        uri: submittal.document.file.uri,
        message: `The check ${ruleId} failed on submittal ${submittal.number.value}: ${error instanceof Error ? error.message : String(error)}. It is missing from this review; the others ran.`,
      });
      return [];
    }
  });
  const results = [...outcomes, ...outcomesOfDeclared(subject, options.ran)].flatMap(
    ({ ruleId, outcome }) =>
      ownResult(ruleId, outcome, belongsTo(outcome.at), options.settings, options.fingerprints) ?? [],
  );
  return { facts: factsOf(subject, options.projectTitle), results, notifications };
}

function factsOf(subject: SubmittalSubject, projectTitle: string | undefined): ReviewedSubmittal {
  const { submittal: s, sections, today } = subject;
  const sectionTitle = sections.find((one) => one.number === s.section.value)?.title;
  return {
    number: s.number.value,
    section: s.section.value,
    ...(sectionTitle === undefined ? {} : { sectionTitle }),
    title: s.title.value,
    revision: s.revision.value,
    uri: s.document.file.uri,
    ...(s.date === undefined ? {} : { date: s.date.value }),
    reviewedOn: today,
    ...(s.from === undefined ? {} : { from: s.from.value }),
    ...(s.to === undefined ? {} : { to: s.to.value }),
    ...(s.previous === undefined ? {} : { previous: { number: s.previous.number, revision: s.previous.revision } }),
    ...(projectTitle === undefined ? {} : { projectTitle }),
    details: subject.details.map(({ review }) => review.documentId),
    contains: s.contains.map((c) => ({
      item: c.item.value,
      title: c.title.value,
      answers: c.answers.map((a) => a.value),
      of: c.of.map((o) => o.value),
      ...(c.dated === undefined ? {} : { date: c.dated.value }),
      ...(c.sentWith === undefined ? {} : { sentWith: c.sentWith.value }),
    })),
    declared: [...declaredItems(subject), ...substitutionItems(subject)],
  };
}
