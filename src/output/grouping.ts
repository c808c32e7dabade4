/** Results gathered under the detail they belong to, in the order the details were reviewed. */
import type { Result } from '../engine/result.js';
import { isFinding, type Review, type ReviewedDetail } from './report.js';

export interface DetailResults {
  /** The detail, or the document (settings, a file that could not be read) the results speak of. */
  readonly detail: ReviewedDetail;
  readonly findings: readonly Result[];
  readonly open: readonly Result[];
  readonly review: readonly Result[];
  readonly accepted: readonly Result[];
  readonly informational: readonly Result[];
  readonly passed: readonly Result[];
}

/**
 * One group for each reviewed detail, then one for each other document that has results. Two details may carry
 * the same id in different files: the file decides, and the first of that id takes what no file decides.
 */
export function byDetail(review: Pick<Review, 'results' | 'details' | 'submittals'>): DetailResults[] {
  const titles = new Map((review.submittals ?? []).map((s) => [groupKey(s.uri, s.number), s.title]));
  const groups = new Map<string, { detail: ReviewedDetail; results: Result[] }>();
  const firstOfId = new Map<string, { detail: ReviewedDetail; results: Result[] }>();
  for (const detail of review.details) {
    const group = { detail, results: [] };
    groups.set(groupKey(detail.uri, detail.id), group);
    if (!firstOfId.has(detail.id)) firstOfId.set(detail.id, group);
  }
  for (const result of review.results) {
    const key = groupKey(result.file.uri, result.documentId);
    let group = groups.get(key) ?? firstOfId.get(result.documentId);
    if (group === undefined) {
      const title = titles.get(key);
      group = {
        detail: { id: result.documentId, uri: result.file.uri, ...(title === undefined ? {} : { title }) },
        results: [],
      };
      groups.set(key, group);
    }
    group.results.push(result);
  }
  return [...groups.values()].map(({ detail, results }) => split(detail, results));
}

function groupKey(uri: string, id: string): string {
  return `${uri}\n${id}`;
}

function split(detail: ReviewedDetail, results: readonly Result[]): DetailResults {
  const standing = results.filter((result) => result.suppression === undefined);
  const ofKind = (kind: Result['kind']): Result[] => standing.filter((result) => result.kind === kind);
  return {
    detail,
    findings: results.filter(isFinding),
    open: ofKind('open'),
    review: ofKind('review'),
    accepted: results.filter((result) => result.suppression !== undefined),
    informational: standing.filter(
      (result) => result.kind === 'informational' || (result.kind === 'fail' && result.level === 'none'),
    ),
    passed: ofKind('pass'),
  };
}

/** What an open result lacks, in one phrase: its fields, or its message when it names none. */
export function missingText(result: Result): string {
  return result.missing !== undefined && result.missing.length > 0 ? result.missing.join(', ') : 'see message';
}

/** The accepted deviation behind a result: `why (by role, until 2026-01-31)`. */
export function acceptanceText(result: Result): string {
  const suppression = result.suppression;
  if (suppression === undefined) return '';
  const terms = [
    suppression.acceptedBy === undefined ? '' : `by ${suppression.acceptedBy}`,
    suppression.until === undefined ? '' : `until ${suppression.until}`,
  ].filter(Boolean);
  return suppression.justification + (terms.length > 0 ? ` (${terms.join(', ')})` : '');
}
