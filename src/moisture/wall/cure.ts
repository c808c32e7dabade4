/**
 * What change would make a wall pass: insulation outside, or a tighter layer inside.
 *
 * Each answer is found for every reading of the drawing and for both ends of what generic figures span; the one that
 * serves all is taken, rounded to the safe side, and followed through the year once more before it is told.
 */
import { permToNg, usRToSi } from '../../vapor/classes.js';
import { continuousInsulation, insulates } from '../../vapor/insulation.js';
import { frameOf } from '../../vapor/frame.js';
import type { Detail, Layer } from '../../model/types.js';
import type { MonthOfAir } from '../interior-climate.js';
import { permeanceFromSdNg, sdFromPermeanceM, type MoistureLayer } from '../resistance.js';
import { highestPermeance, leastResistance, type Question } from '../solve-for.js';
import type { LayerFigures, SdBounds } from './figures.js';
import { accepted, extremes, heldAgainstLimits, judgeYear, typicalLayers } from './judge.js';
import { rememberedInAir } from './remembered-in-air.js';
import type { ReadWall, Wall } from './wall.js';

/** Where a layer is changed or put in. */
export interface Spot {
  /** Place in the layers of the wall; a new layer stands before what is there now. */
  readonly index: number;
  /** The layer that is changed; absent when a new one is put in. */
  readonly changes?: string;
}
export type Cure =
  /** `value`: least m2 K/W of insulation, or most ng/(Pa s m2) of an interior layer; passes in every reading. */
  | { readonly kind: 'found'; readonly value: number; readonly spot: Spot }
  /** Nothing up to the most that was tried passes; `most` in the same unit. */
  | { readonly kind: 'out of reach'; readonly most: number; readonly spot: Spot };

/** As much insulation as anybody builds outside a frame, R-40. */
export const MOST_INSULATION_M2KW = usRToSi(40);
/** A polyethylene sheet, the tightest that is built inside, m. */
export const TIGHTEST_INSIDE_SD_M = 50;
const NEW = 'new layer';
/** Fibrous board, which hardly resists vapor: as thick as its conductivity asks, and mu of 1 (see GENERIC_MATERIALS). */
const NEW_BOARD_W_PER_MK = 0.04;
/** Answers are told to a tenth of a US R. */
const STEP_M2KW = usRToSi(0.1);
const ENDS: ReadonlySet<Layer['family']> = new Set<Layer['family']>(['air space', 'drainage mat', 'cladding']);
const MASS: ReadonlySet<Layer['family']> = new Set<Layer['family']>(['concrete', 'masonry']);

const all = (sdM: number): SdBounds => ({ leastM: sdM, typicalM: sdM, mostM: sdM });

/** Insulation outside the frame, or outside the mass of a wall without one: what is there, else where it would go. */
export function insulationSpot(detail: Detail, [wall]: ReadWall['walls']): Spot {
  const frame = frameOf(detail);
  const there =
    frame === undefined
      ? detail.layers.filter((l) => insulates(l) && l.index > massOf(detail))
      : continuousInsulation(detail, frame).layers.flatMap((i) => (i.layer === frame ? [] : [i.layer]));
  const index = wall.layers.findIndex((f) => there.includes(f.layer) && f.id === f.layer.id);
  if (index >= 0) return { index, changes: (wall.layers[index] as LayerFigures).id };
  const inner = frame?.index ?? massOf(detail);
  const end = wall.layers.findIndex((f) => f.layer.index > inner && ENDS.has(f.layer.family));
  return { index: end < 0 ? wall.layers.length : end };
}

/** Index of the outermost concrete or masonry inside of the cladding; -1 where there is none. */
function massOf(detail: Detail): number {
  return detail.layers.findLast((l) => MASS.has(l.family) && l.index < detail.layers.length - 1)?.index ?? -1;
}

