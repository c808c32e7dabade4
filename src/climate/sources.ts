/**
 * Where the climate data comes from. Same shape as the source of a result, so that a rule hands it on as it stands;
 * declared here because the data lies below the engine.
 */
export interface ClimateSource {
  readonly basis: 'code' | 'guide' | 'practice';
  readonly citation: string;
  readonly provenance: 'seen at second hand' | 'from memory, confirm' | 'common practice, no source' | 'computed';
  readonly url?: string;
}

/** The county table of an edition of the energy code. */
export function countyTable(year: 2015 | 2021): ClimateSource {
  return {
    basis: 'code',
    citation: `county climate zones of IECC ${year}, after PNNL-33270`,
    provenance: 'seen at second hand',
    url: 'https://doi.org/10.2172/1893981',
  };
}

/** Typical years of US weather stations. */
export const TYPICAL_YEARS: ClimateSource = {
  basis: 'guide',
  citation: "typical meteorological years (TMY3), user's manual NREL/TP-581-43156",
  provenance: 'seen at second hand',
};

/** Printed with every climate taken from a typical year. */
export const TYPICAL_YEAR_CAUTION =
  'A typical year joins months of different years; it is no 30-year mean and holds no margin for design.';

/**
 * First code edition that takes the county table of 2021. Every edition before it takes the table of 2015.
 *
 * From memory, confirm: the table of 2015 also stands for 2009, 2012 and 2018, and that of 2021 for later editions.
 */
export const FIRST_EDITION_OF_2021_TABLE = 2021;
