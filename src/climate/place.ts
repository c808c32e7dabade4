/** From a place to its climate: the zone of the code, and twelve months of outdoor air. */
import { countyText, findCounty, type County, type NotFound } from './counties.js';
import { TYPICAL_YEAR_CAUTION, TYPICAL_YEARS, type ClimateSource } from './sources.js';
import { findStation, monthsOf, stationOfId, stationText, type ClimateMonth, type Station } from './stations.js';
import { TYPICAL_STATION_RULE, typicalStation } from './typical-station.js';
import { tableYear, zoneOfPlace, zoneParts, type PlaceText, type ZoneAnswer } from './zone.js';

export interface KnownMonths {
  readonly kind: 'known';
  readonly station: Station;
  /** What led to the station. */
  readonly from: 'station' | 'county' | 'zone';
  /** From the middle of the county, where the county led to it. */
  readonly distanceKm?: number;
  /** January to December. */
  readonly months: readonly ClimateMonth[];
  /** Sentences that say where the figures come from and what they are not; to be printed with them. */
  readonly text: readonly string[];
  readonly sources: readonly ClimateSource[];
}
export interface UnknownMonths {
  readonly kind: 'unknown';
  /** A clause without capital and full stop. */
  readonly reason: string;
  readonly missing: readonly string[];
}
export interface PlaceClimate {
  readonly zone: ZoneAnswer;
  readonly monthly: KnownMonths | UnknownMonths;
}

/**
 * Zone and monthly climate of a place.
 *
 * @param place as the project states it
 * @param edition year of the code edition: up to 2018 the county table of 2015 holds, from 2021 that of 2021
 */
export function climateOf(place: PlaceText, edition?: number): PlaceClimate {
  return { zone: zoneOfPlace(place, edition), monthly: monthlyClimate(place, edition) };
}

/**
 * Outdoor months of a place: of the station it names, else of the station nearest to its county, else of a typical
 * station of its zone. A name that cannot be found is not passed over for the next.
 */
export function monthlyClimate(place: PlaceText, edition?: number): KnownMonths | UnknownMonths {
  if (place.station !== undefined) {
    const search = findStation(place.station, place.state);
    return search.kind === 'found'
      ? known(search.station, 'station', [`Weather station ${stationText(search.station)}, as the project names it.`])
      : unknown(search);
  }
  if (place.county !== undefined) {
    const search = findCounty(place.county, place.state);
    return search.kind === 'found' ? nearestToCounty(search.counties) : unknown(search);
  }
  return typicalOfZone(place, edition);
}

function unknown({ reason, missing }: NotFound): UnknownMonths {
  return { kind: 'unknown', reason, missing };
}

function known(
  station: Station,
  from: KnownMonths['from'],
  text: readonly string[],
  sources: readonly ClimateSource[] = [],
): KnownMonths {
  const months = monthsOf(station);
  const held = months.filter((m) => m.heldToSaturation).length;
  const cut =
    held === 0
      ? []
      : [
          `In ${held} ${held === 1 ? 'month' : 'months'} the vapor pressure of the source lies above saturation at the mean temperature and is held to it.`,
        ];
  return {
    kind: 'known',
    station,
    from,
    months,
    text: [...text, `Source: ${TYPICAL_YEARS.citation}.`, TYPICAL_YEAR_CAUTION, ...cut],
    sources: [TYPICAL_YEARS, ...sources],
  };
}

function nearestToCounty(counties: readonly [County, ...County[]]): KnownMonths | UnknownMonths {
  const [county] = counties;
  if (counties.some((c) => c.station?.id !== county.station?.id))
    return {
      kind: 'unknown',
      reason: `${county.name}, ${county.stateName}, is a county and a city with different weather stations; write "${county.name} County" or "${county.name} city"`,
      missing: ['project.place.county'],
    };
  const station = county.station === undefined ? undefined : stationOfId(county.station.id);
  if (county.station === undefined || station === undefined)
    return {
      kind: 'unknown',
      reason: `the county table has no weather station for ${countyText(county)}`,
      missing: ['project.place.station'],
    };
  const { distanceKm } = county.station;
  const kin =
    station.zone2021 === county.zone2021
      ? `in the same zone of 2021 (${station.zone2021 ?? ''})`
      : `in zone ${station.zone2021 ?? 'unknown'} of 2021 while the county is in ${county.zone2021 ?? 'unknown'}`;
  const text = `Weather station ${stationText(station)}, the nearest to ${countyText(county)}, ${kin}, ${distanceKm} km from its middle.`;
  return { ...known(station, 'county', [text]), distanceKm };
}

function typicalOfZone(place: PlaceText, edition: number | undefined): KnownMonths | UnknownMonths {
  const parts = place.zone === undefined ? undefined : zoneParts(place.zone);
  if (place.zone === undefined || parts === undefined)
    return {
      kind: 'unknown',
      reason: 'neither weather station, county nor climate zone is stated',
      missing: ['project.place.county', 'project.place.station'],
    };
  const year = edition === undefined ? 2021 : tableYear(edition);
  const station = typicalStation(place.zone, year);
  if (station === undefined)
    return {
      kind: 'unknown',
      reason:
        parts.letter === '' && Number(parts.digit) < 7
          ? `zone ${parts.digit} stands without its letter, and no county or weather station is stated`
          : `no weather station of the table stands in zone ${parts.digit}${parts.letter}`,
      missing: ['project.place.county', 'project.place.station'],
    };
  const chosen: ClimateSource = { basis: 'practice', citation: TYPICAL_STATION_RULE, provenance: 'computed' };
  return known(
    station,
    'zone',
    [
      `Weather station ${stationText(station)} stands for zone ${place.zone.trim()}: no place is stated, and it is ${TYPICAL_STATION_RULE} (zones of ${year}; a convention of this program, no published rule).`,
      'Half of the zone is colder or more humid; state the county for its own climate.',
    ],
    [chosen],
  );
}
