/**
 * From the words of a section to the properties and subjects that checks know, as data. A property is named only where
 * its words stand with a value of its kind; everything else stays in the section's own words.
 */
import { MEASURES } from '../model/measures.js';
import type { Property, Subject } from '../model/measures.js';
import type { ValueKind } from './units.js';

interface Words {
  readonly property: Property;
  readonly words: RegExp;
  /** The property is not meant when these are there too. */
  readonly without?: RegExp;
}

/** Weeps of a veneer lie above its through-wall flashing; the weeps that are checked are those of the seal at a sill. */
const OF_MASONRY = /\b(?:masonry|brick|veneer|head joints?|through-wall|cavity|all flashing)\b/i;

/** The more particular before the more general: the first that fits is taken. */
const PROPERTIES: readonly Words[] = [
  { property: 'wet film', words: /\bwet[- ]film|\bWFT\b|\bwet mils?\b|\bmils?,? wet\b|\bmm,? wet\b/i },
  {
    property: 'dry film',
    words: /\bdry[- ]film|\bDFT\b|\bdry mils?\b|\bmils?,? dry\b|\bmm,? dry\b|\bcured (?:film )?thickness/i,
  },
  {
    property: 'permeance',
    words: /\bvapou?r[- ](?:permeance|transmission|permeability)|\bpermeance\b/i,
    without: /\bair permea/i,
  },
  { property: 'air permeance', words: /\bair[- ]permea(?:nce|bility)\b/i },
  { property: 'back dam height', words: /\bback[- ]?dams?\b|\brear (?:leg|upturn)/i },
  { property: 'end dam height', words: /\bend[- ]?dams?\b/i },
  { property: 'sill slope', words: /\b(?:sills?|pans?)\b[^.]*\bslop|\bslop\w*\b[^.]*\b(?:sills?|pans?)\b/i },
  { property: 'backer rod compression', words: /\bbacker[- ]rods?\b[^.]*\b(?:larger|greater|compress\w*|oversiz\w*)/i },
  {
    property: 'weep spacing',
    words: /\bweeps?(?: holes?)?\b[^.]*(?:\bspac\w*|\bo\.?c\b|\bon centers?\b|\bapart\b)/i,
    without: OF_MASONRY,
  },
  { property: 'weep count', words: /\bweeps?\b/i, without: OF_MASONRY },
  { property: 'drip projection', words: /\bdrip(?:s| edge)?\b[^.]*\b(?:project|extend|beyond|clear)/i },
  { property: 'base flashing above grade', words: /\babove (?:finished |adjacent |the )*grade\b/i },
  {
    property: 'lap onto foundation',
    words:
      /\b(?:on ?to|over) (?:the )?(?:concrete )?(?:foundation|footing|below[- ]grade waterproofing|foundation waterproofing)/i,
  },
  {
    property: 'extension past jambs',
    words: /\b(?:past|beyond) (?:the |each )?(?:jambs?|(?:rough )?opening (?:at )?(?:each|both) (?:sides?|ends?))/i,
  },
  {
    property: 'extension into opening',
    words: /\b(?:into|inside) (?:the |all )?(?:window |door )?(?:rough )?openings?\b/i,
  },
  {
    property: 'collar extension',
    words:
      /\b(?:beyond|around|from|past) (?:the |each |all )?(?:edges? of (?:the )?)?(?:penetrations?|pipes?|conduits?|ducts?)\b|\bcollars?\b/i,
  },
  {
    property: 'cover each side',
    words:
      /\b(?:joints?|seams?)\b[^.]*\b(?:each|both|either) sides?\b|\b(?:each|both|either) sides? of (?:the |all |each |sheathing |board |panel )*(?:joints?|seams?)\b/i,
  },
  {
    property: 'corner leg',
    words: /\bcorners?\b[^.]*\b(?:each (?:face|side|direction|leg|way)|both (?:faces|sides|directions))/i,
  },
  {
    property: 'bearing each side',
    words:
      /\btransition\b[^.]*\b(?:each|both) (?:sides?|substrates?|surfaces?|materials?)|\bonto each (?:substrate|surface|material)/i,
  },
  {
    property: 'extension onto wall',
    words:
      /\b(?:on ?to|over) (?:the )?(?:adjacent |surrounding |exterior |face of (?:the )?)*(?:walls?(?! panel)|sheathing|substrate)(?: (?:face|surface))?\b/i,
    without: /\blap\w*\b|\boverlap/i,
  },
  {
    property: 'upstand',
    words: /\bup(?:stand|turn)s?\b|\bturn(?:ed)? up\b|\bup (?:the )?(?:wall|back-?up)|\bvertical leg\b/i,
  },
  { property: 'end lap', words: /\bend[- ]?laps?\b|\bvertical laps?\b/i },
  { property: 'lap', words: /\b(?:over)?lap(?:s|ped|ping)?\b|\bside[- ]?laps?\b|\bshingle/i },
  {
    property: 'joint width',
    words: /\b(?:sealant )?joints?\b[^.]*\bwid(?:e|th)\b|\bwidth of (?:sealant )?joints?\b/i,
    without: /\b(?:fill|reinforce|treat|tape|gaps?|sheathing)\b|\b(?:larger|wider|greater) than the\b/i,
  },
  {
    property: 'joint depth',
    words:
      /\bsealants?\b[^.]*\b(?:depth|deep)\b|\bdepth of (?:the )?(?:sealant|joint)|\bjoints?\b[^.]*\b(?:depth|deep)\b/i,
  },
  {
    property: 'gap under unit',
    words: /\b(?:gap|space|clearance)\b[^.]*\b(?:under|below|beneath) (?:the )?(?:window|unit|frame|door)/i,
  },
  {
    property: 'sheathing gap',
    words:
      /\b(?:gaps?|space|spacing)\b[^.]*\b(?:between|of) (?:the )?(?:sheathing|panels?|boards?)|\bsheathing\b[^.]*\bgaps?\b/i,
  },
  {
    property: 'wait',
    words: /\b(?:wait|cur(?:e|ed|ing)|dr(?:y|ied|ying)|recoat)\b/i,
    without:
      /\b(?:concrete|masonry|mortar|grout|stucco|plaster|test|inspect|probe|check|measure|exposed?|exposure|notify|notice|store|test(?:ed|ing)? (?:for|at)|cured? (?:at|for) .* (?:test|ASTM))/i,
  },
];

