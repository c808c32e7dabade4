/** Numbers of the moisture room as text. */
import { formatQuantity } from '../quantity/format.js';
import { permToNg } from '../vapor/classes.js';
import type { UnitSystem } from '../model/unit-system.js';

/** January first. */
export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** Name of a month, 1 for January. */
export function monthName(month: number): string {
  return MONTHS[month - 1] ?? `month ${month}`;
}

/** `June`, `June and July`, `May to September`, `January, May`; the year may be crossed: `November to March`. */
export function monthNames(months: readonly number[]): string {
  if (months.length === 0) return 'no month';
  if (months.length === 12) return 'every month';
  const has = new Set(months);
  const before = (m: number): number => ((m + 10) % 12) + 1;
  const after = (m: number): number => (m % 12) + 1;
  const starts = [...has].filter((m) => !has.has(before(m))).sort((a, b) => a - b);
  return starts
    .map((start) => {
      let end = start;
      while (has.has(after(end))) end = after(end);
      if (end === start) return monthName(start);
      return `${monthName(start)} ${after(start) === end ? 'and' : 'to'} ${monthName(end)}`;
    })
    .join(', ');
}

/** kg/m2 of one oz/ft2. @see NIST SP 811: the avoirdupois pound of 0.45359237 kg, the foot of 0.3048 m */
const OUNCE_PER_SQUARE_FOOT = 0.45359237 / 16 / 0.3048 ** 2;

/** oz/ft2 of an amount of water on an area in kg/m2. */
export function ouncesPerSquareFoot(kgPerM2: number): number {
  return kgPerM2 / OUNCE_PER_SQUARE_FOOT;
}

/**
 * Water on an area: `0.62 kg/m2`, `2.03 oz/ft2`; less than a hundredth is told as such.
 *
 * In US units by the ounce: what gathers in walls, 0.1 to 2 kg/m2, is then 0.3 to 7. By the pound it would be 0.02 to
 * 0.4, and `lb/ft2` is read as a pressure.
 */
export function waterText(kgPerM2: number, system: UnitSystem): string {
  const [value, unit] = system === 'SI' ? [kgPerM2, 'kg/m2'] : [ouncesPerSquareFoot(kgPerM2), 'oz/ft2'];
  if (value > 0 && value < 0.01) return `less than 0.01 ${unit}`;
  return `${value.toFixed(2)} ${unit}`;
}

/** R-value as its author writes it: `R-7.5`, `RSI 1.32`. */
export function resistanceText(m2KPerW: number, system: UnitSystem): string {
  return formatQuantity(m2KPerW, 'thermalResistance', { system, unit: system === 'SI' ? 'RSI' : 'R' });
}

/**
 * `0.7 perm`, `40 ng/(Pa s m2)`: two digits, for an estimate has no more.
 *
 * @param to where a value is asked for: `up` for a least, `down` for a most, so that what is printed is enough
 */
export function permeanceText(
  ngPerPaSM2: number,
  system: UnitSystem,
  to: 'up' | 'down' | 'nearest' = 'nearest',
): string {
  const perUnit = system === 'US' ? permToNg(1) : 1;
  return formatQuantity(toTwoDigits(ngPerPaSM2 / perUnit, to) * perUnit, 'permeance', { system });
}

function toTwoDigits(value: number, to: 'up' | 'down' | 'nearest'): number {
  if (!(value > 0)) return value;
  const step = 10 ** (Math.floor(Math.log10(value) + 1e-12) - 1);
  const round = { up: Math.ceil, down: Math.floor, nearest: Math.round }[to];
  // A value that has two digits already keeps them.
  const slack = to === 'up' ? -1e-6 : to === 'down' ? 1e-6 : 0;
  return round(value / step + slack) * step;
}

/** A share as whole percent. */
export function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
