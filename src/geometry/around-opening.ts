/** Which pieces flash which side of an opening, and which of two pieces lies outside. */
import { openingRect } from './pieces.js';
import type { Piece, PieceRole, Rect, WallFace } from './types.js';
import type { Subject } from '../model/measures.js';
import type { Apply, Opening, Place, Side } from '../model/types.js';

/** A piece with the applied work it comes from. */
export type AppliedPiece = Piece & { readonly apply: Apply };

export const FLASHING_ROLE: Record<Side, PieceRole> = {
  head: 'head flashing',
  'left jamb': 'jamb flashing',
  'right jamb': 'jamb flashing',
  sill: 'sill flashing',
};
export const FLASHING_SUBJECT: Record<Side, Subject> = {
  head: 'head flashing',
  'left jamb': 'jamb flashing',
  'right jamb': 'jamb flashing',
  sill: 'sill pan',
};

/** True for pieces of applied work, which every piece but the flange of a unit is. */
export function isApplied(piece: Piece): piece is AppliedPiece {
  return piece.apply !== undefined;
}

/** The part of a piece on the wall face that belongs to a jamb; all of it for sill and head. */
export function faceOnSide(piece: Piece, opening: Opening, side: Side): readonly Rect[] {
  const o = openingRect(opening);
  if (side === 'left jamb') return piece.face.filter((r) => r.u1 <= o.u0 + 0.1);
  if (side === 'right jamb') return piece.face.filter((r) => r.u0 >= o.u1 - 0.1);
  return piece.face;
}

/** Shedding pieces that flash one side of an opening, on the wall face or on its return, in order of work. */
export function flashingAt(face: WallFace, opening: Opening, side: Side): AppliedPiece[] {
  return face.pieces
    .filter(isApplied)
    .filter(
      (p) =>
        p.sheds &&
        p.opening === opening &&
        p.role === FLASHING_ROLE[side] &&
        (faceOnSide(p, opening, side).length > 0 || p.returns[side] !== undefined),
    );
}

/** Field pieces, in order of work. */
export function fieldPieces(face: WallFace): AppliedPiece[] {
  return face.pieces.filter(isApplied).filter((p) => p.role === 'field' && p.face.length > 0);
}

/**
 * True when `a` lies outside `b`: as their overlap on the face shows, else (overlap only on a return) by order of
 * work and by what was slipped under what.
 */
export function isOutside(face: WallFace, a: Piece, b: Piece): boolean {
  const lap = face.lapBetween(a, b);
  if (lap !== undefined) return lap.over === a;
  if (a.under.includes(b.id)) return false;
  return b.under.includes(a.id) || a.index > b.index;
}

/** True for the piece of a work at this place; a work at several places has a piece for each, named by its place. */
export function isAtPlace(piece: AppliedPiece, place: Place): boolean {
  const { places, id } = piece.apply;
  return places.length === 1 ? places[0]?.value === place : piece.id.startsWith(`${id}#${place}`);
}
