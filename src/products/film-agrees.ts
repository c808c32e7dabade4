/** Whether the film values of a data sheet can all be true: each printed value stands for what rounds to it. */
import { coverageM2PerL } from '../film/film.js';
import { filmEnds } from '../film/film-works.js';
import { printedHalfStep } from '../quantity/printed.js';
import type { Measured, Product } from '../model/types.js';

/** From least to most. */
type Span = readonly [number, number];

const meets = (a: Span, b: Span): boolean => a[0] <= b[1] * (1 + 1e-9) + 1e-12 && b[0] <= a[1] * (1 + 1e-9) + 1e-12;
/** What a printed value may stand for. */
const around = (value: number, half: number): Span => [Math.max(0, value - half), value + half];
const times = (a: Span, b: Span): Span => [a[0] * b[0], a[1] * b[1]];

export interface FilmSum {
  readonly agrees: boolean;
  /** Dry film that the wet film leaves, um; equal for one value. */
  readonly leastUm: number;
  readonly mostUm: number;
}

/**
 * Wet film times volume solids against dry film.
 *
 * Range against range: both ends agree. One value against a range: it lies inside. Both with the digits printed.
 *
 * @param solids share of volume solids, above 0 and up to 1
 * @see dry film = wet film x volume solids (the solids stay, the rest leaves)
 */
export function drySum(wet: Measured, dry: Measured, solids: Measured): FilmSum {
  const [wetEnds, dryEnds] = [filmEnds(wet), filmEnds(dry)];
  const share: Span = [solids.value, solids.upper ?? solids.value];
  const [halfWet, halfDry, halfSolids] = [wet, dry, solids].map(printedHalfStep) as [number, number, number];
  const leftBy = (um: number, s: number): Span => times(around(um, halfWet), around(s, halfSolids));
  const least = leftBy(wetEnds.leastUm, share[0]);
  const most = leftBy(wetEnds.mostUm, share[1]);
  const [low, high] = [around(dryEnds.leastUm, halfDry), around(dryEnds.mostUm, halfDry)];
  const ranges = [wet, dry].filter((q) => q.bound === 'between').length;
  return {
    agrees: ranges === 1 ? meets([least[0], most[1]], [low[0], high[1]]) : meets(least, low) && meets(most, high),
    leastUm: wetEnds.leastUm * share[0],
    mostUm: wetEnds.mostUm * share[1],
  };
}

export interface CoverageSum {
  readonly possible: boolean;
  /** Most that a volume can cover at the least wet film, without any loss, m2/L. */
  readonly mostM2PerL: number;
  /** The film the claim rests on: as printed, or worked out from dry film and solids. */
  readonly wetUm: number;
  readonly of: Measured;
}

/**
 * Whether a claimed coverage leaves the wet film asked for. Less than the most is fine: losses on site.
 *
 * @returns `undefined` when the data give no wet film, nor dry film with solids
 * @see src/film/film.ts: a liter over a square meter stands 1000 um high; the same constant is 1604 mil ft2/gal
 */
export function coverageSum(product: Product): CoverageSum | undefined {
  const { coverageM2PerL: claimed, wetFilmUm: wet, dryFilmUm: dry, volumeSolids: solids } = product;
  if (claimed === undefined) return undefined;
  const of = wet ?? dry;
  const share = wet !== undefined ? 1 : (solids?.value ?? 0);
  if (of === undefined || !(share > 0) || !(of.value > 0)) return undefined;
  const wetUm = of.value / share;
  const thinnestUm = Math.max(1e-6, of.value - printedHalfStep(of)) / share;
  const highest = claimed.upper ?? claimed.value;
  return {
    possible: highest - printedHalfStep(claimed) <= coverageM2PerL(thinnestUm) * (1 + 1e-9),
    mostM2PerL: coverageM2PerL(wetUm),
    wetUm,
    of,
  };
}
