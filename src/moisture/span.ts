/** Carries the water of a wall through a span of constant weather. */
import { flowsOf, touchedPlanes } from './tangent.js';

/** Water by plane, kg/m2; a plane that is not in it is dry. */
export type Water = ReadonlyMap<number, number>;

export interface Span {
  readonly water: Water;
  /** Vapor that entered through the inside surface and left through the outside one, kg/m2. */
  readonly inKgPerM2: number;
  readonly outKgPerM2: number;
  /** Greatest water at any instant of the span, kg/m2, in all and by plane. */
  readonly peakKgPerM2: number;
  readonly peaks: Water;
}

/** Water in all planes together, kg/m2. */
export function totalKgPerM2(water: Water): number {
  let sum = 0;
  for (const kg of water.values()) sum += kg;
  return sum;
}

/**
 * Wets and dries the planes of a wall for a time.
 *
 * The span is cut at each instant a plane falls dry, since the pressures change there: what a dry plane no longer
 * gives off, its neighbors must. Cutting conserves mass; setting an overdrawn plane to zero would not.
 * @param sdM vapor resistance from inside to each plane, m
 * @param ceilingPa pressure at the two surfaces; saturation pressure at the planes between
 * @see ISO 13788:2012, evaporation (from memory; its own wording on planes that dry within a month is not confirmed)
 */
export function overSpan(sdM: readonly number[], ceilingPa: readonly number[], water: Water, seconds: number): Span {
  const now = new Map(water);
  const peaks = new Map(water);
  let left = seconds;
  let inKgPerM2 = 0;
  let outKgPerM2 = 0;
  let peakKgPerM2 = totalKgPerM2(now);
  while (left > 0) {
    const flows = flowsOf(
      sdM,
      ceilingPa,
      touchedPlanes(sdM, ceilingPa, (plane) => now.has(plane)),
    );
    let step = left;
    const drying = flows.gains.filter((g) => g.rateKgPerM2S < 0);
    for (const { plane, rateKgPerM2S } of drying) step = Math.min(step, (now.get(plane) ?? 0) / -rateKgPerM2S);
    for (const { plane, rateKgPerM2S } of flows.gains) {
      const held = now.get(plane) ?? 0;
      const dries = rateKgPerM2S < 0 && held / -rateKgPerM2S <= step;
      const next = held + rateKgPerM2S * step;
      if (dries || !(next > 0)) now.delete(plane);
      else now.set(plane, next);
      if (next > (peaks.get(plane) ?? 0)) peaks.set(plane, next);
    }
    inKgPerM2 += flows.inKgPerM2S * step;
    outKgPerM2 += flows.outKgPerM2S * step;
    peakKgPerM2 = Math.max(peakKgPerM2, totalKgPerM2(now));
    left -= step;
  }
  return { water: now, inKgPerM2, outKgPerM2, peakKgPerM2, peaks };
}
