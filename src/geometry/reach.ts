/** Distances from an opening, a joint or a penetration to the nearest place that is not covered. */
import { indexOf, type CellGrid } from './cells.js';
import { openingRect, penetrationRect } from './pieces.js';
import { intersection, rect } from './rect.js';
import type { CollarReach, Extension, JointCover, JointSegment, Piece, Rect, UncoveredArea } from './types.js';
import { SIDES, type Opening, type Penetration, type Side } from '../model/types.js';

/** For each stack: is a piece of the chosen ones in it? */
function coveringStacks(grid: CellGrid, chosen: ReadonlySet<number>): boolean[] {
  return grid.stacks.map((stack) => stack.some((k) => chosen.has(k)));
}

const chosenOf = (pieces: readonly Piece[], filter: (piece: Piece) => boolean): Piece[] =>
  pieces.filter((p) => p.face.length > 0 && filter(p));

/** Farthest that a reach around an opening is looked for, mm: beyond it nobody asks. */
const LOOK_MM = 1200;

function cellRange(grid: CellGrid, area: Rect): [number, number, number, number] {
  const clampU = (u: number): number => Math.min(Math.max(u, grid.us[0] as number), grid.us.at(-1) as number);
  const clampV = (v: number): number => Math.min(Math.max(v, grid.vs[0] as number), grid.vs.at(-1) as number);
  return [
    Math.max(0, indexOf(grid.us, clampU(area.u0)) - 1),
    Math.min(grid.columns, indexOf(grid.us, clampU(area.u1)) + 1),
    Math.max(0, indexOf(grid.vs, clampV(area.v0)) - 1),
    Math.min(grid.rows, indexOf(grid.vs, clampV(area.v1)) + 1),
  ];
}

/**
 * How far the chosen pieces, taken together, reach past each edge of an opening.
 *
 * The reach is the distance to the nearest bare cell: along the straight edge measured square to it, in the
 * corner squares as the larger of the two distances, so that a reach of 6 in means a whole 6 in square there.
 */
export function measureExtensions(
  grid: CellGrid,
  pieces: readonly Piece[],
  opening: Opening,
  filter: (piece: Piece) => boolean,
): Extension[] {
  const o = openingRect(opening);
  const chosen = chosenOf(pieces, filter);
  const covered = coveringStacks(grid, new Set(chosen.map((p) => p.index)));
  const limit = {
    head: (grid.vs.at(-1) as number) - o.v1,
    sill: o.v0 - (grid.vs[0] as number),
    'left jamb': o.u0 - (grid.us[0] as number),
    'right jamb': (grid.us.at(-1) as number) - o.u1,
  };
  const straight: Record<Side, number> = { ...limit };
  const corner: Record<Side, number> = { ...limit };
  const [i0, i1, j0, j1] = cellRange(grid, {
    u0: o.u0 - LOOK_MM,
    v0: o.v0 - LOOK_MM,
    u1: o.u1 + LOOK_MM,
    v1: o.v1 + LOOK_MM,
  });
  for (let j = j0; j < j1; j++) {
    for (let i = i0; i < i1; i++) {
      const cell = j * grid.columns + i;
      if (grid.hole[cell] === 1 || covered[grid.cells[cell] as number] === true) continue;
      const left = o.u0 - (grid.us[i + 1] as number);
      const right = (grid.us[i] as number) - o.u1;
      const below = o.v0 - (grid.vs[j + 1] as number);
      const above = (grid.vs[j] as number) - o.v1;
      const sideways: Side | undefined = left >= 0 ? 'left jamb' : right >= 0 ? 'right jamb' : undefined;
      const upright: Side | undefined = below >= 0 ? 'sill' : above >= 0 ? 'head' : undefined;
      const du = Math.max(left, right);
      const dv = Math.max(below, above);
      if (sideways !== undefined && upright !== undefined) {
        const distance = Math.max(du, dv);
        corner[sideways] = Math.min(corner[sideways], distance);
        corner[upright] = Math.min(corner[upright], distance);
      } else if (sideways !== undefined) straight[sideways] = Math.min(straight[sideways], du);
      else if (upright !== undefined) straight[upright] = Math.min(straight[upright], dv);
    }
  }
  const zone: Record<Side, Rect> = {
    head: { ...o, v0: o.v1, v1: o.v1 + LOOK_MM },
    sill: { ...o, v0: o.v0 - LOOK_MM, v1: o.v0 },
    'left jamb': { ...o, u0: o.u0 - LOOK_MM, u1: o.u0 },
    'right jamb': { ...o, u0: o.u1, u1: o.u1 + LOOK_MM },
  };
  return SIDES.map((side) => ({
    side,
    straightMm: straight[side],
    cornerMm: corner[side],
    pieces: chosen.filter((p) => p.face.some((r) => intersection(r, zone[side]) !== undefined)),
  }));
}

