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
}

/** Printed in place of a value that is not a finite number, so that no report shows NaN. */
export const NO_VALUE = 'no value';

/** US lengths are read off a rule divided in sixteenths. */
const SIXTEENTHS = 16;
/** Farther from a sixteenth than this, in inches, a decimal says more than a fraction. */
const FRACTION_REACH_IN = 1 / 64;

function withoutTrailingZeros(digits: string): string {
  return digits.includes('.') && !digits.includes('e') ? digits.replace(/\.?0+$/, '') : digits;
}

/** Three significant digits, but never fewer than `decimals` places and never cutting whole units. */
function rounded(x: number, decimals: number): string {
  const size = Math.abs(x);
  if (size >= 1e15 || (size > 0 && size < 1e-6)) return x.toPrecision(3);
  const places = size === 0 ? 0 : Math.max(decimals, 2 - Math.floor(Math.log10(size)));
  return withoutTrailingZeros(x.toFixed(Math.min(places, 9)));
}

/** Inches as a mixed number to the sixteenth (`5-1/2`), or with two decimals when no sixteenth is near. */
function inches(x: number): string {
  const sixteenths = Math.round(Math.abs(x) * SIXTEENTHS);
  const near = Math.abs(Math.abs(x) - sixteenths / SIXTEENTHS) <= FRACTION_REACH_IN;
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

/**
 * A value as text with its unit.
 *
 * US lengths are fractions to 1/16 in; other values have three significant digits and keep their whole units.
 * Millimeters of length and micrometers of film have no decimals from 10 up, temperatures one at most.
 * @param value in the base unit of `dimension`
 * @param like the unit to use, or the system; without either, the US unit
 * @returns for example `5-1/2 in`, `140 mm`, `R-13`, `1:12`; {@link NO_VALUE} when the value is not finite
 */
export function formatQuantity(value: number, dimension: Dimension, like: Like = {}): string {
  const unit = unitFor(value, dimension, like);
  const x = unit === undefined ? NaN : fromBase(value, unit);
  if (unit === undefined || !Number.isFinite(x)) return NO_VALUE;
  switch (unit.spelling) {
    case 'in':
      return `${dimension === 'length' ? inches(x) : rounded(x, 0)} in`;
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
    case 'um':
      return `${Math.abs(x) >= 10 ? rounded(Math.round(x), 0) : rounded(x, 0)} ${unit.spelling}`;
    default: {
      // Rounding to a tenth would overflow for numbers no one measures; they keep what they are.
      const shown = dimension === 'temperature' && Math.abs(x) < 1e15 ? Math.round(x * 10) / 10 : x;
      return `${rounded(shown, 0)} ${unit.spelling}`;
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