/** The interior retarder on the warm side of the frame: the sheet or facing that is there, else where one would go. */
export function retarderSpot(detail: Detail, [wall]: ReadWall['walls']): Spot {
  const frame = frameOf(detail) ?? mostInsulating(wall);
  const there = wall.layers.findIndex(
    (f) => f.layer.index <= frame.index && (f.layer.family === 'vapor retarder' || f.id === `${frame.id} finish`),
  );
  if (there >= 0) return { index: there, changes: (wall.layers[there] as LayerFigures).id };
  const before = wall.layers.findIndex((f) => f.layer.index >= frame.index);
  return { index: Math.max(0, before) };
}

function mostInsulating(wall: Wall): Layer {
  return wall.layers.reduce((a, b) => (b.rM2KW > a.rM2KW ? b : a)).layer;
}

interface Change {
  readonly rM2KW: number;
  readonly sdM: number;
}

/** The wall with the layer at the spot changed, or a new one put in. */
function changed(wall: Wall, spot: Spot, to: Change): Wall {
  const now = wall.layers[spot.index] ?? wall.layers.at(-1);
  if (now === undefined) throw new RangeError('A wall with at least one layer is expected.');
  const figures: LayerFigures = {
    ...(spot.changes === undefined ? plain(now) : now),
    rM2KW: to.rM2KW,
    dry: all(to.sdM),
    wet: all(to.sdM),
  };
  return { ...wall, layers: wall.layers.toSpliced(spot.index, spot.changes === undefined ? 0 : 1, figures) };
}

/** A new sheet or board beside a layer of the drawing. */
function plain({ layer }: LayerFigures): LayerFigures {
  const none = { id: NEW, layer, rM2KW: 0, dry: all(0), wet: all(0) };
  return { ...none, storage: 'non-absorbing', generic: false, field: '', assumptions: [] };
}

const cases = (walls: readonly Wall[], year: readonly MonthOfAir[]): { wall: Wall; layers: MoistureLayer[] }[] =>
  walls.flatMap((wall) => [typicalLayers(wall, year), ...extremes(wall, year)].map((layers) => ({ wall, layers })));

const passesInEvery = (walls: readonly Wall[], year: readonly MonthOfAir[]): boolean =>
  cases(walls, year).every(({ wall, layers }) => accepted(judgeYear(wall, layers, year)));

/** The worst of the answers of every reading; `undefined` when one of them has none. */
function worstOf(
  walls: readonly Wall[],
  year: readonly MonthOfAir[],
  id: string,
  ask: (question: Question) => ReturnType<typeof leastResistance>,
): number | undefined {
  let worst = 0;
  for (const { wall, layers } of cases(walls, year)) {
    const answer = ask({
      layers,
      vary: id,
      year,
      accept: { kind: 'held', holds: (y) => accepted(heldAgainstLimits(y)) },
      options: { surfaces: wall.surfaces },
      tolerance: STEP_M2KW / 8,
    });
    if (answer.kind === 'out of reach') return undefined;
    if (answer.kind === 'found') worst = Math.max(worst, answer.value);
  }
  return worst;
}

/** The walls with insulation of a resistance at the spot; what is there keeps its vapor resistance per thickness. */
function wallsInsulated(read: ReadWall, spot: Spot, rM2KW: number): Wall[] {
  const sdM = sdOfInsulation(read, spot, rM2KW);
  return read.walls.map((w) => changed(w, spot, { rM2KW, sdM }));
}

function sdOfInsulation(read: ReadWall, spot: Spot, rM2KW: number): number {
  const now = spot.changes === undefined ? undefined : read.walls[0].layers[spot.index];
  if (now === undefined) return Math.max(0.001, rM2KW * NEW_BOARD_W_PER_MK);
  return now.rM2KW > 0 ? (now.dry.typicalM * Math.max(rM2KW, STEP_M2KW)) / now.rM2KW : now.dry.typicalM;
}

/** Whether the wall passes in every reading with insulation of this resistance at the spot, m2 K/W. */
export function passesInsulated(read: ReadWall, year: readonly MonthOfAir[], spot: Spot, rM2KW: number): boolean {
  return passesInEvery(wallsInsulated(read, spot, rM2KW), year);
}

/** Whether it passes in every reading with an interior layer of this permeance at the spot, ng/(Pa s m2). */
export function passesInside(read: ReadWall, year: readonly MonthOfAir[], spot: Spot, ng: number): boolean {
  return passesInEvery(wallsInside(read, spot, sdFromPermeanceM(ng)), year);
}

