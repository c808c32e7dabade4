/**
 * Turns the question around: how much continuous insulation, or how tight an interior layer, makes a wall pass?
 *
 * Asked of no condensation at all, the answer is exact. With every other figure held, the pressure of the straight
 * line less saturation is monotone in what is varied, at each plane and in each month. So the values at which a plane
 * stays dry form a half line, the values at which all do an interval, and its ends are found by bisection. The
 * inside surface counts as a plane. Where the outside surface is wet, as that of a cooled wall in damp heat may be,
 * the answer is on the safe side.
 */
import { bisect } from './bisect.js';
import { SLICE_M2KW } from './data/air.js';
import { SURFACE_RESISTANCES } from './data/surfaces.js';
import { heldPa, yearOfWater, type PlanePeak, type YearOfWater, type YearOptions } from './condensation.js';
import type { MonthOfAir } from './interior-climate.js';
import { permeanceFromSdNg, saturationsPa, sectionOf, type MoistureLayer, type Plane } from './resistance.js';

/**
 * When a wall passes. `dries`: it may condense up to an amount if all of it dries within the year. `held`: it may
 * condense if the year holds against limits of the asker's own.
 */
export type Acceptance =
  | { readonly kind: 'no condensation' }
  | { readonly kind: 'dries'; readonly mostKgPerM2: number }
  | { readonly kind: 'held'; readonly holds: (year: YearOfWater) => boolean };

export interface Question {
  /** Inside to outside, the layer to vary among them. */
  readonly layers: readonly MoistureLayer[];
  readonly vary: string;
  readonly year: readonly MonthOfAir[];
  readonly accept: Acceptance;
  readonly options?: YearOptions;
  /** Sharpness of the answer, m2 K/W or m; a millionth unless given. */
  readonly tolerance?: number;
}
/** The least value that passes, and the year with it. */
interface Found {
  readonly kind: 'found';
  readonly value: number;
  /** Beyond this value another plane gets wet; absent when none does. */
  readonly upTo?: number;
  readonly year: YearOfWater;
}
export type Answer =
  | Found
  /** Passes with the least there is of it. */
  | { readonly kind: 'not needed'; readonly year: YearOfWater }
  /** Fails with the most there may be of it: the plane that then holds most water, and the month it does. */
  | { readonly kind: 'out of reach'; readonly plane: Plane; readonly month: number };

const TOLERANCE = 1e-6;
/** A layer this thin to vapor is as good as none, m. */
const NO_SD_M = 1e-4;

interface Knob {
  readonly least: number;
  readonly most: number;
  readonly turned: (x: number) => readonly MoistureLayer[];
}

interface Excess {
  readonly plane: Plane;
  readonly month: number;
  readonly excessPa: number;
}

/** Straight line of pressure less saturation at the inside surface and each plane, for all months in turn. */
function excesses({ year, options = {} }: Question, layers: readonly MoistureLayer[]): Excess[] {
  const section = sectionOf(layers, options.mostSliceM2KW);
  const surfaces = options.surfaces ?? SURFACE_RESISTANCES.interstitial;
  return year.flatMap(({ inside, outside }, m) => {
    const saturated = saturationsPa(section, surfaces, inside.temperatureC, outside.temperatureC, options.formula);
    const [insidePa, outsidePa] = [heldPa(inside, options.formula), heldPa(outside, options.formula)];
    return section.planes.slice(0, -1).map((plane, k) => {
      const fall = (insidePa - outsidePa) * (plane.sdFromInsideM / section.sdTotalM);
      return { plane, month: m + 1, excessPa: insidePa - fall - (saturated[k] as number) };
    });
  });
}

const worst = (all: readonly Excess[]): Excess => all.reduce((a, b) => (b.excessPa > a.excessPa ? b : a));
const dry = (all: readonly Excess[]): boolean => all.every((e) => e.excessPa <= 0);

/** The interval in which nothing condenses, or the worst place when there is none. */
function dryInterval(question: Question, knob: Knob): { from: number; upTo: number } | Excess {
  const at = (x: number): Excess[] => excesses(question, knob.turned(x));
  const [low, high] = [at(knob.least), at(knob.most)];
  // More of it dries a plane in a month, or wets it; each way is one monotone family.
  const helped = low.map((e, i) => e.excessPa > (high[i] as Excess).excessPa);
  const tolerance = question.tolerance ?? TOLERANCE;
  const family = (all: readonly Excess[], wanted: boolean): Excess[] => all.filter((_, i) => helped[i] === wanted);
  if (!dry(family(high, true))) return worst(family(high, true));
  if (!dry(family(low, false))) return worst(family(low, false));
  const from = dry(family(low, true))
    ? knob.least
    : bisect((x) => dry(family(at(x), true)), knob.least, knob.most, tolerance);
  const upTo = dry(family(high, false))
    ? knob.most
    : bisect((x) => dry(family(at(x), false)), knob.most, knob.least, tolerance);
  return from <= upTo ? { from, upTo } : worst(at(from));
}

