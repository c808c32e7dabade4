/** Gaps in what is only drawn as a layer: parts of the wall it is not put on, and units out of line with insulation. */
import { edgeMm } from './edges.js';
import { insulates, type Plane } from './planes.js';
import { lookThrough } from './thermal.js';
import type { WallFace } from '../geometry/types.js';
import { FIELD_PLACES } from '../model/order.js';
import type { Apply, Detail, Layer, Opening } from '../model/types.js';

/** A layer that the work puts on only part of the wall. */
export interface PartGap {
  readonly kind: 'part';
  readonly layer: Layer;
  /** Works that put the layer on. */
  readonly works: readonly [Apply, ...Apply[]];
  readonly without: 'below the sill' | 'above the sill';
  /** Width of the wall shown, mm. */
  readonly lengthMm: number;
  readonly missing: readonly string[];
}

/** A unit whose frame does not stand in line with any insulation. */
export interface DepthGap {
  readonly kind: 'depth';
  readonly opening: Opening;
  /** Layers that insulate, nearest first. */
  readonly layers: readonly Layer[];
  /** From the frame to the nearest insulation, mm; for a unit set back, the least over the places it may have. */
  readonly distanceMm?: number;
  /** Around the opening, mm. */
  readonly lengthMm: number;
  readonly missing: readonly string[];
}

/** Layers of the plane that no work puts on the whole wall, though some work puts them on part of it. */
export function partGaps(detail: Detail, face: WallFace, plane: Plane | undefined): PartGap[] {
  if (plane?.on !== 'layers') return [];
  return plane.layers.flatMap((layer): PartGap[] => {
    const [first, ...rest] = detail.work.filter(
      (w): w is Apply =>
        w.action === 'apply' && w.layer === layer && w.places.some((p) => FIELD_PLACES.some((f) => f === p.value)),
    );
    if (first === undefined) return [];
    const places = new Set([first, ...rest].flatMap((w) => w.places.map((p) => p.value)));
    if (places.has('field') || (places.has('field below sill') && places.has('field above sill'))) return [];
    const without = places.has('field above sill') ? 'below the sill' : 'above the sill';
    return [
      { kind: 'part', layer, works: [first, ...rest], without, lengthMm: edgeMm(face.bounds, 'top'), missing: [] },
    ];
  });
}

/** What is not stated that would tell where unit and insulation stand. */
function unsaidDepth(detail: Detail, opening: Opening, layers: readonly Layer[]): string[] {
  const { unit } = opening;
  const depths = lookThrough(detail);
  const missing = [
    ...(unit?.mounting === undefined ? ['openings.unit.mounting'] : []),
    ...(unit?.frameDepthMm === undefined ? ['openings.unit.frameDepth'] : []),
    ...(layers.some((l) => depths.of(l) === undefined) ? ['wall.thickness'] : []),
  ];
  // All sizes are there, but not how far back the unit is set.
  return missing.length > 0 ? missing : ['openings.unit.setBack'];
}

/** Whether the frame of a unit stands in line with the insulation; nothing when it surely does. */
export function depthGaps(detail: Detail, opening: Opening, plane: Plane | undefined): DepthGap[] {
  const layers = plane?.on === 'layers' ? plane.layers.filter(insulates) : [];
  if (layers.length === 0) return [];
  const depths = lookThrough(detail);
  const base = {
    kind: 'depth' as const,
    opening,
    layers,
    lengthMm: 2 * (opening.widthMm.value + opening.heightMm.value),
  };
  switch (depths.unitMeets(opening, layers)) {
    case 'meets':
      return [];
    case 'apart': {
      const distanceMm = depths.distanceMm(opening, layers)?.least;
      return [{ ...base, missing: [], ...(distanceMm === undefined ? {} : { distanceMm }) }];
    }
    case 'unknown':
      return [{ ...base, missing: unsaidDepth(detail, opening, layers) }];
  }
}
