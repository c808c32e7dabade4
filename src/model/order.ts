/**
 * The order of work: what is done where, what comes before what, and how much time is declared between.
 */
import { isFluid, shedsWater } from './families.js';
import type { Apply, Detail, Family, Layer, Opening, Place, SetIn, Work } from './types.js';

/** A work at one of its places. */
export interface Spot {
  readonly work: Apply;
  readonly place: Place;
  /** Sorts in the order of work; see {@link spotsAt}. */
  readonly rank: number;
}

export const JAMB_PLACES = ['jambs', 'left jamb', 'right jamb'] as const satisfies readonly Place[];
export const FLANGE_PLACES = ['flange head', 'flange jambs', 'flange sill'] as const satisfies readonly Place[];
export const FIELD_PLACES = ['field', 'field below sill', 'field above sill'] as const satisfies readonly Place[];

/** Families that line, seal or fill an opening without being flashing. */
const NOT_FLASHING: ReadonlySet<Family> = new Set<Family>([
  'sealant',
  'backer rod',
  'spray foam',
  'primer',
  'paint',
  'batt insulation',
  'board insulation',
  'insulating sheathing',
  'sheathing',
  'interior board',
  'vapor retarder',
  'cladding',
  'air space',
  'framing',
  'drainage mat',
]);

/**
 * Works at some places of one opening, in the order written.
 *
 * Within one work the places are done in the order of its list, except that material which goes on liquid over
 * several places is one piece without laps: there all places have the same rank.
 */
export function spotsAt(detail: Detail, opening: Opening, places: readonly Place[]): Spot[] {
  return detail.work.flatMap((work) => {
    if (work.action !== 'apply' || !work.openings.includes(opening)) return [];
    return work.places.flatMap(({ value: place }, i) => {
      if (!places.includes(place)) return [];
      return [{ work, place, rank: work.step + (isFluid(work.family) ? 0 : i / work.places.length) }];
    });
  });
}

/** As {@link spotsAt}, only what leads water: primer, sealant, foam and the like are left out. */
export function flashingAt(detail: Detail, opening: Opening, places: readonly Place[]): Spot[] {
  return spotsAt(detail, opening, places).filter(({ work }) => !NOT_FLASHING.has(work.family));
}

/** True when `a` is done before `b`; places of one fluid-applied work are done at once and count as in order. */
export function inOrder(a: Spot, b: Spot): boolean {
  return a.rank < b.rank || (a.work === b.work && isFluid(a.work.family));
}

/** The first step that sets the unit of an opening; `undefined` when no step does. */
export function unitSet(detail: Detail, opening: Opening): SetIn | undefined {
  return detail.work.find((w): w is SetIn => w.action === 'set' && w.sets === 'unit' && w.openings.includes(opening));
}

/** The first step that puts a penetration in; `undefined` when it is simply there. */
export function penetrationSet(detail: Detail, id: string): SetIn | undefined {
  return detail.work.find(
    (w): w is SetIn => w.action === 'set' && w.sets === 'penetration' && w.penetrations.some((p) => p.id === id),
  );
}

/** The wall layer a work on the field puts on: the one it names, else the one made of the same product. */
export function layerOf(detail: Detail, work: Apply): Layer | undefined {
  if (work.layer !== undefined) return work.layer;
  if (work.productId === undefined || !isField(work)) return undefined;
  return detail.layers.find((l) => l.productId?.value === work.productId?.value);
}

/** True for work on the field of the wall rather than at an opening, joint or edge. */
export function isField(work: Apply): boolean {
  return work.places.some(({ value }) => (FIELD_PLACES as readonly Place[]).includes(value));
}

/** Works that put on the field of the water or air barrier, in order of work. */
export function barrierWorks(detail: Detail): Apply[] {
  return detail.work.filter(
    (w): w is Apply => w.action === 'apply' && isField(w) && isBarrier(w.family, layerOf(detail, w)),
  );
}

function isBarrier(family: Family, layer: Layer | undefined): boolean {
  return shedsWater(family) || (layer?.controls.some((c) => c.value === 'water') ?? false);
}

/** Works that hang the cladding, in order of work. */
export function claddingWorks(detail: Detail): Apply[] {
  return detail.work.filter(
    (w): w is Apply => w.action === 'apply' && isField(w) && (layerOf(detail, w)?.family ?? w.family) === 'cladding',
  );
}

/**
 * A wall that is masonry through and through: brick or stone with no sheathing, membrane or cavity inboard of it is no
 * veneer but the wall itself.
 *
 * @returns index of the outermost such layer; -1 when the wall is none
 */
export function solidMasonryIndex({ layers }: Detail): number {
  const backed: ReadonlySet<Family> = new Set<Family>(['sheathing', 'insulating sheathing', 'concrete', 'masonry']);
  const index = layers.findLastIndex(
    (l) => l.family === 'cladding' && /\b(brick|masonry|block|stone)\b/i.test(l.material?.value ?? ''),
  );
  const inboard = layers.slice(0, Math.max(0, index));
  return inboard.some((l) => backed.has(l.family) || l.family === 'air space' || shedsWater(l.family)) ? -1 : index;
}

/**
 * The layer that carries the barrier: the outermost sheathing; without one, the outermost concrete, masonry,
 * framing or insulating sheathing that lies inboard of the first membrane. A wall of solid brick or stone carries it
 * itself.
 *
 * @returns its index, counted from the interior; -1 when no such layer is drawn
 */
export function baseIndex(detail: Detail): number {
  const sheathing = detail.layers.findLastIndex((l) => l.family === 'sheathing');
  if (sheathing >= 0) return sheathing;
  const membrane = detail.layers.findIndex((l) => shedsWater(l.family));
  const carriers: ReadonlySet<Family> = new Set<Family>(['concrete', 'masonry', 'framing', 'insulating sheathing']);
  const solid = solidMasonryIndex(detail);
  if (solid >= 0) return solid;
  if (membrane < 0) {
    const wall = detail.layers.findIndex((l) => l.family === 'concrete' || l.family === 'masonry');
    return wall >= 0 ? wall : detail.layers.findIndex((l) => carriers.has(l.family));
  }
  return detail.layers.findLastIndex((l, i) => i < membrane && carriers.has(l.family));
}

/**
 * True when a work hangs a layer outboard of another work: insulation, furring, cladding. A barrier on the field is
 * not meant, because its own extent tells what it covers.
 */
export function hangsOver(detail: Detail, by: Apply, work: Apply): boolean {
  const layer = isField(by) ? layerOf(detail, by) : undefined;
  if (layer === undefined || isBarrier(by.family, layer)) return false;
  return layer.index > Math.max(baseIndex(detail), layerOf(detail, work)?.index ?? -1);
}

/** Works that a name stands for: the work of that id, and those that put on the layer of that id. */
export function worksNamed(detail: Detail, name: string): Work[] {
  return detail.work.filter((w) => w.id === name || (w.action === 'apply' && w.layer?.id === name));
}

/**
 * Time declared between the end of one work and the start of a later one: the sum of the waits from `from` up to
 * the step before `to`. The work in between takes time too, so it is the least that passes.
 *
 * @returns seconds; `undefined` when none of these steps declares a wait
 */
export function declaredBetweenS(detail: Detail, from: Work, to: Work): number | undefined {
  const waits = detail.work.flatMap((w) =>
    w.step >= from.step && w.step < to.step && w.waitS !== undefined ? [w.waitS.value] : [],
  );
  return waits.length === 0 ? undefined : waits.reduce((sum, wait) => sum + wait, 0);
}
