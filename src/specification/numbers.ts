/**
 * Numbers in prose: digits, fractions, mixed numbers, words (`two`, `twenty-four`, `one-half`), numbers with a sign in
 * words (`minus 20`), and numbers that the specifier has still to choose (`[5][10]`, `[_____]`).
 */

export interface ReadNumber {
  readonly start: number;
  readonly end: number;
  /** Digits as they are written again, with the sign: `5-1/2`, `-20`, `1000`. */
  readonly text: string;
  readonly value: number;
  /** Half of the last place printed: what rounding can hide. */
  readonly halfStep: number;
  /** `plus or minus 1/8`. */
  readonly tolerance: boolean;
  /** For a choice left open: the numbers offered, and whether there is a blank. The value is the first one. */
  readonly choices?: readonly number[];
  readonly blank?: boolean;
}

const ONES =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const TENS = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');
const PARTS: Readonly<Record<string, string>> = {
  'one-half': '1/2',
  'one half': '1/2',
  'one-third': '1/3',
  'one-quarter': '1/4',
  'one-fourth': '1/4',
  'one-eighth': '1/8',
  'three-quarters': '3/4',
  'three-fourths': '3/4',
  'three-eighths': '3/8',
  'five-eighths': '5/8',
};

const FIGURES = String.raw`\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+[- ]\d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?|\.\d+`;
const WORDS = [
  ...Object.keys(PARTS),
  String.raw`(?:${TENS.join('|')})(?:[- ](?:${ONES.slice(1, 10).join('|')}))?`,
  ...[...ONES].reverse(),
].join('|');
const SIGN = String.raw`(?:(?:plus (?:or|and) minus|plus\/minus|minus|negative)\s+|\+\/-\s*|±\s*|(?<=^|[\s(\[])-(?=[\d.]))?`;
const CHOICE = String.raw`(?:\[\s*(?:_{2,}|(?:minus )?(?:\d{1,9}\/\d{1,9}|[\d.,]+(?:[- ]\d{1,9}\/\d{1,9})?)|${WORDS})\s*\]\s?(?=\[|[^\[])){1,8}`;
const NUMBER = new RegExp(
  String.raw`(?<![\w$#~]|(?<!\b(?:min|max)\.?)\/)(?<![A-Za-z]-)(?<!\d[.,])${SIGN}(?:(${FIGURES})(?![\d/])|(${WORDS})\b(?:\s*\(\d+\))?)|(${CHOICE})`,
  'gi',
);

function wordsValue(word: string): { value: number; text: string } {
  const lower = word.toLowerCase().replace(/\s*\(\d+\)$/, '');
  const part = PARTS[lower];
  if (part !== undefined) return { value: figuresValue(part), text: part };
  const [ten = '', one = ''] = lower.split(/[- ]/);
  const tens = TENS.indexOf(ten);
  const value = tens === -1 ? ONES.indexOf(lower) : 20 + 10 * tens + Math.max(0, ONES.indexOf(one));
  return { value, text: String(value) };
}

/** The value of figures such as `1,000`, `0.02`, `3/8` or `5-1/2`. */
export function figuresValue(figures: string): number {
  const mixed = /^(?:(\d+)[- ])?(\d+)\/(\d+)$/.exec(figures);
  if (mixed === null) return Number(figures.replaceAll(',', ''));
  return Number(mixed[1] ?? 0) + Number(mixed[2]) / Number(mixed[3]);
}

const choiceValue = (entry: string): number =>
  /^minus /i.test(entry) ? -figuresValue(entry.slice('minus '.length)) : figuresValue(entry);

/** What the last printed place leaves open: 0.5 for `26`, 5 for `570` (rounded to tens), 1/32 for a fraction. */
function halfStepOf(text: string): number {
  if (text.includes('/')) return 1 / 32;
  const decimals = /\.(\d+)$/.exec(text)?.[1]?.length;
  if (decimals !== undefined) return 0.5 * 10 ** -decimals;
  return /[1-9]\d*0$/.test(text) ? 5 : /[1-9]5$/.test(text) ? 2.5 : 0.5;
}

/**
 * The numbers of a text, in order.
 *
 * @param text plain characters (see prose.ts), with `~` over everything whose digits are no numbers
 */
export function numbersIn(text: string): readonly ReadNumber[] {
  const found: ReadNumber[] = [];
  for (const match of text.matchAll(NUMBER)) {
    const [all, figures, words, choice] = match;
    const start = match.index;
    if (choice !== undefined) {
      const inside = [...choice.matchAll(/\[\s*([^\]]*?)\s*\]/g)].map((bracket) => bracket[1] ?? '');
      // Figures that are no number, such as `1.2.3` and `1/0`, offer no value; the choice stays open all the same.
      const offered = inside
        .filter((entry) => !entry.startsWith('_'))
        .map((entry) => (/\d/.test(entry) ? entry : wordsValue(entry).text))
        .map((entry) => ({ entry, value: choiceValue(entry) }))
        .filter(({ value }) => Number.isFinite(value));
      const choices = offered.map(({ value }) => value);
      const first = offered[0]?.entry.replace(/^minus /i, '-') ?? '';
      const end = start + all.trimEnd().length;
      const blank = inside.some((entry) => entry.startsWith('_'));
      found.push({
        start,
        end,
        text: first,
        value: choices[0] ?? NaN,
        halfStep: halfStepOf(first),
        tolerance: false,
        choices,
        blank,
      });
      continue;
    }
    const tolerance = /^(?:plus (?:or|and) minus|plus\/minus|\+\/-|±)/i.test(all);
    const negative = !tolerance && /^(?:minus|negative|-)/i.test(all);
    const read = figures === undefined ? wordsValue(words ?? '') : { value: figuresValue(figures), text: figures };
    if (!Number.isFinite(read.value)) continue;
    found.push({
      start,
      end: start + all.length,
      text: `${negative ? '-' : ''}${read.text.replaceAll(',', '')}`,
      value: negative ? -read.value : read.value,
      halfStep: halfStepOf(read.text),
      tolerance,
    });
  }
  return found;
}
