/**
 * Finds the limit that governs: collects what the project's documents ask, adds what a rule offers from code,
 * standard or practice, and takes the strictest that the contract leaves standing.
 */
import type { Allowed, Limit, LimitQuery, OfferedLimit } from './limits.js';
import { appliesUnder, codesOf } from './jurisdiction.js';
import { bearingOn, besides, endOf, type Bearing } from './limits-of-specification.js';
import { partedBy, precedenceOf, type GoesBefore } from './precedence.js';
import { formatQuantity } from '../quantity/format.js';
import type { Property } from '../model/measures.js';
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

/** Greatest difference that rounding in reading and converting units may leave, as a share. */
const ROUNDING = 1e-9;

/** What stands on each end, and what gave way there. */
interface End {
  standing: readonly OfferedLimit[];
  readonly overruled: OfferedLimit[];
}

/** Strictest first. What is no stricter than what stands may stand too: it changes nothing. */
function endIn(comparison: LimitQuery['comparison'], limits: readonly OfferedLimit[], order?: GoesBefore): End {
  const sign = comparison === 'at least' ? -1 : 1;
  const byStrictness = (a: OfferedLimit, b: OfferedLimit): number => sign * (a.value - b.value);
  const sorted = limits.length < 2 ? limits : [...limits].sort(byStrictness);
  if (order === undefined) return { standing: sorted, overruled: [] };
  const { standing, overruled } = partedBy(order, sorted);
  const [first] = standing;
  const stricter = overruled.filter((o) => first !== undefined && byStrictness(o, first) < 0);
  const rest = overruled.filter((o) => !stricter.includes(o));
  return {
    standing: rest.length === 0 ? [...standing] : [...standing, ...rest].sort(byStrictness),
    overruled: stricter,
  };
}

/** True when no value is at least the one and at most the other. */
function exclude(comparison: LimitQuery['comparison'], asked: OfferedLimit, opposite: OfferedLimit): boolean {
  const slack = Math.abs(asked.value) * ROUNDING;
  return comparison === 'at least' ? opposite.value < asked.value - slack : opposite.value > asked.value + slack;
}

/**
 * The first limit of the opposite end that excludes the strictest of this one. Where the contract puts one of the two
 * sources before the other, the other gives way, and what is then strictest is looked at.
 */
function conflictOf(
  query: LimitQuery,
  here: End,
  opposite: End,
  order: GoesBefore | undefined,
): OfferedLimit | undefined {
  for (;;) {
    const [first] = here.standing;
    if (first === undefined) return undefined;
    const against = opposite.standing.find((o) => exclude(query.comparison, first, o));
    if (against === undefined || order === undefined) return against;
    const loses = order(first.source.basis, against.source.basis)
      ? { end: opposite, limit: against }
      : order(against.source.basis, first.source.basis)
        ? { end: here, limit: first }
        : undefined;
    if (loses === undefined) return against;
    loses.end.standing = loses.end.standing.filter((l) => l !== loses.limit);
    // Told with what gave way, whichever end it binds: it is the same contract that settles it.
    here.overruled.push(loses.limit);
  }
}

/** A list no value of which lies between the ends that stand. */
function excludedList(query: LimitQuery, here: End, opposite: End, lists: readonly Allowed[]): Allowed | undefined {
  const [first] = here.standing;
  const [other] = opposite.standing;
  const [least, most] = query.comparison === 'at least' ? [first, other] : [other, first];
  const slack = (value: number): number => Math.abs(value) * ROUNDING;
  return lists.find((list) =>
    list.ranges.every(
      (r) =>
        (least !== undefined && r.most !== undefined && r.most < least.value - slack(least.value)) ||
        (most !== undefined && r.least !== undefined && r.least > most.value + slack(most.value)),
    ),
  );
}

/**
 * The governing limit.
 *
 * @param heed told of every requirement the query bears on, also of those that may not be held
 * @returns the strictest that applies, the rest strictest first, what requirements ask beside that end, and the
 * first opposite requirement that no value could satisfy together with it; `undefined` when nothing asks for anything
 */
export function governingLimit(
  detail: Detail,
  query: LimitQuery,
  heed?: (bearing: readonly Bearing[], found: Limit | undefined) => void,
): Limit | undefined {
  const bearing = bearingOn(detail, query);
  const held = bearing.flatMap((b) => (b.state === 'held' ? [b.requirement] : []));
  const found = strictest(detail, query, held);
  if (bearing.length > 0) heed?.(bearing, found);
  return found;
}

/** What requirements ask beside this end, those that gave way left out. */
function alsoAsked(query: LimitQuery, held: readonly Requirement[], overruled: readonly OfferedLimit[]): Allowed[] {
  return held
    .filter((r) => !overruled.some(({ source }) => source.requirement === r))
    .flatMap((r) => besides(r, query));
}

function strictest(detail: Detail, query: LimitQuery, held: readonly Requirement[]): Limit | undefined {
  const { comparison } = query;
  const opposite = comparison === 'at least' ? 'at most' : 'at least';
  const ofSheet = ofProduct(query);
  const documents = held.length === 0 ? ofSheet : [...held.flatMap((r) => endOf(r, comparison)), ...ofSheet];
  const against = [...held.flatMap((r) => endOf(r, opposite)), ...ofProduct({ ...query, comparison: opposite })];
  // A habit gives way to what the documents ask on the same end, and to what they exclude on the other.
  const yields = (o: OfferedLimit): boolean =>
    o.source.basis === 'practice' &&
    (query.practiceYields ?? true) &&
    (documents.length > 0 || against.some((a) => a.source.requirement !== undefined && exclude(comparison, o, a)));
  const codes = codesOf(detail.project);
  const offered = (query.offered ?? []).filter((o) => appliesUnder(codes, o.source) && !yields(o));
  const order = precedenceOf(detail.project);
  const here = endIn(comparison, [...documents, ...offered], order);
  const there = endIn(opposite, against, order);
  const conflict = conflictOf(query, here, there, order);
  const [first, ...others] = here.standing;
  if (first === undefined) return undefined;
  const also = held.length === 0 ? [] : alsoAsked(query, held, [...here.overruled, ...there.overruled]);
  const list = conflict === undefined && also.length > 0 ? excludedList(query, here, there, also) : undefined;
  const clash = conflict ?? (list && { value: NaN, text: list.asks, asks: list.asks, source: list.source });
  return {
    value: first.value,
    text: first.text,
    ...(first.asks === undefined ? {} : { asks: first.asks }),
    source: first.source,
    others,
    ...(also.length === 0 ? {} : { also }),
    ...(here.overruled.length === 0 ? {} : { overruled: here.overruled }),
    ...(clash === undefined ? {} : { conflict: clash }),
  };
}
