/** Water in the wall month by month, with the air on both sides that brings and takes it. */
import { drawTitleBlock, drawKey, heading, INNER, PAGE, type KeySign } from '../page.js';
import { LINE_HEIGHT, Sheet, SIZE } from '../sheet.js';
import type { DrawingSubject } from '../subject.js';
import { line, polygon, type Point } from '../svg.js';
import { wrapMm } from '../text-size.js';
import { followed, smallPrint, type Followed } from './followed.js';
import { monthName } from '../../../moisture/words.js';
import { curve, HEADROOM, LINES, plot, roundTicks, withMargin } from './plot.js';
import { drawSmallPrint, drawTable, type ColumnPlace, type NumberTable } from './table.js';
import type { Scale } from './units.js';
import { barFill, drawBars, LIMIT_STROKE, limitLines, monthColumns } from './year-bars.js';
import { planesTable, wetRows, yearNumbersOf, yearWords, type WetRow } from './year-words.js';

const FIELD = { x0: 20, x1: 183 } as const;
const HEIGHT = { bars: 52, air: 22 } as const;
const ROW = SIZE.text * LINE_HEIGHT;

const COLUMNS: readonly ColumnPlace[] = [
  { x: 6, anchor: 'start', width: 5 },
  { x: 12, anchor: 'start', width: 50 },
  { x: 64, anchor: 'start', width: 20 },
  { x: 86, anchor: 'start', width: 18 },
  { x: 106, anchor: 'start', width: 90 },
];

/** Temperature or vapor pressure of both sides, month by month. @returns lower end */
function drawAir(
  sheet: Sheet,
  { judged, wallYear }: Followed,
  y0: number,
  name: 'temperature' | 'pressure',
  scale: Scale,
): number {
  const box = { x0: FIELD.x0, x1: FIELD.x1, y0, y1: y0 + HEIGHT.air };
  const of = (side: 'inside' | 'outside'): number[] =>
    judged.year.months.map(({ month }) => {
      const air = wallYear.air[month - 1]?.[side];
      return scale.shown((name === 'temperature' ? air?.temperatureC : air?.vaporPressurePa) ?? NaN);
    });
  const [inside, outside] = [of('inside'), of('outside')];
  const all = [...inside, ...outside];
  const title = `${name === 'temperature' ? 'Air temperature' : 'Vapor pressure of the air'}, ${scale.unit}`;
  const ticks =
    name === 'temperature' ? roundTicks(...withMargin(all), 4) : roundTicks(0, Math.max(...all) * HEADROOM, 4);
  const { y } = plot(sheet, box, ticks, `air-${name}`, title);
  const columns = monthColumns(box.x0, box.x1);
  const points = (values: readonly number[]): Point[] =>
    values.map((value, i): Point => [columns[i]?.middle ?? 0, y(value)]);
  curve(sheet, 'outdoor', `outdoor-${name}`, points(outside));
  curve(sheet, 'indoor', `indoor-${name}`, points(inside));
  return box.y1;
}

function monthsBelow(sheet: Sheet, { judged }: Followed, y: number): void {
  const columns = monthColumns(FIELD.x0, FIELD.x1);
  judged.year.months.forEach(({ month }, i) =>
    sheet.text([columns[i]?.middle ?? 0, y], monthName(month).slice(0, 3), { anchor: 'middle' }),
  );
}

function keySigns(sheet: Sheet, rows: readonly WetRow[], { units }: Followed): KeySign[] {
  const bars = rows.map((row, k): KeySign => ({
    text: `${row.letter}: ${row.name}`,
    draw: ([x, y]) => {
      const box: Point[] = [
        [x - 3, y - 1.3],
        [x + 3, y - 1.3],
        [x + 3, y + 1.3],
        [x - 3, y + 1.3],
      ];
      sheet.add('fill', polygon(box, { fill: barFill(sheet, k), stroke: '#000', 'stroke-width': 0.2 }));
    },
  }));
  const sample =
    (style: 'outdoor' | 'indoor') =>
    ([x, y]: Point) =>
      sheet.add('cut', line([x - 4.5, y], [x + 4.5, y], LINES[style]));
  const limits = limitLines(rows).map(({ letters, mostKgPerM2 }): KeySign => ({
    text: `limit of ${letters.join(', ')}: ${units.amount.text(mostKgPerM2)}`,
    draw: ([x, y]) => sheet.add('cut', line([x - 4.5, y], [x + 4.5, y], LIMIT_STROKE)),
  }));
  return [
    ...bars,
    ...limits,
    { text: 'outdoors', draw: sample('outdoor') },
    { text: 'indoors', draw: sample('indoor') },
  ];
}

const notesOf = (found: Followed, rows: readonly WetRow[]): string[] =>
  smallPrint(found, rows.length === 0 ? undefined : 'Limits on water are national; none holds everywhere.');

/**
 * Draws the year from the month the wetting starts in; from January where nothing condenses.
 *
 * @returns SVG text
 * @throws RangeError when the wall cannot be followed
 */
export function drawYear(subject: DrawingSubject): string {
  const found = followed(subject);
  const { detail } = subject;
  const rows = wetRows(found);
  const words = yearWords(found);
  const sheet = new Sheet(PAGE.width);
  let y: number = PAGE.margin + 3;
  words
    .flatMap((t) => wrapMm(t, (INNER.x1 - INNER.x0 - 4) / 1.05, SIZE.text))
    .forEach((text, i) => {
      sheet.text([INNER.x0 + 2, y], text, { bold: i === 0 && rows.length === 0 });
      y += ROW;
    });
  if (rows.length > 0)
    y = drawBars(sheet, found, rows, { x0: FIELD.x0, x1: FIELD.x1, y0: y + 4, y1: y + 4 + HEIGHT.bars });
  y = drawAir(sheet, found, y + 5, 'temperature', found.units.temperature);
  y = drawAir(sheet, found, y + 6, 'pressure', found.units.pressure);
  monthsBelow(sheet, found, y + 3.4);
  drawKey(sheet, keySigns(sheet, rows, found));
  if (rows.length > 0) {
    const table = planesTable(found, rows);
    drawTable(sheet, table, COLUMNS, heading(sheet, sheet.bottom + 2, table.caption) + 0.6);
  }
  drawSmallPrint(sheet, heading(sheet, sheet.bottom + 2, 'Assumed and left out') + 0.4, notesOf(found, rows));
  const view = 'Water in the wall through a year';
  drawTitleBlock(sheet, detail, view, undefined);
  const description = `${detail.title}. ${words.join(' ')} Not for construction.`;
  return sheet.toSvg(`${detail.id}: ${view}`, description, PAGE.margin);
}

/** The numbers of the year. Same errors as {@link drawYear}. */
export function yearNumbers(subject: DrawingSubject): NumberTable {
  const found = followed(subject);
  const rows = wetRows(found);
  return { ...yearNumbersOf(found, rows), notes: notesOf(found, rows) };
}
