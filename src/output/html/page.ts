/** The page around the report: head, policy, landmarks. */
import { createHash } from 'node:crypto';
import type { Element, ElementContent } from 'hast';
import { toHtml } from 'hast-util-to-html';
import type { DetailPart } from './detail.js';
import { element, text } from './hast.js';
import { choices } from './choices.js';
import { STYLE, running } from './style.js';

export interface Page {
  readonly title: string;
  /** Suggested review action, for the head of each printed page. */
  readonly action: string;
  readonly version: string;
  readonly parts: readonly DetailPart[];
  readonly header: readonly ElementContent[];
  /** Between header and main; absent where it stands in main. */
  readonly overview?: Element;
  /** Begins with a letter: on paper the single results are left to the screen. */
  readonly isLetter?: boolean;
  readonly main: readonly ElementContent[];
  readonly footer: readonly ElementContent[];
}

/**
 * Nothing is fetched and nothing runs; the one style sheet is known by its digest.
 *
 * @see W3C Content Security Policy Level 3, sections 4.2 (hash-source) and 6.1.3 (default-src)
 */
function policy(style: string): string {
  const digest = createHash('sha256').update(style, 'utf8').digest('base64');
  return `default-src 'none'; style-src 'sha256-${digest}'; img-src data:; base-uri 'none'; form-action 'none'`;
}

const html = (...nodes: readonly ElementContent[]): string =>
  toHtml(
    { type: 'root', children: [...nodes] },
    { allowDangerousHtml: true, characterReferences: { useNamedReferences: true } },
  );

/** One file: everything the page needs stands in it. */
export function page({ title, action, version, parts, header, overview, isLetter, main, footer }: Page): string {
  const style = `${STYLE}${running(title, action, version)}${choices(parts)}`;
  const head = [
    '<meta charset="utf-8">',
    html(element('meta', { httpEquiv: ['Content-Security-Policy'], content: policy(style) })),
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="referrer" content="no-referrer">',
    '<meta name="color-scheme" content="light">',
    html(element('title', {}, text(`${title}: ${action}`))),
    // Written by this program alone; a digest allows no change to it, not even of a space.
    `<style>${style}</style>`,
  ];
  const body = [
    html(element('a', { href: '#main', className: ['skip', 'first'] }, text('To the findings'))),
    html(element('header', {}, ...header)),
    ...(overview === undefined ? [] : [html(overview)]),
    html(
      element('main', { id: 'main', tabIndex: -1, ...(isLetter === true ? { className: ['letter'] } : {}) }, ...main),
    ),
    html(element('footer', {}, ...footer, element('p', { className: ['facts'] }, text(`Lapwright ${version}`)))),
  ];
  return `<!doctype html>\n<html lang="en">\n<head>\n${head.join('\n')}\n</head>\n<body>\n${body.join('\n')}\n</body>\n</html>\n`;
}
