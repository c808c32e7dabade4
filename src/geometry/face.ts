/** The wall face of a detail: pieces, cells, laps and reaches, each computed when first asked for. */
import { cutFace, indexOf } from './cells.js';
import { findReverseLaps, measureLap, overlappingPairs } from './laps.js';
import { derivePieces, faceBounds, openingRect, penetrationRect, sheathingJoints } from './pieces.js';
import { findUncovered, measureCollar, measureExtensions, measureJointCover } from './reach.js';
import type { Lap, Piece, ReverseLap, WallFace } from './types.js';
import type { Detail } from '../model/types.js';

/** Computes a value once, on first use. */
function once<T>(compute: () => T): () => T {
  let held: { value: T } | undefined;
  return () => (held ??= { value: compute() }).value;
}

/**
 * Builds the wall face of a detail.
 *
 * @param detail checked and typed; lengths in millimeters
 * @returns a face whose parts are computed on first use and then kept
 */
export function buildFace(detail: Detail): WallFace {
  const bounds = faceBounds(detail);
  const joints = once(() => sheathingJoints(detail, bounds));
  const pieces = once(() => derivePieces(detail, bounds, joints()));
  const grid = once(() => {
    const holes = [...detail.openings.map(openingRect), ...detail.penetrations.map(penetrationRect)];
    const lines = joints();
    return cutFace(bounds, pieces(), holes, {
      us: lines.flatMap((j) => (j.orientation === 'vertical' ? [j.line] : [j.from, j.to])),
      vs: lines.flatMap((j) => (j.orientation === 'horizontal' ? [j.line] : [j.from, j.to])),
    });
  });
  const pairs = once(() => overlappingPairs(grid(), pieces().length));
  const outside = once(() => new Set(pairs().map(([over, under]) => over * pieces().length + under)));
  const known = new Map<number, Lap | undefined>();
  /** The lap of two pieces of which the first lies outside; measured once. */
  const lapOf = (over: Piece, under: Piece): Lap | undefined => {
    const key = over.index * pieces().length + under.index;
    if (!outside().has(key)) return undefined;
    if (!known.has(key)) known.set(key, measureLap(grid(), over, under));
    return known.get(key);
  };
  const laps = once(() =>
    pairs().flatMap(([over, under]) => lapOf(pieces()[over] as Piece, pieces()[under] as Piece) ?? []),
  );
  const byWork = once(() => {
    const groups = new Map<string, Piece[]>();
    for (const piece of pieces()) {
      const group = groups.get(piece.work.id);
      if (group === undefined) groups.set(piece.work.id, [piece]);
      else group.push(piece);
    }
    return groups;
  });
  const reverseLaps = once((): ReverseLap[] => findReverseLaps(grid(), pieces()));
  return {
    bounds,
    get pieces() {
      return pieces();
    },
    get grid() {
      return grid();
    },
    get joints() {
      return joints();
    },
    get laps() {
      return laps();
    },
    get reverseLaps() {
      return reverseLaps();
    },
    piecesOf: (workId) => byWork().get(workId) ?? [],
    lapBetween: (a, b) => lapOf(a, b) ?? lapOf(b, a),
    extensions: (opening, filter) => measureExtensions(grid(), pieces(), opening, filter),
    jointCover: (filter) => measureJointCover(grid(), pieces(), joints(), filter),
    collar: (penetration, filter) => measureCollar(grid(), pieces(), penetration, filter),
    uncovered: (opening, widthMm) => findUncovered(grid(), pieces(), opening, widthMm),
    stackAt: (u, v) => {
      const { us, vs, columns, rows, cells, stacks } = grid();
      const i = Math.min(columns - 1, Math.max(0, indexOf(us, u) - (us.includes(u) ? 0 : 1)));
      const j = Math.min(rows - 1, Math.max(0, indexOf(vs, v) - (vs.includes(v) ? 0 : 1)));
      return (stacks[cells[j * columns + i] as number] as readonly number[]).map((k) => pieces()[k] as Piece);
    },
  };
}
