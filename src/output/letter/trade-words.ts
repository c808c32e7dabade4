/**
 * The sentences of findings in the words of a letter. A finding speaks to whoever writes the documents: it names fields
 * and the ids of steps. The reader of a letter has drawings before him: a step is told by what it does, and a clause
 * that only says which field to write is left to the table of places.
 */
import { FIELD_NAMES } from '../../../generated/field-names.js';
import type { Result } from '../../engine/result.js';

/** What a step at a place is called. */
const WORK_AT: Readonly<Record<string, string>> = {
  sill: 'the sill flashing',
  jambs: 'the jamb flashing',
  'left jamb': 'the flashing of the left jamb',
  'right jamb': 'the flashing of the right jamb',
  head: 'the head flashing',
  'inside corners': 'the treatment of the inside corners',
  'opening edges': 'the treatment of the edges of the opening',
  'sheathing joints': 'the treatment of the sheathing joints',
  'fastener heads': 'the treatment of the fasteners',
  'flange head': 'the flashing over the head flange',
  'flange jambs': 'the flashing over the jamb flanges',
  'flange sill': 'the work at the sill flange',
  'interior perimeter': 'the interior seal',
  'exterior perimeter': 'the exterior seal',
  penetration: 'the collar of the penetration',
  'base of wall': 'the flashing at the base of the wall',
  'top of wall': 'the work at the top of the wall',
  'movement joint': 'the work at the movement joint',
  'shelf angle': 'the flashing on the shelf angle',
};

/** After one of these a name stands alone and needs its words; after a noun it only repeats what the noun says. */
const BEFORE_NAME = new Set(
  (
    'of at by before after over under on onto and or to with in into that than behind from below above beside against ' +
    'outside inside beyond between past as if when where until is are does not both also put do turn widen bond run ' +
    'seal carry raise keep move add make extend let give lap cover set state use leave open close correct change ' +
    'install bring reach stop slope cut lengthen shorten hold drain declare'
  ).split(' '),
);

const FIELDS: ReadonlySet<string> = new Set(FIELD_NAMES);
const QUOTED = /"([^"]*)"/g;

type Entry = Readonly<Record<string, unknown>>;
const isEntry = (value: unknown): value is Entry =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const entries = (value: unknown): Entry[] => (Array.isArray(value) ? value.filter(isEntry) : []);
const listed = (value: unknown): string[] =>
  (Array.isArray(value) ? value : [value]).filter((v): v is string => typeof v === 'string');

function phraseOf(work: Entry): string {
  if (typeof work['set'] === 'string') return `the setting of the ${work['set']}`;
  if (typeof work['hold'] === 'string') return `the hold for the ${work['hold']}`;
  if (typeof work['layer'] === 'string') return `the ${spaced(work['layer'])}`;
  const [place = ''] = listed(work['place']);
  return WORK_AT[place] ?? (place === '' ? 'a step of the work' : `the work at the ${place}`);
}

/** `base-strip` as `base strip`, `ontoWall` as `onto wall`. */
const spaced = (name: string): string =>
  name.replace(/[-_]/g, ' ').replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);

/** Steps and layers of a document by their ids, in the words of the trade. */
function namesIn(data: Entry): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (const layer of entries(data['wall']))
    if (typeof layer['id'] === 'string') names.set(layer['id'], `the ${spaced(layer['id'])}`);
  const works = entries(data['work']);
  const phrases = works.map(phraseOf);
  works.forEach(({ id }, i) => {
    const phrase = phrases[i] ?? '';
    // Two collars are told apart by the names that the documents give them.
    if (typeof id === 'string')
      names.set(id, phrases.filter((p) => p === phrase).length > 1 ? `${phrase} (${id})` : phrase);
  });
  return names;
}

/** `ontoWall`, `sill: open`, `{ hold: water test }`, `answers: ['1.3.E']`, `openings.unit`. */
function isField(quoted: string, names: ReadonlyMap<string, string>): boolean {
  if (names.has(quoted)) return false;
  const [first = ''] = quoted.split(/[:.[ ]/);
  return /[{}[\]]/.test(quoted) || FIELDS.has(quoted) || (FIELDS.has(first) && /[:.]/.test(quoted));
}

/** `wall[0].finish`, `openings.unit.waterTest`: where in a document something is missing. */
const PATH =
  /\b(work|wall|openings|penetrations|product|products|project|edges|method)(?:\[(\d+)\])?((?:\.\w+(?:\[\d+\])?)+)/g;

/** `wall "sheathing": finish`, as `src/model/named-field.ts` writes it, as a path with the number of the entry. */
function withNumbers(text: string, data: Entry): string {
  return text.replace(/\b(work|wall|openings) "([^"]*)": (?=\w)/g, (_, root: string, id: string) => {
    const index = entries(data[root]).findIndex((entry) => entry['id'] === id);
    return index < 0 ? `${root}.` : `${root}[${index}].`;
  });
}

