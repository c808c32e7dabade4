/** Dimension rows, label columns, scales and free places. */
import { describe, expect, it } from 'vitest';
import { packDimensions, type Dimension, type DimensionGroup } from './dimensions.js';
import { spread } from './labels.js';
import { scaleFor, scaleText } from './scale.js';
import { meets, Sheet, textBox } from './sheet.js';
import { num } from './svg.js';

const dimension = (from: number, to: number, text = '6 in'): Dimension => ({
  from,
  to,
  edge: 0,
  text,
  of: 'x.y',
  mm: 1,
});
const group = (...dimensions: Dimension[]): DimensionGroup => ({ dimensions });
const shape = (groups: readonly DimensionGroup[], axis: 'x' | 'y' = 'x') =>
  packDimensions(groups, axis).map((row) => row.groups.map((g) => g.dimensions.map((d) => [d.from, d.to])));

describe('rows of dimensions', () => {
  it('hold side by side what has room', () => {
    expect(shape([group(dimension(0, 20)), group(dimension(30, 50))])).toEqual([[[[0, 20]], [[30, 50]]]]);
  });
  it('keep apart what overlaps, the first nearest to the drawing', () => {
    expect(shape([group(dimension(0, 20)), group(dimension(10, 50))])).toEqual([[[[0, 20]]], [[[10, 50]]]]);
  });
  it('count the text where it is longer than its line', () => {
    // "1-3/8 in" takes about 12 mm over lines of 1 mm that stand 4 mm apart.
    expect(shape([group(dimension(0, 1, '1-3/8 in')), group(dimension(5, 6, '1-3/8 in'))])).toHaveLength(2);
  });
  it('let dimensions of one piece meet end to end', () => {
    expect(shape([group(dimension(0, 20), dimension(20, 40))])).toEqual([
      [
        [
          [0, 20],
          [20, 40],
        ],
      ],
    ]);
  });
  it('keep room for the number of the step', () => {
    const numbered: DimensionGroup = { step: 2, dimensions: [dimension(24, 44)] };
    expect(shape([group(dimension(0, 20)), group(dimension(24, 44))])).toHaveLength(1);
    expect(shape([group(dimension(0, 20)), numbered])).toHaveLength(2);
  });
});

describe('a column of labels', () => {
  const boxes = (...ys: number[]) => ys.map((y) => ({ y, height: 6 }));

  it('stays where there is room', () => {
    const list = boxes(10, 30);
    spread(list, 0, 100);
    expect(list.map((b) => b.y)).toEqual([10, 30]);
  });
  it('moves down what would stand on another, keeping the order', () => {
    const list = boxes(10, 11, 12);
    spread(list, 0, 100);
    expect(list.map((b) => b.y)).toEqual([10, expect.closeTo(17.2), expect.closeTo(24.4)]);
  });
  it('moves up again at the lower end', () => {
    const list = boxes(40, 41);
    spread(list, 0, 44);
    expect(list.map((b) => b.y)).toEqual([expect.closeTo(30.8), expect.closeTo(38)]);
  });
  it('grows past the lower end rather than overlap', () => {
    const list = boxes(0, 0, 0);
    spread(list, 0, 10);
    expect(list.map((b) => b.y)).toEqual([expect.closeTo(0), expect.closeTo(7.2), expect.closeTo(14.4)]);
  });
});

describe('scales', () => {
  it('are the largest usual one at which the length fits', () => {
    expect(scaleFor(1000, 100)).toBe(10);
    expect(scaleFor(1001, 100)).toBe(12);
    expect(scaleFor(99, 100)).toBe(1);
  });
  it('go on past the usual ones', () => {
    expect(scaleFor(1_500_000, 100)).toBe(15_000);
  });
  it('are told as a US drawing writes them, and as a ratio elsewhere', () => {
    expect(scaleText(4, 'US')).toBe('Scale 1:4 (3 in = 1 ft)');
    expect(scaleText(4, 'SI')).toBe('Scale 1:4');
    expect(scaleText(5, 'US')).toBe('Scale 1:5');
  });
  it('in feet and inches agree with their ratio', () => {
    for (let divisor = 1; divisor <= 200; divisor++) {
      const words = /\((?:(\d+)-)?(\d+)(?:\/(\d+))? in = 1 ft\)/.exec(scaleText(divisor, 'US'));
      if (words === null) continue;
      const [, whole = '0', top = '0', bottom = '1'] = words;
      expect(12 / (Number(whole) + Number(top) / Number(bottom)), `1:${divisor}`).toBeCloseTo(divisor);
    }
  });
});

describe('a sheet', () => {
  const within = { x0: 0, y0: 0, x1: 100, y1: 100 };
  const box = ([x, y]: readonly [number, number]) => ({ x0: x - 2, y0: y - 2, x1: x + 2, y1: y + 2 });

  it('gives the wanted place when it is free, else the nearest, always the same', () => {
    const sheet = new Sheet(200);
    expect(sheet.freeNear([50, 50], 4, 4, within)).toEqual([50, 50]);
    sheet.text([48, 51], 'in the way');
    const at = sheet.freeNear([50, 50], 4, 4, within);
    expect(meets(box(at), textBox([48, 51], 'in the way'))).toBe(false);
    expect(Math.hypot(at[0] - 50, at[1] - 50)).toBeLessThan(8);
    expect(sheet.freeNear([50, 50], 4, 4, within)).toEqual(at);
  });
  it('looks beyond the box when nothing in it is free', () => {
    const sheet = new Sheet(200);
    sheet.reserve({ x0: 0, y0: 0, x1: 20, y1: 20 });
    const [x, y] = sheet.freeNear([10, 10], 4, 4, { x0: 0, y0: 0, x1: 20, y1: 20 });
    expect(x > 22 || y > 22).toBe(true);
  });
});

describe('numbers in the file', () => {
  it('have two decimals at most and no negative zero', () => {
    expect([1 / 3, -0.001, 12, 0.005].map(num)).toEqual(['0.33', '0', '12', '0.01']);
  });
});
