/** The pieces of an elevation: what of each is seen is shaded and outlined, what later work covers is dashed. */
import { intersection } from '../../geometry/rect.js';
import type { Piece, Rect, WallFace } from '../../geometry/types.js';
import type { FaceMap } from './elevation-frame.js';
import { GREY, PEN, type Sheet } from './sheet.js';
import { shade } from './strokes.js';
import { element, line, num } from './svg.js';

/** Parts of every piece that nothing covers, merged along rows; in the order of the pieces. */
export function seenParts(face: WallFace, window: Rect): Map<Piece, Rect[]> {
  const { us, vs, columns, rows, cells, stacks } = face.grid;
  const seen = new Map<Piece, Rect[]>();
  for (let j = 0; j < rows; j++) {
    let last: { piece: Piece; rect: Rect } | undefined;
    for (let i = 0; i < columns; i++) {
      const top = (stacks[cells[j * columns + i] as number] as readonly number[]).at(-1);
      const cell = { u0: us[i] as number, v0: vs[j] as number, u1: us[i + 1] as number, v1: vs[j + 1] as number };
      const part = top === undefined ? undefined : intersection(cell, window);
      const piece = top === undefined ? undefined : face.pieces[top];
      if (part === undefined || piece === undefined) {
        last = undefined;
        continue;
      }
      const list = seen.get(piece) ?? [];
      seen.set(piece, list);
      if (last?.piece === piece && last.rect.u1 === part.u0) {
        last = { piece, rect: { ...last.rect, u1: part.u1 } };
        list[list.length - 1] = last.rect;
      } else {
        last = { piece, rect: part };
        list.push(part);
      }
    }
  }
  return joinRows(seen);
}

/** Joins parts that stand on each other with the same width, so that the middle of a part is the middle of an area. */
function joinRows(seen: Map<Piece, Rect[]>): Map<Piece, Rect[]> {
  for (const [piece, list] of seen) {
    const joined: Rect[] = [];
    for (const part of list) {
      const below = joined.findIndex((r) => r.u0 === part.u0 && r.u1 === part.u1 && r.v1 === part.v0);
      if (below < 0) joined.push(part);
      else joined[below] = { ...(joined[below] as Rect), v1: part.v1 };
    }
    seen.set(piece, joined);
  }
  return seen;
}

interface Edge {
  readonly direction: 'vertical' | 'horizontal';
  readonly at: number;
  readonly from: number;
  readonly to: number;
  readonly seen: boolean;
}

/** Edges of a piece on the grid; seen where the piece itself is outermost there. */
function edgesOf(face: WallFace, piece: Piece): Edge[] {
  const { us, vs, columns, rows, cells, stacks, hole } = face.grid;
  // Openings and penetrations have their own outline.
  const isHole = (i: number, j: number): boolean =>
    i >= 0 && j >= 0 && i < columns && j < rows && hole[j * columns + i] === 1;
  const stackOf = (i: number, j: number): readonly number[] =>
    i < 0 || j < 0 || i >= columns || j >= rows ? [] : (stacks[cells[j * columns + i] as number] as readonly number[]);
  const edges: Edge[] = [];
  const walk = (direction: Edge['direction'], cuts: readonly number[], along: readonly number[]): void => {
    for (let k = 0; k < cuts.length; k++) {
      for (let m = 0; m + 1 < along.length; m++) {
        const before = direction === 'vertical' ? stackOf(k - 1, m) : stackOf(m, k - 1);
        const after = direction === 'vertical' ? stackOf(k, m) : stackOf(m, k);
        const [here, there] = [before.includes(piece.index), after.includes(piece.index)];
        if (here === there) continue;
        if (direction === 'vertical' ? isHole(k - 1, m) || isHole(k, m) : isHole(m, k - 1) || isHole(m, k)) continue;
        const seen = (here ? before : after).at(-1) === piece.index;
        const last = edges.at(-1);
        const [at, from, to] = [cuts[k] as number, along[m] as number, along[m + 1] as number];
        if (
          last !== undefined &&
          last.direction === direction &&
          last.at === at &&
          last.to === from &&
          last.seen === seen
        )
          edges[edges.length - 1] = { ...last, to };
        else edges.push({ direction, at, from, to, seen });
      }
    }
  };
  walk('vertical', us, vs);
  walk('horizontal', vs, us);
  return edges;
}

function drawEdge(sheet: Sheet, map: FaceMap, edge: Edge): void {
  const { window } = map;
  const vertical = edge.direction === 'vertical';
  const [across0, across1, along0, along1] = vertical
    ? [window.u0, window.u1, window.v0, window.v1]
    : [window.v0, window.v1, window.u0, window.u1];
  // The end of what is shown is no edge of the piece.
  if (edge.at <= across0 || edge.at >= across1) return;
  const from = Math.max(edge.from, along0);
  const to = Math.min(edge.to, along1);
  if (from >= to) return;
  const [a, b] = vertical
    ? ([
        [map.x(edge.at), map.y(from)],
        [map.x(edge.at), map.y(to)],
      ] as const)
    : ([
        [map.x(from), map.y(edge.at)],
        [map.x(to), map.y(edge.at)],
      ] as const);
  sheet.add(
    edge.seen ? 'edge' : 'light',
    line(a, b, edge.seen ? {} : { 'stroke-dasharray': '1 0.7', stroke: GREY, 'stroke-width': PEN.light }),
  );
}

/** Shades and outlines all pieces. */
export function drawPieces(
  sheet: Sheet,
  face: WallFace,
  map: FaceMap,
  seen: ReadonlyMap<Piece, readonly Rect[]>,
): void {
  for (const piece of face.pieces) {
    if (!piece.sheds || piece.face.length === 0) continue;
    const parts = seen.get(piece) ?? [];
    if (parts.length > 0) {
      const d = parts
        .map(
          (r) =>
            `M${num(map.x(r.u0))} ${num(map.y(r.v0))}H${num(map.x(r.u1))}V${num(map.y(r.v1))}H${num(map.x(r.u0))}Z`,
        )
        .join('');
      const family = piece.apply?.family;
      sheet.add(
        'fill',
        element('path', { d, fill: family === undefined ? '#fff' : shade(sheet, family, piece.work.step % 2 === 1) }),
      );
    }
    for (const edge of edgesOf(face, piece)) drawEdge(sheet, map, edge);
  }
}
