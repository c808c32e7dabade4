/** How a piece is called in a sentence. */
import type { Piece } from './types.js';

/** `"pan"`, `course 2 of "wrap"`, `the flap of "sheet" over "window"`, `"ro" at the head of "window"`. */
export function pieceName(piece: Piece): string {
  const work = `"${piece.work.id}"`;
  const rest = piece.id.slice(piece.work.id.length);
  const flap = /#flap@(.+)$/.exec(rest)?.[1];
  if (flap !== undefined) return `the flap of ${work} over "${flap}"`;
  const course = /#(\d+)$/.exec(rest)?.[1];
  if (course !== undefined) return `course ${course} of ${work}`;
  const place = /^#([^@]+)/.exec(rest)?.[1];
  const of = /@(.+)$/.exec(rest)?.[1];
  return `${work}${place === undefined ? '' : ` at the ${place}`}${of === undefined ? '' : ` of "${of}"`}`;
}
