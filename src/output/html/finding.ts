/** One finding on the page: its facts as a list of terms, its path, where the drawings mark it. */
import type { Element, ElementContent } from 'hast';
import type { Level, Result } from '../../engine/result.js';
import { oneLine } from '../escape.js';
import { plural } from '../report.js';
import type { Drawing } from './drawings.js';
import { element, isElement, link, markup, text, textOf, type Chapter } from './hast.js';
import { findingName, markName } from './names.js';

/** What the page knows around one finding. */
export interface FindingPlace {
  /** Number of the detail on the page and of the finding in the detail, both from 1. */
  readonly detail: number;
  readonly finding: number;
  readonly drawings: readonly Drawing[];
  /** Name of the rule in the list of rules, and its title. */
  readonly rule: { readonly name: string; readonly title: string } | undefined;
}

/** The sign that marks the finding on the drawings, drawn in the same way: black, heavy edge, light edge. */
function sign(level: Level, number: number): string {
  const isError = level === 'error';
  return (
    `<svg class="sign" viewBox="0 0 24 22" aria-hidden="true"><path d="M12 1.5L22.5 20.5H1.5Z" fill="${isError ? '#000' : '#fff'}" ` +
    `stroke="#000" stroke-width="${level === 'warning' ? 2.4 : 0.9}" stroke-linejoin="round"/>` +
    `<text x="12" y="18" font-size="${number > 99 ? 6.5 : 9}" text-anchor="middle" fill="${isError ? '#fff' : '#000'}">${number}</text></svg>`
  );
}

const stepsIn = (item: Element): number =>
  item.children
    .filter((c) => isElement(c, 'ol'))
    .flatMap((c) => c.children)
    .filter((c) => isElement(c, 'li')).length;

const isNotBlank = (c: ElementContent): boolean => c.type !== 'text' || c.value.trim() !== '';

/** `**Name**: rest` as a term and what is said of it. */
function fact(item: Element, place: FindingPlace): Element {
  const [first, second, ...others] = item.children.filter((c) => c.type !== 'text' || c.value.trim() !== '');
  const name = first === undefined ? '' : textOf(first);
  const isPath = others.some((c) => isElement(c, 'ol'));
  const rest: ElementContent[] =
    second?.type === 'text'
      ? [text(second.value.replace(/^:\s*/, '')), ...others]
      : second === undefined
        ? others
        : [second, ...others];
  const worded = rest.filter((c) => c.type !== 'text' || c.value !== '');
  // The check leads to the list of rules and their sources.
  const told =
    name === 'Check' && place.rule !== undefined ? [link(`#${place.rule.name}`, ...worded.filter(isNotBlank))] : worded;
  const show = (): Element => {
    const onDrawing = place.drawings.some((d) => d.waysOf.has(place.finding)) ? ', also on the drawing' : '';
    const address = `#${findingName(place.detail, place.finding)}`;
    return element(
      'a',
      { href: address, className: ['show'] },
      text(`Show the ${plural(stepsIn(item), 'step')}${onDrawing}`),
    );
  };
  return element(
    'div',
    isPath ? { className: ['path'] } : {},
    element('dt', {}, text(name)),
    element('dd', {}, ...(isPath ? [show()] : []), ...told),
  );
}

/** Links to the marks of the finding, drawing by drawing. */
function whereMarked(place: FindingPlace): Element[] {
  const links = place.drawings.flatMap((drawing, i) =>
    drawing.parts.marks.some((m) => m.finding === place.finding)
      ? [link(`#${markName(place.detail, i + 1, place.finding)}`, text(oneLine(drawing.title)))]
      : [],
  );
  if (links.length === 0) return [];
  const parted = links.flatMap((one, i): ElementContent[] => (i === 0 ? [one] : [text('; '), one]));
  return [element('div', { className: ['screen'] }, element('dt', {}, text('Drawing')), element('dd', {}, ...parted))];
}

/**
 * @param chapter heading, message and list of facts as the report tree gives them
 */
export function findingArticle(chapter: Chapter, result: Result, place: FindingPlace): Element {
  const name = findingName(place.detail, place.finding);
  const title = textOf(chapter.heading);
  const [, number = '', rest = title] = /^(\d+\. )(.*)$/s.exec(title) ?? [];
  const items = chapter.body.filter((b) => isElement(b, 'ul')).flatMap((b) => b.children);
  return element(
    'article',
    { id: name, className: ['finding', `is-${result.level}`], tabIndex: -1, ariaLabelledBy: [`${name}-title`] },
    element(
      'h3',
      { id: `${name}-title` },
      element(
        'a',
        { href: `#${name}`, className: ['pick'] },
        markup(sign(result.level, place.finding)),
        element('span', { className: ['unseen'] }, text(number)),
        element('span', {}, text(rest)),
      ),
    ),
    ...chapter.body.filter((b) => !isElement(b, 'ul')),
    element('dl', {}, ...items.filter((i) => isElement(i, 'li')).map((i) => fact(i, place)), ...whereMarked(place)),
  );
}
