/** The golden drawings and the map of the README in a real browser: text measured with the fonts at hand, and every picture seen to hold ink. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { chromium, type Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROOT } from './support/review-folder.js';

const BROWSER = '/usr/bin/chromium';
const hasBrowser = existsSync(BROWSER);
if (!hasBrowser) process.stderr.write(`The drawings are not opened in a browser: ${BROWSER} is not installed.\n`);

const GOLDEN = path.join(ROOT, 'tests/golden/drawings');
const MAP = '../../../docs/pictures/where.svg';
const files = [...readdirSync(GOLDEN).filter((name) => name.endsWith('.svg')), MAP];

let browser: Browser;
beforeAll(async () => {
  if (hasBrowser)
    browser = await chromium.launch({
      executablePath: BROWSER,
      args: ['--no-sandbox', '--disable-gpu'],
      headless: true,
    });
});
afterAll(async () => {
  if (hasBrowser) await browser.close();
});

interface Measured {
  readonly overlaps: string[];
  readonly outside: string[];
  readonly texts: number;
}

/** Runs in the page: boxes of all text as the browser lays it out. */
const MEASURE = `(() => {
  const svg = document.querySelector('svg');
  const sheet = svg.viewBox.baseVal;
  const lines = [...svg.querySelectorAll('text')].map((e) => {
    const { x, y, width, height } = e.getBBox();
    // The box of a line reaches from ascent to descent; what is drawn of it is the middle.
    return { text: e.textContent, inSign: e.hasAttribute('data-in-sign'), x, y: y + height * 0.18, w: width, h: height * 0.62 };
  });
  const overlaps = [];
  lines.forEach((a, i) => lines.slice(i + 1).forEach((b) => {
    if (a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h) overlaps.push(a.text + ' | ' + b.text);
  }));
  const outside = lines.filter((l) => l.x < 0 || l.y < 0 || l.x + l.w > sheet.width || l.y + l.h > sheet.height).map((l) => l.text);
  return { overlaps, outside, texts: lines.length };
})()`;

/** Share of dark points of a picture, counted on a canvas in the page. */
const INK = `async (data) => {
  const image = new Image();
  image.src = 'data:image/png;base64,' + data;
  await image.decode();
  const canvas = document.createElement('canvas');
  canvas.width = image.width;
  canvas.height = image.height;
  const context = canvas.getContext('2d');
  context.drawImage(image, 0, 0);
  const { data: points } = context.getImageData(0, 0, canvas.width, canvas.height);
  let dark = 0;
  for (let i = 0; i < points.length; i += 4) if (points[i] + points[i + 1] + points[i + 2] < 384) dark += 1;
  return dark / (points.length / 4);
}`;

describe.skipIf(!hasBrowser).each(files)('%s in the browser', (name) => {
  // DejaVu Sans is among the widest of common fonts, Liberation Sans among the narrow ones; a font that is missing
  // falls back to the one the machine has.
  it.each(['sans-serif', 'DejaVu Sans', 'Liberation Sans'])('keeps its texts apart in %s', async (font) => {
    const page = await browser.newPage();
    const svg = readFileSync(path.join(GOLDEN, name), 'utf8').replace(
      'font-family="sans-serif"',
      `font-family="${font}"`,
    );
    await page.setContent(`<!doctype html><body style="margin:0">${svg}</body>`);
    const measured: Measured = await page.evaluate(MEASURE);
    await page.close();
    expect(measured.texts).toBeGreaterThan(10);
    expect(measured.overlaps).toEqual([]);
    expect(measured.outside).toEqual([]);
  });
  it('is drawn: neither blank nor black', async () => {
    const page = await browser.newPage({ viewport: { width: 800, height: 1200 } });
    // As a page that shows the file as a picture: nothing of the page reaches into it.
    const data = readFileSync(path.join(GOLDEN, name)).toString('base64');
    await page.setContent(`<!doctype html><body style="margin:0"><img src="data:image/svg+xml;base64,${data}"></body>`);
    const picture = await page.locator('img').screenshot();
    await page.setContent('<!doctype html><body></body>');
    const share: number = await page.evaluate(`(${INK})(${JSON.stringify(picture.toString('base64'))})`);
    await page.close();
    expect(share).toBeGreaterThan(0.01);
    expect(share).toBeLessThan(0.3);
  });
});
