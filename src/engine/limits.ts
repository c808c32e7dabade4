/**
 * Which requirement governs: the strictest of code, specification, product data, standard and practice.
 *
 * @see design: the finding names the source that governs and lists the others as related.
 */
import type { Property, Subject } from '../model/measures.js';
import type { Product } from '../model/types.js';
import type { Source } from './result.js';

/** A limit offered by a rule itself: a code figure, a standard, or a practice default. */
export interface OfferedLimit {
  /** Base unit of the property's dimension. */
  readonly value: number;
  /** As the source prints it: `2 in`. */
  readonly text: string;
  readonly source: Source;
}

export interface LimitQuery {
  readonly property: Property;
  readonly subject?: Subject;
  readonly product?: Product | undefined;
  readonly comparison: 'at least' | 'at most';
  /** What code, standard or practice ask; requirements of the project's documents are added by the engine. */
  readonly offered?: readonly OfferedLimit[];
  /**
   * When true (default), an offered limit of basis `practice` gives way to any limit that the project's own
   * documents state: a trade habit does not overrule what the parties agreed.
   */
  readonly practiceYields?: boolean;
}

export interface Limit {
  /** Base unit. */
  readonly value: number;
  readonly text: string;
  readonly source: Source;
  /** The rest, strictest first. */
  readonly others: readonly OfferedLimit[];
  /** Set when no value can satisfy all: an `at least` above an `at most`. */
  readonly conflict?: OfferedLimit;
}
