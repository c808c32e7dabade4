/** What is taken of sun, rain and cavities where a cladding that stores rain is heated by the sun. */
import type { CodeSource } from '../../vapor/data/code-source.js';
import { standard, type Figure } from './air.js';

const PRACTICE: CodeSource['provenance'] = 'common practice, no source';

/** Sun on a wall that faces it, mean of the sunny hours of a clear summer day, W/m2. */
export const SUNNY_IRRADIANCE: Figure = {
  value: 430,
  source: standard('ASHRAE Handbook Fundamentals, clear-sky irradiance of east and west walls', 'from memory, confirm'),
};
/** Share of sunlight that brick, stone and darker renders take up. */
export const ABSORPTANCE: Figure = {
  value: 0.7,
  source: standard('ASHRAE Handbook Fundamentals, solar absorptance of brick', 'from memory, confirm'),
};
/** Hours of such sun in a day. */
export const SUNNY_HOURS: Figure = {
  value: 6,
  source: { basis: 'practice', citation: 'sunny hours of one face of a building', provenance: PRACTICE },
};
/** Relative humidity at the back of a cladding that rain has soaked. */
export const SOAKED: Figure = {
  value: 1,
  source: { basis: 'practice', citation: 'cladding just soaked by rain, the worst case', provenance: PRACTICE },
};
/** Share of the vapor pressure of the cladding that gets past a vented cavity; all of it past one that is not. */
export const PAST_VENTED_CAVITY: Figure = {
  value: 0.3,
  source: { basis: 'practice', citation: 'seven tenths washed out by a vented cavity', provenance: PRACTICE },
};

/** Claddings that take up rain and give it back, by words of their names. */
export const RESERVOIRS = {
  words: ['brick', 'stucco', 'cement plaster', 'render', 'stone', 'masonry', 'block', 'fiber cement', 'adhered veneer'],
  source: {
    basis: 'practice',
    citation: 'claddings that store rain: brick, stucco, stone, masonry, fiber cement',
    provenance: PRACTICE,
  } satisfies CodeSource,
} as const;
