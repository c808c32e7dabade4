/** Bars of the water at the end of each month, plane by plane, with the limits as lines and the numbers below. */
import { element, line, polygon, type Box } from '../svg.js';
import { spread } from '../labels.js';
import { SIZE, type Sheet } from '../sheet.js';
import { type Followed } from './followed.js';
import { monthName } from '../../../moisture/words.js';
import { plot, roundTicks } from './plot.js';
import type { WetRow } from './year-words.js';

/** A limit further above the water than this is told in words; as a line it would flatten the bars. */
const LIMIT_IN_SIGHT = 3;
const ROW = 3.2;

/** Fills of the bars in their order: gray, stripes, dots, blank; light enough for a limit to be seen across them. */
const FILLS: readonly { readonly id: string; readonly marks: string }[] = [
  { id: 'water-a', marks: '<rect width="1.2" height="1.2" fill="#b5b5b5"/>' },
  { id: 'water-b', marks: '<path d="M0 0.3H1.2M0 0.9H1.2" stroke="#000" stroke-width="0.14"/>' },
  { id: 'water-c', marks: '<circle cx="0.3" cy="0.3" r="0.16"/><circle cx="0.9" cy="0.9" r="0.16"/>' },
  { id: 'water-d', marks: '' },
];

/** Fill of the bars of a plane. */
export function barFill(sheet: Sheet, index: number): string {
  const found = FILLS[index % FILLS.length];
  if (found === undefined) return '#fff';
  sheet.define(
    found.id,
    element(
      'pattern',
      { id: found.id, width: 1.2, height: 1.2, patternUnits: 'userSpaceOnUse' },
      `<rect width="1.2" height="1.2" fill="#fff"/>${found.marks}`,
    ),
  );
  return `url(#${found.id})`;
}

const corners = ({ x0, y0, x1, y1 }: Box) =>
  [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ] as const;

/** Middles of the columns of the months, mm on paper. */
export function monthColumns(x0: number, x1: number): { readonly middle: number; readonly width: number }[] {
  const width = (x1 - x0) / 12;
  return Array.from({ length: 12 }, (_, i) => ({ middle: x0 + (i + 0.5) * width, width }));
}

/** Limits that a plane may come near enough to be drawn. */
function limitsInSight(rows: readonly WetRow[]): { row: WetRow; mostKgPerM2: number }[] {
  const peak = Math.max(...rows.map((r) => r.peakKgPerM2));
  return rows.flatMap((row) => {
    const most = row.limit?.mostKgPerM2;
    return most !== undefined && most <= LIMIT_IN_SIGHT * peak ? [{ row, mostKgPerM2: most }] : [];
  });
}

/**
 * Draws the bars, and below them the months with the numbers.
 *
 * @returns lower end
 */
export function drawBars(sheet: Sheet, found: Followed, rows: readonly WetRow[], box: Box): number {
  const { amount } = found.units;
  const limits = limitLines(rows);
  const most = Math.max(...rows.map((r) => r.peakKgPerM2), ...limits.map((l) => l.mostKgPerM2));
  const { y } = plot(
    sheet,
    box,
    // An axis that follows next to nothing up would show it as a tall bar.
    roundTicks(0, Math.max(amount.shown(most), 10 * (amount.least ?? 0)), 5),
    'water',
    `Water in the wall at the end of the month, ${amount.unit}`,
  );
  const columns = monthColumns(box.x0, box.x1);
  const bar = Math.min(6, (columns[0]?.width ?? 0) / (rows.length + 1));
  rows.forEach((row, k) => {
    const fill = barFill(sheet, k);
    row.kgPerM2.forEach((kg, i) => {
      if (!(kg > 0)) return;
      const x0 = (columns[i]?.middle ?? 0) + (k - rows.length / 2) * bar;
      const corner = { x0, x1: x0 + bar, y0: y(amount.shown(kg)), y1: box.y1 };
      sheet.add(
        'fill',
        polygon(corners(corner), {
          fill,
          stroke: '#000',
          'stroke-width': 0.2,
          'data-bar': row.letter,
          'data-month': i,
        }),
      );
    });
  });
  drawLimits(sheet, limits, (kg) => y(amount.shown(kg)), box);
  return drawNumbers(sheet, found, rows, box);
}

/** A limit that is drawn, with the planes it holds at. */
export interface LimitLine {
  readonly letters: readonly string[];
  readonly mostKgPerM2: number;
}

/** Limits in sight; those of equal amount share one line. */
export function limitLines(rows: readonly WetRow[]): LimitLine[] {
  const inSight = limitsInSight(rows);
  const amounts = [...new Set(inSight.map((l) => l.mostKgPerM2))].sort((a, b) => a - b);
  return amounts.map((mostKgPerM2) => ({
    mostKgPerM2,
    letters: inSight.filter((l) => l.mostKgPerM2 === mostKgPerM2).map((l) => l.row.letter),
  }));
}

/** The sign of a limit. */
export const LIMIT_STROKE = { 'stroke-width': 0.4, 'stroke-dasharray': '3 0.8 0.5 0.8' } as const;

/** Lines of the limits, named at their right end. */
function drawLimits(sheet: Sheet, limits: readonly LimitLine[], y: (kgPerM2: number) => number, box: Box): void {
  const height = SIZE.small + 0.4;
  const labels = limits
    .map(({ letters, mostKgPerM2 }) => ({
      text: `limit ${letters.join(' ')}`,
      at: y(mostKgPerM2),
      y: y(mostKgPerM2) - height / 2,
      height,
    }))
    .sort((a, b) => a.at - b.at);
  for (const { at, text } of labels)
    sheet.add('cut', line([box.x0, at], [box.x1, at], { ...LIMIT_STROKE, 'data-limit': text }));
  spread(labels, box.y0, box.y1);
  for (const { text, y: top } of labels) sheet.text([box.x1 + 1, top + SIZE.small * 0.85], text, { size: SIZE.small });
}

/** Months, and the amounts of each plane under them. */
function drawNumbers(sheet: Sheet, found: Followed, rows: readonly WetRow[], box: Box): number {
  const { amount } = found.units;
  const columns = monthColumns(box.x0, box.x1);
  let y = box.y1 + 3.4;
  found.judged.year.months.forEach(({ month }, i) => {
    const x = columns[i]?.middle ?? 0;
    sheet.text([x, y], monthName(month).slice(0, 3), { anchor: 'middle' });
    sheet.add(
      'light',
      line([x + (columns[i]?.width ?? 0) / 2, box.y1], [x + (columns[i]?.width ?? 0) / 2, box.y1 + 1]),
    );
  });
  for (const row of rows) {
    y += ROW;
    sheet.text([box.x0 - 1.6, y], row.letter, { anchor: 'end', bold: true });
    row.kgPerM2.forEach((kg, i) => {
      const text = kg > 0 ? amount.text(kg).replace('less than ', '<').replace(` ${amount.unit}`, '') : '-';
      sheet.text([columns[i]?.middle ?? 0, y], text, { size: SIZE.small, anchor: 'middle' });
    });
  }
  return y + 1;
}
