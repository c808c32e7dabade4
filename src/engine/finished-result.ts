/**
 * A result with its place and its fingerprint worked out when first asked for: of the two hundred checks that a detail
 * passes, most printers only count.
 */
import { fingerprintOf } from './fingerprint.js';
import type { Declared, FlowStep, Kind, Level, Outcome, RelatedPlace, Result, Source, Suppression } from './result.js';
import { spanOfLocus } from '../reading/locus.js';
import type { Locus, SourceFile, Span } from '../reading/types.js';

/** Counts how often the same thing was found at the same place, over everything of one run. */
export class Fingerprints {
  readonly #all: FinishedResult[] = [];
  #known: string[] | undefined;

  /** @returns the number under which the result is known */
  add(result: FinishedResult): number {
    this.#known = undefined;
    return this.#all.push(result) - 1;
  }

  of(number: number): string {
    this.#known ??= this.#compute();
    return this.#known[number] as string;
  }

  #compute(): string[] {
    const seen = new Map<string, number>();
    return this.#all.map((result) => {
      const key = fingerprintOf(result.ruleId, result.documentId, result, 0);
      const occurrence = seen.get(key) ?? 0;
      seen.set(key, occurrence + 1);
      return occurrence === 0 ? key : fingerprintOf(result.ruleId, result.documentId, result, occurrence);
    });
  }
}

/** An outcome with its rule, its document and its level. The outcome itself is kept, not copied: there are many. */
export class FinishedResult implements Result {
  readonly ruleId: string;
  readonly documentId: string;
  readonly level: Level;
  readonly #outcome: Outcome;
  readonly #fingerprints: Fingerprints;
  readonly #number: number;
  #suppression: Suppression | undefined;
  #declared: Declared | undefined;
  #span: Span | undefined;

  constructor(ruleId: string, documentId: string, outcome: Outcome, level: Level, fingerprints: Fingerprints) {
    this.ruleId = ruleId;
    this.documentId = documentId;
    this.level = level;
    this.#outcome = outcome;
    this.#fingerprints = fingerprints;
    this.#number = fingerprints.add(this);
  }

  get kind(): Kind {
    return this.#outcome.kind;
  }
  get message(): string {
    return this.#outcome.message;
  }
  get at(): Locus {
    return this.#outcome.at;
  }
  get subject(): string | undefined {
    return this.#outcome.subject;
  }
  get required(): string | undefined {
    return this.#outcome.required;
  }
  get provided(): string | undefined {
    return this.#outcome.provided;
  }
  get correct(): string | undefined {
    return this.#outcome.correct;
  }
  get sources(): readonly Source[] | undefined {
    return this.#outcome.sources;
  }
  get alsoBroken(): readonly Source[] | undefined {
    return this.#outcome.alsoBroken;
  }
  get related(): readonly RelatedPlace[] | undefined {
    return this.#outcome.related;
  }
  get flow(): readonly FlowStep[] | undefined {
    return this.#outcome.flow;
  }
  get missing(): readonly string[] | undefined {
    return this.#outcome.missing;
  }
  get notes(): readonly string[] | undefined {
    return this.#outcome.notes;
  }
  get definite(): boolean | undefined {
    return this.#outcome.definite;
  }
  get declared(): Declared | undefined {
    return this.#declared;
  }
  get suppression(): Suppression | undefined {
    return this.#suppression;
  }
  get file(): SourceFile {
    return this.#outcome.at.document.file;
  }
  get span(): Span {
    return (this.#span ??= spanOfLocus(this.#outcome.at));
  }
  get fingerprint(): string {
    return this.#fingerprints.of(this.#number);
  }

  /** Marks it as accepted; it stays among the results. */
  suppressBy(suppression: Suppression): void {
    this.#suppression = suppression;
  }

  /** Marks it as declared and not yet decided. */
  declareBy(declared: Declared): void {
    this.#declared = declared;
  }
}
