/** The comparison for a terminal: counts first, then what to act on, then what changed in the documents. */
import type { Change, Comparison, Pair } from '../../compare/types.js';
import { themeFor, type Theme } from '../color.js';
import { oneLine } from '../escape.js';
import { CAUTION, plural, STAMP_NOTE } from '../report.js';
import { sourceText } from '../source-text.js';
import { padTo, wrap } from '../text-width.js';
import {
  asksNow,
  becauseWord,
  CAUSE_UNKNOWN,
  changePlaces,
  changeText,
  countsText,
  differencesText,
  gradeOf,
  isCauseUnknown,
  MOST_EXPLANATIONS,
  NO_DOCUMENTS,
  pairsOf,
  placesText,
  quietText,
  requirementText,
  SECTIONS,
  type ComparisonReport,
} from './report.js';

const NARROWEST = 40;
const WIDEST = 100;
const LABEL_CELLS = 10;

interface Page {
  readonly cells: number;
  readonly theme: Theme;
  readonly cautions: ReadonlyMap<string, string>;
  readonly titles: ReadonlyMap<string, string>;
}

/** The whole text, ending with a line break; everything from documents is made harmless first. */
export function printComparisonTerminal(
  report: ComparisonReport,
  options: { readonly color: boolean; readonly columns?: number },
): string {
  const { comparison, cautions, titles } = report;
  const page: Page = {
    cells: Math.max(NARROWEST, Math.min(WIDEST, options.columns ?? 80)),
    theme: themeFor(options.color),
    cautions,
    titles,
  };
  const names = `${comparison.before.name} -> ${comparison.after.name}`;
  const blocks = [
    [
      ...titled(page, 0, `Compared: ${names}`),
      ...titled(page, 0, `${countsText(comparison)}.`),
      ...indented(page, 0, `${quietText(comparison)}.`),
    ].join('\n'),
    ...SECTIONS.flatMap(({ progress, title }) => {
      const pairs = pairsOf(comparison, progress);
      if (pairs.length === 0) return [];
      return [
        titled(page, 0, `${title} (${String(pairs.length)})`).join('\n'),
        ...pairs.map((pair) => pairBlock(page, pair, comparison)),
      ];
    }),
    ...listBlock(
      page,
      'Findings by source',
      comparison.requirements.map((one) => `${requirementText(one)} [${one.details.join(', ')}]`),
    ),
    ...(comparison.changes === undefined
      ? [indented(page, 0, NO_DOCUMENTS).join('\n')]
      : listBlock(page, 'Changed without effect on any check', comparison.withoutEffect.map(changeLine))),
    closing(page, report),
  ];
  return `${blocks.join('\n\n')}\n`;
}

function pairBlock(page: Page, pair: Pair, comparison: Comparison): string {
  const told = pair.after ?? pair.before;
  if (told === undefined) return '';
  const grade = gradeOf(told);
  const level = told.kind === 'fail' ? page.theme.level[told.level](grade) : grade;
  const head = `  ${page.theme.title(oneLine(told.detail))}  ${level}  ${oneLine(page.titles.get(told.rule) ?? '')}${page.titles.has(told.rule) ? '  ' : ''}${oneLine(told.rule)}`;
  const difference = differencesText(pair);
  const subject = difference === '' || told.subject === '' ? '' : `${told.subject}: `;
  // What stands as it stood was told in the review before: here it only has to be recognized.
  const isKnown = pair.state === 'unchanged';
  const correct = asksNow(pair) && !isKnown;
  return [
    head,
    page.theme.quiet(`    ${oneLine(placesText(pair))}`),
    ...indented(page, 4, told.message),
    ...labelled(page, 'change', subject + difference),
    ...(isKnown ? [] : told.sources.slice(0, 1).flatMap((source) => labelled(page, 'source', sourceText(source)))),
    ...labelled(page, 'correct', correct ? told.correct : undefined),
    ...labelled(page, 'caution', correct && told.kind === 'fail' ? page.cautions.get(told.rule) : undefined),
    ...because(page, pair, comparison),
  ].join('\n');
}

function because(page: Page, pair: Pair, comparison: Comparison): string[] {
  const shown = pair.explanations.slice(0, MOST_EXPLANATIONS);
  if (shown.length === 0) return isCauseUnknown(pair, comparison) ? labelled(page, 'cause', CAUSE_UNKNOWN) : [];
  const rest = pair.explanations.length - shown.length;
  return [
    ...indented(page, 4, `${becauseWord(pair)}:`),
    ...shown.flatMap(({ change }) => indented(page, 6, changeLine(change), 2)),
    ...(rest > 0 ? indented(page, 6, `and ${plural(rest, 'other change')}`) : []),
  ];
}

const changeLine = (change: Change): string => `${changeText(change)} (${changePlaces(change)})`;

function listBlock(page: Page, heading: string, lines: readonly string[]): string[] {
  if (lines.length === 0) return [];
  return [
    [
      ...titled(page, 0, `${heading} (${String(lines.length)})`),
      ...lines.flatMap((line) => indented(page, 2, line, 2)),
    ].join('\n'),
  ];
}

function closing(page: Page, { suggested }: ComparisonReport): string {
  const action =
    suggested === undefined
      ? []
      : titled(
          page,
          0,
          `Suggested action for the new submission: ${suggested.action ?? 'none'} (${suggested.because}). ${STAMP_NOTE}`,
        );
  return [...action, ...wrap(CAUTION, page.cells)].join('\n');
}

function titled(page: Page, indent: number, text: string): string[] {
  return indented(page, indent, text).map((line) => page.theme.title(line));
}

/** @param hanging how much further lines after the first are set in, so that one item is told from the next */
function indented(page: Page, indent: number, text: string, hanging = 0): string[] {
  return wrap(oneLine(text), page.cells - indent - hanging).map(
    (line, index) => ' '.repeat(index === 0 ? indent : indent + hanging) + line,
  );
}

function labelled(page: Page, label: string, text: string | undefined): string[] {
  if (text === undefined || text === '') return [];
  return wrap(oneLine(text), page.cells - 4 - LABEL_CELLS).map(
    (line, index) => `    ${page.theme.quiet(padTo(index === 0 ? label : '', LABEL_CELLS))}${line}`,
  );
}
