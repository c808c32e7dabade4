/** Gaps along the sides of an opening, between the field on the wall face and the unit. */
import { carryingPieces } from './carrying.js';
import { coversFlange, joinsFlange, unsaidFlange } from './flange.js';
import type { Plane } from './planes.js';
import { isUpright, sideLine, wholeSide } from './side-line.js';
import { leftOver, shared, type Stretch } from './stretches.js';
import { faceOnSide, FLASHING_ROLE } from '../geometry/around-opening.js';
import type { Piece, WallFace } from '../geometry/types.js';
import { showsWholeWall } from '../model/drawn.js';
import { interiorSeals } from '../joints/perimeter-seals.js';
import { coversSide, worksAt } from '../water/at-opening.js';
import { SIDES, type Apply, type Control, type Detail, type Opening, type Place, type Side } from '../model/types.js';

/**
 * Why the line breaks at a side of an opening.
 *
 * - `bare`: nothing that plays the control comes up to the edge of the opening
 * - `lap`: what comes up to the edge does not meet the field
 * - `return`: it meets the field and stops at the edge: it neither turns into the opening nor reaches the unit outside
 * - `seal`: no interior seal closes the gap to the unit
 */
export type SideCause = 'bare' | 'lap' | 'return' | 'seal';

export interface SideGap {
  readonly kind: 'side';
  readonly cause: SideCause;
  readonly opening: Opening;
  readonly side: Side;
  /** From the lower end of a jamb, from the left end of sill and head, seen from outside. */
  readonly stretch: Stretch;
  readonly lengthMm: number;
  /** Flashing of that side, whether it reaches the gap or not. */
  readonly flashing: readonly Piece[];
  /** True when all of that flashing goes on after a unit with a flange, so that none of it can turn in. */
  readonly isAfterUnit: boolean;
  /** Interior seals of the opening. */
  readonly seals: readonly Apply[];
  /** What the documents leave out that would tell whether there is a gap; empty when the drawing is sure of it. */
  readonly missing: readonly string[];
}

/** Whatever a side lacks, told of the stretches where it lacks it. */
function gapsAt(
  opening: Opening,
  side: Side,
  stretches: readonly Stretch[],
  more: Pick<SideGap, 'cause' | 'missing'> & Partial<Pick<SideGap, 'flashing' | 'isAfterUnit' | 'seals'>>,
): SideGap[] {
  const { fromMm: start } = wholeSide(opening, side);
  return stretches.map((s) => ({
    kind: 'side',
    flashing: [],
    isAfterUnit: false,
    seals: [],
    ...more,
    opening,
    side,
    stretch: { fromMm: s.fromMm - start, toMm: s.toMm - start },
    lengthMm: s.toMm - s.fromMm,
  }));
}

/** What is unsaid where nothing comes up to the edge: the flashing itself, or how far it reaches onto the wall. */
function unsaidFlashing(detail: Detail, opening: Opening, side: Side, flashing: readonly Piece[]): string[] {
  if (flashing.length > 0)
    return flashing.some((p) => p.apply?.ontoWallMm === undefined && p.apply?.upstandMm === undefined)
      ? ['work.ontoWall']
      : [];
  // A drawing that flashes one jamb shows the jambs: the other one is missing. Anything else may be left out.
  const otherDrawn = isUpright(side) && worksAt(detail, opening, 'jambs', 'left jamb', 'right jamb').length > 0;
  return otherDrawn ? [] : [`work.place: ${side}`];
}

/** What is unsaid where flashing stops at the edge: its reach into the opening, or the flange it may lie on. */
function unsaidReturn(
  detail: Detail,
  opening: Opening,
  side: Side,
  control: Control,
  flashing: readonly Piece[],
): string[] {
  const works = flashing.flatMap((p) => (p.apply === undefined ? [] : [p.apply]));
  // What goes on after a unit with a flange cannot turn in, so its reach is not asked for.
  const canTurnIn = works.filter((w) => !coversFlange(detail, opening, w));
  const missing: string[] = [];
  if (canTurnIn.some((w) => w.intoOpeningMm === undefined)) missing.push('work.intoOpening');
  if (opening.depthMm === undefined && works.some((w) => w.intoOpeningMm === 'full'))
    missing.push('openings.roughOpening.depth');
  return [...missing, ...unsaidFlange(detail, control, opening, side, works)];
}

