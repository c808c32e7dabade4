/** Film arithmetic: what a wet film dries to, how far a volume goes, how far single readings may stray. */

const atLeastZero = (what: string, value: number): void => {
  if (!(value >= 0)) throw new RangeError(`${what} of zero or more is expected; found ${value}.`);
};
const shareOf = (what: string, value: number): void => {
  if (!(value > 0 && value <= 1)) throw new RangeError(`${what} above 0 and up to 1 is expected; found ${value}.`);
};

/**
 * Volume solids of a product after thinning.
 *
 * @param volumeSolids share of the product that stays as film, above 0 and up to 1
 * @param thinner volume of thinner added, as a share of the volume of the product
 * @returns solids as a share of the mixture
 * @throws RangeError for values out of range
 * @see Conservation of volume: the solids stay, the mixture grows by the thinner.
 */
export function thinnedSolids(volumeSolids: number, thinner: number): number {
  shareOf('A share of volume solids', volumeSolids);
  atLeastZero('A share of thinner', thinner);
  return volumeSolids / (1 + thinner);
}

/** Dry film a wet film leaves, same unit as the wet film. */
export function dryFilm(wetFilm: number, volumeSolids: number, thinner = 0): number {
  atLeastZero('A wet film', wetFilm);
  return wetFilm * thinnedSolids(volumeSolids, thinner);
}

/** Wet film needed for a dry film, same unit as the dry film. */
export function wetFilm(dryFilmWanted: number, volumeSolids: number, thinner = 0): number {
  atLeastZero('A dry film', dryFilmWanted);
  return dryFilmWanted / thinnedSolids(volumeSolids, thinner);
}

/**
 * Area a liter covers.
 *
 * @param wetFilmUm wet film, um, above zero
 * @param loss share of the volume that does not reach the wall, from 0 to below 1
 * @returns m2/L: a liter over a square meter stands 1000 um high
 * @throws RangeError for values out of range
 */
export function coverageM2PerL(wetFilmUm: number, loss = 0): number {
  if (!(wetFilmUm > 0)) throw new RangeError(`A wet film above zero is expected, in um; found ${wetFilmUm}.`);
  shareOf('A share that reaches the wall', 1 - loss);
  return (1000 / wetFilmUm) * (1 - loss);
}

/**
 * Dry film that a volume can leave on an area.
 *
 * @param volumeL volume on hand, L
 * @param areaM2 area to cover, m2, above zero
 * @param loss share of the volume that does not reach the wall, from 0 to below 1
 * @returns um
 * @throws RangeError for values out of range
 */
export function dryFilmAvailableUm(volumeL: number, volumeSolids: number, areaM2: number, loss = 0): number {
  atLeastZero('A volume', volumeL);
  if (!(areaM2 > 0)) throw new RangeError(`An area above zero is expected, in m2; found ${areaM2}.`);
  shareOf('A share that reaches the wall', 1 - loss);
  return ((volumeL * (1 - loss)) / areaM2) * 1000 * thinnedSolids(volumeSolids, 0);
}

/** Coats needed when one coat may not be thicker than `mostPerCoat`; same unit for both. */
export function coatsNeeded(wetFilmTotal: number, mostPerCoat: number): number {
  if (!(mostPerCoat > 0))
    throw new RangeError(`A greatest film per coat above zero is expected; found ${mostPerCoat}.`);
  // A hair of rounding must not ask for another coat.
  return Math.max(1, Math.ceil(wetFilmTotal / mostPerCoat - 1e-6));
}

/** Shares of the least and greatest film between which a single spot must lie. */
export const SPOT_SHARES = {
  low: 0.8,
  high: 1.2,
  source: {
    citation: 'SSPC-PA 2, spot limits of 80 and 120 percent (a rule for coatings on metal)',
    provenance: 'seen at second hand' as const,
  },
};

/**
 * Limits for a single spot, in the unit of the arguments.
 *
 * @see SPOT_SHARES.source
 */
export function spotLimits(least: number, most: number): { readonly least: number; readonly most: number } {
  return { least: SPOT_SHARES.low * least, most: SPOT_SHARES.high * most };
}
