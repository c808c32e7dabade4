/**
 * One step of water down the wall: from the surface it runs on in one cell to the surface in the cell below.
 *
 * The answer depends only on the two stacks and on which surface the water is, so it is worked out once for each
 * such triple, however many cells share it.
 */

/** Depth of water in a stack: index of the piece whose outer face it runs on; -1 is the bare substrate. */
export type Depth = number;

export type Happening =
  /** Ran past an upward edge that is closed, onto the outer face of that piece. */
  | { readonly what: 'over edge'; readonly piece: number }
  /** Went behind a piece at its open upward edge. */
  | { readonly what: 'behind'; readonly piece: number }
  /** The piece it ran on ends; it drops to the next one inboard. */
  | { readonly what: 'drops'; readonly from: number; readonly to: number | undefined }
  /** The pieces outboard of it end; it is at the face again. */
  | { readonly what: 'comes out'; readonly piece: number | undefined };

export interface Transition {
  readonly depth: Depth;
  readonly happenings: readonly Happening[];
}

/**
 * @param above stack of the cell the water leaves, piece indexes, inboard first
 * @param depth surface it is on there
 * @param below stack of the cell it enters
 * @param isOpen whether the upward edge of a piece lets water behind it
 */
export function transition(
  above: readonly number[],
  depth: Depth,
  below: readonly number[],
  isOpen: (piece: number) => boolean,
): Transition {
  const happenings: Happening[] = [];
  // The innermost piece outside the water that runs on below bounds it on that side.
  const outer = above.slice(depth + 1).filter((piece) => below.includes(piece));
  const ceiling = outer.length === 0 ? below.length : Math.min(...outer.map((piece) => below.indexOf(piece)));
  const current = depth < 0 ? undefined : above[depth];
  let base: Depth;
  if (current === undefined) base = -1;
  else if (below.includes(current)) base = below.indexOf(current);
  else {
    const inner = above.slice(0, depth).filter((piece) => below.includes(piece));
    base = inner.length === 0 ? -1 : Math.max(...inner.map((piece) => below.indexOf(piece)));
    happenings.push({ what: 'drops', from: current, to: base < 0 ? undefined : below[base] });
  }
  // Pieces that begin here, between the water's surface and what bounds it: each shows it an upward edge.
  while (base + 1 < ceiling) {
    const next = below[base + 1] as number;
    if (isOpen(next)) {
      happenings.push({ what: 'behind', piece: next });
      break;
    }
    happenings.push({ what: 'over edge', piece: next });
    base += 1;
  }
  const wasCovered = depth + 1 < above.length;
  if (wasCovered && base === below.length - 1)
    happenings.push({ what: 'comes out', piece: base < 0 ? undefined : below[base] });
  return { depth: base, happenings };
}
