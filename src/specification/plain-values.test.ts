/** Values that no words compare: which are proposed as they stand, and which are still asked about. */
import { describe, expect, it } from 'vitest';
import { asked, readParagraph, told } from './testing/one-paragraph.js';

const values = (text: string): string[] =>
  readParagraph(text).proposals.map(
    ({ compare = '', value, confidence }) => `${compare} ${value?.text ?? ''} ${confidence}`,
  );

describe('a value without a comparator', () => {
  it.each([
    ['Report adhesion after 14 days of cure and 5 days in water.', ['equals 14 d medium', 'equals 5 d low']],
    ['Give the Owner 36 hours’ notice of the water test.', ['equals 36 h low']],
    ['Installer: Two (2) years from the date of acceptance.', ['equals 2 years medium']],
    ['Frames shall withstand a load of 45 psf (2155 Pa).', ['equals 45 psf low']],
    ['Allow for an ambient range of 100 degrees F (56 degrees C).', ['equals 100 degF low']],
    ['Test a further 15 percent of the length.', ['equals 15 % low']],
    ['Inspect 20 percent of all anchors before covering.', ['equals 20 % low']],
    ['Leak check: ASTM E1186, at 15 percent of pipes.', ['equals 15 % medium']],
    [
      'Rod density: 40 kg/cubic meter (2.5 lb/cubic foot), with a tolerance of plus or minus 5 percent.',
      ['equals 40 kg/m3 high', 'equals plus or minus 5 % high'],
    ],
    ['List the jobs that were done in the last 4 years.', ['atMost 4 years medium']],
  ])('%s', (text, expected) => {
    expect(values(text)).toEqual(expected);
    expect(asked(text)).toEqual([]);
  });

  it.each([
    // Alone under its label, it can be the least as well as the greatest.
    ['Provide sealant with 25 percent of its volume as filler.', ['no comparator: 25 %']],
    ['Pot life: 2 hours.', ['no comparator: 2 h']],
    ['Do not disturb for 48 hours.', ['no comparator: 48 h']],
    ['Notify the Architect when rain is forecast or 2 days after a storm.', ['no comparator: 2 d']],
    ['The load shall be 45 psf.', ['no comparator: 45 psf']],
  ])('is asked about in: %s', (text, expected) => {
    expect(told(text)).toEqual([]);
    expect(asked(text)).toEqual(expected);
  });

  it('keeps a decimal value behind a word that can bear a number', () => {
    expect(told('Sheet 0.040 inch (1.02 mm) minimum.')).toEqual(['"Sheet" atLeast 0.040 in (1.02 mm)']);
    expect(told('Set the rod level 12.5 mm minimum behind the face.')).toEqual([
      expect.stringContaining('atLeast 12.5 mm'),
    ]);
  });
});
