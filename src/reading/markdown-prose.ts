/**
 * The running text of a Markdown file, for reading what it says: the markup is blanked out, the text keeps its length,
 * so that every offset counts in the file itself.
 */
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import type { Nodes } from 'mdast';
import type { Span } from './types.js';

/** Text as long as the file, with spaces for markup, and where its headings stand. */
export interface MarkdownProse {
  readonly text: string;
  readonly headings: readonly Span[];
}

/** Paragraphs numbered `A.` or indented deeply are no code in a section; inline markup is looked for below. */
const BLOCKS_ONLY = {
  disable: {
    null: [
      'attention',
      'autolink',
      'codeIndented',
      'codeText',
      'hardBreakEscape',
      'htmlText',
      'labelEnd',
      'labelStartImage',
      'labelStartLink',
    ],
  },
};

/** What marks emphasis, code and escapes; a star or an underscore between spaces is text. */
const INLINE =
  /\\(?=[!-/:-@[-`{-~])|\*{1,3}(?=\S)|(?<=\S)\*{1,3}|`+|(?<![\w_[])_{1,2}(?=\w)|(?<=[\w.,;:)])_{1,2}(?![\w_\]])/g;
const PREFIX = /^[ \t]*(?:>[ \t]?)+/gm;

/**
 * Blanks out the markup of a Markdown text.
 *
 * @param markdown text of the file
 * @returns fenced code, HTML and link targets are blank; list marks and table strokes stay
 */
export function markdownProse(markdown: string): MarkdownProse {
  const tree = unified().use(remarkParse).data('micromarkExtensions', [BLOCKS_ONLY]).parse(markdown);
  const blanks: Span[] = [];
  const headings: Span[] = [];
  const open: Nodes[] = [tree];
  for (let node = open.pop(); node; node = open.pop()) {
    const start = node.position?.start.offset;
    const end = node.position?.end.offset;
    if (start !== undefined && end !== undefined) {
      if (node.type === 'code' || node.type === 'html' || node.type === 'definition' || node.type === 'thematicBreak')
        blanks.push({ start, end });
      if (node.type === 'heading') {
        const source = markdown.slice(start, end);
        const marks = /^[ \t]*#+[ \t]*/.exec(source)?.[0].length ?? 0;
        blanks.push({ start, end: start + marks });
        const tail = /(?:[ \t]+#+[ \t]*|\n[ \t]*[=-]+[ \t]*)$/.exec(source)?.[0].length ?? 0;
        blanks.push({ start: end - tail, end });
        headings.push({ start: start + marks, end: end - tail });
      }
    }
    if ('children' in node) open.push(...node.children);
  }
  for (const pattern of [INLINE, PREFIX])
    for (const found of markdown.matchAll(pattern))
      blanks.push({ start: found.index, end: found.index + found[0].length });
  headings.sort((a, b) => a.start - b.start);
  return { text: blanked(markdown, blanks), headings };
}

/** The text with spaces over the stretches; line breaks stay. */
function blanked(text: string, stretches: Span[]): string {
  stretches.sort((a, b) => a.start - b.start);
  let result = '';
  let at = 0;
  for (const { start, end } of stretches) {
    if (end <= at) continue;
    const from = Math.max(start, at);
    result += text.slice(at, from) + text.slice(from, end).replace(/[^\r\n]/g, ' ');
    at = end;
  }
  return result + text.slice(at);
}
