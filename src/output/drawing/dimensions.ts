/** Dimension lines with ticks, packed into rows beside a drawing so that no two texts meet. */
import { element, line, type Point } from './svg.js';
import { NUMBER_RADIUS, workNumber } from './marks.js';
import { SIZE, textBox, type Sheet } from './sheet.js';
import { textWidthMm } from './text-size.js';
import { formatQuantity } from '../../quantity/format.js';
import type { Quantity } from '../../quantity/types.js';

/** One measured length, along the axis in paper coordinates. */
export interface Dimension {
  readonly from: number;
  readonly to: number;
  /** Where the witness lines start, across the axis. */
  readonly edge: number;
  readonly text: string;
  /** The field it shows, such as `pan.ontoWall`, and its value on the wall. */
  readonly of: string;
  readonly mm: number;
}

/** Dimensions of one work, kept in one row with its number. */
export interface DimensionGroup {
  readonly step?: number;
  readonly dimensions: readonly Dimension[];
}

export type Axis = 'x' | 'y';

interface Row {
  readonly groups: DimensionGroup[];
  /** Room across the axis, mm. */
  readonly size: number;
}

/** A length as its author wrote the unit. */
export function lengthText(mm: number, like: Pick<Quantity, 'unit' | 'system'> | undefined): string {
  return formatQuantity(mm, 'length', like ?? { system: 'US' });
}

/** What a dimension takes along its axis: its line, or its text where that is longer. */
function extent(d: Dimension, axis: Axis): [number, number] {
  const half = axis === 'x' ? textWidthMm(d.text, SIZE.text) / 2 : SIZE.text * 0.55;
  const middle = (d.from + d.to) / 2;
  return [Math.min(d.from, d.to, middle - half), Math.max(d.from, d.to, middle + half)];
}

function groupExtent(group: DimensionGroup, axis: Axis): [number, number] {
  const all = group.dimensions.map((d) => extent(d, axis));
  const low = Math.min(...all.map(([a]) => a));
  const high = Math.max(...all.map(([, b]) => b));
  return [group.step === undefined ? low : low - 2 * NUMBER_RADIUS - 1.4, high];
}

const GAP = 1.6;

/**
 * Sorts groups into rows, the first row nearest to the drawing. Dimensions of one group that would meet are given
 * rows of their own.
 */
export function packDimensions(groups: readonly DimensionGroup[], axis: Axis): Row[] {
  const single = groups.flatMap((group): DimensionGroup[] => {
    const sorted = [...group.dimensions].sort((a, b) => a.from - b.from);
    const meet = sorted.some(
      (d, i) => i > 0 && extent(d, axis)[0] < extent(sorted[i - 1] as Dimension, axis)[1] - 0.01,
    );
    return meet ? sorted.map((d) => ({ ...group, dimensions: [d] })) : sorted.length === 0 ? [] : [group];
  });
  const rows: DimensionGroup[][] = [];
  for (const group of single) {
    const [low, high] = groupExtent(group, axis);
    const row = rows.find((r) =>
      r.every((other) => {
        const [a, b] = groupExtent(other, axis);
        return high + GAP < a || b + GAP < low;
      }),
    );
    if (row === undefined) rows.push([group]);
    else row.push(group);
  }
  return rows.map((row) => ({ groups: row, size: rowSize(row, axis) }));
}

/** Room on the far side of an upright line from its text: a number stands on the line. */
function besideLine(row: readonly DimensionGroup[]): number {
  return row.some((g) => g.step !== undefined) ? NUMBER_RADIUS + 0.4 : 1;
}

function rowSize(row: readonly DimensionGroup[], axis: Axis): number {
  if (axis === 'x') return 5;
  const widest = Math.max(...row.flatMap((g) => g.dimensions.map((d) => textWidthMm(d.text, SIZE.text))));
  return widest + 1.6 + besideLine(row);
}

/** Room that rows take together, mm. */
export function rowsSize(rows: readonly Row[]): number {
  return rows.reduce((sum, row) => sum + row.size, rows.length === 0 ? 0 : 2);
}

/** A tick where a dimension line meets its witness line. */
function tick(sheet: Sheet, x: number, y: number): void {
  sheet.add('edge', line([x - 0.6, y + 0.6], [x + 0.6, y - 0.6]));
}

/** The figure, on a white ground so that no line strikes it through. */
function write(sheet: Sheet, at: Point, d: Dimension, anchor: 'middle' | 'end'): void {
  const options = { anchor, data: { 'data-dimension': d.of, 'data-mm': d.mm } };
  const { x0, y0, x1, y1 } = textBox(at, d.text, options);
  // Fonts are narrower than the room kept for them, so the ground stays within that room.
  const inset = (x1 - x0) * 0.06;
  const left = anchor === 'end' ? x0 + inset : x0;
  const ground = { x: left - 0.3, y: y0 + 0.1, width: x1 - left + 0.6, height: y1 - y0 - 0.35 };
  sheet.add('text', element('rect', { ...ground, fill: '#fff', stroke: 'none' }));
  sheet.text(at, d.text, options);
}

function drawX(sheet: Sheet, d: Dimension, y: number, away: 1 | -1): void {
  const [x0, x1] = [Math.min(d.from, d.to), Math.max(d.from, d.to)];
  sheet.add('leader', line([x0 - 0.8, y], [x1 + 0.8, y]));
  for (const x of [x0, x1]) {
    sheet.add('leader', line([x, d.edge + away * 0.8], [x, y + away * 0.9]));
    tick(sheet, x, y);
  }
  write(sheet, [(x0 + x1) / 2, y - 0.75], d, 'middle');
}

function drawY(sheet: Sheet, d: Dimension, x: number, away: 1 | -1): void {
  const [y0, y1] = [Math.min(d.from, d.to), Math.max(d.from, d.to)];
  sheet.add('leader', line([x, y0 - 0.8], [x, y1 + 0.8]));
  for (const y of [y0, y1]) {
    sheet.add('leader', line([d.edge + away * 0.8, y], [x + away * 0.9, y]));
    tick(sheet, x, y);
  }
  write(sheet, [x - 0.9, (y0 + y1) / 2 + 0.85], d, 'end');
}

/**
 * Draws packed rows.
 *
 * @param start coordinate across the axis where the drawing ends
 * @param away 1 when the rows lie right of or below the drawing, -1 when left of or above it
 * @returns where the last row ends
 */
export function drawDimensions(sheet: Sheet, rows: readonly Row[], axis: Axis, start: number, away: 1 | -1): number {
  let at = start + away * (rows.length === 0 ? 0 : 2);
  for (const { groups, size } of rows) {
    // Text stands above a level line and left of an upright one: away from the drawing or toward it.
    const lineAt =
      axis === 'x'
        ? away > 0
          ? at + 3.4
          : at - 1
        : away > 0
          ? at + size - besideLine(groups)
          : at - besideLine(groups);
    for (const group of groups) {
      for (const d of group.dimensions) (axis === 'x' ? drawX : drawY)(sheet, d, lineAt, away);
      if (group.step === undefined) continue;
      const first = groupExtent(group, axis)[0] + NUMBER_RADIUS;
      workNumber(sheet, axis === 'x' ? [first, lineAt] : [lineAt, first], group.step);
    }
    at += away * size;
  }
  return at;
}
