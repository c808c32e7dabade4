/**
 * YAML blocks inside a Markdown file, each with a map from its text back into the file.
 *
 * Loaded only when a Markdown file with a YAML block is read: the Markdown parser costs more to load than all
 * the rest of reading.
 *
 * @see CommonMark 0.31.2 section 4.5 (fenced code blocks)
 */
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import type { Code, Nodes, Root } from 'mdast';
import type { OffsetMap } from './offsets.js';
import type { Span } from './types.js';

/** A fenced block whose info string begins with `yaml` and a second word. */
export interface YamlBlock {
  /** The second word of the info string. */
  readonly word: string;
  /** Where that word stands in the file. */
  readonly wordSpan: Span;
  /** What stands between the fences, without what a list or a block quote puts before each line. */
  readonly text: string;
  /** From an offset in `text` to the offset in the file. */
  readonly offsetMap: OffsetMap;
}

/**
 * Only blocks are looked for. Without the constructs inside of paragraphs the parser is faster, and text made to
 * slow it down (thousands of brackets or asterisks) has nothing to work on; blocks do not depend on them.
 *
 * @see CommonMark 0.31.2, appendix "A parsing strategy": block structure comes first and alone
 */
const BLOCKS_ONLY = {
  disable: {
    null: [
      'attention',
      'autolink',
      'codeText',
      'hardBreakEscape',
      'htmlText',
      'labelEnd',
      'labelStartImage',
      'labelStartLink',
    ],
  },
};

const OPENING = /^(?:`{3,}|~{3,})[ \t]*\S+[ \t]+(\S+)/;

/**
 * The blocks of a Markdown text as a tree, without what stands inside of paragraphs.
 *
 * @param tables also read tables, as GitHub writes them; what reads them is loaded only then
 * @see GitHub Flavored Markdown Spec 0.29, section 4.10 (tables)
 */
export async function markdownTree(markdown: string, tables: boolean): Promise<Root> {
  const parser = unified().use(remarkParse).data('micromarkExtensions', [BLOCKS_ONLY]);
  if (!tables) return parser.parse(markdown);
  const { default: remarkGfm } = await import('remark-gfm');
  return parser.use(remarkGfm).parse(markdown);
}

/**
 * The YAML blocks of a Markdown text, in its order.
 *
 * @param markdown text of the file
 * @param tree what it was parsed to, when that is known
 * @returns blocks with an info string of at least two words, the first of them `yaml` or `yml`
 */
export function yamlBlocks(markdown: string, tree?: Root): YamlBlock[] {
  tree ??= unified().use(remarkParse).data('micromarkExtensions', [BLOCKS_ONLY]).parse(markdown);
  const blocks: YamlBlock[] = [];
  for (const code of codeBlocks(tree)) {
    const start = code.position?.start.offset;
    const language = code.lang?.toLowerCase();
    const word = code.meta?.split(/\s/)[0];
    if (start === undefined || !word || (language !== 'yaml' && language !== 'yml')) continue;
    blocks.push({ word, wordSpan: wordSpan(markdown, start), ...cutOut(markdown, start, code.value) });
  }
  return blocks;
}

/** Iterative: block quotes may be nested as deep as a hostile text likes. */
function codeBlocks(tree: Nodes): Code[] {
  const found: Code[] = [];
  const open: Nodes[] = [tree];
  for (let node = open.pop(); node; node = open.pop()) {
    if (node.type === 'code') found.push(node);
    else if ('children' in node) open.push(...[...node.children].reverse());
  }
  return found;
}

function wordSpan(markdown: string, start: number): Span {
  const opening = OPENING.exec(lineAt(markdown, start));
  const word = opening?.[1] ?? '';
  const end = start + (opening?.[0].length ?? 3);
  return { start: end - word.length, end };
}

/**
 * The block's text and its way back. Each line of the text is the end of a line of the file; what the file has
 * before it (indentation, `>`) is not part of the block.
 */
function cutOut(
  markdown: string,
  start: number,
  value: string,
): { readonly text: string; readonly offsetMap: OffsetMap } {
  const lines = value.split(/\r\n|\n|\r/);
  const textStarts: number[] = [];
  const fileStarts: number[] = [];
  const firsts: number[] = [];
  let textStart = 0;
  let at = nextLine(markdown, start);
  for (const line of lines) {
    const fileLine = lineAt(markdown, at);
    textStarts.push(textStart);
    // Counted from the end of the line: a tab that indents both the list and the block leaves spaces of its own.
    fileStarts.push(at + fileLine.length - line.length);
    firsts.push(at);
    textStart += line.length + 1;
    at = nextLine(markdown, at);
  }
  const offsetMap = (offset: number): number => {
    let low = 0;
    let high = textStarts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((textStarts[middle] ?? 0) <= offset) low = middle;
      else high = middle - 1;
    }
    return Math.max((fileStarts[low] ?? 0) + offset - (textStarts[low] ?? 0), firsts[low] ?? 0);
  };
  return { text: lines.join('\n'), offsetMap };
}

function lineAt(text: string, start: number): string {
  const found = /[\r\n]/g;
  found.lastIndex = start;
  return text.slice(start, found.exec(text)?.index ?? text.length);
}

function nextLine(text: string, start: number): number {
  const found = /\r\n|\n|\r/g;
  found.lastIndex = start;
  return found.exec(text) ? found.lastIndex : text.length;
}
