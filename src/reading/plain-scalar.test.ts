import fc from 'fast-check';
import { load } from 'js-yaml';
import { describe, expect, it } from 'vitest';
import { entryName, plainValue } from './plain-scalar.js';

describe('plainValue', () => {
  // YAML 1.2.2 section 10.3.2, table of the core schema.
  it.each([
    ['null', null],
    ['~', null],
    ['', null],
    ['true', true],
    ['FALSE', false],
    ['0', 0],
    ['12', 12],
    ['-3', -3],
    ['+5', 5],
    ['3.10', 3.1],
    ['.5', 0.5],
    ['12.', 12],
  ])('reads %s as the core schema does', (source, value) => {
    expect(plainValue(source)).toEqual({ value });
  });

  it.each([
    'yes',
    'no',
    'on',
    'off',
    'W-3',
    '5/8 in',
    '1-3/8 in',
    '07 27 26',
    '2024-01-02',
    '1_000',
    '1:30',
    'nullable',
    'True story',
    '-',
    '.',
    '4in',
    '0b11',
  ])('keeps %s as text', (source) => {
    expect(plainValue(source)).toEqual({ value: source });
  });

  it.each([
    ['010', '010 begins with a zero, which reads in two ways'],
    ['-007.5', '-007.5 begins with a zero, which reads in two ways'],
    ['5E3', '5E3 is read as a number with an exponent'],
    ['1.5e-3', '1.5e-3 is read as a number with an exponent'],
    ['0x10', '0x10 is read as a number that is not decimal'],
    ['0o17', '0o17 is read as a number that is not decimal'],
    ['.inf', '.inf is not a finite number'],
    ['-.INF', '-.INF is not a finite number'],
    ['.NaN', '.NaN is not a finite number'],
    ['12345678901234567890', '12345678901234567890 has more digits than a number can keep'],
    ['0.1234567890123456', '0.1234567890123456 has more digits than a number can keep'],
  ])('refuses %s', (source, refused) => {
    expect(plainValue(source)).toEqual({ refused });
  });

  it('reads every accepted decimal as another YAML reader does', () => {
    const decimal = fc.stringMatching(/^[-+]?(?:0|[1-9]\d{0,8})(?:\.\d{0,5})?$/);
    fc.assert(
      fc.property(decimal, (source) => {
        expect(plainValue(source)).toEqual({ value: load(source) });
      }),
    );
  });

  it('never yields a number that is not finite', () => {
    const odd = fc.stringMatching(/^[-+.0-9eExXoinfaINFA_]{1,24}$/);
    fc.assert(
      fc.property(odd, (source) => {
        const plain = plainValue(source);
        if ('value' in plain && typeof plain.value === 'number') expect(Number.isFinite(plain.value)).toBe(true);
      }),
    );
  });
});

describe('entryName', () => {
  it('takes words, and anything harmless in quotes', () => {
    expect(entryName('ontoWall', true, true)).toEqual({ name: 'ontoWall' });
    expect(entryName('opening flashing', true, true)).toEqual({ name: 'opening flashing' });
    expect(entryName('3.10', false, true)).toEqual({ name: '3.10' });
  });

  it.each(['12', 'true', 'null', '~', '0x10'])('asks for quotes around %s', (name) => {
    expect(entryName(name, true, true)).toEqual({
      code: 'wrong-value',
      message: `The name ${name} does not read as a text; put it in quotes: "${name}".`,
    });
  });

  it('refuses the names that change what an object is, quoted or not', () => {
    for (const isPlain of [true, false]) {
      expect(entryName('__proto__', isPlain, true)).toMatchObject({ code: 'unsafe-content' });
      expect(entryName('<<', isPlain, true)).toMatchObject({ code: 'unsafe-content' });
    }
  });

  it('sees a colon without a space', () => {
    expect(entryName('width:48 in', true, false)).toEqual({
      code: 'malformed-yaml',
      message: 'The colon needs a space after it; write "width: 48 in".',
    });
    expect(entryName('width:48 in', true, true)).toEqual({ name: 'width:48 in' });
  });
});
