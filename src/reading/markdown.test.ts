import fc from 'fast-check';
import remarkParse from 'remark-parse';
import type { Nodes } from 'mdast';
import { unified } from 'unified';
import { describe, expect, it } from 'vitest';
import { yamlBlocks } from './markdown.js';
import { pathsOf, valueAt, written } from './testing/random-yaml.js';
import { sourceFile } from './source.js';
import { readYaml } from './yaml.js';

const cut = (text: string, { start, end }: { start: number; end: number }): string => text.slice(start, end);

describe('yamlBlocks', { timeout: 60_000 }, () => {
  it('finds the blocks whose info string is yaml and a second word', () => {
    const text =
      '# A\n\n```yaml detail\nid: a\n```\n\n```yaml\nid: b\n```\n\n~~~yml product x=1\nid: c\n~~~\n\n```js detail\n```\n';
    expect(yamlBlocks(text).map(({ word, wordSpan, text: inside }) => [word, cut(text, wordSpan), inside])).toEqual([
      ['detail', 'detail', 'id: a'],
      ['product', 'product', 'id: c'],
    ]);
  });

  it('takes no block out of indented code, HTML or inline code', () => {
    expect(
      yamlBlocks(
        '    ```yaml detail\n    id: a\n    ```\n\n<pre>\n```yaml detail\nid: a\n```\n</pre>\n\na ```yaml detail``` b\n',
      ),
    ).toEqual([]);
  });

  it('ends a block that is never closed with the text', () => {
    expect(yamlBlocks('```yaml detail\nid: a\n').map(({ text }) => text)).toEqual(['id: a']);
  });

  it.each([
    ['plain', '```yaml detail\nwall:\n  - id: a\n```\n'],
    ['indented', '   ```yaml detail\n   wall:\n     - id: a\n   ```\n'],
    ['in a list', '1. text\n\n   ```yaml detail\n   wall:\n     - id: a\n   ```\n'],
    ['in a list in a list', '- a\n  - b\n\n    ~~~~yaml detail\n    wall:\n      - id: a\n    ~~~~\n'],
    ['in a block quote', '> ```yaml detail\n> wall:\n>   - id: a\n> ```\n'],
    // One space behind each > belongs to the quote when it is there (CommonMark 0.31.2 section 5.1).
    ['in a block quote without spaces', '>```yaml detail\n>wall:\n>   - id: a\n>```\n'],
    ['in a quoted list', '> - x\n>\n>   ```yaml detail\n>   wall:\n>     - id: a\n>   ```\n'],
    ['in a list that is indented with tabs', '- x\n\n\t```yaml detail\n\twall:\n\t  - id: a\n\t```\n'],
    ['with Windows line ends', '> ```yaml detail\r\n> wall:\r\n>   - id: a\r\n> ```\r\n'],
  ])('maps positions back: %s', (_, markdown) => {
    const [block] = yamlBlocks(markdown);
    expect(block?.text).toBe('wall:\n  - id: a');
    const file = sourceFile('a.md', markdown);
    const [document] = readYaml(file, block?.text ?? '', block?.offsetMap).documents;
    if (!document || !block) throw new Error('nothing was read');
    expect(cut(markdown, block.wordSpan)).toBe('detail');
    expect(cut(markdown, document.spanOf(['wall', 0, 'id']))).toBe('a');
    expect(cut(markdown, document.spanOf(['wall', 0]))).toBe('id: a');
    expect(cut(markdown, document.spanOf(['wall']))).toBe('wall');
    expect(document.spanOf(['wall', 0, 'id']).start).toBe(markdown.indexOf('id: a') + 4);
  });

  const wraps = fc.constantFrom<readonly [string, string, string]>(
    ['', '', ''],
    ['> ', '> ', '>'],
    ['- ', '  ', ''],
    ['1. x\n\n   ', '   ', ''],
    ['> - ', '>   ', '>'],
    ['  ', '  ', ''],
  );

  it('maps every value of every document back, however deep the block stands', () => {
    fc.assert(
      fc.property(written, wraps, fc.boolean(), ({ data, text }, [first, others, blank], isWindows) => {
        const lines = ['~~~~yaml detail', ...text.trimEnd().split('\n'), '~~~~'];
        const inside = lines
          .map((line, index) => (index === 0 ? first : line === '' ? blank : others) + line)
          .join('\n');
        const markdown = `Text *before*.\n\n${inside}\n\nText behind.\n`.replaceAll('\n', isWindows ? '\r\n' : '\n');
        const [block] = yamlBlocks(markdown);
        if (!block) throw new Error('no block');
        const alone = readYaml(sourceFile('a.yaml', block.text), block.text).documents[0];
        const within = readYaml(sourceFile('a.md', markdown), block.text, block.offsetMap).documents[0];
        expect(block.text).toBe(text.trimEnd());
        for (const path of pathsOf(data)) {
          const expected = alone && cut(block.text, alone.spanOf(path));
          // A text over several lines has the prefixes of the block quote between them.
          if (valueAt(data, path) === null || expected?.includes('\n')) continue;
          expect(within && cut(markdown, within.spanOf(path))).toBe(expected);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('sees the same blocks as a full reading of the Markdown', () => {
    const piece = fc.constantFrom(
      '```yaml detail\n',
      '```\n',
      '~~~\n',
      '~~~yaml detail\n',
      'a: 1\n',
      '> ',
      '- ',
      '  ',
      '    ',
      '\t',
      '1. ',
      '\n',
      '# h\n',
      '*a* [b](c)\n',
      '`x',
      '<b>',
      '\\',
      '[d]: e\n',
      '---\n',
      '===\n',
      '<!-- ',
      '-->\n',
      '&amp;',
    );
    const full = (node: Nodes): string[] =>
      node.type === 'code'
        ? node.lang === 'yaml' && node.meta
          ? [node.value]
          : []
        : 'children' in node
          ? node.children.flatMap(full)
          : [];
    fc.assert(
      fc.property(
        fc.array(piece, { maxLength: 30 }).map((pieces) => pieces.join('')),
        (markdown) => {
          expect(yamlBlocks(markdown).map(({ text }) => text)).toEqual(
            full(unified().use(remarkParse).parse(markdown)).map((value) => value.replaceAll('\r', '')),
          );
        },
      ),
      { numRuns: 3000 },
    );
  });
});
