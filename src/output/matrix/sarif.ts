/** The compliance matrix as SARIF: every paragraph a taxon, every answer a result that refers to it. */
import { resultsForReviewer } from '../../engine/requirement-for-reviewer.js';
import { resultsOn } from '../../matrix/rows.js';
import { suggestedAction, type Review } from '../report.js';
import { printSarif } from '../sarif.js';

/**
 * Only results that answer a requirement, and one of kind `review` for each requirement that none answers.
 *
 * @see SARIF 2.1.0 sections 3.19.3 (taxa) and 3.27.8 (taxa of a result)
 */
export function printMatrixSarif(review: Review): string {
  const held = review.requirementsHeld ?? [];
  const items = review.itemsRequired ?? [];
  const answered = items.map((item) => ({ item, results: resultsOn(item, review.results) }));
  const answering = new Set([...held, ...answered].flatMap(({ results }) => results));
  const unanswered = answered.flatMap(({ item, results }) => (results.length === 0 ? [item] : []));
  const results = [...review.results.filter((r) => answering.has(r)), ...resultsForReviewer(held, unanswered)];
  // The suggested action is that of the whole review, not of the answers alone.
  return printSarif({ ...review, results }, { profile: 'full', suggested: suggestedAction(review) });
}
