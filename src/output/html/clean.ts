/** From the Markdown tree of the report to a tree of harmless HTML. */
import type { Element, ElementContent, RootContent } from 'hast';
import { sanitize, type Schema } from 'hast-util-sanitize';
import type { Root as MarkdownRoot, RootContent as MarkdownContent } from 'mdast';
import { toHast } from 'mdast-util-to-hast';

/** What a report is made of. All else is dropped: no classes, no ids, no images, no addresses but those of the web. */
const SCHEMA: Schema = {
  tagNames: [
    'h1',
    'h2',
    'h3',
    'p',
    'strong',
    'code',
    'ul',
    'ol',
    'li',
    'table',
    'thead',
    'tbody',
    'tr',
    'th',
    'td',
    'a',
  ],
  attributes: { a: ['href'] },
  protocols: { href: ['http', 'https'] },
  ancestors: { thead: ['table'], tbody: ['table'], tr: ['table'], th: ['table'], td: ['table'] },
  strip: ['script', 'style'],
};

/** A date breaks at its hyphens unless it is told not to. */
function isDate({ children: [only, ...more] }: Element): boolean {
  return more.length === 0 && only?.type === 'text' && /^\d{4}-\d\d-\d\d$/.test(only.value);
}

function finish(node: ElementContent): ElementContent {
  if (node.type !== 'element') return node;
  const children = node.children.map(finish);
  if (node.tagName === 'th') return { ...node, properties: { scope: 'col' }, children };
  if (node.tagName === 'td' && isDate(node)) return { ...node, properties: { className: ['date'] }, children };
  // A page somebody else keeps is not told who reads this report.
  if (node.tagName === 'a')
    return { ...node, properties: { ...node.properties, rel: ['noopener', 'noreferrer'] }, children };
  return { ...node, children };
}

/** Blocks of HTML without the line breaks between them; every table head says that it heads a column. */
export function cleanHtml(tree: MarkdownRoot | readonly MarkdownContent[]): ElementContent[] {
  const root: MarkdownRoot = 'type' in tree ? tree : { type: 'root', children: [...tree] };
  const safe = sanitize(toHast(root), SCHEMA);
  const blocks: readonly RootContent[] = safe.type === 'root' ? safe.children : [];
  return blocks.flatMap((node) => (node.type === 'element' ? [finish(node)] : []));
}
