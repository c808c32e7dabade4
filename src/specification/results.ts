/** Results in words: `Pass`, `No growth`, `Class A`, `no visible water leakage when tested`. */

export interface WordResult {
  readonly start: number;
  readonly end: number;
  readonly words: string;
}

/** "No longer than 3 hours" is a limit and no result. */
const AFTER_LABEL =
  /^[\s[(]*(?:0\s*[,(:]?\s*)?(pass(?:es|ed|ing)?|no (?!(?:more|less|[a-z]+er)(?: apart)? than\b)(?:visible |signs? of )?[a-z]+(?: [a-z]+)?|none|class [a-z\d]+\b(?: or [a-z]+)?|type [ivx\d]+\b|complies|compliant|meets? requirements?|sealable)(?![\w-])/i;
const IN_SENTENCE =
  /\bno (?:visible |evidence of |signs? of )?(?:uncontrolled )?(?:water |air |fungal |mold )?(?:leakage|penetration|growth|cracking|delamination|intrusion|infiltration|blistering)\b/i;

/**
 * The result in words that a text asks for.
 *
 * @param text the whole statement
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
