/** What the requirements of the specification ask of one thing that a rule holds against a limit. */
import { applies, type Unknown } from './conditions.js';
import type { Allowed, LimitQuery, OfferedLimit } from './limits.js';
import { asks } from './requirement-words.js';
import type { Source } from './result.js';
import { BROADER, type Property } from '../model/measures.js';
import { cupsOf } from '../products/cups.js';
import { remembered } from '../model/remembered.js';
import type { Detail, Measured, Requirement } from '../model/types.js';
import { formatQuantity } from '../quantity/format.js';

/** A requirement on the property and subject of a query, and whether it may be held. */
export interface Bearing {
  readonly requirement: Requirement;
  /** `held`, or why not: nobody confirmed it, its condition does not hold, or nobody can tell whether it does. */
  readonly state: 'held' | 'not confirmed' | 'elsewhere' | Unknown;
}

/** A detail has few properties asked about and may have hundreds of requirements. */
const byProperty = remembered((requirements: readonly Requirement[]): ReadonlyMap<Property, readonly Requirement[]> => {
  const map = new Map<Property, Requirement[]>();
  for (const requirement of requirements) {
    if (requirement.property === undefined || requirement.values.length === 0) continue;
    const known = map.get(requirement.property);
    if (known === undefined) map.set(requirement.property, [requirement]);
    else known.push(requirement);
  }
  return map;
});

/** Whether the method of a requirement names the cup; `not named` stands for a method that names none. */
function asksFor({ method }: Requirement, cup: NonNullable<LimitQuery['cup']>): boolean {
  const cups = method === undefined ? undefined : cupsOf(method.value);
  return cup === 'not named' ? cups === undefined : cups?.has(cup) === true;
}

function concerns(requirement: Requirement, query: LimitQuery): boolean {
  if (query.cup !== undefined && !asksFor(requirement, query.cup)) return false;
  if (requirement.product !== undefined && requirement.product.value !== query.product?.id) return false;
  if (requirement.subject === undefined || requirement.subject === query.subject) return true;
  return query.subject !== undefined && BROADER[query.subject] === requirement.subject;
}

/** The requirements that a query bears on, in the order of the specification. */
export function bearingOn(detail: Detail, query: LimitQuery): readonly Bearing[] {
  const known = byProperty(detail.requirements).get(query.property);
  if (known === undefined) return [];
  return known.flatMap((requirement): Bearing[] => {
    if (!concerns(requirement, query)) return [];
    const here = applies(requirement.when, detail, query);
    if (here === false) return [{ requirement, state: 'elsewhere' }];
    if (!requirement.confirmed) return [{ requirement, state: 'not confirmed' }];
    return [{ requirement, state: here === true ? 'held' : here }];
  });
}

/** The ends between which a value lies to meet one of the values asked, in base units. */
function endsOf(value: Measured): { readonly least?: number; readonly most?: number } {
  switch (value.bound) {
    case 'at least':
      return { least: value.value };
    case 'at most':
      return { most: value.value };
    default:
      return { least: value.value, most: value.upper ?? value.value };
  }
}

/** All that a requirement allows. */
export function rangesOf({ comparison, values }: Requirement): Allowed['ranges'] {
  if (comparison === 'at least') return values.map(({ value }) => ({ least: value }));
  if (comparison === 'at most') return values.map(({ value }) => ({ most: value }));
  return values.map(endsOf);
}

function sourceOf(requirement: Requirement, value: Measured): Source {
  return {
    basis: requirement.basis,
    citation: requirement.citation,
    provenance: 'project document',
    at: value.at,
    requirement,
  };
}

/** The end of a requirement in one direction; none when it does not bind that way. */
export function endOf(requirement: Requirement, comparison: LimitQuery['comparison']): OfferedLimit[] {
  const { comparison: compare, values } = requirement;
  const first = values[0];
  if (first === undefined) return [];
  if (compare === 'at least' || compare === 'at most') {
    if (compare !== comparison) return [];
    return [{ value: first.value, text: first.text, source: sourceOf(requirement, first) }];
  }
  // Of a list the outermost value binds, and the value has to be one of the list beside that.
  const ends = values.map((value) => ({ value, end: endsOf(value)[comparison === 'at least' ? 'least' : 'most'] }));
  const open = ends.some(({ end }) => end === undefined);
  const [outer] = [...ends].sort((a, b) => (comparison === 'at least' ? 1 : -1) * ((a.end ?? 0) - (b.end ?? 0)));
  if (open || outer?.end === undefined) return [];
  const plain = formatQuantity(outer.end, outer.value.dimension, outer.value);
  const bare = outer.value.unit === '' ? String(outer.end) : plain;
  const text =
    compare === 'one of' || outer.value.bound === 'between'
      ? `${bare} (of ${values.map((v) => v.text).join(', ')})`
      : outer.value.text;
  return [{ value: outer.end, text, asks: asks(requirement), source: sourceOf(requirement, outer.value) }];
}

/** What a requirement asks beside the end that a query asks for; nothing when that end says it all. */
export function besides(requirement: Requirement, query: LimitQuery): Allowed[] {
  const { comparison, values } = requirement;
  const first = values[0];
  if (first === undefined || comparison === query.comparison) return [];
  // A rule that asks for both ends has the list held once, with its lower end.
  if (query.bothEnds === true && (comparison !== 'one of' || query.comparison === 'at most')) return [];
  return [{ ranges: rangesOf(requirement), asks: asks(requirement), source: sourceOf(requirement, first) }];
}
