/** The HTML report in a real browser, scripts off unless a test says otherwise. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { outputsOf } from '../src/cli/review-command.js';
import { runReview } from '../src/cli/run.js';
import { printHtml } from '../src/output/html/report.js';
import { readMarkup } from './support/markup.js';
import { DEMO, review as runCommand, scratch } from './support/command.js';

const BROWSER = '/usr/bin/chromium';
const ROOT = path.resolve(import.meta.dirname, '..');
const hasBrowser = existsSync(BROWSER);
if (!hasBrowser) process.stderr.write(`The HTML report is not opened in a browser: ${BROWSER} is not installed.\n`);

/**
 * Text area that both A4 (210 x 297 mm, ISO 216) and Letter (8-1/2 x 11 in, ANSI/ASME Y14.1) leave within the margins of
 * the style sheet, CSS pixels at 96 to the inch.
 */
const PAPER = { width: Math.floor(((210 - 30) / 25.4) * 96), height: Math.floor((11 - 38 / 25.4) * 96) };

async function reportOf(cwd: string, input: string): Promise<string> {
  const run = await runReview({
    inputs: [input],
    cwd,
    packs: [],
    allowPacks: false,
    today: '2026-01-15',
    skipOthers: false,
    dependents: false,
  });
  return printHtml(run.review, (detail) => run.detailOf(detail));
}

let browser: Browser;
let file = '';
let html = '';
/** Name of the first finding about a reverse lap, its number in the detail, and the name of the detail. */
let reverse = { name: '', number: '', detail: '' };

/** Opens the report; whatever it asks for beyond itself, and whatever its policy refuses, is noted. */
async function open(
  at = '',
  options: { scripts?: boolean; width?: number; of?: string } = {},
): Promise<{ page: Page; asked: string[]; said: string[] }> {
  const context = await browser.newContext({
    javaScriptEnabled: options.scripts ?? false,
    viewport: { width: options.width ?? 1400, height: 1000 },
  });
  const page = await context.newPage();
  const asked: string[] = [];
  const said: string[] = [];
  const address = pathToFileURL(options.of ?? file).href;
  page.on('request', (r) => {
    if (r.url().split('#')[0] !== address) asked.push(r.url());
  });
  page.on('console', (m) => said.push(m.text()));
  page.on('dialog', (d) => {
    said.push(`dialog: ${d.message()}`);
    void d.dismiss();
  });
  await page.goto(address + at);
  return { page, asked, said };
}

/** Runs in the page; written as text, because the types of the project know no browser. */
const inPage = <T>(page: Page, expression: string): Promise<T> => page.evaluate<T>(expression);
const styleOf = (page: Page, selector: string, property: string): Promise<string> =>
  inPage(page, `getComputedStyle(document.querySelector(${JSON.stringify(selector)})).${property}`);

