/** What stands below every drawing: key of signs, findings, title block with the caution. */
import { CAUTION } from '../report.js';
import { oneLine } from '../escape.js';
import { findingMark, frame } from './marks.js';
import { line, type Point } from './svg.js';
import { LINE_HEIGHT, PEN, SIZE, type Sheet } from './sheet.js';
import { textWidthMm, wrapMm } from './text-size.js';
import { scaleBar, scaleText, type System } from './scale.js';
import type { NumberedFinding } from './findings.js';
import type { Detail } from '../../model/types.js';

/** Drawings fit across a sheet of A4 with the margin a printer keeps. */
export const PAGE = { width: 200, margin: 4 } as const;
export const INNER = { x0: PAGE.margin, x1: PAGE.width - PAGE.margin } as const;

const row = SIZE.text * LINE_HEIGHT;

/** A heading over a part of the page. @returns the baseline for what follows */
export function heading(sheet: Sheet, y: number, text: string): number {
  sheet.text([INNER.x0, y + 3], text, { bold: true });
  sheet.add('light', line([INNER.x0, y + 4], [INNER.x1, y + 4]));
  return y + 4 + row;
}

/** One sign of the key: drawn in the box it is given, then told. */
export interface KeySign {
  readonly text: string;
  readonly draw: (at: Point) => void;
}
const SIGN_WIDTH = 11;

/** Key of the signs, as many beside each other as fit. */
export function drawKey(sheet: Sheet, signs: readonly KeySign[]): void {
  if (signs.length === 0) return;
  let y = heading(sheet, sheet.bottom + 2, 'Key');
  let x: number = INNER.x0;
  for (const sign of signs) {
    const width = SIGN_WIDTH + textWidthMm(sign.text, SIZE.small) + 5;
    if (x > INNER.x0 && x + width > INNER.x1) {
      x = INNER.x0;
      y += 4.6;
    }
    sign.draw([x + SIGN_WIDTH / 2 - 1, y]);
    sheet.text([x + SIGN_WIDTH, y + 0.8], sign.text, { size: SIZE.small });
    x += width;
  }
  sheet.reserve({ x0: INNER.x0, y0: y, x1: INNER.x1, y1: y + 2.4 });
}

/** The order of work in two columns, down the first and then the second. */
export function drawSteps(sheet: Sheet, steps: readonly { readonly step: number; readonly text: string }[]): void {
  if (steps.length === 0) return;
  const top = heading(sheet, sheet.bottom + 2, 'Order of work');
  const half = Math.ceil(steps.length / 2);
  const width = (INNER.x1 - INNER.x0) / 2;
  [steps.slice(0, half), steps.slice(half)].forEach((part, column) => {
    const x = INNER.x0 + column * width;
    let y = top;
    for (const { step, text } of part) {
      sheet.text([x + 4, y + 0.8], String(step + 1), { anchor: 'end' });
      for (const one of wrapMm(text, width - 9, SIZE.text)) {
        sheet.text([x + 6, y + 0.8], one);
        y += row;
      }
    }
  });
}

/** Lines of text under a heading. */
export function drawNotes(sheet: Sheet, title: string, notes: readonly string[]): void {
  if (notes.length === 0) return;
  let y = heading(sheet, sheet.bottom + 2, title);
  for (const note of notes) {
    for (const text of wrapMm(note, INNER.x1 - INNER.x0, SIZE.text)) {
      sheet.text([INNER.x0, y + 0.8], text);
      y += row;
    }
  }
}

/**
 * Table of the findings with their numbers.
 *
 * @param shown numbers that are marked in this view
 * @param whole tell also those that are not marked here; else only their numbers
 */
