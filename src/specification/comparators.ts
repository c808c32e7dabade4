/**
 * The words that make a value a limit: before it (`not less than`, `a minimum of`), after it (`or greater`, `minimum`),
 * or in the head of its column. `Do not apply below 40 degrees F` asks for at least 40.
 */
import { AFTER, BEFORE } from './comparator-words.js';
import { isCase, isRefused, mayBeRefused, readLead } from './denials.js';
import type { ValueKind } from './units.js';

export type Compare = 'atLeast' | 'atMost' | 'between' | 'equals' | 'unclear';

export interface Comparator {
  readonly compare: Compare;
  /** As it stands there, for the reason given. */
  readonly words: string;
  /** Where the words begin in the text. */
  readonly start: number;
  readonly end: number;
  /** `less than`, `more than`: the value itself is not allowed. */
  readonly strict: boolean;
  /** `joints exceeding 6 mm`: says when something applies, and limits nothing. */
  readonly threshold: boolean;
  /** A prohibition turned the words around. */
  readonly turned: boolean;
  /** Both a least and a most stand at the value. */
  readonly conflicting?: string;
  /** What is beyond the value may be refused, or only be treated in another way. */
  readonly unclear?: boolean;
}

/** "Three or more years": between the number and its unit, inside of the value. */
const WITHIN = /\bor (more|greater|less|fewer)\b/i;
/** At the end of a sentence, after all of its values: "8 inches above grade (min.)". */
const AT_END = /[,(]\s*(min(?:imum)?|max(?:imum)?)\b\.?\)?[\s.]*$/i;

function signsOf(pattern: string): RegExp | undefined {
  const signs = pattern.match(/[<>]=?|[≥≤]/g);
  return signs === null ? undefined : new RegExp(signs.join('|'), 'g');
}

const ALL_BEFORE = BEFORE.map(([pattern, compare, sort]) => ({
  pattern: new RegExp(String.raw`(?<![\w-])(?:${pattern})(?![\w-])`, 'gi'),
  // Signs stand right at a number or a word.
  signs: signsOf(pattern),
  compare,
  sort,
}));
/** What stands between the words and the value: a few words, and no other value. */
const MOST_BETWEEN = 10;
/** In characters; farther than so many words reach. */
const FARTHEST = 240;
const MOST_NEAR = 3;

/** What is measured by its width: "gaps over 1/4 inch" are wider than that. */
const GAPS =
  /\b(?:gaps?|joints?|seams?|cracks?|openings?|voids?|holes?|spaces?|offsets?|depressions?|ridges|penetrations?|pipes?|ducts?|spalls|areas?)\s*$/i;
const CLOCK = /\b(?:later|earlier|sooner) than$/i;
const AHEAD = /^[\s,)\]]*(?:before|prior to|ahead of|in advance)\b/i;

const PLACE_WORDS = /^(?:below|under|beneath|above|over)$/i;
/** "May fall below", "stays above": no place. */
const MOVES = /\b(?:falls?|drops?|sinks?|goes|go|rises?|climbs?|stays?|remains?|kept|keep|keeps)\s*$/i;

/** "Below 40 degrees F, use winter primer" says what is done then; "wind: below 15 mph" is a limit. */
const OPENS_CLAUSE = /(?:^|[.;]\s)\s*(?:(?:at|in|when) )?(?:(?:surface|air|ambient|substrate) )?(?:temperatures? )?$/i;
const DONE_THEN = /^[\s,)]*[a-z]{2}/i;
/** "For frames up to 4 feet": some of them. */
const FOR_SOME = /\b(?:for|at|over) (?:[a-z-]+ ){0,2}[a-z-]+s\s$/i;

/** How much text around a value belongs to it. */
export interface Around {
  readonly text: string;
  /** Where the value, with all that belongs to it, stands. */
  readonly start: number;
  readonly end: number;
  /** End of the value before, or start of the clause. */
  readonly from: number;
  /** Start of the value behind, or end of the clause. */
  readonly to: number;
  readonly kind: ValueKind | undefined;
}

const wordsIn = (text: string): number => (text.match(/[^\s,()[\]:]+/g) ?? []).length;

