/** Scales, and the words and the bar that tell them. */
import { formatQuantity } from '../../quantity/format.js';
import { line, polygon } from './svg.js';
import { SIZE, type Sheet } from './sheet.js';

export type System = 'US' | 'SI';

/** Scales used on construction drawings; the text is how a US drawing writes them. */
const SCALES: readonly (readonly [number, string?])[] = [
  [1, 'full size'],
  [2, '6 in = 1 ft'],
  [4, '3 in = 1 ft'],
  [5],
  [6, '2 in = 1 ft'],
  [8, '1-1/2 in = 1 ft'],
  [10],
  [12, '1 in = 1 ft'],
  [16, '3/4 in = 1 ft'],
  [20],
  [24, '1/2 in = 1 ft'],
  [32, '3/8 in = 1 ft'],
  [40],
  [48, '1/4 in = 1 ft'],
  [64, '3/16 in = 1 ft'],
  [96, '1/8 in = 1 ft'],
  [100],
  [192, '1/16 in = 1 ft'],
  [200],
  [500],
  [1000],
];

/**
 * The largest usual scale at which a length fits.
 *
 * @param lengthMm on the wall
 * @param roomMm on paper
 * @returns the divisor: 16 for 1:16
 */
export function scaleFor(lengthMm: number, roomMm: number): number {
  for (const [divisor] of SCALES) if (lengthMm / divisor <= roomMm) return divisor;
  return Math.ceil(lengthMm / roomMm / 1000) * 1000;
}

/** `Scale 1:16 (3/4 in = 1 ft)`. */
export function scaleText(divisor: number, system: System): string {
  const words = SCALES.find(([d]) => d === divisor)?.[1];
  return `Scale 1:${divisor}${words === undefined || system === 'SI' ? '' : ` (${words})`}`;
}

const STEPS: Record<System, readonly number[]> = {
  US: [1, 2, 4, 6, 12, 24, 48, 96].map((inches) => inches * 25.4),
  SI: [10, 20, 50, 100, 200, 500, 1000, 2000],
};

/** Least length of a step and most of the bar, mm on paper. */
const LEAST_STEP = 13;
const MOST_BAR = 52;

/**
 * A bar of two steps with its numbers. Holds when the drawing is printed at any size, as the words do not.
 *
 * @returns its right end
 */
export function scaleBar(sheet: Sheet, x: number, y: number, divisor: number, system: System): number {
  const steps = STEPS[system];
  const wide = steps.findIndex((s) => s / divisor >= LEAST_STEP);
  const found = steps[wide] ?? Math.max(...steps);
  // Steps can be two and a half times the one before: rather a short bar than one that leaves the sheet.
  const stepMm = (2 * found) / divisor > MOST_BAR ? (steps[wide - 1] ?? found) : found;
  const step = stepMm / divisor;
  const bar = (k: number, fill: string): string =>
    polygon(
      [
        [x + k * step, y],
        [x + (k + 1) * step, y],
        [x + (k + 1) * step, y + 1],
        [x + k * step, y + 1],
      ],
      { fill },
    );
  sheet.add('light', bar(0, '#000'), bar(1, '#fff'), line([x, y - 0.6], [x, y + 1]));
  const like = system === 'US' ? { unit: stepMm * 2 >= 12 * 25.4 ? 'ft' : 'in', system } : { system };
  sheet.text([x, y - 1], '0', { size: SIZE.small, anchor: 'middle' });
  const last = sheet.text([x + 2 * step, y - 1], formatQuantity(stepMm * 2, 'length', like), {
    size: SIZE.small,
    anchor: 'middle',
  });
  return last.x1;
}
