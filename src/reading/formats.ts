/**
 * What the `format` names of the schemas mean: a quantity of a dimension, by the parser that reads it later, or a
 * calendar date.
 */
import { isProblem, parseQuantity } from '../quantity/parse.js';
import { BASE_UNITS, type Dimension } from '../quantity/types.js';

export type Format = Dimension | 'thickness' | 'date';

const DAYS = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * Whether a text is a day that exists, written year-month-day.
 *
 * @see ISO 8601-1, calendar date in extended format; leap years as the Gregorian calendar has them
 */
export function isDate(text: string): boolean {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (parts === null) return false;
  const [year, month, day] = parts.slice(1).map(Number) as [number, number, number];
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  return day >= 1 && day <= (month === 2 && !leap ? 28 : (DAYS[month - 1] ?? 0));
}

const DIMENSIONS = Object.keys(BASE_UNITS) as Dimension[];

/** Whether a format is that of a quantity. */
export function isDimension(format: unknown): format is Dimension {
  return typeof format === 'string' && Object.hasOwn(BASE_UNITS, format);
}

/** The dimension that a format is told about: a thickness is a length, which for films and sheets may be in mils. */
export function dimensionOf(format: unknown): Dimension | undefined {
  return format === 'thickness' ? 'length' : isDimension(format) ? format : undefined;
}

export const FORMATS = Object.fromEntries<(text: string) => boolean>([
  ...DIMENSIONS.map(
    (dimension) => [dimension, (text: string): boolean => !isProblem(parseQuantity(text, dimension))] as const,
  ),
  [
    'thickness',
    (text: string): boolean => !isProblem(parseQuantity(text, 'length')) || !isProblem(parseQuantity(text, 'film')),
  ],
  ['date', isDate],
]) as Readonly<Record<Format, (text: string) => boolean>>;
