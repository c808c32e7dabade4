/** What reading a section gives: proposals to confirm, questions to ask, submittals, and what was passed over. */
import type { Property, Subject } from '../model/measures.js';
import type { Span } from '../reading/types.js';
import type { Compare } from './comparators.js';
import type { Outline } from './outline.js';
import type { Submittal } from './submittal-items.js';
import type { ValueKind } from './units.js';

/** One value in the base unit of its kind, for comparing; `text` is as a document writes it. */
export interface ReadValue {
  readonly text: string;
  readonly kind?: ValueKind;
  readonly base?: number;
  readonly upperBase?: number;
  /** The middle of a size with a tolerance: `3/8 inch, plus or minus 1/8 inch`. */
  readonly nominalBase?: number;
}

export type Confidence = 'high' | 'medium' | 'low';

/** Where something stands and in which paragraph. */
interface Placed {
  /** As people cite it; undefined where the section gives no number. */
  readonly number?: string;
  /** The words meant. */
  readonly span: Span;
  /** The sentence or row they stand in. */
  readonly text: string;
}

export interface Proposal extends Placed {
  readonly property?: Property;
  /** The section's words, where no known property is clearly named. */
  readonly characteristic?: string;
  readonly subject?: Subject;
  /** Undefined for a requirement in words alone (an order of work). */
  readonly compare?: Exclude<Compare, 'unclear'>;
  readonly value?: ReadValue;
  /** The same value in the other system, as printed beside it. */
  readonly also?: ReadValue;
  readonly methods: readonly string[];
  /** Under which the value is measured: `at 75 Pa`. */
  readonly conditions: readonly ReadValue[];
  /** `prior to the test application`. */
  readonly sequence?: string;
  readonly confidence: Confidence;
  readonly reasons: readonly string[];
}

export type QuestionKind =
  | 'no comparator'
  | 'conflicting comparators'
  | 'values disagree'
  | 'choice left open'
  | 'lost sign'
  | 'method and property differ'
  | 'reversed range'
  | 'unknown unit'
  | 'no unit'
  | 'number used twice'
  | 'no paragraph number';

/** Something that cannot be read one way only. It is asked, never decided. */
export interface Question extends Placed {
  readonly kind: QuestionKind;
  /** What was read, in one sentence. */
  readonly read: string;
  /** What to ask the author of the section. */
  readonly ask: string;
  readonly compare?: Compare;
  /** All values that stand there, for a person to choose from. */
  readonly values: readonly ReadValue[];
  readonly label?: string;
}

/** Why a number was passed over. */
export type PassedReason =
  | 'in a definition'
  | 'in a summary'
  | 'asks for nothing'
  | 'no unit'
  | 'a share of something else'
  | 'a condition of something that is not proposed'
  | 'no known unit'
  | 'in a list of submittals';

/** A number in text that asks for nothing or cannot be read: an example, a definition, a share of another size. */
export interface PassedOver extends Placed {
  readonly value: ReadValue;
  readonly reason: PassedReason;
}

export interface SectionReading {
  readonly outline: Outline;
  readonly proposals: readonly Proposal[];
  readonly submittals: readonly Submittal[];
  readonly questions: readonly Question[];
  readonly passedOver: readonly PassedOver[];
  /** Sentences and rows that were read. */
  readonly statements: number;
}
