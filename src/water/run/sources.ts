/** Where water starts: rain on the face above and beside the openings, below penetrations, on the pans. */
import type { Start } from './search.js';
import type { WaterSource } from './types.js';
import { indexOf } from '../../geometry/cells.js';
import { openingRect, penetrationRect } from '../../geometry/pieces.js';
import type { Piece, Rect, WallFace } from '../../geometry/types.js';
import type { Detail } from '../../model/types.js';

/** Pieces of wall beside an opening whose rain is told together with it, mm. */
const BESIDE_MM = 600;

/** Cells of a row from u0 to u1. */
function columnsOf(face: WallFace, u0: number, u1: number): number[] {
  const { us, columns } = face.grid;
  const from = indexOf(us, Math.max(u0, us[0] as number));
  const to = indexOf(us, Math.min(u1, us.at(-1) as number));
  return Array.from({ length: Math.max(0, Math.min(to, columns) - from) }, (_, k) => from + k);
}

/** Rain that runs down the face: one source for each opening and the wall beside it, one for the rest. */
function rain(detail: Detail, face: WallFace): Start[] {
  const { us, rows, columns } = face.grid;
  const near: { rect: Rect; source: WaterSource }[] = [
    ...detail.openings.map((opening) => ({
      rect: openingRect(opening),
      source: { kind: 'rain' as const, name: `rain above and beside "${opening.id}"`, opening },
    })),
    ...detail.penetrations.map((penetration) => ({
      rect: penetrationRect(penetration),
      source: { kind: 'rain' as const, name: `rain above and beside "${penetration.id}"`, penetration },
    })),
  ];
  const field: WaterSource = { kind: 'rain', name: 'rain on the field' };
  return Array.from({ length: columns }, (_, column) => {
    const u = ((us[column] as number) + (us[column + 1] as number)) / 2;
    const over =
      near.find((n) => n.rect.u0 < u && u < n.rect.u1) ??
      near.find((n) => n.rect.u0 - BESIDE_MM < u && u < n.rect.u1 + BESIDE_MM);
    const row = rows - 1;
    const { cells, stacks } = face.grid;
    const stack = stacks[cells[row * columns + column] as number] as readonly number[];
    return { source: over?.source ?? field, column, row, depth: stack.length - 1 };
  });
}

/** Water that runs along a penetration drips onto the face below it. */
function belowPenetrations(detail: Detail, face: WallFace): Start[] {
  const { vs, columns, cells, stacks } = face.grid;
  return detail.penetrations.flatMap((penetration) => {
    const hole = penetrationRect(penetration);
    const row = indexOf(vs, hole.v0) - 1;
    if (row < 0) return [];
    const source: WaterSource = {
      kind: 'below penetration',
      name: `water that drips from "${penetration.id}"`,
      penetration,
    };
    return columnsOf(face, hole.u0, hole.u1).map((column) => ({
      source,
      column,
      row,
      depth: (stacks[cells[row * columns + column] as number] as readonly number[]).length - 1,
    }));
  });
}

/**
 * The surface that water is on when it comes over the edge of the sill onto the pan's leg: a piece that covers the
 * leg up to the sill with a closed edge lets no water behind it, so the water runs on that piece.
 */
function overClosedEdges(face: WallFace, row: number, column: number, pan: number): number {
  const { cells, columns, stacks, vs } = face.grid;
  const stack = stacks[cells[row * columns + column] as number] as readonly number[];
  const sill = vs[row + 1] as number;
  let depth = pan;
  for (let next = pan + 1; next < stack.length; next++) {
    const piece = face.pieces[stack[next] as number] as Piece;
    // The flange of the unit hangs over the sill, and the water comes from behind it.
    if (piece.role === 'unit flange' || piece.edge === 'open') break;
    if (piece.face.some((r) => r.v0 < sill - 0.1 && r.v1 > sill + 0.1 && columnMeets(face, column, r))) break;
    depth = next;
  }
  return depth;
}

/** True when a rectangle takes in a column of cells. */
function columnMeets(face: WallFace, column: number, r: Rect): boolean {
  const { us } = face.grid;
  return r.u0 < (us[column + 1] as number) - 0.1 && r.u1 > (us[column] as number) + 0.1;
}

/** Water that leaves a pan over its outer leg: on the pan, under the flange of the unit. */
function fromPans(detail: Detail, face: WallFace): Start[] {
  const { vs, columns, cells, stacks } = face.grid;
  return detail.openings.flatMap((opening) => {
    const o = openingRect(opening);
    const row = indexOf(vs, o.v0) - 1;
    if (row < 0) return [];
    const source: WaterSource = { kind: 'pan', name: `water that leaves the pan of "${opening.id}"`, opening };
    return columnsOf(face, o.u0, o.u1).flatMap((column): Start[] => {
      const stack = stacks[cells[row * columns + column] as number] as readonly number[];
      const depth = stack.findLastIndex((k) => {
        const piece = face.pieces[k] as Piece;
        return piece.role === 'sill flashing' && piece.opening === opening;
      });
      // No outer leg: water over the edge of the sill runs on whatever hangs there.
      const start = depth >= 0 ? overClosedEdges(face, row, column, depth) : stack.length - 1;
      return [{ source, column, row, depth: start }];
    });
  });
}

/** Every start of water on the wall face, in a fixed order. */
export function allStarts(detail: Detail, face: WallFace): Start[] {
  return [...rain(detail, face), ...belowPenetrations(detail, face), ...fromPans(detail, face)];
}
