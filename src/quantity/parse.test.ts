/** What an author may write for a quantity, and what is refused. Expected values are arithmetic on exact definitions. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { takeBound } from './bounds.js';
import { plainCharacters } from './characters.js';
import { readMovement } from './movement.js';
import { isProblem, parseQuantity } from './parse.js';
import { readTerm } from './terms.js';
import type { Dimension, Quantity, QuantityProblem } from './types.js';
import { DIMENSIONS } from './units.js';

function read(text: string, dimension: Dimension): Quantity {
  const result = parseQuantity(text, dimension);
  if (isProblem(result)) throw new Error(result.message);
  return result;
}

function refused(text: string, dimension: Dimension): QuantityProblem {
  const result = parseQuantity(text, dimension);
  if (!isProblem(result)) throw new Error(`"${text}" was read as ${result.value} ${result.unit}`);
  return result;
}

const inches = (text: string): number => read(text, 'length').value / 25.4;

describe('numbers', () => {
  it.each([
    ['4 in', 4],
    ['0.375 in', 0.375],
    ['.5 in', 0.5],
    ['4in', 4],
    ['3/8 in', 0.375],
    ['5-1/2 in', 5.5],
    ['5 1/2 in', 5.5],
    ['1 1/2"', 1.5],
    ['5½ in', 5.5],
    ['⅝"', 0.625],
    ['5–1/2 in', 5.5],
    ['4 ft 6 in', 54],
    ['4\'-6"', 54],
    ['4\' 6"', 54],
    ['4′-6″', 54],
    ['4\'6"', 54],
    ['4\'-6 1/2"', 54.5],
    ['4\'-6-1/2"', 54.5],
    ['4\' - 6"', 54],
    ["4''", 4],
    ['1,200 in', 1200],
    ['1e2 in', 100],
    ['4 IN', 4],
    ['4 in.', 4],
    ['4 inches', 4],
    [' 4\u00a0in ', 4],
    ['0 in', 0],
  ])('%s is %d in', (text, expected) => expect(inches(text)).toBeCloseTo(expected, 10));

  it.each([
    '1,5 in',
    '1,00 in',
    '0,500 in',
    '1,0000 in',
    '1/0 in',
    '1e400 in',
    '1/2/3 in',
    '5. in',
    '5 3/2 in',
    '½2 in',
    '5² in',
    '0-1/2 in',
    '5 6 in',
    '1 in 12',
    '4 . in',
    '4 (in',
    '+4 in',
    'in',
    'abc',
    '',
    '   ',
    '4 in extra 2',
  ])('"%s" is refused as a length', (text) => void refused(text, 'length'));

  it('a number too large once converted is refused', () => {
    expect(refused('1e308 m', 'length').problem).toBe('not a number');
  });

  it('feet take less than 12 inches', () => {
    expect(refused('4 ft 14 in', 'length').problem).toBe('out of range');
    expect(refused('4 ft 12 in', 'length').problem).toBe('out of range');
    expect(refused('4.5 ft 6 in', 'length').problem).toBe('out of range');
    expect(refused('-0 ft 6 in', 'length').problem).toBe('out of range');
    expect(refused('1 ft-18 in', 'length').message).toContain('"to"');
    expect(read('1 ft to 18 in', 'length').upper).toBeCloseTo(457.2, 9);
  });
});

describe('ranges', () => {
  it.each<[string, Dimension, number, number]>([
    ['12-15 mil', 'film', 304.8, 381],
    ['12 to 15 mil', 'film', 304.8, 381],
    ['12–15 mil', 'film', 304.8, 381],
    ['12 mil - 15 mil', 'film', 304.8, 381],
    ['5-6 in', 'length', 127, 152.4],
    ['1/4-1/2 in', 'length', 6.35, 12.7],
    ['1/4 to 1/2 in', 'length', 6.35, 12.7],
    ['5-1/2-6 in', 'length', 139.7, 152.4],
    ['5 to 5-1/2 in', 'length', 127, 139.7],
    ['between 4 and 6 in', 'length', 101.6, 152.4],
    ["4'-6'", 'length', 1219.2, 1828.8],
    ['4-4 in', 'length', 101.6, 101.6],
    ['-10 to 5 C', 'temperature', -10, 5],
    ['-5--2 C', 'temperature', -5, -2],
    ['14-50 F', 'temperature', -10, 10],
    ['1:12 to 1:10', 'slope', 1 / 12, 0.1],
    ['0.5-0.6', 'fraction', 0.5, 0.6],
    ['2 h - 1 d', 'time', 7200, 86400],
  ])('%s (%s) runs from %d to %d', (text, dimension, lower, upper) => {
    const range = read(text, dimension);
    expect(range.bound).toBe('between');
    expect(range.value).toBeCloseTo(lower, 9);
    expect(range.upper).toBeCloseTo(upper, 9);
  });

  it('a hyphen without spaces before a proper fraction makes a mixed number, with spaces a (reversed) range', () => {
    expect(read('5-1/2 in', 'length').bound).toBe('exactly');
    expect(refused('5 - 1/2 in', 'length').problem).toBe('empty range');
  });

  it('a reversed range, a range with a bound and a range without its last unit are refused', () => {
    expect(refused('15-12 mil', 'film').problem).toBe('empty range');
    expect(refused('2 ft to 12 in', 'length').problem).toBe('empty range');
    expect(refused('at least 12-15 mil', 'film').message).toContain('cannot also be a bound');
    expect(refused('12 mil - 15', 'film').problem).toBe('no unit');
    expect(refused('between 4 in', 'length').message).toContain('"and"');
  });
});

describe('bounds', () => {
  it.each([
    '>= 4 in',
    '≥4 in',
    'minimum 4 in',
    'min 4 in',
    'Min. 4 in',
    '4 in minimum',
    '4 in. min.',
    '4" MIN',
    'at least 4 in',
    'not less than 4 in',
    'no less than 4 in',
    '4 in or more',
  ])('%s is at least', (text) => {
    expect(read(text, 'length')).toMatchObject({ bound: 'at least', value: 101.6, unit: 'in', system: 'US' });
  });

  it.each([
    '<= 4 in',
    '≤ 4 in',
    'max 4 in',
    'max. 4 in',
    '4 in maximum',
    'at most 4 in',
    'not more than 4 in',
    'up to 4 in',
  ])('%s is at most', (text) => expect(read(text, 'length')).toMatchObject({ bound: 'at most', value: 101.6 }));

  it('min is minutes after a number and a minimum after a unit', () => {
    expect(read('30 min', 'time')).toMatchObject({ bound: 'exactly', value: 1800 });
    expect(read('30 s min', 'time')).toMatchObject({ bound: 'at least', value: 30 });
    expect(read('min 30 min.', 'time')).toMatchObject({ bound: 'at least', value: 1800 });
    expect(read('1 h 30 min', 'time').value).toBe(5400);
    expect(read('0.5 min', 'fraction')).toMatchObject({ bound: 'at least', value: 0.5 });
    expect(read('12 m2 min', 'area')).toMatchObject({ bound: 'at least', value: 12 });
  });

  it('strict bounds and two bounds are refused', () => {
    expect(refused('> 4 in', 'length').message).toContain('>= or <=');
    expect(refused('min 4 in max', 'length').message).toContain('two bounds');
  });
});

describe('units', () => {
  it.each<[string, Dimension, number]>([
    ['6 %', 'slope', 0.06],
    ['1/4 in per ft', 'slope', 1 / 48],
    ['1/4 in/ft', 'slope', 1 / 48],
    ['1/4" per foot', 'slope', 1 / 48],
    ['1/4":12"', 'slope', 1 / 48],
    ['1/4 in 12', 'slope', 1 / 48],
    ['1:12', 'slope', 1 / 12],
    ['1 in 12', 'slope', 1 / 12],
    ['20 mm/m', 'slope', 0.02],
    ['-2 %', 'slope', -0.02],
    ['45°', 'slope', 1],
    ['level', 'slope', 0],
    ['5 US perms', 'permeance', 286.0675],
    ['60 ng/(Pa·s·m²)', 'permeance', 60],
    ['60 ng/Pa.s.m2', 'permeance', 60],
    ['5e-11 kg/(Pa s m2)', 'permeance', 50],
    ['1 perm inch', 'permeability', 1.45322],
    ['2 ng/(Pa*s*m)', 'permeability', 2],
    ['RSI 2.3', 'thermalResistance', 2.3],
    ['RSI-2.3', 'thermalResistance', 2.3],
    ['2.3 m²·K/W', 'thermalResistance', 2.3],
    ['40 °F', 'temperature', 40 / 9],
    ['-40 deg F', 'temperature', -40],
    ['18 F', 'temperatureDifference', 10],
    ['10 °C', 'temperatureDifference', 10],
    ['2 days', 'time', 172800],
    ['1 month', 'time', 2629800],
    ['120 SF', 'area', 11.1483648],
    ['120 sq. ft.', 'area', 11.1483648],
    ['25 %', 'movement', 0.25],
    ['±25 %', 'movement', 0.25],
    ['+/-25%', 'movement', 0.25],
    ['Class 25', 'movement', 0.25],
    ['0.2 L/s/m²', 'airLeakage', 0.2],
    ['55 %', 'fraction', 0.55],
    ['0.55', 'fraction', 0.55],
    ['1', 'fraction', 1],
    ['4 m²/L', 'coverage', 4],
    ['12 microns', 'film', 12],
    ['12 µm', 'film', 12],
  ])('%s (%s) is %d', (text, dimension, expected) => expect(read(text, dimension).value).toBeCloseTo(expected, 9));

  it('a thermal resistance is the same in each of its US spellings', () => {
    for (const text of [
      'R13',
      'R 13',
      '13 ft2 h degF/Btu',
      '13 h·ft²·°F/BTU',
      '13 (ft2 hr F)/Btu',
      '13 sq ft h F per Btu',
    ]) {
      expect(read(text, 'thermalResistance').value).toBeCloseTo(read('R-13', 'thermalResistance').value, 12);
    }
    expect(read('R-13 to R-15', 'thermalResistance').upper).toBe(read('R-15', 'thermalResistance').value);
    expect(read('R-13-15', 'thermalResistance').upper).toBe(read('R-15', 'thermalResistance').value);
  });

  it('a slope as rise and run has a unit on both sides or on neither', () => {
    for (const text of ['1/4 in 12 in', '1/4 in per 12', '1":12']) {
      expect(refused(text, 'slope').message).toContain('rise and run');
    }
    expect(refused('1 perm:12 in', 'slope').problem).toBe('wrong dimension');
  });

  it('a negative zero is zero', () => {
    for (const text of ['-0 %', '-0:12', '-0 deg']) expect(read(text, 'slope').value).toBe(0);
  });

  it('parentheses must match', () => {
    for (const text of ['13 ft2) h (F/Btu', '13 (ft2 h F/Btu', '13 (R)']) refused(text, 'thermalResistance');
  });

  it('a two-sided movement keeps both sides and counts as the smaller', () => {
    for (const text of ['+100/-50 %', '-50/+100 %', 'class 100/50', '+100 % / -50 %']) {
      expect(read(text, 'movement')).toMatchObject({
        value: 0.5,
        sides: { extension: 1, compression: 0.5 },
        bound: 'exactly',
      });
    }
    refused('+50/+50 %', 'movement');
  });

  it('a bare number names the units that fit; only a fraction from 0 to 1 may be bare', () => {
    for (const dimension of DIMENSIONS) expect(refused('55', dimension).problem).toBe('no unit');
    expect(refused('4', 'length').units).toEqual(['in', 'ft', 'yd', 'mm', 'cm', 'm']);
    expect(refused('0.55', 'movement').problem).toBe('no unit');
  });

  it('a misspelled unit is answered with the nearest', () => {
    expect(refused('4 inn', 'length')).toMatchObject({ problem: 'unknown unit', nearest: 'in' });
    expect(refused('4 milimters', 'length').nearest).toBe('mm');
    expect(refused('3 bananas', 'permeance').nearest).toBeUndefined();
    expect(refused('3 pern', 'permeance').nearest).toBe('perm');
  });

  it('a unit of another dimension is answered with that dimension', () => {
    const problem = refused('4 perm', 'length');
    expect(problem.problem).toBe('wrong dimension');
    expect(problem.message).toContain('permeance');
    expect(refused('12 mil', 'length').message).toContain('film thickness');
    expect(refused('1/4 in', 'slope').problem).toBe('wrong dimension');
  });
});

describe('limits', () => {
  it.each<[string, Dimension]>([
    ['-4 in', 'length'],
    ['-5 mil', 'film'],
    ['-1 perm', 'permeance'],
    ['-300 C', 'temperature'],
    ['-460 F', 'temperature'],
    ['90 deg', 'slope'],
    ['120 %', 'fraction'],
    ['-0.1', 'fraction'],
    ['1:0', 'slope'],
    ['-10 K', 'temperatureDifference'],
  ])('%s is out of range for %s', (text, dimension) => {
    expect(refused(text, dimension).problem).toBe('out of range');
  });

  it('60 characters are read and 61 are not', () => {
    expect(inches(`${'0'.repeat(56)}4 in`.slice(-60))).toBeCloseTo(4, 10);
    expect(refused(`${'0'.repeat(57)}4 in`, 'length').message).toContain('61');
  });

  it('a message shows no control characters', () => {
    expect(refused('4 \u001b[31m\u202e', 'length').message).not.toMatch(/\p{C}/u);
    expect(refused('4 in 5 \u0007', 'length').message).not.toMatch(/\p{C}/u);
  });
});

describe('for every text', () => {
  const dimensions = fc.constantFrom(...DIMENSIONS);
  const pieces = fc.constantFrom(
    ...'0 1 12 / - . , : % " \' ( ) + to and in ft per R- class min >= ½ ² · ° e mil perm K h'.split(' '),
    ' ',
  );
  const texts = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 80 }),
    fc.array(pieces, { maxLength: 14 }).map((parts) => parts.join('')),
  );

  it('answers with a finite quantity of the dimension asked for or with a problem that says why', () => {
    fc.assert(
      fc.property(texts, dimensions, (text, dimension) => {
        const result = parseQuantity(text, dimension);
        if (isProblem(result)) {
          expect(result.message).toMatch(/^Found .+ Expected (?:a [^aeiou]|an [aeiou]).+\.$/);
          return;
        }
        expect(result.dimension).toBe(dimension);
        expect(Number.isFinite(result.value)).toBe(true);
        expect(result.bound === 'between').toBe(result.upper !== undefined);
        expect(result.upper ?? result.value).toBeGreaterThanOrEqual(result.value);
      }),
      { numRuns: 3000 },
    );
  });

  it('finishes on texts far longer than it accepts, made to send a reader back and forth', () => {
    // The parts are called directly, past the limit of 60 characters: anything worse than linear time would run for
    // minutes at this size and exceed the time the test runner allows.
    for (const piece of [
      '1',
      '1 ',
      '1-',
      '1/',
      '1,',
      '1,000',
      ' - ',
      '-1 ',
      'a ',
      '(',
      '1e',
      '%/',
      '+1 %/-',
      '\u00a0',
      '½',
      "1'",
      'min ',
      'per ',
    ]) {
      const long = `1${piece.repeat(200_000 / piece.length)}!`;
      const plain = plainCharacters(long);
      for (const dimension of ['length', 'time', 'slope', 'thermalResistance'] as const) {
        readTerm({ plain: takeBound(plain, dimension).rest, text: '', dimension }, 0);
      }
      readMovement(plain, '');
      for (const dimension of DIMENSIONS) refused(long, dimension);
      for (const dimension of DIMENSIONS) refused(long.slice(0, 59) + '!', dimension);
    }
  });

  it('reads a fraction, a mixed number and a decimal of the same length as the same number', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), fc.integer({ min: 1, max: 15 }), (whole, over) => {
        const decimal = read(`${whole + over / 16} in`, 'length').value;
        for (const text of [`${whole}-${over}/16 in`, `${whole} ${over}/16 in`, `${whole * 16 + over}/16"`]) {
          expect(read(text, 'length').value).toBe(decimal);
        }
      }),
    );
  });

  it('gives the same frozen object again, until more texts came by than are remembered', () => {
    const first = read('4 in', 'length');
    expect(parseQuantity('4 in', 'length')).toBe(first);
    expect(Object.isFrozen(first)).toBe(true);
    for (let i = 0; i < 2000; i++) expect(inches(`${i} in`)).toBeCloseTo(i, 9);
    const again = parseQuantity('4 in', 'length');
    expect(again).toEqual(first);
    // A new object: the old one was let go, so memory stays bounded.
    expect(again).not.toBe(first);
  });
});