function solve(question: Question, knob: Knob): Answer {
  const { accept, year, options } = question;
  const yearAt = (x: number): YearOfWater => yearOfWater(knob.turned(x), year, options);
  const passes = (result: YearOfWater): boolean =>
    result.outcome === 'none' ||
    (accept.kind === 'dries' && result.outcome === 'dries' && result.peakKgPerM2 <= accept.mostKgPerM2) ||
    (accept.kind === 'held' && accept.holds(result));
  const interval = dryInterval(question, knob);
  const wholly = 'from' in interval ? interval : undefined;
  if (accept.kind === 'no condensation') {
    if (wholly === undefined) return outOfReach(yearAt(knob.most), interval as Excess);
    if (wholly.from === knob.least) return { kind: 'not needed', year: yearAt(knob.least) };
    const upTo = wholly.upTo < knob.most ? { upTo: wholly.upTo } : {};
    return { kind: 'found', value: wholly.from, ...upTo, year: yearAt(wholly.from) };
  }
  // Water that dries is accepted too: the edge lies between none of it and enough for no condensation.
  const bare = yearAt(knob.least);
  if (passes(bare)) return { kind: 'not needed', year: bare };
  const enough = [wholly?.from, knob.most].find((x): x is number => x !== undefined && passes(yearAt(x)));
  if (enough === undefined) return outOfReach(yearAt(knob.most), worst(excesses(question, knob.turned(knob.most))));
  const value = bisect((x) => passes(yearAt(x)), knob.least, enough, question.tolerance ?? TOLERANCE);
  return { kind: 'found', value, year: yearAt(value) };
}

function outOfReach(year: YearOfWater, otherwise: Excess): Answer {
  const wettest = year.planes.reduce<PlanePeak | undefined>(
    (a, b) => (a === undefined || b.kgPerM2 > a.kgPerM2 ? b : a),
    undefined,
  );
  // A wet inside surface is no plane that holds water.
  const { plane, month } = wettest ?? otherwise;
  return { kind: 'out of reach', plane, month };
}

function varied({ layers, vary }: Question, change: (layer: MoistureLayer) => MoistureLayer): readonly MoistureLayer[] {
  if (!layers.some((l) => l.id === vary))
    throw new RangeError(`A layer "${vary}" is expected; found ${layers.map((l) => `"${l.id}"`).join(', ')}.`);
  return layers.map((layer) => (layer.id === vary ? change(layer) : layer));
}

/**
 * Least thermal resistance of one layer that makes the wall pass, m2 K/W.
 *
 * The vapor resistance of the layer stays as given whatever its thickness: give that of the thickness meant, and ask
 * again if the answer is another one. Thin insulation that is tight to vapor can do more harm than none.
 * @param mostM2KW the most that could be built
 * @returns for `no condensation`, the exact least; for `dries` and `held`, an edge: the wall passes there and fails
 * with a hair less. Where the cold season rules, more goes on passing, as tests on random walls hold, and less fails
 * but in rare walls whose condensate within the layer grows with its thickness
 * @throws RangeError when no layer has the id
 * @see the head of this file
 */
export function leastResistance(question: Question, mostM2KW: number): Answer {
  if (!(mostM2KW > 0)) throw new RangeError(`A resistance above zero is expected, in m2 K/W; found ${mostM2KW}.`);
  // As many slices whatever its resistance, so that the same planes are compared throughout.
  const slices = Math.ceil(mostM2KW / (question.options?.mostSliceM2KW ?? SLICE_M2KW.value) - 1e-9);
  return solve(question, {
    least: 0,
    most: mostM2KW,
    turned: (rM2KW) => varied(question, (layer) => ({ ...layer, rM2KW, slices: Math.max(1, slices) })),
  });
}

export type PermeanceAnswer =
  (Extract<Answer, { kind: 'found' }> & { readonly mostNgPerPaSM2: number }) | Exclude<Answer, { kind: 'found' }>;

/**
 * Highest permeance of one layer, meant for the interior side, that makes the wall pass, ng/(Pa s m2).
 *
 * `not needed` says that any permeance passes.
 * @param mostSdM the tightest that could be built, m of still air; 50 m is a polyethylene sheet
 * @returns as {@link leastResistance}; `value` is the still air layer in m that goes with the permeance
 * @throws RangeError when no layer has the id
 * @see the head of this file
 */
export function highestPermeance(question: Question, mostSdM: number): PermeanceAnswer {
  if (!(mostSdM > NO_SD_M)) throw new RangeError(`A still air layer above ${NO_SD_M} m is expected; found ${mostSdM}.`);
  const answer = solve(question, {
    least: NO_SD_M,
    most: mostSdM,
    turned: (sdM) =>
      varied(question, ({ id, rM2KW, storage, areaMassKgPerM2, slices }) => ({
        id,
        rM2KW,
        storage,
        sdM,
        ...(areaMassKgPerM2 === undefined ? {} : { areaMassKgPerM2 }),
        ...(slices === undefined ? {} : { slices }),
      })),
  });
  return answer.kind === 'found' ? { ...answer, mostNgPerPaSM2: permeanceFromSdNg(answer.value) } : answer;
}
