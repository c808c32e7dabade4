/** What a value is measured at stays with it, and is never lost. */
import { describe, expect, it } from 'vitest';
import { asked, readParagraph } from './testing/one-paragraph.js';

/** `atMost 3 mm (1/8 in) at 10 ft` for each proposal. */
const told = (text: string): string[] =>
  readParagraph(text).proposals.map(({ compare = '', value, also, conditions }) => {
    const twin = also === undefined ? '' : ` (${also.text})`;
    const at = conditions.length === 0 ? '' : ` at ${conditions.map((one) => one.text).join(', ')}`;
    return `${compare} ${value?.text ?? ''}${twin}${at}`;
  });

describe('the length that a tolerance holds for', () => {
  it.each([
    ['Keep studs straight to within 1/4 inch in 8 feet.', ['atMost 1/4 in at 8 ft']],
    ['Head: level within 3 mm in 2.4 m 1/8 inch in 8 feet.', ['atMost 3 mm (1/8 in) at 2.4 m, 8 ft']],
    ['Sill: level within 1/8 inch in 10 feet (3 mm in 3 m).', ['atMost 1/8 in (3 mm) at 10 ft, 3 m']],
    ['Leave gaps of at least 1 inch in each 24 inches.', ['atLeast 1 in at 24 in']],
  ])('%s', (text, expected) => {
    expect(told(text)).toEqual(expected);
    expect(asked(text)).toEqual([]);
  });

  it('does not hide that the two systems differ', () => {
    expect(asked('Sill: level within 1/8 inch in 10 feet (6 mm in 3 m).')).toEqual(['values disagree: 1/8 in, 6 mm']);
  });
});

describe('the pressure of a test', () => {
  it('is a limit where its own words limit it, and keeps its time', () => {
    expect(
      told('Test not fewer than 4 doors by ASTM E1105 at a pressure of not less than 300 Pa for 10 minutes.'),
    ).toEqual(['atLeast 4 doors', 'atLeast 300 Pa at 10 min']);
  });

  it('is what a count of tests is done at', () => {
    expect(told('Water: ASTM E1105 at 4 psf for 15 minutes, for at least two units.')).toEqual([
      'atLeast 2 units at 4 psf, 15 min',
    ]);
  });

  it('is listed where the value itself is asked about', () => {
    const { proposals, questions, passedOver } = readParagraph('Crack: 1/8 inch at minus 20 deg F.');
    expect(proposals).toEqual([]);
    expect(questions.map(({ kind }) => kind)).toEqual(['no comparator']);
    expect(passedOver.map(({ value, reason }) => `${value.text}: ${reason}`)).toEqual([
      '-20 degF: a condition of something that is not proposed',
    ]);
  });
});

it('keeps the pressure of a value that is still to be chosen', () => {
  const { passedOver } = readParagraph('Leakage: not more than [0.2][0.3] cfm/sq ft at 6.24 psf.');
  expect(passedOver.map(({ value }) => value.text)).toEqual(['6.24 psf']);
});

it('trusts no value whose method measures something else, and names it in the question', () => {
  const text = 'Vapor Permeance: ASTM E2178, at least 12 perms.';
  expect(asked(text)).toEqual(['method and property differ: 12 perm']);
  expect(readParagraph(text).proposals.map(({ confidence }) => confidence)).toEqual(['low']);
  const right = readParagraph('Vapor Permeance: ASTM E96/E96M, at least 12 perms.');
  expect(right.proposals.map(({ confidence }) => confidence)).toEqual(['high']);
});
