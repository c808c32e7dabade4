/**
 * Digits that are no values: designations of standards, numbers of sections and paragraphs, addresses, classes. They
 * are covered before numbers are looked for; the length of the text stays the same.
 */

/** "Overlap sheets 2 inches" is no sheet number 2. */
const NO_UNIT = String.raw`(?![\s-]*(?:\d+\/\d|percent|%|deg|°|["']|in\b|inch|mm\b|cm\b|m\b|f(?:t|eet|oot)\b|mils?\b|lbs?\b|psi\b|psf\b|k?Pa\b|h\b|hours?|days?|weeks?|months?|years?|min(?:utes?)?\b|coats?|perms?|per\b|times\b))`;

const COVERED: readonly RegExp[] = [
  /https?:\/\/[^\s)]+/gi,
  /\b(?:sections?|UFGS[- ])\s*\d\d ?\d\d ?\d\d(?:\.\d\d)*/gi,
  /\b\d\d \d\d \d\d(?:\.\d\d)*\b/g,
  /\bSD-\d\d\b/g,
  new RegExp(
    String.raw`\b(?:division|section|clause|article|paragraphs?|para\.?|part|figure|fig\.?|table|appendix|annex|chapter|step|phase|item|note|envelope|sheet|detail|drawing|method|procedure|level|category|zone|type|class|grade|group)s?\s+(?:\d+(?:\.\d+)*[A-Z]?(?:\.[A-Za-z0-9]{1,3})*|[IVX]+)\b(?!\.?\d)${NO_UNIT}`,
    'gi',
  ),
  /\b(?:No|Nos)\.\s*\d+/g,
  /\b(?:19|20)\d\d\b(?=\s+(?:edition|international|IBC|IECC)|-\d{1,2}-\d{1,2})/gi,
  /\b(?:\d+\s+)?CFR(?:\s+part)?\s*\d[\w.-]*/gi,
  /\b(?:IBC|IECC)\s*\d[\w.-]*/g,
  // Years in a list of standards: "(2016; R 2021)".
  /\((?:19|20)\d\d[a-z]?(?:;[^()]{0,40})?\)/g,
  // Numbers of telephone calls, and dates.
  /(?<=\b(?:telephone|phone|fax|call|ext(?:ension|\.)):?\s)(?:\(\d{3}\)\s?)?\d[\d-]*/gi,
  /\b(?:\d{1,2}\s+)?(?:January|February|March|April|May|June|July|August|September|October|November|December)\s+(?:\d{1,2},?\s+)?(?:19|20)\d\d\b/g,
  /\b\d{3}-\d{3}-\d{4}\b/g,
  /\b\d{1,2}\/\d{1,2}\/\d{2,4}\b/g,
  // Scales of drawings: "3 inches = 1 foot", "1/4 inch equals 1 foot".
  /\d[\d\s/-]*(?:in(?:ch(?:es)?)?\b\.?|"|mm\b)\s*(?:=|equals?)\s*(?:1|one)\s*(?:f(?:oo)?t\b|'(?:-0")?|m\b)/gi,
  // Words in which a number word means no number.
  /\b(?:one another|from one|to the other|no one|one side|one or (?:both|more)|one of|two-part|one-part|one-component|two-component|one complete|one plane|each one)\b/gi,
];

/** Covers a stretch with `~`. */
export function cover(text: string, start: number, end: number): string {
  return text.slice(0, start) + '~'.repeat(end - start) + text.slice(end);
}

/** "<Insert number>" is a blank, as "[_____]" is. */
const BLANK = /<\s*(?:insert|enter|specify|fill in)\b[^<>[\]]{0,80}>/gi;

/** The text with all digits covered that are no values, and all blanks as in brackets; its length stays. */
export function covered(text: string): string {
  let result = text.replace(BLANK, (blank) => `[${'_'.repeat(blank.length - 2)}]`);
  for (const pattern of COVERED) {
    result = result.replace(pattern, (found) => '~'.repeat(found.length));
  }
  return result;
}
