/** The signs of a drawing: numbers of the work, findings, drops of water and where it ends, cut-off lines. */
import { circle, element, line, num, pathData, polygon, polyline, type Box, type Point } from './svg.js';
import { PEN, SIZE, WATER, type Sheet } from './sheet.js';
import type { Level } from '../../engine/result.js';

export const NUMBER_RADIUS = 2;
export const FINDING_SIZE = { width: 5.6, height: 5 } as const;

/**
 * Number of a step in the order of work, in a circle; a dashed circle stands on what later work covers.
 *
 * @param step from 0; `undefined` for the blank sign of the key
 */
export function workNumber(sheet: Sheet, [x, y]: Point, step: number | undefined, covered = false): void {
  sheet.add('mark', circle([x, y], NUMBER_RADIUS, { 'stroke-dasharray': covered ? '0.7 0.5' : undefined }));
  sheet.reserve({ x0: x - NUMBER_RADIUS, y0: y - NUMBER_RADIUS, x1: x + NUMBER_RADIUS, y1: y + NUMBER_RADIUS });
  if (step === undefined) return;
  const text = String(step + 1);
  sheet.add('text', numberText([x, y + 0.78], text, text.length > 2 ? 1.7 : SIZE.small, '#000'));
}

/** A number inside a sign, which keeps the room for it. */
function numberText([x, y]: Point, text: string, size: number, fill: string): string {
  return element(
    'text',
    { x, y, 'font-size': size, 'text-anchor': 'middle', fill, stroke: 'none', 'data-in-sign': 'yes' },
    text,
  );
}

/**
 * Number of a finding in a triangle: black for an error, heavy edge for a warning, light edge for a note.
 *
 * @param number `undefined` for the blank sign of the key
 */
export function findingMark(sheet: Sheet, [x, y]: Point, number: number | undefined, level: Level): void {
  const { width, height } = FINDING_SIZE;
  const triangle: Point[] = [
    [x, y - height / 2],
    [x + width / 2, y + height / 2],
    [x - width / 2, y + height / 2],
  ];
  const isError = level === 'error';
  const edge = level === 'warning' ? 0.55 : 0.18;
  sheet.add(
    'mark',
    polygon(triangle, {
      fill: isError ? '#000' : '#fff',
      'stroke-width': edge,
      'stroke-linejoin': 'round',
      'data-finding': number,
    }),
  );
  sheet.reserve({ x0: x - width / 2, y0: y - height / 2, x1: x + width / 2, y1: y + height / 2 });
  if (number === undefined) return;
  const text = String(number);
  sheet.add(
    'text',
    numberText([x, y + 2], text, text.length > 2 ? 1.7 : text.length > 1 ? 2 : 2.2, isError ? '#fff' : '#000'),
  );
}

/** A drop: round below, pointed above. */
function drop([x, y]: Point): string {
  return element('path', {
    d: `M${num(x)} ${num(y - 1)}C${num(x + 0.35)} ${num(y - 0.3)} ${num(x + 0.6)} ${num(y)} ${num(x + 0.6)} ${num(y + 0.3)}A0.6 0.6 0 0 1 ${num(x - 0.6)} ${num(y + 0.3)}C${num(x - 0.6)} ${num(y)} ${num(x - 0.35)} ${num(y - 0.3)} ${num(x)} ${num(y - 1)}Z`,
    fill: WATER,
    stroke: '#fff',
    'stroke-width': 0.15,
  });
}

const lengthOf = ([ax, ay]: Point, [bx, by]: Point): number => Math.hypot(bx - ax, by - ay);

/** A way of water: a line with drops at even distances along it. */
export function waterLine(sheet: Sheet, points: readonly Point[], hidden = false, everyMm = 11): void {
  if (points.length < 2) return;
  sheet.add('water', polyline(points, { 'stroke-dasharray': hidden ? '1 0.7' : undefined }));
  let next = everyMm / 2;
  let walked = 0;
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [points[i] as Point, points[i + 1] as Point];
    const length = lengthOf(a, b);
    while (length > 0 && next <= walked + length) {
      const share = (next - walked) / length;
      sheet.add('water', drop([a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]));
      next += everyMm;
    }
    walked += length;
  }
}

/** The arrow of water that leaves the wall. */
export function waterOut(sheet: Sheet, [x, y]: Point, direction: Point = [0, 1]): void {
  const [dx, dy] = direction;
  sheet.add(
    'water',
    polygon(
      [
        [x + dx * 1.2, y + dy * 1.2],
        [x - dy * 0.8 - dx * 0.8, y + dx * 0.8 - dy * 0.8],
        [x + dy * 0.8 - dx * 0.8, y - dx * 0.8 - dy * 0.8],
      ],
      { fill: WATER, stroke: 'none' },
    ),
  );
}

/** Where water ends wrong: a crossed circle. */
export function wrongEnd(sheet: Sheet, [x, y]: Point): void {
  const r = 1.7;
  const d = r * Math.SQRT1_2;
  sheet.add(
    'mark',
    circle([x, y], r, { stroke: '#000', 'stroke-width': 0.45 }),
    line([x - d, y - d], [x + d, y + d], { 'stroke-width': 0.45 }),
    line([x - d, y + d], [x + d, y - d], { 'stroke-width': 0.45 }),
  );
  sheet.reserve({ x0: x - r, y0: y - r, x1: x + r, y1: y + r });
}

/**
 * The line where a drawing is broken off: straight with a zigzag.
 *
 * @param share where the zigzag stands, as a share of the line
 */
export function breakLine(sheet: Sheet, from: Point, to: Point, share = 0.5): void {
  const length = lengthOf(from, to);
  if (length === 0) return;
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const at = (along: number, aside: number): Point => [
    from[0] + ux * along - uy * aside,
    from[1] + uy * along + ux * aside,
  ];
  const m = length * share;
  const [zx, zy] = at(m, 0);
  sheet.reserve({ x0: zx - 1.6, y0: zy - 1.6, x1: zx + 1.6, y1: zy + 1.6 });
  sheet.add(
    'light',
    polyline([at(-1.5, 0), at(m - 1.6, 0), at(m - 0.8, 1.6), at(m + 0.8, -1.6), at(m + 1.6, 0), at(length + 1.5, 0)]),
  );
}

/** A leader from words to the thing meant, with a dot at its end. */
export function leader(sheet: Sheet, points: readonly Point[]): void {
  const end = points.at(-1);
  if (end === undefined) return;
  sheet.add('leader', element('path', { d: pathData(points) }), circle(end, 0.4, { fill: '#000', stroke: 'none' }));
}

/** A frame of one weight around a box. */
export function frame(sheet: Sheet, box: Box, width: number = PEN.light): void {
  sheet.add(
    'edge',
    polygon(
      [
        [box.x0, box.y0],
        [box.x1, box.y0],
        [box.x1, box.y1],
        [box.x0, box.y1],
      ],
      { 'stroke-width': width },
    ),
  );
}
