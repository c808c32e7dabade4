/**
 * Where insulation and units stand in the depth of the wall.
 *
 * Depth is measured from the wall face that the flange of a unit lies on (the outer side of the layer that carries the
 * barrier): outward positive, mm.
 */
import { baseIndex } from '../model/order.js';
import type { Detail, Family, Layer, Opening } from '../model/types.js';

/** Layers thin enough to be left out of the depth when no thickness is stated. */
const THIN: ReadonlySet<Family> = new Set<Family>([
  'fluid-applied membrane',
  'fluid-applied flashing',
  'self-adhered membrane',
  'self-adhered flashing',
  'mechanically fastened sheet',
  'building paper',
  'transition membrane',
  'vapor retarder',
  'paint',
  'primer',
  'tape',
]);

/** From the inner to the outer side of something in the wall, mm. */
export interface Depth {
  readonly inMm: number;
  readonly outMm: number;
}

export interface Depths {
  /** Where a layer stands; `undefined` when a thickness up to it is not stated. */
  readonly of: (layer: Layer) => Depth | undefined;
  /** How far the unit of an opening is from the nearest of some layers, over the places the unit may have, mm. */
  readonly distanceMm: (
    opening: Opening,
    layers: readonly Layer[],
  ) => { readonly least: number; readonly most: number } | undefined;
  readonly unitMeets: (opening: Opening, layers: readonly Layer[]) => 'meets' | 'apart' | 'unknown';
}

const gapMm = (a: Depth, b: Depth): number => Math.max(0, a.inMm - b.outMm, b.inMm - a.outMm);

/** Places the frame of a unit may have: at the face with a flange, anywhere in the opening when how far it is set back is not told. */
function framesOf(opening: Opening): { readonly outer: Depth; readonly inner: Depth } | undefined {
  const frame = opening.unit?.frameDepthMm?.value;
  const mounting = opening.unit?.mounting?.value;
  if (frame === undefined || mounting === undefined) return undefined;
  const outer = { inMm: -frame, outMm: 0 };
  if (mounting === 'flange') return { outer, inner: outer };
  const setBack = opening.unit?.setBackMm?.value;
  if (setBack !== undefined) {
    const told = { inMm: -setBack - frame, outMm: -setBack };
    return { outer: told, inner: told };
  }
  const depth = opening.depthMm?.value;
  if (depth === undefined) return undefined;
  const innermost = -Math.max(depth, frame);
  return { outer, inner: { inMm: innermost, outMm: innermost + frame } };
}

/** Least and greatest distance of a frame from the nearest of some layers, while it moves from one place to another. */
function distances(outer: Depth, inner: Depth, layers: readonly Depth[]): { least: number; most: number } {
  const frame = outer.outMm - outer.inMm;
  const nearest = (inMm: number): number => Math.min(...layers.map((l) => gapMm({ inMm, outMm: inMm + frame }, l)));
  const clamp = (inMm: number): number => Math.min(outer.inMm, Math.max(inner.inMm, inMm));
  // Farthest off it stands at either end of its way or in the middle between two layers; nearest, beside a layer.
  const middles = layers.flatMap((a) => layers.map((b) => (a.outMm + b.inMm - frame) / 2));
  const beside = layers.flatMap((l) => [l.outMm, l.inMm - frame]);
  const found = [outer.inMm, inner.inMm, ...[...middles, ...beside].map(clamp)].map(nearest);
  return { least: Math.min(...found), most: Math.max(...found) };
}

/** Looks through the wall of a detail. */
export function lookThrough(detail: Detail): Depths {
  const base = baseIndex(detail);
  const thickness = (layer: Layer): number | undefined =>
    layer.thicknessMm?.value ?? (THIN.has(layer.family) ? 0 : undefined);
  const of = (layer: Layer): Depth | undefined => {
    if (base < 0) return undefined;
    const outside = layer.index > base;
    const between = outside
      ? detail.layers.slice(base + 1, layer.index)
      : detail.layers.slice(layer.index + 1, base + 1);
    const [own, ...others] = [layer, ...between].map(thickness);
    if (own === undefined || others.some((t) => t === undefined)) return undefined;
    const away = others.reduce<number>((sum, t) => sum + (t ?? 0), 0);
    return outside ? { inMm: away, outMm: away + own } : { inMm: -away - own, outMm: -away };
  };
  const distanceMm: Depths['distanceMm'] = (opening, layers) => {
    const frames = framesOf(opening);
    const depths = layers.map(of);
    const known = depths.filter((d) => d !== undefined);
    if (frames === undefined || known.length === 0 || known.length < depths.length) return undefined;
    return distances(frames.outer, frames.inner, known);
  };
  return {
    of,
    distanceMm,
    unitMeets: (opening, layers) => {
      const d = distanceMm(opening, layers);
      if (d === undefined) return 'unknown';
      return d.most < 0.1 ? 'meets' : d.least > 0.1 ? 'apart' : 'unknown';
    },
  };
}
