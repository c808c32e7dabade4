/** Small builders for an HTML tree, and questions asked of one. */
import type { Element, ElementContent, Nodes, Properties, RootContent, Text } from 'hast';
import type { Raw } from 'mdast-util-to-hast';

export function element(tagName: string, properties: Properties, ...children: ElementContent[]): Element {
  return { type: 'element', tagName, properties, children };
}

export function text(value: string): Text {
  return { type: 'text', value };
}

/** Markup that this program wrote itself, such as a drawing. Never text of a document. */
export function markup(value: string): Raw {
  return { type: 'raw', value };
}

export function link(href: string, ...children: ElementContent[]): Element {
  return element('a', { href }, ...children);
}

export function isElement(node: Nodes | undefined, tagName: string): node is Element {
  return node?.type === 'element' && node.tagName === tagName;
}

/** All text of a node, in order. */
export function textOf(node: Nodes): string {
  if (node.type === 'text') return node.value;
  return 'children' in node ? node.children.map(textOf).join('') : '';
}

/** A heading and everything up to the next one of its rank. */
export interface Chapter {
  readonly heading: Element;
  readonly body: readonly ElementContent[];
}

/** Cuts a flat run of blocks before each heading of one rank. */
export function cutAt(
  tagName: 'h2' | 'h3',
  nodes: readonly RootContent[],
): { before: ElementContent[]; chapters: Chapter[] } {
  const before: ElementContent[] = [];
  const chapters: { heading: Element; body: ElementContent[] }[] = [];
  for (const node of nodes) {
    if (node.type === 'doctype') continue;
    if (isElement(node, tagName)) chapters.push({ heading: node, body: [] });
    else (chapters.at(-1)?.body ?? before).push(node);
  }
  return { before, chapters };
}
