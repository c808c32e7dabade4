/**
 * Comments: the findings of a review gathered by cause and numbered. One thing that is wrong often breaks several rules
 * and shows left and right; who corrects it has one thing to do. Nothing is dropped: every finding stands in exactly one
 * comment. The numbers are those of the letter, the report and the triangles on the drawings; they begin anew in each
 * detail, so that a detail drawn alone carries the numbers of the letter.
 */
import { LEVEL_ORDER, type Level, type Result } from '../engine/result.js';
import type { Locus } from '../reading/types.js';
import type { DetailResults } from './grouping.js';

/** One cause: the finding that names it best, and the others it has brought with it. */
export interface Cause {
  readonly lead: Result;
  /** The same finding at the other side: left and right jamb. */
  readonly same: readonly Result[];
  /** What other checks say of the same cause. */
  readonly also: readonly Result[];
}

export interface Comment extends Cause {
  /** From 1, in each detail. */
  readonly number: number;
  readonly group: DetailResults;
}

/** The level a comment has: that of its lead. */
export const levelOf = ({ lead }: Cause): Level => lead.level;

/** Whether a declared deviation waits for the reviewer's word on it: the sender has done what he can. */
export const isToDecide = ({ lead, same }: Cause): boolean =>
  [lead, ...same].every((result) => result.declared !== undefined) || lead.ruleId === 'deviation/not-accepted';

const withoutSide = (text: string | undefined): string =>
  (text ?? '').replace(/\b(?:left|right)\b ?/g, '').replace(/\b(?:upper|lower) (?=corner)/g, '');

const isOfDetail = ({ at }: Result): boolean => at.document.kind === 'detail';

function pathOf({ document, path }: Locus): string {
  return [document.file.uri, document.id, ...path].join('\n');
}

/** The step, layer or opening that a place belongs to: the first two steps of its path. */
function entryOf(at: Locus): string {
  return pathOf({ ...at, path: at.path.slice(0, 2) });
}

const isTraced = ({ flow = [] }: Result): boolean => flow.length > 0;

function isSame(a: Result, b: Result): boolean {
  return (
    a.ruleId === b.ruleId &&
    a.level === b.level &&
    isOfDetail(a) &&
    entryOf(a.at) === entryOf(b.at) &&
    withoutSide(a.message) === withoutSide(b.message) &&
    withoutSide(a.correct) === withoutSide(b.correct)
  );
}

/**
 * Whether `b` only says again what `a` says. Four ways, each of them seen in the documents, none by the words of a
 * message:
 *
 * - one and the same correction of one step answers both;
 * - one of them follows water on its way, and the way ends at the very place the other one is about;
 * - one rule says of one step that it breaks what binds and what is advised;
 * - it is told that nobody declared the difference that the other one found.
 */
function isSaidAgain(a: Result, b: Result): boolean {
  if (b.ruleId === 'deviation/undeclared')
    return pathOf(a.at) === pathOf(b.at) && b.message.includes(a.sources?.[0]?.citation ?? '\n');
  if (!isOfDetail(a) || !isOfDetail(b) || entryOf(a.at) !== entryOf(b.at) || a.at.path.length < 2) return false;
  if (a.correct !== undefined && a.correct === b.correct) return true;
  // Many things end at one edge of the wall: two findings there are two causes.
  if (isTraced(b) && !isTraced(a)) return pathOf(a.at) === pathOf(b.at) && a.at.path[0] !== 'edges';
  return a.ruleId === b.ruleId && a.level !== b.level && sharesSubject(a, b);
}

/** `slope of the pan of W` and `pan of W`: the one subject is a part of the other. */
function sharesSubject({ subject: a = '' }: Result, { subject: b = '' }: Result): boolean {
  return a !== '' && b !== '' && (a.endsWith(b) || b.endsWith(a));
}

/** What names a cause best: the graver finding, one that is about a thing before one that follows water to it. */
const rank = (result: Result): number =>
  LEVEL_ORDER[result.level] * 4 + (isTraced(result) ? 0 : 2) + (result.ruleId === 'deviation/undeclared' ? 0 : 1);

/**
 * Gathers findings of one detail or document by cause.
 *
 * @param findings in the order of the review
 * @returns the causes, the gravest first, within a level in the order of the findings
 */
export function causesOf(findings: readonly Result[]): Cause[] {
  const byRank = [...findings].sort((a, b) => rank(b) - rank(a));
  const causes: { lead: Result; same: Result[]; also: Result[] }[] = [];
  for (const result of byRank) {
    const twin = causes.find(({ lead }) => isSame(lead, result));
    const cause = twin ?? causes.find(({ lead }) => isSaidAgain(lead, result));
    if (twin !== undefined) twin.same.push(result);
    else if (cause !== undefined) cause.also.push(result);
    else causes.push({ lead: result, same: [], also: [] });
  }
  const order = new Map(findings.map((result, i) => [result, i]));
  const place = ({ lead, same }: Cause): number => Math.min(...[lead, ...same].map((r) => order.get(r) ?? 0));
  return causes.sort((a, b) => LEVEL_ORDER[levelOf(b)] - LEVEL_ORDER[levelOf(a)] || place(a) - place(b));
}

/** The comments of a review in the order of its details. */
export function commentsOf(groups: readonly DetailResults[]): Comment[] {
  return groups.flatMap((group) => causesOf(group.findings).map((cause, i) => ({ ...cause, group, number: i + 1 })));
}

/** All results of a comment, the lead first. */
export function resultsOf({ lead, same, also }: Cause): readonly Result[] {
  return [lead, ...same, ...also];
}

/** How many comments there are at each level, those for the reviewer to decide apart. */
export interface CommentCounts {
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
  readonly toDecide: number;
}

export function countComments(causes: readonly Cause[]): CommentCounts {
  const at = (level: Level): number => causes.filter((c) => !isToDecide(c) && levelOf(c) === level).length;
  const declared = new Set(causes.flatMap((c) => resultsOf(c).flatMap((r) => r.declared?.name ?? [])));
  // That a deviation waits, and the breach it waits for, are one thing to decide.
  const isToldThere = ({ lead }: Cause): boolean =>
    lead.ruleId === 'deviation/not-accepted' && declared.has(lead.subject ?? '');
  return {
    errors: at('error'),
    warnings: at('warning'),
    notes: at('note'),
    toDecide: causes.filter((c) => isToDecide(c) && !isToldThere(c)).length,
  };
}
