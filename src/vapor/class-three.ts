/** The conditions under which the cold zones accept a class III interior retarder. */
import { usRToSi } from './classes.js';
import { classThreeRow, type ClassThreeRow, type InsulationPair } from './data/condition-tables.js';
import { studDepthMm } from './frame.js';
import type { KnownPlace } from './permitted.js';
import type { Layer } from '../model/types.js';

/** Nominal 2x4 framing is at most this deep, 2x6 at most that; steel studs of 3-5/8 in and 6 in fall in with them. */
const DEEPEST_2X4_MM = 101.6;
const DEEPEST_2X6_MM = 152.4;

/**
 * What the table asks over studs of a depth.
 *
 * `least` to `most` when the depth is unknown; for studs deeper than 2x6 the table has no column, and `most` is
 * absent: the 2x6 value is then no more than a floor.
 */
export interface AskedInsulation {
  readonly leastUsR: number;
  readonly mostUsR?: number;
  readonly column: '2x4' | '2x6' | 'unknown' | 'deeper';
}

/** The column of an insulation table for the frame of a wall. */
export function askedInsulation(row: InsulationPair, frame: Layer): AskedInsulation {
  const depth = studDepthMm(frame);
  if (depth === undefined) return { column: 'unknown', leastUsR: row.r2x4, mostUsR: row.r2x6 };
  if (depth <= DEEPEST_2X4_MM + 0.1) return { column: '2x4', leastUsR: row.r2x4, mostUsR: row.r2x4 };
  if (depth <= DEEPEST_2X6_MM + 0.1) return { column: '2x6', leastUsR: row.r2x6, mostUsR: row.r2x6 };
  return { column: 'deeper', leastUsR: row.r2x6 };
}

/** How a resistance stands to the table: met, short, or undecided because the depth leaves two answers. */
export function standing(asked: AskedInsulation, resistanceM2KPerW: number): 'met' | 'short' | 'undecided' {
  const enough = (usR: number): boolean => resistanceM2KPerW >= usRToSi(usR) * (1 - 1e-6);
  if (!enough(asked.leastUsR)) return 'short';
  return asked.mostUsR !== undefined && enough(asked.mostUsR) ? 'met' : 'undecided';
}

/** The row that applies at a place; `undefined` where class III stands without conditions. */
export function conditionsAt(place: KnownPlace): ClassThreeRow | undefined {
  return classThreeRow(place.tables.title, place.tables.edition, place.zone);
}
