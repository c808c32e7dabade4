/** Lines about single results that several chapters of the report share. */
import type { ListItem, PhrasingContent, Table } from 'mdast';
import type { Result } from '../engine/result.js';
import { acceptanceText, type DetailResults } from './grouping.js';
import { cell, code, item, joint, strong, table, words } from './markdown-parts.js';
import { placeOfResult } from './place.js';
import { countResults, type Review } from './report.js';

/** `N-2: message`. */
export function told(group: DetailResults, message: string): PhrasingContent[] {
  return [strong(group.detail.id), joint(': '), words(message)];
}

/** ` (file.md:12, lap/end-dam)`. */
export function where(result: Result): PhrasingContent[] {
  const place = placeOfResult(result);
  return [joint(' ('), code(`${place.uri}:${String(place.line)}`), joint(', '), words(result.ruleId), joint(')')];
}

export function judgmentItems(groups: readonly DetailResults[]): ListItem[] {
  return groups.flatMap((group) =>
    group.review.map((result) => item(...told(group, result.message), ...where(result))),
  );
}

export function acceptedItems(groups: readonly DetailResults[]): ListItem[] {
  return groups.flatMap((group) =>
    group.accepted.map((result) =>
      item(
        ...told(group, result.message),
        joint(' Accepted: '),
        words(acceptanceText(result)),
        joint('.'),
        ...where(result),
      ),
    ),
  );
}

export function countTable(review: Review): Table {
  const counts = countResults(review.results);
  const rows: [string, number][] = [
    ['Details reviewed', review.details.length],
    ['Errors', counts.errors],
    ['Warnings', counts.warnings],
    ['Notes', counts.notes],
    ['Cannot be checked', counts.open],
    ['For the reviewer to judge', counts.review],
    ['Accepted deviations', counts.accepted],
    ['Passed', counts.passed],
    ['Not applicable', counts.notApplicable],
  ];
  return table([
    [cell(joint('Result')), cell(joint('Count'))],
    ...rows.map(([name, count]) => [cell(joint(name)), cell(joint(String(count)))]),
  ]);
}
