/** A review that was just made, as one side of a comparison. */
import type { Notification, Result } from '../engine/result.js';
import { lineColumn } from '../reading/source.js';
import type { Library } from '../reading/library.js';
import type { Locus, ReadDocument } from '../reading/types.js';
import type { Position, Spot, Submission, Told } from './types.js';
import { pathOf, stepsOf } from './values.js';

export interface JustReviewed {
  readonly rules: readonly { readonly id: string; readonly reads?: readonly string[] }[];
  readonly notifications: readonly Notification[];
  readonly results: readonly Result[];
  readonly details: readonly { readonly id: string; readonly title?: string; readonly uri: string }[];
}

/** One side of a comparison from documents reviewed just now, with the values each result rests on. */
export function submissionOfReview(name: string, review: JustReviewed, library: Library): Submission {
  const details = new Map(library.documents.filter((d) => d.kind === 'detail').map((d) => [d.id, d]));
  const rules = new Map(review.rules.map((rule) => [rule.id, rule]));
  const failed = new Set(review.notifications.map((one) => `${one.ruleId ?? ''} ${one.documentId ?? ''}`));
  const set = (library.settings?.data['rules'] ?? {}) as Readonly<Record<string, { readonly level?: string }>>;
  return {
    name,
    results: review.results.map((result, number) => new ToldNow(result, number)),
    details: review.details.map(({ id, title, uri }) => ({ id, title, uri })),
    documents: library.documents,
    reads: (rule) => rules.get(rule)?.reads,
    isAsked: (rule, detail) => rules.has(rule) && set[rule]?.level !== 'off' && !failed.has(`${rule} ${detail}`),
    reach: (id) => {
      const detail = details.get(id);
      if (detail === undefined) return [];
      const { project, products, specifications } = library.reach(detail);
      return [project, ...products.values(), ...specifications, library.settings].filter(
        (one): one is ReadDocument => one !== undefined,
      );
    },
  };
}

/** A result told from the result itself; positions are worked out only for those that are printed. */
class ToldNow implements Told {
  constructor(
    private readonly result: Result,
    readonly number: number,
  ) {}

  get detail(): string {
    return this.result.documentId;
  }
  get rule(): string {
    return this.result.ruleId;
  }
  get subject(): string {
    return this.result.subject ?? '';
  }
  get kind() {
    return this.result.kind;
  }
  get level() {
    return this.result.kind === 'fail' ? this.result.level : 'none';
  }
  get message(): string {
    return this.result.message;
  }
  get required(): string | undefined {
    return this.result.required;
  }
  get provided(): string | undefined {
    return this.result.provided;
  }
  get correct(): string | undefined {
    return this.result.correct;
  }
  get missing(): readonly string[] {
    return this.result.missing ?? [];
  }
  get sources() {
    return (this.result.sources ?? []).map(({ basis, citation, provenance }) => ({ basis, citation, provenance }));
  }
  get accepted(): string | undefined {
    return this.result.suppression?.justification;
  }
  get path(): string {
    const { document, path } = this.result.at;
    return pathOf(document, path);
  }
  position(): Position {
    const { file, span } = this.result;
    return { uri: file.uri, ...lineColumn(file, span.start) };
  }
  evidence(): readonly Spot[] {
    const { at, related, flow, sources, suppression } = this.result;
    const loci: (Locus | undefined)[] = [
      at,
      ...(related ?? []).map((one) => one.at),
      ...(flow ?? []).map((one) => one.at),
      ...(sources ?? []).map((one) => one.at),
      suppression?.at,
    ];
    return loci.flatMap((locus) =>
      locus === undefined ? [] : [{ document: locus.document, steps: stepsOf(locus.document, locus.path) }],
    );
  }
}
