/** From the text of a paragraph to its sentences. */
import type { Prose } from './prose.js';

/** A stretch of a prose, in characters of its text. */
export interface Sentence {
  readonly start: number;
  readonly end: number;
}

/** After these a point never ends a sentence. */
const NEVER =
  /(?:^|[\s(])(?:no|nos|sec|fig|art|par|para|sq|cu|approx|dia|e\.g|i\.e|vs|incl|dept|gal|deg|wt|vol|temp|(?<!(?:method|procedure|type|class|grade|annex|part|group|category|use|degrees?|deg) )[A-Z])\.$/i;

const LONGEST = 1200;

/**
 * The sentences of a text. A point ends one when white space and a capital, a digit after a word, or a bracket
 * follows; after an abbreviation only when it cannot be one (`Lap 3 in. Seal edges.` ends after `in.`).
 */
export function sentencesOf({ text }: Prose): readonly Sentence[] {
  const found: Sentence[] = [];
  let start = 0;
  const end = (at: number): void => {
    let first = start;
    while (text[first] === ' ') first++;
    // What is longer than any sentence is read in pieces, so that no text can make reading slow.
    while (at - first > LONGEST) {
      const space = text.lastIndexOf(' ', first + LONGEST);
      const cut = space > first ? space : first + LONGEST;
      found.push({ start: first, end: cut });
      first = space > first ? cut + 1 : cut;
    }
    if (first < at) found.push({ start: first, end: at });
    start = at;
  };
  for (const stop of text.matchAll(/[.?!][)\]"']*(?=\s+["'([]*[A-Z\d])/g)) {
    const at = stop.index + stop[0].length;
    const before = text.slice(Math.max(0, stop.index - 12), stop.index + 1);
    if (NEVER.test(before)) continue;
    const next = /^\s+["'([]*(\S)/.exec(text.slice(at, at + 8))?.[1] ?? '';
    // A number begins a sentence only after a word that is no unit: "3 in. 75 mm" goes on.
    if (/\d/.test(next) && /(?:\d|\b(?:in|ft|min|max|sq|lb|psi|hr|mils?|C|F))\.$/i.test(before)) continue;
    // "Btu/(h sq. ft. F)" is one unit.
    if (/\bft\.$/i.test(before) && /^\s+[FR]\b\s*\)?/.test(text.slice(at, at + 8))) continue;
    end(at);
  }
  end(text.length);
  return found;
}
