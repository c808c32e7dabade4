/** Whether a substrate is among those that a data sheet lists, in the words of the trade. */

/** Words that say only that something is a flat surface. */
const SHAPELESS: ReadonlySet<string> = new Set([
  'sheathing',
  'panel',
  'board',
  'wall',
  'substrate',
  'surface',
  'sheet',
]);
/** The same material under another name; common practice, no source. */
const SAME: readonly (readonly [string, string])[] = [
  ['osb', 'oriented strand board'],
  ['cmu', 'concrete masonry'],
  ['concrete masonry unit', 'concrete masonry'],
  ['concrete block', 'concrete masonry'],
  ['glass mat faced gypsum', 'glass mat gypsum'],
  ['glass faced gypsum', 'glass mat gypsum'],
  ['exterior gypsum', 'gypsum'],
  ['galvanised', 'galvanized'],
  ['aluminium', 'aluminum'],
  ['extruded polystyrene', 'xps'],
  ['expanded polystyrene', 'eps'],
  ['polyisocyanurate', 'polyiso'],
];

/** Small letters, no plurals, one name for each material. */
function wordsOf(text: string): readonly string[] {
  let plain = ` ${text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim()} `;
  // Not of xps, eps, glass or brass.
  plain = plain.replace(/([a-z]{2,}[a-rt-z])s(?= )/g, '$1');
  for (const [from, to] of SAME) plain = plain.replaceAll(` ${from} `, ` ${to} `);
  return plain.trim().split(' ');
}

const core = (words: readonly string[]): readonly string[] => {
  const last = words.findLastIndex((w) => !SHAPELESS.has(w));
  return last < 0 ? words : words.slice(0, last + 1);
};
/** True when the first list ends in the second: `galvanized steel` ends in `steel`. */
const endsIn = (a: readonly string[], b: readonly string[]): boolean =>
  b.length > 0 && b.length <= a.length && b.every((word, i) => a[a.length - b.length + i] === word);

export type Listing =
  | 'listed'
  /** The list has only a more particular kind of it: the drawing has to say which it is. */
  | 'unclear'
  | 'not listed';

/**
 * Holds a material against the substrates of a data sheet. A general word covers the particular (`gypsum sheathing`
 * covers `glass-mat gypsum sheathing`), but not what only shares its first word: `concrete` does not cover
 * `concrete masonry`.
 *
 * @param names what the substrate is called: material, product id, product name, family; one match is enough
 */
export function listedAs(names: readonly string[], substrates: readonly string[]): Listing {
  const own = names.map((n) => core(wordsOf(n)));
  const listed = substrates.map((s) => core(wordsOf(s)));
  if (own.some((o) => listed.some((l) => endsIn(o, l)))) return 'listed';
  return own.some((o) => listed.some((l) => endsIn(l, o))) ? 'unclear' : 'not listed';
}
