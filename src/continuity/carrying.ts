/** The pieces that carry a control over the face and into the openings. */
import type { Plane } from './planes.js';
import type { Piece, WallFace } from '../geometry/types.js';

/** Pieces that lie on the face or line an opening: the field of the plane and all flashing; the flange is no piece of it. */
export function carryingPieces(face: Pick<WallFace, 'pieces'>, plane: Plane): Piece[] {
  if (plane.on === 'layers') return [];
  const field = new Set<Piece>(plane.pieces);
  return face.pieces.filter(
    (p) =>
      p.sheds &&
      p.role !== 'unit flange' &&
      (p.role !== 'field' || field.has(p)) &&
      (p.face.length > 0 || Object.values(p.returns).some((r) => r.length > 0)),
  );
}
