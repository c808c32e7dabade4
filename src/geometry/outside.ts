/** What is described beyond the wall that a detail says it shows. */
import { penetrationRect } from './pieces.js';
import { bounding } from './rect.js';
import type { Rect, WallFace } from './types.js';
import type { Detail } from '../model/types.js';
import { formatQuantity } from '../quantity/format.js';
import type { Locus } from '../reading/types.js';

export interface Outside {
  readonly at: Locus;
  /** One sentence: what reaches how far beyond which side, and what to do. */
  readonly message: string;
}

const SIDES = ['left', 'right', 'below', 'above'] as const;

/** How far a rectangle reaches beyond another on the worst side, mm. */
function beyond(inner: Rect, outer: Rect): { side: (typeof SIDES)[number]; mm: number } {
  const reach = {
    left: outer.u0 - inner.u0,
    right: inner.u1 - outer.u1,
    below: outer.v0 - inner.v0,
    above: inner.v1 - outer.v1,
  };
  const side = SIDES.reduce((a, b) => (reach[b] > reach[a] ? b : a));
  return { side, mm: reach[side] };
}

/**
 * Pieces and penetrations that lie outside the wall shown. Only a wall whose size the author declares (`face`) can be
 * too small: otherwise it is made large enough.
 */
export function outsideTheWall(detail: Detail, face: WallFace): Outside[] {
  if (detail.face.assumed) return [];
  const found: Outside[] = [];
  const tell = (what: string, at: Locus, rect: Rect | undefined): void => {
    if (rect === undefined) return;
    const { side, mm } = beyond(rect, face.bounds);
    if (mm < 1) return;
    const by = formatQuantity(mm, 'length', { system: 'US' });
    found.push({
      at,
      message: `${what} reaches ${by} beyond the wall shown (${side}); show more wall with "face: { ${side}: ... }", or correct the size.`,
    });
  };
  for (const p of detail.penetrations) tell(`The penetration "${p.id}"`, p.at, penetrationRect(p));
  for (const piece of face.pieces) {
    if (piece.opening === undefined && piece.penetration === undefined) continue;
    tell(
      `"${piece.work.id}"`,
      piece.apply?.ontoWallMm?.at ?? piece.apply?.extendsMm?.at ?? piece.at,
      bounding(piece.face),
    );
  }
  return found;
}
