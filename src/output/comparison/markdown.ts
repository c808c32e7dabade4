/** The comparison as Markdown text. Load this file only when it is asked for: the writer behind it is large. */
import { gfmToMarkdown } from 'mdast-util-gfm';
import { toMarkdown } from 'mdast-util-to-markdown';
import type { ComparisonReport } from './report.js';
import { comparisonTree } from './tree.js';

/**
 * @returns Markdown in the GitHub flavor (tables), ending with a line break
 * @see https://github.github.com/gfm/
 */
export function printComparisonMarkdown(report: ComparisonReport): string {
  return toMarkdown(comparisonTree(report), {
    bullet: '-',
    rule: '-',
    extensions: [gfmToMarkdown({ tablePipeAlign: false })],
  });
}
