/** The run of water on a wall face: where it starts, what it meets, where it ends. */
import type { JointSegment, Piece } from '../../geometry/types.js';
import type { Opening, Penetration } from '../../model/types.js';

export type SourceKind = 'rain' | 'below penetration' | 'pan' | 'unit corner';

export interface WaterSource {
  readonly kind: SourceKind;
  /** `rain above window`, `water on the pan of window` */
  readonly name: string;
  readonly opening?: Opening;
  readonly penetration?: Penetration;
}

/**
 * Where water can end. `daylight` is right, and so is `goes on`: it is outside the barrier and runs on below what is
 * drawn. Water that is `behind veneer` has come down the cavity to where nothing brings it out.
 */
export type EndKind =
  | 'daylight'
  | 'goes on'
  | 'behind veneer'
  | 'bare substrate'
  | 'sheathing joint'
  | 'opening'
  | 'penetration'
  | 'held in pan'
  | 'interior';

export interface WaterEnd {
  readonly kind: EndKind;
  readonly u: number;
  readonly v: number;
  readonly opening?: Opening;
  readonly penetration?: Penetration;
  readonly joint?: JointSegment;
  /** The documents leave out what decides this end. */
  readonly isUntold?: boolean;
  /** Why it ends there, when that is not plain from the kind. */
  readonly why?: string;
}

/** True where water is outside the barrier to the end of what is drawn, and held nowhere. */
export function endsRight(end: Pick<WaterEnd, 'kind'>): boolean {
  return end.kind === 'daylight' || end.kind === 'goes on';
}

export type StepKind = 'starts' | 'runs down' | 'behind' | 'over edge' | 'drops' | 'comes out' | 'ends';

export interface WaterStep {
  readonly what: StepKind;
  readonly v: number;
  /** The piece concerned; absent for the bare substrate. */
  readonly piece?: Piece;
  /** For `drops`: the piece it lands on. */
  readonly onto?: Piece;
}

/** Water that takes the same way over a width of wall. */
export interface WaterPath {
  readonly source: WaterSource;
  readonly u0: number;
  readonly u1: number;
  readonly steps: readonly WaterStep[];
  readonly end: WaterEnd;
}
