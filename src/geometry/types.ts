/**
 * The wall face as geometry, seen from outside: origin at the lower left corner of the first rough opening,
 * u to the right, v up, millimeters. Each opening adds four returns, running inward (w, from the face).
 */
import type { CellGrid } from './cells.js';
import type { Apply, Layer, Opening, Penetration, Product, Side, EdgeBond, Work } from '../model/types.js';
import type { Locus } from '../reading/types.js';

/** Half-open in meaning: covers [u0, u1] x [v0, v1]; u0 < u1, v0 < v1. */
export interface Rect {
  readonly u0: number;
  readonly v0: number;
  readonly u1: number;
  readonly v1: number;
}

/** What a piece is to the wall, by its place; decides which checks look at it. */
export type PieceRole =
  | 'sill flashing'
  | 'jamb flashing'
  | 'head flashing'
  | 'opening corners'
  | 'joint treatment'
  | 'field'
  | 'counterflashing'
  | 'penetration collar'
  | 'base flashing'
  | 'unit flange'
  | 'exterior seal'
  | 'other';

/** One continuous piece of material on the wall face and the returns. */
export interface Piece {
  /** Work id, with `#n` for the courses of a sheet. */
  readonly id: string;
  readonly index: number;
  readonly work: Work;
  readonly apply?: Apply;
  readonly role: PieceRole;
  readonly at: Locus;
  readonly opening?: Opening;
  readonly penetration?: Penetration;
  readonly product?: Product;
  readonly layer?: Layer;
  readonly edge: EdgeBond;
  readonly face: readonly Rect[];
  /** On the returns of its opening: along x inward. Sill and head: u by w; jambs: v by w. */
  readonly returns: Partial<Record<Side, readonly Rect[]>>;
  /** Pieces it was slipped under (a flap or sheet lifted), by id. */
  readonly under: readonly string[];
  /** True for layers that shed water (membranes, flashings), false for rods, primers and the like. */
  readonly sheds: boolean;
}

/** An upward edge of `over` that lies over `under` and is met by water running down `under`. */
export interface ReverseLap {
  readonly over: Piece;
  readonly under: Piece;
  readonly v: number;
  readonly u0: number;
  readonly u1: number;
  /** How the edge of `over` is closed there. */
  readonly edge: EdgeBond;
  /** Least overlap below the edge, mm. */
  readonly lapMm: number;
}

/** Two pieces that overlap, with the outer one first. */
export interface Lap {
  readonly over: Piece;
  readonly under: Piece;
  /** Least height of the overlap measured down the wall, anywhere along it, mm. */
  readonly leastDownMm: number;
  /** Least width of the overlap measured across, mm. */
  readonly leastAcrossMm: number;
  readonly area: number;
}

export interface Extension {
  readonly side: Side;
  /** Least reach along the straight edge, mm. 0 when some of the edge is bare. */
  readonly straightMm: number;
  /** Least reach measured into the corner squares at both ends of the side, mm. */
  readonly cornerMm: number;
  /** Pieces that form it on that side. */
  readonly pieces: readonly Piece[];
}

export interface JointSegment {
  readonly layer: Layer;
  readonly orientation: 'vertical' | 'horizontal';
  /** Line at u (vertical) or v (horizontal), from `from` to `to` along it. */
  readonly line: number;
  readonly from: number;
  readonly to: number;
}

export interface JointCover {
  readonly joint: JointSegment;
  /** Least cover on the two sides, mm; 0 where nothing treats the joint. */
  readonly sideMm: readonly [number, number];
  readonly pieces: readonly Piece[];
}

export interface CollarReach {
  readonly penetration: Penetration;
  /** Least reach beyond the penetration all around, mm; 0 when bare on some side. */
  readonly leastMm: number;
  readonly pieces: readonly Piece[];
}

export interface UncoveredArea {
  readonly rect: Rect;
  readonly areaMm2: number;
}

export interface WallFace {
  readonly bounds: Rect;
  readonly pieces: readonly Piece[];
  /** The cells that the edges of all pieces, openings and joints cut the face into. */
  readonly grid: CellGrid;
  /** Pieces of a work item, in order. */
  piecesOf(workId: string): readonly Piece[];
  /** All pairs that overlap on the face (outer piece first), in a fixed order. */
  readonly laps: readonly Lap[];
  lapBetween(a: Piece, b: Piece): Lap | undefined;
  readonly reverseLaps: readonly ReverseLap[];
  /** Reach of the pieces that pass `filter` beyond the edge of an opening, per side. */
  extensions(opening: Opening, filter: (piece: Piece) => boolean): readonly Extension[];
  readonly joints: readonly JointSegment[];
  jointCover(filter: (piece: Piece) => boolean): readonly JointCover[];
  collar(penetration: Penetration, filter: (piece: Piece) => boolean): CollarReach;
  /** Parts of the ring of `widthMm` around an opening that no shedding piece covers. */
  uncovered(opening: Opening, widthMm: number): readonly UncoveredArea[];
  /** Outermost-last stack of pieces at a point. */
  stackAt(u: number, v: number): readonly Piece[];
}
