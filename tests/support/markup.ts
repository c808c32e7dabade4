/** A strict reader of HTML as this program writes it: every tag closed, every attribute quoted, no stray bracket. */

export interface Tag {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** Names of the open elements around it, outermost first. */
  readonly inside: readonly string[];
}

const VOID = new Set(['meta', 'br', 'link', 'img', 'input', 'hr']);
const TAG = /<(\/?)([A-Za-z][\w-]*)((?:\s+[^\s"'<>/=]+(?:="[^"<]*")?)*)\s*(\/?)>/y;
/** Elements that may not stand inside a paragraph, a heading or a link. @see HTML Standard, content models */
const BLOCKS = new Set([
  'p',
  'div',
  'ul',
  'ol',
  'dl',
  'table',
  'section',
  'article',
  'details',
  'h1',
  'h2',
  'h3',
  'nav',
]);

function unescape(text: string): string {
  return text
    .replace(/&#x([0-9a-f]+);/gi, (_, hex: string) => String.fromCodePoint(parseInt(hex, 16)))
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&amp;/g, '&');
}

/**
 * Reads a page.
 *
 * @throws Error that names the first place where it is not well formed
 */
export function readMarkup(page: string): { tags: Tag[]; text: string } {
  const tags: Tag[] = [];
  const open: string[] = [];
  let text = '';
  let at = page.startsWith('<!doctype html>') ? '<!doctype html>'.length : 0;
  const fail = (why: string): never => {
    throw new Error(`${why} at ${at}: ${page.slice(Math.max(0, at - 60), at + 60)}`);
  };
  while (at < page.length) {
    if (open.at(-1) === 'style') at = page.indexOf('</style>', at);
    if (page[at] !== '<') {
      const end = page.indexOf('<', at);
      const run = page.slice(at, end < 0 ? undefined : end);
      text += unescape(run);
      at += run.length;
      continue;
    }
    TAG.lastIndex = at;
    const found = TAG.exec(page);
    if (found === null) return fail('a bracket that opens no tag');
    const [whole, closing, name = '', list = '', selfClosing] = found;
    if (closing === '/') {
      if (open.at(-1) !== name) fail(`</${name}> closes <${open.at(-1) ?? 'nothing'}>`);
      open.pop();
    } else {
      if (BLOCKS.has(name) && open.some((o) => o === 'p' || o === 'a')) fail(`<${name}> inside <p> or <a>`);
      if (name === 'a' && open.includes('a')) fail('a link inside a link');
      const attributes: Record<string, string> = {};
      for (const [, key = '', value = ''] of list.matchAll(/\s+([^\s=]+)(?:="([^"]*)")?/g)) {
        if (key in attributes) fail(`the attribute ${key} twice`);
        attributes[key] = unescape(value);
      }
      tags.push({ name, attributes, inside: [...open] });
      if (!VOID.has(name) && selfClosing !== '/') open.push(name);
    }
    at += whole.length;
  }
  if (open.length > 0) fail(`<${open.join('> <')}> left open`);
  return { tags, text };
}
