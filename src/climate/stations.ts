/** Weather stations of the United States: where they stand, their twelve months, and finding one by name. */
import { stateCode, type NotFound } from './counties.js';
import { once, readTable } from './data-file.js';
import { foldedName, foldedWords, listed } from './names.js';
import { nearest } from '../model/nearest.js';
import { remembered } from '../model/remembered.js';

export const STATION_FILE = 'us-stations.txt';

export interface Station {
  /** Six digits. */
  readonly id: string;
  /** As the source spells it, in capitals. */
  readonly name: string;
  readonly stateCode: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly elevationM: number;
  /** County that it stands in, or the nearest one of a station on the coast. */
  readonly countyFips: string;
  readonly zone2015?: string;
  readonly zone2021?: string;
}

/** Means of one month of a typical year. */
export interface ClimateMonth {
  /** 1 to 12. */
  readonly month: number;
  readonly meanTemperatureC: number;
  /** Over liquid water, never above saturation at the mean temperature. */
  readonly vaporPressurePa: number;
  /** True where the source's vapor pressure was above saturation and was held to it. */
  readonly heldToSaturation: boolean;
  readonly relativeHumidityPercent: number;
}

interface StationRow {
  readonly station: Station;
  /** Twelve each, as the table has them. */
  readonly temperatures: string;
  readonly pressures: string;
  readonly humidities: string;
}

function rowOf(fields: readonly string[]): StationRow {
  const [id = '', name = '', state = '', latitude, longitude, elevation, countyFips = ''] = fields;
  const [zone2015 = '', zone2021 = '', temperatures = '', pressures = '', humidities = ''] = fields.slice(7);
  const station: Station = {
    id,
    name,
    stateCode: state,
    latitudeDeg: Number(latitude),
    longitudeDeg: Number(longitude),
    elevationM: Number(elevation),
    countyFips,
    ...(zone2015 === '' ? {} : { zone2015 }),
    ...(zone2021 === '' ? {} : { zone2021 }),
  };
  return { station, temperatures, pressures, humidities };
}

const rows = once(() => new Map(readTable(STATION_FILE).map((fields) => [fields[0] as string, rowOf(fields)])));
const stations = once((): readonly Station[] => [...rows().values()].map((row) => row.station));

/** Every station, in the order of the source. */
export function allStations(): readonly Station[] {
  return stations();
}

/** January to December at a station of the table. */
export const monthsOf = remembered((station: Station): readonly ClimateMonth[] => {
  const row = rows().get(station.id);
  if (row === undefined) throw new Error(`found weather station "${station.id}", expected one of the table`);
  const pressures = row.pressures.split(' ');
  const humidities = row.humidities.split(' ');
  return row.temperatures.split(' ').map((temperature, i) => ({
    month: i + 1,
    meanTemperatureC: Number(temperature),
    vaporPressurePa: Number.parseFloat(pressures[i] as string),
    heldToSaturation: (pressures[i] as string).endsWith('*'),
    relativeHumidityPercent: Number(humidities[i]),
  }));
});

/** The station of a six-digit number. */
export function stationOfId(id: string): Station | undefined {
  return rows().get(id)?.station;
}

/** `CHICAGO OHARE INTL AP, IL (725300)` */
export function stationText(station: Station): string {
  return `${station.name}, ${station.stateCode} (${station.id})`;
}

export type StationSearch = { readonly kind: 'found'; readonly station: Station } | NotFound;

/**
 * The station of a number, of a name, or of words that only one name holds (`Chicago O'Hare`).
 *
 * @param state tells stations apart whose names hold the same words; a station beyond the border may be named too
 */
export function findStation(written: string, state?: string): StationSearch {
  const station = stationOfId(written.trim()) ?? stations().find((s) => foldedName(s.name) === foldedName(written));
  if (station !== undefined) return { kind: 'found', station };
  const words = foldedWords(written);
  const holding = words.length === 0 ? [] : stations().filter((s) => holdsAll(foldedWords(s.name), words));
  const code = state === undefined ? undefined : stateCode(state);
  const there = holding.filter((s) => s.stateCode === code);
  const left = there.length > 0 ? there : holding;
  if (left.length === 1) return { kind: 'found', station: left[0] as Station };
  if (left.length > 1)
    return {
      kind: 'not found',
      reason: `"${written}" fits several weather stations: ${listed(left.map(stationText), 4)}`,
      missing: ['project.place.station'],
    };
  const suggestion = nearest(
    written,
    stations().map((s) => s.name),
  );
  return {
    kind: 'not found',
    reason: `"${written}" is no weather station of the table${suggestion === undefined ? '' : `; was "${suggestion}" meant?`}`,
    missing: ['project.place.station'],
    ...(suggestion === undefined ? {} : { suggestion }),
  };
}

function holdsAll(held: readonly string[], words: readonly string[]): boolean {
  return words.every((word) => held.includes(word));
}