/** A path in a document in words: `the finish of the board`, `the water test of the unit`. */
function pathInWords(data: Entry, root: string, index: string | undefined, rest: string): string {
  const steps = rest
    .split('.')
    .filter(Boolean)
    .map((step) => step.replace(/\[\d+\]/g, ''));
  const last = steps.pop() ?? '';
  const entry = index === undefined ? undefined : entries(data[root])[Number(index)];
  const id = entry?.['id'];
  const singular = steps.pop() ?? root.replace(/s$/, '');
  const owner = typeof id === 'string' ? (namesIn(data).get(id) ?? id) : `the ${spaced(singular)}`;
  return `the ${spaced(last)} of ${owner}`;
}

/** A step as it would be written, in words: `{ close: head flap, of: window }` as `the closing of the head flap`. */
function stepInWords(written: string): string | undefined {
  const [, key = '', value = ''] =
    /\b(set|close|hold|layer|place): ([^,}]+)/.exec(written.replace(/\bplace: [^,]+, (?=layer:)/, '')) ?? [];
  switch (key) {
    case 'close':
      return `the closing of the ${value.trim()}`;
    case 'hold':
      return `a hold for ${value.trim()}`;
    case '':
      return undefined;
    default:
      return phraseOf({ [key]: value.trim() });
  }
}

/** Cuts at full stops and semicolons that do not stand inside quotation marks. */
function clausesOf(text: string): string[] {
  return text.match(/(?:"[^"]*"|[^.;"]|[.;](?!\s|$)|")+(?:[.;](?=\s|$)\s*)?/g) ?? [text];
}

function upper(text: string): string {
  return text.replace(/^[a-z]/, (c) => c.toUpperCase());
}

/**
 * @param text a sentence of `result`
 * @returns the same without fields and without the ids of steps; text from documents is returned as it stands, and the
 * caller escapes it
 */
export function inTradeWords(text: string, result: Pick<Result, 'at'>): string {
  const names = namesIn(result.at.document.data);
  const { data } = result.at.document;
  const isStep = (q: string): boolean => q.startsWith('{') && stepInWords(q) !== undefined;
  const hasField = (part: string): boolean =>
    [...part.matchAll(QUOTED)].some(([, q = '']) => isField(q, names)) ||
    (/^\s*(?:state|declare|add|give)\b/i.test(part) && part.search(PATH) >= 0);
  // An id or a field in parentheses only says once more what stands before it.
  const plain = withNumbers(text, data)
    .replace(/ \((?:"[^"]*"(?:, | and | or )?)+\)/g, '')
    // "of joint "air-seal"": a noun without its article is a label, and the words of the step take its place.
    .replace(/\b(of|in|at|for) [a-z]+ "([^"]*)"/g, (all, before: string, q: string) =>
      names.has(q) ? `${before} "${q}"` : all,
    );
  const clauses = clausesOf(plain);
  const kept = clauses.filter((clause) => !hasField(clause));
  const whole = (kept.length === 0 ? clauses : kept)
    .join('')
    .trim()
    // Where a field stands in the only clause, the sentence is whole without it.
    .replace(/,? under "([^"]*)"/g, (all, q: string) => (isField(q, names) ? '' : all));
  const ended = /[.;]$/.test(whole) ? whole.replace(/;$/, '.') : `${whole}.`;
  const worded = ended.replace(/(^|[^\s"(]*[\s(]+)?"([^"]*)"/g, (all, before: string | undefined, quoted: string) => {
    const lead = before ?? '';
    const [ofPiece = '', place] = quoted.split('#');
    const name = place === undefined ? names.get(quoted) : (WORK_AT[place] ?? names.get(ofPiece));
    if (isStep(quoted)) return `${lead}${stepInWords(quoted) ?? ''}`.replace(/\ba step (?=the |a )/, '');
    if (name === undefined)
      return isField(quoted, names) ? `${lead}${spaced(quoted)}` : /\s/.test(quoted) ? all : `${lead}${quoted}`;
    const word = lead.trim().replace(/[(,:]/g, '').toLowerCase();
    if (word === '' || BEFORE_NAME.has(word) || /[,:(]\s*$/.test(lead)) return `${lead}${name}`;
    // "the jamb flashing "jambs"": the noun stands there already. A lone word is a name of the document, not a noun.
    return lead.trimEnd();
  });
  return worded
    .replace(PATH, (_, root: string, index: string | undefined, rest: string) => pathInWords(data, root, index, rest))
    .split(/(?<=\. )/)
    .map(upper)
    .join('')
    .replace(/ {2,}/g, ' ')
    .replace(/ ([.,;])/g, '$1');
}

/**
 * What was checked, without ids of steps and names of fields: `ontoFoundation of base-strip` as `onto foundation of the
 * flashing at the base of the wall`.
 */
export function subjectInWords(subject: string, { at }: Pick<Result, 'at'>): string {
  const names = namesIn(at.document.data);
  return subject
    .replaceAll('"', '')
    .replace(/\b(of|in|at) (?:joint )?([^\s,]+)/g, (all, before: string, id: string) => {
      const name = names.get(id);
      return name === undefined ? all : `${before} ${name}`;
    })
    .replace(/\b[a-z]+[A-Z]\w*/g, (word) => (FIELDS.has(word) ? spaced(word) : word));
}
