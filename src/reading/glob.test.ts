import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { glob, isGlob } from './glob.js';

describe('isGlob', () => {
  it.each(['*.yaml', 'a/**', 'w-?.yaml', '{a,b}.yaml'])('sees the pattern %s', (text) =>
    expect(isGlob(text)).toBe(true),
  );
  it.each(['a.yaml', 'W-3 (head).yaml', 'a[1].yaml', '{a}.yaml', '../a.yaml'])('sees the name %s', (text) =>
    expect(isGlob(text)).toBe(false),
  );
});

describe('a pattern', () => {
  it.each([
    ['*.yaml', '', 'a.yaml', true],
    ['*.yaml', '', 'b/a.yaml', false],
    ['products/*.yaml', 'products', 'a.yaml', true],
    ['../products/**/*.yaml', '../products', 'a.yaml', true],
    ['../products/**/*.yaml', '../products', 'x/y/a.yaml', true],
    ['../products/**/*.yaml', '../products', 'x/y/a.md', false],
    ['**', '', 'x/y', true],
    ['a/**/b/*.md', 'a', 'x/b/c/b/d.md', true],
    ['a/**/b/*.md', 'a', 'x/b/c/d.md', false],
    ['w-?.yaml', '', 'w-3.yaml', true],
    ['w-?.yaml', '', 'w-.yaml', false],
    ['w-?.yaml', '', 'w-33.yaml', false],
    ['a*b*c', '', 'aXbYbZc', true],
    ['a*b*c', '', 'aXcYb', false],
    ['{sill,head}-*.yaml', '', 'head-1.yaml', true],
    ['{sill,head}-*.yaml', '', 'jamb-1.yaml', false],
    ['x/{a/b,c}/*.yaml', 'x', 'a/b/d.yaml', true],
    ['{a,b{1,2}}', '', 'b2', true],
    ['a.yaml/*', 'a.yaml', 'axyaml', true],
    ['(a|b)*', '', '(a|b)c', true],
    ['(a|b)*', '', 'ac', false],
  ])('%s looks in "%s" and %s there: %s', (pattern, folder, path, expected) => {
    const compiled = glob(pattern);
    expect(compiled?.folder).toBe(folder);
    expect(compiled?.matches(path)).toBe(expected);
  });

  it('knows how deep it has to look', () => {
    expect(glob('a/*.yaml')?.depth).toBe(1);
    expect(glob('a/*/*.yaml')?.depth).toBe(2);
    expect(glob('a/**/*.yaml')?.depth).toBe(Infinity);
    expect(glob('{a,b/c/d}*')?.depth).toBe(3);
  });

  it('is refused when its braces multiply', () => {
    expect(glob('{a,b}'.repeat(6))?.matches('ababab')).toBe(true);
    expect(glob('{a,b}'.repeat(7))).toBeUndefined();
  });

  it('takes no longer for being hostile', () => {
    const before = process.cpuUsage();
    expect(glob(`${'*a'.repeat(2000)}b`)?.matches('a'.repeat(4000))).toBe(false);
    expect(glob(`${'**/a/'.repeat(200)}b`)?.matches(`${'a/'.repeat(400)}c`)).toBe(false);
    expect(process.cpuUsage(before).user / 1e6).toBeLessThan(2);
  });

  it('agrees with the plain meaning of * and ? on one name', () => {
    const pattern = fc.stringMatching(/^[ab*?]{1,8}$/).filter((text) => /[*?]/.test(text) && text !== '**');
    fc.assert(
      fc.property(pattern, fc.stringMatching(/^[ab]{0,8}$/), (text, name) => {
        const meaning = new RegExp(`^${text.replace(/\*/g, '.*').replace(/\?/g, '.')}$`);
        expect(glob(text)?.matches(name)).toBe(meaning.test(name));
      }),
      { numRuns: 2000 },
    );
  });
});
