import { describe, expect, it } from 'vitest';
import { dimensionOf, FORMATS, isDate, isDimension } from './formats.js';

describe('formats', () => {
  it('judge a quantity by the parser of its dimension', () => {
    expect(FORMATS.length('5-1/2 in')).toBe(true);
    expect(FORMATS.length('5 mil')).toBe(false);
    expect(FORMATS.film('12-15 mil')).toBe(true);
    expect(FORMATS.length('12')).toBe(false);
  });

  it('takes a thickness as a length or, of a film or sheet, in mils, and a size on the wall only as a length', () => {
    expect(FORMATS.thickness('5/8 in')).toBe(true);
    expect(FORMATS.thickness('6 mil')).toBe(true);
    expect(FORMATS.thickness('6 perm')).toBe(false);
    expect(FORMATS.length('6 mil')).toBe(false);
    expect(dimensionOf('thickness')).toBe('length');
    expect(dimensionOf('date')).toBeUndefined();
  });

  it('know a dimension from a date and from what an object has by nature', () => {
    expect(isDimension('length')).toBe(true);
    expect(isDimension('date')).toBe(false);
    expect(isDimension('toString')).toBe(false);
  });

  // Leap years of the Gregorian calendar: 2000 and 2024 are, 1900 and 2023 are not.
  it.each(['2026-03-01', '2024-02-29', '2000-02-29', '2026-12-31'])('take %s for a date', (text) => {
    expect(isDate(text)).toBe(true);
  });
  it.each([
    '2023-02-29',
    '1900-02-29',
    '2026-13-01',
    '2026-00-10',
    '2026-04-31',
    '2026-4-1',
    '2026-04-00',
    '01/04/2026',
    '2026-04-01T00:00',
  ])('do not take %s for a date', (text) => {
    expect(isDate(text)).toBe(false);
  });
});
