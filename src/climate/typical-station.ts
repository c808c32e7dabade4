/** The station that stands for a climate zone where no place is stated. */
import { allStations, monthsOf, type Station } from './stations.js';
import { zoneParts } from './zone.js';

/** How it is chosen, for printing. */
export const TYPICAL_STATION_RULE =
  'the station of the zone whose monthly temperatures and vapor pressures lie nearest to the medians of all stations of the zone';

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] as number;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] as number) + upper) / 2;
}

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

/** For each station its distance to the medians over the year, in mean distances, so that units do not matter. */
function distances(series: readonly (readonly number[])[]): number[] {
  const medians = (series[0] ?? []).map((_, i) => median(series.map((values) => values[i] as number)));
  const each = series.map((values) => mean(values.map((v, i) => Math.abs(v - (medians[i] as number)))));
  const scale = mean(each);
  return each.map((d) => (scale === 0 ? 0 : d / scale));
}

/**
 * A typical station of a zone, which is no design climate: half of the zone is colder or more humid. The choice is a
 * convention of this program and rests on no published rule.
 *
 * @param zone `5A`; with its letter where the zone has one
 * @param year which county table sorts the stations into zones
 * @returns `undefined` when no station stands in the zone, or the letter is missing
 */
export function typicalStation(zone: string, year: 2015 | 2021): Station | undefined {
  const parts = zoneParts(zone);
  if (parts === undefined) return undefined;
  const name = `${parts.digit}${parts.letter}`;
  const stations = allStations().filter((s) => (year === 2015 ? s.zone2015 : s.zone2021) === name);
  const byTemperature = distances(stations.map((s) => monthsOf(s).map((m) => m.meanTemperatureC)));
  const byPressure = distances(stations.map((s) => monthsOf(s).map((m) => m.vaporPressurePa)));
  let best: Station | undefined;
  let least = Infinity;
  stations.forEach((station, i) => {
    const distance = (byTemperature[i] as number) + (byPressure[i] as number);
    if (distance < least) [best, least] = [station, distance];
  });
  return best;
}
