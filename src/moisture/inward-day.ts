/**
 * A day of sun on a cladding soaked by rain: what condenses in the wall in the sunny hours, and whether the rest of
 * the day dries it again. What is left the next morning gathers from day to day.
 *
 * The model is the project's own, like that of the sunny hours alone; see inward.ts.
 */
import { MONTH_DAYS, SECONDS_PER_DAY } from './data/air.js';
import { ABSORPTANCE, PAST_VENTED_CAVITY, SOAKED, SUNNY_HOURS, SUNNY_IRRADIANCE } from './data/inward.js';
import type { MonthOfAir } from './interior-climate.js';
import { behindCladding, solarRiseK, type Reservoir } from './inward.js';
import { CAUTION, leftOutBy } from './left-out.js';
import { sectionOf, type MoistureLayer, type Plane } from './resistance.js';
import { overSpan, totalKgPerM2, type Water } from './span.js';

export interface SunnyDay {
  /** 1 for January: the outdoor and indoor air of the day are means of this month. */
  readonly month: number;
  /** Water that has condensed by the end of the sunny hours, and what lies at its planes the next morning, kg/m2. */
  readonly sunnyKgPerM2: number;
  readonly leftKgPerM2: number;
  /** The plane that holds most at the end of the sunny hours. */
  readonly plane: Plane;
}
export interface SunnyYear {
  /** One day for each month in which the sun makes water in the wall. */
  readonly days: readonly SunnyDay[];
  /** The day that leaves most; of equals, the one that gathers most. */
  readonly worst?: SunnyDay;
  /** Months in which some water is left after a day, 1 for January. */
  readonly gathersIn: readonly number[];
  /** Left over the days of these months if each were such a day, kg/m2. */
  readonly seasonKgPerM2: number;
  /** Sentences to print: what was taken for sun, rain and cavity. */
  readonly assumptions: readonly string[];
  readonly leftOut: readonly string[];
}

/** Less than this is rounding, kg/m2. */
const ROUNDING_KG_PER_M2 = 1e-9;
const SECONDS_PER_HOUR = 3600;

/**
 * Follows one sunny day after rain in each month.
 *
 * @param layers inside to outside, without the cladding and its cavity
 * @param year air on both sides, twelve months from January
 * @param vented true when air washes the cavity behind the cladding
 * @throws RangeError unless twelve months are given; for impossible layers
 * @see data/inward.ts for what is assumed; behindCladding, overSpan for the flow
 */
export function sunnyYear(layers: readonly MoistureLayer[], year: readonly MonthOfAir[], vented: boolean): SunnyYear {
  if (year.length !== 12) throw new RangeError(`Twelve months are expected; found ${year.length}.`);
  const section = sectionOf(layers);
  const sunny: Reservoir = {
    riseK: solarRiseK(ABSORPTANCE.value, SUNNY_IRRADIANCE.value),
    wetness: SOAKED.value,
    arrives: vented ? PAST_VENTED_CAVITY.value : 1,
  };
  const sunnyS = SUNNY_HOURS.value * SECONDS_PER_HOUR;
  const days = year.flatMap((air, m): SunnyDay[] => {
    const sun = behindCladding(section, air, sunny);
    if (sun.behindPa <= air.inside.vaporPressurePa) return [];
    // For the rest of the day the cladding is as warm as the air and still wet.
    const rest = behindCladding(section, air, { ...sunny, riseK: 0 });
    const noon = overSpan(section.sdM, sun.ceilingPa, new Map(), sunnyS);
    const wettest = mostOf(noon.water);
    // What condenses outward in a cold night is not the sun's doing.
    if (wettest === undefined) return [];
    const after = overSpan(section.sdM, rest.ceilingPa, noon.water, SECONDS_PER_DAY - sunnyS);
    const left = new Map([...after.water].filter(([plane]) => noon.water.has(plane)));
    return [
      {
        month: m + 1,
        sunnyKgPerM2: totalKgPerM2(noon.water),
        leftKgPerM2: totalKgPerM2(left),
        plane: section.planes[wettest] as Plane,
      },
    ];
  });
  const left = days.filter((d) => d.leftKgPerM2 > ROUNDING_KG_PER_M2);
  const worst = days.reduce<SunnyDay | undefined>((a, b) => (a === undefined || worse(b, a) ? b : a), undefined);
  return {
    days,
    ...(worst === undefined ? {} : { worst }),
    gathersIn: left.map((d) => d.month),
    seasonKgPerM2: left.reduce((sum, d) => sum + d.leftKgPerM2 * (MONTH_DAYS[d.month - 1] as number), 0),
    assumptions: assumptions(sunny.riseK, vented),
    leftOut: [...leftOutBy('inward drive'), CAUTION],
  };
}

const worse = (a: SunnyDay, b: SunnyDay): boolean =>
  a.leftKgPerM2 > b.leftKgPerM2 || (a.leftKgPerM2 === b.leftKgPerM2 && a.sunnyKgPerM2 > b.sunnyKgPerM2);

function mostOf(water: Water): number | undefined {
  let most: number | undefined;
  for (const [plane, kg] of water) if (most === undefined || kg > (water.get(most) ?? 0)) most = plane;
  return most;
}

function assumptions(riseK: number, vented: boolean): string[] {
  return [
    `A sunny day after rain: the cladding is soaked and, for ${SUNNY_HOURS.value} hours, ${riseK.toFixed(0)} K warmer than the air of the month (${ABSORPTANCE.value * 100} % of ${SUNNY_IRRADIANCE.value} W/m2, from memory, confirm); for the rest of the day it is as warm as the air and still wet.`,
    vented
      ? `The vented cavity is taken to let ${PAST_VENTED_CAVITY.value * 100} % of the vapor pressure of the cladding past (common practice, no source).`
      : 'Nothing is taken to carry vapor off behind the cladding.',
  ];
}
