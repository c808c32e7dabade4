/** Signs inside of ranges, words of a limit behind the value, and numbers that have lost their unit. */
import { describe, expect, it } from 'vitest';
import { asked, readParagraph, told } from './testing/one-paragraph.js';

describe('a range with signs at both ends', () => {
  it.each([
    ['Service range: minus 30 to plus 70 degrees C.', ['"Service range" between -30 to 70 degC']],
    ['Gasket usable from -30 to +70 deg F.', ['"Gasket usable" between -30 to 70 degF']],
    ['Primer keeps between minus 10 and plus 35 degrees C.', ['"Primer keeps" between -10 to 35 degC']],
  ])('%s', (text, expected) => {
    expect(told(text)).toEqual(expected);
    expect(asked(text)).toEqual([]);
  });

  it.each([
    ['In-service temperature: 30 to 70 degrees C minus 22 to plus 158 degrees F.', '30 to 70 degC, -22 to 158 degF'],
    ['Tape service: 20 to 60 degrees C (minus 4 to plus 140 degrees F).', '20 to 60 degC, -4 to 140 degF'],
  ])('is not proposed when one of its ends has lost its sign: %s', (text, values) => {
    expect(told(text)).toEqual([]);
    expect(asked(text).map((question) => question.replace(/^.*: /, ''))).toEqual([values]);
  });
});

describe('the words of a limit behind its value', () => {
  it.each([
    ['Thickness of film: 30 mils, not less.', 'atLeast 30 mil'],
    ['Skim coat 50 mils thick, no thinner.', 'atLeast 50 mil'],
    ['Shrinkage: 8 percent, not more.', 'atMost 8 %'],
    ['Bead depth: 1/2 inch, and no deeper.', 'atMost 1/2 in'],
    ['Give 5 days of warning or more.', 'atLeast 5 d'],
    ['Leave 2 inches of clearance or less.', 'atMost 2 in'],
    ['Edge distance of screws: 3/8 inch or farther.', 'atLeast 3/8 in'],
    ['Priming: 45 F minimum.', 'atLeast 45 degF'],
  ])('%s', (text, expected) => {
    expect(told(text).join()).toContain(expected);
    expect(told(text)).toHaveLength(1);
  });

  it('are not those that begin to compare another value', () => {
    expect(told('Leave 2 inches, no more than 3 inches at corners.').join()).not.toContain('2 in');
  });
});

describe('"min." and "max."', () => {
  it.each([
    'Film 12 mils min./16 mils max.',
    'Film: 12 mils min. 16 mils max.',
    'Film: min. 12 mils, max. 16 mils.',
    'Film: 12 mils (min.), 16 mils (max.).',
  ])('belong each to its own value: %s', (text) => {
    expect(told(text).map((line) => line.replace(/^.*" /, ''))).toEqual(['atLeast 12 mil', 'atMost 16 mil']);
    expect(asked(text)).toEqual([]);
  });
});

describe('a number that has lost its unit', () => {
  it.each([
    ['Elongation: ASTM D412, 450.', ['no unit: 450']],
    ['Peel strength: 12, by ASTM D903.', ['no unit: 12']],
    ['Shore A hardness: 35, ASTM D2240.', ['no comparator: 35']],
  ])('is asked about beside its method: %s', (text, expected) => {
    expect(asked(text)).toEqual(expected);
    expect(told(text)).toEqual([]);
  });

  it('is none where it numbers something', () => {
    expect(asked('Color: 12.')).toEqual([]);
  });

  it('can be a score', () => {
    expect(told('Mold growth, ASTM D3273: score of 10.')).toEqual(['"Mold growth" equals 10']);
  });
});

describe('"one in each"', () => {
  it('is no inch', () => {
    expect(told('Probe at least one in each 500 square feet.')).toEqual([
      '"frequency: Probe at least one in each" atLeast 1 per 500 ft2',
    ]);
    expect(told('Lap at least 1 in at corners.')).toEqual(['lap atLeast 1 in']);
  });
});

describe('the time of a test', () => {
  const text = 'Hold a pressure of at least 6 psf, for a minimum of 10 minutes, by ASTM E331.';

  it('is a limit of its own where words limit it', () => {
    expect(told(text).map((line) => line.replace(/^".*" /, ''))).toEqual(['atLeast 6 psf', 'atLeast 10 min']);
  });

  it('is a condition where none do', () => {
    const [first, ...more] = readParagraph(text.replace('a minimum of ', '')).proposals;
    expect(first?.conditions.map((value) => value.text)).toEqual(['10 min']);
    expect(more).toEqual([]);
  });
});

describe('the pressure of a test', () => {
  it('is what is asked for where it is held for a time', () => {
    const [first, ...more] = readParagraph('Hose test: ASTM E1105, 5 psf for 20 minutes.').proposals;
    expect(more).toEqual([]);
    expect(first).toMatchObject({ compare: 'equals', value: { text: '5 psf' }, conditions: [{ text: '20 min' }] });
    expect(first?.confidence).not.toBe('high');
  });

  it('is no strength', () => {
    expect(told('Bond strength, ASTM D4541: 20 psi for 5 minutes.')).toEqual([]);
  });
});

describe('what is printed of a value', () => {
  it('says from where a difference of temperature counts', () => {
    expect(told('Substrate shall be at least 2 degrees C 4 degrees F above the dew point.')).toEqual([
      '"Substrate, above the dew point" atLeast 2 degC (4 degF)',
    ]);
  });

  it('tells height from width', () => {
    expect(told('Frame: no smaller than 900 mm wide and 1200 mm high.')).toEqual([
      '"Frame: wide" atLeast 900 mm',
      '"Frame: high" atLeast 1200 mm',
    ]);
  });

  it('leaves the words of the next limit out of a name', () => {
    expect(told('Flash-off of primer: no sooner than 30 minutes, no later than 8 hours.')).toEqual([
      '"Flash-off of primer" atLeast 30 min',
      '"Flash-off of primer" atMost 8 h',
    ]);
  });

  it('says the words of a case once', () => {
    expect(told('Cracks larger than 1/16 inch: fill.')).toEqual(['"Cracks larger than 1/16 inch" atLeast 1/16 in']);
  });

  it('names a frequency without the stretch before it', () => {
    const text = 'Pull one test in each 40 m of the first 200 m of joint, and one in each 400 m after it.';
    expect(told(text)).toContain('"frequency: one in each" atLeast 1 per 400 m');
  });

  it('ends the sentence at its degrees', () => {
    const [first] = readParagraph('Store below 80 degrees F. Remove opened pails.').proposals;
    expect(first?.text).toBe('Store below 80 degrees F.');
  });
});
