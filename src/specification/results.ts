/** Results in words: `Pass`, `No growth`, `Class A`, `no visible water leakage when tested`. */

import { LESS, MORE } from './comparator-words.js';

export interface WordResult {
  readonly start: number;
  readonly end: number;
  readonly words: string;
}

/** "No less than" and "none under" compare values, and are no results. */
const COMPARED = String.raw`(?:[a-z]+ ){0,2}(?:under|below|above|over|exceed\w*|less|more|thinner|thicker|fewer|lower|higher|greater|later|earlier|closer|flatter|steeper|wider|narrower|smaller|larger|longer|shorter|(?:${LESS}|${MORE}) than)\b`;
const AFTER_LABEL = new RegExp(
  String.raw`^[\s[(~,;]*(?:0\s*[,(:]?\s*)?(pass(?:es|ed|ing)?(?! \d)|unaffected|no (?!${COMPARED})(?:visible |signs? of )?[a-z]+(?: (?!(?:at|when|after|in|for|under|on|by|or|and|if)\b)[a-z]+)?|none(?! ${COMPARED})|class [a-z\d]+\b(?: or [a-z]+)?|type [ivx\d]+\b|complies|compliant|meets? requirements?|sealable)(?![\w-])`,
  'i',
);
const IN_SENTENCE =
  /\bno (?:visible |evidence of |signs? of )?(?:uncontrolled )?(?:water |air |fungal |mold )?(?:leakage|penetration|growth|cracking|delamination|intrusion|infiltration|blistering)\b/i;

/**
 * The result in words that a text asks for.
 *
 * @param text the whole statement, with `~` over the standards it names
 * @param body where the text after its label begins; 0 without a label
 * @param hasMethod a standard is named, so a test is spoken of
 */
export function wordResult(text: string, body: number, hasMethod: boolean): WordResult | undefined {
  if (body > 0) {
    const found = AFTER_LABEL.exec(text.slice(body));
    if (found?.[1] === undefined) return undefined;
    const end = body + found[0].length;
    return { start: end - found[1].length, end, words: found[1] };
  }
  const found = hasMethod ? IN_SENTENCE.exec(text) : null;
  return found === null ? undefined : { start: found.index, end: found.index + found[0].length, words: found[0] };
}
