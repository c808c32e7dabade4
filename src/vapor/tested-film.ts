/** The film a permeance was tested at, against the film that goes on the wall. */
import { fieldOfLayer } from '../model/named-field.js';
import type { Apply, Detail, Layer, Measured, Product } from '../model/types.js';

/** Dry film, um: least and most of what is specified. */
export interface InstalledFilm {
  readonly leastUm: number;
  readonly mostUm: number;
  readonly stated: Measured;
  /** Set when it was worked out from the wet film. */
  readonly volumeSolids?: number;
  /** Set when several works were added. */
  readonly coats?: number;
}
export type FilmFound =
  | { readonly kind: 'known'; readonly film: InstalledFilm }
  | { readonly kind: 'unknown'; readonly missing: readonly string[] };

/**
 * Dry film of a layer: stated by the work that applies it, by the layer, or wet film times volume solids.
 *
 * Works that put the layer on the same places are its coats and add up.
 * @see dry film = wet film x volume solids, both as the data sheet defines them
 */
export function installedFilm(detail: Detail, layer: Layer, product: Product): FilmFound {
  const works = detail.work.filter(
    (w): w is Apply =>
      w.action === 'apply' && w.layer === layer && (w.dryFilmUm !== undefined || w.wetFilmUm !== undefined),
  );
  const placesOf = (w: Apply): string => w.places.map((p) => p.value).join(', ');
  const [first, ...others] = works.map((w) => ({ work: w, found: filmOf(w, product, layer) }));
  if (first === undefined) return filmOf(layer, product, layer);
  return others
    .filter((o) => placesOf(o.work) === placesOf(first.work))
    .reduce((sum, { found }) => added(sum, found), first.found);
}

function filmOf(from: Pick<Layer, 'dryFilmUm' | 'wetFilmUm'>, product: Product, layer: Layer): FilmFound {
  const { dryFilmUm: dry, wetFilmUm: wet } = from;
  const solids = product.volumeSolids?.value;
  if (dry !== undefined)
    return { kind: 'known', film: { leastUm: dry.value, mostUm: dry.upper ?? dry.value, stated: dry } };
  if (wet === undefined) return { kind: 'unknown', missing: [fieldOfLayer(layer, 'dryFilm')] };
  if (solids === undefined)
    return { kind: 'unknown', missing: ['product.volumeSolids', fieldOfLayer(layer, 'dryFilm')] };
  return {
    kind: 'known',
    film: { leastUm: wet.value * solids, mostUm: (wet.upper ?? wet.value) * solids, stated: wet, volumeSolids: solids },
  };
}

function added(a: FilmFound, b: FilmFound): FilmFound {
  if (a.kind === 'unknown') return a;
  if (b.kind === 'unknown') return b;
  const { leastUm, mostUm, stated, coats } = a.film;
  return {
    kind: 'known',
    film: { stated, leastUm: leastUm + b.film.leastUm, mostUm: mostUm + b.film.mostUm, coats: (coats ?? 1) + 1 },
  };
}

/** Largest deviation of a film from the tested one, as a signed share of the tested film. */
export function deviation(film: Pick<InstalledFilm, 'leastUm' | 'mostUm'>, testedUm: number): number {
  const low = film.leastUm / testedUm - 1;
  const high = film.mostUm / testedUm - 1;
  return Math.abs(high) >= Math.abs(low) ? high : low;
}