/** Where something else is placed: "nails at laps", "2 inches from end dams". */
const PLACES =
  /\b(?:at|along|across|from|near|beside|between|through|before) (?:(?:the|all|each|any|every|both) )*(?:(?:end|side|back|vertical|horizontal)[- ]?)?(?:laps?|dams?|upturns?|collars?)\b/gi;
/** What is fastened, rolled or laid has sizes of its own. */
const OTHER_THINGS =
  /\b(?:nails?|nailed|screws?|staples?|stapled|fasten(?:ers?|ed)?|anchors?|clips?|rollers?|beads?)\b/i;
const OF_LAPS: ReadonlySet<Property> = new Set(['lap', 'end lap', 'end dam height', 'back dam height', 'upstand']);

/** A property, and whether the words name it alone. */
export interface NamedProperty {
  readonly property: Property;
  /** Others of the same kind that the words name too; the one nearest to the value was taken. */
  readonly besides: readonly Property[];
}

/** Properties whose words belong to many sentences; beside a more particular one they are not meant. */
const GENERAL: ReadonlySet<Property> = new Set([
  'lap',
  'extension onto wall',
  'upstand',
  'weep count',
  'wait',
  'collar extension',
]);

/**
 * The property that the words name for a value of this kind.
 *
 * @param text the words of the label and of the clause
 * @param ahead those before the value: the last property they name stands nearest to it
 * @param from the words that name it have to reach beyond this place
 */
