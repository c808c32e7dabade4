/**
 * Where a figure of the vapor tables comes from. Same shape as the source of a result, so that a rule hands it on
 * as it stands; declared here because the tables lie below the engine.
 */
export interface CodeSource {
  readonly basis: 'code' | 'standard' | 'guide' | 'practice' | 'physics';
  readonly citation: string;
  readonly provenance:
    'seen' | 'seen at second hand' | 'from memory, confirm' | 'common practice, no source' | 'computed';
  readonly url?: string;
}

export type CodeTitle = 'IRC' | 'IBC' | 'NBC';

/** A public page of a national laboratory that prints the classes and the zone 1 row of the 2021 tables. */
const LABORATORY = 'https://basc.pnnl.gov/building-assemblies/1a';

/** The cited clause, recalled and not re-read: a breach of it is a warning at most. */
export function fromMemory(citation: string): CodeSource {
  return { basis: 'code', citation, provenance: 'from memory, confirm' };
}

/** The cited clause, read in what others made of it: a digest of a code that takes it over, an article, a course. */
export function atSecondHand(citation: string, url?: string): CodeSource {
  return { basis: 'code', citation, provenance: 'seen at second hand', ...(url === undefined ? {} : { url }) };
}

/** The cited clause, read in a public extract. */
export function seen(citation: string, url: string = LABORATORY): CodeSource {
  return { basis: 'code', citation, provenance: 'seen', url };
}
