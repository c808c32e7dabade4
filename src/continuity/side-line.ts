/**
 * The line of a control along one side of an opening: at each place of the side, is there a way over touching
 * pieces from the field on the wall face to the edge of the opening, and on into it or onto the flange of the unit?
 *
 * Plain arithmetic on rectangles, so that it can be asked of any set of pieces. Lengths in millimeters.
 */
import { seenFrom } from '../geometry/overlap.js';
import { joined, TINY_MM, type Stretch } from './stretches.js';
import { openingRect } from '../geometry/pieces.js';
import type { Piece, Rect } from '../geometry/types.js';
import { isFluid } from '../model/families.js';
import type { Opening, Side } from '../model/types.js';

/** A part of a piece as it is met at one place of the side: on the face outward, or on the return inward. */
interface Run {
  readonly piece: Piece;
  readonly on: 'face' | 'return';
  readonly t0: number;
  readonly t1: number;
  /** Nearest and farthest distance from the edge of the opening. */
  readonly d0: number;
  readonly d1: number;
}

export interface SideLine {
  /** The side itself: along u for sill and head, along v for jambs. */
  readonly whole: Stretch;
  /** Where some piece comes up to the edge of the opening. */
  readonly met: readonly Stretch[];
  /** Where the pieces at the edge are connected to the field. */
  readonly tied: readonly Stretch[];
  /** Where that connection turns into the opening. */
  readonly lined: readonly Stretch[];
  /** Where it lies over or under the flange of the unit and is joined to it. */
  readonly flanged: readonly Stretch[];
}

export interface Surroundings {
  readonly bounds: Rect;
  /** All openings of the detail: a line may end in the next opening instead of the field. */
  readonly openings: readonly Opening[];
  /** Tells whether a piece that overlaps the flange of the unit is joined to it; every one is when left out. */
  readonly joinsFlange?: (flange: Piece, piece: Piece) => boolean;
}

/** True for jambs, whose length runs up the wall. */
export function isUpright(side: Side): side is 'left jamb' | 'right jamb' {
  return side === 'left jamb' || side === 'right jamb';
}

/** The straight length of a side, along u for sill and head, along v for jambs. */
export function wholeSide(opening: Opening, side: Side): Stretch {
  const o = openingRect(opening);
  return isUpright(side) ? { fromMm: o.v0, toMm: o.v1 } : { fromMm: o.u0, toMm: o.u1 };
}

const isFlange = (run: Run): boolean => run.piece.role === 'unit flange';

/** Coats that are liquid when they go on join where they touch; everything else has to overlap. */
export function joinsByTouch(a: Piece, b: Piece): boolean {
  if (a === b) return true;
  return a.apply !== undefined && b.apply !== undefined && isFluid(a.apply.family) && isFluid(b.apply.family);
}

type JoinsFlange = NonNullable<Surroundings['joinsFlange']>;

function connected(a: Run, b: Run, joinsFlange: JoinsFlange): boolean {
  if (isFlange(a) && !isFlange(b) && !joinsFlange(a.piece, b.piece)) return false;
  if (isFlange(b) && !isFlange(a) && !joinsFlange(b.piece, a.piece)) return false;
  if (a.on !== b.on) return a.piece === b.piece && a.d0 <= TINY_MM && b.d0 <= TINY_MM;
  const shared = Math.min(a.d1, b.d1) - Math.max(a.d0, b.d0);
  return shared > TINY_MM || (shared >= -TINY_MM && joinsByTouch(a.piece, b.piece));
}

/** Runs that can be reached from the starting ones, step by step over connected runs. */
function reachedFrom(starts: readonly Run[], runs: readonly Run[], joinsFlange: JoinsFlange): Set<Run> {
  const reached = new Set(starts);
  for (const run of reached)
    for (const next of runs) if (!reached.has(next) && connected(run, next, joinsFlange)) reached.add(next);
  return reached;
}

function runsOf(pieces: readonly Piece[], opening: Opening, side: Side): Run[] {
  const o = openingRect(opening);
  return pieces.flatMap((piece) => [
    ...piece.face
      .map((r): Run => ({ piece, on: 'face', ...seenFrom(o, side, r) }))
      .filter((r) => r.d1 > TINY_MM)
      .map((r) => ({ ...r, d0: Math.max(0, r.d0) })),
    ...(piece.opening === opening ? (piece.returns[side] ?? []) : []).map((r): Run => ({
      piece,
      on: 'return',
      t0: r.u0,
      t1: r.u1,
      d0: r.v0,
      d1: r.v1,
    })),
  ]);
}

/**
 * Follows the line of a control along one side of an opening.
 *
 * @param pieces those that play the control, with the flange of the unit where it counts
 * @param isField true for the pieces the line starts from
 * @returns stretches in the coordinate that runs along the side
 */
export function sideLine(
  pieces: readonly Piece[],
  isField: (piece: Piece) => boolean,
  opening: Opening,
  side: Side,
  { bounds, openings, joinsFlange = () => true }: Surroundings,
): SideLine {
  const o = openingRect(opening);
  const whole = wholeSide(opening, side);
  const runs = runsOf(pieces, opening, side).filter((r) => r.t0 < whole.toMm && r.t1 > whole.fromMm);
  const others = openings
    .filter((x) => x !== opening)
    .map((x) => seenFrom(o, side, openingRect(x)))
    .filter((x) => x.d0 >= -TINY_MM);
  const cuts = [...new Set([whole.fromMm, whole.toMm, ...[...runs, ...others].flatMap((r) => [r.t0, r.t1])])]
    .filter((t) => t >= whole.fromMm && t <= whole.toMm)
    .sort((a, b) => a - b);
  const found = { met: [] as Stretch[], tied: [] as Stretch[], lined: [] as Stretch[], flanged: [] as Stretch[] };
  cuts.slice(1).forEach((toMm, k) => {
    const fromMm = cuts[k] as number;
    if (toMm - fromMm <= TINY_MM) return;
    const t = (fromMm + toMm) / 2;
    const here = runs.filter((r) => r.t0 < t && r.t1 > t);
    // Beyond the face shown, or at the next opening, nothing more can be asked of this side.
    const end = Math.min(seenFrom(o, side, bounds).d1, ...others.filter((x) => x.t0 < t && x.t1 > t).map((x) => x.d0));
    const starts = here.filter((r) => r.on === 'face' && (isField(r.piece) || r.d1 >= end - TINY_MM));
    const reached = [...reachedFrom(starts, here, joinsFlange)];
    const atEdge = (r: Run): boolean => r.d0 <= TINY_MM && !isFlange(r);
    if (here.some(atEdge)) found.met.push({ fromMm, toMm });
    if (reached.some(atEdge)) found.tied.push({ fromMm, toMm });
    if (reached.some((r) => atEdge(r) && r.on === 'return')) found.lined.push({ fromMm, toMm });
    if (reached.some(isFlange)) found.flanged.push({ fromMm, toMm });
  });
  return {
    whole,
    met: joined(found.met),
    tied: joined(found.tied),
    lined: joined(found.lined),
    flanged: joined(found.flanged),
  };
}
