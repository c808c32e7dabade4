/** The returns of each opening cut into cells, as the wall face is: along the side by inward from the face. */
import { cutFace, type CellGrid } from '../geometry/cells.js';
import { bounding } from '../geometry/rect.js';
import type { WallFace } from '../geometry/types.js';
import { SIDES, type Detail, type Opening, type Side } from '../model/types.js';

export interface ReturnGrid {
  readonly opening: Opening;
  readonly side: Side;
  /** First axis along the side, second axis inward, mm. */
  readonly grid: CellGrid;
  /** `at the sill of "window"` */
  readonly where: string;
}

/** One grid for each side of each opening that some piece lines. */
export function returnGrids(detail: Detail, face: WallFace): ReturnGrid[] {
  return detail.openings.flatMap((opening) =>
    SIDES.flatMap((side): ReturnGrid[] => {
      const lying = face.pieces.map((p) => ({ ...p, face: p.opening === opening ? (p.returns[side] ?? []) : [] }));
      const bounds = bounding(lying.filter((p) => p.sheds).flatMap((p) => p.face));
      if (bounds === undefined) return [];
      const grid = cutFace(bounds, lying, [], { us: [], vs: [] });
      return [{ opening, side, grid, where: `at the ${side} of "${opening.id}"` }];
    }),
  );
}
