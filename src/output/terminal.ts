/**
 * The report for a terminal, by detail. Every word can be understood without color; everything that comes from
 * a document is made harmless before it is printed.
 */
import type { Result } from '../engine/result.js';
import { themeFor, type Theme } from './color.js';
import { oneLine } from './escape.js';
import { excerpt } from './excerpt.js';
import { acceptanceText, byDetail, missingText, type DetailResults } from './grouping.js';
import { placeOfLocus, placeOfResult, placeText } from './place.js';
import {
  CAUTION,
  countResults,
  errorsToDecide,
  plural,
  STAMP_NOTE,
  suggestedAction,
  type Counts,
  type Review,
} from './report.js';
import { sourceLabels } from './source-text.js';
import { padTo, wrap } from './text-width.js';

export interface TerminalOptions {
  readonly color: boolean;
  /** Width of the stream in cells; 80 when it is not known. */
  readonly columns?: number;
}

/** Narrower than this a label and its text no longer stand side by side; wider lines are tiring to read. */
const NARROWEST = 40;
const WIDEST = 100;
const LABEL_CELLS = 10;

interface Page {
  readonly cells: number;
  readonly theme: Theme;
  readonly cautions: ReadonlyMap<string, string>;
}

/** The whole report, ending with a line break. */
export function printTerminal(review: Review, options: TerminalOptions): string {
  const columns = options.columns !== undefined && options.columns > 0 ? options.columns : 80;
  const page: Page = {
    cells: Math.max(NARROWEST, Math.min(WIDEST, columns)),
    theme: themeFor(options.color),
    cautions: new Map(review.rules.flatMap((rule) => (rule.caution === undefined ? [] : [[rule.id, rule.caution]]))),
  };
  const blocks = byDetail(review).flatMap((group) => detailBlock(page, group));
  if (review.notifications.length > 0) blocks.push(notificationBlock(page, review));
  blocks.push(closingBlock(page, review));
  return `${blocks.join('\n\n')}\n`;
}

/** Nothing for a detail that only passed: a library of ten thousand must not scroll the findings away. */
function detailBlock(page: Page, group: DetailResults): string[] {
  const { title } = page.theme;
  const lists = [
    ...group.findings.map((result) => findingBlock(page, result)),
    ...openBlock(page, group.open),
    ...listBlock(page, 'For the reviewer to judge', group.review, (result) => result.message),
    ...listBlock(
      page,
      'Accepted deviations',
      group.accepted,
      (result) => `${result.message} Accepted: ${acceptanceText(result)}.`,
    ),
    ...listBlock(page, 'For information', group.informational, (result) => result.message),
  ];
  if (lists.length === 0) return [];
  const name = [group.detail.id, group.detail.title ?? ''].map(oneLine).filter(Boolean).join('  ');
  const heading = wrap(name, page.cells).map((line) => title(line));
  return [[...heading, page.theme.quiet(oneLine(group.detail.uri))].join('\n'), ...lists];
}

function findingBlock(page: Page, result: Result): string {
  const place = placeOfResult(result);
  const { text, pointer } = excerpt(result.file, result.span, page.cells - 4);
  const caution = page.cautions.get(result.ruleId);
  return [
    headLine(page, result),
    ...indented(page, 4, result.message),
    ...(text === '' ? [] : [`    ${page.theme.quiet(text)}`, `    ${page.theme.pointer(pointer)}`]),
    ...labelled(page, 'required', result.required),
    ...labelled(page, 'provided', result.provided),
    ...sourceLabels(result.sources ?? []).flatMap(({ label, text: source }) => labelled(page, label, source)),
    ...labelled(page, 'correct', result.correct),
    ...(result.flow ?? []).flatMap((step, index) =>
      labelled(
        page,
        index === 0 ? 'path' : '',
        `${String(index + 1)}. ${step.message}${placeNote(step.at, place.uri)}`,
      ),
    ),
    ...(result.related ?? []).flatMap((one) => labelled(page, 'see', one.message + placeNote(one.at, place.uri))),
    ...labelled(page, 'notes', notesCounted(result)),
    ...labelled(page, 'caution', caution),
  ].join('\n');
}

/** Notes fill a page; a terminal says that they are there. */
function notesCounted({ notes = [] }: Result): string | undefined {
  const stand = notes.length === 1 ? 'stands' : 'stand';
  return notes.length === 0
    ? undefined
    : `${plural(notes.length, 'note')} on what this rests on and leaves out ${stand} in the Markdown, HTML, SARIF and JSON reports.`;
}

