/**
 * The outline of a specification section: parts, articles and paragraphs with the numbers people cite.
 *
 * Reads the three-part form, with articles such as `3.4` or `3.04` and paragraphs `A.`, `1.`, `a.`, and the form of
 * federal guides, with articles down to `3.4.1.2` and paragraphs `a.`, `(1)`. Every piece keeps its offsets.
 */
import type { Span } from '../reading/types.js';
import { linesOf } from './lines.js';
import type { Line } from './lines.js';
import { Levels, markerAt } from './markers.js';
import { proseOf } from './prose.js';
import type { Prose } from './prose.js';
import { alignedCells, cellsOf, isHead, isPipeRow, isRule } from './tables.js';

/** A row of a table. */
export interface Row {
  readonly cells: readonly Prose[];
  /** The cells of the row that names the columns, when there is one. */
  readonly head?: readonly string[];
}

export interface OutlineNode {
  readonly type: 'part' | 'article' | 'paragraph' | 'row';
  /** As people cite it: `3.4.B.2`; undefined where the section gives none. */
  readonly number?: string;
  /** Of a part or an article, or the heading above a paragraph. */
  readonly title?: string;
  readonly span: Span;
  readonly prose: Prose;
  readonly row?: Row;
  /** The whole paragraph stands in brackets: the specifier has not decided whether it stays. */
  readonly optional: boolean;
  readonly children: OutlineNode[];
}

export interface Outline {
  /** The section's number and title, where the text gives them. */
  readonly section?: string;
  readonly title?: string;
  readonly nodes: readonly OutlineNode[];
  /** Numbers that stand before more than one paragraph or article. */
  readonly repeated: readonly { readonly number: string; readonly spans: readonly Span[] }[];
  /** Notes to the specifier, which are not read. */
  readonly notes: readonly Span[];
}

/** Headings that Markdown marks as such, as spans of their text. */
export interface OutlineOptions {
  readonly headings?: readonly Span[];
}