/** What is unsaid where the field that should be met lies on a part of the wall that no work covers. */
function unsaidField(detail: Detail, plane: Extract<Plane, { on: 'face' }>, side: Side): string[] {
  const beside: Place = side === 'sill' ? 'field below sill' : 'field above sill';
  const drawn = plane.pieces.some((p) => p.apply?.places.some((x) => x.value === 'field' || x.value === beside));
  return drawn || showsWholeWall(detail) ? [] : [`work.place: ${beside}`];
}

/** Where the line goes on from the edge of the opening, beside where the opening is lined. */
function otherWaysOn(detail: Detail, control: Control, opening: Opening, side: Side): Stretch[] {
  // Water may also be led over a seal on the outside.
  const sealed = control === 'water' && worksAt(detail, opening, 'exterior perimeter').some((w) => coversSide(w, side));
  return sealed ? [wholeSide(opening, side)] : [];
}

/**
 * Gaps of a control between the field on the face and the edge of an opening, side by side.
 *
 * Without a field nothing can be followed: each side is a gap that may be none. A control that is played by layers
 * inside the wall has no line over the face.
 */
export function sideGapsOf(
  detail: Detail,
  face: Pick<WallFace, 'bounds' | 'pieces'>,
  control: Control,
  plane: Plane | undefined,
  opening: Opening,
): SideGap[] {
  if (plane === undefined)
    return SIDES.flatMap((side) =>
      gapsAt(opening, side, [wholeSide(opening, side)], { cause: 'bare', missing: ['work.place: field'] }),
    );
  if (plane.on === 'layers') return [];
  const field = new Set<Piece>(plane.pieces);
  const flanges = face.pieces.filter((p) => p.role === 'unit flange' && p.opening === opening && p.face.length > 0);
  const pieces = [...carryingPieces(face, plane), ...flanges];
  const around = { bounds: face.bounds, openings: detail.openings };
  return SIDES.flatMap((side) => {
    const joins = joinsFlange(detail, control, opening, side);
    const line = sideLine(pieces, (p) => field.has(p), opening, side, { ...around, joinsFlange: joins });
    const flashing = face.pieces.filter(
      (p) =>
        p.sheds &&
        p.opening === opening &&
        p.role === FLASHING_ROLE[side] &&
        (faceOnSide(p, opening, side).length > 0 || p.returns[side] !== undefined),
    );
    const on = [...line.lined, ...line.flanged, ...otherWaysOn(detail, control, opening, side)];
    const missing = unsaidFlashing(detail, opening, side, flashing);
    return [
      ...gapsAt(opening, side, leftOver(line.whole, line.met), { cause: 'bare', flashing, missing }),
      ...gapsAt(opening, side, shared(leftOver(line.whole, line.tied), line.met), {
        cause: 'lap',
        flashing,
        missing: unsaidField(detail, plane, side),
      }),
      ...gapsAt(opening, side, shared(leftOver(line.whole, on), line.tied), {
        cause: 'return',
        flashing,
        isAfterUnit:
          flashing.length > 0 && flashing.every((p) => p.apply !== undefined && coversFlange(detail, opening, p.apply)),
        missing: flashing.length === 0 ? missing : unsaidReturn(detail, opening, side, control, flashing),
      }),
    ];
  });
}

/** Sides along which no interior seal closes the gap between the opening and the unit. */
export function sealGaps(detail: Detail, opening: Opening): SideGap[] {
  const seals = interiorSeals(detail, opening);
  return SIDES.filter((side) => !seals.some((s) => coversSide(s, side))).flatMap((side) =>
    gapsAt(opening, side, [wholeSide(opening, side)], {
      cause: 'seal',
      seals,
      missing: seals.length === 0 ? ['work.place: interior perimeter'] : [],
    }),
  );
}
