/**
 * A rule's page (simple Markdown) as plain text: headings, paragraphs, lists, tables and fenced examples. Made for
 * pages of this kind, not for all of Markdown.
 */
import { visible } from './escape.js';
import { wrap } from './text-width.js';

/**
 * @param page Markdown text
 * @param cells width to wrap paragraphs and list items at; `Infinity` keeps each on one line
 * @returns lines without trailing spaces, ending with a line break
 */
export function plainPage(page: string, cells: number): string {
  const out: string[] = [];
  let paragraph: string[] = [];
  let fence: string | undefined;

  const flush = (): void => {
    if (paragraph.length > 0) out.push(...flow(paragraph.join(' '), cells));
    paragraph = [];
  };
  for (const raw of page.split(/\r\n|\r|\n/)) {
    const mark = /^ {0,3}(`{3,}|~{3,})/.exec(raw)?.[1];
    if (fence !== undefined) {
      if (mark !== undefined && mark.startsWith(fence) && raw.trim() === mark) fence = undefined;
      // Examples are code: kept letter by letter, set in from the margin.
      else out.push(raw.trim() === '' ? '' : `    ${visible(raw.replace(/\t/g, '  '))}`.trimEnd());
    } else if (mark !== undefined) {
      flush();
      fence = mark;
    } else if (raw.trim() === '') {
      flush();
      if (out.length > 0 && out.at(-1) !== '') out.push('');
    } else if (/^#{1,6}\s/.test(raw)) {
      flush();
      // Capitals tell a heading from a short paragraph where there is neither size nor weight.
      out.push(...wrap(inline(raw.replace(/^#+\s+/, '').replace(/\s+#+\s*$/, '')).toUpperCase(), cells));
    } else if (/^\s*\|/.test(raw)) {
      flush();
      if (!/^[\s|:-]+$/.test(raw)) out.push(tableRow(raw));
    } else {
      // An item starts a block of its own; a line that follows it belongs to it.
      if (/^\s*([-*+]|\d+[.)])\s/.test(raw)) flush();
      paragraph.push(paragraph.length === 0 ? raw.trimEnd() : raw.trim());
    }
  }
  flush();
  return `${out.join('\n').trimEnd()}\n`;
}

/** One paragraph or item, wrapped under its own first word. */
function flow(text: string, cells: number): string[] {
  const lead = /^(\s*)(?:([-*+]|\d+[.)])\s+)?/.exec(text);
  const marker = lead?.[2];
  const indent = marker === undefined ? '' : (lead?.[1] ?? '');
  const bullet = marker === undefined ? '' : `${/\d/.test(marker) ? marker : '-'} `;
  const hanging = ' '.repeat(indent.length + bullet.length);
  const lines = wrap(inline(text.slice(lead?.[0].length ?? 0)), Math.max(20, cells - hanging.length));
  return lines.map((line, index) => (index === 0 ? indent + bullet : hanging) + line);
}

function tableRow(raw: string): string {
  const cells = raw
    .trim()
    .replace(/^\|/, '')
    .replace(/\|$/, '')
    .split(/(?<!\\)\|/);
  return cells
    .map((cell) => inline(cell.trim()).replace(/\\\|/g, '|'))
    .join('   ')
    .trimEnd();
}

/** Text without the marks of emphasis, code and links; an address stays, in parentheses. Code keeps its letters. */
function inline(text: string): string {
  let out = '';
  let from = 0;
  // A code span ends at as many backticks as it began with.
  for (const span of text.matchAll(/(?<!`)(`+)(?!`)(.+?)(?<!`)\1(?!`)/g)) {
    out += prose(text.slice(from, span.index)) + visible((span[2] ?? '').trim());
    from = span.index + span[0].length;
  }
  return out + prose(text.slice(from));
}

function prose(text: string): string {
  return visible(text.replace(/\t/g, ' '))
    .replace(/!?\[([^\]]*)\]\(([^)\s]*)[^)]*\)/g, (_, label: string, target: string) =>
      /^https?:/.test(target) && target !== label ? `${label} (${target})` : label,
    )
    .replace(/<(https?:[^>\s]+)>/g, '$1')
    .replace(/(\*\*|__)(?=\S)(.*?\S)\1/g, '$2')
    .replace(/(^|[\s(])([*_])(?=\S)(.*?\S)\2(?=$|[\s).,;:!?])/g, '$1$3')
    .replace(/\\([!-/:-@[-`{-~])/g, (whole, mark: string) => (mark === '|' ? whole : mark));
}
