/** Climate zone of a project, as the vapor tables divide it. */
import type { TableZone } from './data/permitted-tables.js';

/**
 * The row of the tables for a zone as written: `5A`, `4C`, `7`.
 *
 * @returns `unknown marine` for 4 without its letter (C is marine, and marine 4 counts with the cold zones);
 * `undefined` when the text is no climate zone
 */
export function tableZone(text: string): TableZone | 'unknown marine' | undefined {
  const parts = /^\s*([1-8])\s*([ABC]?)\s*$/i.exec(text);
  if (parts === null) return undefined;
  const [, digit, letter] = parts as unknown as [string, string, string];
  if (digit !== '4') return digit as TableZone;
  if (letter === '') return 'unknown marine';
  return letter.toUpperCase() === 'C' ? 'marine 4' : '4';
}
