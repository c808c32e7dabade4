/** Where the drawn piece of wall ends, and what is said to carry a control on there. */
import { joined, totalMm } from './stretches.js';
import type { Piece, Rect, WallFace } from '../geometry/types.js';
import type { Apply, Detail, Place, WallEdge, Work } from '../model/types.js';

/** Places where work can carry a barrier on past the drawn piece of wall. */
const TIES: ReadonlySet<Place> = new Set<Place>([
  'base of wall',
  'top of wall',
  'movement joint',
  'shelf angle',
  'inside corner of building',
  'outside corner of building',
  'interior face',
  'field',
  'field above sill',
  'field below sill',
]);

export type EdgeTie =
  | { readonly kind: 'none' }
  /** The tie-in names the very detail it stands in. */
  | { readonly kind: 'itself' }
  | { readonly kind: 'detail'; readonly id: string }
  /** A work that is placed where it cannot tie anything in. */
  | { readonly kind: 'other work'; readonly work: Work }
  | {
      readonly kind: 'work';
      readonly work: Apply;
      /** True when the work has a shape on the wall face, so that geometry can tell where it lies. */
      readonly hasShape: boolean;
      /** Length of the edge that the shape reaches, mm; absent without a shape. */
      readonly lengthMm?: number;
    };

/** Length of one edge of the face shown, mm. */
export function edgeMm(bounds: Rect, side: WallEdge['side']): number {
  return side === 'top' || side === 'bottom' ? bounds.u1 - bounds.u0 : bounds.v1 - bounds.v0;
}

/** How much of an edge of the face shown some pieces reach, mm. */
function reachedMm(bounds: Rect, side: WallEdge['side'], pieces: readonly Piece[]): number {
  const close = (a: number, b: number): boolean => Math.abs(a - b) < 0.05;
  const at: Record<WallEdge['side'], (r: Rect) => boolean> = {
    top: (r) => close(r.v1, bounds.v1),
    bottom: (r) => close(r.v0, bounds.v0),
    left: (r) => close(r.u0, bounds.u0),
    right: (r) => close(r.u1, bounds.u1),
  };
  const upright = side === 'left' || side === 'right';
  const touching = pieces.flatMap((p) => p.face).filter(at[side]);
  return totalMm(joined(touching.map((r) => (upright ? { fromMm: r.v0, toMm: r.v1 } : { fromMm: r.u0, toMm: r.u1 }))));
}

/** What ties in the wall at one of its edges. */
export function edgeTie(detail: Detail, face: Pick<WallFace, 'bounds' | 'pieces'>, edge: WallEdge): EdgeTie {
  const named = edge.tieIn?.value;
  if (named === undefined) return { kind: 'none' };
  const work = detail.work.find((w) => w.id === named);
  if (work === undefined) return named === detail.id ? { kind: 'itself' } : { kind: 'detail', id: named };
  if (work.action !== 'apply' || !work.places.some((p) => TIES.has(p.value))) return { kind: 'other work', work };
  const shaped = face.pieces.filter((p) => p.work === work && p.face.length > 0);
  return shaped.length === 0
    ? { kind: 'work', work, hasShape: false }
    : { kind: 'work', work, hasShape: true, lengthMm: reachedMm(face.bounds, edge.side, shaped) };
}

/**
 * Work that is not named as the tie-in and yet lies at the edge and reaches onto what the wall meets there.
 *
 * Only of a foundation a detail says how far work reaches onto it (`ontoFoundation`).
 */
export function unnamedTie(
  detail: Detail,
  face: Pick<WallFace, 'bounds' | 'pieces'>,
  edge: WallEdge,
): Apply | undefined {
  if (edge.meets.value !== 'foundation') return undefined;
  return detail.work.find((w): w is Apply => {
    if (w.action !== 'apply' || !w.places.some((p) => p.value === 'base of wall')) return false;
    if ((w.ontoFoundationMm?.value ?? 0) <= 0) return false;
    const shaped = face.pieces.filter((p) => p.work === w && p.face.length > 0);
    return reachedMm(face.bounds, edge.side, shaped) > 0;
  });
}
