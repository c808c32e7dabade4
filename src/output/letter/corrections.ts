/** The comments of the letter: in one line each with room for the reply, then whole, then where the documents say it. */
import type { ListItem, RootContent } from 'mdast';
import type { Result } from '../../engine/result.js';
import { commentsOf, isToDecide, resultsOf, type Comment } from '../comments.js';
import type { DetailResults } from '../grouping.js';
import { cell, code, heading, item, joint, list, paragraph, strong, table, words } from '../markdown-parts.js';
import { placeOfResult } from '../place.js';
import { plural, type Review } from '../report.js';
import { shortText, wholeText } from './comment-words.js';
import { inTradeWords } from './trade-words.js';

/** Told with the finding that it was declared for. */
function isToldThere(comment: Comment, all: readonly Comment[]): boolean {
  const { lead } = comment;
  return (
    lead.ruleId === 'deviation/not-accepted' &&
    all.some((other) => resultsOf(other).some((r) => r.declared !== undefined && r.declared.name === lead.subject))
  );
}

/** The comments that the letter tells, in the order of the details. */
export function letterComments(groups: readonly DetailResults[]): Comment[] {
  const all = commentsOf(groups);
  return all.filter((comment) => !isToldThere(comment, all));
}

const titlesOf = (review: Review): ((result: Result) => string) => {
  const titles = new Map(review.rules.map((rule) => [rule.id, rule.title]));
  return ({ ruleId }) => titles.get(ruleId) ?? ruleId;
};

/** One line for each comment and question, with a column for the reply: the first page, to be sent by itself. */
export function transmittal(comments: readonly Comment[], questions: number, review: Review): RootContent[] {
  const titleOf = titlesOf(review);
  const head = ['Detail', 'No.', 'Comment', 'Level', 'Reply'].map((name) => cell(joint(name)));
  const rows = comments.map((c) => [
    cell(words(c.group.detail.id)),
    cell(joint(String(c.number))),
    cell(words(shortText(c, titleOf(c.lead)))),
    cell(joint(isToDecide(c) ? 'to decide' : c.lead.level)),
    cell(),
  ]);
  const asked =
    questions === 0 ? '' : ` ${plural(questions, 'question')} to answer ${questions === 1 ? 'stands' : 'stand'} below.`;
  if (rows.length === 0) return [paragraph(joint(`Nothing was found.${asked}`))];
  return [table([head, ...rows]), ...(asked === '' ? [] : [paragraph(joint(asked.trim()))])];
}

/** What is to be corrected, whole, by detail; the numbers are those of the triangles on the drawings. */
export function corrections(comments: readonly Comment[], review: Review): RootContent[] {
  const titleOf = titlesOf(review);
  const toCorrect = comments.filter((c) => !isToDecide(c));
  if (toCorrect.length === 0) return [paragraph(joint('Nothing was found.'))];
  return byGroup(toCorrect).flatMap(([{ detail }, own]) => [
    heading(3, words(detail.title === undefined ? detail.id : `${detail.id} ${detail.title}`)),
    list(own.map((c) => numbered(c, titleOf(c.lead), ` (${c.lead.level}). `, wholeText(c)))),
  ]);
}

/** Declared deviations that wait for a word; the breach is told with its reason. */
export function decisions(comments: readonly Comment[], review: Review): ListItem[] {
  const titleOf = titlesOf(review);
  return comments.filter(isToDecide).map((c) => {
    const declared = c.lead.declared;
    const asked =
      declared === undefined
        ? ''
        : ` Declared as ${declared.name}: ${declared.reason}${declared.refused === undefined ? '' : ` It is stated as accepted by ${declared.refused}.`} Accept it, or have it corrected.`;
    return numbered(c, titleOf(c.lead), '. ', `${wholeText(c)}${asked}`, `${c.group.detail.id}, `);
  });
}

function numbered(c: Comment, title: string, joined: string, text: string, before = ''): ListItem {
  return item(strong(`${before}${c.number}. ${title}`), joint(joined), words(text));
}

function byGroup(comments: readonly Comment[]): [DetailResults, Comment[]][] {
  const groups = new Map<DetailResults, Comment[]>();
  for (const c of comments) groups.set(c.group, [...(groups.get(c.group) ?? []), c]);
  return [...groups];
}

interface Change {
  readonly detailId: string;
  readonly number: string;
  readonly result: Result;
}

/** For whoever writes the documents: file and line of each comment, and what the letter leaves to this table. */
export function changePlaces(comments: readonly Comment[], groups: readonly DetailResults[]): RootContent[] {
  const changes = [
    ...comments.flatMap((c) =>
      resultsOf(c).map((result): Change => ({ detailId: c.group.detail.id, number: String(c.number), result })),
    ),
    ...groups.flatMap(({ detail, open, review }) =>
      [...open, ...review].map((result): Change => ({
        detailId: detail.id,
        number: result.kind === 'open' ? 'question' : 'to judge',
        result,
      })),
    ),
  ];
  // One row for each place of a comment, whatever number of checks pointed at it.
  const rows = new Map<string, Change[]>();
  for (const change of changes) {
    const { uri, line } = placeOfResult(change.result);
    const key = JSON.stringify([change.detailId, change.number, uri, line]);
    rows.set(key, [...(rows.get(key) ?? []), change]);
  }
  if (rows.size === 0) return [];
  const each = (texts: readonly string[], joined: string): string => [...new Set(texts)].filter(Boolean).join(joined);
  const head = ['Detail', 'No.', 'Place', 'What to write', 'Check'].map((name) => cell(joint(name)));
  const body = [...rows.values()].flatMap((told) => {
    const [first] = told;
    if (first === undefined) return [];
    const { uri, line } = placeOfResult(first.result);
    return [
      [
        cell(words(first.detailId)),
        cell(joint(first.number)),
        cell(code(`${uri}:${String(line)}`)),
        cell(
          words(
            each(
              told.map(({ result }) => toWrite(result)),
              ' ',
            ),
          ),
        ),
        cell(
          words(
            each(
              told.map(({ result }) => result.ruleId),
              ', ',
            ),
          ),
        ),
      ],
    ];
  });
  return [heading(2, joint('Where to change the documents')), table([head, ...body])];
}

/** The correction as the finding words it, where the letter leaves a part of it out; else the fields that are missing. */
function toWrite(r: Result): string {
  if (r.kind === 'open') return (r.missing ?? []).join(', ');
  const correct = r.correct ?? '';
  return correct === '' || inTradeWords(correct, r) === correct ? '' : correct;
}
