/** A computation that leaves rain out passes no wall whose masonry stores it. */
import type { Outcome } from './result.js';
import type { Detail } from '../model/types.js';
import { RAIN_STORAGE, rainLeftOut } from '../moisture/wall/exposed-masonry.js';

/**
 * The outcome of a computation that does not follow rain: where masonry of the wall takes the rain with nothing to drain
 * it, a pass is left to the reviewer; where the drawing does not say, it is open. An open outcome
 * says so too; any other is kept.
 *
 * @see exposedMasonry
 */
export function heldForRain(detail: Detail, outcome: Outcome): Outcome {
  if (outcome.kind !== 'pass' && outcome.kind !== 'open') return outcome;
  const rain = rainLeftOut(detail);
  if (rain === undefined) return outcome;
  const sources = [...(outcome.sources ?? []), RAIN_STORAGE];
  const held = { ...outcome, sources, message: `${outcome.message} ${rain.told}` };
  if (outcome.kind === 'open') return { ...held, missing: [...new Set([...(outcome.missing ?? []), ...rain.missing])] };
  return rain.missing.length === 0 ? { ...held, kind: 'review' } : { ...held, kind: 'open', missing: rain.missing };
}
