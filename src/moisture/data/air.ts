/** Figures of moist air and of vapor diffusion, each with where it comes from. */
import type { CodeSource } from '../../vapor/data/code-source.js';

export interface Figure {
  readonly value: number;
  readonly source: CodeSource;
}

/** A clause of a standard with how it is known. */
export function standard(citation: string, provenance: CodeSource['provenance']): CodeSource {
  return { basis: 'standard', citation, provenance };
}

const MEMORY = 'from memory, confirm';

/** Vapor permeability of still air, kg/(m s Pa); one round figure for all temperatures, as the standards take it. */
export const STILL_AIR_KG_PER_M_S_PA: Figure = {
  value: 2e-10,
  source: standard('ISO 13788:2012; the worked examples of DIN 4108-3 rest on the same figure', 'seen at second hand'),
};

/** Gas constant of water vapor, J/(kg K). */
export const VAPOR_GAS_CONSTANT: Figure = {
  value: 461.5,
  source: standard('Thermodynamic constant; ISO 13788 prints 462', MEMORY),
};

/** Molar mass of water over that of dry air. */
export const MASS_RATIO: Figure = {
  value: 0.621945,
  source: standard(
    'ASHRAE Handbook Fundamentals, chapter 1, equation 20, as a library quotes it',
    'seen at second hand',
  ),
};

/** Air pressure at sea level, Pa. */
export const SEA_LEVEL_PA: Figure = {
  value: 101325,
  source: standard('Standard atmosphere; ASHRAE Handbook Fundamentals, chapter 1, equation 3', MEMORY),
};

/** Layers are cut into slices of at most this resistance, m2 K/W, before saturation pressures are compared. */
export const SLICE_M2KW: Figure = { value: 0.25, source: standard('ISO 13788:2012, subdivision of layers', MEMORY) };

/** Equivalent air layer of an unventilated air space whatever its width, m. */
export const AIR_SPACE_SD_M: Figure = { value: 0.01, source: standard('ISO 13788:2012, air layers', MEMORY) };

/** Vapor resistance factor for a material that lets no vapor through: finite, so that a balance exists. */
export const TIGHT_MU: Figure = { value: 100_000, source: standard('ISO 13788:2012, impermeable layers', MEMORY) };

/** Equivalent air layer for a sheet that lets no vapor through and whose thickness is not given, m. */
export const TIGHT_SD_M: Figure = {
  value: 1500,
  source: standard('German practice for vapor-tight layers such as cellular glass', MEMORY),
};

/** Surface resistance toward a well ventilated cavity, m2 K/W, in place of that toward the open air. */
export const CAVITY_SURFACE_M2KW: Figure = {
  value: 0.13,
  source: standard('ISO 6946, well ventilated air layers: as the resistance of an interior surface', MEMORY),
};

/** Days of each month, January first; the method takes no leap year. */
export const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
export const SECONDS_PER_DAY = 86_400;
