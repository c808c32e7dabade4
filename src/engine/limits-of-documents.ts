/**
 * Finds the limit that governs: collects what the project's documents ask, adds what a rule offers from code,
 * standard or practice, and takes the strictest.
 */
import type { Limit, LimitQuery, OfferedLimit } from './limits.js';
import { formatQuantity } from '../quantity/format.js';
import { BROADER, type Property } from '../model/measures.js';
import type { Detail, Measured, Product, Requirement } from '../model/types.js';

/** Where a data sheet states each property. Absent: data sheets do not state it. */
const OF_PRODUCT: Partial<Record<Property, (product: Product) => Measured | undefined>> = {
  'extension onto wall': (p) => p.least.ontoWallMm,
  'extension into opening': (p) => p.least.intoOpeningMm,
  'extension past jambs': (p) => p.least.pastJambsMm,
  'cover each side': (p) => p.least.coverEachSideMm,
  'collar extension': (p) => p.least.collarMm,
  'bearing each side': (p) => p.least.bearingMm,
  lap: (p) => p.least.lapMm,
  'end lap': (p) => p.least.endLapMm,
  'corner leg': (p) => p.least.cornerLegMm,
  'wet film': (p) => p.wetFilmUm,
  'dry film': (p) => p.dryFilmUm,
  'joint width': (p) => p.jointWidthMm,
  'sheathing gap': (p) => p.maxGapMm,
};

/** The end of a stated quantity that binds in one direction; `undefined` when it does not bind that way. */
function bindingEnd(quantity: Measured, comparison: LimitQuery['comparison']): number | undefined {
  if (quantity.bound === 'between') return comparison === 'at least' ? quantity.value : quantity.upper;
  if (quantity.bound === 'at most') return comparison === 'at most' ? quantity.value : undefined;
  // A plain value on a data sheet is the least that is to be done, unless the property is a ceiling.
  return comparison === 'at least' || quantity.bound === 'exactly' ? quantity.value : undefined;
}

/** Properties whose plain data-sheet value is a ceiling, not a floor. */
const CEILINGS: ReadonlySet<Property> = new Set<Property>(['sheathing gap']);

function ofProduct(query: LimitQuery): OfferedLimit[] {
  const { product, property, comparison } = query;
  const quantity = product === undefined ? undefined : OF_PRODUCT[property]?.(product);
  if (product === undefined || quantity === undefined) return [];
  if (quantity.bound === 'exactly' && CEILINGS.has(property) !== (comparison === 'at most')) return [];
  const value = bindingEnd(quantity, comparison);
  if (value === undefined) return [];
  // Of a range only one end binds; it is printed with the range it comes from.
  const text =
    quantity.bound === 'between'
      ? `${formatQuantity(value, quantity.dimension, quantity)} (of ${quantity.text})`
      : quantity.text;
  return [
    {
      value,
      text,
      source: {
        basis: 'product data',
        citation: `product data of ${product.id}`,
        provenance: 'project document',
        at: quantity.at,
      },
    },
  ];
}

function applies(requirement: Requirement, query: LimitQuery): boolean {
  if (requirement.property !== query.property || requirement.value === undefined) return false;
  if (requirement.product !== undefined && requirement.product !== query.product?.id) return false;
  if (requirement.subject !== undefined && requirement.subject !== query.subject) {
    if (query.subject === undefined || BROADER[query.subject] !== requirement.subject) return false;
  }
  return true;
}

function ofSpecification(detail: Detail, query: LimitQuery, comparison: LimitQuery['comparison']): OfferedLimit[] {
  return detail.requirements.flatMap((r) => {
    if (!applies(r, query) || r.value === undefined) return [];
    if (r.comparison !== comparison && r.comparison !== 'equals') return [];
    // `equals: 12-14 mil` binds at both ends.
    const value =
      r.comparison === 'equals' && comparison === 'at most' ? (r.value.upper ?? r.value.value) : r.value.value;
    return [
      {
        value,
        text: r.value.text,
        source: { basis: r.basis, citation: r.citation, provenance: 'project document' as const, at: r.value.at },
      },
    ];
  });
}

/**
 * The governing limit.
 *
 * @returns the strictest that applies, the rest strictest first, and the first opposite requirement that no
 * value could satisfy together with it; `undefined` when nothing asks for anything
 */
export function governingLimit(detail: Detail, query: LimitQuery): Limit | undefined {
  const documents = [...ofSpecification(detail, query, query.comparison), ...ofProduct(query)];
  const yields = (query.practiceYields ?? true) && documents.length > 0;
  const offered = (query.offered ?? []).filter((o) => !(yields && o.source.basis === 'practice'));
  const sign = query.comparison === 'at least' ? -1 : 1;
  const all = [...documents, ...offered].sort((a, b) => sign * (a.value - b.value));
  const first = all[0];
  if (first === undefined) return undefined;
  const opposite = query.comparison === 'at least' ? 'at most' : 'at least';
  const against = [...ofSpecification(detail, query, opposite), ...ofProduct({ ...query, comparison: opposite })].find(
    (o) => (query.comparison === 'at least' ? o.value < first.value - 1e-9 : o.value > first.value + 1e-9),
  );
  return {
    value: first.value,
    text: first.text,
    source: first.source,
    others: all.slice(1),
    ...(against === undefined ? {} : { conflict: against }),
  };
}
