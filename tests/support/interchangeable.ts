/**
 * Steps that a crew may do in either order, by the nature of the work: swapping them breaks nothing. Written by
 * hand from how the work is done, not from what the rules happen to find.
 */
import type { Edit } from './edits.js';

type Plain = Record<string, unknown>;

export interface Interchangeable {
  readonly why: string;
  applies(edit: Edit, data: Plain): boolean;
}

export const INTERCHANGEABLE: readonly Interchangeable[] = [];
