/** A drawn wall as the calculation sees it: inside to outside, up to the air that washes its outer face. */
import { isSpace } from '../../model/families.js';
import { CAVITY_SURFACE_M2KW } from '../data/air.js';
import { SURFACE_RESISTANCES, type Surfaces } from '../data/surfaces.js';
import type { MoistureLayer } from '../resistance.js';
import { rainLeftOut } from './exposed-masonry.js';
import { figuresOf, type LayerFigures, type MissingFigure, type SdBounds } from './figures.js';
import { frameOf } from '../../vapor/frame.js';
import { venting } from '../../vapor/venting.js';
import { remembered } from '../../model/remembered.js';
import type { Detail, Layer } from '../../model/types.js';

/** A wall that ends at one place; a drawing that does not say whether a cavity is vented may be read as two. */
export interface Wall {
  readonly layers: readonly LayerFigures[];
  readonly surfaces: Surfaces;
  /** The vented cavity, or the cladding vented by its shape, that the wall ends at. */
  readonly endsAt?: Layer;
}
export interface ReadWall {
  readonly kind: 'read';
  /** One, or two where the venting is unsaid and both can be followed: ended at the cavity, and with all layers. */
  readonly walls: readonly [Wall, ...Wall[]];
  /** Field that says whether the wall ends at its cavity. */
  readonly unsaidVenting?: string;
  readonly assumptions: readonly string[];
}
export interface UnreadWall {
  readonly kind: 'unread';
  /** Every figure that is missing, inside to outside. */
  readonly missing: readonly [MissingFigure, ...MissingFigure[]];
}

/** Framing without insulation in it is a void between the studs. */
const counted = (layer: Layer): boolean => layer.family !== 'framing';

interface End {
  readonly upTo: number;
  readonly endsAt?: Layer;
}

/** Where the wall may end, by what the drawing says of venting. */
function endsOf(detail: Detail): { ends: [End, ...End[]]; unsaid?: string; told: string[] } {
  const all: End = { upTo: detail.layers.length };
  const inner = frameOf(detail) ?? { index: -1 };
  const found = venting(detail, inner);
  const endAt = (layer: Layer): End => ({ upTo: layer.index, endsAt: layer });
  if (found.kind === 'vented' && found.unsaid === undefined)
    return { ends: [endAt(found.layer)], told: [`The wall is followed up to "${found.layer.id}": ${found.words}.`] };
  if (found.kind === 'not vented') return { ends: [all], told: [`All layers are counted: ${found.words}.`] };
  const outside = detail.layers.filter((layer) => layer.index > inner.index);
  const cladding = outside.findLast((layer) => layer.family === 'cladding');
  if (cladding === undefined)
    return { ends: [all], told: ['The wall shows no cladding; its outermost layer is taken to face open air.'] };
  const gap = outside.findLast((layer) => isSpace(layer.family) && layer.index < cladding.index);
  const [unsaid] = found.kind === 'vented' ? [found.unsaid] : found.missing;
  const words = found.kind === 'vented' ? `"${found.layer.id}" does not say whether it is vented` : found.words;
  return {
    ends: [endAt(gap ?? cladding), all],
    ...(unsaid === undefined ? {} : { unsaid }),
    told: [`${words}: the wall was followed both up to there and with all its layers.`],
  };
}

/**
 * The wall of a detail as figures.
 *
 * @returns what is missing, where a layer that counts has no figure; nothing is guessed
 * @see figuresOf for what stands in for a data sheet
 */
export const wallOf = remembered((detail: Detail): ReadWall | UnreadWall => {
  const { ends, unsaid, told } = endsOf(detail);
  const least = Math.min(...ends.map((e) => e.upTo));
  const figures = detail.layers.filter(counted).map((layer) => ({ layer, found: figuresOf(layer) }));
  const missing = figures.flatMap(({ layer, found }) => ('missing' in found && layer.index < least ? [found] : []));
  const [first, ...rest] = missing;
  if (first !== undefined) return { kind: 'unread', missing: [first, ...rest] };
  const walls = ends.flatMap((end): Wall[] => {
    const within = figures.filter(({ layer }) => layer.index < end.upTo);
    const layers = within.flatMap(({ found }) => ('missing' in found ? [] : found));
    // Of two readings, the one that lacks a figure of the cladding is left out and said.
    if (within.some(({ found }) => 'missing' in found) || layers.length === 0) return [];
    return [
      {
        layers,
        surfaces: {
          insideM2KW: SURFACE_RESISTANCES.interstitial.insideM2KW,
          outsideM2KW:
            end.endsAt === undefined ? SURFACE_RESISTANCES.interstitial.outsideM2KW : CAVITY_SURFACE_M2KW.value,
        },
        ...(end.endsAt === undefined ? {} : { endsAt: end.endsAt }),
      },
    ];
  });
  const [wall, ...others] = walls;
  if (wall === undefined) return { kind: 'unread', missing: [nothing(detail, figures)] };
  const rain = rainLeftOut(detail);
  return {
    kind: 'read',
    walls: [wall, ...others],
    ...(unsaid === undefined ? {} : { unsaidVenting: unsaid }),
    assumptions: [
      ...(walls.length < ends.length ? [onlyVented(figures)] : told),
      ...new Set(walls.flatMap((w) => w.layers.flatMap((l) => l.assumptions))),
      ...(rain === undefined ? [] : [rain.told]),
    ],
  };
});

type Figured = { readonly layer: Layer; readonly found: readonly LayerFigures[] | MissingFigure };

function onlyVented(figures: readonly Figured[]): string {
  const lacking = figures.flatMap(({ found }) => ('missing' in found ? [found.reason] : []));
  return `Whether the cladding is vented is not stated; the wall was followed as if it were, for of the cladding itself ${lacking.join(', ')}.`;
}

function nothing(detail: Detail, figures: readonly Figured[]): MissingFigure {
  for (const { found } of figures) if ('missing' in found) return found;
  return { missing: 'wall', reason: 'the wall shows no layer that could be followed', at: detail.at };
}

/** Which end of each layer's bounds to take. */
export type Pick3 = (layer: LayerFigures, index: number, layers: readonly LayerFigures[]) => keyof SdBounds;

/**
 * Layers for the calculation.
 *
 * @param cold the side that is damp and cold through the season that counts: its layers take the wet cup
 */
export function moistureLayers(wall: Wall, cold: 'inside' | 'outside', pick: Pick3): MoistureLayer[] {
  const half = middle(wall);
  return wall.layers.map((layer, i): MoistureLayer => {
    const outer = isOuter(wall, i, half);
    const cup = (cold === 'outside') === outer ? layer.wet : layer.dry;
    return {
      id: layer.id,
      rM2KW: layer.rM2KW,
      sdM: cup[pick(layer, i, wall.layers)],
      storage: layer.storage,
      ...(layer.areaMassKgPerM2 === undefined ? {} : { areaMassKgPerM2: layer.areaMassKgPerM2 }),
    };
  });
}

/** Thermal resistance up to the middle of the wall's insulation, m2 K/W. */
function middle(wall: Wall): number {
  return wall.layers.reduce((sum, l) => sum + l.rM2KW, 0) / 2;
}

/** Lies on the outer side of the middle of the insulation. */
export function isOuter(wall: Wall, index: number, half: number = middle(wall)): boolean {
  const before = wall.layers.slice(0, index).reduce((sum, l) => sum + l.rM2KW, 0);
  return before + (wall.layers[index] as LayerFigures).rM2KW / 2 > half;
}
