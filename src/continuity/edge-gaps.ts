/** Edges of the drawn piece of wall at which a control is not tied in. */
import { edgeMm, edgeTie, type EdgeTie } from './edges.js';
import { buildGraph, connectedParts, type Node } from './graph.js';
import { insulates, type Plane } from './planes.js';
import type { WallFace } from '../geometry/types.js';
import type { Control, Detail, WallEdge } from '../model/types.js';

export interface EdgeGap {
  readonly kind: 'edge';
  /** `apart`: the work that is named does not meet the plane of the control; `elsewhere`: it does not lie at this edge. */
  readonly cause: 'none' | 'itself' | 'other work' | 'apart' | 'elsewhere';
  readonly edge: WallEdge;
  readonly tie: EdgeTie;
  /** Of the drawn edge, mm. */
  readonly lengthMm: number;
  /** What would tell whether there is a gap; empty when the drawing is sure of it. */
  readonly missing: readonly string[];
}

const ELSEWHERE = ['edges.tieIn (the detail that shows it)'];

/** Gaps at the edges where the wall meets something else, in the order written. */
export function edgeGaps(detail: Detail, face: WallFace, control: Control, plane: Plane | undefined): EdgeGap[] {
  // The contacts of all pieces are only worth finding when some edge asks for them.
  let main: readonly Node[] | undefined;
  const isTied = (edge: WallEdge): boolean => {
    main ??= connectedParts(buildGraph(detail, face, control))[0] ?? [];
    return main.some((n) => n.kind === 'edge' && n.edge === edge);
  };
  return detail.edges.flatMap((edge): EdgeGap[] => {
    if (edge.meets.value === 'same wall') return [];
    const tie = edgeTie(detail, face, edge);
    const gap = (cause: EdgeGap['cause'], missing: readonly string[] = []): EdgeGap[] => [
      { kind: 'edge', cause, edge, tie, lengthMm: edgeMm(face.bounds, edge.side), missing },
    ];
    if (tie.kind === 'detail') return [];
    if (tie.kind !== 'work') return gap(tie.kind);
    // Insulation is not carried on by a strip; how it goes on stands in another drawing.
    if (control === 'thermal')
      return tie.work.layer !== undefined && insulates(tie.work.layer) ? [] : gap('apart', ELSEWHERE);
    if (plane?.on === 'layers') return tie.hasShape ? gap('apart', ELSEWHERE) : [];
    if (!tie.hasShape) return [];
    if ((tie.lengthMm ?? 0) === 0) return gap('elsewhere');
    if (plane === undefined) return gap('apart', ['work.place: field']);
    return isTied(edge) ? [] : gap('apart');
  });
}
