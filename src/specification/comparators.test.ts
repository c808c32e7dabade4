/** The words that turn a limit around, and those that belong to the next limit. */
import { describe, expect, it } from 'vitest';
import { readParagraph, told } from './testing/one-paragraph.js';

const limits = (text: string): string[] =>
  readParagraph(text).proposals.map(({ compare = '', value }) => `${compare} ${value?.text ?? ''}`);

describe('the comparator of a value', () => {
  it.each([
    // What is denied is the greatest that is allowed.
    ['The depth of the rod shall be such that it does not vary by more than 3 mm.', ['atMost 3 mm']],
    ['After the test no member shall show a permanent set greater than 0.2 percent.', ['atMost 0.2 %']],
    ['No reading differs by more than 2 mils.', ['atMost 2 mil']],
    // So is what is refused behind the value.
    ['Data older than 24 months is returned without review.', ['atMost 24 month']],
    ['Sealant older than 9 months shall not be used.', ['atMost 9 month']],
    ['A bow of more than 5 mm is failure.', ['atMost 5 mm']],
    ['A lap of less than 2 inches shall be deemed a defect.', ['atLeast 2 in']],
    ['Application above 32 deg C is prohibited.', ['atMost 32 degC']],
    ['Material older than 1 year: do not use.', ['atMost 1 years']],
    ['It is unacceptable for gaps to exceed 5 mm.', ['atMost 5 mm']],
    ['The mock-up fails if leakage exceeds 0.1 cfm/sq ft.', ['atMost 0.1 cfm/ft2']],
    ['Under no circumstances apply below 5 deg C.', ['atLeast 5 degC']],
    ['Avoid temperatures above 100 deg F.', ['atMost 100 degF']],
    ['Neither coat shall be thinner than 20 mils.', ['atLeast 20 mil']],
    ['Fill joints without gaps wider than 2 mm.', ['atMost 2 mm']],
    ['Surfaces shall be free of voids larger than 5 mm.', ['atMost 5 mm']],
    // What is only lacking beside a limit turns nothing.
    ['Apply without primer above 40 deg F.', ['atLeast 40 degF']],
    ['Should more than 4 percent of the tests fail, test all.', ['atLeast 4 %']],
    // What is asked for stays the least.
    ['The strength shall be greater than 20 psi.', ['atLeast 20 psi']],
    // The second limit keeps its words.
    ['Do not install below 40 deg F (4 deg C) or above 110 deg F (43 deg C).', ['atLeast 40 degF', 'atMost 110 degF']],
    ['Store windows off the ground by at least 4 inches (100 mm), and under a vented cover.', ['atLeast 4 in']],
    ['Turn the flashing 6 inches or more the length of the sill.', ['atLeast 6 in']],
    ['Place shims no farther apart than 16" (406 mm) on center.', ['atMost 16 in']],
    ['Width of joint between 3/8 inch and 5/8 inch (10 mm and 16 mm).', ['between 3/8 to 5/8 in']],
    ['Tack-free time: no longer than 3 hours at 23 degrees C (73 degrees F).', ['atMost 3 h']],
    ['Water: ASTM E1105, at a test pressure not less than 8 psf (383 Pa).', ['atLeast 8 psf']],
    ['Density: not less than 32 kg/cubic meter (2 lb/cubic foot).', ['atLeast 32 kg/m3']],
  ])('%s', (text, expected) => {
    expect(limits(text)).toEqual(expected);
    expect(readParagraph(text).questions).toEqual([]);
  });

  it.each([
    // Two limits share their unit, whichever has it.
    ['Reach at least 6 and no more than 8 inches up.', ['atLeast 6 in', 'atMost 8 in']],
    ['Wait no more than 30 minutes, and no less than 10, before rolling.', ['atMost 30 min', 'atLeast 10 min']],
    ['Apply no less than 2 coats, no more than 4.', ['atLeast 2 coats', 'atMost 4 coats']],
  ])('%s', (text, expected) => {
    expect(limits(text)).toEqual(expected);
  });

  it('does not take the unit of something else', () => {
    const { proposals, questions } = readParagraph('Shims: not more than 3; at least 1/8 inch.');
    expect(proposals.map(({ value }) => value?.text)).toEqual(['1/8 in']);
    expect(questions.map(({ kind }) => kind)).toEqual(['no unit']);
  });

  it.each(['Below 40 degrees F, use winter primer.', 'Above 90 degrees F apply in shade.'])(
    'asks whether it limits anything in: %s',
    (text) => {
      const { proposals, questions } = readParagraph(text);
      expect(proposals).toEqual([]);
      expect(questions.map(({ ask }) => ask)).toEqual(['Is it the least value, the greatest, or no limit at all?']);
    },
  );

  it('is not sure of a size that says which of them are meant', () => {
    const read = readParagraph('Twist: not more than 1/16 inch for frames up to 4 feet.').proposals;
    expect(read.map(({ value, confidence }) => `${value?.text ?? ''} ${confidence}`)).toEqual([
      '1/16 in high',
      '4 ft low',
    ]);
  });

  it('reads how far a line may be out as no frequency', () => {
    expect(told('The variation from plumb is not over 1/16 inch per 4 feet.')).toEqual([
      '"variation from plumb" atMost 1/16 in',
    ]);
  });

  it.each(['Loads exceeding 20 psf shall not be placed on the deck.', 'Film less than 12 mils shall be recoated.'])(
    'asks whether it is a limit in: %s',
    (text) => {
      const { proposals, questions } = readParagraph(text);
      expect(proposals).toEqual([]);
      expect(questions.map(({ ask }) => ask)).toEqual(['Is it the least value, the greatest, or no limit at all?']);
    },
  );

  it('asks which end of a range is the least', () => {
    const { proposals, questions } = readParagraph('Keep water off fresh sealant for a minimum of 2 to 4 hours.');
    expect(proposals).toEqual([]);
    expect(questions.map(({ kind, ask }) => [kind, ask])).toEqual([
      ['conflicting comparators', 'Which of the two values is the limit?'],
    ]);
  });

  it('compares two differences of temperature as differences', () => {
    const kinds = (text: string): string[] => readParagraph(text).questions.map(({ kind }) => kind);
    expect(kinds('Allow for a range of 120 degrees F (67 degrees C).')).not.toContain('values disagree');
    expect(kinds('Allow for a range of 120 degrees F (49 degrees C).')).toContain('values disagree');
  });

  it('keeps the humidity of a test with its temperature', () => {
    const [first] = readParagraph(
      'Time: no longer than 3 hours at 23 degrees C and 50 percent relative humidity.',
    ).proposals;
    expect(first?.conditions.map(({ text }) => text)).toEqual(['23 degC', '50 %']);
  });
});
