/**
 * The graph of one control: what plays it, and where two of its parts are in contact, with the length of the contact.
 */
import { carryingPieces } from './carrying.js';
import { contactMm } from './contact.js';
import { edgeTie } from './edges.js';
import { planeOf, type Plane } from './planes.js';
import { wholeSide } from './side-line.js';
import { lookThrough, type Depths } from './thermal.js';
import { bounding } from '../geometry/rect.js';
import { interiorSeals } from '../joints/perimeter-seals.js';
import { coversSide } from '../water/at-opening.js';
import {
  SIDES,
  type Apply,
  type Control,
  type Detail,
  type Layer,
  type Opening,
  type WallEdge,
} from '../model/types.js';
import type { Piece, WallFace } from '../geometry/types.js';

export type Node =
  | { readonly kind: 'layer'; readonly id: string; readonly layer: Layer }
  | { readonly kind: 'piece'; readonly id: string; readonly piece: Piece }
  | { readonly kind: 'seal'; readonly id: string; readonly seal: Apply; readonly opening: Opening }
  | { readonly kind: 'unit'; readonly id: string; readonly opening: Opening }
  | { readonly kind: 'edge'; readonly id: string; readonly edge: WallEdge };

export interface Contact {
  readonly a: Node;
  readonly b: Node;
  /** How long the two meet, mm; absent where the documents say that they do and nothing drawn measures it. */
  readonly lengthMm?: number;
}

export interface ControlGraph {
  readonly control: Control;
  readonly plane: Plane | undefined;
  readonly nodes: readonly Node[];
  readonly contacts: readonly Contact[];
}

function sealNodes(detail: Detail): Extract<Node, { kind: 'seal' }>[] {
  return detail.openings.flatMap((opening) =>
    interiorSeals(detail, opening).map((seal) => ({
      kind: 'seal' as const,
      id: `seal ${seal.id} of ${opening.id}`,
      seal,
      opening,
    })),
  );
}

/** Length of the sides that a seal runs along, mm. */
function sealedMm(seal: Apply, opening: Opening): number {
  return SIDES.filter((side) => coversSide(seal, side))
    .map((side) => wholeSide(opening, side))
    .reduce((sum, s) => sum + s.toMm - s.fromMm, 0);
}

/** Where a seal and a piece that lines the opening meet: the length of lining on the sides the seal runs along. */
function landingMm(seal: Apply, opening: Opening, piece: Piece): number {
  if (piece.opening !== opening) return 0;
  return SIDES.filter((side) => coversSide(seal, side)).reduce((sum, side) => {
    const box = bounding(piece.returns[side] ?? []);
    return sum + (box === undefined ? 0 : box.u1 - box.u0);
  }, 0);
}

function thermalContacts(
  detail: Detail,
  layers: readonly Extract<Node, { kind: 'layer' }>[],
  units: readonly Extract<Node, { kind: 'unit' }>[],
): Contact[] {
  const depths: Depths = lookThrough(detail);
  const perimeter = (o: Opening): number => 2 * (o.widthMm.value + o.heightMm.value);
  const contacts: Contact[] = [];
  // Insulation that stands one behind the other is one plane, whatever thin layers lie between.
  layers.slice(1).forEach((b, k) => contacts.push({ a: layers[k] as Node, b }));
  for (const unit of units)
    for (const a of layers)
      if (depths.unitMeets(unit.opening, [a.layer]) === 'meets')
        contacts.push({ a, b: unit, lengthMm: perimeter(unit.opening) });
  return contacts;
}

/**
 * Builds the graph of a control.
 *
 * Nodes are the layers and pieces that play it, the interior seals, the units and the edges where the wall meets
 * something else. Contacts are found on the wall face and on the returns; those that only the documents tell of (a
 * tie-in shown in another detail, a joint without a shape on the face) have no length.
 */
