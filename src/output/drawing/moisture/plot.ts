/** A plot on the sheet: a frame with an axis of round numbers at its left side. */
import { line, polyline, type Box, type Point } from '../svg.js';
import { frame } from '../marks.js';
import { GREY, SIZE, type LayerName, type Sheet } from '../sheet.js';

export interface Ticks {
  /** Ends of the axis. */
  readonly least: number;
  readonly most: number;
  readonly at: readonly number[];
  /** Decimals that tell the ticks apart. */
  readonly decimals: number;
}

/**
 * Round numbers that cover a range: steps of 1, 2 or 5 times a power of ten.
 *
 * @param count about how many steps
 */
export function roundTicks(from: number, to: number, count: number): Ticks {
  // A range of nothing still gets an axis.
  const range = to - from > 1e-12 ? to - from : Math.max(1, Math.abs(to) * 0.1);
  const power = 10 ** Math.floor(Math.log10(range / count));
  const step = power * ([1, 2, 5, 10].find((m) => m * power * count >= range * (1 - 1e-9)) ?? 10);
  const [first, last] = [Math.floor(from / step + 1e-9), Math.ceil((from + range) / step - 1e-9)];
  const at = Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step);
  return {
    least: first * step,
    most: last * step,
    at,
    decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)),
  };
}

/** An axis from zero goes on a little above its greatest value, for the same reason as `withMargin`. */
export const HEADROOM = 1.03;

/** Least and greatest of some values with a little room, so that no line runs along a frame. */
export function withMargin(values: readonly number[]): [number, number] {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const room = 0.04 * (most - least);
  return [least - room, most + room];
}

/** Room for the numbers of an axis, mm. */
const AXIS_ROOM = 11;

export interface Plot {
  readonly box: Box;
  readonly ticks: Ticks;
  /** Height on the sheet of a value in the unit of the axis. */
  readonly y: (shown: number) => number;
}

/**
 * Draws frame and axis.
 *
 * @param name of the axis, for whoever reads the drawing by program
 * @param title stands over the frame, from the left end of the axis on
 */
export function plot(sheet: Sheet, box: Box, ticks: Ticks, name: string, title?: string): Plot {
  const y = (shown: number): number =>
    box.y1 - ((shown - ticks.least) / (ticks.most - ticks.least)) * (box.y1 - box.y0);
  for (const tick of ticks.at) {
    const at = y(tick);
    const isEnd = tick === ticks.least || tick === ticks.most;
    if (!isEnd) sheet.add('leader', line([box.x0, at], [box.x1, at], { stroke: GREY, 'stroke-dasharray': '0.3 1.2' }));
    sheet.add('light', line([box.x0 - 1, at], [box.x0, at]));
    sheet.text([box.x0 - 1.6, at + 0.75], tick.toFixed(ticks.decimals), {
      size: SIZE.small,
      anchor: 'end',
      data: { 'data-axis': name, 'data-value': Number(tick.toFixed(ticks.decimals)) },
    });
  }
  if (title !== undefined) sheet.text([box.x0 - AXIS_ROOM, box.y0 - 2], title);
  frame(sheet, box);
  return { box, ticks, y };
}

/** Styles of the lines: told apart by weight and dashes. */
export const LINES = {
  temperature: { 'stroke-width': 0.5 },
  saturation: { 'stroke-width': 0.35, 'stroke-dasharray': '2 1' },
  vapor: { 'stroke-width': 0.6 },
  outdoor: { 'stroke-width': 0.5 },
  indoor: { 'stroke-width': 0.35, 'stroke-dasharray': '2 1' },
} as const;

/** A line of a plot, named for whoever reads the drawing by program. */
export function curve(
  sheet: Sheet,
  style: keyof typeof LINES,
  name: string,
  points: readonly Point[],
  layer: LayerName = 'cut',
): void {
  sheet.add(layer, polyline(points, { ...LINES[style], 'data-line': name }));
}

/**
 * Moves marks along a line until each has its room, keeping their order and staying between the ends if they fit.
 *
 * @param wanted middles, rising
 * @param widths of each, mm
 * @returns middles
 */
export function spreadAlong(wanted: readonly number[], widths: readonly number[], from: number, to: number): number[] {
  const half = (i: number): number => (widths[i] ?? 0) / 2;
  const at = [...wanted];
  let free = from;
  for (const i of at.keys()) {
    at[i] = Math.max(at[i] as number, free + half(i));
    free = at[i] + half(i);
  }
  let limit = Math.max(to, from + widths.reduce((sum, w) => sum + w, 0));
  for (const i of [...at.keys()].reverse()) {
    at[i] = Math.min(at[i] as number, limit - half(i));
    limit = at[i] - half(i);
  }
  return at;
}
