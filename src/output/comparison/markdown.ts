/** The comparison as Markdown text. */
import { writeMarkdown } from '../write-markdown.js';
import type { ComparisonReport } from './report.js';
import { comparisonTree } from './tree.js';

/** @see writeMarkdown */
export function printComparisonMarkdown(report: ComparisonReport): string {
  return writeMarkdown(comparisonTree(report));
}
