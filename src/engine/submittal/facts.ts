/** A submittal as printers need it: what it says of itself, and what became of what it declares. */
import type { Locus } from '../../reading/types.js';

export interface ReviewedSubmittal {
  readonly number: string;
  readonly section: string;
  /** Title of the section, when its specification is in reach. */
  readonly sectionTitle?: string;
  readonly title: string;
  readonly revision: number;
  /** File it stands in, relative to the library root. */
  readonly uri: string;
  /** ISO date it was sent in. */
  readonly date?: string;
  /** ISO date of the review. */
  readonly reviewedOn: string;
  /** Roles. */
  readonly from?: string;
  readonly to?: string;
  readonly previous?: { readonly number: string; readonly revision: number };
  readonly projectTitle?: string;
  /** Ids of its details, in the order of the review. */
  readonly details: readonly string[];
  readonly contains: readonly ContainedItem[];
  readonly declared: readonly DeclaredItem[];
}

export interface ContainedItem {
  readonly item: string;
  readonly title: string;
  readonly answers: readonly string[];
  readonly of: readonly string[];
  readonly date?: string;
  readonly sentWith?: string;
}

/** One difference from the contract documents, declared or found. */
export interface DeclaredItem {
  readonly type: 'deviation' | 'substitution' | 'not declared';
  /** `DEV-1`, when it has one. */
  readonly id?: string;
  /** `3.2.B.1`, `sleeve-boot to liquid-flashing (3.4.A)`. */
  readonly departsFrom: string;
  /** Ids of the details it touches. */
  readonly details: readonly string[];
  readonly reason?: string;
  readonly effect?: string;
  /** `accepted by architect of record until 2027-06-30`. */
  readonly status: string;
  readonly at: Locus;
}
