/**
 * Which requirement governs: the strictest of code, specification, product data, standard and practice, unless the
 * contract orders them. What a rule offers from the code of another country does not compete (`jurisdiction.ts`).
 *
 * @see design: the finding names the source that governs and lists the others as related.
 */
import type { Property, Subject } from '../model/measures.js';
import type { Product } from '../model/types.js';
import type { Cup } from '../products/cups.js';
import type { Source } from './result.js';

/** A limit offered by a rule itself: a code figure, a standard, or a practice default. */
export interface OfferedLimit {
  /** Base unit of the property's dimension. */
  readonly value: number;
  /** As the source prints it: `2 in`. */
  readonly text: string;
  /** The whole of what the source asks, where it is more than one end: `exactly 2 in`, `one of 2 in, 3 in`. */
  readonly asks?: string;
  readonly source: Source;
}

export interface LimitQuery {
  readonly property: Property;
  readonly subject?: Subject;
  readonly product?: Product | undefined;
  readonly comparison: 'at least' | 'at most';
  /** Of permeance: only requirements whose method names this cup, or names none. All when absent. */
  readonly cup?: Cup | 'not named';
  /** What code, standard or practice ask; requirements of the project's documents are added by the engine. */
  readonly offered?: readonly OfferedLimit[];
  /**
   * When true (default), an offered limit of basis `practice` gives way to any limit that the project's own
   * documents state: a trade habit does not overrule what the parties agreed.
   */
  readonly practiceYields?: boolean;
  /** The rule asks for the other end itself; it is then not held a second time with this one. */
  readonly bothEnds?: boolean;
}

/** Values that a requirement allows beside the end that was asked for. */
export interface Allowed {
  /** Base unit, ends included; an end that is absent does not bind. The value lies in one of them. */
  readonly ranges: readonly { readonly least?: number; readonly most?: number }[];
  /** `at most 8 in`, `exactly 6 in`, `one of 3/8 in, 1/2 in`. */
  readonly asks: string;
  readonly source: Source;
}

export interface Limit {
  /** Base unit. */
  readonly value: number;
  readonly text: string;
  /** See {@link OfferedLimit.asks}. */
  readonly asks?: string;
  readonly source: Source;
  /** The rest, strictest first. */
  readonly others: readonly OfferedLimit[];
  /** What requirements ask beside this end: the other end of a range, one of a list. */
  readonly also?: readonly Allowed[];
  /** Stricter ones, or ones that no value could meet, that give way by the order of precedence of the contract. */
  readonly overruled?: readonly OfferedLimit[];
  /** Set when no value can satisfy all: an `at least` above an `at most`. */
  readonly conflict?: OfferedLimit;
}
