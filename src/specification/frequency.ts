/** How often something is done: `one test per 1,000 square feet`, `every 16 inches`, `two tests for each elevation`. */
import { quantitiesIn } from './quantities.js';
import type { Statement } from './statements.js';
import type { Value } from './values.js';

const FREQUENCY =
  /\b(?:(?:at least |minimum (?:of )?|not (?:less|fewer) than )?(?:one|two|three|four|five|a|an|(?<![\d./-])\d+)\s(?!(?:inch(?:es)?|in(?! (?:each|every)\b)|mm|feet|foot|ft)\b)(?:[\w-]+\s){0,5}(?:per|for (?:each|every)|in (?:each|every)|every)|every|at intervals of|for each|per)\s*$/i;
/** Behind a count: how often it comes. Coats and layers are not counted again and again. */
const FOR_EACH = /^\s*(?:per\b|(?:for|at|on|in|from|of) (?:each|every)\b)/i;

/** "1/16 inch per 4 feet" is how far a line may be out, and says nothing of how often. */
const PER_LENGTH = /(?:\b(?:inch(?:es)?|in\.?|mm|millimeters?)|\d["”])\s+per\s*$/i;

/** Whether a count is the one of a frequency that follows: "one test per 1000 square feet". */
export function isCountOf({ plain }: Statement, value: Value, next: Value | undefined): boolean {
  if (next === undefined || (value.kind !== 'count' && value.kind !== undefined)) return false;
  const frequency = frequencyBefore(plain, next);
  return frequency !== null && frequency.index <= value.start;
}

/** The words of a frequency before its stretch; null when there are none. */
export function frequencyBefore(plain: string, value: Value): RegExpExecArray | null {
  if (value.kind !== 'area' && value.kind !== 'length' && value.kind !== 'time') return null;
  const from = Math.max(0, value.start - 120);
  if (PER_LENGTH.test(plain.slice(from, value.start))) return null;
  const found = FREQUENCY.exec(plain.slice(from, value.start));
  if (found !== null && isMeasured(found[0])) return null;
  if (found !== null) found.index += from;
  return found;
}

/** "178 N per": a force, and no number of tests. */
function isMeasured(words: string): boolean {
  return quantitiesIn(words).some(({ units }) => units.some(({ kind }) => kind !== 'count'));
}

/** Whether a count says how often: "one test per floor". */
export function isCountForEach({ plain }: Statement, value: Value): boolean {
  if (value.kind !== 'count' || /(?:coats?|layers?|plies)$/i.test(value.found.unitText)) return false;
  return FOR_EACH.test(plain.slice(value.found.end));
}

/** The section's words for a frequency. */
export function frequencyName(plain: string, frequency: RegExpExecArray): string {
  const words = frequency[0].trim();
  const from = Math.max(0, frequency.index - 60);
  const before = plain
    .slice(from, frequency.index)
    // A word that was cut in two is left out.
    .replace(from === 0 ? /^$/ : /^\S*\s/, '')
    .replace(/^.*[.;:]\s*/, '')
    // Nor is what is covered, as the name of a standard.
    .replace(/^.*~[\s,]*/, '')
    // What is said of another stretch would name this one wrongly.
    .replace(/^.*\d.*$/, '')
    .trim();
  return `frequency: ${`${before} ${words}`.trim()}`.slice(0, 120);
}
