/** Numbers that are no requirement: years, telephone numbers, conversions, what a section only says it holds. */
import { describe, expect, it } from 'vitest';
import { readSection } from './read.js';
import { asked, readParagraph, told } from './testing/one-paragraph.js';

const passedOver = (text: string): string[] =>
  readParagraph(text).passedOver.map(({ value, reason }) => `${value.text}: ${reason}`);

describe('digits that are no values', () => {
  it.each([
    'ASTM E2112 (2019; R 2024) Installing Windows.',
    'Ask at telephone 555-0163.',
    'Issued June 4, 2024.',
    'Meet the limits of 40 CFR 63 and of Section 5.3.2.',
  ])('%s', (text) => {
    expect([...told(text), ...asked(text), ...passedOver(text)]).toEqual([]);
  });

  it('leaves values that look alike', () => {
    expect(told('Joints may be at most 4 inches wide.')).toEqual(['joint width atMost 4 in']);
    expect(told('Section modulus: at least 2 inches.')).toEqual(['"Section modulus" atLeast 2 in']);
  });
});

describe('a blank', () => {
  it.each([
    ['Lap sheets <Insert dimension> inches.', ['choice left open: ', 'choice left open: ']],
    ['Warranty: Materials, for [three] [8] <Insert number> years.', ['choice left open: 3 years, 8 years']],
    ['Provide [two][three] samples.', ['choice left open: 2 samples, 3 samples']],
  ])('is asked about in: %s', (text, expected) => {
    expect(told(text)).toEqual([]);
    expect(asked(text)).toEqual(expected);
  });
});

it('takes a conversion for no requirement', () => {
  expect(told('Abbreviations: 1 psf equals 47.9 Pa.')).toEqual([]);
  expect(passedOver('For this section 1 mil equals 0.0254 mm.')).toEqual([
    '1 mil: in a definition',
    '0.0254 mm: in a definition',
  ]);
});

it('proposes from a summary only what it limits', () => {
  const text =
    'SECTION 07 27 26 - BARRIER\n\nPART 1 - GENERAL\n\n1.1 SUMMARY\n\nA. Boards of 1/2 to 5/8 inch, with tape.\n\nB. Film of at least 12 mils over boards.\n';
  const { proposals, passedOver: left } = readSection(text);
  expect(proposals.map(({ compare = '', value }) => `${compare} ${value?.text ?? ''}`)).toEqual(['atLeast 12 mil']);
  expect(left.map(({ value, reason }) => `${value.text}: ${reason}`)).toEqual(['1/2 to 5/8 in: in a summary']);
});

it('reads a nominal size as the size that is meant', () => {
  expect(told('Thickness: 60 mils nominal.')).toEqual(['"Thickness" equals 60 mil']);
  expect(told('Sheet: 0.060 inch thick, nominal.')).toEqual(['"Sheet" equals 0.060 in']);
});
