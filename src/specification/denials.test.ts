/** A limit that is denied, refused or allowed only then keeps its direction: the wrong end of a limit is the worst error. */
import { describe, expect, it } from 'vitest';
import { readParagraph } from './testing/one-paragraph.js';

const limits = (text: string): string[] =>
  readParagraph(text).proposals.map(({ compare = '', value }) => `${compare} ${value?.text ?? ''}`);

describe('what is denied is the other end', () => {
  it.each([
    ['Do not install on frames hotter than 120 degrees F.', 'atMost 120 degF'],
    ['Do not brush primer on boards cooler than 38 degrees F.', 'atLeast 38 degF'],
    ['Cartons shall be no older than 6 months.', 'atMost 6 month'],
    ['Reject rolls narrower than 9 inches.', 'atLeast 9 in'],
    ['Use no sheet thinner than 30 mils.', 'atLeast 30 mil'],
    ['Nothing lighter than 15 lb may be used as a roller.', 'atLeast 15 lbf'],
    ['Nowhere shall the lap be shorter than 2 inches.', 'atLeast 2 in'],
    ['At no time may the film fall below 20 mils.', 'atLeast 20 mil'],
    ['Do not recoat sooner than 16 hours after the first coat.', 'atLeast 16 h'],
    ['Do not recoat later than 72 hours after the first coat.', 'atMost 72 h'],
    ['Stop spraying when gusts exceed 20 mph.', 'atMost 20 mph'],
    ['Halt work if the board is colder than 40 degrees F.', 'atLeast 40 degF'],
    ['No pane is to be set within 6 inches of the edge.', 'atLeast 6 in'],
    ['Do not coat when showers are likely within 12 hours.', 'atLeast 12 h'],
    ['Gusts stronger than 18 mph: suspend lifting.', 'atMost 18 mph'],
    ['Moisture of studs above 16 percent stops the work.', 'atMost 16 %'],
    ['Humidity over 85 percent: no painting.', 'atMost 85 %'],
    ['Work ceases once the air falls below 40 degrees F.', 'atLeast 40 degF'],
    ['No coating goes on boards holding more than 12 percent moisture.', 'atMost 12 %'],
    ['Sheathing wetter than 19 percent is cause to wait.', 'atMost 19 %'],
    ['Sealant older than 9 months goes back.', 'atMost 9 month'],
    ['Cured film thinner than 40 mils fails.', 'atLeast 40 mil'],
    ['A value below 0.1 perm disqualifies the product.', 'atLeast 0.1 perm'],
    ['Neither lap less than 2 inches nor butt sheets.', 'atLeast 2 in'],
    ['Keep the gap from exceeding 3/8 inch.', 'atMost 3/8 in'],
    ['Screws may not be closer to an edge than 3/8 inch.', 'atLeast 3/8 in'],
    ['Adhesion is rejected if lower than 18 psi.', 'atLeast 18 psi'],
  ])('%s', (text, expected) => {
    expect(limits(text)).toEqual([expected]);
  });
});

describe('what is refused behind two limits', () => {
  it.each([
    ['Sheets older than 90 days or colder than 50 degrees F are not to be used.', ['atMost 90 d', 'atLeast 50 degF']],
    ['Strips smaller than 6 inches or older than 2 years are returned.', ['atLeast 6 in', 'atMost 2 years']],
    [
      'Adhesion of less than 20 psi will not be accepted, nor film of less than 30 mils.',
      ['atLeast 20 psi', 'atLeast 30 mil'],
    ],
  ])('goes for both: %s', (text, expected) => {
    expect(limits(text)).toEqual(expected);
  });
});

describe('what is allowed only then is what is written', () => {
  it.each([
    ['Do not paint until the moisture content is below 15 percent.', 'atMost 15 %'],
    ['Do not start until the surface is above 5 degrees C.', 'atLeast 5 degC'],
    ['Apply no coating unless the temperature is above 40 degrees F.', 'atLeast 40 degF'],
    ['Do not proceed unless moisture is less than 12 percent.', 'atMost 12 %'],
    ['Apply only when humidity is lower than 85 percent.', 'atMost 85 %'],
    ['No board may be covered until its moisture is below 16 percent.', 'atMost 16 %'],
    // An order behind the comma is not denied.
    ['Do not leave the sheet uncovered, and cover it within 30 days.', 'atMost 30 d'],
    // Being late is denied here, and not being near.
    ['Sealant that cannot be tooled within 10 minutes is returned.', 'atMost 10 min'],
    ['Do not fail to cover it within 14 days.', 'atMost 14 d'],
  ])('%s', (text, expected) => {
    expect(limits(text)).toEqual([expected]);
  });

  it('believes the last of two conditions', () => {
    expect(limits('Do not apply until primed, or when the wall is colder than 45 degrees F.')).toEqual([
      'atLeast 45 degF',
    ]);
  });
});

