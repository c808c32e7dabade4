/** Days as the command line takes them. */

/** True for a day of the calendar written YYYY-MM-DD; the 30th of February is none. */
export function isDay(text: string): boolean {
  const time = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(text) : NaN;
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(text);
}

/** Today as YYYY-MM-DD in local time, the day on the reader's calendar. */
export function localDate(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
