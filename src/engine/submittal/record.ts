/** What a submittal says of itself: the contractor's review, section, details, what was returned before. */
import type { Outcome } from '../result.js';
import { CONTRACTOR_REVIEW, HABIT } from './rules.js';
import type { SubmittalCheck } from './subject.js';

/** Stamp, role, date and coordination. What is not stated is open; what is stated to be lacking is a finding. */
export const contractorReview: SubmittalCheck = {
  ruleId: 'submittal/contractor-review',
  *review({ submittal }) {
    const { contractorReview: stated } = submittal;
    const base = { sources: CONTRACTOR_REVIEW, subject: "contractor's review" };
    const required = 'stamp, role, date and coordination statement';
    if (stated === undefined) {
      yield {
        ...base,
        kind: 'open',
        at: submittal.number.at,
        required,
        message: 'The submittal does not say whether the contractor has reviewed and stamped it.',
        missing: ['contractorReview'],
      };
      return;
    }
    const at = stated.at;
    const refused = [
      ...(stated.stamped ? [] : ['stamp']),
      ...(stated.coordinated?.value === false ? ['coordination statement'] : []),
    ];
    if (refused.length > 0)
      yield {
        ...base,
        kind: 'fail',
        at,
        required,
        provided: `no ${refused.join(', no ')}`,
        message: `The contractor's review lacks its ${refused.join(' and its ')}; a submittal without it may be returned unreviewed.`,
        correct:
          'Have the contractor review the submittal, check field dimensions and the work of other trades, and stamp it.',
      };
    const missing = [
      ...(stated.by === undefined ? ['contractorReview.by'] : []),
      ...(stated.date === undefined ? ['contractorReview.date'] : []),
      ...(stated.coordinated === undefined ? ['contractorReview.coordinated'] : []),
    ];
    if (missing.length > 0)
      yield {
        ...base,
        kind: 'open',
        at,
        required,
        message: `The contractor's review does not state ${missing.map((m) => `"${m.split('.')[1] ?? ''}"`).join(', ')}.`,
        missing,
      };
    const after = stated.date !== undefined && submittal.date !== undefined && stated.date.value > submittal.date.value;
    if (after)
      yield {
        ...base,
        kind: 'fail',
        at: stated.date?.at ?? at,
        required: `on or before ${submittal.date?.value ?? ''}`,
        provided: stated.date?.value,
        message: `The contractor's review is dated ${stated.date?.value ?? ''}, after the submittal was sent in (${submittal.date?.value ?? ''}).`,
        correct: 'Correct the date, or send the submittal in after the review.',
      };
    if (refused.length === 0 && missing.length === 0 && !after)
      yield {
        ...base,
        kind: 'pass',
        at,
        required,
        provided: `stamped by ${stated.by?.value ?? ''} on ${stated.date?.value ?? ''}, coordinated`,
        message: `The contractor (${stated.by?.value ?? ''}) reviewed, coordinated and stamped it on ${stated.date?.value ?? ''}.`,
      };
  },
};

/** The section exists in the specification, and the details are of it. */
export const sectionNumber: SubmittalCheck = {
  ruleId: 'submittal/section-number',
  *review({ submittal, sections, details }) {
    const { section } = submittal;
    const base = { at: section.at, subject: 'section', provided: section.value, sources: HABIT };
    const known = [...new Set(sections.map((s) => s.number))];
    if (known.length === 0)
      yield {
        ...base,
        kind: 'open',
        message: `No specification is in reach, so nothing says what section ${section.value} asks for; list it under "documents" of the project or of the submittal.`,
        missing: ['documents'],
      };
    else if (!known.includes(section.value))
      yield {
        ...base,
        kind: 'fail',
        required: known.join(', '),
        message: `The submittal is for section ${section.value}, and the specification in reach has ${known.join(', ')}.`,
        correct: 'Correct the section, or add the section to the specification.',
      };
    else yield { ...base, kind: 'pass', required: known.join(', '), message: `Section ${section.value} is specified.` };
    for (const { detail } of details) {
      if (detail?.section === undefined || detail.section.value === section.value) continue;
      yield {
        ...base,
        at: detail.section.at,
        subject: `section of ${detail.id}`,
        kind: 'fail',
        level: 'note',
        required: section.value,
        provided: detail.section.value,
        message: `${detail.id} belongs to section ${detail.section.value}, and the submittal is for section ${section.value}.`,
        correct: 'Send the detail in with a submittal of its section, or correct its section.',
      };
    }
  },
};

/** Named details exist, and there is at least one. */
export const detailsFound: SubmittalCheck = {
  ruleId: 'submittal/details-found',
  *review({ submittal, details, unknown }) {
    for (const { word, nearest } of unknown)
      yield {
        kind: 'fail',
        at: word.at,
        subject: `detail ${word.value}`,
        provided: word.value,
        message: `The submittal names the detail "${word.value}", which is not among the documents read${nearest === undefined ? '.' : `; did you mean "${nearest}"?`}`,
        correct: 'Add the detail, correct its id, or name the file that holds it.',
      };
    const at = submittal.details[0]?.at ?? submittal.number.at;
    if (details.length > 0)
      yield {
        kind: 'pass',
        at,
        subject: 'details',
        provided: details.map((d) => d.review.documentId).join(', '),
        message: `The submittal holds ${details.map((d) => d.review.documentId).join(', ')}.`,
      };
    else if (unknown.length === 0)
      yield {
        kind: 'open',
        at,
        subject: 'details',
        message: 'The submittal holds no detail: none stands in its file, and it names none.',
        missing: ['details'],
      };
  },
};

/** A higher revision than what was returned, and a word of what that was. */
export const resubmission: SubmittalCheck = {
  ruleId: 'submittal/resubmission',
  *review({ submittal }): Iterable<Outcome> {
    const { revision, previous, number } = submittal;
    const base = { at: revision.at, subject: 'revision', sources: HABIT, provided: `revision ${revision.value}` };
    if (previous === undefined) {
      if (revision.value === 0) return;
      yield {
        ...base,
        kind: 'open',
        message: `Revision ${revision.value} does not say what was sent in before; state "previous".`,
        missing: ['previous'],
      };
      return;
    }
    const before = `${previous.number}, revision ${previous.revision}`;
    if (previous.number === number.value && previous.revision >= revision.value)
      yield {
        ...base,
        kind: 'fail',
        required: `above revision ${previous.revision}`,
        message: `Revision ${revision.value} follows ${before}; a resubmission has a higher revision.`,
        correct: `Give it revision ${previous.revision + 1}, or correct "previous".`,
      };
    else yield { ...base, kind: 'pass', message: `Revision ${revision.value} follows ${before}.` };
  },
};
