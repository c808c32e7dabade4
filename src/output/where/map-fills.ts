/** Fills of the answers: told apart by their marks alone, and by light and hue for any color vision. */
import { circle, element, pathData } from '../drawing/svg.js';
import { INK, type Sheet } from '../drawing/sheet.js';
import { ANSWERS, type Answer } from '../../where/answer.js';

interface Fill {
  readonly color: string;
  /** Marks on a tile; plain where there are none. */
  readonly tile?: { readonly sizeMm: number; readonly turn: number; readonly marks: (unitsPerMm: number) => string };
}

const line = (x0: number, y0: number, x1: number, y1: number, width: number, ink: string): string =>
  element('path', {
    d: pathData([
      [x0, y0],
      [x1, y1],
    ]),
    fill: 'none',
    stroke: ink,
    'stroke-width': width,
  });
const dot = (at: number, r: number): string => circle([at, at], r, { fill: INK, stroke: 'none' });

/** Dark enough to be seen without color, and lighter than the borders of the states. */
const DARK = '#5e2413';

/** The lighter the fill, the better the wall fits; nothing is white but what is not known. */
const FILLS: Readonly<Record<Answer, Fill>> = {
  fits: { color: '#bfe0d4' },
  'fits with conditions': {
    color: '#f0dc8c',
    tile: { sizeMm: 1.1, turn: 45, marks: (k) => line(0, 0.55 * k, 1.1 * k, 0.55 * k, 0.13 * k, INK) },
  },
  'estimate over limit': {
    color: '#e9b48a',
    tile: { sizeMm: 0.9, turn: 90, marks: (k) => line(0, 0.45 * k, 0.9 * k, 0.45 * k, 0.13 * k, DARK) },
  },
  'cannot tell': {
    color: '#fff',
    tile: { sizeMm: 1.1, turn: 0, marks: (k) => dot(0.3 * k, 0.13 * k) + dot(0.85 * k, 0.13 * k) },
  },
  'does not fit': {
    color: '#cf6f4e',
    tile: {
      sizeMm: 1,
      turn: 45,
      marks: (k) => line(0, 0.5 * k, k, 0.5 * k, 0.12 * k, DARK) + line(0.5 * k, 0, 0.5 * k, k, 0.12 * k, DARK),
    },
  },
};

function fillOf(sheet: Sheet, answer: Answer, unitsPerMm: number): string {
  const { color, tile } = FILLS[answer];
  if (tile === undefined) return color;
  const id = `answer-${answer.replaceAll(' ', '-')}${unitsPerMm === 1 ? '' : '-on-map'}`;
  const size = tile.sizeMm * unitsPerMm;
  // The tile is written in the units of the map: viewers blur one that is small and scaled up.
  sheet.define(
    id,
    element(
      'pattern',
      { id, width: size, height: size, patternUnits: 'userSpaceOnUse', patternTransform: `rotate(${tile.turn})` },
      `${element('rect', { width: size, height: size, fill: color, stroke: 'none' })}${tile.marks(unitsPerMm)}`,
    ),
  );
  return `url(#${id})`;
}

/**
 * Makes the fills available on a sheet and gives the values of `fill` for them.
 *
 * @param unitsPerMm units of a drawing within the sheet; 1 on the sheet itself
 */
export function answerFills(sheet: Sheet, unitsPerMm: number): Readonly<Record<Answer, string>> {
  return Object.fromEntries(ANSWERS.map((a) => [a, fillOf(sheet, a, unitsPerMm)])) as Record<Answer, string>;
}
