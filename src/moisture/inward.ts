/**
 * Summer inward drive: sun on a rain-wet cladding pushes vapor toward a cooled room, and it may condense on the
 * outer face of the first tight layer it meets.
 *
 * No standard holds this case; the model is the project's own. The back of the cladding is taken as the outer air of
 * the wall inside it: as warm as the sun makes the cladding, as damp as rain left it. What a vented cavity carries
 * off is a share.
 */
import type { CodeSource } from '../vapor/data/code-source.js';
import { CAVITY_SURFACE_M2KW } from './data/air.js';
import { SURFACE_RESISTANCES } from './data/surfaces.js';
import type { Air } from './interior-climate.js';
import { CAUTION, leftOutBy } from './left-out.js';
import { vaporPressurePa, type SaturationFormula } from './psychrometrics.js';
import { saturationsPa, sectionOf, type MoistureLayer, type Plane, type Section } from './resistance.js';
import { flowsOf, pressuresPa, touchedPlanes } from './tangent.js';

export interface Reservoir {
  /** How much warmer than outdoor air the cladding is, K; see {@link solarRiseK}. */
  readonly riseK: number;
  /** Relative humidity at its back, share: 1 just after rain, less as it dries. */
  readonly wetness: number;
  /** Share of the cladding's vapor pressure that arrives behind the cavity: 1 unvented, less where air washes it out. */
  readonly arrives: number;
  /** Water the cladding can give, kg/m2; unlimited when absent. */
  readonly storedKgPerM2?: number;
}
export interface InwardDrive {
  /** Vapor pressure behind the cladding less that of the room, Pa; below zero the drive is outward. */
  readonly drivePa: number;
  readonly claddingC: number;
  /** `condenses`; `damp` where some plane reaches the limit of dampness; else `dry`. */
  readonly outcome: 'condenses' | 'damp' | 'dry';
  /** Planes that condense, inside to outside, each with its rate and with the water of all the sunny hours. */
  readonly wet: readonly { readonly plane: Plane; readonly rateKgPerM2S: number; readonly kgPerM2: number }[];
  /** Vapor from the cladding condenses on the outer face of the wall before it enters. */
  readonly outerFaceWet?: true;
  /** The dampest plane short of the surfaces, relative humidity as a share. */
  readonly dampest?: { readonly plane: Plane; readonly humidity: number };
  readonly leftOut: readonly string[];
}

/** Air this damp inside a wall lets mould grow, given time: the limit for surfaces, taken over. */
export const DAMP_INSIDE = {
  humidity: 0.8,
  source: {
    basis: 'practice',
    citation: 'limit for surfaces applied to planes inside the wall',
    provenance: 'common practice, no source',
  } satisfies CodeSource,
};

/**
 * How far sun warms a surface above the air, K.
 *
 * @param absorptance share of sunlight taken up, 0 to 1
 * @param irradianceWPerM2 mean over the hours looked at, zero or more
 * @throws RangeError for values out of range
 * @see sol-air temperature of a vertical surface, ASHRAE Handbook Fundamentals (from memory, confirm)
 */
export function solarRiseK(
  absorptance: number,
  irradianceWPerM2: number,
  outsideM2KW: number = SURFACE_RESISTANCES.interstitial.outsideM2KW,
): number {
  share('An absorptance', absorptance);
  if (!(irradianceWPerM2 >= 0))
    throw new RangeError(`An irradiance of zero or more is expected; found ${irradianceWPerM2}.`);
  return absorptance * irradianceWPerM2 * outsideM2KW;
}

/** Both sides of the wall inside of a cladding, with the pressure and its ceiling at each plane. */
export interface BehindCladding {
  readonly claddingC: number;
  /** Vapor pressure of the air behind the cladding, Pa. */
  readonly behindPa: number;
  readonly saturated: readonly number[];
  /** Pressure at the two surfaces; saturation at the planes between. */
  readonly ceilingPa: readonly number[];
  /** Vapor condenses on the outer face before it enters. */
  readonly outerFaceWet: boolean;
}

