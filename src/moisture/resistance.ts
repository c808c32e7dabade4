/** A wall as resistances in series, to heat and to vapor, and what that makes of temperature at each plane. */
import { AIR_SPACE_SD_M, SLICE_M2KW, STILL_AIR_KG_PER_M_S_PA, TIGHT_MU, TIGHT_SD_M } from './data/air.js';
import type { Surfaces } from './data/surfaces.js';
import { saturationPressurePa, type SaturationFormula } from './psychrometrics.js';

/** What becomes of water that lies against the layer. */
export const STORAGE_CLASSES = ['wood', 'wood panel', 'non-absorbing', 'other'] as const;
export type StorageClass = (typeof STORAGE_CLASSES)[number];

interface LayerFacts {
  readonly id: string;
  /** Thermal resistance of the whole layer, m2 K/W. */
  readonly rM2KW: number;
  readonly storage: StorageClass;
  /** Dry mass of the layer; limits for wood are shares of it. */
  readonly areaMassKgPerM2?: number;
  /** Cut into at least so many slices; else only as resistance demands. */
  readonly slices?: number;
}
/** Inside to outside. `sdM` is the still air layer of equal vapor resistance; `Infinity` is a perfect barrier. */
export type MoistureLayer = LayerFacts & ({ readonly sdM: number } | { readonly permeanceNgPerPaSM2: number });

/** An interface between layers, or a cut through one. The first and the last are the surfaces. */
export interface Plane {
  readonly index: number;
  /** Layer that ends here, or is cut here; absent on the inside surface. */
  readonly inner?: MoistureLayer;
  /** Layer that begins here, or is cut here; absent on the outside surface. */
  readonly outer?: MoistureLayer;
  /** `between board and membrane`, `in insulation, 3/8 of the way out`. */
  readonly name: string;
  readonly rFromInsideM2KW: number;
  readonly sdFromInsideM: number;
}
export interface Section {
  readonly layers: readonly MoistureLayer[];
  readonly planes: readonly Plane[];
  readonly sdM: readonly number[];
  /** Without the surfaces. */
  readonly rTotalM2KW: number;
  readonly sdTotalM: number;
}

/** Below this a film without thermal resistance is no layer of its own, m. */
const NO_SD_M = 1e-9;
/** Less than this no layer of real thickness has, m. */
const LEAST_SD_M = 1e-6;

/**
 * Still air layer of equal vapor resistance from a vapor resistance factor, m.
 *
 * @param mu vapor resistance factor; anything tighter than 100 000 counts as that
 * @throws RangeError when mu is below 1 or the thickness is not above zero
 * @see ISO 13788:2012 (from memory, confirm)
 */
export function sdFromMuM(mu: number, thicknessMm: number): number {
  if (!(mu >= 1)) throw new RangeError(`A vapor resistance factor of 1 or more is expected; found ${mu}.`);
  if (!(thicknessMm > 0)) throw new RangeError(`A thickness above zero is expected, in mm; found ${thicknessMm}.`);
  return (Math.min(mu, TIGHT_MU.value) * thicknessMm) / 1000;
}

/** From permeance in ng/(Pa s m2) to the still air layer of equal resistance in m, and back. */
export function sdFromPermeanceM(permeanceNgPerPaSM2: number): number {
  return STILL_AIR_KG_PER_M_S_PA.value / (permeanceNgPerPaSM2 * 1e-12);
}
export function permeanceFromSdNg(sdM: number): number {
  return STILL_AIR_KG_PER_M_S_PA.value / (sdM * 1e-12);
}

/** An unventilated air space: the thermal resistance is declared, the vapor resistance is the standard's. */
export function airSpace(id: string, rM2KW: number): MoistureLayer {
  return { id, rM2KW, sdM: AIR_SPACE_SD_M.value, storage: 'other' };
}

function sdOf(layer: MoistureLayer): number {
  const sdM = 'sdM' in layer ? layer.sdM : sdFromPermeanceM(layer.permeanceNgPerPaSM2);
  if (!(layer.rM2KW >= 0 && Number.isFinite(layer.rM2KW)))
    throw new RangeError(
      `Layer "${layer.id}": a thermal resistance of zero or more is expected; found ${layer.rM2KW}.`,
    );
  if (!(sdM >= 0)) throw new RangeError(`Layer "${layer.id}": a vapor resistance of zero or more is expected.`);
  if (layer.rM2KW > 0 && sdM < LEAST_SD_M)
    throw new RangeError(
      `Layer "${layer.id}" has thermal but no vapor resistance (sd ${sdM} m); give it at least that of still air, ` +
        'which is its thickness.',
    );
  return Math.min(sdM, TIGHT_SD_M.value);
}