export function propertyOf(text: string, kind: ValueKind | undefined, ahead = '', from = 0): NamedProperty | undefined {
  if (kind === undefined) return undefined;
  const words = text.replace(PLACES, (place) => '~'.repeat(place.length));
  const isOfOther = OTHER_THINGS.test(ahead === '' ? words : ahead);
  const named = PROPERTIES.filter(
    ({ property, words: named, without }) =>
      MEASURES[property].dimension === kind &&
      !(isOfOther && OF_LAPS.has(property)) &&
      named.test(words) &&
      !(without?.test(words) ?? false) &&
      (from === 0 || lastPlace(named, words) > from),
  );
  const [first] = named;
  if (first === undefined) return undefined;
  const peers = GENERAL.has(first.property) ? [first] : named.filter(({ property }) => !GENERAL.has(property));
  const nearest = peers
    .map((peer) => ({ peer, at: lastPlace(peer.words, ahead) }))
    .reduce((best, one) => (one.at > best.at ? one : best)).peer;
  return {
    property: nearest.property,
    besides: peers.filter((peer) => peer !== nearest).map(({ property }) => property),
  };
}

/** Where the words are named last; -1 when they are not. */
function lastPlace(words: RegExp, text: string): number {
  let last = -1;
  for (const match of text.matchAll(new RegExp(words.source, 'gi'))) last = match.index + match[0].length;
  return last;
}

const SUBJECTS_NAMED: readonly (readonly [Subject, RegExp])[] = [
  ['sill pan', /\b(?:sill|window|opening|door)? ?pans?\b(?! adhes)|\bsill flashing|\bpan flashing/i],
  ['head flashing', /\bhead[- ]flashing|\bat (?:the )?heads?\b|\bhead of (?:the )?(?:window|opening)/i],
  ['jamb flashing', /\bjamb[- ]flashing|\b(?:at|up|along) (?:the )?jambs?\b/i],
  ['counterflashing', /\bcounter[- ]?flash/i],
  ['through-wall flashing', /\bthr(?:ough|u)[- ]wall flashing/i],
  ['base flashing', /\bbase (?:of wall )?flashing/i],
  ['interior seal', /\binterior (?:air )?seal|\binterior perimeter/i],
  ['exterior seal', /\bexterior (?:perimeter )?seal|\bweep/i],
  ['transition membrane', /\btransition (?:membrane|strip|sheet|flashing|material)/i],
  ['corner treatment', /\b(?:inside|outside|exterior|interior) corners?\b|\bcorner (?:treatment|reinforcement)/i],
  ['penetration', /(?<!water |air )\bpenetrations?\b|\bpipes?\b|\bconduits?\b|\bcollars?\b/i],
  [
    'joint treatment',
    /\b(?:sheathing|board|panel) (?:joints?|seams?)\b|\bjoint (?:treatment|filler|tape)|\b(?:treat|fill|tape|reinforce)\b[^.]*\b(?:joints|seams)\b/i,
  ],
  [
    'opening flashing',
    /\b(?:rough |window |door )openings?\b[^.]*\bflash|\bflash\w*\b[^.]*\b(?:rough |window |door )?openings?\b|\bopening flashing/i,
  ],
  [
    'field membrane',
    /\bair (?:and (?:water|vapor)[- ])?barrier\b(?! (?:assembl|system|envelope))|\bfield membrane|\bmembrane\b|\bfluid[- ]applied/i,
  ],
];

/** The subject that words name; the first one named when there are several, which leaves a doubt. */
export function subjectOf(words: string): { readonly subject: Subject; readonly sole: boolean } | undefined {
  const named = SUBJECTS_NAMED.filter(
    ([subject, pattern]) =>
      pattern.test(words) && (subject !== 'exterior seal' || /\bseal/i.test(words) || !OF_MASONRY.test(words)),
  );
  const [first] = named;
  // The membrane is spoken of nearly everywhere; beside anything else it is not what is meant.
  const others = named.filter(([subject]) => subject !== 'field membrane');
  return first === undefined ? undefined : { subject: first[0], sole: others.length <= 1 };
}
