/** The climate zone of a place: as declared, else that of its county, else that of its weather station. */
import { countyText, findCounty, type County, type NotFound } from './counties.js';
import { OTHER_ZONE_2015 } from './disputed.js';
import { countyTable, FIRST_EDITION_OF_2021_TABLE, type ClimateSource } from './sources.js';
import { findStation, stationText, type Station } from './stations.js';

/** A place as a project states it. */
export interface PlaceText {
  readonly zone?: string | undefined;
  readonly county?: string | undefined;
  readonly state?: string | undefined;
  readonly station?: string | undefined;
}

interface Found {
  /** `5A`, `4C`, `7` */
  readonly zone: string;
  readonly from: 'declared' | 'county' | 'station';
  /** For printing: `zone of Cook, Illinois, in the county table of 2021`. */
  readonly text: string;
  readonly sources: readonly ClimateSource[];
  /** Set where the county tables of 2015 and 2021 differ. */
  readonly differs?: { readonly upTo2018: string; readonly from2021: string };
  /** The zone in another published table that contradicts this one. */
  readonly otherTable?: string;
}
export interface KnownZone extends Found {
  readonly kind: 'known';
}
/** Zone 4 without its letter: marine 4 (4C) has rules of its own. */
export interface UnknownMarine extends Found {
  readonly kind: 'unknown marine';
  readonly missing: readonly string[];
}
export interface UnknownZone {
  readonly kind: 'unknown';
  /** A clause without capital and full stop. */
  readonly reason: string;
  readonly missing: readonly string[];
}
export type ZoneAnswer = KnownZone | UnknownMarine | UnknownZone;

/** Digit and letter of a zone as written; `undefined` when it is none. Zones 7 and 8 have no letter in the tables. */
export function zoneParts(written: string): { readonly digit: string; readonly letter: string } | undefined {
  const [, digit, letter] = /^\s*([1-8])\s*([ABC]?)\s*$/i.exec(written) ?? [];
  if (digit === undefined || letter === undefined) return undefined;
  return { digit, letter: Number(digit) >= 7 ? '' : letter.toUpperCase() };
}

/** True when neither contradicts the other: `5` and `5A` agree, `7A` and `7` too. */
export function zonesAgree(a: string, b: string): boolean {
  const [x, y] = [zoneParts(a), zoneParts(b)];
  if (x === undefined || y === undefined || x.digit !== y.digit) return false;
  return x.letter === '' || y.letter === '' || x.letter === y.letter;
}

/** Year of the county table that a code edition takes. */
export function tableYear(edition: number): 2015 | 2021 {
  return edition >= FIRST_EDITION_OF_2021_TABLE ? 2021 : 2015;
}

/**
 * @param place as the project states it; county goes before station
 * @param edition year of the code edition; without it a place whose zone changed in 2021 stays open
 */
export function zoneOfPlace(place: PlaceText, edition?: number): ZoneAnswer {
  if (place.zone === undefined) return zoneFromTables(place, edition);
  const parts = zoneParts(place.zone);
  if (parts === undefined)
    return {
      kind: 'unknown',
      reason: `"${place.zone}" is no climate zone; expected a digit from 1 to 8 with A, B or C, such as 5A`,
      missing: ['project.place.zone'],
    };
  if (parts.letter === '' && Number(parts.digit) < 7) {
    // The county may say the letter that the author left out; it never overrules what is declared.
    const told = zoneFromTables(place, edition);
    if (told.kind === 'known' && zonesAgree(place.zone, told.zone))
      return { ...told, text: `zone ${parts.digit} as declared, with the letter of the ${told.text}` };
  }
  return withMarine({ zone: place.zone.trim(), from: 'declared', text: 'zone declared in the project', sources: [] });
}

/** The zone that follows from county or station alone, whatever is declared. */
export function zoneFromTables(place: PlaceText, edition?: number): ZoneAnswer {
  if (place.county !== undefined) {
    const search = findCounty(place.county, place.state);
    return search.kind === 'found' ? zoneOfCounties(search.counties, edition) : unknownPlace(search);
  }
  if (place.station !== undefined) {
    const search = findStation(place.station, place.state);
    return search.kind === 'found' ? zoneOfStation(search.station, edition) : unknownPlace(search);
  }
  return {
    kind: 'unknown',
    reason: 'neither climate zone nor county is stated',
    missing: ['project.place.zone'],
  };
}

function unknownPlace({ reason, missing }: NotFound): UnknownZone {
  return { kind: 'unknown', reason, missing };
}

/** Counties of one name in one state: the six pairs of county and city there are have the same zones. */
function zoneOfCounties(counties: readonly [County, ...County[]], edition: number | undefined): ZoneAnswer {
  const [first] = counties;
  if (counties.some((c) => c.zone2015 !== first.zone2015 || c.zone2021 !== first.zone2021))
    return {
      kind: 'unknown',
      reason: `${first.name}, ${first.stateName}, is a county and a city in different zones; write which`,
      missing: ['project.place.county'],
    };
  const other = OTHER_ZONE_2015.get(first.fips);
  const name = counties.length > 1 ? `${first.name}, ${first.stateName}` : countyText(first);
  const answer = zoneOfEdition(name, 'county', first, edition);
  const takesTableOf2015 = edition === undefined || tableYear(edition) === 2015;
  return other === undefined || answer.kind === 'unknown' || !takesTableOf2015
    ? answer
    : {
        ...answer,
        otherTable: other,
        text: `${answer.text}; another published county table has ${other}: confirm in the code`,
      };
}

function zoneOfStation(station: Station, edition: number | undefined): ZoneAnswer {
  return zoneOfEdition(`the weather station ${stationText(station)}`, 'station', station, edition);
}

function zoneOfEdition(
  name: string,
  from: 'county' | 'station',
  { zone2015, zone2021 }: Pick<County, 'zone2015' | 'zone2021'>,
  edition: number | undefined,
): ZoneAnswer {
  if (zone2015 === undefined || zone2021 === undefined)
    return {
      kind: 'unknown',
      reason: `the county table has no zone for ${name}`,
      missing: ['project.place.zone'],
    };
  const same = zone2015 === zone2021;
  if (!same && edition === undefined)
    return {
      kind: 'unknown',
      reason: `${name} is in zone ${zone2015} for code editions up to 2018 and in ${zone2021} from 2021`,
      missing: ['project.code'],
    };
  const year = edition === undefined ? 2021 : tableYear(edition);
  return withMarine({
    zone: year === 2015 ? zone2015 : zone2021,
    from,
    text: `zone of ${name}, in the county table of ${same && edition === undefined ? '2015 and 2021' : year}`,
    sources: same && edition === undefined ? [countyTable(2021), countyTable(2015)] : [countyTable(year)],
    ...(same ? {} : { differs: { upTo2018: zone2015, from2021: zone2021 } }),
  });
}

function withMarine(found: Found): KnownZone | UnknownMarine {
  return zoneParts(found.zone)?.digit === '4' && zoneParts(found.zone)?.letter === ''
    ? { ...found, kind: 'unknown marine', missing: ['project.place.zone'] }
    : { ...found, kind: 'known' };
}
