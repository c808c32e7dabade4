import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sampleReview, HOSTILE_TITLE } from '../../../tests/golden/output/sample-review.js';
import { readMarkup } from '../../../tests/support/markup.js';
import type { Detail } from '../../model/types.js';
import { CAUTION, type Review } from '../report.js';
import { printHtml } from './report.js';
import { STYLE } from './style.js';

const none = (): undefined => undefined;
const page = printHtml(sampleReview, none);
const { tags, text } = readMarkup(page);
const named = (name: string) => tags.filter((t) => t.name === name);

/** The sample with one text everywhere a document can put one. */
function filledWith(hostile: string): Review {
  return {
    ...sampleReview,
    details: sampleReview.details.map((detail) => ({ ...detail, id: detail.id, title: hostile })),
    rules: sampleReview.rules.map((rule) => ({ ...rule, title: hostile, summary: hostile, caution: hostile })),
    notifications: [{ level: 'warning', message: hostile }],
    results: sampleReview.results.map((result) => ({
      ...result,
      message: hostile,
      ...(result.required === undefined ? {} : { required: hostile, provided: hostile, correct: hostile }),
      ...(result.missing === undefined ? {} : { missing: [hostile] }),
      ...(result.sources === undefined
        ? {}
        : { sources: result.sources.map((s) => ({ ...s, citation: hostile, url: hostile })) }),
      ...(result.flow === undefined ? {} : { flow: result.flow.map((s) => ({ ...s, message: hostile })) }),
    })),
  };
}

/** Names and attribute names of all tags: what the page is made of, whatever its texts say. */
function shape(html: string): string[] {
  return readMarkup(html).tags.map((t) => [t.name, ...Object.keys(t.attributes)].join(' '));
}

