/**
 * The numbered paragraphs of a specification section written in Markdown, as people cite them: `3.4.B.2`.
 *
 * Parts and articles are headings (`Part 3 - Execution`, `### 3.4 Openings`). Below an article the marks of the
 * three-part section format give the level, whether Markdown reads them as a list or not: `A.`, `1.`, `a.`, `1)`, `a)`.
 *
 * Loaded only with a Markdown file.
 */
import type { Heading, List, ListItem, Nodes, Root, Table } from 'mdast';
import type { Span } from './types.js';

/** A paragraph with the number it is cited by. */
export interface NumberedParagraph {
  /** `3.4`, `3.4.B.2`. */
  readonly number: string;
  /** Where its own mark stands in the file. */
  readonly span: Span;
}

/** A table with the paragraph it stands under. */
export interface PlacedTable {
  readonly table: Table;
  readonly paragraph?: NumberedParagraph;
}

/** The text of one section. A file without section headings is one. */
export interface SectionOutline {
  /** From the heading `Section 07 27 26 - Title`. */
  readonly section?: { readonly number: string; readonly title: string; readonly span: Span };
  /** Offset at which it begins; it ends where the next one begins. */
  readonly start: number;
  /** In the order of the text; empty when the text is no section in parts and articles. */
  readonly paragraphs: readonly NumberedParagraph[];
  readonly tables: readonly PlacedTable[];
}

const SECTION = /^section\s+(\d{2}[ .-]?\d{2}[ .-]?\d{2}(?:\.\d{2})?)\b\s*[-\u2013\u2014:]?\s*(.*)$/i;
const PART = /^part\s+\d/i;
const ARTICLE = /^(\d{1,2}\.\d{1,2}(?:\.\d{1,2}){0,3})\.?(?=\s)/;
const MARK = /^([A-Z]{1,2}|[a-z]|\d{1,2})([.)])(?=\s)/;

/** Level below the article of a mark: `A.` `1.` `a.` `1)` `a)`. */
function levelOf(mark: string, close: string): number {
  if (close === ')') return /\d/.test(mark) ? 4 : 5;
  return /\d/.test(mark) ? 2 : mark === mark.toUpperCase() ? 1 : 3;
}

interface OpenOutline {
  section?: NonNullable<SectionOutline['section']>;
  readonly start: number;
  readonly paragraphs: NumberedParagraph[];
  readonly tables: PlacedTable[];
}

/** The sections of a Markdown text, in its order. */
export function outlinesOf(tree: Root, markdown: string): SectionOutline[] {
  return new Reader(markdown).read(tree);
}

class Reader {
  readonly #outlines: OpenOutline[] = [];
  #now: OpenOutline;
  #article: string | undefined;
  #marks: (string | undefined)[] = [];

  constructor(private readonly markdown: string) {
    this.#now = this.#begin(0);
  }

  read(tree: Root): SectionOutline[] {
    for (const node of tree.children) this.#node(node);
    return this.#outlines;
  }

