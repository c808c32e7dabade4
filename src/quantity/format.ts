/**
 * From a value in the base unit to the text of a report, in the unit the author used.
 *
 * The text is rounded for reading. Compare values, never texts: two values on either side of a limit can print alike.
 */
import { findUnit } from './spelling.js';
import type { Dimension, Quantity } from './types.js';
import { fromBase, unitsOf } from './units.js';
import type { Unit } from './units.js';

/** The unit or the system a value should be printed in; a quantity fits, so its own unit can be passed on. */
export interface Like {
  readonly unit?: string;
  readonly system?: Quantity['system'];
  /**
   * Where a figure that was worked out as a limit rounds to: a least size `up`, a most size `down`, so that who builds
   * to the printed figure meets it. Lengths alone; to the nearest unless given.
   */
  readonly toward?: 'up' | 'down' | undefined;
  /** Significant digits instead of fractions and whole units, for a value that would print like one it differs from. */
  readonly digits?: number | undefined;
}

/** Printed in place of a value that is not a finite number, so that no report shows NaN. */
export const NO_VALUE = 'no value';

/** US lengths are read off a rule divided in sixteenths. */
const SIXTEENTHS = 16;
/** Shorter than this, in inches, a length is that of a thin sheet or a bead, and keeps its digits off the sixteenths. */
const LEAST_ROUNDED_IN = 1 / 4;
/** Below {@link LEAST_ROUNDED_IN}, farther from a sixteenth than this, in inches, a decimal says more than a fraction. */
const FRACTION_REACH_IN = 1 / 64;
/** Millimeters are read to the half below 10 mm; thinner than this, in mm, every digit counts. */
const LEAST_HALVED_MM = 5;
/** So much of a step, rounding of the computation is not taken for a part of the next one. */
const STEP_SLACK = 1e-6;
/** Areas and permeances are known to no more. */
const COARSE: ReadonlySet<Dimension> = new Set<Dimension>(['area', 'permeance']);
const COARSE_DIGITS = 2;

function withoutTrailingZeros(digits: string): string {
  return digits.includes('.') && !digits.includes('e') ? digits.replace(/\.?0+$/, '') : digits;
}

/** Significant digits, three unless said, but never fewer than `decimals` places and never cutting whole units. */
function rounded(x: number, decimals: number, digits = 3): string {
  const size = Math.abs(x);
  if (size >= 1e15 || (size > 0 && size < 1e-6)) return x.toPrecision(3);
  const places = size === 0 ? 0 : Math.max(decimals, digits - 1 - Math.floor(Math.log10(size)));
  return withoutTrailingZeros(x.toFixed(Math.min(places, 9)));
}

/**
 * Two digits; more where two would print a value off a power of ten as one, because the classes of vapor retarders
 * end there (0.1, 1 and 10 perm).
 *
 * @see IRC 2021 section R702.7, vapor retarder classes
 */
function coarse(x: number): string {
  for (const digits of [COARSE_DIGITS, 3, 4]) {
    const text = rounded(x, 0, digits);
    const power = Math.log10(Math.abs(Number(text)));
    const isPower = Math.abs(power - Math.round(power)) < 1e-9;
    if (!isPower || Math.abs(Number(text) - x) <= Math.abs(x) * 1e-4) return text;
  }
  return rounded(x, 0, 4);
}

/** Whole steps in `x`, to the nearest or toward one side. */
function stepsIn(x: number, perUnit: number, toward: Like['toward']): number {
  const steps = x * perUnit;
  if (toward === 'up') return Math.ceil(steps - STEP_SLACK);
  return toward === 'down' ? Math.floor(steps + STEP_SLACK) : Math.round(steps);
}