/** ` (line 12)` in the same file, ` (spec.md:12:3)` in another. */
function placeNote(at: Parameters<typeof placeOfLocus>[0], uri: string): string {
  const place = placeOfLocus(at);
  return place.uri === uri ? ` (line ${String(place.line)})` : ` (${placeText(place)})`;
}

/** The place stays whole, however long, so that a terminal can open it. */
function headLine(page: Page, result: Result): string {
  const level = page.theme.level[result.level](result.level);
  const place = placeText(placeOfResult(result));
  const rest = `${result.level}  ${oneLine(result.ruleId)}`;
  return 2 + place.length + 2 + rest.length <= page.cells
    ? `  ${place}  ${level}  ${oneLine(result.ruleId)}`
    : `  ${place}\n    ${level}  ${oneLine(result.ruleId)}`;
}

/** Gathered by what is missing, because one answer often settles several checks. */
function openBlock(page: Page, open: readonly Result[]): string[] {
  if (open.length === 0) return [];
  const byField = new Map<string, Result[]>();
  for (const result of open) {
    const missing = missingText(result);
    const sharing = byField.get(missing);
    if (sharing === undefined) byField.set(missing, [result]);
    else sharing.push(result);
  }
  const lines = [`  ${page.theme.title(`Cannot be checked: ${String(open.length)}`)}`];
  for (const [missing, results] of byField) {
    const first = results[0];
    if (first === undefined) continue;
    lines.push(`    ${placeText(placeOfResult(first))}`, ...indented(page, 4, `missing: ${missing}`));
    for (const result of results) lines.push(...indented(page, 6, `${result.message} [${result.ruleId}]`));
  }
  return [lines.join('\n')];
}

function listBlock(
  page: Page,
  heading: string,
  results: readonly Result[],
  tell: (result: Result) => string,
): string[] {
  if (results.length === 0) return [];
  const lines = [`  ${page.theme.title(`${heading}: ${String(results.length)}`)}`];
  for (const result of results) {
    lines.push(`    ${placeText(placeOfResult(result))}`, ...indented(page, 6, `${tell(result)} [${result.ruleId}]`));
  }
  return [lines.join('\n')];
}

function notificationBlock(page: Page, review: Review): string {
  const lines = [page.theme.title('About the review itself')];
  for (const notification of review.notifications) {
    const about = [notification.ruleId, notification.documentId, notification.uri].filter((part) => part !== undefined);
    const where = about.length > 0 ? ` [${about.join(', ')}]` : '';
    lines.push(...indented(page, 2, `${notification.level}: ${notification.message}${where}`));
  }
  return lines.join('\n');
}

function closingBlock(page: Page, review: Review): string {
  const { action, because } = suggestedAction(review);
  return [
    ...wrap(
      `${plural(review.details.length, 'detail')} reviewed: ${countsText(countResults(review.results), errorsToDecide(review.results))}.`,
      page.cells,
    ),
    ...wrap(`Suggested action: ${action ?? 'none'} (${because}). ${STAMP_NOTE}`, page.cells).map((line) =>
      page.theme.title(line),
    ),
    ...wrap(CAUTION, page.cells),
  ].join('\n');
}

/** `2 errors, 1 warning, 0 notes; 3 cannot be checked; 14 passed`; how many errors wait for the reviewer follows them. */
export function countsText(counts: Counts, toDecide = 0): string {
  const declared = toDecide === 0 ? '' : ` (${String(toDecide)} declared as a deviation, for the reviewer to decide)`;
  const parts = [
    [
      `${plural(counts.errors, 'error')}${declared}`,
      plural(counts.warnings, 'warning'),
      plural(counts.notes, 'note'),
    ].join(', '),
    counts.open > 0 ? `${String(counts.open)} cannot be checked` : '',
    counts.review > 0 ? `${String(counts.review)} for the reviewer to judge` : '',
    counts.accepted > 0 ? plural(counts.accepted, 'accepted deviation') : '',
    `${String(counts.passed)} passed`,
  ];
  return parts.filter(Boolean).join('; ');
}

function indented(page: Page, indent: number, text: string): string[] {
  return wrap(oneLine(text), page.cells - indent).map((line) => ' '.repeat(indent) + line);
}

function labelled(page: Page, label: string, text: string | undefined): string[] {
  if (text === undefined || text === '') return [];
  return wrap(oneLine(text), page.cells - 4 - LABEL_CELLS).map((line, index) => {
    const name = padTo(index === 0 ? label : '', LABEL_CELLS);
    return `    ${page.theme.quiet(name)}${line}`;
  });
}
