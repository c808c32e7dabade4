import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { oneLine, safeJson, uriReference, visible, webAddress } from './escape.js';

const anyText = fc.string({ unit: 'binary' });

describe('text for a terminal', () => {
  test.each([
    ['an escape sequence', '\u001b[31mred', '\\u{1B}[31mred'],
    ['a one-byte control sequence introducer', '\u009b31m', '\\u{9B}31m'],
    ['a direction override', 'a\u202eb', 'a\\u{202E}b'],
    ['a direction isolate', '\u2066x\u2069', '\\u{2066}x\\u{2069}'],
    ['a zero-width space', 'a\u200bb', 'a\\u{200B}b'],
    ['an invisible tag letter', '\u{e0041}', '\\u{E0041}'],
    ['half a surrogate pair', 'a\ud800b', 'a\\u{D800}b'],
    ['a backspace', 'ab\b', 'ab\\u{8}'],
  ])('shows %s instead of obeying it', (_, given, shown) => {
    expect(visible(given)).toBe(shown);
  });

  test('leaves words, accents and whole emoji alone', () => {
    expect(visible('5-1/2 in, café, 日本, 🏠')).toBe('5-1/2 in, café, 日本, 🏠');
  });

  test('joins lines with one space', () => {
    expect(oneLine('  first\r\n\tsecond  third\n')).toBe('first second third');
  });

  test('never lets a control or a direction mark through, whatever comes in', () => {
    fc.assert(
      fc.property(anyText, (text) => !/[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/.test(oneLine(text))),
    );
  });
});

describe('JSON', () => {
  test('gives back the very same value', () => {
    fc.assert(fc.property(anyText, (text) => JSON.parse(safeJson({ text })).text === text));
  });

  test('holds no direction mark and no C1 control as such', () => {
    expect(safeJson('\u202e\u009b\u007f')).toBe('"\\u202e\\u009b\\u007f"');
    expect(safeJson('\u{e0041}')).toBe('"\\udb40\\udc41"');
  });
});

describe('addresses', () => {
  test.each([
    ['walls/w 3.yaml', 'walls/w%203.yaml'],
    ['a:b.yaml', 'a%3Ab.yaml'],
    ['what?.yaml', 'what%3F.yaml'],
    ['50 %.yaml', '50%20%25.yaml'],
    ['w\ud800.yaml', 'w%EF%BF%BD.yaml'],
    ['-', '-'],
  ])('writes the path %s as the reference %s', (path, reference) => {
    expect(uriReference(path)).toBe(reference);
  });

  test('lets only plain http and https become links', () => {
    expect(webAddress('https://www.example.com/a?b=c')).toBe('https://www.example.com/a?b=c');
    for (const bad of ['javascript:alert(1)', 'file:///etc/x', 'https://a b', 'https://a"b', undefined]) {
      expect(webAddress(bad)).toBeUndefined();
    }
  });
});
