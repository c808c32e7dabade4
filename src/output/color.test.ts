import { describe, expect, test } from 'vitest';
import { themeFor, wantsColor } from './color.js';

describe('color is used', () => {
  test.each([
    ['on a terminal', {}, true, undefined, true],
    ['not in a pipe', {}, false, undefined, false],
    ['not on a dumb terminal', { TERM: 'dumb' }, true, undefined, false],
    ['not with NO_COLOR', { NO_COLOR: '1' }, true, undefined, false],
    ['with an empty NO_COLOR, which means nothing', { NO_COLOR: '' }, true, undefined, true],
    ['in a pipe with FORCE_COLOR', { FORCE_COLOR: '1' }, false, undefined, true],
    ['not with FORCE_COLOR=0', { FORCE_COLOR: '0' }, true, undefined, false],
    ['not when NO_COLOR and FORCE_COLOR disagree', { NO_COLOR: '1', FORCE_COLOR: '3' }, true, undefined, false],
    ['on a dumb terminal with FORCE_COLOR', { TERM: 'dumb', FORCE_COLOR: '1' }, true, undefined, true],
    ['when the command line asks, against NO_COLOR', { NO_COLOR: '1' }, false, true, true],
    ['not when the command line refuses, against FORCE_COLOR', { FORCE_COLOR: '1' }, true, false, false],
  ])('%s', (_, env, isTTY, asked, expected) => {
    expect(wantsColor({ env, isTTY, ...(asked === undefined ? {} : { asked }) })).toBe(expected);
  });
});

test('without color the theme changes no text, even when the environment forces color', () => {
  const theme = themeFor(false);
  expect([theme.title('a'), theme.quiet('b'), theme.level.error('c')]).toEqual(['a', 'b', 'c']);
  expect(themeFor(true).level.error('c')).not.toBe('c');
});
