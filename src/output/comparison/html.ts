/** The comparison as one HTML file, in the page of every report. */
import { treePage } from '../html/tree-page.js';
import type { ComparisonReport } from './report.js';
import { comparisonTree } from './tree.js';

/** @returns a whole HTML document, the same bytes for the same comparison */
export function printComparisonHtml(report: ComparisonReport): string {
  return treePage(comparisonTree(report), {
    action: report.suggested?.action ?? 'no action suggested',
    version: report.toolVersion,
    contents: 'Parts of this comparison',
  });
}