describe('where something lies is no limit', () => {
  it.each(['Store sealant under cover at 50 degrees F.', 'Fasten wall ties over 2 inches of insulation.'])(
    '%s',
    (text) => {
      expect(limits(text)).toEqual([]);
      expect(readParagraph(text).questions.map(({ kind }) => kind)).toEqual(['no comparator']);
    },
  );

  it.each([
    ['VOC content below 100 g/L.', 'atMost 100 g/L'],
    ['Keep film above 12 mils.', 'atLeast 12 mil'],
  ])('%s', (text, expected) => {
    expect(limits(text)).toEqual([expected]);
  });
});

describe('what is found wanting, or exempt', () => {
  it.each([
    'Where film is less than 20 mils, apply another coat.',
    'If pull strength is below 16 psi, stop and report.',
    'Replace anchors when pull-out is less than 200 lb.',
    'Remove coating that tests below 16 psi.',
    'Notify the Architect if joints exceed 1/2 inch.',
    'Repair any blister larger than 2 inches.',
    'Joints narrower than 1/4 inch: widen.',
    'Beads that measure less than 6 mm deep shall be cut out.',
    'Panels bowed by more than 1/4 inch are to be taken out.',
    'Replace panels with more than 4 percent of the edge broken.',
    'Remove pails opened for more than 2 days.',
    'Not more than 3 of 100 readings may fall below 12 mils.',
  ])('is asked about in: %s', (text) => {
    const { proposals, questions } = readParagraph(text);
    expect(proposals).toEqual([]);
    expect(questions.map(({ ask }) => ask)).toEqual(['Is it the least value, the greatest, or no limit at all?']);
  });

  it.each([
    ['Primer is not required above 40 degrees F.', 'atLeast 40 degF low'],
    ['Primer is required below 40 degrees F.', 'atMost 40 degF low'],
    // These stay limits.
    ['The wall is required to be above 40 degrees F.', 'atLeast 40 degF medium'],
    ['Repair it with patches longer than 6 inches.', 'atLeast 6 in low'],
    ['Stop primer at least 1 inch short of the edge.', 'atLeast 1 in medium'],
    ['Remove loose mortar to a depth of more than 1/4 inch.', 'atLeast 1/4 in medium'],
    ['Limit exposure to 45 days.', 'atMost 45 d medium'],
  ])('%s', (text, expected) => {
    expect(
      readParagraph(text).proposals.map(
        ({ compare = '', value, confidence }) => `${compare} ${value?.text ?? ''} ${confidence}`,
      ),
    ).toEqual([expected]);
  });
});

it('leaves to a person what is allowed with approval only', () => {
  const { proposals, questions } = readParagraph('Set anchors closer than 3 inches to an edge only with approval.');
  expect(proposals).toEqual([]);
  expect(questions.map(({ ask }) => ask)).toEqual(['Is it the least value, the greatest, or no limit at all?']);
});

describe('words behind a value do not run on to the next', () => {
  it.each([
    ['Do not store at more than 100 degrees F or less than 35 degrees F.', ['atMost 100 degF', 'atLeast 35 degF']],
    ['Hem: 0.020 inch thick at a minimum, with 2-inch legs.', ['atLeast 0.020 in', 'equals 2 in']],
    ['Let it dry 24 hours at the least before covering.', ['atLeast 24 h']],
    // "At least" is that of the time.
    ['Lap: 2 inches at least 12 hours after priming.', ['atLeast 12 h']],
    ['Set the sill level to 1/16 inch.', ['atMost 1/16 in']],
    ['Movement: plus and minus 35 percent.', ['equals plus or minus 35 %']],
    ['Strength: 140 N per 25 mm minimum.', ['atLeast 140 N/25 mm']],
  ])('%s', (text, expected) => {
    expect(limits(text)).toEqual(expected);
  });
});
