/** Results in words, behind the standard that they are found by. */
import { describe, expect, it } from 'vitest';
import { readParagraph } from './testing/one-paragraph.js';

describe('a result in words', () => {
  it.each([
    ['Flash-off of primer: no sooner than 30 minutes, no later than 8 hours.', ['atLeast 30 min', 'atMost 8 h']],
    ['Surface: no colder than 7 degrees C.', ['atLeast 7 degC']],
  ])('is no comparison: %s', (text, expected) => {
    expect(readParagraph(text).proposals.map(({ compare, value }) => `${compare ?? ''} ${value?.text ?? ''}`)).toEqual(
      expected,
    );
  });

  it.each([
    ['Low-Temperature Bend: ASTM D1970/D1970M, unaffected when bent at minus 15 deg F.', 'unaffected at -15 degF'],
    ['Bubble Test: ASTM E1186; no bubbles at a pressure of 2 psf.', 'no bubbles at 2 psf'],
    ['Cold flex: no cracking at minus 20 deg F.', 'no cracking at -20 degF'],
    ['Fire propagation: NFPA 285, pass.', 'pass'],
  ])('is read in: %s', (text, expected) => {
    expect(
      readParagraph(text).proposals.map(({ value, conditions }) =>
        [value?.text ?? '', ...conditions.map((one) => one.text)].join(' at '),
      ),
    ).toEqual([expected]);
  });
});
