/** The compliance matrix as Markdown text. */
import type { MatrixRow } from '../../matrix/rows.js';
import type { Review } from '../report.js';
import { writeMarkdown } from '../write-markdown.js';
import { matrixTree } from './tree.js';

/** @see writeMarkdown */
export function printMatrixMarkdown(rows: readonly MatrixRow[], review: Review): string {
  return writeMarkdown(matrixTree(rows, review));
}