  #begin(start: number): OpenOutline {
    const outline = { start, paragraphs: [], tables: [] };
    this.#outlines.push(outline);
    this.#article = undefined;
    this.#marks = [];
    return outline;
  }

  /** Quoted text and notes have no numbers of the section, so block quotes are passed over. */
  #node(node: Nodes): void {
    const { start, end } = offsets(node);
    switch (node.type) {
      case 'heading':
        return this.#heading(node);
      case 'paragraph':
        return this.#lines(start, end);
      case 'code':
        // An indented block is text that was set in; a fenced one is a document or an example.
        if (!/^\s*[`~]{3}/.test(this.markdown.slice(start, end))) this.#lines(start, end);
        return;
      case 'list':
        return this.#list(node);
      case 'table': {
        const paragraph = this.#now.paragraphs.at(-1);
        this.#now.tables.push({ table: node, ...(paragraph && this.#article !== undefined && { paragraph }) });
        return;
      }
      default:
        return;
    }
  }

  #heading(node: Heading): void {
    const first = node.children[0];
    const { start } = first === undefined ? offsets(node) : offsets(first);
    const text = this.#line(start);
    const section = SECTION.exec(text);
    if (section) {
      const number = (section[1] ?? '')
        .replace(/[.-]/g, (c, at: number) => (at > 8 ? c : ' '))
        .replace(/^(\d\d) ?(\d\d) ?(\d\d)/, '$1 $2 $3');
      const title = (section[2] ?? '').replace(/\s+#+\s*$/, '').trim();
      // What stands before the first section heading belongs to that section.
      if (this.#now.section || this.#now.paragraphs.length > 0) this.#now = this.#begin(offsets(node).start);
      this.#now.section = {
        number,
        title: title || `Section ${number}`,
        span: { start, end: start + text.trimEnd().length },
      };
      return;
    }
    if (PART.test(text)) {
      this.#article = undefined;
      this.#marks = [];
      return;
    }
    const article = ARTICLE.exec(text)?.[1];
    if (article !== undefined) {
      this.#article = article;
      this.#marks = [];
      this.#now.paragraphs.push({ number: article, span: { start, end: start + article.length } });
    } else this.#mark(start);
  }

  /** Lines of running text; any of them may begin a paragraph of the section. */
  #lines(start: number, end: number): void {
    for (let at = start; at < end;) {
      this.#mark(at);
      const next = this.markdown.indexOf('\n', at);
      at = next === -1 ? end : next + 1;
    }
  }

  /** Takes up the paragraph whose mark stands at an offset, if one does. */
  #mark(at: number): void {
    let start = at;
    while (this.markdown[start] === ' ' || this.markdown[start] === '\t') start += 1;
    const mark = MARK.exec(this.markdown.slice(start, start + 5));
    if (mark) this.#paragraph(mark[1] ?? '', mark[2] ?? '.', start);
  }

  #paragraph(mark: string, close: string, start: number): void {
    if (this.#article === undefined) return;
    const level = levelOf(mark, close);
    this.#marks = this.#marks.slice(0, level);
    this.#marks[level] = mark;
    const number = [this.#article, ...this.#marks.filter((m) => m !== undefined)].join('.');
    this.#now.paragraphs.push({ number, span: { start, end: start + mark.length } });
  }

  #list(list: List): void {
    const written = list.children.map((item) => this.#numberOf(item));
    // `1. 1. 1.` is how many write a list that Markdown is to number.
    const counted = written.length > 1 && written.every((w) => w?.[1] === written[0]?.[1]);
    for (const [index, item] of list.children.entries()) {
      const number = written[index];
      const outer = this.#marks;
      if (list.ordered === true && number) {
        const mark = counted ? String(Number(number[1]) + index) : (number[1] ?? '');
        this.#paragraph(mark, number[2] ?? '.', offsets(item).start);
      }
      const inner = this.#marks;
      for (const child of item.children) {
        // The item's own text begins behind its mark, which is taken up already.
        if (child === item.children[0] && child.type === 'paragraph')
          this.#lines(this.#secondLine(child), offsets(child).end);
        else this.#node(child);
      }
      this.#marks = list.ordered === true ? inner : outer;
    }
  }

  #numberOf(item: ListItem): RegExpExecArray | null {
    const { start } = offsets(item);
    return /^(\d{1,9})([.)])/.exec(this.markdown.slice(start, start + 11));
  }

  #secondLine(node: Nodes): number {
    const { start, end } = offsets(node);
    const line = this.markdown.indexOf('\n', start);
    return line === -1 || line > end ? end : line + 1;
  }

  #line(start: number): string {
    const end = this.markdown.indexOf('\n', start);
    return this.markdown.slice(start, end === -1 ? undefined : end);
  }
}

function offsets(node: Nodes): Span {
  return { start: node.position?.start.offset ?? 0, end: node.position?.end.offset ?? 0 };
}
