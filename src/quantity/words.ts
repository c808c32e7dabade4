/** How messages speak of each dimension. */
import type { Dimension } from './types.js';

/** What an author of this dimension might write; shown in messages. */
export const EXAMPLES: Readonly<Record<Dimension, string>> = {
  length: '5-1/2 in',
  area: '120 ft2',
  film: '12-15 mil',
  slope: '1/4 in per ft',
  permeance: '0.1 perm',
  permeability: '1.5 perm-in',
  thermalResistance: 'R-13',
  pressure: '30 psf',
  temperature: '40 degF',
  temperatureDifference: '10 K',
  time: '2 h',
  volume: '5 gal',
  movement: '25 %',
  airLeakage: '0.004 cfm/ft2',
  fraction: '55 %',
  coverage: '50 ft2/gal',
};

/** The dimension in plain words. */
export const DIMENSION_WORDS: Readonly<Record<Dimension, string>> = {
  length: 'length',
  area: 'area',
  film: 'film thickness',
  slope: 'slope',
  permeance: 'permeance',
  permeability: 'permeability',
  thermalResistance: 'thermal resistance',
  pressure: 'pressure',
  temperature: 'temperature',
  temperatureDifference: 'temperature difference',
  time: 'time',
  volume: 'volume',
  movement: 'joint movement',
  airLeakage: 'air leakage',
  fraction: 'fraction',
  coverage: 'coverage',
};
