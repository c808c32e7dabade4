/** Builds the outline of a section line by line: keeps what is open, and closes it where something else begins. */
import type { Span } from '../reading/types.js';
import {
  articleAt,
  BRACKETS,
  BULLET,
  contentOf,
  FULL_LINE,
  goesOn,
  isCapitals,
  isTitle as isShortTitle,
  PART,
  PART_NUMBERS,
  SECTION,
  spaced,
  SUBMITTAL_GROUP,
} from './line-kinds.js';
import { linesOf } from './lines.js';
import type { Line } from './lines.js';
import { Levels, markerAt } from './markers.js';
import type { OutlineNode, Row } from './outline.js';
import { proseOf } from './prose.js';
import { TableReader } from './table-reader.js';
import { isPipeRow, isRule } from './tables.js';

/** Reads lines one after the other; `nodes`, `numbers`, `section` and `title` hold what was read. */
export class Builder {
  readonly nodes: OutlineNode[] = [];
  readonly numbers = new Map<string, Span[]>();
  section: string | undefined;
  title: string | undefined;
  #levels = new Levels();
  #part: { node: OutlineNode; number: string } | undefined;
  #article: { node: OutlineNode; number: string | undefined } | undefined;
  /** The paragraph whose mark was read last, and the number it has. */
  #number: string | undefined;
  #heading: string | undefined;
  #open: { stretches: Span[]; optional: boolean; depth?: number } | undefined;
  /** The numbered paragraphs that are open, outermost first. */
  #stack: OutlineNode[] = [];
  readonly #table = new TableReader();
  #wantsTitle = false;
  /** The line before was the heading of a part. */
  #underPart = false;

  constructor(
    private readonly source: string,
    private readonly headings: readonly Span[] | undefined,
  ) {}

  read(): readonly Span[] {
    const { lines, skipped, pageBreaks, notes } = linesOf(this.source);
    let blank = true;
    let pageBroken = false;
    lines.forEach((line, at) => {
      if (skipped.has(at)) {
        if (pageBreaks.has(at)) pageBroken = true;
        return;
      }
      if (line.text.trim() === '') {
        blank = true;
        return;
      }
      // A page header may stand inside of a sentence, with the blank lines around it.
      if (blank && pageBroken && this.#open !== undefined && goesOn(this.#lastLine(), line)) blank = false;
      this.#line(line, blank);
      blank = false;
      pageBroken = false;
    });
    this.#close();
    return notes;
  }

  #line(line: Line, blank: boolean): void {
    const isHeading = this.headings?.some((span) => span.start >= line.start && span.start < line.end) ?? false;
    const { text } = line;
    const underPart = this.#underPart;
    this.#underPart = false;
    if (blank || isHeading) this.#closeText();
    const section = SECTION.exec(text);
    if (section !== null && this.#part === undefined && (blank || isHeading)) {
      this.section ??= spaced(section[1] ?? '');
      const title = (section[2] ?? '').trim();
      if (title !== '') this.title ??= title;
      else this.#wantsTitle = this.title === undefined;
      return;
    }
    const part = PART.exec(text);
    if (part !== null && (blank || isHeading || /^\s*PART\b/.test(text))) return this.#enterPart(line, part);
    if (this.#wantsTitle && this.#part === undefined) {
      this.#wantsTitle = false;
      this.title = text.trim();
      return;
    }
    // Right under the heading of a part an article needs no blank line before it.
    if (this.#enterArticle(line, blank || isHeading || underPart)) return;
    if (isHeading || (blank && isCapitals(text))) return this.#unnumbered(line, isHeading);
    if (this.#mark(line, blank)) return;
    this.#plain(line, blank);
  }

  #enterPart(line: Line, part: RegExpExecArray): void {
    this.#close();
    const word = (part[1] ?? '').toUpperCase();
    const number = PART_NUMBERS[word] ?? word;
    const node = this.#node('part', [contentOf(line)], { number, title: (part[2] ?? '').trim() });
    this.nodes.push(node);
    this.#part = { node, number };
    this.#underPart = true;
    this.#article = undefined;
    this.#number = undefined;
    this.#heading = undefined;
    this.#levels.clear();
    this.#stack = [];
  }

  /** An article's number begins with that of its part and is followed by a title; a wrapped value is not one. */
  #enterArticle(line: Line, starts: boolean): boolean {
    const found = starts ? articleAt(line.text, this.#part?.number) : undefined;
    if (found === undefined) return false;
    const { number, rest, isTitle } = found;
    this.#close();
    this.#levels.clear();
    this.#stack = [];
    this.#heading = undefined;
    this.#number = number;
    const node = this.#node('article', [contentOf(line)], { number, ...(isTitle && { title: rest.trim() }) });
    (this.#part?.node.children ?? this.nodes).push(node);
    this.#article = { node, number };
    this.#remember(number, node.span);
    if (!isTitle) {
      const start = line.end - rest.length;
      this.#open = { stretches: [{ start, end: line.end }], optional: false };
    }
    return true;
  }

  /** A heading without a number. In capitals it begins an article, whose number nobody has given. */
  #unnumbered(line: Line, isHeading: boolean): void {
    this.#close();
    const title = line.text.replace(/^[[\]\s]+/, '').trim();
    if (isCapitals(line.text) && this.#part !== undefined) {
      this.#levels.clear();
      this.#stack = [];
      this.#number = undefined;
      this.#heading = undefined;
      const node = this.#node('article', [contentOf(line)], { title });
      this.#part.node.children.push(node);
      this.#article = { node, number: undefined };
    } else {
      if (isHeading && this.#part === undefined) this.title ??= title;
      this.#heading = title;
    }
  }

  #mark(line: Line, blank: boolean): boolean {
    const brackets = BRACKETS.exec(line.text)?.[0] ?? '';
    const marker = markerAt(line.text.slice(brackets.length));
    if (marker === undefined) return false;
    const inside = !blank && this.#open !== undefined && !this.#finished();
    const values = this.#levels.enter(marker, inside);
    if (values === undefined) return false;
    this.#close();
    const article = this.#article?.number;
    this.#number = article === undefined ? undefined : [article, ...values].join('.');
    const start = line.start + brackets.length + marker.length;
    const mark = { start: line.start + brackets.length, end: start };
    if (this.#number !== undefined) this.#remember(this.#number, mark);
    const optional = brackets.trimEnd().endsWith('[');
    this.#stack.length = Math.min(this.#stack.length, values.length - 1);
    if (start < line.end) this.#textOrRow(line, start, optional, values.length);
    else this.#open = { stretches: [], optional, depth: values.length };
    return true;
  }

  #plain(line: Line, blank: boolean): void {
    if (isRule(line.text)) return this.#close(true);
    const bullet = BULLET.exec(line.text)?.[0].length ?? 0;
    const isListItem = /[\];]\s*$|; [A-Z]\b/.test(this.#lastLine()) && /^\s*[A-Z]/.test(line.text);
    if (bullet > 0 && (blank || this.#open === undefined || this.#finished() || this.#isShort())) this.#close(true);
    else if (isListItem || SUBMITTAL_GROUP.test(line.text) || isPipeRow(line.text)) this.#close(true);
    else if (this.#open !== undefined && this.#isShort() && /^\s*[[("]*[A-Z]/.test(line.text)) this.#close(true);
    this.#textOrRow(line, line.start + bullet, false);
  }

  /** Puts the rest of a line where it belongs: a table's row, a new paragraph or the open one. */
  #textOrRow(line: Line, start: number, optional: boolean, depth?: number): void {
    const found = this.#table.read(this.source, line, start);
    if (found !== undefined) {
      this.#close(true);
      if (found !== 'head') this.#put(this.#node('row', [{ start, end: line.end }], { row: found, optional }));
      return;
    }
    const stretch = { start, end: line.end };
    if (this.#open === undefined)
      this.#open = { stretches: [stretch], optional, ...(depth !== undefined && { depth }) };
    else this.#open.stretches.push(stretch);
  }

  #lastLine(): string {
    const last = this.#open?.stretches.at(-1);
    return last === undefined ? '' : this.source.slice(last.start, last.end);
  }

  #finished(): boolean {
    return /[.;:\])]\s*$/.test(this.#lastLine());
  }

  #isShort(): boolean {
    return this.#lastLine().trim().length < FULL_LINE;
  }

