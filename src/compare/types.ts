/**
 * The words of a comparison: what one submission says, and how each result stands in the next one.
 *
 * @see SARIF 2.1.0 section 3.27.24 (baselineState)
 */
import type { Basis, Kind, Level, Provenance } from '../engine/result.js';
import type { DocumentKind, ReadDocument } from '../reading/types.js';

/** Lines and columns from 1, columns in UTF-16 code units, end exclusive. */
export interface Position {
  readonly uri: string;
  readonly line: number;
  readonly column: number;
}

/** A value of a document, named by ids instead of list positions: `['work', 'pan', 'ontoWall']`. */
export interface Spot {
  readonly document: ReadDocument;
  readonly steps: readonly string[];
}

export interface CitedSource {
  readonly basis: Basis;
  readonly citation: string;
  readonly provenance: Provenance;
}

/** One result of one submission, whether it was reviewed just now or read from a SARIF file. */
export interface Told {
  /** Position among the results of its submission. */
  readonly number: number;
  readonly detail: string;
  readonly rule: string;
  readonly subject: string;
  readonly kind: Kind;
  readonly level: Level;
  readonly message: string;
  readonly required: string | undefined;
  readonly provided: string | undefined;
  readonly correct: string | undefined;
  readonly missing: readonly string[];
  /** The governing one first. */
  readonly sources: readonly CitedSource[];
  /** Why a deviation is accepted; absent when none is. */
  readonly accepted: string | undefined;
  /** Document id, then ids and keys: `W-3/work/pan/ontoWall`. */
  readonly path: string;
  position(): Position;
  /** The values this result rests on, its own place first; empty when only a SARIF file tells of it. */
  evidence(): readonly Spot[];
}

export interface ToldDetail {
  readonly id: string;
  readonly title: string | undefined;
  readonly uri: string;
}

/** One side of the comparison. */
export interface Submission {
  /** As the person wrote it. */
  readonly name: string;
  readonly results: readonly Told[];
  readonly details: readonly ToldDetail[];
  /** Absent when only a SARIF file tells of the submission. */
  readonly documents?: readonly ReadDocument[];
  /** What a detail can use besides itself. */
  reach(detail: string): readonly ReadDocument[];
  /** Fields of the documents that a rule reads, as `work.ontoWall`; `undefined` when they are not known. */
  reads(rule: string): readonly string[] | undefined;
  /** False for a rule that is switched off, is not there, or failed on this detail: its silence says nothing. */
  isAsked(rule: string, detail: string): boolean;
}

export type BaselineState = 'new' | 'unchanged' | 'updated' | 'absent';

/**
 * What became of a result, in the words of a reviewer:
 *
 * - `newly broken`: passed before, fails now; `new`: nothing said before, fails now
 * - `answered, and fails`: could not be settled before, fails now
 * - `no longer accepted`: was an accepted deviation, and stands as a finding now
 * - `newly open`: cannot be settled from the documents now, and was not an item before
 * - `still open`: was to be corrected or answered, and still is
 * - `corrected`: failed before, passes now; `answered`: could not be settled before, passes now
 * - `accepted`: is an accepted deviation now, and was not before
 * - `no longer checked`: was to be corrected or answered, or was accepted, and the thing is not checked any more
 * - `unchanged`: asked for nothing before and asks for nothing now
 */
export const PROGRESS = [
  'newly broken',
  'new',
  'answered, and fails',
  'no longer accepted',
  'newly open',
  'still open',
  'corrected',
  'answered',
  'accepted',
  'no longer checked',
  'unchanged',
] as const;
export type Progress = (typeof PROGRESS)[number];

export type ChangeKind = 'changed' | 'added' | 'removed' | 'moved' | 'renamed';

/** One side of a change: what stood there, and where. */
export interface Written {
  readonly text: string;
  readonly document: ReadDocument;
  readonly steps: readonly string[];
  readonly position: Position;
}

/** A difference of meaning between two documents, told by the path of a value and never by its line. */
export interface Change {
  readonly kind: ChangeKind;
  readonly document: { readonly kind: DocumentKind; readonly id: string };
  /** Of the new document where there is one. */
  readonly steps: readonly string[];
  readonly before?: Written;
  readonly after?: Written;
}

/** A change beside the result it may explain. */
export interface Explanation {
  readonly change: Change;
  /** `read`: the result rests on this value. `near`: only the same detail, or a document it uses, has changed. */
  readonly how: 'read' | 'near';
}

/** Something that two results of one check say differently. */
export interface Difference {
  readonly what: 'kind' | 'level' | 'provided' | 'required' | 'source' | 'missing' | 'accepted' | 'message';
  readonly before: string | undefined;
  readonly after: string | undefined;
}

export interface Pair {
  readonly before?: Told;
  readonly after?: Told;
  readonly state: BaselineState;
  readonly progress: Progress;
  /** Empty when unchanged, new or absent. */
  readonly differences: readonly Difference[];
  readonly explanations: readonly Explanation[];
}

/** A source of limits whose findings came or went. */
export interface RequirementChange {
  readonly source: CitedSource;
  readonly status: 'no finding now' | 'new finding' | 'fewer findings' | 'more findings';
  /** Findings that rest on it, before and now. */
  readonly before: number;
  readonly after: number;
  readonly details: readonly string[];
}

export interface Comparison {
  readonly before: Submission;
  readonly after: Submission;
  /** Results of the new submission in their order, then the absent ones in theirs. */
  readonly pairs: readonly Pair[];
  /** `undefined` when one side is a SARIF file, which does not hold the documents. */
  readonly changes: readonly Change[] | undefined;
  /** Those that no result rests on. */
  readonly withoutEffect: readonly Change[];
  readonly requirements: readonly RequirementChange[];
  readonly counts: Readonly<Record<Progress, number>>;
  /** What could not be compared, for the person to know. */
  readonly remarks: readonly string[];
}
