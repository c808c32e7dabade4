/** The compliance matrix as one HTML file, in the page of every report. */
import type { MatrixRow } from '../../matrix/rows.js';
import { treePage } from '../html/tree-page.js';
import { suggestedAction, type Review } from '../report.js';
import { matrixTree } from './tree.js';

/** @returns a whole HTML document, the same bytes for the same matrix */
export function printMatrixHtml(rows: readonly MatrixRow[], review: Review): string {
  return treePage(matrixTree(rows, review), {
    action: suggestedAction(review).action ?? 'no action suggested',
    version: review.toolVersion,
    contents: 'Parts of this matrix',
  });
}
