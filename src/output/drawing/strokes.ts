/** How membranes and flashings are drawn where they are cut, and shaded where they are seen: by family, without color. */
import { element, num, polyline, type Point } from './svg.js';
import type { Sheet } from './sheet.js';
import type { Family } from '../../model/types.js';

interface Stroke {
  readonly width: number;
  readonly dash?: string;
  /** White line inside: width and dashes. */
  readonly core?: { readonly width: number; readonly dash?: string };
}

const SOLID: Stroke = { width: 0.8 };
const STROKES: Partial<Record<Family, Stroke>> = {
  'fluid-applied membrane': { width: 0.8, core: { width: 0.4, dash: '2.4 1.2' } },
  'fluid-applied flashing': SOLID,
  'joint filler': { width: 0.8, dash: '0.8 0.55' },
  'self-adhered membrane': { width: 0.8, core: { width: 0.4, dash: '0.7 0.7' } },
  'self-adhered flashing': { width: 0.8, dash: '2.6 0.6 0.7 0.6' },
  'mechanically fastened sheet': { width: 0.7, core: { width: 0.4 } },
  'building paper': { width: 0.7, dash: '2.2 0.5', core: { width: 0.4, dash: '2.2 0.5' } },
  'flexible flashing': { width: 0.8, dash: '1.8 0.6' },
  'metal flashing': { width: 0.45 },
  'rigid pan': { width: 0.5 },
  tape: { width: 0.7, dash: '0.3 0.3' },
  'transition membrane': { width: 0.8, dash: '4 0.7' },
  'vapor retarder': { width: 0.35, dash: '3 0.6 0.4 0.6' },
  paint: { width: 0.25, dash: '0.4 0.4' },
  boot: { width: 0.6 },
};

/** A cut membrane or flashing: a line of its family's kind. */
export function strokeOf(family: Family, points: readonly Point[]): string[] {
  const { width, dash, core } = STROKES[family] ?? SOLID;
  const outer = polyline(points, { 'stroke-width': width, 'stroke-dasharray': dash });
  return core === undefined
    ? [outer]
    : [outer, polyline(points, { 'stroke-width': core.width, stroke: '#fff', 'stroke-dasharray': core.dash })];
}

/** Lines, dots or strokes that shade a family where it is seen from outside. `turn` is the other hand of the same. */
const SHADES: Partial<Record<Family, { readonly size: number; readonly turn: number; readonly marks: string }>> = {
  'fluid-applied membrane': {
    size: 4,
    turn: 0,
    marks: '<circle cx="1" cy="1" r="0.13"/><circle cx="3" cy="3" r="0.13"/>',
  },
  'fluid-applied flashing': { size: 1.9, turn: 45, marks: '<path d="M0 0.9H1.9"/>' },
  'joint filler': { size: 0.9, turn: 0, marks: '<circle cx="0.4" cy="0.4" r="0.1"/>' },
  'self-adhered membrane': { size: 4, turn: 0, marks: '<path d="M0 1H2.4M2 3H4M0 3H0.4"/>' },
  'self-adhered flashing': { size: 1.9, turn: 45, marks: '<path d="M0 0.9H1.2"/>' },
  'mechanically fastened sheet': { size: 6, turn: 0, marks: '<path d="M0.5 1.5H2M3.5 4.5H5"/>' },
  'building paper': { size: 5, turn: 0, marks: '<path d="M0.5 1.5H1.2M3 4H3.7"/>' },
  'flexible flashing': { size: 2.4, turn: 45, marks: '<path d="M0 1.2H2.4M1.2 0V2.4"/>' },
  'metal flashing': { size: 1.1, turn: 0, marks: '<path d="M0.5 0V1.1"/>' },
  'rigid pan': { size: 1.1, turn: 0, marks: '<path d="M0.5 0V1.1"/>' },
  tape: { size: 0.8, turn: 45, marks: '<path d="M0 0.4H0.8"/>' },
  'transition membrane': { size: 1.6, turn: 0, marks: '<path d="M0 0.8H1.6"/>' },
};

/**
 * Fill of a piece seen from outside.
 *
 * @param turned the other hand, so that neighbors of one family are told apart
 * @returns the value of `fill`
 */
export function shade(sheet: Sheet, family: Family, turned: boolean): string {
  const found = SHADES[family];
  if (found === undefined) return '#fff';
  const id = `shade-${family.replace(/ /g, '-')}${turned ? '-turned' : ''}`;
  const angle = found.turn + (turned ? 90 : 0);
  sheet.define(
    id,
    element(
      'pattern',
      {
        id,
        width: found.size,
        height: found.size,
        patternUnits: 'userSpaceOnUse',
        patternTransform: angle === 0 ? undefined : `rotate(${num(angle)})`,
      },
      `<rect width="${num(found.size)}" height="${num(found.size)}" fill="#fff"/><g fill="none" stroke="#444" stroke-width="0.1">${found.marks}</g>`,
    ),
  );
  return `url(#${id})`;
}
