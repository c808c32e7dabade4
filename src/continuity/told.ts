/** Which gaps other checks tell already, so that one gap is one finding. */
import type { SideGap } from './side-gaps.js';
import { fieldPieces, flashingAt } from '../geometry/around-opening.js';
import { seenFrom } from '../geometry/overlap.js';
import { openingRect } from '../geometry/pieces.js';
import type { WallFace } from '../geometry/types.js';
import { SIDES, type Detail } from '../model/types.js';
import { panOf } from '../water/at-opening.js';

/** True where the wall beside the gap is bare, which the check of bare wall around an opening tells with its size. */
function isBareWall(face: WallFace, gap: SideGap): boolean {
  const { opening, side, stretch } = gap;
  if (!fieldPieces(face).some((p) => p.apply.places.some((x) => x.value !== 'field below sill'))) return false;
  const o = openingRect(opening);
  const reachMm = Math.max(
    0,
    ...SIDES.flatMap((s) => flashingAt(face, opening, s))
      .flatMap((p) => p.face)
      .map((r) => Math.max(o.u0 - r.u0, r.u1 - o.u1, o.v0 - r.v0, r.v1 - o.v1)),
  );
  const start = side === 'head' || side === 'sill' ? o.u0 : o.v0;
  return (
    reachMm > 0 &&
    face.uncovered(opening, reachMm).some((a) => {
      const seen = seenFrom(o, side, a.rect);
      return (
        a.areaMm2 > 1 && seen.d1 > 0 && seen.t0 < start + stretch.toMm - 0.1 && seen.t1 > start + stretch.fromMm + 0.1
      );
    })
  );
}

/**
 * True for gaps that another check finds: bare wall around the opening, a sill without a pan or with a pan that stays
 * on the face, and sides the interior seal leaves out.
 */
export function isToldElsewhere(detail: Detail, face: WallFace, gap: SideGap): boolean {
  switch (gap.cause) {
    case 'seal':
      return true;
    case 'return':
      if (gap.side !== 'sill') return false;
      return panOf(detail, gap.opening) === undefined || gap.missing.length === 0;
    case 'bare':
    case 'lap':
      if (gap.side === 'sill' && panOf(detail, gap.opening) === undefined) return true;
      return isBareWall(face, gap);
  }
}
