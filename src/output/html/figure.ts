/** One drawing on the page: the sheet, and over it the marks of the findings as links and their ways of water. */
import type { Element } from 'hast';
import { FINDING_SIZE } from '../drawing/marks.js';
import { element as svgElement, escapeXml, num, pathData } from '../drawing/svg.js';
import type { Result } from '../../engine/result.js';
import type { NumberTable } from '../drawing/moisture/table.js';
import { oneLine } from '../escape.js';
import type { Drawing } from './drawings.js';
import type { SheetParts } from './sheet-parts.js';
import { element, markup, text } from './hast.js';
import { classOfFinding, findingName, markName, viewName } from './names.js';

/** Radius of the ring around a chosen mark, mm on paper. */
const RING = 4.4;

/** Where a figure stands in the page. */
export interface FigurePlace {
  readonly detail: number;
  readonly view: number;
  readonly open: boolean;
  /** Printed: it marks a finding. */
  readonly onPaper: boolean;
}

/** Patterns of two drawings may have one name; on one page each needs its own. */
function withOwnNames(svg: string, prefix: string): string {
  return svg.replace(/ id="([^"]+)"/g, ` id="${prefix}-$1"`).replace(/url\(#([^)"]+)\)/g, `url(#${prefix}-$1)`);
}

/** Room between the drawing and its title block, mm. */
const GAP = 1.5;

/** Height of what is shown, mm on paper: the sheet without its table of findings or list of notes, which the page itself shows. */
function shownHeight({ drawingEnd, height, titleBlockStart }: SheetParts): number {
  return titleBlockStart === undefined ? height : drawingEnd + GAP + height - titleBlockStart;
}

/**
 * The sheet with the table of findings left out. Drawing and title block stand in one picture, so that the scale bar
 * in the title block is right at any size.
 */
function sheet(drawing: Drawing, name: string): string {
  const { width, height, drawingEnd, titleBlockStart } = drawing.parts;
  const [, title = '', description = '', content = ''] =
    /^<svg [^>]*>\s*<title>([^<]*)<\/title>\s*<desc>([^<]*)<\/desc>([^]*)<\/svg>\s*$/.exec(
      withOwnNames(drawing.svg, name),
    ) ?? [];
  const part = (y: number, from: number, to: number, inside: string): string =>
    `<svg x="0" y="${num(y)}" width="${num(width)}" height="${num(to - from)}" viewBox="0 ${num(from)} ${num(width)} ${num(to - from)}">${inside}</svg>`;
  const whole = `<g id="${name}-sheet">${content}</g>`;
  return (
    `<svg class="paper" viewBox="0 0 ${num(width)} ${num(shownHeight(drawing.parts))}" role="img" aria-labelledby="${name}-title ${name}-desc">` +
    `<title id="${name}-title">${title}</title><desc id="${name}-desc">${description}</desc>` +
    (titleBlockStart === undefined
      ? whole
      : part(0, 0, drawingEnd, whole) +
        part(drawingEnd + GAP, titleBlockStart, height, `<use href="#${name}-sheet"/>`)) +
    '</svg>'
  );
}

function overlay(drawing: Drawing, place: FigurePlace, findings: readonly Result[]): string {
  const { width, marks } = drawing.parts;
  const ways = [...drawing.waysOf].flatMap(([finding, lines]) =>
    lines.map((points) =>
      svgElement('path', { d: pathData(points), class: `way ${classOfFinding(place.detail, finding)}` }),
    ),
  );
  const links = marks
    .filter((mark) => findings[mark.finding - 1] !== undefined)
    .sort((a, b) => a.finding - b.finding)
    .map((mark, i, all) => {
      const { level, message } = findings[mark.finding - 1] as Result;
      const label = `Finding ${mark.finding}, ${level}: ${oneLine(message)}`;
      const { x, y } = mark;
      const hit = { x: x - FINDING_SIZE.width / 2, y: y - FINDING_SIZE.height / 2, ...FINDING_SIZE, class: 'hit' };
      return svgElement(
        'a',
        {
          href: `#${findingName(place.detail, mark.finding)}`,
          // Left and right carry one number; the first of them is the one that addresses lead to.
          id: all[i - 1]?.finding === mark.finding ? undefined : markName(place.detail, place.view, mark.finding),
          class: `mark ${classOfFinding(place.detail, mark.finding)}`,
          'aria-label': label,
        },
        svgElement('title', {}, escapeXml(label)) +
          svgElement('rect', hit) +
          svgElement('circle', { cx: x, cy: y, r: RING, class: 'rim' }) +
          svgElement('circle', { cx: x, cy: y, r: RING, class: 'ring' }),
      );
    });
  if (ways.length + links.length === 0) return '';
  return svgElement(
    'svg',
    {
      class: 'overlay',
      viewBox: `0 0 ${num(width)} ${num(shownHeight(drawing.parts))}`,
      role: 'group',
      'aria-label': `Findings marked in this drawing: ${drawing.title}`,
    },
    [...ways, ...links].join(''),
  );
}

/** Higher than wide: it takes a page of its own, or its words could not be read. */
const isTall = (parts: SheetParts): boolean => shownHeight(parts) > parts.width;

/** What a drawing of numbers assumes and leaves out, beside the sheet, where it can be read at any size of the sheet. */
function notesList({ notes = [] }: NumberTable): Element[] {
  if (notes.length === 0) return [];
  return [
    element('p', { className: ['facts'] }, text('Assumed and left out')),
    element('ul', { className: ['notes'] }, ...notes.map((note) => element('li', {}, text(oneLine(note))))),
  ];
}

/** The numbers a drawing is made of, as a table that is folded away. */
function numbersTable({ caption, head, rows }: NumberTable): Element {
  const cell = (name: 'th' | 'td', words: string, scope?: 'col'): Element =>
    element(name, scope === undefined ? {} : { scope }, text(oneLine(words)));
  return element(
    'details',
    { className: ['numbers'] },
    element('summary', {}, text('The same in numbers')),
    element(
      'table',
      {},
      element('caption', {}, text(oneLine(caption))),
      element('thead', {}, element('tr', {}, ...head.map((words) => cell('th', words, 'col')))),
      element('tbody', {}, ...rows.map((row) => element('tr', {}, ...row.map((words) => cell('td', words))))),
    ),
  );
}

/** @param findings that lead the comments of the detail, in the order of their numbers */
export function figure(drawing: Drawing, place: FigurePlace, findings: readonly Result[]): Element {
  const name = viewName(place.detail, place.view);
  const shown = new Set(drawing.parts.marks.map((m) => m.finding)).size;
  const count = shown === 0 ? '' : ` (${shown} of ${findings.length} findings marked)`;
  return element(
    'details',
    {
      id: name,
      className: [
        'view',
        ...(drawing.numbers === undefined ? [] : ['numeric']),
        ...(isTall(drawing.parts) ? ['tall'] : []),
        ...(place.onPaper ? [] : ['off-paper']),
      ],
      ...(place.open ? { open: true } : {}),
    },
    element('summary', {}, text(`${oneLine(drawing.title)}${count}`)),
    element('div', { className: ['sheet'] }, markup(sheet(drawing, name)), markup(overlay(drawing, place, findings))),
    ...(drawing.numbers === undefined ? [] : [...notesList(drawing.numbers), numbersTable(drawing.numbers)]),
  );
}