function before({ text, start, from, kind }: Around): Omit<Comparator, 'conflicting'> | undefined {
  const stretch = text.slice(Math.max(from, start - FARTHEST), start);
  const clause = stretch.slice(Math.max(stretch.lastIndexOf(';') + 1, 0));
  const offset = start - clause.length;
  let best: Omit<Comparator, 'conflicting'> | undefined;
  for (const { pattern, signs, compare, sort } of ALL_BEFORE) {
    for (const match of [...clause.matchAll(pattern), ...(signs === undefined ? [] : clause.matchAll(signs))]) {
      const end = match.index + match[0].length;
      const between = wordsIn(clause.slice(end));
      if (between > (sort === 'near' ? MOST_NEAR : MOST_BETWEEN)) continue;
      if (PLACE_WORDS.test(match[0]) && sort === 'near') {
        // "Under cover at 50 degrees F" is no limit.
        if (!/^\s*(?:(?:an?|the|about|approximately|temperatures?|of)\s+)*[[(]?\s*$/i.test(clause.slice(end))) continue;
        // "over 3 inches" and "below 12 inches" are places as often as limits.
        const ahead = clause.slice(0, match.index);
        if (isPlace(kind, match[0]) && !GAPS.test(ahead) && !MOVES.test(ahead)) continue;
      }
      if (best !== undefined && (match.index + offset < best.start + 1 || end + offset <= best.end)) continue;
      best = {
        compare,
        words: match[0].trim(),
        start: match.index + offset,
        end: end + offset,
        strict: sort === 'strict',
        threshold: false,
        turned: false,
      };
    }
  }
  return best;
}

/** What can lie over, under, above or below something else, or be the time that work is spread over. */
function isPlace(kind: ValueKind | undefined, word: string): boolean {
  if (kind === 'film') return !/^(?:below|above)$/i.test(word);
  return (
    kind === undefined ||
    kind === 'length' ||
    kind === 'area' ||
    kind === 'count' ||
    kind === 'time' ||
    kind === 'slope'
  );
}

/**
 * The comparator of a value.
 *
 * @returns undefined when no words make the value a limit
 */
export function comparatorOf(around: Around): Comparator | undefined {
  const { text, start, end, to } = around;
  const behind = text.slice(end, to + 8);
  const after = AFTER.map(([pattern, compare]) => ({ match: pattern.exec(behind), compare })).find(
    ({ match }) => match !== null && end + match[0].length <= Math.max(to, end) + 1,
  );
  const ahead = before(around);
  if (after?.match !== undefined && after.match !== null) {
    const words = after.match[1] ?? '';
    const result: Comparator = {
      compare: after.compare,
      words,
      start: end,
      end: end + (after.match[0]?.length ?? 0),
      strict: false,
      threshold: false,
      turned: false,
    };
    const clash =
      ahead !== undefined &&
      ahead.compare !== after.compare &&
      ahead.compare !== 'equals' &&
      wordsIn(text.slice(ahead.start, start)) <= 5;
    return clash ? { ...result, conflicting: ahead.words } : result;
  }
  if (ahead === undefined) return inside(around) ?? atEnd(around);
  const rest = text.slice(end);
  const lead = readLead(text.slice(Math.max(0, text.lastIndexOf('. ', ahead.start) + 1), ahead.start));
  const isWithin = /^within$/i.test(ahead.words);
  const isOpenWord = ahead.strict || PLACE_WORDS.test(ahead.words);
  const isPlainNegation =
    /^(?:not|nor|no|none|never|does|do|shall|must|may|will|can)\b/i.test(ahead.words) && !isOpenWord;
  const isTurned = isWithin
    ? lead.keptAway
    : isOpenWord && (lead.denied || (ahead.strict && lead.lacking) || isRefused(rest));
  // "No later than 14 days before the work" leaves at least 14 days.
  const isAhead = CLOCK.test(ahead.words) && AHEAD.test(text.slice(end, end + 24));
  const compare = isTurned === isAhead ? ahead.compare : ahead.compare === 'atMost' ? 'atLeast' : 'atMost';
  // What is due within a time of something uncertain limits nothing that can be measured on the wall.
  if (isTurned) return { ...ahead, compare, turned: true, strict: false, threshold: isWithin && lead.conditional };
  if (isAhead) return { ...ahead, compare };
  const mayMeanOther = ahead.strict && (mayBeRefused(rest, false) || (ahead.compare === 'atMost' && isCase(rest)));
  const isPutRight = isOpenWord && (lead.remedied || mayBeRefused(rest, lead.conditional));
  if ((mayMeanOther || isPutRight) && !isPlainNegation) return { ...ahead, unclear: true };
  const first = text.slice(0, ahead.start);
  if (PLACE_WORDS.test(ahead.words) && OPENS_CLAUSE.test(first) && DONE_THEN.test(rest))
    return { ...ahead, unclear: true };
  if (FOR_SOME.test(first) && (isOpenWord || /^up to$/i.test(ahead.words))) return { ...ahead, threshold: true };
  const near = text.slice(Math.max(0, ahead.start - 12), ahead.start + ahead.words.length);
  const threshold =
    isOpenWord &&
    !isPlainNegation &&
    (lead.conditional ||
      (/^(?:over|above)$/i.test(ahead.words) && GAPS.test(text.slice(0, ahead.start))) ||
      /exceeding|in excess of/i.test(ahead.words) ||
      /\b\w+s (?:greater|larger|wider|more|higher|longer|over)/i.test(near));
  return { ...ahead, threshold };
}

const plainly = (word: string, start: number, end: number): Comparator => ({
  compare: /^(?:more|greater|min)/i.test(word) ? 'atLeast' : 'atMost',
  words: word,
  start,
  end,
  strict: false,
  threshold: false,
  turned: false,
});

function inside({ text, start, end }: Around): Comparator | undefined {
  const match = WITHIN.exec(text.slice(start, end));
  return match?.[1] === undefined ? undefined : { ...plainly(match[1], start, end), words: match[0] };
}

/** Only the words that no other value stands before, or that all values share, are believed. */
function atEnd({ text, end }: Around): Comparator | undefined {
  const match = AT_END.exec(text.slice(end));
  if (match?.[1] === undefined || /;/.test(text.slice(end, end + match.index))) return undefined;
  return plainly(match[1], end, end);
}

/** The comparator that a label or the head of a column gives. */
export function comparatorInWords(words: string): 'atLeast' | 'atMost' | undefined {
  const least = /\b(?:min(?:imum)?|not less than|at least)\b/i.test(words);
  const most = /\b(?:max(?:imum)?|not (?:more|greater) than|at most)\b/i.test(words);
  return least === most ? undefined : least ? 'atLeast' : 'atMost';
}
