/** Clauses that several rules rest on, each with the code it stands in: a project is cited its own. */
import type { Source } from './result.js';

/** The wall has a means of draining water to the exterior. */
export const DRAINS: readonly Source[] = [
  {
    basis: 'code',
    citation: 'IBC weather protection, means of draining water to the exterior (1403.2, now 1402.2)',
    provenance: 'seen',
    url: 'http://www.ibc-wiki.com/section-1403/',
    codes: ['IBC'],
  },
  {
    basis: 'code',
    citation: 'IRC R703.1.1, means of draining water to the exterior',
    provenance: 'from memory, confirm',
    codes: ['IRC'],
  },
];

/** Joints, openings and changes of material in the air barrier are sealed. */
export const AIR_SEALED: readonly Source[] = [
  {
    basis: 'code',
    citation: 'IECC C402.5, joints, openings and changes of material sealed',
    provenance: 'seen',
    url: 'https://up.codes/s/air-leakage-thermal-envelope-mandatory',
    codes: ['IBC'],
  },
  {
    basis: 'code',
    citation: 'IECC R402.4 (IRC N1102.4), air barrier and air sealing of houses',
    provenance: 'from memory, confirm',
    codes: ['IRC'],
  },
];

/** A lap of the water-resistive barrier sheds water; openings are flashed into it. */
export const BARRIER_LAPS: readonly Source[] = [
  {
    basis: 'code',
    citation: 'IRC R703.2',
    provenance: 'seen',
    url: 'https://up.codes/s/water-resistive-barrier',
    codes: ['IRC'],
  },
  {
    basis: 'code',
    citation: 'IBC 1403.2, water-resistive barrier (1404.2 before 2018)',
    provenance: 'from memory, confirm',
    codes: ['IBC'],
  },
];

/** Openings are flashed. */
export const OPENINGS_FLASHED: readonly Source[] = [
  {
    basis: 'code',
    citation: 'IBC flashing section (1405.4 in 2015, 1404.4 in 2018)',
    provenance: 'seen at second hand',
    url: 'https://wconline.com/articles/print/92643-managing-sill-pan-flashings-and-the-flow-of-water',
    codes: ['IBC'],
  },
  {
    basis: 'code',
    citation: 'IRC R703.4.1',
    provenance: 'seen at second hand',
    url: 'http://finehomebuilding.com/2011/09/30/2012-irc-codifies-window-and-door-pan-flashings',
    codes: ['IRC'],
  },
];

/** A change to the Canadian code, proposed and not adopted. */
export const CANADA_SILLS: Source = {
  basis: 'guide',
  citation: 'Canadian Board for Harmonized Construction Codes, proposed change 1950 on rough-opening sills',
  provenance: 'seen',
  url: 'https://cbhcc-cchcc.ca/eng/public-review/2024_3/pcfs/nbc20_divb_09.07.06.01._001950.html',
  codes: ['NBC'],
};

/** Flashing, weeps and cavities of brick veneer. */
export const BRICK_FLASHING: Source = {
  basis: 'guide',
  citation: 'BIA Technical Note 28B',
  provenance: 'seen at second hand',
};

/** A clause of the code for houses, where the project builds by another code or names none: a guide, and said to be. */
export function housesAsGuide(clause: Source): Source {
  return {
    ...clause,
    basis: 'guide',
    citation: `${clause.citation}, for houses, taken as a guide`,
    codes: ['IRC', 'IBC'],
  };
}
