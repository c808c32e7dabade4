/** The unit that stands behind a number: the longest spelling that is known. */
import { unitsNamed } from './units.js';
import type { ReadUnit } from './units.js';

/** After the bare word `in` only these make it inches. */
const AFTER_INCH =
  /^(?:$|[^\w\s]|\s*(?:[^\w\s(]|\(|\d|wide|thick|deep|long|high|tall|min\b|max\b|minimum|maximum|on|onto|by|beyond|past|above|below|from|and|or|at|per|over|into|to|x\b|diameter|nominal|square|o\.?c|apart|each|of water|below|beneath|along|around|up|down|wider|minus|one\b|two\b))/i;
/** After a unit of one letter only these leave it a unit: "3 m long", "24 h before", not "2 C clips". */
const AFTER_LETTER =
  /^\s(?:(?:or|and|to|minus|at|in|for|on|but|if|\d|\()|(?:long|wide|high|deep|thick|before|after|during|without|when|beyond|apart|above|below|between|behind|over|under|past|into|onto|up|down|along|around|through|per|by|with|while|until|unless|clear|from|each|min|max|minimum|maximum)\b)/;
/** "30 m of joint", "7 d of cure"; "option 2 C of the guide" is no temperature. */
const AFTER_AMOUNT = new RegExp(String.raw`${AFTER_LETTER.source}|^\sof\b`);
const afterLetter = (written: string): RegExp => (/^[mhdsL]$/.test(written) ? AFTER_AMOUNT : AFTER_LETTER);
/** A force on a strip of a width that the method sets. */
const PER_WIDTH = /^(?:N|newtons?)(?:\s?\/\s?| per )25 ?mm\b/i;
const MOST_WORDS = 8;

export interface UnitRead {
  readonly units: readonly ReadUnit[];
  readonly text: string;
  readonly end: number;
  readonly film?: 'wet' | 'dry';
  readonly attributive: boolean;
}

/** The longest spelling of a unit that begins at `at`. */
export function unitAt(text: string, at: number): UnitRead | undefined {
  const lead = /^(?:-| ?)(?:(wet|dry)[- ](?=mils?\b))?/i.exec(text.slice(at, at + 8));
  const begin = at + (lead?.[0].length ?? 0);
  const film = lead?.[1]?.toLowerCase() as 'wet' | 'dry' | undefined;
  const wide = PER_WIDTH.exec(text.slice(begin, begin + 24));
  if (wide !== null) {
    const units = unitsNamed(wide[0]);
    if (units.length > 0) return { units, text: wide[0], end: begin + wide[0].length, attributive: false };
  }
  const stretch = /^[^\s~[\];:,]{1,24}(?: [^\s\d~[\];:,][^\s~[\];:,]{0,23}){0,7}/.exec(
    text.slice(begin, begin + 96),
  )?.[0];
  if (stretch === undefined) return undefined;
  const ends: number[] = [];
  for (const word of stretch.matchAll(/[^ -]+/g)) {
    ends.push(word.index + word[0].length);
    if (ends.length === MOST_WORDS) break;
  }
  for (const end of ends.reverse()) {
    for (const written of new Set([
      stretch.slice(0, end),
      stretch.slice(0, end).replace(/[).']+$/, ''),
      stretch.slice(0, end).replace(/\)[^)]*$/, ''),
    ])) {
      const units = written === '' ? [] : unitsNamed(written);
      if (units.length === 0) continue;
      const stop = begin + written.length;
      const after = text.slice(stop, stop + 60);
      // "One in each 500 square feet" counts; inches stand behind figures.
      const isOfWord = /[a-z]/i.test(text[at - 1] ?? '');
      if (/^in$/i.test(written) && (isOfWord || !AFTER_INCH.test(after))) continue;
      if (/^[a-z]$/i.test(written) && /^\s?[\w']/.test(after) && !afterLetter(written).test(after)) continue;
      // "10 min. mils" and "3 a day" are no units.
      if (/^min\.?$/i.test(written) && /^\.?\s(?:dry|wet|mils?|in\b|inch|mm)/i.test(after)) continue;
      return { units, text: written, end: stop, ...(film && { film }), attributive: text[at] === '-' };
    }
  }
  return undefined;
}