export function buildGraph(detail: Detail, face: WallFace, control: Control): ControlGraph {
  const plane = planeOf(detail, face, control);
  if (plane === undefined) return { control, plane, nodes: [], contacts: [] };
  const layers = (plane.on === 'layers' ? plane.layers : []).map((layer) => ({
    kind: 'layer' as const,
    id: `layer ${layer.id}`,
    layer,
  }));
  const pieces = carryingPieces(face, plane).map((piece) => ({
    kind: 'piece' as const,
    id: `piece ${piece.id}`,
    piece,
  }));
  const units = detail.openings.map((opening) => ({ kind: 'unit' as const, id: `unit ${opening.id}`, opening }));
  const seals = control === 'air' || control === 'vapor' ? sealNodes(detail) : [];
  const edges = detail.edges
    .filter((e) => e.meets.value !== 'same wall')
    .map((edge) => ({ kind: 'edge' as const, id: `edge ${edge.side}`, edge }));
  const contacts: Contact[] = [];
  const meet = (a: Node, b: Node, lengthMm: number): void => {
    if (lengthMm > 0) contacts.push({ a, b, lengthMm });
  };
  pieces.forEach((a, i) => {
    for (const b of pieces.slice(i + 1)) meet(a, b, contactMm(a.piece, b.piece));
  });
  for (const seal of seals) {
    const { opening } = seal;
    for (const p of pieces) meet(p, seal, landingMm(seal.seal, opening, p.piece));
    for (const l of layers) meet(l, seal, sealedMm(seal.seal, opening));
    for (const unit of units.filter((u) => u.opening === opening)) meet(seal, unit, sealedMm(seal.seal, opening));
  }
  if (control === 'thermal') contacts.push(...thermalContacts(detail, layers, units));
  if (control === 'water') {
    // Flashing on the flange, over it or under it, and the pan under the unit.
    for (const unit of units) {
      const flange = face.pieces.find((p) => p.role === 'unit flange' && p.opening === unit.opening);
      for (const p of pieces.filter((x) => x.piece.opening === unit.opening)) {
        const onFlange = flange === undefined ? 0 : contactMm(flange, p.piece);
        const pan = bounding(p.piece.returns.sill ?? []);
        meet(p, unit, Math.max(onFlange, pan === undefined ? 0 : pan.u1 - pan.u0));
      }
    }
  }
  for (const edge of edges) {
    const tie = edgeTie(detail, face, edge.edge);
    if (tie.kind === 'detail')
      for (const n of [...layers, ...pieces.filter((p) => p.piece.role === 'field')]) contacts.push({ a: n, b: edge });
    if (tie.kind !== 'work') continue;
    const own = pieces.filter((p) => p.piece.work === tie.work);
    if (own.length > 0) for (const p of own) meet(p, edge, tie.lengthMm ?? 0);
    else if (!tie.hasShape)
      for (const n of [...layers, ...pieces.filter((p) => p.piece.role === 'field')]) contacts.push({ a: n, b: edge });
  }
  return { control, plane, nodes: [...layers, ...pieces, ...seals, ...units, ...edges], contacts };
}

/** The parts of a graph that hang together, the one with most of the plane first; nodes in the order of the graph. */
export function connectedParts(graph: ControlGraph): Node[][] {
  const next = new Map<Node, Node[]>(graph.nodes.map((n) => [n, []]));
  for (const { a, b } of graph.contacts) {
    next.get(a)?.push(b);
    next.get(b)?.push(a);
  }
  const seen = new Set<Node>();
  const parts: Node[][] = [];
  for (const start of graph.nodes) {
    if (seen.has(start)) continue;
    const part = new Set([start]);
    for (const n of part) for (const m of next.get(n) ?? []) part.add(m);
    for (const n of part) seen.add(n);
    parts.push(graph.nodes.filter((n) => part.has(n)));
  }
  const area = (n: Node): number =>
    n.kind === 'piece' && n.piece.role === 'field'
      ? n.piece.face.reduce((sum, r) => sum + (r.u1 - r.u0) * (r.v1 - r.v0), 0)
      : n.kind === 'layer'
        ? Infinity
        : 0;
  const weight = (part: readonly Node[]): number => part.reduce((sum, n) => sum + area(n), 0);
  return parts
    .map((p, i) => ({ p, i, w: weight(p) }))
    .sort((x, y) => (x.w === y.w ? x.i - y.i : y.w - x.w))
    .map((x) => x.p);
}

/** Nodes that no way of contacts leads to from the plane. */
export function cutOff(graph: ControlGraph): Node[] {
  return connectedParts(graph).slice(1).flat();
}
