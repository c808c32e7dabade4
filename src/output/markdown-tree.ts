/** The report as a Markdown tree (mdast), in the order a reviewer reads it. Other printers may start from it too. */
import type { PhrasingContent, Root, RootContent } from 'mdast';
import type { Source } from '../engine/result.js';
import { webAddress } from './escape.js';
import { byDetail, missingText, type DetailResults } from './grouping.js';
import { letterOf } from './letter/letter.js';
import { detailFindings } from './markdown-finding.js';
import { cell, code, heading, item, joint, list, paragraph, strong, table, words } from './markdown-parts.js';
import { acceptedItems, countTable, judgmentItems, told, where } from './markdown-results.js';
import { placeOfResult, placeText } from './place.js';
import { CAUTION, STAMP_NOTE, suggestedAction, type Review } from './report.js';
import { isUnsure, sourceText, UNSURE_NOTE } from './source-text.js';

/** How many details a row of the passed table names before it counts the rest. */
const NAMED_DETAILS = 8;

/** Builds the tree; the same review gives the same tree. With a submittal under review it begins as a letter. */
export function reportTree(review: Review): Root {
  const groups = byDetail(review);
  const letter = letterOf(review, groups);
  const findings = detailFindings(groups, review.rules);
  return {
    type: 'root',
    children: [
      ...(letter === undefined
        ? [
            ...opening(review),
            ...findings,
            ...openQuestions(groups),
            ...judgments(groups),
            ...acceptedDeviations(groups),
          ]
        : [...letter.opening, ...letter.chapters.flat(), ...findings]),
      ...information(groups),
      ...passed(groups, review),
      ...rulesUsed(review),
      ...aboutTheReview(review),
      heading(2, joint('Caution')),
      paragraph(joint(CAUTION)),
      // The letter has its own note.
      ...(letter === undefined && groups.some((g) => g.findings.some((r) => (r.sources ?? []).some(isUnsure)))
        ? [paragraph(joint(UNSURE_NOTE))]
        : []),
    ],
  };
}

function opening(review: Review): RootContent[] {
  const { action, because } = suggestedAction(review);
  return [
    heading(1, joint('Review of wall details')),
    paragraph(strong(`Suggested action: ${action ?? 'none'}`), joint(` (${because}). ${STAMP_NOTE}`)),
    paragraph(joint(CAUTION)),
    countTable(review),
  ];
}

function openQuestions(groups: readonly DetailResults[]): RootContent[] {
  const rows = groups.flatMap((group) =>
    group.open.map((result) => [
      cell(words(group.detail.id)),
      cell(words(missingText(result))),
      cell(words(result.message)),
      cell(words(result.ruleId)),
      cell(words(placeText(placeOfResult(result)))),
    ]),
  );
  if (rows.length === 0) return [];
  const head = ['Detail', 'Missing', 'Needed because', 'Rule', 'Place'].map((name) => cell(joint(name)));
  return [heading(2, joint('What could not be checked')), table([head, ...rows])];
}

function judgments(groups: readonly DetailResults[]): RootContent[] {
  const items = judgmentItems(groups);
  return items.length === 0 ? [] : [heading(2, joint('For the reviewer to judge')), list(items)];
}

function acceptedDeviations(groups: readonly DetailResults[]): RootContent[] {
  const items = acceptedItems(groups);
  return items.length === 0 ? [] : [heading(2, joint('Accepted deviations')), list(items)];
}

function information(groups: readonly DetailResults[]): RootContent[] {
  const items = groups.flatMap((group) =>
    group.informational.map((result) => item(...told(group, result.message), ...where(result))),
  );
  return items.length === 0 ? [] : [heading(2, joint('For information')), list(items)];
}

function passed(groups: readonly DetailResults[], review: Review): RootContent[] {
  const titles = new Map(review.rules.map((rule) => [rule.id, rule.title]));
  const byRule = new Map<string, { count: number; details: Set<string> }>();
  for (const group of groups) {
    for (const result of group.passed) {
      const row = byRule.get(result.ruleId) ?? { count: 0, details: new Set() };
      row.count += 1;
      row.details.add(group.detail.id);
      byRule.set(result.ruleId, row);
    }
  }
  if (byRule.size === 0) return [];
  const head = ['Rule', 'Check', 'Passed', 'Details'].map((name) => cell(joint(name)));
  const rows = [...byRule].map(([ruleId, { count, details }]) => {
    const named = [...details].slice(0, NAMED_DETAILS).join(', ');
    const rest = details.size - NAMED_DETAILS;
    return [
      cell(words(ruleId)),
      cell(words(titles.get(ruleId) ?? '')),
      cell(joint(String(count))),
      cell(words(rest > 0 ? `${named} and ${String(rest)} more` : named)),
    ];
  });
  return [heading(2, joint('What passed')), table([head, ...rows])];
}

/** Only rules that said something: the reader wants to know what the lines above rest on. */
function rulesUsed(review: Review): RootContent[] {
  const used = new Set(review.results.map((result) => result.ruleId));
  const items = review.rules
    .filter((rule) => used.has(rule.id))
    .map((rule) =>
      item(
        code(rule.id),
        joint(' '),
        words(rule.title),
        joint(': '),
        words(rule.summary),
        ...rule.sources.flatMap((source, index) => [joint(index === 0 ? ' Sources: ' : '; '), sourceNode(source)]),
      ),
    );
  return items.length === 0 ? [] : [heading(2, joint('Rules used and their sources')), list(items)];
}

function sourceNode(source: Source): PhrasingContent {
  const url = webAddress(source.url);
  const text = words(sourceText(source));
  return url === undefined ? text : { type: 'link', url, children: [text] };
}

function aboutTheReview(review: Review): RootContent[] {
  if (review.notifications.length === 0) return [];
  const items = review.notifications.map((notification) =>
    item(
      strong(notification.level),
      joint(': '),
      words(notification.message),
      ...(notification.ruleId === undefined ? [] : [joint(' '), code(notification.ruleId)]),
      ...(notification.uri === undefined ? [] : [joint(' '), code(notification.uri)]),
    ),
  );
  return [heading(2, joint('About the review itself')), list(items)];
}
