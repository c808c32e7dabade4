/**
 * The exact search for the run of water over (cell, depth in the stack): always down or inboard, never up.
 *
 * Within a column of cells the way is settled by the stacks alone, so each source is one walk down its column;
 * neighboring columns with the same way are told as one path with its width.
 *
 * @see README, "What is computed": the rules of the search in words
 */
import { transition, type Depth, type Transition } from './transition.js';
import { footEnd, headEnd } from './foot.js';
import { endsRight, type WaterEnd, type WaterPath, type WaterSource, type WaterStep } from './types.js';
import { openingRect, penetrationRect } from '../../geometry/pieces.js';
import type { Piece, Rect, WallFace } from '../../geometry/types.js';
import type { Detail, Opening, Penetration } from '../../model/types.js';

/** What closes the gap between wall and unit at the head, so that water on the face runs over it. */
export type HeadClosure = (opening: Opening) => boolean | undefined;

interface Hole {
  readonly rect: Rect;
  readonly opening?: Opening;
  readonly penetration?: Penetration;
}

interface Start {
  readonly source: WaterSource;
  readonly column: number;
  /** Row of the cell it starts in. */
  readonly row: number;
  readonly depth: Depth;
}

/** More pieces than ever lie over one point; a key of the memory has room for each depth. */
const DEEPEST = 1024;
const NOTHING: Transition['happenings'] = [];

/** Walks one column from a start to the end. */
export class Search {
  readonly face: WallFace;
  readonly holes: readonly Hole[];
  readonly closed: HeadClosure;
  readonly isOpen: (piece: number) => boolean;
  private readonly detail: Detail;
  private readonly memo = new Map<number, Transition>();

  constructor(detail: Detail, face: WallFace, closed: HeadClosure) {
    this.detail = detail;
    this.face = face;
    this.closed = closed;
    this.holes = [
      ...detail.openings.map((opening) => ({ rect: openingRect(opening), opening })),
      ...detail.penetrations.map((penetration) => ({ rect: penetrationRect(penetration), penetration })),
    ];
    this.isOpen = (piece) => (face.pieces[piece] as Piece).edge === 'open';
  }

  private stack(cell: number): readonly number[] {
    const { cells, stacks } = this.face.grid;
    return stacks[cells[cell] as number] as readonly number[];
  }

  private step(above: number, depth: Depth, below: number): Transition {
    const { cells, stacks } = this.face.grid;
    const [from, to] = [cells[above] as number, cells[below] as number];
    if (from === to) return { depth, happenings: NOTHING };
    const key = (from * stacks.length + to) * DEEPEST + depth + 1;
    let found = this.memo.get(key);
    if (found === undefined) {
      found = transition(this.stack(above), depth, this.stack(below), this.isOpen);
      this.memo.set(key, found);
    }
    return found;
  }

  private holeAt(u: number, v: number): Hole | undefined {
    return this.holes.find(({ rect }) => rect.u0 <= u && u <= rect.u1 && rect.v0 <= v && v <= rect.v1);
  }

  /** End of water that comes to the upper edge of a hole. */
  private atHole(hole: Hole, cell: number, depth: Depth, u: number, v: number): WaterEnd | undefined {
    const stack = this.stack(cell);
    const { opening, penetration } = hole;
    if (penetration !== undefined) {
      // At the face it runs around the pipe; behind the collar it follows the pipe inward.
      return depth === stack.length - 1 && depth >= 0 ? undefined : { kind: 'penetration', u, v, penetration };
    }
    if (opening === undefined) return undefined;
    const flange = stack.findIndex((k) => (this.face.pieces[k] as Piece).role === 'unit flange');
    if (flange >= 0)
      return depth >= flange
        ? { ...headEnd(this.detail, opening, 'over the face of the unit'), u, v, opening }
        : { kind: 'opening', u, v, opening, why: 'behind the flange at the head' };
    if (depth < 0 || depth < stack.length - 1)
      return { kind: 'opening', u, v, opening, why: 'behind the flashing at the head' };
    const closed = this.closed(opening);
    if (closed === true) return { ...headEnd(this.detail, opening, 'over the seal at the head'), u, v, opening };
    const end: WaterEnd = { kind: 'opening', u, v, opening, why: 'through the open joint at the head' };
    return closed === undefined ? { ...end, isUntold: true } : end;
  }

