/** The clauses behind the rules and results, as SARIF taxonomies: one for each kind of source. */
import type { ReportingDescriptor, ReportingDescriptorReference, ToolComponent } from 'sarif';
import type { Basis, Source } from '../engine/result.js';
import { webAddress } from './escape.js';
import type { Review } from './report.js';

/** How each kind of source is named and told. The order is that of the taxonomies in the log. */
const BASES: readonly (readonly [Basis, string])[] = [
  ['code', 'Building code clauses'],
  ['specification', 'Paragraphs of the project specification'],
  ['product data', 'Product data'],
  ['standard', 'Clauses of referenced standards'],
  ['guide', 'Published guides'],
  ['practice', 'Practice of the trade'],
  ['physics', 'Relations of physics and arithmetic'],
];

export interface Clauses {
  readonly taxonomies: readonly ToolComponent[];
  /** References for the `taxa` of a result or the `relationships` of a rule; each clause once. */
  references(sources: readonly Source[]): ReportingDescriptorReference[];
}

/** Gathers every clause that a rule or a result cites, ordered by code unit. */
export function gatherClauses(review: Pick<Review, 'rules' | 'results'>): Clauses {
  const byBasis = new Map<Basis, Map<string, Source[]>>();
  const add = (source: Source): void => {
    let ofBasis = byBasis.get(source.basis);
    if (ofBasis === undefined) byBasis.set(source.basis, (ofBasis = new Map<string, Source[]>()));
    const same = ofBasis.get(source.citation);
    if (same === undefined) ofBasis.set(source.citation, [source]);
    // Kept once for each way it is known: thousands of results cite the same clause.
    else if (!same.some((one) => one.provenance === source.provenance && one.url === source.url)) same.push(source);
  };
  for (const rule of review.rules) rule.sources.forEach(add);
  for (const result of review.results) result.sources?.forEach(add);

  const places = new Map<string, ReportingDescriptorReference>();
  const taxonomies: ToolComponent[] = [];
  for (const [basis, told] of BASES) {
    const ofBasis = byBasis.get(basis);
    if (ofBasis === undefined) continue;
    const component = { name: basis, index: taxonomies.length };
    const taxa = [...ofBasis]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([citation, sources], index) => {
        places.set(key(basis, citation), { id: citation, index, toolComponent: component });
        return taxon(citation, sources);
      });
    taxonomies.push({ name: basis, shortDescription: { text: told }, isComprehensive: false, taxa });
  }
  return {
    taxonomies,
    references: (sources) => {
      const keys = new Set(sources.map((source) => key(source.basis, source.citation)));
      return [...keys].flatMap((one) => places.get(one) ?? []);
    },
  };
}

function taxon(citation: string, sources: readonly Source[]): ReportingDescriptor {
  const url = sources.map((source) => webAddress(source.url)).find((address) => address !== undefined);
  return {
    id: citation,
    ...(url === undefined ? {} : { helpUri: url }),
    properties: { provenance: [...new Set(sources.map((source) => source.provenance))].sort() },
  };
}

function key(basis: Basis, citation: string): string {
  return `${basis}\n${citation}`;
}
