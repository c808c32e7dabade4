/** Figures that the calculation takes where a drawing names a thing but no data sheet does. */
import type { GenericMaterial } from '../../vapor/data/materials.js';
import type { Family } from '../../model/types.js';
import { standard, type Figure } from './air.js';

/** Thermal resistance of an unventilated air space for flow through a wall, by its width, m2 K/W. */
export const AIR_SPACE_R_M2KW = {
  /** Least width, mm, and the resistance from there on. */
  steps: [
    [0, 0],
    [5, 0.11],
    [7, 0.13],
    [10, 0.15],
    [15, 0.17],
    [25, 0.18],
  ],
  source: standard('ISO 6946, unventilated air layers, horizontal flow', 'from memory, confirm'),
} as const;

const UNNAMED_SHEATHING = 'everything from plywood to gypsum and fiberboard';

/** Density of what limits for wood are shares of, kg/m3: the least in use, so that the limit is on the safe side. */
export const WOOD_DENSITY_KG_PER_M3: Readonly<Record<string, Figure>> = {
  plywood: { value: 500, source: standard('ISO 10456, plywood', 'from memory, confirm') },
  'oriented strand board': { value: 600, source: standard('ISO 10456, oriented strand board', 'from memory, confirm') },
  'wood structural panel': { value: 500, source: standard('ISO 10456, plywood', 'from memory, confirm') },
  particleboard: { value: 600, source: standard('ISO 10456, particleboard', 'from memory, confirm') },
  fiberboard: { value: 250, source: standard('ISO 10456, wood fiberboard', 'from memory, confirm') },
  hardboard: { value: 800, source: standard('ISO 10456, fiberboard', 'from memory, confirm') },
  softwood: { value: 450, source: standard('ISO 10456, timber', 'from memory, confirm') },
  [UNNAMED_SHEATHING]: { value: 500, source: standard('ISO 10456, plywood', 'from memory, confirm') },
  hardwood: { value: 700, source: standard('ISO 10456, timber', 'from memory, confirm') },
};

/** Of a paint that a drawing leaves unsaid: from bare paper to this still air layer, that of 5 perm latex, m. */
export const UNSAID_FINISH_SD_M: Figure = {
  value: 0.7,
  source: { basis: 'practice', citation: 'latex paint of 5 perm', provenance: 'common practice, no source' },
};

const SPANNED = { aliases: [], provenance: 'from memory, confirm', source: 'span of the generic materials' } as const;

/** Things that a drawing calls by their family alone, as all that they may be. The name is what reports print. */
export const UNNAMED: Partial<Readonly<Record<Family, GenericMaterial>>> = {
  'batt insulation': {
    ...SPANNED,
    name: 'fibrous fill, from mineral wool to cellulose',
    lambdaWPerMK: [0.032, 0.042],
    permeabilityPermIn: [75, 116],
    insulation: true,
  },
  'insulating sheathing': {
    ...SPANNED,
    name: 'everything from a foil-faced board to an open foam',
    lambdaWPerMK: [0.022, 0.04],
    permeabilityPermIn: [0.05, 5.8],
    insulation: true,
    foamPlastic: true,
  },
  'board insulation': {
    ...SPANNED,
    name: 'everything from a foil-faced board to mineral wool',
    lambdaWPerMK: [0.022, 0.04],
    permeabilityPermIn: [0.05, 116],
    insulation: true,
  },
  // Wood is the tightest of them and the one that suffers.
  sheathing: {
    ...SPANNED,
    name: UNNAMED_SHEATHING,
    lambdaWPerMK: [0.07, 0.2],
    permeancePerm: [0.5, 50],
    moistureSensitive: true,
    sheathing: 'wood panel',
  },
};
