/** Days as the command line takes them. */
import { UsageError, valueOf, type Token } from './arguments.js';

/** True for a day of the calendar written YYYY-MM-DD; the 30th of February is none. */
function isDay(text: string): boolean {
  const time = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(text) : NaN;
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(text);
}

/** Today as YYYY-MM-DD in local time, the day on the reader's calendar. */
function localDate(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/**
 * The day a review is made as of, YYYY-MM-DD: that of `--date`, else today.
 *
 * @throws UsageError when `--date` is no day of the calendar
 */
export function dayOfReview(given: readonly Token[]): string {
  const date = valueOf(given, 'date') ?? localDate();
  if (!isDay(date)) throw new UsageError(`--date is a day written YYYY-MM-DD, not "${date}".`);
  return date;
}
