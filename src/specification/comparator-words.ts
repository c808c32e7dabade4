/** The words that compare, as data: those before a value and those behind it. */

type Rule = readonly [pattern: string, compare: 'atLeast' | 'atMost' | 'equals', kind: 'plain' | 'strict' | 'near'];

/** What is so is below the value. */
export const LESS =
  'less|fewer|lower|thinner|narrower|smaller|shorter|colder|cooler|lesser|flatter|lighter|weaker|slower|shallower|drier|younger|newer|earlier|sooner|(?:closer|nearer)(?: together| to(?: [a-z]+){1,4})?';
/** What is so is above the value. */
export const MORE =
  'more|greater|higher|thicker|wider|larger|bigger|longer|taller|deeper|steeper|heavier|stronger|faster|hotter|warmer|wetter|older|later|(?:farther|further|wider)(?: apart)?';

/** Longest and most particular first; `near` words are believed only right before the value. */
export const BEFORE: readonly Rule[] = [
  [String.raw`(?:not|nor|no|never)(?: be| to be| measure)? (?:${LESS}) than`, 'atLeast', 'plain'],
  [String.raw`(?:not|nor|no|never)(?: be| to be| measure)? (?:${MORE}) than`, 'atMost', 'plain'],
  // "None under 18 mils", "no reading below 12 mils".
  [
    String.raw`(?:none|no (?:single |one )?(?:reading|result|test|value|measurement|point|sample|specimen|spot|part|area|place)s?)(?: (?:is|are|shall be|must be|may be|may fall|shall fall|falls?|being|to be))? (?:below|under|(?:less|lower|thinner) than)`,
    'atLeast',
    'plain',
  ],
  [
    String.raw`(?:none|no (?:single |one )?(?:reading|result|test|value|measurement|point|sample|specimen|spot|part|area|place)s?)(?: (?:is|are|shall be|must be|may be|may rise|shall|may|being|to be))? (?:above|over|exceed(?:ing|s)?|(?:more|greater|higher|thicker) than)`,
    'atMost',
    'plain',
  ],
  [String.raw`(?:not|never)(?: be| to be| fall| drop)? (?:below|under)`, 'atLeast', 'plain'],
  [String.raw`(?:not|never)(?: be| to be| rise| go)? (?:above|over)`, 'atMost', 'plain'],
  [
    String.raw`(?:not (?:to )?exceed(?:ing|s)?|(?:does|do|shall|must|may|will|can) ?not exceed|without exceeding|never exceed)`,
    'atMost',
    'plain',
  ],
  [
    String.raw`(?:${MORE}) than or equal to|equal to or (?:greater|more|higher|larger|better) than|(?:meets? or exceeds?|meeting or exceeding)|>=|≥`,
    'atLeast',
    'plain',
  ],
  [String.raw`(?:${LESS}) than or equal to|equal to or (?:less|lower|smaller|fewer) than|<=|≤`, 'atMost', 'plain'],
  [
    String.raw`at least|at a minimum(?: of)?|as a minimum|(?:a |the )?minimum(?: of)?|\bmin\b\.?(?: of)?|at the least`,
    'atLeast',
    'plain',
  ],
  [
    String.raw`at most|at a maximum(?: of)?|(?:a |the )?maximum(?: of)?|\bmax\b\.?(?: of)?|up to|at the most`,
    'atMost',
    'plain',
  ],
  [String.raw`(?:${LESS}) than|<`, 'atMost', 'strict'],
  [String.raw`(?:${MORE}) than|in excess of|exceed(?:s|ing)?|>`, 'atLeast', 'strict'],
  [String.raw`within|not later than|(?:in|during|over) the (?:last|past)`, 'atMost', 'near'],
  [String.raw`below|under|beneath`, 'atMost', 'near'],
  [String.raw`above|over`, 'atLeast', 'near'],
  [String.raw`(?<=\b(?:limit|restrict)(?:ed|s)? (?:[a-z-]+ ){0,5})to`, 'atMost', 'near'],
  // "Plumb to 1/8 inch": how far it may be out.
  [String.raw`(?:plumb|level|square|true|flat|straight|flush|aligned|in line) to(?: within)?`, 'atMost', 'near'],
  [String.raw`exactly|equal to|equals|set at`, 'equals', 'near'],
];

/** "40 degrees or above 110" begins the next limit, and "4 inches high and under a cover" a place. */
const NOT_NEXT = String.raw`(?!\s+(?:[\d[]|(?:than|minus|one|two|three|four|five|six|seven|eight|nine|ten|twelve|twenty)\b))(?!(?<=\b(?:above|over|below|under))\s+(?:an?|the)\b)`;
/** "20 mils, no less.": nothing is compared behind the words. */
const ENDS = String.raw`\b(?=\s*(?:[.,;:)\]]|$))`;
/** "Min. 12 mils, max. 16 mils": behind a comma the word belongs to the next value. */
const NOT_AHEAD = String.raw`(?!(?<=,\s*m[a-z]+)\.?\s*(?:of\s)?[\d[])`;
const AFTER_SKIP = String.raw`[\s,)\]-]*(?:(?:of [a-z-]+|thick|wide|high|deep|long|tall|total|nominal|dft|wft|dry|wet|film|thickness|on centers?|o\.c\.|apart|in (?:width|height|depth|thickness|length|diameter)|each|way|of|side|per coat|relative humidity|rh|by volume|by weight|solids|elongation|overlap|laps?|width|ambient|air|surface)[\s,]+){0,4}[(\[]?\s*`;
/** What stands behind the value, perhaps after a few words that belong to it. */
export const AFTER: readonly (readonly [RegExp, 'atLeast' | 'atMost'])[] = [
  [
    new RegExp(
      String.raw`^${AFTER_SKIP}((?:at (?:a |the )?(?:minimum|least))\b(?! of\b)${NOT_NEXT}|(?:or|and) (?:more|greater|higher|better|above|over|thicker|wider|longer|larger|rising|warmer|farther|further|taller|deeper|heavier|steeper|older|stronger|up(?! to))\b${NOT_NEXT}|(?:,? ?and rising)|(?:(?:and|but) )?(?:not?|never) (?:${LESS})${ENDS}|(?:minimum|min)\b${NOT_AHEAD}\.?(?!\s*(?:of\s)?[\d[]))`,
      'i',
    ),
    'atLeast',
  ],
  [
    new RegExp(
      String.raw`^${AFTER_SKIP}((?:at (?:a |the )?(?:maximum|most))\b(?! of\b)${NOT_NEXT}|(?:or|and) (?:less|lower|fewer|below|smaller|under|colder|shorter|thinner|narrower|lighter|flatter|younger|cooler|shallower|closer)\b${NOT_NEXT}|(?:and falling)|(?:(?:and|but) )?(?:not?|never) (?:${MORE})${ENDS}|(?:maximum|max)\b${NOT_AHEAD}\.?(?!\s*(?:of\s)?[\d[])|prior to use)`,
      'i',
    ),
    'atMost',
  ],
];
