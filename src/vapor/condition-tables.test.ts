import { describe, expect, it } from 'vitest';
import { classThreeRow, classTwoFoamRow } from './data/condition-tables.js';
import { askedInsulation, standing } from './class-three.js';
import { usRToSi } from './classes.js';
import type { Layer } from '../model/types.js';
import type { ReadDocument } from '../reading/types.js';

const document: ReadDocument = {
  kind: 'detail',
  id: 'd',
  file: { uri: 'd.yaml', text: '' },
  data: {},
  spanOf: () => ({ start: 0, end: 0 }),
};
const at = { document, path: [] };
const studs = (depthMm?: number): Layer => ({
  at,
  index: 1,
  id: 'studs',
  family: 'batt insulation',
  controls: [],
  standards: [],
  ...(depthMm === undefined
    ? {}
    : {
        thicknessMm: {
          at,
          dimension: 'length' as const,
          text: '',
          value: depthMm,
          bound: 'exactly' as const,
          unit: 'mm',
          system: 'SI' as const,
        },
      }),
});

describe('continuous insulation with class III', () => {
  // IRC 2021 Table R702.7(3): marine 4 and 5 read at second hand and agreeing with memory, 6 to 8 from memory. The
  // 2x6 values of 5 and 6 also stand in a public trade thread that quotes the 2021 table.
  it.each([
    ['marine 4', 2.5, 3.75],
    ['5', 5, 7.5],
    ['6', 7.5, 11.25],
    ['7', 10, 15],
    ['8', 12.5, 20],
  ] as const)('in zone %s is R-%d over 2x4 and R-%d over 2x6', (zone, r2x4, r2x6) => {
    expect(classThreeRow('IRC', 2021, zone)).toMatchObject({ r2x4, r2x6 });
  });
  it('was one row for 7 and 8 up to 2018', () => {
    expect(classThreeRow('IRC', 2018, '8')).toMatchObject({ r2x4: 10, r2x6: 15 });
  });
  it('is asked in zone 4 outside the marine part by the building code of 2021 alone', () => {
    expect(classThreeRow('IBC', 2021, '4')).toMatchObject({ r2x4: 2.5, r2x6: 3.75 });
    expect(classThreeRow('IRC', 2021, '4')).toBeUndefined();
    expect(classThreeRow('IBC', 2018, '4')).toBeUndefined();
  });
  it('gives way to vented cladding over fewer sheathings the colder it is', () => {
    expect(classThreeRow('IRC', 2021, '5')?.ventedOver).toContain('wood panel');
    expect(classThreeRow('IRC', 2021, '6')?.ventedOver).toEqual(['fiberboard', 'gypsum']);
    expect(classThreeRow('IRC', 2021, '7')?.ventedOver).toEqual([]);
  });
  it('is called "from memory" where sources differ', () => {
    expect(classThreeRow('IRC', 2021, '5')?.source.provenance).toBe('seen at second hand');
    for (const zone of ['6', '7', '8'] as const)
      expect(classThreeRow('IRC', 2021, zone)?.source.provenance).toBe('from memory, confirm');
    expect(classThreeRow('IRC', 2015, '5')?.source.provenance).toBe('from memory, confirm');
  });
});

describe('continuous insulation with class II and foam', () => {
  // IRC 2021 Table R702.7(4), from memory; no other source was found.
  it.each([
    ['3', 2, 2],
    ['4', 3, 5],
    ['5', 3, 5],
    ['6', 3, 5],
    ['7', 5, 7.5],
    ['8', 7.5, 10],
  ] as const)('in zone %s is R-%d over 2x4 and R-%d over 2x6', (zone, r2x4, r2x6) => {
    expect(classTwoFoamRow('IRC', 2021, zone)).toMatchObject({
      r2x4,
      r2x6,
      source: { provenance: 'from memory, confirm' },
    });
  });
  it('is not asked before 2021 nor in zones 1 and 2', () => {
    expect(classTwoFoamRow('IRC', 2018, '5')).toBeUndefined();
    expect(classTwoFoamRow('IRC', 2021, '2')).toBeUndefined();
  });
});

describe('the column of the table', () => {
  const row = classThreeRow('IRC', 2021, '5');
  if (row === undefined) throw new Error('zone 5 has a row');
  it.each([
    [88.9, '2x4'],
    [92.1, '2x4'],
    [139.7, '2x6'],
    [152.4, '2x6'],
    [184, 'deeper'],
    [undefined, 'unknown'],
  ] as const)('for studs of %s mm is %s', (depth, column) => {
    expect(askedInsulation(row, studs(depth)).column).toBe(column);
  });
  it('is left undecided between the two values when the depth is unknown, and only there', () => {
    const asked = askedInsulation(row, studs());
    expect(standing(asked, usRToSi(4.9))).toBe('short');
    expect(standing(asked, usRToSi(6))).toBe('undecided');
    expect(standing(asked, usRToSi(7.5))).toBe('met');
  });
  it('never calls a cavity deeper than the table met', () => {
    expect(standing(askedInsulation(row, studs(300)), usRToSi(40))).toBe('undecided');
    expect(standing(askedInsulation(row, studs(300)), usRToSi(7))).toBe('short');
  });
});
