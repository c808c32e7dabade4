/**
 * Small builders for a Markdown tree. Text that came from a document enters the tree only through `words` and
 * `code`, so nothing in it can start a heading, break a cell or become HTML.
 */
import type {
  BlockContent,
  Heading,
  InlineCode,
  List,
  ListItem,
  Paragraph,
  PhrasingContent,
  Strong,
  Table,
  TableCell,
  Text,
} from 'mdast';
import { oneLine } from './escape.js';

export function words(text: string): Text {
  return { type: 'text', value: oneLine(text) };
}

/** Our own text with its spaces kept: what stands between two parts. */
export function joint(value: string): Text {
  return { type: 'text', value };
}

export function strong(text: string): Strong {
  return { type: 'strong', children: [words(text)] };
}

export function code(text: string): InlineCode {
  // An empty code span would be written as a lone pair of backticks.
  return { type: 'inlineCode', value: oneLine(text) || ' ' };
}

export function heading(depth: 1 | 2 | 3, ...children: PhrasingContent[]): Heading {
  return { type: 'heading', depth, children };
}

export function paragraph(...children: PhrasingContent[]): Paragraph {
  return { type: 'paragraph', children };
}

export function item(...children: PhrasingContent[]): ListItem {
  return { type: 'listItem', spread: false, children: [paragraph(...children)] };
}

export function list(items: ListItem[], ordered = false): List {
  return { type: 'list', ordered, spread: false, children: items };
}

/** A list item that holds further blocks under its first line. */
export function itemWith(first: PhrasingContent[], ...blocks: BlockContent[]): ListItem {
  return { type: 'listItem', spread: false, children: [paragraph(...first), ...blocks] };
}

export function cell(...children: PhrasingContent[]): TableCell {
  return { type: 'tableCell', children };
}

/** @param rows the first one is the head; all have as many cells */
export function table(rows: readonly TableCell[][]): Table {
  return { type: 'table', align: null, children: rows.map((children) => ({ type: 'tableRow', children })) };
}
