/** What no check of heat and vapor looks at, told wherever a correction may move insulation or a cavity outside. */

/** @see NFPA 285 is the fire test of walls with foam plastic or combustible parts; which wall needs it, the code says */
export const OUTSIDE_CAUTION =
  'Insulation and cavities outside the sheathing bear on fire safety (foam plastic, NFPA 285, fire-blocking) and on the ' +
  'attachment of the cladding; neither is checked here.';
