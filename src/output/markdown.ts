/** The report as Markdown text. Load this file only when it is asked for: the writer behind it is large. */
import { gfmToMarkdown } from 'mdast-util-gfm';
import { toMarkdown } from 'mdast-util-to-markdown';
import { reportTree } from './markdown-tree.js';
import type { Review } from './report.js';

/**
 * @returns Markdown in the GitHub flavor (tables), ending with a line break
 * @see https://github.github.com/gfm/
 */
export function printMarkdown(review: Review): string {
  return toMarkdown(reportTree(review), {
    bullet: '-',
    rule: '-',
    // Cells padded to one width would change every row of a table when one text grows.
    extensions: [gfmToMarkdown({ tablePipeAlign: false })],
  });
}
