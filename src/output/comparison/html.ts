/** The comparison as one HTML file: the tree of the Markdown report, made harmless, in the page of every report. */
import type { Element } from 'hast';
import { cleanHtml } from '../html/clean.js';
import { cutAt, element, link, text, textOf, type Chapter } from '../html/hast.js';
import { page } from '../html/page.js';
import { CAUTION } from '../report.js';
import type { ComparisonReport } from './report.js';
import { comparisonTree } from './tree.js';

const partName = (number: number): string => `part-${String(number)}`;

/** @returns a whole HTML document, the same bytes for the same comparison */
export function printComparisonHtml(report: ComparisonReport): string {
  const { before, chapters } = cutAt('h2', cleanHtml(comparisonTree(report)));
  const caution = chapters.pop();
  const [title, ...opening] = before;
  return page({
    title: title === undefined ? '' : textOf(title),
    action: report.suggested?.action ?? 'no action suggested',
    version: report.toolVersion,
    parts: [],
    header: [...(title === undefined ? [] : [title]), ...opening],
    overview: contents(chapters),
    main: chapters.map(section),
    footer: caution === undefined ? [element('p', {}, text(CAUTION))] : [caution.heading, ...caution.body],
  });
}

function contents(chapters: readonly Chapter[]): Element {
  const items = chapters.map(({ heading }, i) => element('li', {}, link(`#${partName(i + 1)}`, text(textOf(heading)))));
  return element('nav', { ariaLabel: 'Parts of this comparison' }, element('ul', {}, ...items));
}

function section({ heading, body }: Chapter, index: number): Element {
  const name = partName(index + 1);
  const titled = element('h2', { id: `${name}-title` }, ...heading.children);
  return element('section', { id: name, ariaLabelledBy: [`${name}-title`] }, titled, ...body);
}
