/**
 * The outline of a specification section: parts, articles and paragraphs with the numbers people cite.
 *
 * Reads the three-part form, with articles such as `3.4` or `3.04` and paragraphs `A.`, `1.`, `a.`, and the form of
 * federal guides, with articles down to `3.4.1.2` and paragraphs `a.`, `(1)`. Every piece keeps its offsets.
 */
import type { Span } from '../reading/types.js';
import { isTitle } from './line-kinds.js';
import { Builder } from './outline-builder.js';
import type { Prose } from './prose.js';

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
