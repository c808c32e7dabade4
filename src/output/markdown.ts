/** The report as Markdown text. */
import { reportTree } from './markdown-tree.js';
import type { Review } from './report.js';
import { writeMarkdown } from './write-markdown.js';

/** @see writeMarkdown */
export function printMarkdown(review: Review): string {
  return writeMarkdown(reportTree(review));
}