  /** The joint that bare substrate lets water into at this cell: one along its sides or across its lower edge. */
  private jointAt(column: number, row: number): WaterEnd['joint'] {
    const { us, vs } = this.face.grid;
    const [u0, u1, v0, v1] = [us[column] as number, us[column + 1] as number, vs[row] as number, vs[row + 1] as number];
    return this.face.joints.find((j) =>
      j.orientation === 'vertical'
        ? (j.line === u0 || j.line === u1) && j.from < v1 && j.to > v0
        : (j.line === v0 || j.line === v1) && j.from < u1 && j.to > u0,
    );
  }

  /** The way of water from one start. */
  walk(start: Start): { steps: WaterStep[]; end: WaterEnd } {
    const { us, vs, columns, hole } = this.face.grid;
    const { pieces } = this.face;
    const u = ((us[start.column] as number) + (us[start.column + 1] as number)) / 2;
    const piece = (index: number | undefined): Piece | undefined => (index === undefined ? undefined : pieces[index]);
    const on = (cell: number, depth: Depth): Piece | undefined =>
      depth < 0 ? undefined : piece(this.stack(cell)[depth]);
    let { row, depth } = start;
    let cell = row * columns + start.column;
    const first = on(cell, depth);
    const steps: WaterStep[] = [
      { what: 'starts', v: vs[row + 1] as number, ...(first === undefined ? {} : { piece: first }) },
    ];
    let bare: WaterEnd | undefined;
    const note = (what: WaterStep['what'], v: number, p: Piece | undefined, onto?: Piece): void => {
      steps.push({ what, v, ...(p === undefined ? {} : { piece: p }), ...(onto === undefined ? {} : { onto }) });
    };
    for (;;) {
      if (depth < 0) {
        const joint = this.jointAt(start.column, row);
        bare ??= { kind: 'bare substrate', u, v: vs[row + 1] as number };
        // Bare substrate is wrong in itself; a joint or an opening that it leads to is worse and is told instead.
        if (joint !== undefined) return { steps, end: { kind: 'sheathing joint', u, v: vs[row + 1] as number, joint } };
      }
      if (row === 0) break;
      let next = cell - columns;
      let nextRow = row - 1;
      const v = vs[row] as number;
      if (hole[next] === 1) {
        const found = this.holeAt(u, v - 0.001);
        const end = found === undefined ? undefined : this.atHole(found, cell, depth, u, v);
        if (end !== undefined)
          return { steps, end: bare !== undefined && (endsRight(end) || end.kind === 'behind veneer') ? bare : end };
        // Around a penetration: it comes together again below.
        while (nextRow >= 0 && hole[next] === 1) {
          next -= columns;
          nextRow -= 1;
        }
        if (nextRow < 0) break;
        depth = this.stack(next).length - 1;
      } else {
        const moved = this.step(cell, depth, next);
        for (const h of moved.happenings) {
          if (h.what === 'drops') note('drops', v, piece(h.from), piece(h.to));
          else note(h.what, v, piece(h.piece));
        }
        depth = moved.depth;
      }
      cell = next;
      row = nextRow;
    }
    return { steps, end: bare ?? { ...footEnd(this.detail), u, v: vs[0] as number } };
  }
}

const sameWay = (a: WaterPath, b: { source: WaterSource; steps: readonly WaterStep[]; end: WaterEnd }): boolean =>
  a.source === b.source &&
  a.end.kind === b.end.kind &&
  a.end.opening === b.end.opening &&
  a.end.joint === b.end.joint &&
  a.steps.length === b.steps.length &&
  a.steps.every((s, i) => s.what === b.steps[i]?.what && s.piece === b.steps[i].piece && s.onto === b.steps[i].onto);

/** Walks every start; neighboring columns with the same source and way become one path. */
export function findPaths(search: Search, starts: readonly Start[]): WaterPath[] {
  const { us } = search.face.grid;
  const paths: WaterPath[] = [];
  for (const start of starts) {
    const { steps, end } = search.walk(start);
    const last = paths.at(-1);
    const u0 = us[start.column] as number;
    const u1 = us[start.column + 1] as number;
    if (last !== undefined && last.u1 === u0 && sameWay(last, { source: start.source, steps, end }))
      paths[paths.length - 1] = { ...last, u1 };
    else paths.push({ source: start.source, u0, u1, steps, end });
  }
  return paths;
}

export type { Start };
