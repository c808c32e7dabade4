/**
 * How far wind and capillarity lift water under the lower edge of a lap that is not closed, and which laps are shorter.
 */
import { waterHeadMm } from './head.js';
import type { Piece, WallFace } from '../geometry/types.js';

/** Surface tension of water against air at 20 degC, N/m. From memory, confirm (IAPWS R1-76 gives 72.74 mN/m). */
export const SURFACE_TENSION = 0.0728;
const DENSITY = 998;
const GRAVITY = 9.80665;

/**
 * Capillary rise between two flat faces that water wets.
 *
 * @param gapMm distance of the faces, mm, above zero
 * @returns mm: h = 2 gamma / (rho g d)
 * @see Jurin's law for parallel plates
 */
export function capillaryRiseMm(gapMm: number): number {
  return ((2 * SURFACE_TENSION) / (DENSITY * GRAVITY * (gapMm / 1000))) * 1000;
}

/**
 * Height to which water is lifted under the edge of a lap.
 *
 * @param pressurePa pressure of the wind across the lap
 * @param gapMm gap of the lap
 */
export function windRiseMm(pressurePa: number, gapMm: number): number {
  return waterHeadMm(pressurePa) + capillaryRiseMm(gapMm);
}

/** A lap with the outer piece coming from above: where its lower edge hangs over the upper edge of the inner one. */
export interface ShingleLap {
  readonly over: Piece;
  readonly under: Piece;
  /** Least height from the lower edge of the outer to the upper edge of the inner piece, mm. */
  readonly heightMm: number;
  /** Width over which it is that low, mm. */
  readonly widthMm: number;
}

/** All shingle laps whose outer piece has a loose lower edge, in the order of the pieces. */
export function looseShingleLaps(face: WallFace): ShingleLap[] {
  const { us, vs, columns, rows, cells, stacks } = face.grid;
  const found: ShingleLap[] = [];
  for (const { over, under } of face.laps) {
    if (over.edge !== 'open' || (over.work === under.work && over.role !== 'field')) continue;
    const holds = stacks.map((s) => ({ over: s.includes(over.index), under: s.includes(under.index) }));
    const at = (i: number, j: number): { over: boolean; under: boolean } =>
      holds[cells[j * columns + i] as number] as { over: boolean; under: boolean };
    let heightMm = Infinity;
    let widthMm = 0;
    for (let i = 0; i < columns; i++) {
      for (let j = 1; j < rows; j++) {
        // The lower edge of the outer piece, with the inner one running on below it.
        if (!(at(i, j).over && at(i, j).under && !at(i, j - 1).over && at(i, j - 1).under)) continue;
        let top = j;
        while (top < rows && at(i, top).over && at(i, top).under) top++;
        // The inner piece must end under the outer one; otherwise there is no edge that water could get over.
        if (top < rows && (at(i, top).under || !at(i, top).over)) continue;
        if (top === rows) continue;
        // Above a closed edge with another piece behind it, water that gets over the edge is still on a barrier.
        const above = stacks[cells[top * columns + i] as number] as readonly number[];
        if (under.edge !== 'open' && above.indexOf(over.index) > 0) continue;
        const height = (vs[top] as number) - (vs[j] as number);
        const width = (us[i + 1] as number) - (us[i] as number);
        if (height < heightMm - 0.01) {
          heightMm = height;
          widthMm = width;
        } else if (height < heightMm + 0.01) widthMm += width;
      }
    }
    if (heightMm < Infinity) found.push({ over, under, heightMm, widthMm });
  }
  return found;
}
