/**
 * A cut through the wall at one edge of an opening or at the foot of the wall.
 *
 * Two coordinates, both in millimeters. `along` runs on the wall face away from the edge that is cut: 0 is the edge of
 * the rough opening (or the foot of the wall), positive onto the wall, negative into the opening (or below the foot).
 * `depth` runs through the wall: 0 is the face the barrier lies on, positive outward.
 */
import type { Piece } from '../types.js';
import type { Apply, Layer, Opening, SetIn, Side } from '../../model/types.js';

export type SectionPlace = 'head' | 'sill' | 'jamb' | 'base';

/** A layer of the wall as it is cut. */
export interface Band {
  readonly layer: Layer;
  /** Depth of its inboard and outboard face. Equal for films, sheets and coats, whose thickness does not count. */
  readonly innerMm: number;
  readonly outerMm: number;
  /** True when the documents give no thickness and a usual one is drawn. */
  readonly assumed: boolean;
}

/** A stretch of a piece at one place in the order of the stack. */
export interface Run {
  readonly on: 'face' | 'return';
  /** On the face: along. On a return: inward from the face, 0 at the face. `fromMm` < `toMm`. */
  readonly fromMm: number;
  readonly toMm: number;
  /** Place in the stack there, 0 innermost. */
  readonly level: number;
  /** Depth of the layer it lies on: 0 unless its own layer stands outside of others, as over exterior insulation. */
  readonly baseMm: number;
}

/** A membrane, flashing or flange as it is cut: thin, in its true order, with its bends. */
export interface Strip {
  readonly piece: Piece;
  readonly runs: readonly Run[];
  /** Fall of its return to the exterior, rise over run; negative runs inward. */
  readonly slope: number;
  /** Upturned inboard edge of a pan. */
  readonly backDamMm?: number;
  /** Upturned end that is seen beyond the cut. */
  readonly endDamMm?: number;
  /** Leg that runs out at `along` 0: how far it stands clear of the outermost surface there. */
  readonly projectsMm?: number;
  /** Leaves the wall above the lintel of a veneer and runs out over it. */
  readonly overLintel?: true;
}

/** The lower end of a masonry veneer, over an opening or at the base. */
export interface VeneerFoot {
  readonly band: Band;
  readonly weeps?: NonNullable<Apply['weeps']>;
  /** A steel angle carries it; its size is not described. */
  readonly hasAngle: boolean;
}

/** The frame of the unit. */
export interface UnitCut {
  readonly opening: Opening;
  readonly set?: SetIn;
  readonly outerMm: number;
  readonly innerMm: number;
  /** Gap between rough opening and frame on this side. */
  readonly gapMm: number;
  readonly flangeMm?: number;
  /** What the documents leave out and the drawing supposes. */
  readonly assumed: { readonly frameDepth: boolean; readonly position: boolean; readonly gap: boolean };
}

export type SealPlace =
  'inner edge of frame' | 'at back dam' | 'inboard of back dam' | 'under unit' | 'outer edge of frame';

/** A perimeter seal as it is cut on this side. */
export interface SealCut {
  readonly work: Apply;
  readonly place: SealPlace;
  /** Joint it closes, and its own depth. */
  readonly widthMm: number;
  readonly depthMm: number;
  readonly rodMm?: number;
  /** True when the joint is not described and a usual one is drawn. */
  readonly assumed: boolean;
}

/** What stands below the foot of the wall. */
export interface Foundation {
  /** Finished grade, below the foot: negative along. */
  readonly gradeMm?: number;
  /** Where barrier and cladding end above grade. */
  readonly claddingFootMm: number;
}

export interface Section {
  readonly place: SectionPlace;
  readonly opening?: Opening;
  /** The side of the opening that is cut. */
  readonly side?: Side;
  /** Position of the cut on the face: u for vertical sections, v for a plan. */
  readonly cutAtMm: number;
  /** Reach of the section along the wall. */
  readonly fromMm: number;
  readonly toMm: number;
  readonly bands: readonly Band[];
  /** In order of work. */
  readonly strips: readonly Strip[];
  readonly unit?: UnitCut;
  readonly interiorSeal?: SealCut;
  readonly exteriorSeal?: SealCut;
  readonly foundation?: Foundation;
  readonly veneerFoot?: VeneerFoot;
}

/** Two pieces that lie on each other along the cut. */
export interface DepthLap {
  readonly outer: Piece;
  readonly inner: Piece;
  readonly on: 'face' | 'return';
  /** Length of the overlap along the cut. */
  readonly lapMm: number;
}

/** Where the interior seal meets the back dam of the pan. */
export interface SealAtDam {
  readonly pan: Piece;
  readonly seal?: Apply;
  readonly damMm: number;
  /** Depth of the dam, inward from the face. */
  readonly damAtMm: number;
  /** Inboard face of the frame, inward from the face, when the documents tell it. */
  readonly frameAtMm?: number;
  /** What the seal has to bridge between frame and dam. */
  readonly bridgeMm?: number;
  readonly lands?: 'at' | 'inboard' | 'outboard';
  readonly basis: 'declared' | 'computed' | 'not known';
}
