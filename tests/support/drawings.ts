/** Drawings of the fixture details, and what a drawing holds, read from its markup. */
import { loadLibrary } from '../../src/reading/library.js';
import { buildDetail } from '../../src/model/detail.js';
import type { Detail } from '../../src/model/types.js';
import { runReview } from '../../src/cli/run.js';
import type { Result } from '../../src/engine/result.js';
import { drawingSubject, drawView, viewsOf, type View } from '../../src/output/drawing/views.js';
import type { DrawingSubject } from '../../src/output/drawing/subject.js';
import { textBox } from '../../src/output/drawing/sheet.js';
import type { Box } from '../../src/output/drawing/svg.js';
import { readPage } from './documents.js';
import { ROOT } from './review-folder.js';

export interface Drawable {
  readonly name: string;
  readonly detail: Detail;
  readonly subject: DrawingSubject;
}

/** Every detail of a folder of fixtures that can be typed, with the findings of its review. */
export async function drawables(folder: string): Promise<Drawable[]> {
  const [library, { review }] = await Promise.all([
    loadLibrary([folder], { cwd: ROOT }),
    runReview({
      inputs: [folder],
      cwd: ROOT,
      packs: [],
      allowPacks: false,
      today: '2026-01-15',
      skipOthers: false,
      dependents: false,
    }),
  ]);
  const titles = new Map(review.rules.map((r) => [r.id, r.title]));
  return library.documents
    .filter((d) => d.kind === 'detail' && library.reviewed(d))
    .flatMap((document) => {
      const { detail } = buildDetail(document, library.reach(document), (id) => library.elsewhere('product', id));
      if (detail === undefined) return [];
      const own = review.results.filter((r) => r.file.uri === document.file.uri || r.documentId === document.id);
      const subject = drawingSubject(detail, own, (id) => titles.get(id) ?? id);
      return [{ name: `${document.file.uri} ${document.id}`, detail, subject }];
    });
}

/** The subject of a detail written in a test, reviewed by no rule unless results are given. */
export async function subjectOf(
  text: string,
  results: (detail: Detail) => readonly Result[] = () => [],
): Promise<DrawingSubject> {
  const page = await readPage(text, 'detail.yaml');
  const detail = page.detail();
  return drawingSubject(detail, results(detail), (id) => id);
}

export function allViews(subject: DrawingSubject): { view: View; svg: string }[] {
  return viewsOf(subject.detail).map((view) => ({ view, svg: drawView(subject, view) }));
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };
const unescape = (text: string): string => text.replace(/&(\w+);/g, (whole, name: string) => ENTITIES[name] ?? whole);

export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** Text directly inside. */
  text: string;
}

/**
 * Reads XML strictly: every tag closed in order, every attribute quoted and given once, every `&` an entity.
 *
 * @throws when the text is not well formed
 */
export function readXml(xml: string): Element[] {
  const elements: Element[] = [];
  const open: Element[] = [];
  const token = /<(\/?)([a-zA-Z][\w:-]*)((?:\s+[\w:-]+="[^"<]*")*)\s*(\/?)>|([^<]+)/gy;
  let at = 0;
  for (let m = token.exec(xml); m !== null; m = token.exec(xml)) {
    at = token.lastIndex;
    const [, slash, name, attributes, empty, text] = m;
    const loose = /&(?!(?:amp|lt|gt|quot|apos);)|>/.exec(`${attributes ?? ''}${text ?? ''}`);
    if (loose !== null) throw new Error(`"${loose[0]}" stands unescaped near: ${m[0].slice(0, 80)}`);
    if (text !== undefined) {
      const last = open.at(-1);
      if (last !== undefined) last.text += unescape(text);
      else if (text.trim() !== '') throw new Error(`text outside of the root: ${text}`);
      continue;
    }
    if (slash === '/') {
      const last = open.pop();
      if (last?.name !== name) throw new Error(`</${name ?? ''}> closes <${last?.name ?? 'nothing'}>`);
      continue;
    }
    const pairs = [...(attributes ?? '').matchAll(/([\w:-]+)="([^"]*)"/g)].map(
      (p) => [p[1]!, unescape(p[2]!)] as const,
    );
    if (new Set(pairs.map(([k]) => k)).size < pairs.length) throw new Error(`an attribute is given twice: ${m[0]}`);
    const element: Element = { name: name ?? '', attributes: Object.fromEntries(pairs), text: '' };
    elements.push(element);
    if (empty !== '/') open.push(element);
  }
  if (at < xml.length) throw new Error(`not markup: ${xml.slice(at, at + 80)}`);
  if (open.length > 0) throw new Error(`<${open.at(-1)?.name ?? ''}> is never closed`);
  return elements;
}

