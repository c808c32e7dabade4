/**
 * Where two products touch, read off the geometry: one piece directly on another, two pieces edge to edge, a seal on
 * what lines the opening, a seal on its rod, a layer on the next. Lengths in millimeters.
 */
import { carrierOf } from './carrier.js';
import { returnGrids, type ReturnGrid } from './return-grids.js';
import { pieceName } from '../geometry/piece-name.js';
import { rodOf } from '../joints/sealant-joints.js';
import { coversSide } from '../water/at-opening.js';
import type { CellGrid } from '../geometry/cells.js';
import type { Piece, WallFace } from '../geometry/types.js';
import type { Apply, Detail, Layer, Product } from '../model/types.js';
import type { Locus } from '../reading/types.js';

/** A piece, a layer or a seal that is of a product. */
export interface Body {
  readonly product: Product;
  /** In a sentence: `"pan"`, `the layer "insulation"`. */
  readonly name: string;
  /** Where the product is named. */
  readonly at: Locus;
}
export interface Contact {
  /** The one that is put on the other; where both lie side by side, the later one. */
  readonly outer: Body;
  readonly inner: Body;
  readonly how: 'lies on' | 'meets the edge of' | 'seals against' | 'is backed by';
  /** `on the wall face`, `at the sill of "window"`, `through the wall`. */
  readonly where: string;
  /** Absent where the documents show no extent. */
  readonly areaMm2?: number;
  readonly lengthMm?: number;
}

const bodyOfPiece = (piece: Piece): Body | undefined => {
  const product = piece.product ?? piece.layer?.product;
  const at = piece.apply?.productId?.at ?? piece.layer?.productId?.at ?? piece.at;
  return product === undefined ? undefined : { product, name: pieceName(piece), at };
};
const bodyOfLayer = (layer: Layer | undefined): Body | undefined =>
  layer?.product === undefined
    ? undefined
    : { product: layer.product, name: `the layer "${layer.id}"`, at: layer.productId?.at ?? layer.at };
const bodyOfWork = (work: Apply): Body | undefined =>
  work.product === undefined
    ? undefined
    : { product: work.product, name: `"${work.id}"`, at: work.productId?.at ?? work.at };

/** Contacts found so far; the same two bodies at the same place are one contact. */
class Found {
  readonly #all = new Map<string, Contact>();

  add(outer: Body | undefined, inner: Body | undefined, contact: Omit<Contact, 'outer' | 'inner'>): void {
    if (outer === undefined || inner === undefined || outer.product === inner.product) return;
    const key = [outer.name, inner.name, contact.how, contact.where].join('\n');
    const before = this.#all.get(key);
    const sum = (a: number | undefined, b: number | undefined): number | undefined =>
      a === undefined && b === undefined ? undefined : (a ?? 0) + (b ?? 0);
    const areaMm2 = sum(before?.areaMm2, contact.areaMm2);
    const lengthMm = sum(before?.lengthMm, contact.lengthMm);
    this.#all.set(key, {
      outer,
      inner,
      how: contact.how,
      where: contact.where,
      ...(areaMm2 === undefined ? {} : { areaMm2 }),
      ...(lengthMm === undefined ? {} : { lengthMm }),
    });
  }

  all(): Contact[] {
    return [...this.#all.values()];
  }
}

const sizeOf = (cuts: readonly number[], k: number): number => (cuts[k + 1] as number) - (cuts[k] as number);

/** Area of the face under each stack, openings and penetrations left out. */
function areaOfStacks(grid: CellGrid): Float64Array {
  const areas = new Float64Array(grid.stacks.length);
  for (let j = 0; j < grid.rows; j++) {
    const height = sizeOf(grid.vs, j);
    for (let i = 0; i < grid.columns; i++) {
      const cell = j * grid.columns + i;
      if (grid.hole[cell] === 1) continue;
      const stack = grid.cells[cell] as number;
      areas[stack] = (areas[stack] as number) + height * sizeOf(grid.us, i);
    }
  }
  return areas;
}

/** Pieces that stand edge to edge where one stack ends and the other begins: both on the same piece, or on the wall. */
function edgeToEdge(one: readonly number[], other: readonly number[]): [number, number][] {
  return one.flatMap((a, i) =>
    other.includes(a)
      ? []
      : other.flatMap((b, j): [number, number][] =>
          one.includes(b) || (one[i - 1] ?? -1) !== (other[j - 1] ?? -1) ? [] : [[Math.max(a, b), Math.min(a, b)]],
        ),
  );
}

/** Calls back for each line between two cells with different stacks. */
function eachBorder(grid: CellGrid, visit: (one: number, other: number, lengthMm: number) => void): void {
  const { columns, rows, cells, hole } = grid;
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      const here = j * columns + i;
      if (hole[here] === 1) continue;
      const pass = (next: number, lengthMm: number): void => {
        if (hole[next] === 1 || cells[next] === cells[here]) return;
        visit(cells[here] as number, cells[next] as number, lengthMm);
      };
      if (i + 1 < columns) pass(here + 1, sizeOf(grid.vs, j));
      if (j + 1 < rows) pass(here + columns, sizeOf(grid.us, i));
    }
  }
}