function slicesOf(layer: MoistureLayer, mostSliceM2KW: number): number {
  // A hair of rounding must not make another slice.
  const needed = Math.max(1, Math.ceil(layer.rM2KW / mostSliceM2KW - 1e-9));
  return Math.max(needed, layer.slices ?? 1);
}

/**
 * Cuts a wall into planes at which temperature and vapor pressure are looked at.
 *
 * @param layers inside to outside; a film without any resistance makes no plane
 * @param mostSliceM2KW layers of more resistance are cut into equal slices; `Infinity` for none
 * @throws RangeError for a wall without vapor resistance, or a layer with impossible figures
 * @see ISO 13788:2012 (from memory, confirm)
 */
export function sectionOf(layers: readonly MoistureLayer[], mostSliceM2KW: number = SLICE_M2KW.value): Section {
  if (!(mostSliceM2KW > 0))
    throw new RangeError(`Slices of a resistance above zero are expected; found ${mostSliceM2KW}.`);
  const kept = layers.map((layer) => ({ layer, sd: sdOf(layer) })).filter((l) => l.sd > NO_SD_M);
  const first = kept[0];
  if (first === undefined) throw new RangeError('A wall with at least one layer that resists vapor is expected.');
  const planes: Plane[] = [
    { index: 0, outer: first.layer, name: 'inside surface', rFromInsideM2KW: 0, sdFromInsideM: 0 },
  ];
  let r = 0;
  let sd = 0;
  for (const [k, { layer, sd: layerSdM }] of kept.entries()) {
    const count = slicesOf(layer, mostSliceM2KW);
    for (let i = 1; i <= count; i++) {
      const next = i < count ? layer : kept[k + 1]?.layer;
      planes.push({
        index: planes.length,
        inner: layer,
        ...(next === undefined ? {} : { outer: next }),
        name:
          i < count
            ? `in ${layer.id}, ${i}/${count} of the way out`
            : next === undefined
              ? 'outside surface'
              : `between ${layer.id} and ${next.id}`,
        rFromInsideM2KW: r + (layer.rM2KW * i) / count,
        sdFromInsideM: sd + (layerSdM * i) / count,
      });
    }
    r += layer.rM2KW;
    sd += layerSdM;
  }
  return { layers, planes, sdM: planes.map((p) => p.sdFromInsideM), rTotalM2KW: r, sdTotalM: sd };
}

/**
 * Temperature at each plane, degC, in steady state.
 *
 * @throws RangeError when the wall and its surfaces have no thermal resistance
 * @see series resistance; ISO 6946
 */
export function temperaturesC(section: Section, surfaces: Surfaces, insideC: number, outsideC: number): number[] {
  const total = surfaces.insideM2KW + section.rTotalM2KW + surfaces.outsideM2KW;
  if (!(total > 0)) throw new RangeError(`A thermal resistance above zero is expected; found ${total} m2 K/W.`);
  return section.planes.map(
    (p) => insideC - ((insideC - outsideC) * (surfaces.insideM2KW + p.rFromInsideM2KW)) / total,
  );
}

/** Saturation pressure at each plane, Pa. Same arguments as {@link temperaturesC}. */
export function saturationsPa(
  section: Section,
  surfaces: Surfaces,
  insideC: number,
  outsideC: number,
  formula?: SaturationFormula,
): number[] {
  return temperaturesC(section, surfaces, insideC, outsideC).map((t) => saturationPressurePa(t, formula));
}

/**
 * Permeance of all that lies on each side of a plane, ng/(Pa s m2); `Infinity` beyond a surface.
 *
 * @see series resistance: the equivalent air layers add
 */
export function sidePermeancesNg(
  section: Section,
  plane: Plane,
): { readonly insideNgPerPaSM2: number; readonly outsideNgPerPaSM2: number } {
  return {
    insideNgPerPaSM2: permeanceFromSdNg(plane.sdFromInsideM),
    outsideNgPerPaSM2: permeanceFromSdNg(section.sdTotalM - plane.sdFromInsideM),
  };
}

/**
 * The part of a wall that the calculation sees when a cavity is well ventilated: what lies inside of the cavity.
 * Its outer surface takes `CAVITY_SURFACE_M2KW` and its outer air is that of the cavity.
 *
 * @throws RangeError when no layer has the id
 * @see ISO 13788:2012 and ISO 6946 (from memory, confirm)
 */
export function insideOfCavity(layers: readonly MoistureLayer[], cavityId: string): readonly MoistureLayer[] {
  const at = layers.findIndex((layer) => layer.id === cavityId);
  if (at < 0)
    throw new RangeError(`A layer "${cavityId}" is expected; found ${layers.map((l) => `"${l.id}"`).join(', ')}.`);
  return layers.slice(0, at);
}