/** Cover of the chosen pieces on the two sides of every sheathing joint. */
export function measureJointCover(
  grid: CellGrid,
  pieces: readonly Piece[],
  joints: readonly JointSegment[],
  filter: (piece: Piece) => boolean,
): JointCover[] {
  const chosen = chosenOf(pieces, filter);
  const covered = coveringStacks(grid, new Set(chosen.map((p) => p.index)));
  const isCovered = (i: number, j: number): boolean => covered[grid.cells[j * grid.columns + i] as number] as boolean;
  const isHole = (i: number, j: number): boolean => grid.hole[j * grid.columns + i] === 1;
  return joints.map((joint) => {
    const vertical = joint.orientation === 'vertical';
    const cross = vertical ? grid.us : grid.vs;
    const along = vertical ? grid.vs : grid.us;
    const at = indexOf(cross, joint.line);
    const from = indexOf(along, joint.from);
    const to = indexOf(along, joint.to);
    const walk = (step: -1 | 1): number => {
      let least = Infinity;
      for (let k = from; k < to; k++) {
        let c = step === 1 ? at : at - 1;
        const cell = (): [number, number] => (vertical ? [c, k] : [k, c]);
        // The face shown, an opening or a penetration ends the measuring: nothing more can be covered there.
        while (c >= 0 && c < cross.length - 1 && !isHole(...cell()) && isCovered(...cell())) c += step;
        if (c < 0 || c >= cross.length - 1 || isHole(...cell())) continue;
        least = Math.min(least, Math.abs((cross[step === 1 ? c : c + 1] as number) - joint.line));
      }
      return least;
    };
    const strip = vertical
      ? rect(joint.line - 1, joint.from, joint.line + 1, joint.to)
      : rect(joint.from, joint.line - 1, joint.to, joint.line + 1);
    return {
      joint,
      sideMm: [walk(-1), walk(1)] as const,
      pieces: strip === undefined ? [] : chosen.filter((p) => p.face.some((r) => intersection(r, strip) !== undefined)),
    };
  });
}

/** Least reach of the chosen pieces beyond a penetration, all around. */
export function measureCollar(
  grid: CellGrid,
  pieces: readonly Piece[],
  penetration: Penetration,
  filter: (piece: Piece) => boolean,
): CollarReach {
  const hole = penetrationRect(penetration);
  const chosen = chosenOf(pieces, filter).filter((p) => p.penetration === undefined || p.penetration === penetration);
  const covered = coveringStacks(grid, new Set(chosen.map((p) => p.index)));
  let leastMm = LOOK_MM;
  const [i0, i1, j0, j1] = cellRange(grid, {
    u0: hole.u0 - LOOK_MM,
    v0: hole.v0 - LOOK_MM,
    u1: hole.u1 + LOOK_MM,
    v1: hole.v1 + LOOK_MM,
  });
  for (let j = j0; j < j1; j++) {
    for (let i = i0; i < i1; i++) {
      const cell = j * grid.columns + i;
      if (grid.hole[cell] === 1 || covered[grid.cells[cell] as number] === true) continue;
      const du = Math.max(hole.u0 - (grid.us[i + 1] as number), (grid.us[i] as number) - hole.u1);
      const dv = Math.max(hole.v0 - (grid.vs[j + 1] as number), (grid.vs[j] as number) - hole.v1);
      leastMm = Math.min(leastMm, Math.max(du, dv, 0));
    }
  }
  const near = { u0: hole.u0 - 1, v0: hole.v0 - 1, u1: hole.u1 + 1, v1: hole.v1 + 1 };
  return {
    penetration,
    leastMm,
    pieces: chosen.filter((p) => p.face.some((r) => intersection(r, near) !== undefined)),
  };
}

/** Bare parts of the ring of a given width around an opening. */
export function findUncovered(
  grid: CellGrid,
  pieces: readonly Piece[],
  opening: Opening,
  widthMm: number,
): UncoveredArea[] {
  const o = openingRect(opening);
  const ring = { u0: o.u0 - widthMm, v0: o.v0 - widthMm, u1: o.u1 + widthMm, v1: o.v1 + widthMm };
  const covered = coveringStacks(
    grid,
    new Set(pieces.filter((p) => p.sheds && p.role !== 'unit flange').map((p) => p.index)),
  );
  const areas: UncoveredArea[] = [];
  const [i0, i1, j0, j1] = cellRange(grid, ring);
  for (let j = j0; j < j1; j++) {
    for (let i = i0; i < i1; i++) {
      const cell = j * grid.columns + i;
      if (grid.hole[cell] === 1 || covered[grid.cells[cell] as number] === true) continue;
      const part = intersection(ring, {
        u0: grid.us[i] as number,
        v0: grid.vs[j] as number,
        u1: grid.us[i + 1] as number,
        v1: grid.vs[j + 1] as number,
      });
      if (part === undefined) continue;
      const last = areas.at(-1)?.rect;
      // Cells side by side in a row are one bare stretch.
      if (last !== undefined && last.v0 === part.v0 && last.v1 === part.v1 && last.u1 === part.u0) {
        const joined = { ...last, u1: part.u1 };
        areas[areas.length - 1] = { rect: joined, areaMm2: (joined.u1 - joined.u0) * (joined.v1 - joined.v0) };
      } else areas.push({ rect: part, areaMm2: (part.u1 - part.u0) * (part.v1 - part.v0) });
    }
  }
  return areas;
}