/** Piece on piece, and edge to edge, in one grid of cells. */
function addGrid(found: Found, grid: CellGrid, pieces: readonly Piece[], where: string): void {
  const bodies = pieces.map(bodyOfPiece);
  areaOfStacks(grid).forEach((areaMm2, id) => {
    if (areaMm2 <= 0) return;
    const stack = grid.stacks[id] as readonly number[];
    stack.slice(1).forEach((outer, k) => {
      found.add(bodies[outer], bodies[stack[k] as number], { how: 'lies on', where, areaMm2 });
    });
  });
  const known = new Map<number, [number, number][]>();
  eachBorder(grid, (one, other, lengthMm) => {
    const key = one * grid.stacks.length + other;
    let pairs = known.get(key);
    if (pairs === undefined)
      known.set(
        key,
        (pairs = edgeToEdge(grid.stacks[one] as readonly number[], grid.stacks[other] as readonly number[])),
      );
    for (const [later, earlier] of pairs)
      found.add(bodies[later], bodies[earlier], { how: 'meets the edge of', where, lengthMm });
  });
}

/** What lies on the wall itself, and what is hung over the outermost piece. */
function addLayers(found: Found, detail: Detail, face: WallFace): void {
  const { grid, pieces } = face;
  const last = Math.max(-1, ...pieces.flatMap((p) => (p.sheds && p.layer !== undefined ? [p.layer.index] : [])));
  const over = bodyOfLayer(detail.layers[last + 1]);
  areaOfStacks(grid).forEach((areaMm2, id) => {
    const stack = (grid.stacks[id] as readonly number[]).map((k) => pieces[k] as Piece);
    const [first, top] = [stack[0], stack.at(-1)];
    if (areaMm2 <= 0 || first === undefined || top === undefined) return;
    const where = 'on the wall face';
    found.add(bodyOfPiece(first), bodyOfLayer(carrierOf(detail, first)), { how: 'lies on', where, areaMm2 });
    if (last >= 0) found.add(over, bodyOfPiece(top), { how: 'lies on', where, areaMm2 });
  });
  const onFace = new Set(pieces.flatMap((p) => (p.sheds && p.layer !== undefined ? [p.layer] : [])));
  detail.layers.slice(1).forEach((layer, k) => {
    const inner = detail.layers[k] as Layer;
    if (!onFace.has(layer) && !onFace.has(inner))
      found.add(bodyOfLayer(layer), bodyOfLayer(inner), { how: 'lies on', where: 'through the wall' });
  });
}

const AT_PERIMETER = { 'interior perimeter': 'inner', 'exterior perimeter': 'outer' } as const;

/** The outermost piece at the inner or outer end of a return, with the length it has there. */
function endOf({ grid }: ReturnGrid, end: 'inner' | 'outer'): Map<number, number> {
  const found = new Map<number, number>();
  const rows = [...Array(grid.rows).keys()];
  if (end === 'inner') rows.reverse();
  for (let i = 0; i < grid.columns; i++) {
    const tops = rows.map((j) => (grid.stacks[grid.cells[j * grid.columns + i] as number] as readonly number[]).at(-1));
    const top = tops.find((k) => k !== undefined);
    if (top !== undefined) found.set(top, (found.get(top) ?? 0) + sizeOf(grid.us, i));
  }
  return found;
}

/** Seals and foam around the unit, on what lines the opening and on the rod behind them. */
function addSeals(found: Found, detail: Detail, face: WallFace, grids: readonly ReturnGrid[]): void {
  for (const work of detail.work) {
    if (work.action !== 'apply' || work.family === 'backer rod') continue;
    const ends = work.places.flatMap(({ value }) =>
      value === 'interior perimeter' || value === 'exterior perimeter' ? [AT_PERIMETER[value]] : [],
    );
    if (ends.length === 0) continue;
    const seal = bodyOfWork(work);
    for (const one of grids.filter((g) => work.openings.includes(g.opening) && coversSide(work, g.side)))
      for (const end of ends)
        for (const [k, lengthMm] of endOf(one, end))
          found.add(seal, bodyOfPiece(face.pieces[k] as Piece), { how: 'seals against', where: one.where, lengthMm });
    const rod = rodOf(detail, work);
    if (rod !== undefined)
      found.add(seal, bodyOfWork(rod), { how: 'is backed by', where: `at the ${work.places[0]?.value ?? 'joint'}` });
  }
}

/** All contacts of two different products in a detail, in a fixed order. */
export function contactsOf(detail: Detail, face: WallFace): Contact[] {
  const found = new Found();
  const grids = returnGrids(detail, face);
  addGrid(found, face.grid, face.pieces, 'on the wall face');
  for (const { grid, where } of grids) addGrid(found, grid, face.pieces, where);
  addLayers(found, detail, face);
  addSeals(found, detail, face, grids);
  return found.all();
}
