/**
 * The vapor pressure in a wall as a stretched string: held at both surfaces and at every wet plane, and nowhere above
 * saturation. Where it is pressed against saturation, vapor turns to water.
 */
import { STILL_AIR_KG_PER_M_S_PA } from './data/air.js';

/**
 * The planes the string touches: surfaces, wet planes, and planes where the straight line would exceed saturation.
 *
 * The lower convex hull between each pair of held planes.
 * @param sdM vapor resistance from inside to each plane, m, rising strictly
 * @param ceilingPa pressure at the two surfaces; saturation pressure at the planes between
 * @param held true where the pressure is saturation because water lies there
 * @returns indices of the planes touched, rising, both surfaces included
 * @see ISO 13788:2012, condensation planes (from memory, confirm); lower convex hull by monotone chain
 */
export function touchedPlanes(
  sdM: readonly number[],
  ceilingPa: readonly number[],
  held: (plane: number) => boolean = () => false,
): number[] {
  const chain: number[] = [];
  let firm = 0;
  for (let k = 0; k < sdM.length; k++) {
    while (chain.length - 1 > firm) {
      const top = chain[chain.length - 1] as number;
      const before = chain[chain.length - 2] as number;
      const reach = (at(sdM, top) - at(sdM, before)) / (at(sdM, k) - at(sdM, before));
      const chordPa = at(ceilingPa, before) + (at(ceilingPa, k) - at(ceilingPa, before)) * reach;
      // A plane the chord only grazes is not touched: rounding alone must not make water.
      if (at(ceilingPa, top) < chordPa - GRAZE_PA) break;
      chain.pop();
    }
    chain.push(k);
    if (held(k)) firm = chain.length - 1;
  }
  return chain;
}

/** A billionth of the pressures in a wall. */
const GRAZE_PA = 1e-6;

function at(values: readonly number[], k: number): number {
  const value = values[k];
  if (value === undefined) throw new RangeError(`Plane ${k} is beyond the wall, which has ${values.length}.`);
  return value;
}

/** Vapor flow between two planes, kg/(m2 s), positive outward. */
export function flowKgPerM2S(fromPa: number, toPa: number, sdM: number): number {
  return (STILL_AIR_KG_PER_M_S_PA.value * (fromPa - toPa)) / sdM;
}

export interface Flows {
  /** Plane and rate at which it gains water, kg/(m2 s); below zero it dries. */
  readonly gains: readonly { readonly plane: number; readonly rateKgPerM2S: number }[];
  /** Through the inside surface into the wall, and through the outside surface out of it, kg/(m2 s). */
  readonly inKgPerM2S: number;
  readonly outKgPerM2S: number;
}

/**
 * Rates of wetting and drying on a string.
 *
 * @param touched from {@link touchedPlanes}
 * @see ISO 13788:2012: flow from the inner neighbor less flow to the outer one (from memory, confirm)
 */
export function flowsOf(sdM: readonly number[], ceilingPa: readonly number[], touched: readonly number[]): Flows {
  const flows = touched.slice(1).map((to, i) => {
    const from = at(touched, i);
    return flowKgPerM2S(at(ceilingPa, from), at(ceilingPa, to), at(sdM, to) - at(sdM, from));
  });
  return {
    gains: touched.slice(1, -1).map((plane, i) => ({ plane, rateKgPerM2S: at(flows, i) - at(flows, i + 1) })),
    inKgPerM2S: at(flows, 0),
    outKgPerM2S: at(flows, flows.length - 1),
  };
}

/** Vapor pressure at every plane, Pa, along the string. */
export function pressuresPa(
  sdM: readonly number[],
  ceilingPa: readonly number[],
  touched: readonly number[],
): number[] {
  let i = 0;
  return sdM.map((sd, k) => {
    while (i + 2 < touched.length && k > at(touched, i + 1)) i++;
    const [from, to] = [at(touched, i), at(touched, i + 1)];
    const reach = (sd - at(sdM, from)) / (at(sdM, to) - at(sdM, from));
    return at(ceilingPa, from) + (at(ceilingPa, to) - at(ceilingPa, from)) * reach;
  });
}