function wallsInside(read: ReadWall, spot: Spot, sdM: number): Wall[] {
  const rM2KW = spot.changes === undefined ? 0 : (read.walls[0].layers[spot.index]?.rM2KW ?? 0);
  return read.walls.map((w) => changed(w, spot, { rM2KW, sdM }));
}

const keptInsulation = rememberedInAir<Cure>();
const keptRetarder = rememberedInAir<Cure>();
const figuresOfWalls = (read: ReadWall): unknown =>
  read.walls.map((w) => [
    w.surfaces,
    w.layers.map(({ layer, assumptions, ...f }) => [f, layer.index, assumptions.length]),
  ]);

/**
 * Least continuous insulation with which the wall passes, m2 K/W.
 *
 * Insulation that is there keeps its vapor resistance per thickness; new insulation is fibrous board.
 * @param spot see {@link insulationSpot}
 * @see leastResistance, amountLimits
 */
export function leastInsulation(read: ReadWall, year: readonly MonthOfAir[], spot: Spot): Cure {
  return keptInsulation(year, [figuresOfWalls(read), spot], () => solveInsulation(read, year, spot));
}

function solveInsulation(read: ReadWall, year: readonly MonthOfAir[], spot: Spot): Cure {
  const outOfReach: Cure = { kind: 'out of reach', most: MOST_INSULATION_M2KW, spot };
  const now = spot.changes === undefined ? undefined : read.walls[0].layers[spot.index];
  // The answer changes the thickness, and that the vapor resistance: a few rounds settle it.
  let rM2KW = now?.rM2KW ?? usRToSi(5);
  for (let round = 0; round < 3; round++) {
    const next = worstOf(wallsInsulated(read, spot, rM2KW), year, spot.changes ?? NEW, (q) =>
      leastResistance(q, MOST_INSULATION_M2KW),
    );
    if (next === undefined) return outOfReach;
    const settled = Math.abs(next - rM2KW) < STEP_M2KW;
    rM2KW = next;
    if (settled) break;
  }
  for (; rM2KW <= MOST_INSULATION_M2KW; rM2KW += Math.max(STEP_M2KW, rM2KW / 10)) {
    const value = Math.ceil(rM2KW / STEP_M2KW - 1e-9) * STEP_M2KW;
    if (passesInsulated(read, year, spot, value)) return { kind: 'found', value, spot };
  }
  return outOfReach;
}

/**
 * Highest permeance of a layer inside of the frame with which the wall passes, ng/(Pa s m2).
 *
 * @param spot see {@link retarderSpot}
 * @param mostSdM the tightest that may be built, m of still air
 * @see highestPermeance, amountLimits
 */
export function highestInside(read: ReadWall, year: readonly MonthOfAir[], spot: Spot, mostSdM: number): Cure {
  return keptRetarder(year, [figuresOfWalls(read), spot, mostSdM], () => solveInside(read, year, spot, mostSdM));
}

function solveInside(read: ReadWall, year: readonly MonthOfAir[], spot: Spot, mostSdM: number): Cure {
  const outOfReach: Cure = { kind: 'out of reach', most: permeanceFromSdNg(mostSdM), spot };
  let sdM = worstOf(wallsInside(read, spot, 1), year, spot.changes ?? NEW, (q) => highestPermeance(q, mostSdM));
  if (sdM === undefined) return outOfReach;
  for (sdM = Math.max(sdM, 0.01); sdM <= mostSdM * (1 + 1e-9); sdM *= 1.1) {
    const value = roundedDownNg(permeanceFromSdNg(sdM));
    const rounded = sdFromPermeanceM(value);
    if (rounded <= mostSdM * 1.1 && passesInside(read, year, spot, value)) return { kind: 'found', value, spot };
  }
  return outOfReach;
}

/** Down to two digits of US perm. */
function roundedDownNg(ng: number): number {
  const perm = ng / permToNg(1);
  const unit = 10 ** (Math.floor(Math.log10(perm)) - 1);
  return permToNg(Math.floor(perm / unit + 1e-9) * unit);
}
