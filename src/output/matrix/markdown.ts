/** The compliance matrix as Markdown text. Load this file only when it is asked for: the writer behind it is large. */
import { gfmToMarkdown } from 'mdast-util-gfm';
import { toMarkdown } from 'mdast-util-to-markdown';
import type { MatrixRow } from '../../matrix/rows.js';
import type { Review } from '../report.js';
import { matrixTree } from './tree.js';

/** @see https://github.github.com/gfm/ */
export function printMatrixMarkdown(rows: readonly MatrixRow[], review: Review): string {
  return toMarkdown(matrixTree(rows, review), {
    bullet: '-',
    rule: '-',
    extensions: [gfmToMarkdown({ tablePipeAlign: false })],
  });
}