beforeAll(async () => {
  html = await reportOf(ROOT, 'fixtures/demo');
  file = path.join(scratch(), 'report.html');
  writeFileSync(file, html);
  const mark = readMarkup(html).tags.find((t) => t.attributes['aria-label']?.includes(', error: Reverse lap') === true);
  const name = mark?.attributes['href'] ?? '';
  const [, detail = 'none', number = 'none'] = /^(#detail-\d+)-finding-(\d+)$/.exec(name) ?? [];
  reverse = { name, number, detail };
  if (hasBrowser) browser = await chromium.launch({ executablePath: BROWSER, args: ['--no-sandbox', '--disable-gpu'] });
});
afterAll(async () => {
  if (hasBrowser) await browser.close();
});

describe('the HTML report of the demo library', () => {
  test('is well formed, with its drawings in it', () => {
    const { tags } = readMarkup(html);
    const ids = tags.flatMap((t) => t.attributes['id'] ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    const known = new Set(ids);
    for (const t of tags) {
      const address = t.attributes['href'];
      if (address?.startsWith('#') === true) expect(known, address).toContain(address.slice(1));
    }
    expect(tags.filter((t) => t.attributes['class'] === 'paper').length).toBeGreaterThan(30);
  });

  test('is the same bytes twice', async () => {
    expect(await reportOf(ROOT, 'fixtures/demo')).toBe(html);
  });

  test('is asked for by its name or by the name of its file', () => {
    expect(outputsOf([{ name: 'format', value: 'html' }])).toEqual([{ format: 'html' }]);
    for (const value of ['review.html', 'review.HTM'])
      expect(outputsOf([{ name: 'output', value }])).toEqual([{ format: 'html', file: value }]);
  });
});

describe('lapwright review --output FILE.html', () => {
  test('writes the report', async () => {
    const folder = scratch();
    const { status, err } = await runCommand([DEMO, '--output', path.join(folder, 'review.html')]);
    expect({ status, err }).toEqual({ status: 1, err: '' });
    const written = readFileSync(path.join(folder, 'review.html'), 'utf8');
    const findings = (page: string): string[] =>
      readMarkup(page).tags.flatMap((t) => (t.name === 'article' ? (t.attributes['id'] ?? []) : []));
    expect(findings(written)).toEqual(findings(html));
  });
});

describe.skipIf(!hasBrowser)('the HTML report in a browser with scripts off', () => {
  test('asks for nothing, and its own policy refuses nothing it needs', async () => {
    const { page, asked, said } = await open();
    expect(asked).toEqual([]);
    expect(said).toEqual([]);
    // The style sheet is known by its digest: had it been refused, the page would be plain.
    expect(await styleOf(page, 'h1', 'fontSize')).toBe('28px');
    await page.context().close();
  });

  test('shows something', async () => {
    const { page } = await open();
    const picture = (await page.screenshot()).toString('base64');
    await page.context().close();
    const { page: blank } = await open('', { scripts: true });
    await blank.goto('about:blank');
    const dark = await inPage<number>(
      blank,
      `(async () => {
        const image = new Image();
        image.src = 'data:image/png;base64,${picture}';
        await image.decode();
        const canvas = document.createElement('canvas');
        canvas.width = image.width;
        canvas.height = image.height;
        const drawing = canvas.getContext('2d');
        drawing.drawImage(image, 0, 0);
        const { data } = drawing.getImageData(0, 0, image.width, image.height);
        let count = 0;
        for (let i = 0; i < data.length; i += 4) if (data[i] < 128) count += 1;
        return count / (data.length / 4);
      })()`,
    );
    expect(dark).toBeGreaterThan(0.005);
    expect(dark).toBeLessThan(0.5);
    await blank.context().close();
  });

  test('Tab reaches the findings of a detail in their order, and Enter shows the path and its line in the drawing', async () => {
    const { page } = await open(`${reverse.detail}-findings`);
    const count = await page.locator(`${reverse.detail} .finding`).count();
    expect(count).toBeGreaterThan(10);
    const reached: string[] = [];
    let chosen = '';
    for (let i = 0; i < 400 && reached.length < count; i++) {
      await page.keyboard.press('Tab');
      const at = page.locator(':focus');
      if ((await at.getAttribute('class')) !== 'pick') continue;
      expect(await styleOf(page, ':focus', 'outlineStyle')).not.toBe('none');
      const address = (await at.getAttribute('href')) ?? '';
      // After Enter the finding itself has the focus, and its link comes next.
      if (address === chosen && reached.at(-1) === address) continue;
      reached.push(address);
      if (chosen !== '' || (await page.locator(`${address} .path`).count()) === 0) continue;
      if ((await page.locator(`${reverse.detail} .way.of-${address.slice(1)}`).count()) === 0) continue;
      chosen = address;
      const steps = page.locator(`${address} .path ol`);
      const way = `${reverse.detail} .way.of-${address.slice(1)}`;
      expect(await steps.isVisible()).toBe(false);
      expect(await styleOf(page, way, 'opacity')).toBe('0');
      await page.keyboard.press('Enter');
      expect(new URL(page.url()).hash).toBe(address);
      expect(await steps.isVisible()).toBe(true);
      expect(await styleOf(page, way, 'opacity')).toBe('1');
    }
    expect(chosen).not.toBe('');
    expect(reached).toEqual(Array.from({ length: count }, (_, i) => `${reverse.detail}-finding-${i + 1}`));
    await page.context().close();
  }, 120_000);

  test('a finding that is chosen rings its own marks and no other', async () => {
    const { page } = await open(reverse.name);
    const rings = await inPage<{ of: string; opacity: string }[]>(
      page,
      `[...document.querySelectorAll('.mark')].map((m) => ({
        of: m.getAttribute('href'),
        opacity: getComputedStyle(m.querySelector('.ring')).opacity,
      }))`,
    );
    const shown = rings.filter((r) => r.opacity === '1');
    expect(shown.length).toBeGreaterThan(1);
    for (const { of } of shown) expect(of).toBe(reverse.name);
    expect(shown).toHaveLength(rings.filter((r) => r.of === reverse.name).length);
    await page.context().close();
  });

  test('a mark in the drawing lies on its triangle and leads to its finding', async () => {
    const { page } = await open();
    const mark = page.locator(`${reverse.detail}-view-1-mark-${reverse.number}`);
    await mark.locator('.hit').click();
    expect(new URL(page.url()).hash).toBe(reverse.name);
    const inside = await inPage<number>(
      page,
      `(() => {
        const own = document.querySelector('${reverse.detail}-view-1-mark-${reverse.number} .hit').getBoundingClientRect();
        return [...document.querySelectorAll('${reverse.detail}-view-1 .paper text[data-in-sign]')].filter((t) => {
          const box = t.getBoundingClientRect();
          return t.textContent === '${reverse.number}' && box.left >= own.left && box.right <= own.right &&
            (box.top + box.bottom) / 2 > own.top && (box.top + box.bottom) / 2 < own.bottom;
        }).length;
      })()`,
    );
    expect(inside).toBe(1);
    await page.context().close();
  });

  test('folded drawings open when a link leads into them', async () => {
    const { page } = await open();
    const folded = page.locator(`${reverse.detail} .view:not([open])`);
    const before = await folded.count();
    expect(before).toBeGreaterThan(1);
    await page
      .locator(reverse.name)
      .getByRole('link', { name: /^Section at the/ })
      .first()
      .click();
    expect(await folded.count()).toBe(before - 1);
    await page.context().close();
  });

  test('the accessibility tree has the landmarks, and every link, mark and drawing has a name', async () => {
    const { page } = await open();
    const session = await page.context().newCDPSession(page);
    const { nodes } = await session.send('Accessibility.getFullAXTree');
    const live = nodes.filter((n) => !n.ignored);
    const role = (name: string) => live.filter((n) => n.role?.value === name);
    for (const landmark of ['banner', 'navigation', 'main', 'contentinfo'])
      expect(role(landmark), landmark).toHaveLength(1);
    expect(role('article').length).toBeGreaterThan(30);
    for (const name of ['link', 'article', 'region', 'heading', 'image', 'img', 'navigation'])
      for (const node of role(name)) expect(String(node.name?.value ?? ''), `a ${name} without a name`).not.toBe('');
    expect(
      role('link').some((n) => String(n.name?.value).startsWith(`Finding ${reverse.number}, error: Reverse lap`)),
    ).toBe(true);
    expect(role('columnheader').length).toBeGreaterThan(5);
    await page.context().close();
  });

  test.each([1400, 1000, 390])('nothing is wider than a window of %d pixels', async (width) => {
    const { page } = await open('', { width });
    expect(await inPage<number>(page, 'document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
    await page.context().close();
  });

  test.each(['A4', 'Letter'] as const)('prints to %s', async (format) => {
    const { page } = await open();
    const pdf = (await page.pdf({ format })).toString('latin1');
    const pages = [...pdf.matchAll(/\/Type \/Page\b/g)].length;
    expect(pages).toBeGreaterThan(5);
    expect(pages).toBeLessThan(80);
    await page.context().close();
  });

  test('on paper nothing is wider than the page, no drawing is higher, and folded parts are told', async () => {
    const { page } = await open('', { width: PAPER.width });
    await page.emulateMedia({ media: 'print' });
    const { beyond, heights, hidden, said, printed } = await inPage<{
      beyond: string[];
      heights: number[];
      hidden: string[];
      said: string;
      printed: number;
    }>(
      page,
      `(() => {
        const all = [...document.querySelectorAll('body *')];
        const name = (e) => [e.tagName, e.getAttribute('class'), e.textContent.slice(0, 30)].join(' ');
        const box = (e) => e.getBoundingClientRect();
        return {
          beyond: all
            .filter((e) => (e.closest('svg') === null || e.matches('.paper')) && !e.matches('.unseen'))
            .filter((e) => e.checkVisibility() && box(e).right > ${PAPER.width} + 1)
            .map(name),
          said: all.filter((e) => e.matches('.paper-only') && e.checkVisibility()).map((e) => e.textContent).join(' '),
          // A drawing that shows no finding is left out, one that shows some is not.
          printed: all.filter((e) => e.matches('.found .view') && e.checkVisibility()).length,
          heights: all.filter((e) => e.matches('.found .view')).map((e) => box(e).height),
          hidden: all
            .filter((e) => e.matches('.found .paper, .fold table, .fold li, .path ol') && !e.checkVisibility())
            // Left to the screen on purpose; a line on paper says so.
            .filter((e) => e.closest('.off-paper, main.letter .findings') === null)
            .map(name),
        };
      })()`,
    );
    expect(beyond).toEqual([]);
    expect(hidden).toEqual([]);
    expect(said).toMatch(/^Not printed: .*what passed/);
    expect(printed).toBeGreaterThan(10);
    expect(printed).toBeLessThan(heights.length);
    expect(heights.length).toBeGreaterThan(10);
    for (const height of heights) expect(height).toBeLessThan(PAPER.height);
    await page.context().close();
  });
});

describe.skipIf(!hasBrowser)('a hostile library in the HTML report, scripts on', () => {
  const EVIL = `</title></svg><script>document.title='taken'</script><img src="http://example.com/x.png" onerror="document.title='taken'"> \u202e&quot; onload='x' javascript:alert(1)`;
  /** Elements that run or fetch something, and attributes that would. */
  const alive = (page: Page): Promise<string[]> =>
    inPage(
      page,
      `[...document.querySelectorAll('*')].filter((e) =>
        e.matches('script, iframe, object, embed, img, image, foreignObject, form') ||
        [...e.attributes].some((a) => /^on/i.test(a.name) || /^\\s*(javascript|data|vbscript):/i.test(a.value))
      ).map((e) => e.outerHTML.slice(0, 80))`,
    );

  test('stays text in the findings and in the drawings', async () => {
    const source = readFileSync(path.join(ROOT, 'fixtures/demo/returned/X-1-sheet-and-strips.yaml'), 'utf8');
    const quoted = JSON.stringify(EVIL);
    const evil = source
      .replace(/^title: .*$/m, `title: ${quoted}`)
      .replace(/material: (fiber cement panel|mineral wool batt|gypsum board)/g, `material: ${quoted}`);
    expect(evil.split(quoted).length).toBeGreaterThan(2);
    const folder = scratch({ 'details/x<script>.yaml': evil }, path.join(ROOT, 'fixtures/demo'));
    const page = await reportOf(folder, 'details/x<script>.yaml');
    expect(readMarkup(page).text).toContain('</script>');
    const of = path.join(folder, 'report.html');
    writeFileSync(of, page);
    const opened = await open('', { scripts: true, of });
    expect(await opened.page.title()).toMatch(/^Review of wall details: /);
    expect(await alive(opened.page)).toEqual([]);
    expect(opened.asked).toEqual([]);
    expect(opened.said).toEqual([]);
    expect(page).not.toContain('\u202e');
    await opened.page.context().close();
  });

  test('even a script that stood in the page would not run, and an image from elsewhere would not be fetched', async () => {
    const bad = html.replace(
      '<main',
      `<script>document.title='taken'</script><img src="http://example.com/x.png"><main`,
    );
    const of = path.join(path.dirname(file), 'bad.html');
    writeFileSync(of, bad);
    const opened = await open('', { scripts: true, of });
    expect(await opened.page.title()).not.toBe('taken');
    expect(await alive(opened.page)).toHaveLength(2);
    expect(opened.said.join(' ')).toContain('Content Security Policy');
    await opened.page.context().close();
  });
});
