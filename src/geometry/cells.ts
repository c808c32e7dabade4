/**
 * The wall face cut into cells by the edges of everything on it, each cell with the stack of pieces that
 * cover it, inboard to outboard.
 *
 * Cells with the same stack share one stack object (interned), so that a face of a million cells holds a few
 * hundred stacks and a question about a pair of pieces is asked once per stack, not once per cell.
 */
import { snap } from './rect.js';
import type { Piece, Rect } from './types.js';

/** Index in `stacks` of the stack that covers no piece. */
export const BARE = 0;

export interface CellGrid {
  /** Cut positions, ascending. Cell (i, j) spans us[i]..us[i+1], vs[j]..vs[j+1]. */
  readonly us: readonly number[];
  readonly vs: readonly number[];
  readonly columns: number;
  readonly rows: number;
  /** Stack of cell (i, j) is stacks[cells[j * columns + i]]. */
  readonly cells: Uint32Array;
  /** Piece indexes, inboard first. */
  readonly stacks: readonly (readonly number[])[];
  /** 1 where the cell lies in a rough opening or a penetration. */
  readonly hole: Uint8Array;
}

function sortedUnique(values: Iterable<number>): number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}

/** Index of a position that is one of the cuts. */
export function indexOf(cuts: readonly number[], position: number): number {
  let low = 0;
  let high = cuts.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((cuts[middle] as number) < position - 1e-6) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Builds the grid.
 *
 * @param bounds the face shown
 * @param pieces in order of work; those that shed no water take no part. A piece goes on top of the stack, or below the lowest piece it is `under`
 * @param holes rough openings and penetrations
 * @param extra further cut positions, for lines that are measured to (sheathing joints)
 */
export function cutFace(
  bounds: Rect,
  pieces: readonly Piece[],
  holes: readonly Rect[],
  extra: { readonly us: readonly number[]; readonly vs: readonly number[] },
): CellGrid {
  const uSet = [bounds.u0, bounds.u1, ...extra.us.map(snap)];
  const vSet = [bounds.v0, bounds.v1, ...extra.vs.map(snap)];
  for (const r of holes) {
    uSet.push(r.u0, r.u1);
    vSet.push(r.v0, r.v1);
  }
  for (const piece of pieces) {
    if (!piece.sheds) continue;
    for (const r of piece.face) {
      uSet.push(r.u0, r.u1);
      vSet.push(r.v0, r.v1);
    }
  }
  const us = sortedUnique(uSet.filter((u) => u >= bounds.u0 && u <= bounds.u1));
  const vs = sortedUnique(vSet.filter((v) => v >= bounds.v0 && v <= bounds.v1));
  const columns = us.length - 1;
  const rows = vs.length - 1;
  const cells = new Uint32Array(columns * rows);
  const hole = new Uint8Array(columns * rows);
  const each = (r: Rect, visit: (cell: number) => void): void => {
    const i0 = indexOf(us, Math.max(r.u0, bounds.u0));
    const i1 = indexOf(us, Math.min(r.u1, bounds.u1));
    const j0 = indexOf(vs, Math.max(r.v0, bounds.v0));
    const j1 = indexOf(vs, Math.min(r.v1, bounds.v1));
    for (let j = j0; j < j1; j++) for (let i = i0; i < i1; i++) visit(j * columns + i);
  };
  for (const r of holes) each(r, (cell) => (hole[cell] = 1));

  const stacks: (readonly number[])[] = [[]];
  const known = new Map<string, number>([['', BARE]]);
  for (const piece of pieces) {
    if (!piece.sheds) continue;
    const lowest = new Set(piece.under);
    // From the stack a cell has to the one it gets: the same for all cells with that stack.
    const next = new Map<number, number>();
    const add = (cell: number): void => {
      const before = cells[cell] as number;
      let after = next.get(before);
      if (after === undefined) {
        const stack = stacks[before] as readonly number[];
        if (stack.includes(piece.index)) after = before;
        else {
          let position = stack.findIndex((k) => lowest.has((pieces[k] as Piece).id));
          if (position < 0) position = stack.length;
          const grown = [...stack.slice(0, position), piece.index, ...stack.slice(position)];
          const key = grown.join(',');
          after = known.get(key);
          if (after === undefined) {
            after = stacks.length;
            stacks.push(grown);
            known.set(key, after);
          }
        }
        next.set(before, after);
      }
      cells[cell] = after;
    };
    for (const r of piece.face) each(r, add);
  }
  return { us, vs, columns, rows, cells, stacks, hole };
}
