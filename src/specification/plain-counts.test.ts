/** Counts, and values that have no unit: grades, shares of a span, ranges of a scale. */
import { describe, expect, it } from 'vitest';
import { asked, told } from './testing/one-paragraph.js';

describe('a count', () => {
  it.each([
    ['Test four windows at the start of the work.', ['"Test" equals 4 windows']],
    ['Take readings at six places.', ['"Take readings" equals 6 places']],
    ['Build a mock-up of one door.', ['"Build a mock-up" equals 1 door']],
    ['Retest when 15 percent of the frames are set.', ['"Retest when" equals 15 %']],
    [
      'Pull the sealant: one test every 50 linear feet (15 m).',
      [expect.stringContaining('atLeast 1 per 50 ft (15 m)')],
    ],
  ])('%s', (text, expected) => {
    expect(told(text)).toEqual(expected);
    expect(asked(text)).toEqual([]);
  });
});

describe('a number that nothing is named behind', () => {
  it.each([
    [
      'Test 10 percent of the doors, but not fewer than four, by ASTM E1105.',
      ['"Test" equals 10 %', '"Test 10 percent" atLeast 4'],
    ],
    ['Store bundles no more than three high.', [expect.stringContaining('atMost 3 high')]],
    ['Take three cores per elevation.', ['"Take" atLeast 3 cores']],
  ])('is a count in: %s', (text, expected) => {
    expect(told(text)).toEqual(expected);
  });

  it('is a size without a unit where a size stands behind it', () => {
    expect(told('Form dams not less than 40 high at each end.')).toEqual([]);
    expect(asked('Form dams not less than 40 high at each end.')).toEqual(['no unit: 40']);
  });

  it('is said once where both sides are the same', () => {
    expect(told('Build a panel no smaller than 3 by 3 m 10 by 10 feet.')).toEqual([
      '"Build a panel" atLeast 3 m (10 ft)',
    ]);
  });
});

it('names a frequency without the standard before it', () => {
  expect(told('Adhesion: ASTM C1521, one test every 50 feet.')).toEqual([
    '"frequency: one test every" atLeast 1 per 50 ft',
  ]);
});

describe('a value that has no unit', () => {
  it.each([
    ['Sound: Transmission class of 28 or higher per ASTM E1332.', ['"Sound" atLeast 28']],
    ['Hardness: Shore A 20 to 40 by ASTM C661.', ['"Hardness" between 20 to 40']],
    ['Gloss: 10 to 20 units.', [expect.stringContaining('between 10 to 20')]],
    ['No rail deflects more than L/240 of its span.', ['"No rail deflects" atMost L/240']],
    ['Movement: plus 25 percent and minus 25 percent.', ['"Movement" equals plus or minus 25 %']],
  ])('%s', (text, expected) => {
    expect(told(text)).toEqual(expected);
    expect(asked(text)).toEqual([]);
  });

  it('is asked about where a unit has been left out', () => {
    expect(asked('Do not walk on the coating for 36.')).toEqual(['no unit: 36']);
  });

  it('makes no range of numbers that grade nothing', () => {
    expect(told('See drawings 3 to 7 for the sill.')).toEqual([]);
  });
});

describe('a factor of heat transfer', () => {
  it('is read with the point of an abbreviation inside its unit', () => {
    expect(told('The U-factor shall be 0.35 Btu/(h sq. ft. F) or less. Use clear glass.')).toEqual([
      '"U-factor" atMost 0.35 Btu/(h ft2 degF)',
    ]);
  });

  it('compares its two systems', () => {
    // 1 Btu/(h ft2 degF) is 5.678263 W/(m2 K): NIST SP 811, appendix B.8, from memory, confirm.
    expect(asked('The U-factor shall be 0.40 Btu/(h ft2 F) (2.27 W/(m2 K)) or less.')).toEqual([]);
    expect(asked('The U-factor shall be 0.40 Btu/(h ft2 F) (3.27 W/(m2 K)) or less.')).toEqual([
      expect.stringContaining('values disagree'),
    ]);
  });
});
