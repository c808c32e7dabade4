/** Lines about single results that several chapters of the report share. */
import type { ListItem, PhrasingContent, Table } from 'mdast';
import type { Level, Result } from '../engine/result.js';
import { causesOf, countComments, isToDecide, resultsOf } from './comments.js';
import { acceptanceText, byDetail, type DetailResults } from './grouping.js';
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

/** Comments, which are what has to be acted on, and the results they are made of. */
export function countTable(review: Review): Table {
  const counts = countResults(review.results);
  const causes = byDetail(review).flatMap((group) => causesOf(group.findings));
  const comments = countComments(causes);
  // What waits for the reviewer stands in a row of its own, so that the rows add up to the findings.
  const waiting = causes.filter(isToDecide).flatMap(resultsOf);
  const others = (level: Level, all: number): number => all - waiting.filter((r) => r.level === level).length;
  const rows: [string, number, number?][] = [
    ['Details reviewed', review.details.length],
    ['Errors', others('error', counts.errors), comments.errors],
    ['Warnings', others('warning', counts.warnings), comments.warnings],
    ['Notes', others('note', counts.notes), comments.notes],
    ...(waiting.length === 0
      ? []
      : [
          ['Declared deviations, for the reviewer to decide', waiting.length, comments.toDecide] as [
            string,
            number,
            number,
          ],
        ]),
    ['Cannot be checked', counts.open],
    ['For the reviewer to judge', counts.review],
    ['Accepted deviations', counts.accepted],
    ['Passed', counts.passed],
    ['Not applicable', counts.notApplicable],
  ];
  return table([
    ['', 'Comments', 'Results'].map((name) => cell(joint(name))),
    ...rows.map(([name, results, told]) =>
      [name, told === undefined ? '' : String(told), String(results)].map((text) => cell(joint(text))),
    ),
  ]);
}
