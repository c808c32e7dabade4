/** Laps between pieces and edges that face the water, read off the cell grid. */
import { indexOf, type CellGrid } from './cells.js';
import { bounding, intersection } from './rect.js';
import type { Lap, Piece, Rect, ReverseLap } from './types.js';

const stackOf = (grid: CellGrid, cell: number): readonly number[] =>
  grid.stacks[grid.cells[cell] as number] as readonly number[];

/** Pairs (outer, inner) of piece indexes that share a cell, ordered by outer then inner. */
export function overlappingPairs(grid: CellGrid, pieceCount: number): [number, number][] {
  const used = new Uint8Array(grid.stacks.length);
  for (let k = 0; k < grid.cells.length; k++) used[grid.cells[k] as number] = 1;
  const pairs = new Set<number>();
  for (let id = 0; id < used.length; id++) {
    if (used[id] === 0) continue;
    const stack = grid.stacks[id] as readonly number[];
    for (let a = 1; a < stack.length; a++)
      for (let b = 0; b < a; b++) pairs.add((stack[a] as number) * pieceCount + (stack[b] as number));
  }
  return [...pairs].sort((x, y) => x - y).map((k): [number, number] => [Math.floor(k / pieceCount), k % pieceCount]);
}

/** The rectangle outside of which two pieces cannot overlap. */
function sharedArea(a: Piece, b: Piece): Rect | undefined {
  const [around, other] = [bounding(a.face), bounding(b.face)];
  return around === undefined || other === undefined ? undefined : intersection(around, other);
}

/**
 * The overlap of two pieces: its least height measured down the wall and least width measured across, over
 * every unbroken run of it, corners included.
 */
export function measureLap(grid: CellGrid, over: Piece, under: Piece): Lap | undefined {
  const { us, vs, columns, rows } = grid;
  // Which stacks hold the pair, this one outside; looked up once per stack.
  const holds = grid.stacks.map((stack) => {
    const a = stack.indexOf(over.index);
    const b = stack.indexOf(under.index);
    return a > b && b >= 0;
  });
  const both = (i: number, j: number): boolean => holds[grid.cells[j * columns + i] as number] as boolean;
  // Only where both lie at all: on a large face most pairs meet in a small part of it.
  const shared = sharedArea(over, under);
  if (shared === undefined) return undefined;
  const i0 = indexOf(us, Math.max(shared.u0, us[0] as number));
  const j0 = indexOf(vs, Math.max(shared.v0, vs[0] as number));
  const columnsTo = Math.min(columns, indexOf(us, Math.min(shared.u1, us.at(-1) as number)));
  const rowsTo = Math.min(rows, indexOf(vs, Math.min(shared.v1, vs.at(-1) as number)));
  let leastDownMm = Infinity;
  let leastAcrossMm = Infinity;
  let area = 0;
  for (let i = i0; i < columnsTo; i++) {
    for (let j = j0; j < rowsTo; j++) {
      if (!both(i, j)) continue;
      const from = j;
      while (j < rowsTo && both(i, j)) j++;
      const height = (vs[j] as number) - (vs[from] as number);
      leastDownMm = Math.min(leastDownMm, height);
      area += height * ((us[i + 1] as number) - (us[i] as number));
    }
  }
  if (area === 0) return undefined;
  for (let j = j0; j < rowsTo; j++) {
    for (let i = i0; i < columnsTo; i++) {
      if (!both(i, j)) continue;
      const from = i;
      while (i < columnsTo && both(i, j)) i++;
      leastAcrossMm = Math.min(leastAcrossMm, (us[i] as number) - (us[from] as number));
    }
  }
  return { over, under, leastDownMm, leastAcrossMm, area };
}

/**
 * Upward edges that water running down another piece meets.
 *
 * At the top edge of a piece, take what lies just above and just below. When some piece outside it runs on
 * past the edge, that piece sheds the water over it. Otherwise the outermost piece inside it that runs on is
 * the one the water comes down on: it goes behind the edge.
 */
export function findReverseLaps(grid: CellGrid, pieces: readonly Piece[]): ReverseLap[] {
  const { us, vs, columns, rows, cells, stacks, hole } = grid;
  // The answer depends only on the two stacks, so it is worked out once per pair of stacks.
  const memo = new Map<number, readonly (readonly [number, number])[]>();
  const breaches = (below: number, above: number): readonly (readonly [number, number])[] => {
    const key = below * stacks.length + above;
    const known = memo.get(key);
    if (known !== undefined) return known;
    const low = stacks[below] as readonly number[];
    const high = stacks[above] as readonly number[];
    const found: [number, number][] = [];
    low.forEach((edge, depth) => {
      if (high.includes(edge)) return;
      if (low.slice(depth + 1).some((outer) => high.includes(outer))) return;
      const behind = low
        .slice(0, depth)
        .filter((inner) => high.includes(inner))
        .at(-1);
      if (behind !== undefined && (pieces[edge] as Piece).work !== (pieces[behind] as Piece).work)
        found.push([edge, behind]);
    });
    memo.set(key, found);
    return found;
  };
  const open = new Map<
    string,
    { over: number; under: number; v: number; j: number; u0: number; u1: number; i: number }
  >();
  const done: { over: number; under: number; v: number; j: number; u0: number; u1: number }[] = [];
  for (let j = 0; j + 1 < rows; j++) {
    const v = vs[j + 1] as number;
    for (let i = 0; i < columns; i++) {
      const below = j * columns + i;
      const above = below + columns;
      if (cells[below] === cells[above] || hole[above] === 1) continue;
      for (const [over, under] of breaches(cells[below] as number, cells[above] as number)) {
        const key = `${over},${under},${j}`;
        const run = open.get(key);
        if (run !== undefined && run.i === i - 1) {
          run.i = i;
          run.u1 = us[i + 1] as number;
        } else {
          if (run !== undefined) done.push(run);
          open.set(key, { over, under, v, j, i, u0: us[i] as number, u1: us[i + 1] as number });
        }
      }
    }
  }
  done.push(...open.values());
  const order = (a: { over: number; under: number; v: number; u0: number }): readonly number[] => [
    a.over,
    a.under,
    a.v,
    a.u0,
  ];
  done.sort((a, b) => {
    const [x, y] = [order(a), order(b)];
    const k = x.findIndex((value, index) => value !== y[index]);
    return k < 0 ? 0 : (x[k] as number) - (y[k] as number);
  });
  return done.map((run) => {
    const over = pieces[run.over] as Piece;
    const under = pieces[run.under] as Piece;
    let lapMm = Infinity;
    for (let i = 0; i < columns; i++) {
      if ((us[i] as number) < run.u0 || (us[i] as number) >= run.u1) continue;
      let j = run.j;
      while (
        j >= 0 &&
        stackOf(grid, j * columns + i).includes(run.over) &&
        stackOf(grid, j * columns + i).includes(run.under)
      )
        j--;
      lapMm = Math.min(lapMm, run.v - (vs[j + 1] as number));
    }
    return { over, under, v: run.v, u0: run.u0, u1: run.u1, edge: over.edge, lapMm };
  });
}
