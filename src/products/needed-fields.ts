/** Which values of a data sheet a reviewer needs, by family: those that some check uses, or that practice asks for. */
import type { Family, Product } from '../model/types.js';

/** A field as an author names it; `a or b` where either will do. */
export interface NeededField {
  readonly name: string;
  /** What it is needed for; ends a sentence in brackets. */
  readonly use: string;
  readonly isGiven: (product: Product) => boolean;
}

const field = (name: string, use: string, isGiven: NeededField['isGiven']): NeededField => ({ name, use, isGiven });

const FILM = field(
  'wetFilm or dryFilm',
  'how thick the film has to be',
  (p) => (p.wetFilmUm ?? p.dryFilmUm) !== undefined,
);
const SOLIDS = field('volumeSolids', 'what the wet film dries to', (p) => p.volumeSolids !== undefined);
const PERMEANCE = field(
  'permeance',
  'its vapor retarder class',
  (p) => (p.permeanceDry ?? p.permeanceWet) !== undefined,
);
const AT_FILM = field(
  'permeance.atFilm',
  'the film its permeance holds for',
  (p) => p.permeanceAtFilmUm !== undefined || (p.permeanceDry ?? p.permeanceWet) === undefined,
);
const AIR = field('airPermeance', 'whether it is an air barrier material', (p) => p.airPermeance !== undefined);
const AIR_METHOD = field(
  'airPermeanceMethod',
  'the test of its air permeance',
  (p) => p.airPermeanceMethod !== undefined || p.airPermeance === undefined,
);
const WAITS = field('waits', 'when the next work may follow', (p) => p.waits.length > 0);
const EXPOSURE = field('exposureLimit', 'how long it may stay uncovered', (p) => p.exposureLimitS !== undefined);
const TEMPERATURE = field(
  'temperature',
  'the weather it may be applied in',
  (p) => (p.temperatureMinC ?? p.temperatureMaxC) !== undefined,
);
const SUBSTRATES = field('substrates', 'what it may be applied to', (p) => p.substrates.length > 0);
const STANDARDS = field('standards', 'the standards it meets', (p) => p.standards.length > 0);
const LAP = field('least.lap', 'how far it laps', (p) => p.least.lapMm !== undefined);
const GAP = field('maxGap', 'the gap it may bridge', (p) => p.maxGapMm !== undefined);
const MOVEMENT = field('movement', 'the movement its joint may have', (p) => p.movement !== undefined);
const WIDTH = field('jointWidth', 'the joints it fits', (p) => p.jointWidthMm !== undefined);
const CELL = field('cell', 'whether its cells are closed', (p) => p.cell !== undefined);
const EXPANSION = field('expansion', 'whether it bows the frame', (p) => p.expansion !== undefined);

const ADHERED = [LAP, SUBSTRATES, TEMPERATURE, EXPOSURE, STANDARDS];

/** Families that are not listed need nothing but what their layer says. */
const BY_FAMILY: Partial<Record<Family, readonly NeededField[]>> = {
  'fluid-applied membrane': [
    FILM,
    SOLIDS,
    PERMEANCE,
    AT_FILM,
    AIR,
    AIR_METHOD,
    WAITS,
    EXPOSURE,
    TEMPERATURE,
    SUBSTRATES,
    STANDARDS,
  ],
  'fluid-applied flashing': [FILM, SOLIDS, WAITS, EXPOSURE, TEMPERATURE, SUBSTRATES, STANDARDS],
  'joint filler': [GAP, WAITS, TEMPERATURE, SUBSTRATES, STANDARDS],
  'self-adhered membrane': [PERMEANCE, AIR, AIR_METHOD, ...ADHERED],
  'self-adhered flashing': ADHERED,
  'transition membrane': ADHERED,
  tape: [SUBSTRATES, TEMPERATURE, STANDARDS],
  'mechanically fastened sheet': [PERMEANCE, AIR, AIR_METHOD, LAP, EXPOSURE, STANDARDS],
  'building paper': [LAP, STANDARDS],
  'flexible flashing': [EXPOSURE, STANDARDS],
  'metal flashing': [STANDARDS],
  'rigid pan': [STANDARDS],
  boot: [STANDARDS],
  sealant: [MOVEMENT, WIDTH, SUBSTRATES, TEMPERATURE, STANDARDS],
  'backer rod': [CELL, STANDARDS],
  'spray foam': [EXPANSION, STANDARDS],
  primer: [SUBSTRATES, TEMPERATURE],
  'vapor retarder': [PERMEANCE, STANDARDS],
};

/** What a reviewer needs of a family. */
export function neededOf(family: Family): readonly NeededField[] {
  return BY_FAMILY[family] ?? [];
}

/** What a reviewer needs and the data leave out, in the order of a data sheet. */
export function missingOf(product: Product): readonly NeededField[] {
  return neededOf(product.family).filter((f) => !f.isGiven(product));
}
