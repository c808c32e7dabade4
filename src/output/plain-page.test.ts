import { describe, expect, test } from 'vitest';
import { plainPage } from './plain-page.js';

describe('a page as plain text', () => {
  test.each([
    ['headings as capitals', '## On the wall ##', 'ON THE WALL\n'],
    ['emphasis without its marks', 'a **strong** and *weak* and _low_ word', 'a strong and weak and low word\n'],
    ['code without its marks, letters kept', 'set `a_b_c` and ``x `y` z``', 'set a_b_c and x `y` z\n'],
    ['links with their address', 'see [the guide](https://example.com/g)', 'see the guide (https://example.com/g)\n'],
    ['links to neighbors as words', 'see [reverse lap](reverse-lap.md)', 'see reverse lap\n'],
    ['escaped marks as the mark', '2 \\* 3 \\_', '2 * 3 _\n'],
    ['a product and an id as they are', '2 * 3 * 4 and a_b_c', '2 * 3 * 4 and a_b_c\n'],
    ['tables as rows', '| a | b |\n|---|---|\n| 1 | 2 |', 'a   b\n1   2\n'],
    [
      'examples letter by letter, set in',
      '```yaml detail\nwork:\n  - { id: "*pan*" }\n\n```',
      '    work:\n      - { id: "*pan*" }\n',
    ],
    ['nothing as an empty line', '', '\n'],
  ])('shows %s', (_, page, plain) => {
    expect(plainPage(page, 80)).toBe(plain);
  });

  test('wraps paragraphs, and items under their first word', () => {
    expect(plainPage('- lap the membrane onto\n  the flashing\n- then wait', 24)).toBe(
      '- lap the membrane onto\n  the flashing\n- then wait\n',
    );
    expect(plainPage('one two three four five six', 20)).toBe('one two three four\nfive six\n');
  });

  test('joins the lines of a paragraph when there is no width', () => {
    expect(plainPage('one\ntwo\n\nthree', Infinity)).toBe('one two\n\nthree\n');
  });

  test('ends a fence only at a fence of its own kind', () => {
    expect(plainPage('~~~\n```\nx\n~~~\nend', 80)).toBe('    ```\n    x\nend\n');
  });

  test('prints no control character', () => {
    expect(plainPage('a \u001b[31m\n\n```\n\u202eb\n```', 80)).toBe('a \\u{1B}[31m\n\n    \\u{202E}b\n');
  });
});
