/**
 * The review letter of a submittal: what was sent in, the suggested action, what to correct, what to answer, what was
 * declared. The findings of each detail follow it. It suggests; the stamp is the reviewer's.
 */
import type { ListItem, RootContent } from 'mdast';
import type { ReviewedSubmittal } from '../../engine/submittal/facts.js';
import { oneLine } from '../escape.js';
import { acceptanceText, type DetailResults } from '../grouping.js';
import { cell, heading, item, joint, list, paragraph, strong, table, words } from '../markdown-parts.js';
import { countTable } from '../markdown-results.js';
import { UNSURE_NOTE } from '../source-text.js';
import { resultsOf } from '../comments.js';
import type { Comment } from '../comments.js';
import { CAUTION, plural, STAMP_NOTE, statedAcceptances, suggestedAction, type Review } from '../report.js';
import type { StatedAcceptance } from '../report.js';
import { isUnsureOf } from './comment-words.js';
import { changePlaces, corrections, decisions, letterComments, transmittal } from './corrections.js';
import { declaredTable } from './declared-table.js';
import { questionItems } from './questions.js';
import { inTradeWords } from './trade-words.js';

export const QUESTIONS = 'Questions';
/** The chapter that a first page by itself is made of. */
export const TRANSMITTAL = 'Comments and replies';
/** Told on the page and in the file, not on paper. */
export const PLACES = 'Where to change the documents';

export interface Letter {
  /** Title, facts and action: what stands above the first chapter. */
  readonly opening: readonly RootContent[];
  /** One element for each chapter: its heading and what stands under it. */
  readonly chapters: readonly (readonly RootContent[])[];
}

/** The letter; `undefined` when no submittal is under review. */
export function letterOf(review: Review, groups: readonly DetailResults[]): Letter | undefined {
  const { submittals } = review;
  if (submittals === undefined || submittals.length === 0) return undefined;
  const comments = letterComments(groups);
  const questions = questionItems(groups, review);
  const judgments = [
    ...decisions(comments, review),
    ...statedAcceptances(review.results).map(statedItem),
    ...groups.flatMap((group) =>
      group.review.map((result) =>
        item(strong(group.detail.id), joint(': '), words(inTradeWords(result.message, result))),
      ),
    ),
  ];
  return {
    opening: opening(review, submittals),
    chapters: [
      [heading(2, joint(TRANSMITTAL)), ...transmittal(comments, questions.length, review)],
      [heading(2, joint('To be corrected')), ...corrections(comments, review)],
      ...chapter(QUESTIONS, questions, true),
      ...chapter('For the reviewer to judge', judgments, false),
      ...declared(submittals, groups),
      [...sentIn(review, submittals, comments), ...unsureNote(comments)],
      ...placesChapter(comments, groups),
    ],
  };
}

function chapter(title: string, items: ListItem[], ordered: boolean): RootContent[][] {
  return items.length === 0 ? [] : [[heading(2, joint(title)), list(items, ordered)]];
}

function placesChapter(comments: readonly Comment[], groups: readonly DetailResults[]): RootContent[][] {
  const blocks = changePlaces(comments, groups);
  return blocks.length === 0 ? [] : [blocks];
}

/** The one note on how well sources are known. */
function unsureNote(comments: readonly Comment[]): RootContent[] {
  return comments.some((c) => resultsOf(c).some(isUnsureOf)) ? [paragraph(joint(`* ${UNSURE_NOTE}`))] : [];
}

/** The sender says that it was accepted; whether it was, only the reviewer can know. */
function statedItem({ suppression, details }: StatedAcceptance): ListItem {
  const { name = 'a deviation', acceptedBy = 'nobody named', until } = suppression;
  const end = until === undefined ? '' : ` until ${until}`;
  return item(
    strong(details.join(', ')),
    joint(': '),
    words(`${name.replace(/^[a-z]/, (c) => c.toUpperCase())} is stated as accepted by ${acceptedBy}${end}; verify.`),
  );
}

/** What was accepted, without its place: that stands in the report. */
function acceptedItems(groups: readonly DetailResults[]): ListItem[] {
  return groups.flatMap((group) =>
    group.accepted.map((result) =>
      item(
        strong(group.detail.id),
        joint(': '),
        words(inTradeWords(result.message, result)),
        joint(' Accepted: '),
        words(acceptanceText(result)),
        joint('.'),
      ),
    ),
  );
}

