/**
 * The shape of a rule: one file that declares what it is and holds one pure function, with a page of the same
 * name (`.md`) beside it.
 */
import type { Limit, LimitQuery } from './limits.js';
import type { Level, Outcome, Source } from './result.js';
import type { Detail } from '../model/types.js';
import type { WallFace } from '../geometry/types.js';

/** A parameter a project may set under `settings: rules: <id>: parameters`. */
export interface Parameter {
  /** `length`, `film` ... for a quantity written with its unit; or a plain number, truth value or one of a list of words. */
  readonly type: import('../quantity/types.js').Dimension | 'count' | 'truth' | readonly string[];
  /** As a person would write it: `2 in`, `24 in`, `2`, `true`. Must pass its own type. */
  readonly default: string | number | boolean;
  readonly meaning: string;
  /** Where the default comes from. */
  readonly source: Source;
}

export interface RuleSubject<P extends Record<string, Parameter> = Record<string, Parameter>> {
  readonly detail: Detail;
  /** The wall face with its pieces, cells and edges; computed when first asked for. */
  readonly face: WallFace;
  /**
   * Parameter value: base unit of its dimension (mm, Pa, um, ratio ...) for quantities.
   * @param name a key of the rule's `parameters`
   */
  readonly number: (name: keyof P & string) => number;
  readonly word: (name: keyof P & string) => string;
  readonly truth: (name: keyof P & string) => boolean;
  /**
   * The strictest limit that applies, over code, specification, product data, standards and practice, with all
   * the others; `undefined` when nothing asks for anything.
   */
  readonly limit: (query: LimitQuery) => Limit | undefined;
}

export interface Rule<P extends Record<string, Parameter> = Record<string, Parameter>> {
  /** `family/name`, same as folder and file: `lap/reverse-lap`. */
  readonly id: string;
  /** Trade words for what is looked at, which read right above a pass and above a failure: `Back dam height`. */
  readonly title: string;
  /** One sentence: what must be true on the wall. */
  readonly summary: string;
  /** Level of a breach, before the source (see `levelFor`) and the settings have their say. */
  readonly level: Exclude<Level, 'none'>;
  /** Parts of the documents it reads, as an author names them: `work.place`, `openings.unit.bedding`. */
  readonly reads: readonly string[];
  /** The clauses this check rests on, the governing one first. */
  readonly sources: readonly Source[];
  readonly parameters?: P;
  /** A caution printed with each finding when getting it wrong can hurt someone. */
  readonly caution?: string;
  /**
   * Set when the rule asks only whether the data of each product used are sound: what it finds in a product document is
   * told once in a run, under the product, however many details use it.
   */
  readonly once?: 'per product';
  /** Pure: same subject, same outcomes, in a fixed order. Yields one outcome for each thing checked. */
  review(subject: RuleSubject<P>): Iterable<Outcome>;
}

/** Gives a rule its type; returns it unchanged. */
export function defineRule<const P extends Record<string, Parameter>>(rule: Rule<P>): Rule<P> {
  return rule;
}
