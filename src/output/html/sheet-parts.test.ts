import { describe, expect, test } from 'vitest';
import { findingMark, waterLine, workNumber } from '../drawing/marks.js';
import { Sheet } from '../drawing/sheet.js';
import { sheetParts } from './sheet-parts.js';

/** A sheet as the views write them: marks, then the key, then the table with samples of the same marks. */
function sample(): string {
  const sheet = new Sheet(200);
  workNumber(sheet, [20, 20], 3);
  findingMark(sheet, [50, 30], 1, 'error');
  findingMark(sheet, [60.25, 31.5], 12, 'warning');
  findingMark(sheet, [70, 33.33], 2, 'note');
  waterLine(sheet, [
    [40, 10],
    [40, 60],
  ]);
  waterLine(
    sheet,
    [
      [40, 60],
      [45, 80],
    ],
    true,
  );
  // An opening may bear the name of a heading.
  sheet.text([100, 15], 'Key', { bold: true, anchor: 'middle' });
  sheet.text([4, 100], 'Key', { bold: true });
  findingMark(sheet, [10, 110], 7, 'error');
  waterLine(sheet, [
    [20, 110],
    [30, 110],
  ]);
  sheet.text([4, 130], 'Findings of the review (12)', { bold: true });
  findingMark(sheet, [7, 140], 9, 'error');
  sheet.text([6, 180], 'A detail with a long id', { size: 1.9, bold: true });
  sheet.text([136, 179], 'Scale 1:12 (1 in = 1 ft)');
  sheet.reserve({ x0: 4, y0: 199, x1: 196, y1: 200 });
  return sheet.toSvg('Title', 'Description', 4);
}

describe('what stands on a drawing', () => {
  const parts = sheetParts(sample());

  test('every mark of a finding above the key is found at its center, and no number of the work is taken for one', () => {
    const marks = parts.marks.map((m) => [m.finding, m.x, Math.round(m.y * 100) / 100]);
    expect(marks).toEqual([
      [1, 50, 30],
      [12, 60.25, 31.5],
      [2, 70, 33.33],
    ]);
  });

  test('every line of water above the key is found, hidden or not, and no drop is taken for one', () => {
    expect(parts.waterLines).toEqual([
      [
        [40, 10],
        [40, 60],
      ],
      [
        [40, 60],
        [45, 80],
      ],
    ]);
  });

  test('the table of findings lies between the end of the drawing and the title block', () => {
    expect(parts).toMatchObject({ width: 200, height: 204 });
    expect(parts.drawingEnd).toBeGreaterThan(113);
    expect(parts.drawingEnd).toBeLessThan(130 - 2);
    expect(parts.titleBlockStart).toBeGreaterThan(143);
    expect(parts.titleBlockStart).toBeLessThan(179 - 4);
  });

  test('a drawing without a table is one piece', () => {
    const sheet = new Sheet(200);
    sheet.text([136, 50], 'Not to scale');
    expect(sheetParts(sheet.toSvg('t', 'd', 4))).toMatchObject({ titleBlockStart: undefined, marks: [] });
  });
});