  /** Ends the open text at a blank line; a short line without an end is the heading of what follows. */
  #closeText(): void {
    const open = this.#open;
    if (open === undefined) return;
    const text = proseOf(this.source, open.stretches).text;
    const isHeading = open.depth === undefined && open.stretches.length === 1 && isShortTitle(text);
    this.#close();
    if (isHeading) this.#heading = text;
  }

  /** @param keepHead the table goes on, so what its columns are called is kept */
  #close(keepHead = false): void {
    const open = this.#open;
    this.#open = undefined;
    if (!keepHead) this.#table.end();
    if (open === undefined || open.stretches.length === 0) return;
    const node = this.#node('paragraph', open.stretches, { optional: open.optional });
    this.#put(node);
    if (open.depth !== undefined) this.#stack.push(node);
  }

  #put(node: OutlineNode): void {
    const above = this.#stack.at(-1) ?? this.#article?.node ?? this.#part?.node;
    (above?.children ?? this.nodes).push(node);
  }

  #node(
    type: OutlineNode['type'],
    stretches: readonly Span[],
    given: { number?: string; title?: string; row?: Row; optional?: boolean },
  ): OutlineNode {
    const number = given.number ?? (type === 'part' || type === 'article' ? undefined : this.#number);
    const title = given.title ?? (type === 'paragraph' || type === 'row' ? this.#heading : undefined);
    return {
      type,
      ...(number !== undefined && { number }),
      ...(title !== undefined && { title }),
      ...(given.row && { row: given.row }),
      span: { start: stretches[0]?.start ?? 0, end: stretches.at(-1)?.end ?? 0 },
      prose: proseOf(this.source, stretches),
      optional: given.optional ?? false,
      children: [],
    };
  }

  #remember(number: string, span: Span): void {
    const known = this.numbers.get(number);
    if (known === undefined) this.numbers.set(number, [span]);
    else known.push(span);
  }
}