/** The number, with the revision after the first. */
export function submittalName({ number, revision }: Pick<ReviewedSubmittal, 'number' | 'revision'>): string {
  return `${number}, revision ${String(revision)}`;
}

function opening(review: Review, submittals: readonly ReviewedSubmittal[]): RootContent[] {
  const { action, because } = suggestedAction(review);
  const [only] = submittals;
  const held = new Set(submittals.flatMap((s) => s.details));
  const others = review.details.filter((d) => !held.has(d.id));
  const title =
    submittals.length === 1 && only !== undefined && others.length === 0
      ? [joint('Review of submittal '), words(submittalName(only))]
      : [joint('Review of submittals and wall details')];
  return [
    heading(1, ...title),
    ...submittals.map((s) => list(factItems(s))),
    ...(others.length === 0
      ? []
      : [
          paragraph(
            joint('Reviewed with it, and not part of it: '),
            words(others.map((d) => d.id).join(', ')),
            joint('. The suggested action and the chapters below are about all of them.'),
          ),
        ]),
    paragraph(strong(`Suggested action: ${action ?? 'none'}`), joint(` (${because}). ${STAMP_NOTE}`)),
    paragraph(joint(CAUTION)),
  ];
}

function factItems(s: ReviewedSubmittal): ListItem[] {
  const from = s.from === undefined ? '' : `, from the ${withoutArticle(s.from)}`;
  const to = s.to === undefined ? '' : `, to the ${withoutArticle(s.to)}`;
  const rows: [string, string][] = [
    ['Project', s.projectTitle ?? 'not stated'],
    ['Submittal', `${submittalName(s)}: ${s.title}`],
    ['Section', s.sectionTitle === undefined || s.sectionTitle === '' ? s.section : `${s.section}, ${s.sectionTitle}`],
    ['Submitted', `${s.date ?? 'date not stated'}${from}${to}`],
    ['Reviewed', s.reviewedOn],
    ['Previous', s.previous === undefined ? 'none stated' : submittalName(s.previous)],
    ['Details', s.details.length === 0 ? 'none' : s.details.join(', ')],
  ];
  return rows.map(([name, value]) => item(strong(name), joint(': '), words(value)));
}

const withoutArticle = (role: string): string => role.replace(/^the\s+/i, '');

function declared(submittals: readonly ReviewedSubmittal[], groups: readonly DetailResults[]): RootContent[][] {
  const items = submittals.flatMap((s) => s.declared);
  const accepted = acceptedItems(groups);
  if (items.length === 0 && accepted.length === 0) return [];
  return [
    [
      heading(2, joint('Deviations and substitutions')),
      ...(items.length === 0 ? [] : [declaredTable(items)]),
      ...(accepted.length === 0 ? [] : [paragraph(joint('Accepted, so not counted above:')), list(accepted)]),
    ],
  ];
}

/** What the review looked at, and what it could not. */
function sentIn(review: Review, submittals: readonly ReviewedSubmittal[], comments: readonly Comment[]): RootContent[] {
  const found = new Set(comments.map((c) => c.group.detail.id));
  const quiet = review.details.filter((d) => !found.has(d.id)).map((d) => d.id);
  const contents = submittals.flatMap((s) => s.contains);
  const open = review.results.filter((r) => r.kind === 'open').length;
  const head = ['Item', 'Title', 'Paragraph', 'Products', 'Date', 'Submitted under'].map((name) => cell(joint(name)));
  const rows = contents.map((c) =>
    [c.item, c.title, c.answers.join(', '), c.of.join(', '), c.date ?? '', c.sentWith ?? 'this submittal'].map((text) =>
      cell(words(text)),
    ),
  );
  const unseen =
    "Documents are known by this list alone: that they are listed is checked, and what they say is the reviewer's to read.";
  return [
    heading(2, joint('What was checked')),
    paragraph(
      joint(
        `${plural(review.details.length, 'detail')}${open === 0 ? '' : `; ${plural(open, 'check')} could not be made (see ${QUESTIONS})`}.${quiet.length === 0 ? '' : ` Without comments: ${oneLine(quiet.join(', '))}.`} ${contents.length === 0 ? 'The submittal lists no contents.' : unseen}`,
      ),
    ),
    ...(contents.length === 0 ? [] : [table([head, ...rows])]),
    countTable(review),
  ];
}
