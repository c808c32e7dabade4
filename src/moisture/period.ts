/** The German period method: ninety cold days that wet a wall, ninety warm ones that dry it. */
import { PERIOD_METHOD } from './data/period.js';
import { SURFACE_RESISTANCES } from './data/surfaces.js';
import { CAUTION, leftOutBy } from './left-out.js';
import type { SaturationFormula } from './psychrometrics.js';
import { saturationsPa, sectionOf, temperaturesC, type MoistureLayer, type Plane, type Section } from './resistance.js';
import { overSpan, totalKgPerM2 } from './span.js';
import { flowsOf, touchedPlanes } from './tangent.js';

/** A wet plane, or a wet stretch within one layer. */
export interface WetPlace {
  /** One plane, or all planes of a stretch, inside to outside. */
  readonly planes: readonly Plane[];
  readonly rateKgPerM2S: number;
  /** Condenses in the wetting period. */
  readonly condensesKgPerM2: number;
  /** Could evaporate in the drying period while every wet place stays wet. */
  readonly canDryKgPerM2: number;
  readonly dryingRateKgPerM2S: number;
}
export interface PeriodResult {
  readonly section: Section;
  readonly temperaturesC: readonly number[];
  readonly places: readonly WetPlace[];
  /** Left after the drying period, in all places together. */
  readonly remainsKgPerM2: number;
  readonly leftOut: readonly string[];
}

/** Touched planes that lie in, or at the faces of, one and the same cut layer are one wet stretch. */
function stretches(section: Section, touched: readonly number[]): number[][] {
  const groups: number[][] = [];
  for (const k of touched.slice(1, -1)) {
    const last = groups.at(-1);
    const before = last?.at(-1);
    const together = before === k - 1 && sliced(section, before, k);
    if (last !== undefined && together) last.push(k);
    else groups.push([k]);
  }
  return groups;
}

/** True when the slice between two neighboring planes is part of a layer that was cut. */
function sliced(section: Section, from: number, to: number): boolean {
  const [a, b] = [section.planes[from], section.planes[to]];
  return a?.inner === a?.outer || b?.inner === b?.outer;
}

/**
 * Wets and dries a wall by the period method.
 *
 * A stretch dries from the middle of its vapor resistance.
 * @param element a roof dries under more sun than a wall
 * @returns no places when nothing condenses
 * @throws RangeError for impossible layers
 * @see PERIOD_METHOD.source
 */
export function periodMethod(
  layers: readonly MoistureLayer[],
  element: 'wall' | 'roof' = 'wall',
  formula?: SaturationFormula,
): PeriodResult {
  const { wetting, drying } = PERIOD_METHOD;
  const section = sectionOf(layers);
  const surfaces = SURFACE_RESISTANCES.period;
  const ends = [wetting.inside.temperatureC, wetting.outside.temperatureC] as const;
  const ceilingPa = saturationsPa(section, surfaces, ...ends, formula);
  const last = ceilingPa.length - 1;
  ceilingPa[0] = Math.min(ceilingPa[0] as number, wetting.inside.vaporPressurePa);
  ceilingPa[last] = Math.min(ceilingPa[last] as number, wetting.outside.vaporPressurePa);
  const touched = touchedPlanes(section.sdM, ceilingPa);
  const gains = new Map(flowsOf(section.sdM, ceilingPa, touched).gains.map((g) => [g.plane, g.rateKgPerM2S]));
  const groups = stretches(section, touched);
  const rates = groups.map((group) => group.reduce((sum, k) => sum + (gains.get(k) ?? 0), 0));

  // For drying, every wet place is one plane between airs that are alike.
  const middles = groups.map(
    (g) => ((section.sdM[g[0] as number] as number) + (section.sdM[g.at(-1) as number] as number)) / 2,
  );
  const dryingSdM = [0, ...middles, section.sdTotalM];
  const dryingPa = [drying.airPa, ...middles.map(() => drying.planePa[element]), drying.airPa];
  const dryingRates = flowsOf(
    dryingSdM,
    dryingPa,
    dryingSdM.map((_, k) => k),
  ).gains;
  const water = new Map(rates.map((rate, i) => [i + 1, rate * wetting.seconds]));
  return {
    section,
    temperaturesC: temperaturesC(section, surfaces, ...ends),
    places: groups.map((group, i) => ({
      planes: group.map((k) => section.planes[k] as Plane),
      rateKgPerM2S: rates[i] as number,
      condensesKgPerM2: water.get(i + 1) as number,
      dryingRateKgPerM2S: -(dryingRates[i]?.rateKgPerM2S as number),
      canDryKgPerM2: -(dryingRates[i]?.rateKgPerM2S as number) * drying.seconds,
    })),
    remainsKgPerM2: totalKgPerM2(overSpan(dryingSdM, dryingPa, water, drying.seconds).water),
    leftOut: [...leftOutBy('period'), CAUTION],
  };
}