/**
 * The state behind a cladding: as warm as sun makes it, as damp as it is wet, less what a cavity carries off.
 *
 * @throws RangeError for shares outside 0 to 1
 */
export function behindCladding(
  section: Section,
  air: { readonly inside: Air; readonly outside: Air },
  reservoir: Reservoir,
  formula?: SaturationFormula,
): BehindCladding {
  share('A wetness', reservoir.wetness);
  share('A share that arrives', reservoir.arrives);
  const claddingC = air.outside.temperatureC + reservoir.riseK;
  const claddingPa = vaporPressurePa(claddingC, reservoir.wetness, formula);
  const behindPa = reservoir.arrives * claddingPa + (1 - reservoir.arrives) * air.outside.vaporPressurePa;
  const surfaces = {
    insideM2KW: SURFACE_RESISTANCES.interstitial.insideM2KW,
    outsideM2KW: CAVITY_SURFACE_M2KW.value,
  };
  const saturated = saturationsPa(section, surfaces, air.inside.temperatureC, claddingC, formula);
  const ceilingPa = [...saturated];
  const last = ceilingPa.length - 1;
  ceilingPa[0] = Math.min(saturated[0] as number, air.inside.vaporPressurePa);
  const outerFaceWet = behindPa > (saturated[last] as number);
  ceilingPa[last] = Math.min(saturated[last] as number, behindPa);
  return { claddingC, behindPa, saturated, ceilingPa, outerFaceWet };
}

/**
 * What sun on a wet cladding does to the wall inside of it.
 *
 * @param layers inside to outside, without the cladding and its cavity; see `insideOfCavity`
 * @param seconds the sunny hours taken as one steady state
 * @throws RangeError for shares outside 0 to 1 and impossible layers
 * @see the head of this file; the flow itself as in the monthly method
 */
export function inwardDrive(
  layers: readonly MoistureLayer[],
  air: { readonly inside: Air; readonly outside: Air },
  reservoir: Reservoir,
  seconds: number,
  formula?: SaturationFormula,
): InwardDrive {
  if (!(seconds >= 0)) throw new RangeError(`A time of zero or more is expected, in s; found ${seconds}.`);
  const section = sectionOf(layers);
  const { claddingC, behindPa, saturated, ceilingPa, outerFaceWet } = behindCladding(section, air, reservoir, formula);
  const touched = touchedPlanes(section.sdM, ceilingPa);
  const { gains } = flowsOf(section.sdM, ceilingPa, touched);
  const asked = gains.reduce((sum, g) => sum + g.rateKgPerM2S, 0) * seconds;
  const given = asked > 0 ? Math.min(1, (reservoir.storedKgPerM2 ?? Infinity) / asked) : 1;
  const wet = gains.map(({ plane, rateKgPerM2S }) => ({
    plane: section.planes[plane] as Plane,
    rateKgPerM2S,
    kgPerM2: rateKgPerM2S * seconds * given,
  }));
  const dampest = pressuresPa(section.sdM, ceilingPa, touched)
    .map((p, k) => ({ plane: section.planes[k] as Plane, humidity: p / (saturated[k] as number) }))
    .slice(1, -1)
    .reduce<InwardDrive['dampest']>((a, b) => (a === undefined || b.humidity > a.humidity ? b : a), undefined);
  const damp = (dampest?.humidity ?? 0) >= DAMP_INSIDE.humidity;
  return {
    drivePa: behindPa - air.inside.vaporPressurePa,
    claddingC,
    outcome: wet.length > 0 ? 'condenses' : damp ? 'damp' : 'dry',
    wet,
    ...(outerFaceWet ? { outerFaceWet } : {}),
    ...(dampest === undefined ? {} : { dampest }),
    leftOut: [...leftOutBy('inward drive'), CAUTION],
  };
}

function share(what: string, value: number): void {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${what} from 0 to 1 is expected; found ${value}.`);
}
