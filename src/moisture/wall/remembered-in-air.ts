/** Many details of a library show one wall at one place: what was worked out for its figures is kept. */
import type { MonthOfAir } from '../interior-climate.js';

/** So many answers are kept for one place before all are forgotten: memory stays bounded. */
const MOST_KEPT = 500;

/**
 * Keeps answers by the year of air and by a text of all figures they depend on.
 *
 * @returns a function that gives the kept answer, or builds and keeps it
 */
export function rememberedInAir<T>(): (year: readonly MonthOfAir[], figures: unknown, build: () => T) => T {
  const places = new WeakMap<readonly MonthOfAir[], Map<string, { readonly value: T }>>();
  return (year, figures, build) => {
    let kept = places.get(year);
    if (kept === undefined) places.set(year, (kept = new Map<string, { readonly value: T }>()));
    // No two numbers share a text, but for those beyond all: sectionOf takes them for one and the same.
    const key = JSON.stringify(figures);
    let found = kept.get(key);
    if (found === undefined) {
      if (kept.size >= MOST_KEPT) kept.clear();
      kept.set(key, (found = { value: build() }));
    }
    return found.value;
  };
}
