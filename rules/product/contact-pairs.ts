import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import type { Detail } from '../../src/model/types.js';
import { contactPairs, leastContact, needsRating, type ContactPair } from '../../src/products/compatibility.js';
import type { Contact } from '../../src/products/contacts.js';
import { formatQuantity } from '../../src/quantity/format.js';

const CERTIFICATE: Source = {
  basis: 'guide',
  citation: 'public project section 07 27 00, submittals: statement that the materials that touch are compatible',
  provenance: 'seen',
};
const DATA: Source = {
  basis: 'product data',
  citation: 'compatibility as the data sheets declare it',
  provenance: 'project document',
};
/** More places than this make a sentence that nobody reads. */
const SHOWN = 3;

/** Area or length of a contact, in the units of the drawing. */
function sizeOf(contact: Contact, detail: Detail): string {
  const like = { system: detail.openings[0]?.widthMm.system ?? 'US' } as const;
  if (contact.areaMm2 !== undefined) return formatQuantity(contact.areaMm2 / 1e6, 'area', like);
  return contact.lengthMm === undefined ? 'no extent shown' : formatQuantity(contact.lengthMm, 'length', like);
}

const placeOf = (c: Contact, detail: Detail): string =>
  `${c.outer.name} ${c.how} ${c.inner.name} ${c.where} (${sizeOf(c, detail)})`;

/** Where a pair touches, and where least. */
function told(pair: ContactPair, detail: Detail): string {
  const { contacts } = pair;
  const shown = contacts.slice(0, SHOWN).map((c) => placeOf(c, detail));
  const rest = contacts.length - shown.length;
  const least = contacts.length > 1 ? leastContact(pair) : undefined;
  const places = `${shown.join('; ')}${rest > 0 ? `; and in ${rest} more ${rest === 1 ? 'place' : 'places'}` : ''}`;
  return `${places}${least === undefined ? '' : `; the least is ${sizeOf(least, detail)}, ${least.outer.name} and ${least.inner.name} ${least.where}`}`;
}

/** What the data say of a pair, as the end of a sentence. */
function basis({ rating, by, says }: ContactPair): string {
  const whose = `the data of "${by?.id ?? ''}"`;
  if (rating === 'tested') return `tested with each other (${says ?? ''}, by ${whose})`;
  if (rating === 'same system') return `of the same system, ${says ?? ''}`;
  return `listed: ${whose} name ${says ?? ''}`;
}

/** Each two products that touch are known to get along. */
export default defineRule({
  id: 'product/contact-pairs',
  title: 'Products that touch',
  summary: 'Each two products that touch are tested together, of one system, or listed as compatible.',
  level: 'error',
  reads: [
    'work.place',
    'wall.product',
    'product.compatibleWith',
    'product.notCompatibleWith',
    'product.testedWith',
    'product.system',
    'product.substrates',
  ],
  sources: [CERTIFICATE, DATA],
  caution:
    'Data sheets are taken at their word, and nothing is tested here. Have the manufacturers confirm each pair in writing.',
  *review({ detail, face }) {
    for (const pair of contactPairs(detail, face)) {
      const [a, b] = pair.products;
      if (pair.rating === 'unknown' && !needsRating(a, b)) continue;
      const first = leastContact(pair) ?? pair.contacts[0];
      const touch = `"${a.id}" (${a.family}) and "${b.id}" (${b.family}) touch: ${told(pair, detail)}`;
      const base = {
        at: first.outer.at,
        subject: `${a.id} and ${b.id}`,
        required: 'tested, same system or listed',
        provided: pair.rating,
        related: [
          { message: `"${first.inner.product.id}" is applied here`, at: first.inner.at },
          ...(pair.at === undefined ? [] : [{ message: 'what the data sheet says', at: pair.at }]),
        ],
      };
      const sources = [
        pair.at === undefined
          ? CERTIFICATE
          : { ...DATA, citation: `product data of ${pair.by?.id ?? a.id}`, at: pair.at },
      ];
      if (pair.rating === 'unknown')
        yield {
          kind: 'open',
          message: `${touch}. The data of neither say whether they are compatible; ask for a statement, and add it to "testedWith", "compatibleWith" or "system".`,
          missing: ['product.testedWith', 'product.compatibleWith', 'product.system'],
          sources,
          ...base,
        };
      else if (pair.rating === 'not compatible')
        yield {
          kind: 'fail',
          message: `${touch}. The data of "${pair.by?.id ?? ''}" warn against it (${pair.says ?? ''}).`,
          correct: `Keep the two apart by a material that both list, or change one of them.`,
          sources,
          ...base,
        };
      else yield { kind: 'pass', message: `${touch}; ${basis(pair)}.`, sources, ...base };
    }
  },
});
