/** The part of the page about one detail: its drawings beside its findings. */
import type { Element, ElementContent } from 'hast';
import type { RootContent } from 'mdast';
import { commentsOf } from '../comments.js';
import type { DetailResults } from '../grouping.js';
import { code, heading, joint, paragraph, words } from '../markdown-parts.js';
import { oneLine } from '../escape.js';
import { plural } from '../report.js';
import { cleanHtml } from './clean.js';
import type { Drawing } from './drawings.js';
import { figure } from './figure.js';
import { findingArticle } from './finding.js';
import { cutAt, element, isElement, link, text, type Chapter } from './hast.js';
import { detailName, OPEN_NAME } from './names.js';

export interface DetailPart {
  /** Number on the page, from 1. */
  readonly number: number;
  readonly group: DetailResults;
  /** As the report tree tells it; absent for a detail without findings. */
  readonly chapter: Chapter | undefined;
  readonly drawings: readonly Drawing[];
  /** Why drawings that a reader would expect are not there. */
  readonly notDrawn: readonly string[];
  readonly ruleOf: (ruleId: string) => { readonly name: string; readonly title: string } | undefined;
}

/** The chapter of a detail in which nothing is wrong. */
function quietChapter(group: DetailResults): Chapter {
  const { id, title } = group.detail;
  const blocks: RootContent[] = [
    heading(2, words(id), ...(title === undefined ? [] : [joint(' '), words(title)])),
    paragraph(joint('No findings.')),
  ];
  const [chapter] = cutAt('h2', cleanHtml(blocks)).chapters;
  if (chapter === undefined) throw new Error('a chapter was written without its heading');
  return chapter;
}

/** Families of rules that speak of heat and vapor. */
const OF_VAPOR = /^(?:moisture|vapor)\//;

/** On paper a drawing shows a finding; one made of numbers, when heat or vapor is what was found. */
function isOnPaper({ parts, numbers }: Drawing, { findings }: DetailResults): boolean {
  return numbers === undefined ? parts.marks.length > 0 : findings.some((f) => OF_VAPOR.test(f.ruleId));
}

/** File and counts, in one line. */
function facts({ group }: DetailPart): Element {
  const { findings, open, review, passed, accepted } = group;
  const of = (level: string): number => findings.filter((f) => f.level === level).length;
  const counts = [
    ...(['error', 'warning', 'note'] as const).filter((l) => of(l) > 0).map((l) => plural(of(l), l)),
    ...(review.length > 0 ? [`${review.length} for the reviewer to judge`] : []),
    ...(accepted.length > 0 ? [plural(accepted.length, 'accepted deviation')] : []),
    `${passed.length} passed`,
  ].join(', ');
  const [file] = cleanHtml([paragraph(code(group.detail.uri))]);
  const opened: ElementContent[] =
    open.length === 0 ? [] : [text('; '), link(`#${OPEN_NAME}`, text(`${open.length} could not be checked`))];
  return element(
    'p',
    { className: ['facts'] },
    ...(isElement(file, 'p') ? file.children : []),
    text(`: ${counts}`),
    ...opened,
    text('.'),
  );
}

function drawingsColumn(part: DetailPart): Element[] {
  const { number, group, drawings } = part;
  if (drawings.length === 0) return [];
  const figures = drawings.map((drawing, i) =>
    figure(
      drawing,
      { detail: number, view: i + 1, open: i === 0, onPaper: isOnPaper(drawing, group) },
      commentsOf([group]).map(({ lead }) => lead),
    ),
  );
  const label = `Drawings of ${oneLine(group.detail.id)}`;
  if (part.chapter === undefined)
    return [element('details', { className: ['quiet'] }, element('summary', {}, text(label)), ...figures)];
  // A column that scrolls by itself can be reached and scrolled by keyboard.
  return [element('div', { className: ['drawings'], role: 'region', ariaLabel: label, tabIndex: 0 }, ...figures)];
}

export function detailSection(part: DetailPart): Element {
  const { number, group, drawings, chapter = quietChapter(group) } = part;
  const name = detailName(number);
  const { before, chapters } = cutAt('h3', chapter.body);
  const leads = commentsOf([group]).map(({ lead }) => lead);
  const articles = chapters.flatMap((one, i) => {
    const result = leads[i];
    if (result === undefined) return [];
    return [
      findingArticle(one, result, { detail: number, finding: i + 1, drawings, rule: part.ruleOf(result.ruleId) }),
    ];
  });
  const column = drawingsColumn(part);
  const findings =
    articles.length === 0 ? [] : [element('div', { className: ['findings'], id: `${name}-findings` }, ...articles)];
  return element(
    'section',
    { id: name, className: articles.length > 0 ? ['detail', 'found'] : ['detail'], ariaLabelledBy: [`${name}-title`] },
    element('h2', { id: `${name}-title` }, ...chapter.heading.children),
    facts(part),
    ...before,
    ...part.notDrawn.map((why) => element('p', { className: ['facts'] }, text(oneLine(why)))),
    element('div', { className: column.length > 0 && articles.length > 0 ? ['beside'] : [] }, ...findings, ...column),
  );
}
