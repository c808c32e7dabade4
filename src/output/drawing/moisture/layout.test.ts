/** No text stands on other text or off the sheet, whatever the wall and the month. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readPage } from '../../../../tests/support/documents.js';
import { collisions } from '../../../../tests/support/drawings.js';
import type { DrawingSubject } from '../subject.js';
import { drawingSubject, drawView } from '../views.js';
import { roundTicks, spreadAlong } from './plot.js';

interface WallText {
  readonly zone: string;
  readonly humidity: number;
  readonly layers: readonly string[];
}
async function subjectOf({ zone, humidity, layers }: WallText): Promise<DrawingSubject> {
  const text = `
\`\`\`yaml project
id: place
title: place
place: { zone: "${zone}" }
indoor: { temperature: 21 degC, humidity: ${humidity} % }
\`\`\`
\`\`\`yaml detail
id: L-1
title: Wall of many layers
wall:
${layers.map((l) => `  - ${l}`).join('\n')}
\`\`\`
`;
  return drawingSubject((await readPage(text)).detail(), [], (id) => id);
}
const everyView = (subject: DrawingSubject): string[] => [
  ...Array.from({ length: 12 }, (_, i) => drawView(subject, 'profile', { month: i + 1 })),
  drawView(subject, 'year'),
];

describe('the pictures of heat and vapor', () => {
  test('keep their texts apart for a wall of many thin layers with long names', async () => {
    const layers = Array.from(
      { length: 18 },
      (_, i) =>
        `{ id: layer-of-the-wall-with-a-long-name-${i}, material: board of many words that goes on and on ${i}, family: interior board, ` +
        `thickness: ${1 + (i % 5)} mm, rValue: RSI 0.${1 + (i % 7)}, permeance: ${Math.round(9000 / (i + 1) ** 2)} ng/(Pa s m2) }`,
    );
    const subject = await subjectOf({ zone: '7', humidity: 60, layers });
    const drawings = everyView(subject);
    for (const svg of drawings) expect(collisions(svg)).toEqual([]);
    // The test means something only where planes are marked and bars drawn.
    expect(drawings[0]!.split('data-meets="yes"').length).toBeGreaterThan(6);
    expect(drawings.at(-1)).toContain('data-bar="A"');
  });
  test('keep their texts on the sheet for a thin wall of much resistance, full of planes at saturation', async () => {
    const layers = [5000, 0.1, 0.1, 0.1].map(
      (permeance, i) =>
        `{ id: l${i}, material: board, family: interior board, thickness: 0.1 mm, rValue: RSI ${i < 3 ? 4 : 0.001}, permeance: ${permeance} ng/(Pa s m2) }`,
    );
    const drawings = everyView(await subjectOf({ zone: '7', humidity: 65, layers }));
    for (const svg of drawings) expect(collisions(svg)).toEqual([]);
    // More planes than letters of the alphabet, over both plots.
    expect(Math.max(...drawings.map((svg) => svg.split('data-meets="yes"').length - 1))).toBeGreaterThan(52);
  });
  test('keep their texts apart for walls as they come', async () => {
    const layer = fc.record({
      mm: fc.constantFrom(0.1, 1, 6, 12.7, 40, 140, 400),
      rsi: fc.constantFrom(0.001, 0.1, 1, 4),
      permeance: fc.constantFrom(0.1, 3, 60, 800, 5000),
    });
    const wall = fc.record({
      zone: fc.constantFrom('1A', '4A', '5A', '7', '8'),
      humidity: fc.constantFrom(15, 40, 65),
      layers: fc.array(layer, { minLength: 1, maxLength: 9 }),
    });
    await fc.assert(
      fc.asyncProperty(wall, async ({ zone, humidity, layers }) => {
        const texts = layers.map(
          (l, i) =>
            `{ id: l${i}, material: board, family: interior board, thickness: ${l.mm} mm, rValue: RSI ${l.rsi}, permeance: ${l.permeance} ng/(Pa s m2) }`,
        );
        const subject = await subjectOf({ zone, humidity, layers: texts });
        for (const svg of [drawView(subject, 'profile'), drawView(subject, 'year')]) {
          expect(collisions(svg)).toEqual([]);
          expect(svg).not.toMatch(/NaN|Infinity|undefined|no value/);
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('an axis', () => {
  test('has round numbers that cover the range', () => {
    expect(roundTicks(3, 2337, 5)).toEqual({ least: 0, most: 2500, at: [0, 500, 1000, 1500, 2000, 2500], decimals: 0 });
    expect(roundTicks(-8, 21, 5)).toMatchObject({ least: -10, most: 30 });
    expect(roundTicks(0, 0.739, 5)).toMatchObject({ least: 0, most: 0.8, decimals: 1 });
  });
  test('covers any range with ticks that rise', () => {
    const number = fc.double({ min: -1e4, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(number, number, (a, b) => {
        const [from, to] = [Math.min(a, b), Math.max(a, b)];
        const { least, most, at } = roundTicks(from, to, 5);
        expect(least).toBeLessThanOrEqual(from + 1e-6);
        expect(most).toBeGreaterThanOrEqual(to - 1e-6);
        expect(at.length).toBeGreaterThanOrEqual(2);
        expect(at.length).toBeLessThanOrEqual(8);
      }),
    );
  });
});

describe('marks along a line', () => {
  test('are moved apart, in their order, between the ends', () => {
    expect(spreadAlong([10, 10, 10], [4, 4, 4], 0, 100)).toEqual([10, 14, 18]);
    expect(spreadAlong([99, 99], [4, 4], 0, 100)).toEqual([94, 98]);
    expect(spreadAlong([5, 50], [4, 4], 0, 100)).toEqual([5, 50]);
  });
});