export function drawFindings(
  sheet: Sheet,
  findings: readonly NumberedFinding[],
  shown: ReadonlySet<number>,
  whole: boolean,
): void {
  if (findings.length === 0) return;
  const leads = findings.filter((f) => !f.repeats);
  const told = leads.filter((f) => whole || shown.has(f.number));
  const rest = leads.filter((f) => !told.includes(f));
  let y = heading(sheet, sheet.bottom + 2, `Findings of the review (${told.length} of ${leads.length})`);
  const columns = { level: INNER.x0 + 8, title: INNER.x0 + 22, text: INNER.x0 + 63 };
  for (const { number, result, title } of told) {
    const titles = wrapMm(title, columns.text - columns.title - 2, SIZE.text);
    const marked = shown.has(number) ? '' : ' (Not at one place of this view.)';
    const texts = wrapMm(`${oneLine(result.message)}${marked}`, INNER.x1 - columns.text, SIZE.text, 4);
    const lines = Math.max(2, titles.length, texts.length);
    findingMark(sheet, [INNER.x0 + 3, y + 1.2], number, result.level);
    sheet.text([columns.level, y + 0.8], result.level, { bold: result.level === 'error' });
    titles.forEach((text, i) => sheet.text([columns.title, y + 0.8 + i * row], text));
    texts.forEach((text, i) => sheet.text([columns.text, y + 0.8 + i * row], text));
    y += lines * row + 1;
    sheet.add('leader', line([INNER.x0, y - row + 0.7], [INNER.x1, y - row + 0.7]));
  }
  if (rest.length > 0) {
    const numbers = rest.map((f) => f.number).join(', ');
    for (const text of wrapMm(
      `Not at one place of this view, listed on the elevation: ${numbers}.`,
      INNER.x1 - INNER.x0,
      SIZE.text,
    )) {
      sheet.text([INNER.x0, y + 0.8], text);
      y += row;
    }
  }
  sheet.reserve({ x0: INNER.x0, y0: y - row, x1: INNER.x1, y1: y - row + 1 });
}

/** Title block: what is drawn, how large, and how far it may be trusted. */
export function drawTitleBlock(
  sheet: Sheet,
  detail: Detail,
  view: string,
  scale: { readonly divisor: number; readonly system: System } | undefined,
): void {
  const y0 = sheet.bottom + 4;
  const right = INNER.x1 - 62;
  const titles = wrapMm(detail.title, right - INNER.x0 - 4, SIZE.title - 0.6, 3);
  let y = y0 + SIZE.title + 1.2;
  // Ids are one word and can be long: they shrink, titles wrap.
  const room = right - INNER.x0 - 4;
  const size = Math.min(SIZE.title, (SIZE.title * room) / textWidthMm(detail.id, SIZE.title, { bold: true }));
  sheet.text([INNER.x0 + 2, y], detail.id, { size, bold: true });
  for (const text of titles) {
    y += SIZE.title * LINE_HEIGHT;
    sheet.text([INNER.x0 + 2, y], text, { size: SIZE.title - 0.6 });
  }
  y += SIZE.title * LINE_HEIGHT;
  sheet.text([INNER.x0 + 2, y], view, { bold: true });
  let rightY = y0 + 4;
  if (scale === undefined) sheet.text([right + 2, rightY], 'Not to scale');
  else {
    sheet.text([right + 2, rightY], scaleText(scale.divisor, scale.system));
    sheet.text([right + 2, rightY + row], 'at this size; else by the bar', { size: SIZE.small });
    scaleBar(sheet, right + 4, rightY + row + 6, scale.divisor, scale.system);
    rightY += row + 9;
  }
  const bottom = Math.max(y, rightY) + 2.4;
  const caution = wrapMm(`Not for construction. ${CAUTION}`, INNER.x1 - INNER.x0 - 4, SIZE.text);
  caution.forEach((text, i) => sheet.text([INNER.x0 + 2, bottom + 3.4 + i * row], text));
  const y1 = bottom + 3.4 + caution.length * row - 0.8;
  frame(sheet, { x0: INNER.x0, y0, x1: INNER.x1, y1 }, PEN.cut);
  sheet.add('light', line([INNER.x0, bottom], [INNER.x1, bottom]), line([right, y0], [right, bottom]));
  sheet.reserve({ x0: INNER.x0, y0: y1 - 0.1, x1: INNER.x1, y1 });
}
