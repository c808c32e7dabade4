/** Where water that stayed outside the barrier ends: at the foot of what is drawn, and at the head of an opening. */
import type { WaterEnd } from './types.js';
import { cavityFeet, wayOut, type CavityFoot } from '../../model/veneer.js';
import type { Detail, Opening } from '../../model/types.js';

type End = Pick<WaterEnd, 'kind' | 'why' | 'isUntold'>;

/** What the wall meets where it ends for good; at other edges it goes on. */
const LOWER_ENDS: ReadonlySet<string> = new Set(['foundation', 'grade', 'roof']);

function outOfCavity(detail: Detail, foot: CavityFoot): End {
  const { state, why } = wayOut(detail, foot);
  if (state === 'shown') return { kind: 'daylight', why };
  return { kind: 'behind veneer', why: `${foot.name}, ${why}`, ...(state === 'not told' ? { isUntold: true } : {}) };
}

/**
 * The end of water on the barrier at the foot of the wall shown.
 *
 * Behind a masonry veneer it sees daylight only through flashing and weeps. Where the drawing stops in the middle of a
 * wall, nothing is said about daylight.
 */
export function footEnd(detail: Detail): End {
  const base = cavityFeet(detail).find((f) => f.kind === 'base');
  if (base !== undefined) return outOfCavity(detail, base);
  const edge = detail.edges.find((e) => e.side === 'bottom');
  // Where another detail shows the lower end, the way goes on there.
  return edge !== undefined &&
    LOWER_ENDS.has(edge.meets.value) &&
    (edge.tieIn === undefined || detail.work.some((w) => w.id === edge.tieIn?.value))
    ? { kind: 'daylight', why: 'at the foot of the wall' }
    : { kind: 'goes on' };
}

/**
 * The end of water on the barrier at the head of an opening that is closed against it.
 *
 * @param why the way over the unit, for a wall without a masonry veneer
 */
export function headEnd(detail: Detail, opening: Opening, why: string): End {
  const foot = cavityFeet(detail).find((f) => f.opening === opening);
  return foot === undefined ? { kind: 'daylight', why } : outOfCavity(detail, foot);
}
