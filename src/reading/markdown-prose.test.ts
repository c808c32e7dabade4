import { describe, expect, it } from 'vitest';
import { markdownProse } from './markdown-prose.js';

describe('the running text of a Markdown file', () => {
  it('has the length of the file, so that every offset counts in it', () => {
    const source =
      '# One *two*\r\n\r\n> **A.** At least `6 in`.\r\n\r\n```yaml specification\r\natLeast: 9 in\r\n```\r\n';
    const { text } = markdownProse(source);
    expect(text).toHaveLength(source.length);
    expect(text.indexOf('6 in')).toBe(source.indexOf('6 in'));
    expect(text.replace(/\s+/g, ' ').trim()).toBe('One two A. At least 6 in .');
  });

  it('leaves out fenced code and HTML, and keeps what is indented', () => {
    const source = 'A. One.\n\n    1. Two.\n\n<!-- 99 in -->\n\n~~~\n88 in\n~~~\n';
    expect(markdownProse(source).text.replace(/\s+/g, ' ').trim()).toBe('A. One. 1. Two.');
  });

  it('names the headings, of both kinds', () => {
    const source = '## Part 1 - General ##\n\nPart 2\n------\n\ntext\n';
    expect(markdownProse(source).headings.map(({ start, end }) => source.slice(start, end))).toEqual([
      'Part 1 - General',
      'Part 2',
    ]);
  });

  it('keeps blanks to fill in, stars between spaces and strokes of tables', () => {
    const source = 'A. [_____] mm * 2 of max_value\n\n| a | b |\n';
    expect(markdownProse(source).text).toBe(source);
  });
});
