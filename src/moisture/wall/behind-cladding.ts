/** The wall inside of a cladding that stores rain: what sun drives into it, and which interior layer would let it out. */
import { isSpace } from '../../model/families.js';
import { bisect } from '../bisect.js';
import { sunnyYear, type SunnyYear } from '../inward-day.js';
import type { MonthOfAir } from '../interior-climate.js';
import type { MoistureLayer } from '../resistance.js';
import { extremes, typicalLayers } from './judge.js';
import { storesRain } from './stores-rain.js';
import type { ReadWall, Wall } from './wall.js';
import type { Detail, Layer } from '../../model/types.js';

export interface ReservoirWall {
  readonly cladding: Layer;
  /** What lies inside of the cladding and of the space behind it. */
  readonly wall: Wall;
  /** One, or both where the drawing does not say. */
  readonly vented: readonly boolean[];
  /** Field that would say it. */
  readonly unsaidVenting?: string;
}

/** The wall inside of an outermost layer that stores rain; `undefined` for any other wall. */
export function reservoirWall(detail: Detail, read: ReadWall): ReservoirWall | undefined {
  const cladding = detail.layers.at(-1);
  if (cladding === undefined || !storesRain(cladding)) return undefined;
  const behind = detail.layers[cladding.index - 1];
  const end = behind !== undefined && isSpace(behind.family) ? behind.index : cladding.index;
  const [wall] = read.walls;
  const layers = wall.layers.filter((f) => f.layer.index < end);
  if (layers.length === 0) return undefined;
  const vented = read.unsaidVenting === undefined ? [read.walls.some((w) => w.endsAt !== undefined)] : [true, false];
  return {
    cladding,
    wall: { ...wall, layers },
    vented,
    ...(read.unsaidVenting === undefined ? {} : { unsaidVenting: read.unsaidVenting }),
  };
}

/** Sunny days in every reading: figures halfway first, then both ends of what they span. */
export function sunnyReadings({ wall, vented }: ReservoirWall, year: readonly MonthOfAir[]): SunnyYear[] {
  return [typicalLayers(wall, year), ...extremes(wall, year)].flatMap((layers) =>
    vented.map((v) => sunnyYear(layers, year, v)),
  );
}

/**
 * Tightest interior layer with which no more than an amount gathers over the season, m of still air.
 *
 * @param id the interior layer that is varied
 * @returns `undefined` when too much gathers even without it, or little even with it
 */
export function tightestInside(
  layers: readonly MoistureLayer[],
  id: string,
  year: readonly MonthOfAir[],
  vented: boolean,
  mostKgPerM2: number,
): number | undefined {
  const without = layers.find((l) => l.id === id);
  if (without === undefined || !('sdM' in without)) return undefined;
  const holds = (logSd: number): boolean =>
    sunnyYear(
      layers.map((l) => (l.id === id ? { ...without, sdM: 10 ** logSd } : l)),
      year,
      vented,
    ).seasonKgPerM2 <= mostKgPerM2;
  const [open, now] = [Math.log10(0.01), Math.log10(Math.max(0.02, without.sdM))];
  if (holds(now) || !holds(open)) return undefined;
  return 10 ** bisect(holds, now, open, 0.005);
}