const PART = /^\s*\[?PART\s+(\d+|[IVX]+|ONE|TWO|THREE)\b[\s.:-]*(.*)$/i;
const PART_NUMBERS: Readonly<Record<string, string>> = { I: '1', II: '2', III: '3', ONE: '1', TWO: '2', THREE: '3' };
const SECTION = /^\s*(?:document|section)\s+(\d\d ?\d\d ?\d\d(?:\.\d\d)?)(?:\s+\d\d)?\b[\s.:-]*(.*)$/i;
const ARTICLE = /^\s*([[\]\s]*)(\d{1,2}(?:\.\d{1,3})+)\.?(?:\s+-)?\s+(\S.*)$/;
const BULLET = /^\s*[-*•▪◦]\s+(?=\S)/;
const SUBMITTAL_GROUP = /^\s*SD-\d\d\b/;
const BRACKETS = /^\s*[[\]]*\s*/;
/** A line shorter than this was not broken because it was full. */
const FULL_LINE = 50;

class Builder {
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
  #head: readonly string[] | undefined;
  /** Columns of the page at which the head of a table of plain text has its cells. */
  #columns: readonly number[] | undefined;
  #wantsTitle = false;

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
      if (blank && pageBroken && this.#goesOn(line)) blank = false;
      this.#line(line, blank);
      blank = false;
      pageBroken = false;
    });
    this.#close();
    return notes;
  }

  /** After a page break: the sentence before is not finished, and this line begins nothing. */
  #goesOn(line: Line): boolean {
    const last = this.#open?.stretches.at(-1);
    if (last === undefined || /[.;:]\s*$/.test(this.source.slice(last.start, last.end))) return false;
    return /^\s*[a-z\d(]/.test(line.text) && markerAt(line.text.trim()) === undefined;
  }

  #line(line: Line, blank: boolean): void {
    const isHeading = this.headings?.some((span) => span.start >= line.start && span.start < line.end) ?? false;
    const { text } = line;
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
    if (this.#enterArticle(line, blank || isHeading)) return;
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
    this.#article = undefined;
    this.#number = undefined;
    this.#heading = undefined;
    this.#levels.clear();
    this.#stack = [];
  }

  /** An article's number begins with that of its part and is followed by a title; a wrapped value is not one. */
  #enterArticle(line: Line, starts: boolean): boolean {
    const found = ARTICLE.exec(line.text);
    if (found === null) return false;
    const number = found[2] ?? '';
    const rest = found[3] ?? '';
    const belongs = this.#part === undefined || Number(number.split('.')[0]) === Number(this.#part.number);
    if (!belongs || !/^[A-Z[("]/.test(rest) || !starts || /^(?:Pa|L|K|C|F|CFM|PSF|PSI)\b/i.test(rest)) return false;
    this.#close();
    this.#levels.clear();
    this.#stack = [];
    this.#heading = undefined;
    this.#number = number;
    const isTitle = rest.length <= 100 && !/[.;:]\s*$/.test(rest);
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
    const aligned =
      this.#columns === undefined || isPipeRow(line.text) || start !== line.start
        ? undefined
        : alignedCells(line.text, line.start, this.#columns);
    const cells =
      aligned !== undefined && aligned.filter((cell) => cell.end > cell.start).length > 1
        ? aligned
        : cellsOf(line.text, start - line.start, line.start);
    const isSentence = /[.;]\s+[A-Z]/.test(line.text) && !isPipeRow(line.text);
    if (cells.length > 1 && !isSentence) {
      this.#close(true);
      const proses = cells.map((cell) => proseOf(this.source, [cell]));
      const words = proses.map((prose) => prose.text);
      if (isHead(words)) {
        this.#head = words;
        this.#columns = isPipeRow(line.text) ? undefined : cells.map((cell) => cell.start - line.start);
        return;
      }
      const head = this.#head !== undefined && this.#head.length === words.length ? this.#head : undefined;
      const row: Row = { cells: proses, ...(head && { head }) };
      this.#put(this.#node('row', [{ start, end: line.end }], { row, optional }));
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
    const isHeading = open.depth === undefined && open.stretches.length === 1 && isTitle(text);
    this.#close();
    if (isHeading) this.#heading = text;
  }

  /** @param keepHead the table goes on, so what its columns are called is kept */
  #close(keepHead = false): void {
    const open = this.#open;
    this.#open = undefined;
    if (!keepHead) this.#head = this.#columns = undefined;
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

/** A few words without an end, as headings are. */
function isTitle(text: string): boolean {
  return text.length < 60 && /^[A-Z]/.test(text) && !/[.;:,\d\])%]$|:/.test(text);
}

function contentOf(line: Line): Span {
  return { start: line.start + line.indent, end: line.end };
}

function spaced(number: string): string {
  const digits = number.replaceAll(' ', '');
  return `${digits.slice(0, 2)} ${digits.slice(2, 4)} ${digits.slice(4)}`;
}

/** A short line of capitals, as headings are in many sections. */
function isCapitals(text: string): boolean {
  const trimmed = text.trim();
  return (
    trimmed.length <= 90 &&
    /[A-Z]{3}/.test(trimmed) &&
    !/[a-z]/.test(trimmed) &&
    !/[.;:|]$/.test(trimmed) &&
    !/\s{3,}|^SD-/.test(trimmed)
  );
}

/**
 * Reads the outline of a section.
 *
 * @param source the text; for Markdown, with its markup blanked out (same length)
 * @returns the tree; a number that is used twice is named with all its places
 */
export function outlineOf(source: string, { headings }: OutlineOptions = {}): Outline {
  const builder = new Builder(source, headings);
  const notes = builder.read();
  const { section, title, nodes } = builder;
  const repeated = [...builder.numbers]
    .filter(([, spans]) => spans.length > 1)
    .map(([number, spans]) => ({ number, spans }));
  return { ...(section && { section }), ...(title && { title }), nodes, repeated, notes };
}

/** The words under which the children of a node stand: its title, or a paragraph that only introduces them. */
function titleOf({ type, title, prose }: OutlineNode): string | undefined {
  if (type !== 'paragraph') return title;
  const introduction = /^(.{1,100}):$/.exec(prose.text)?.[1];
  return introduction ?? (isTitle(prose.text) ? prose.text : undefined);
}

/** Every node with the titles above it, outermost first, in the order of the text. */
export function* walk(
  nodes: readonly OutlineNode[],
  above: readonly string[] = [],
): Generator<{ readonly node: OutlineNode; readonly titles: readonly string[] }> {
  for (const node of nodes) {
    const heading = node.type === 'paragraph' || node.type === 'row' ? node.title : undefined;
    yield { node, titles: heading === undefined ? above : [...above, heading] };
    const title = titleOf(node);
    yield* walk(node.children, title === undefined ? above : [...above, title]);
  }
}
