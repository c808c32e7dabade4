/**
 * What a review yields. The words are those of SARIF 2.1.0: kind, level, location, related location, code
 * flow, suppression.
 *
 * @see SARIF 2.1.0 section 3.27 (result)
 */
import type { Project, Requirement } from '../model/types.js';
import type { Locus, SourceFile, Span } from '../reading/types.js';

export type Kind = 'pass' | 'open' | 'review' | 'fail' | 'notApplicable' | 'informational';
export type Level = 'error' | 'warning' | 'note' | 'none';
export const LEVEL_ORDER = { none: 0, note: 1, warning: 2, error: 3 } as const satisfies Record<Level, number>;

/** What stands behind a limit; decides how strongly a breach of it is reported. */
export type Basis = 'code' | 'specification' | 'product data' | 'standard' | 'guide' | 'practice' | 'physics';

/** How well a source is known. Printed with every limit that rests on it. */
export type Provenance =
  | 'seen' // the cited text, or a public extract of it, was read
  | 'seen at second hand' // read in a copy made by somebody else
  | 'from memory, confirm' // recalled, not re-read
  | 'common practice, no source'
  | 'computed' // follows from physics or arithmetic
  | 'project document'; // stands in a document of the review, at `at`

export interface Source {
  readonly basis: Basis;
  /** `IRC R703.2`, `Section 07 27 26, 3.4.B.2`, `product data of liquid-flashing`, `common practice`. */
  readonly citation: string;
  readonly provenance: Provenance;
  /** Codes whose projects it may be asked of; absent where it holds under all of them. See `jurisdiction.ts`. */
  readonly codes?: readonly NonNullable<Project['code']>['title'][];
  /** Public address of what was read, when there is one. */
  readonly url?: string;
  /** Where the project's own documents say it. */
  readonly at?: Locus;
  /** The requirement of a specification that says it. */
  readonly requirement?: Requirement;
}

export interface RelatedPlace {
  readonly message: string;
  readonly at: Locus;
}

/** One step of a path, for SARIF code flows. */
export interface FlowStep {
  readonly message: string;
  readonly at: Locus;
  readonly essential?: boolean;
}

/** What a rule returns: everything about one checked thing. */
export interface Outcome {
  readonly kind: Kind;
  /** First sentence complete in itself: what is wrong (fail), what was found (pass), which field is missing (open). */
  readonly message: string;
  readonly at: Locus;
  /** `head flashing of window`, so that a table can say what was checked. */
  readonly subject?: string | undefined;
  /** What the governing source asks, with unit. */
  readonly required?: string | undefined;
  /** What the documents give, or what was computed from them, with unit. */
  readonly provided?: string | undefined;
  /** What to change so that it passes: one sentence. */
  readonly correct?: string | undefined;
  /** The source that governs; sources[1..] are the others that apply. */
  readonly sources?: readonly Source[] | undefined;
  /** Of a breach: sources beside the governing one that the provided value does not meet either. */
  readonly alsoBroken?: readonly Source[] | undefined;
  /** Overrides the rule's level, never above what the source allows (see `levelFor`). */
  readonly level?: Level | undefined;
  readonly related?: readonly RelatedPlace[] | undefined;
  readonly flow?: readonly FlowStep[] | undefined;
  /** Fields that would answer an `open` result: `openings.unit.waterTest`, `wall "sheathing": permeance`. */
  readonly missing?: readonly string[] | undefined;
  /** What a computed result rests on and leaves out, a sentence each; whole in files, counted on a terminal. */
  readonly notes?: readonly string[] | undefined;
  /** The correction gives the value to build to, and no other document contradicts it: a reviewer can note it. */
  readonly definite?: boolean | undefined;
}

export interface Suppression {
  /** `deviation DEV-1`. */
  readonly name?: string;
  /** Accepted deviation: id or place of the entry, why, by which role, until when (ISO date). */
  readonly justification: string;
  readonly acceptedBy?: string;
  readonly until?: string;
  readonly at: Locus;
}

/** A deviation that is declared and that nobody who may has accepted. */
export interface Declared {
  /** `deviation DEV-1`. */
  readonly name: string;
  readonly reason: string;
  /** The role that is stated as having accepted it, and which may: `installer, who may not accept it; architect may`. */
  readonly refused?: string;
}

export interface Result extends Outcome {
  readonly ruleId: string;
  /** `none` unless kind is fail; or as settings and source decide. */
  readonly level: Level;
  /** The detail (or other document) under review. */
  readonly documentId: string;
  readonly file: SourceFile;
  readonly span: Span;
  /** Stable over moved lines and renumbered entries: see `fingerprint.ts`. */
  readonly fingerprint: string;
  readonly suppression?: Suppression | undefined;
  /** A deviation that the documents declare for this breach and that waits for a decision. */
  readonly declared?: Declared | undefined;
}

/** A rule that threw, a pack that did not load: never hides the other results. */
export interface Notification {
  readonly level: 'error' | 'warning' | 'note';
  readonly message: string;
  readonly ruleId?: string;
  readonly documentId?: string;
  readonly uri?: string;
}
