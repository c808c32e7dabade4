/**
 * The sheet a drawing grows on: markup in layers, from fills at the bottom to text on top, and the room that text and
 * marks take, so that the next one finds a free place.
 */
import { element, escapeXml as escapeContent, num, type Box, type Point } from './svg.js';
import { FONT, textWidthMm } from './text-size.js';

/** Line weights on paper, mm. What is cut is heavy, what lies beyond is light. */
export const PEN = { cut: 0.5, edge: 0.35, light: 0.18, hatch: 0.1 } as const;
export const INK = '#000';
export const GREY = '#555';
/** Water is told by its drop marks; the color only helps. */
export const WATER = '#0b4f8a';

/** Font sizes on paper, mm: seven points is about 2.5 mm. */
export const SIZE = { title: 3.6, text: 2.4, small: 2.1 } as const;
export const LINE_HEIGHT = 1.28;

const LAYERS = ['fill', 'hatch', 'light', 'edge', 'cut', 'strip', 'water', 'leader', 'mark', 'text'] as const;
export type LayerName = (typeof LAYERS)[number];

const GROUP: Record<LayerName, string> = {
  fill: 'stroke="none"',
  hatch: `fill="none" stroke="${INK}" stroke-width="${num(PEN.hatch)}"`,
  light: `fill="none" stroke="${INK}" stroke-width="${num(PEN.light)}"`,
  edge: `fill="none" stroke="${INK}" stroke-width="${num(PEN.edge)}" stroke-linejoin="round"`,
  cut: `fill="none" stroke="${INK}" stroke-width="${num(PEN.cut)}" stroke-linejoin="round"`,
  strip: `fill="none" stroke="${INK}" stroke-linejoin="round"`,
  water: `fill="none" stroke="${WATER}" stroke-width="0.3"`,
  leader: `fill="none" stroke="${INK}" stroke-width="0.13"`,
  mark: `fill="#fff" stroke="${INK}" stroke-width="0.25"`,
  // A white rim keeps letters readable where a line passes behind them.
  text: `fill="${INK}" font-family="${FONT}" stroke="#fff" stroke-width="0.6" stroke-linejoin="round" paint-order="stroke"`,
};

export interface TextOptions {
  readonly size?: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  readonly fill?: string;
  /** Attributes such as `data-dimension`, for whoever reads the drawing by program. */
  readonly data?: Readonly<Record<string, string | number>>;
  /** No white rim: for text on black. */
  readonly bare?: boolean;
}

/** Room that a line of text takes, from its baseline. */
export function textBox([x, y]: Point, text: string, options: TextOptions = {}): Box {
  const size = options.size ?? SIZE.text;
  const width = textWidthMm(text, size, options.bold === true ? { bold: true } : {});
  const x0 = options.anchor === 'middle' ? x - width / 2 : options.anchor === 'end' ? x - width : x;
  return { x0, y0: y - 0.8 * size, x1: x0 + width, y1: y + 0.24 * size };
}

export function meets(a: Box, b: Box, gap = 0): boolean {
  return a.x0 < b.x1 + gap && b.x0 < a.x1 + gap && a.y0 < b.y1 + gap && b.y0 < a.y1 + gap;
}

/** How far from its place a mark may stand, mm. */
const REACH = 80;

export class Sheet {
  readonly width: number;
  /** Lowest point used so far; the page ends below it. */
  bottom = 0;
  private readonly layers = new Map<LayerName, string[]>(LAYERS.map((name) => [name, []]));
  private readonly taken: Box[] = [];
  private readonly definitions = new Map<string, string>();

  constructor(width: number) {
    this.width = width;
  }

  add(layer: LayerName, ...markup: string[]): void {
    for (const one of markup) this.layers.get(layer)?.push(one);
  }

  /** A pattern or the like that is referred to by its id; kept once. */
  define(id: string, markup: string): void {
    this.definitions.set(id, markup);
  }

  /** Writes a line of text at its baseline and keeps its room. */
  text(at: Point, text: string, options: TextOptions = {}): Box {
    const { size = SIZE.text, anchor, bold, fill, data, bare } = options;
    const box = textBox(at, text, options);
    this.add(
      'text',
      element(
        'text',
        {
          x: at[0],
          y: at[1],
          'font-size': size,
          'text-anchor': anchor === 'start' ? undefined : anchor,
          'font-weight': bold === true ? 'bold' : undefined,
          fill,
          stroke: bare === true ? 'none' : undefined,
          ...data,
        },
        escapeContent(text),
      ),
    );
    this.reserve(box);
    return box;
  }

  reserve(box: Box): void {
    this.taken.push(box);
    this.bottom = Math.max(this.bottom, box.y1);
  }

  isFree(box: Box, gap = 0.3): boolean {
    return this.taken.every((other) => !meets(box, other, gap));
  }

  /**
   * Center of the nearest free place of a size, looking outward in rings: within a box if there is room, else anywhere
   * on the sheet.
   */
  freeNear(wanted: Point, width: number, height: number, within: Box): Point {
    const page = { x0: 1, y0: 1, x1: this.width - 1, y1: Infinity };
    return this.firstFree(wanted, width, height, within) ?? this.firstFree(wanted, width, height, page) ?? wanted;
  }

  private firstFree([x, y]: Point, width: number, height: number, within: Box): Point | undefined {
    const at = (cx: number, cy: number): Box => ({
      x0: cx - width / 2,
      y0: cy - height / 2,
      x1: cx + width / 2,
      y1: cy + height / 2,
    });
    for (let r = 0; r <= REACH; r += 1.2) {
      const turns = r === 0 ? 1 : 16;
      for (let k = 0; k < turns; k++) {
        const angle = (2 * Math.PI * k) / turns;
        const box = at(x + r * Math.cos(angle), y + r * Math.sin(angle));
        const inside = box.x0 >= within.x0 && box.x1 <= within.x1 && box.y0 >= within.y0 && box.y1 <= within.y1;
        if (inside && this.isFree(box)) return [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];
      }
    }
    return undefined;
  }

  /** The finished file. */
  toSvg(title: string, description: string, margin: number): string {
    const height = this.bottom + margin;
    const groups = LAYERS.flatMap((name) => {
      const markup = this.layers.get(name) ?? [];
      return markup.length === 0 ? [] : [`<g ${GROUP[name]}>`, ...markup, '</g>'];
    });
    const size = `width="${num(this.width)}mm" height="${num(height)}mm" viewBox="0 0 ${num(this.width)} ${num(height)}"`;
    return (
      [
        `<svg xmlns="http://www.w3.org/2000/svg" ${size} role="img">`,
        element('title', {}, escapeContent(title)),
        element('desc', {}, escapeContent(description)),
        ...(this.definitions.size === 0 ? [] : ['<defs>', ...this.definitions.values(), '</defs>']),
        element('rect', { width: this.width, height, fill: '#fff' }),
        ...groups,
        '</svg>',
      ].join('\n') + '\n'
    );
  }
}