/** Inches as a mixed number to the sixteenth (`5-1/2`); short ones with two decimals when no sixteenth is near. */
function inches(x: number, toward?: Like['toward']): string {
  const away = x < 0 && toward !== undefined ? (toward === 'up' ? 'down' : 'up') : toward;
  const sixteenths = stepsIn(Math.abs(x), SIXTEENTHS, away);
  const near =
    Math.abs(x) >= LEAST_ROUNDED_IN ||
    (toward !== undefined && sixteenths > 0) ||
    Math.abs(Math.abs(x) - sixteenths / SIXTEENTHS) <= FRACTION_REACH_IN;
  // A small length that would print as 0 in keeps its digits instead.
  if (!near || (sixteenths === 0 && x !== 0) || sixteenths > 1e9) return rounded(x, 2);
  const sign = x < 0 ? '-' : '';
  const whole = Math.floor(sixteenths / SIXTEENTHS);
  let over = sixteenths % SIXTEENTHS;
  let under = SIXTEENTHS;
  if (over === 0) return `${sign}${whole}`;
  while (over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  return `${sign}${whole === 0 ? '' : `${whole}-`}${over}/${under}`;
}

/** Millimeters: whole from 10 up, halves from 5 up, below that three digits. */
function millimeters(x: number, toward: Like['toward']): string {
  const size = Math.abs(x);
  if (size < LEAST_HALVED_MM && toward === undefined) return rounded(x, 0);
  const perMm = size >= 10 ? 1 : 2;
  return rounded(stepsIn(x, perMm, toward) / perMm, 0);
}

/** Feet, and inches below 12 when there are any. */
function feet(x: number): string {
  const size = Math.abs(x);
  const whole = Math.floor(size + 1e-9);
  const rest = inches(Math.max(0, (size - whole) * 12));
  const sign = x < 0 ? '-' : '';
  if (rest === '12') return `${sign}${whole + 1} ft`;
  return whole === 0
    ? `${sign}${rest} in`
    : `${sign}${whole} ft${rest === '0' || size - whole <= 1e-9 ? '' : ` ${rest} in`}`;
}

/** A slope as rise and run with a rise of 1, as in `1:12`. */
function riseAndRun(ratio: number): string {
  const run = 1 / Math.abs(ratio);
  // Level, or so nearly that the run has no number.
  if (!Number.isFinite(run)) return '0 %';
  return `${ratio < 0 ? '-' : ''}1:${rounded(run, 0)}`;
}

/** Time in the largest unit it fills, so that 90 min prints as 1.5 h and 36 h stays in hours. */
function timeUnit(seconds: number): string {
  const size = Math.abs(seconds);
  if (size < 60) return 's';
  if (size < 3600) return 'min';
  return size < 48 * 3600 ? 'h' : 'd';
}

function unitFor(value: number, dimension: Dimension, like: Like): Unit | undefined {
  const asked = like.unit === undefined ? undefined : findUnit(like.unit, dimension);
  if (asked !== undefined) return asked;
  if (dimension === 'time') return findUnit(timeUnit(value), dimension);
  const units = unitsOf(dimension);
  const system = like.system === 'SI' ? 'SI' : 'US';
  return units.find((unit) => unit.system === 'either') ?? units.find((unit) => unit.system === system);
}

/** Units whose value is not written in front of them. */
const SPELLED: ReadonlySet<string> = new Set(['rise:run', 'R', 'RSI']);

/**
 * A value as text with its unit.
 *
 * US lengths are fractions to 1/16 in; areas and permeances have two significant digits, other values three, and all
 * keep their whole units. Millimeters of length and micrometers of film have no decimals from 10 up, temperatures one
 * at most.
 * @param value in the base unit of `dimension`
 * @param like the unit to use, or the system; without either, the US unit
 * @returns for example `5-1/2 in`, `140 mm`, `R-13`, `1:12`; {@link NO_VALUE} when the value is not finite
 */
export function formatQuantity(value: number, dimension: Dimension, like: Like = {}): string {
  const unit = unitFor(value, dimension, like);
  const x = unit === undefined ? NaN : fromBase(value, unit);
  if (unit === undefined || !Number.isFinite(x)) return NO_VALUE;
  const { toward, digits } = like;
  if (digits !== undefined && !SPELLED.has(unit.spelling)) return `${rounded(x, 0, digits)} ${unit.spelling}`;
  switch (unit.spelling) {
    case 'in':
      return `${dimension === 'length' ? inches(x, toward) : rounded(x, 0)} in`;
    case 'in/ft':
      return `${inches(x)} in/ft`;
    case 'ft':
      return feet(x);
    case 'rise:run':
      return riseAndRun(x);
    case 'R':
      return `R-${rounded(x, 0)}`;
    case 'RSI':
      return `RSI ${rounded(x, 0)}`;
    case 'mm':
      if (dimension === 'length') return `${millimeters(x, toward)} mm`;
      return `${Math.abs(x) >= 10 ? rounded(Math.round(x), 0) : rounded(x, 0)} mm`;
    case 'um':
      return `${Math.abs(x) >= 10 ? rounded(Math.round(x), 0) : rounded(x, 0)} ${unit.spelling}`;
    default: {
      // Rounding to a tenth would overflow for numbers no one measures; they keep what they are.
      const shown = dimension === 'temperature' && Math.abs(x) < 1e15 ? Math.round(x * 10) / 10 : x;
      return `${COARSE.has(dimension) ? coarse(shown) : rounded(shown, 0)} ${unit.spelling}`;
    }
  }
}

/** A quantity with its bound, in its own unit: `at least 4 in`, `12 to 15 mil`, `R-13 to R-15`, `+100/-50 %`. */
export function formatBound(quantity: Quantity): string {
  const { dimension, bound, sides } = quantity;
  let text = formatQuantity(quantity.value, dimension, quantity);
  if (sides !== undefined) text = `+${rounded(sides.extension * 100, 0)}/-${rounded(sides.compression * 100, 0)} %`;
  if (bound === 'between') {
    const upper = formatQuantity(quantity.upper ?? NaN, dimension, quantity);
    const unit = ` ${quantity.unit}`;
    // The unit is said once when both ends carry it in the same way; feet keep theirs, they may have inches.
    const once = text.endsWith(unit) && upper.endsWith(unit) && quantity.unit !== 'ft';
    return `${once ? text.slice(0, -unit.length) : text} to ${upper}`;
  }
  return bound === 'exactly' ? text : `${bound} ${text}`;
}
