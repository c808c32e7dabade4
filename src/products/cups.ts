/** Which cup a test of water vapor permeance was made with, from the words of a data sheet. */

export type Cup = 'dry' | 'wet';

/** ASTM E96, from memory, confirm: desiccant in the cup for A, C and E; water for B and D, and for BW turned over. */
const OF_PROCEDURE: Readonly<Record<string, Cup>> = { A: 'dry', B: 'wet', BW: 'wet', C: 'dry', D: 'wet', E: 'dry' };

/** The procedures of each cup, as words for a message; from memory, confirm. */
export const PROCEDURES: Readonly<Record<Cup, string>> = { dry: 'procedure A', wet: 'procedure B' };

/**
 * The cups that a method names, by procedure letter or in words.
 *
 * @returns `undefined` when it names none (`ASTM E96`)
 */
export function cupsOf(method: string): ReadonlySet<Cup> | undefined {
  const cups = new Set<Cup>();
  const letters =
    /\b(?:procedures?|methods?)\s+((?:(?:[A-E]|BW)\b(?:\s*(?:,|&|\/|and|or)\s*)?)+)/i.exec(method)?.[1] ?? '';
  for (const letter of letters.match(/\b(?:BW|[A-E])\b/gi) ?? []) {
    const cup = OF_PROCEDURE[letter.toUpperCase()];
    if (cup !== undefined) cups.add(cup);
  }
  if (/\bdry[ -]cup|\bdesiccant/i.test(method)) cups.add('dry');
  if (/\bwet[ -]cup|\bwater (?:method|cup)/i.test(method)) cups.add('wet');
  return cups.size === 0 ? undefined : cups;
}
