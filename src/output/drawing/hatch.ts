/** Hatching of materials, in the manner of construction drawings: told apart without color. */
import { element, num, polyline, type Box, type Point } from './svg.js';
import { GREY, PEN, type Sheet } from './sheet.js';
import type { Family, Layer } from '../../model/types.js';

export type HatchName =
  | 'brick'
  | 'concrete'
  | 'block'
  | 'gypsum'
  | 'plies across'
  | 'plies along'
  | 'rigid foam'
  | 'fibrous board'
  | 'spray foam'
  | 'panel'
  | 'render'
  | 'metal'
  | 'mat'
  | 'wood'
  | 'earth';

interface Tile {
  readonly size: readonly [number, number];
  readonly turn?: number;
  readonly marks: string;
}

const stroke = (d: string, width: number = PEN.hatch): string =>
  `<path d="${d}" fill="none" stroke="#000" stroke-width="${num(width)}"/>`;
const dots = (...at: Point[]): string =>
  at.map(([x, y]) => `<circle cx="${num(x)}" cy="${num(y)}" r="0.14" fill="#000"/>`).join('');

const TILES: Record<HatchName, Tile> = {
  brick: { size: [3, 3], turn: 45, marks: stroke('M0 0.3H3M0 0.95H3') },
  concrete: {
    size: [7, 7],
    marks:
      stroke('M1.2 1.2l0.9 0.1l-0.5 0.8z M4.6 4.9l0.8-0.5l0.1 0.9z') +
      dots([3.4, 0.8], [5.8, 2.2], [0.8, 4.4], [2.6, 6.1], [3.6, 3.4], [6.3, 6.2]),
  },
  block: { size: [3.4, 3.4], turn: 45, marks: stroke('M0 0.5H3.4M0.5 0V3.4') },
  gypsum: { size: [2, 2], marks: dots([0.5, 0.5], [1.5, 1.5]) },
  'plies across': { size: [4, 0.9], marks: stroke('M0 0.45H4') },
  'plies along': { size: [0.9, 4], marks: stroke('M0.45 0V4') },
  'rigid foam': { size: [3.2, 3.2], marks: stroke('M0 0L3.2 3.2M3.2 0L0 3.2') },
  'fibrous board': { size: [3, 3], marks: stroke('M0 0.4L1.5 1.4L3 0.4M0 1.9L1.5 2.9L3 1.9') },
  'spray foam': {
    size: [4, 4],
    marks:
      '<g fill="none" stroke="#000" stroke-width="0.1"><circle cx="1" cy="1" r="0.7"/><circle cx="3" cy="2.6" r="0.8"/><circle cx="1.1" cy="3.2" r="0.45"/></g>',
  },
  panel: { size: [1.1, 1.1], turn: -45, marks: stroke('M0 0.55H1.1') },
  render: { size: [1.2, 1.2], marks: dots([0.3, 0.3], [0.9, 0.9]) },
  metal: { size: [1, 1], marks: '<rect width="1" height="1" fill="#777"/>' },
  mat: { size: [2, 2], marks: stroke('M0 1L1 0L2 1') },
  wood: { size: [5, 1.4], marks: stroke('M0 0.5C1.5 0 3.5 1 5 0.5') },
  earth: {
    size: [4, 4],
    turn: 45,
    marks: stroke('M0.2 0.4H1.8M0.2 1H1.8M0.2 1.6H1.8M2.4 2.2V3.8M3 2.2V3.8M3.6 2.2V3.8'),
  },
};

const idOf = (name: string): string => `hatch-${name.replace(/ /g, '-')}`;

/** Makes a hatch available on a sheet and gives the value of `fill` for it. */
export function hatch(sheet: Sheet, name: HatchName): string {
  const { size, turn, marks } = TILES[name];
  const id = idOf(name);
  sheet.define(
    id,
    element(
      'pattern',
      {
        id,
        width: size[0],
        height: size[1],
        patternUnits: 'userSpaceOnUse',
        patternTransform: turn === undefined ? undefined : `rotate(${turn})`,
      },
      marks,
    ),
  );
  return `url(#${id})`;
}

const BY_FAMILY: Partial<Record<Family, HatchName>> = {
  'insulating sheathing': 'rigid foam',
  'board insulation': 'fibrous board',
  'spray foam': 'spray foam',
  'interior board': 'gypsum',
  cladding: 'panel',
  concrete: 'concrete',
  masonry: 'block',
  'drainage mat': 'mat',
  'metal flashing': 'metal',
};

/**
 * The hatch of a layer, by its family and, where one family holds unlike materials, by the words that name it.
 *
 * @param plies which way the plies of a panel run on the sheet
 * @returns `undefined` for what is left blank: air, and batts, which are drawn as curves
 */
export function hatchOf(
  layer: Pick<Layer, 'family' | 'material' | 'product'>,
  plies: 'across' | 'along',
): HatchName | undefined {
  const words = `${layer.material?.value ?? ''} ${layer.product?.name ?? ''}`.toLowerCase();
  if (layer.family === 'sheathing') return /gypsum|cement/.test(words) ? 'gypsum' : `plies ${plies}`;
  if (layer.family === 'cladding') {
    if (/brick|stone|veneer/.test(words)) return 'brick';
    if (/stucco|render|plaster/.test(words)) return 'render';
    if (/metal|steel|alumin|zinc|copper/.test(words)) return 'metal';
    if (/wood|cedar|timber/.test(words)) return 'wood';
  }
  if (layer.family === 'masonry' && /brick/.test(words)) return 'brick';
  if (layer.family === 'board insulation' && /polystyrene|foam|polyiso|xps|eps/.test(words)) return 'rigid foam';
  return BY_FAMILY[layer.family];
}

/**
 * The curves of a batt: a soft zigzag across its thickness.
 *
 * @param stepMm from one turn to the next, mm on paper; follows from the thickness unless given
 */
export function battCurves(box: Box, along: 'x' | 'y', stepMm?: number): string {
  const [a0, a1, t0, t1] = along === 'y' ? [box.y0, box.y1, box.x0, box.x1] : [box.x0, box.x1, box.y0, box.y1];
  const inset = (t1 - t0) * 0.08;
  const [low, high] = [t0 + inset, t1 - inset];
  const turns = Math.max(2, Math.round((a1 - a0) / (stepMm ?? Math.max(1.6, (t1 - t0) * 0.15))));
  const step = (a1 - a0) / turns;
  const at = (a: number, t: number): string => (along === 'y' ? `${num(t)} ${num(a)}` : `${num(a)} ${num(t)}`);
  let d = `M${at(a0, low)}`;
  for (let k = 0; k < turns; k++) {
    const [from, to] = k % 2 === 0 ? [low, high] : [high, low];
    const a = a0 + k * step;
    // Both handles stand level with the turns: the curve swings like the fold of a batt.
    d += `C${at(a + step * 0.9, from)} ${at(a + step * 0.1, to)} ${at(a + step, to)}`;
  }
  return element('path', { d, fill: 'none', stroke: GREY });
}

/** Edges of a rectangle with its diagonals: wood cut across its grain. */
export function crossed(box: Box): string[] {
  return [
    polyline([
      [box.x0, box.y0],
      [box.x1, box.y1],
    ]),
    polyline([
      [box.x0, box.y1],
      [box.x1, box.y0],
    ]),
  ];
}