export interface TextLine {
  readonly text: string;
  readonly box: Box;
  readonly attributes: Readonly<Record<string, string>>;
}

/** Every line of text with the room it takes by the width table; numbers inside signs left out. */
export function textLines(svg: string): TextLine[] {
  return readXml(svg)
    .filter((e) => e.name === 'text' && e.attributes['data-in-sign'] === undefined)
    .map(({ text, attributes }) => ({
      text,
      attributes,
      box: textBox([Number(attributes['x']), Number(attributes['y'])], text, {
        size: Number(attributes['font-size']),
        anchor: (attributes['text-anchor'] ?? 'start') as 'start' | 'middle' | 'end',
        bold: attributes['font-weight'] === 'bold',
      }),
    }));
}

/** Boxes of the numbered signs: circles of the work, triangles of the findings. */
export function signBoxes(svg: string): Box[] {
  const elements = readXml(svg);
  const circles = elements
    .filter((e) => e.name === 'circle' && e.attributes['r'] === '2')
    .map(({ attributes: a }) => ({ x: Number(a['cx']), y: Number(a['cy']), w: 2, h: 2 }));
  const triangles = elements
    .filter((e) => e.attributes['data-finding'] !== undefined)
    .map(({ attributes: a }) => {
      const [x = 0, top = 0, x1 = 0, low = 0] = (a['d'] ?? '').match(/-?[\d.]+/g)?.map(Number) ?? [];
      return { x, y: (top + low) / 2, w: x1 - x, h: (low - top) / 2 };
    });
  return [...circles, ...triangles].map(({ x, y, w, h }) => ({ x0: x - w, y0: y - h, x1: x + w, y1: y + h }));
}

const overlap = (a: Box, b: Box): boolean =>
  a.x0 < b.x1 - 0.02 && b.x0 < a.x1 - 0.02 && a.y0 < b.y1 - 0.02 && b.y0 < a.y1 - 0.02;

/** What stands on something else, or off the sheet; empty for a good drawing. */
export function collisions(svg: string): string[] {
  const lines = textLines(svg);
  const signs = signBoxes(svg);
  const [, , width = 0, height = 0] = (/viewBox="([^"]+)"/.exec(svg)?.[1] ?? '').split(' ').map(Number);
  const found: string[] = [];
  lines.forEach((a, i) => {
    for (const b of lines.slice(i + 1)) if (overlap(a.box, b.box)) found.push(`"${a.text}" on "${b.text}"`);
    for (const s of signs)
      if (overlap(a.box, s)) found.push(`"${a.text}" on a sign at ${s.x0.toFixed(1)}, ${s.y0.toFixed(1)}`);
    const { x0, y0, x1, y1 } = a.box;
    if (x0 < 0 || y0 < 0 || x1 > width || y1 > height) found.push(`"${a.text}" leaves the sheet`);
  });
  signs.forEach((a, i) => {
    for (const b of signs.slice(i + 1))
      if (overlap(a, b)) found.push(`a sign on a sign at ${a.x0.toFixed(1)}, ${a.y0.toFixed(1)}`);
  });
  return found;
}
