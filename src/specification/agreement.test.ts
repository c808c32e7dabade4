import { describe, expect, it } from 'vitest';
import { asked, told } from './testing/one-paragraph.js';

/** Twins as sections print them. Factors: inch 25.4 mm, psi 6.894757 kPa, perm 57.2135 ng/(Pa s m2) (NIST SP 811). */
const TWINS = [
  '75 mm 3 inch', // 76.2 mm, rounded to fives
  '6 mm 1/4 inch', // 6.35 mm
  '300 mm (12 inches)', // 304.8 mm
  '103 kPa 15 psi', // 103.42 kPa
  '570 ng/(Pa s m2) 10.0 perms', // 572.1
  '5 square meters 54 square feet', // 5.017 m2
  '1.0 mm (40 mils)', // 1.016 mm
  '5 deg C (40 deg F)', // 4.4 degC
  'minus 26 degrees C minus 15 degrees F', // -26.1 degC
];

describe('metric and US values side by side', () => {
  it.each(TWINS)('%s agree, and are one requirement', (twins) => {
    const found = told(`Provide the part at not less than ${twins}.`);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(/ atLeast .* \(.*\)$/);
    expect(asked(`Provide the part at not less than ${twins}.`)).toEqual([]);
  });

  // 3 in is 76 mm; 60 mil is 1.52 mm; 20 degC is 68 degF; 1/4 in is 6.35 mm.
  it.each(['100 mm 3 inches', '1.0 mm (60 mils)', '20 deg C (50 deg F)', '75 mm (1/4 inch)'])('%s do not', (twins) => {
    expect(told(`Provide the part at not less than ${twins}.`)).toEqual([]);
    expect(asked(`Provide the part at not less than ${twins}.`)[0]).toMatch(/^values disagree: /);
  });

  it('asks for the minus sign when only that is missing', () => {
    // -26 degC is -14.8 degF; 26 degC is 78.8 degF.
    expect(asked('Flexibility at cold: not more than 26 degrees C minus 15 degrees F.')[0]).toMatch(/^lost sign: /);
  });

  it('compares both ends of ranges', () => {
    // 4 to 38 degC is 39.2 to 100.4 degF.
    expect(told('Apply between 40 and 100 degrees F (4 and 38 deg C).')).toEqual([
      '"Apply" between 40 to 100 degF (4 to 38 degC)',
    ]);
    expect(asked('Apply between 40 and 100 degrees F (4 and 60 deg C).')[0]).toMatch(/^values disagree/);
  });
});