describe('the HTML report', () => {
  test('is well formed, and every name in it stands once', () => {
    const ids = tags.flatMap((t) => t.attributes['id'] ?? []);
    expect(ids.length).toBeGreaterThan(10);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('has a target for every address inside the page', () => {
    const ids = new Set(tags.map((t) => t.attributes['id']));
    const addresses = tags.flatMap((t) => t.attributes['href'] ?? []).filter((h) => h.startsWith('#'));
    expect(addresses.length).toBeGreaterThan(5);
    for (const address of addresses) expect(ids, address).toContain(address.slice(1));
  });

  test('says what the Markdown report says: action, findings, facts, path, open questions, caution', () => {
    for (const words of [
      'Suggested action: Revise and resubmit',
      'Water that reaches the pan cannot leave it: the sill flange is sealed.',
      'Leave the sill flange open',
      'It falls into the pan and runs outward.',
      'openings[0].unit.waterTest',
      'Mock-up M-1 passed its water test with this width',
      'IRC R703.4 (code; from memory, confirm)',
      'Water held in a wall rots framing that carries load.',
      'The pan is dammed at both ends.',
      CAUTION,
    ])
      expect(text).toContain(words);
  });

  test('keeps the cells of its tables', () => {
    const row = /<tr>\s*<td>Errors<\/td>\s*<td>2<\/td>\s*<td>2<\/td>\s*<\/tr>/;
    expect(page).toMatch(row);
    for (const th of named('th')) expect(['col', 'row']).toContain(th.attributes['scope']);
  });

  test('numbers headings without a gap and gives each landmark once', () => {
    const levels = tags.filter((t) => /^h[1-6]$/.test(t.name)).map((t) => Number(t.name[1]));
    expect(levels[0]).toBe(1);
    levels.forEach((level, i) => expect(level - (levels[i - 1] ?? 0)).toBeLessThanOrEqual(1));
    for (const landmark of ['header', 'nav', 'main', 'footer']) expect(named(landmark)).toHaveLength(1);
  });

  test('leads each finding by a link to itself, and folds away what passed', () => {
    const picks = named('a').filter((t) => t.attributes['class'] === 'pick');
    expect(picks.map((t) => t.attributes['href'])).toEqual([
      '#detail-1-finding-1',
      '#detail-2-finding-1',
      '#detail-2-finding-2',
    ]);
    expect(page).toMatch(/<details class="fold off-paper"><summary><h2 [^>]*>What passed<\/h2><\/summary>/);
  });

  test('says so when there is nothing to say', () => {
    const quiet = printHtml({ ...sampleReview, results: [], notifications: [] }, none);
    const read = readMarkup(quiet);
    expect(read.text).toContain('nothing was checked');
    expect(read.text).toContain('None.');
    expect(read.text).toContain('Storefront jamb');
  });

  test('tells of a detail that cannot be drawn and keeps its findings', () => {
    const broken = new Proxy({} as Detail, {
      get() {
        throw new Error('no such <opening>');
      },
    });
    const html = printHtml(sampleReview, () => broken);
    expect(readMarkup(html).text).toContain('no such <opening>');
    expect(html).toContain('id="detail-2-finding-2"');
  });

  test('is the same bytes for the same review', () => {
    expect(printHtml(sampleReview, none)).toBe(page);
  });
});

describe('text of documents in the HTML report', () => {
  const plain = shape(printHtml(filledWith('plain'), none));
  const HOSTILE = [
    HOSTILE_TITLE,
    '</style><script>alert(1)</script>',
    '"><svg onload="alert(1)"><a href="javascript:alert(1)">x</a>',
    "' onmouseover='alert(1)' x='",
    '<img src=x onerror=alert(1)>',
    'javascript:alert(1)',
    'data:text/html,<script>alert(1)</script>',
    '<![CDATA[ <!-- ]]> -->',
    '[x](javascript:alert(1)) ![y](http://example.com/z.png) <http://example.com>',
    '&lt;script&gt; &#60;script&#62; &NewLine;',
    '\u202e gnp.exe \u2066 \u200f \u0000 \u001b[31m',
  ];

  test.each(HOSTILE)('%j stays text', (hostile) => {
    const html = printHtml(filledWith(hostile), none);
    expect(shape(html)).toEqual(plain);
    expect(readMarkup(html).text.normalize()).toContain('Suggested action');
  });

  test('any text at all stays text', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary', maxLength: 40 }).filter((s) => s.trim() !== '' && !/^https?:/i.test(s)),
        (hostile) => {
          expect(shape(printHtml(filledWith(hostile), none))).toEqual(plain);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('no character that turns or hides text gets through', () => {
    const html = printHtml(filledWith('a\u202eb\u2066c\u200bd\u0007e'), none);
    expect(html).not.toMatch(/[\u202a-\u202e\u2066-\u2069\u200b-\u200f\u0007]/);
    expect(html).toContain('a\\u{202E}b\\u{2066}c\\u{200B}d\\u{7}e');
  });

  test('only addresses of the web become links out, and they tell nobody where the reader came from', () => {
    const out = named('a').filter((t) => !(t.attributes['href'] ?? '').startsWith('#'));
    expect(out.length).toBeGreaterThan(0);
    for (const { attributes } of out) {
      expect(attributes['href']).toMatch(/^https?:\/\//);
      expect(attributes['rel']).toBe('noopener noreferrer');
    }
  });

  test('nothing in the page runs or is fetched', () => {
    const elements = new Set(tags.map((t) => t.name));
    for (const name of [
      'script',
      'link',
      'img',
      'iframe',
      'object',
      'embed',
      'form',
      'input',
      'base',
      'image',
      'foreignObject',
    ])
      expect(elements).not.toContain(name);
    for (const { attributes } of tags)
      for (const name of Object.keys(attributes)) expect(name).not.toMatch(/^on|^style$|^src$/);
    expect(STYLE).not.toMatch(/url\(|@import/);
    const [policy] = named('meta').filter((t) => t.attributes['http-equiv'] === 'Content-Security-Policy');
    expect(policy?.attributes['content']).toMatch(
      /^default-src 'none'; style-src 'sha256-[\w+/]{43}='; img-src data:;/,
    );
  });
});

describe('the colors of the page', () => {
  /** Relative luminance. @see WCAG 2.2, definition of relative luminance */
  function luminance(hex: string): number {
    const full = hex.length === 4 ? hex.slice(1).replace(/./g, '$&$&') : hex.slice(1);
    const [r = 0, g = 0, b = 0] = [0, 2, 4].map((i) => {
      const s = parseInt(full.slice(i, i + 2), 16) / 255;
      return s <= 0.04045 ? s / 12.92 : ((s + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  }
  const color = (name: string): string => new RegExp(`--${name}:(#[0-9a-f]+)`).exec(STYLE)?.[1] ?? 'missing';
  const contrast = (a: string, b: string): number => {
    const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
    return (high + 0.05) / (low + 0.05);
  };

  // WCAG 2.2, 1.4.3 (text, 4.5) and 1.4.11 (signs, 3).
  test.each([
    ['ink', 4.5],
    ['soft', 4.5],
    ['address', 4.5],
    ['chosen-edge', 3],
  ] as const)('%s stands out from paper and from a chosen finding by %d', (name, least) => {
    expect(contrast(color(name), '#ffffff')).toBeGreaterThanOrEqual(least);
    expect(contrast(color(name), color('chosen-fill'))).toBeGreaterThanOrEqual(least);
  });
});
