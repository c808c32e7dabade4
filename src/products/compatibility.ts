/** What two product data sheets say of each other, and the pairs of products that touch in a detail. */
import { contactsOf, type Contact } from './contacts.js';
import type { WallFace } from '../geometry/types.js';
import type { Detail, Family, Product } from '../model/types.js';
import type { Locus } from '../reading/types.js';

export type Rating = 'not compatible' | 'tested' | 'same system' | 'listed' | 'unknown';

export interface Rated {
  readonly rating: Rating;
  /** Where the data say so; absent when they say nothing. */
  readonly at?: Locus;
  /** What they say: the report, the system, the name listed. */
  readonly says?: string;
  /** Whose data say so. */
  readonly by?: Product;
}

const plain = (text: string): string => text.trim().toLowerCase().replace(/\s+/g, ' ');
/** True when a word of a data sheet means a product: its id, its name or its family, in one or many. */
function names(word: string, product: Product): boolean {
  const said = plain(word);
  return [product.id, product.name, product.family].some((n) => said === plain(n) || said === `${plain(n)}s`);
}

/**
 * What the data of two products say of their contact. A warning against it counts before everything else; a test before
 * a common system, a common system before a list.
 */
export function rate(a: Product, b: Product): Rated {
  const ways = [
    [a, b],
    [b, a],
  ] as const;
  for (const [by, other] of ways) {
    const word = by.notCompatibleWith.find((w) => names(w.value, other));
    if (word !== undefined) return { rating: 'not compatible', at: word.at, says: word.value, by };
  }
  for (const [by, other] of ways) {
    const test = by.testedWith.find((t) => t.product.value === other.id);
    if (test !== undefined) return { rating: 'tested', at: test.report.at, says: test.report.value, by };
  }
  if (a.system !== undefined && b.system !== undefined && plain(a.system.value) === plain(b.system.value))
    return { rating: 'same system', at: a.system.at, says: a.system.value, by: a };
  for (const [by, other] of ways) {
    const word = [...by.compatibleWith, ...by.substrates].find((w) => names(w.value, other));
    if (word !== undefined) return { rating: 'listed', at: word.at, says: word.value, by };
  }
  return { rating: 'unknown' };
}

/** Hard and dry: two of them give nothing off that could reach the other. Common practice, no source. */
const INERT: ReadonlySet<Family> = new Set<Family>([
  'mechanically fastened sheet',
  'metal flashing',
  'rigid pan',
  'drainage mat',
  'sheathing',
  'insulating sheathing',
  'board insulation',
  'batt insulation',
  'interior board',
  'cladding',
  'air space',
  'framing',
  'concrete',
  'masonry',
]);

/** True when one of the two is liquid, adhesive, plasticized or bituminous, so that somebody has to vouch for the pair. */
export function needsRating(a: Product, b: Product): boolean {
  return !(INERT.has(a.family) && INERT.has(b.family));
}

export interface ContactPair extends Rated {
  /** In the order of their ids. */
  readonly products: readonly [Product, Product];
  readonly contacts: readonly [Contact, ...Contact[]];
}

/** Each two products that touch in a detail, once, rated; in the order of their ids. */
export function contactPairs(detail: Detail, face: WallFace): ContactPair[] {
  const pairs = new Map<string, { products: [Product, Product]; contacts: [Contact, ...Contact[]] }>();
  for (const contact of contactsOf(detail, face)) {
    const [a, b] = [contact.outer.product, contact.inner.product];
    const products: [Product, Product] = a.id < b.id ? [a, b] : [b, a];
    const key = products.map((p) => p.id).join('\n');
    const pair = pairs.get(key);
    if (pair === undefined) pairs.set(key, { products, contacts: [contact] });
    else pair.contacts.push(contact);
  }
  return [...pairs.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, { products, contacts }]) => ({ products, contacts, ...rate(...products) }));
}

/**
 * The smallest contact of a pair: the least area of those that lie on each other; without any, the shortest line.
 *
 * @returns `undefined` when the documents show no extent
 */
export function leastContact(pair: ContactPair): Contact | undefined {
  const least = (size: (c: Contact) => number | undefined): Contact | undefined =>
    pair.contacts
      .filter((c) => size(c) !== undefined)
      .reduce<Contact | undefined>((m, c) => (m === undefined || (size(c) ?? 0) < (size(m) ?? 0) ? c : m), undefined);
  return least((c) => c.areaMm2) ?? least((c) => c.lengthMm);
}
