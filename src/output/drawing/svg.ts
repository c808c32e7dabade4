/** The few SVG elements that drawings are made of. Numbers have at most two decimals, so that bytes are stable. */
import { oneLine } from '../escape.js';

export type Point = readonly [x: number, y: number];
export interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** A number as it stands in the file: hundredths of a millimeter, no negative zero. */
export function num(x: number): string {
  return String(Math.round(x * 100) / 100 || 0);
}

/** Text for element content or an attribute in double quotes. Characters that XML forbids are written out. */
export function escapeXml(text: string): string {
  return oneLine(text)
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/[\ufffe\uffff]/g, '\ufffd');
}

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** One element. Attribute values are escaped; content must be markup already. */
export function element(name: string, attributes: Attributes, content?: string): string {
  const written = Object.entries(attributes)
    .flatMap(([key, value]) =>
      value === undefined ? [] : [` ${key}="${typeof value === 'number' ? num(value) : escapeXml(value)}"`],
    )
    .join('');
  return content === undefined ? `<${name}${written}/>` : `<${name}${written}>${content}</${name}>`;
}

/** Path data of a line through points. */
export function pathData(points: readonly Point[], closed = false): string {
  return points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${num(x)} ${num(y)}`).join('') + (closed ? 'Z' : '');
}

export function line(from: Point, to: Point, attributes: Attributes = {}): string {
  return element('path', { d: pathData([from, to]), ...attributes });
}

export function polyline(points: readonly Point[], attributes: Attributes = {}): string {
  return element('path', { d: pathData(points), ...attributes });
}

export function polygon(points: readonly Point[], attributes: Attributes = {}): string {
  return element('path', { d: pathData(points, true), ...attributes });
}

export function circle([x, y]: Point, r: number, attributes: Attributes = {}): string {
  return element('circle', { cx: x, cy: y, r, ...attributes });
}
