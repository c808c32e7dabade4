/** A Markdown tree as one HTML file: made harmless, each chapter a section, in the page of every report. */
import type { Element } from 'hast';
import type { Root } from 'mdast';
import { CAUTION } from '../report.js';
import { cleanHtml } from './clean.js';
import { cutAt, element, link, text, textOf, type Chapter } from './hast.js';
import { page } from './page.js';

export interface TreePage {
  /** Suggested review action, for the head of each printed page. */
  readonly action: string;
  readonly version: string;
  /** Name of the list of chapters, for readers who cannot see it. */
  readonly contents: string;
}

const partName = (number: number): string => `part-${String(number)}`;

/**
 * @param tree begins with a heading of depth 1; its last chapter is the caution
 * @returns a whole HTML document, the same bytes for the same tree
 */
export function treePage(tree: Root, { action, version, contents: label }: TreePage): string {
  const { before, chapters } = cutAt('h2', cleanHtml(tree));
  const caution = chapters.pop();
  const [title, ...opening] = before;
  return page({
    title: title === undefined ? '' : textOf(title),
    action,
    version,
    parts: [],
    header: [...(title === undefined ? [] : [title]), ...opening],
    overview: contents(chapters, label),
    main: chapters.map(section),
    footer: caution === undefined ? [element('p', {}, text(CAUTION))] : [caution.heading, ...caution.body],
  });
}

function contents(chapters: readonly Chapter[], label: string): Element {
  const items = chapters.map(({ heading }, i) => element('li', {}, link(`#${partName(i + 1)}`, text(textOf(heading)))));
  return element('nav', { ariaLabel: label }, element('ul', {}, ...items));
}

function section({ heading, body }: Chapter, index: number): Element {
  const name = partName(index + 1);
  const titled = element('h2', { id: `${name}-title` }, ...heading.children);
  return element('section', { id: name, ariaLabelledBy: [`${name}-title`] }, titled, ...body);
}
