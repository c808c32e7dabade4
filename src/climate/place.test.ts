/** Twelve months of outdoor air for a place, and where they come from. */
import { describe, expect, it } from 'vitest';
import { climateOf, monthlyClimate } from './place.js';
import { allStations, monthsOf, type Station } from './stations.js';
import { typicalStation } from './typical-station.js';

describe('the months of a county', () => {
  it('are those of its nearest station, with the distance', () => {
    // Source line of nearest stations: Dallas, TX to 722583 DALLAS LOVE FIELD, 11.5 km.
    const found = monthlyClimate({ county: 'Dallas', state: 'TX' }, 2021);
    expect(found).toMatchObject({ kind: 'known', from: 'county', distanceKm: 11.5, station: { id: '722583' } });
    expect(found.kind === 'known' && found.text[0]).toBe(
      'Weather station DALLAS LOVE FIELD, TX (722583), the nearest to Dallas, Texas, in the same zone of 2021 (2A), 11.5 km from its middle.',
    );
  });
  it('need no edition, though the zone does', () => {
    const found = climateOf({ county: 'Dallas', state: 'TX' });
    expect([found.zone.kind, found.monthly.kind]).toEqual(['unknown', 'known']);
  });
  it('say so where the station stands in another zone', () => {
    // Source lines: county 06051 Mono, CA, zone 6B, to 724800 BISHOP AIRPORT, 79.1 km, not in the same zone; that
    // station stands in 06027 Inyo, zone 4B.
    const found = monthlyClimate({ county: 'Mono', state: 'CA' });
    expect(found.kind === 'known' && found.text[0]).toContain('in zone 4B of 2021 while the county is in 6B, 79.1 km');
  });
  it('are open for a county that has none, whatever its zone', () => {
    expect(monthlyClimate({ zone: '8', county: 'Kusilvak', state: 'AK' })).toMatchObject({
      kind: 'unknown',
      missing: ['project.place.station'],
    });
  });
  it('are open for a misspelled county, though the zone is declared', () => {
    expect(monthlyClimate({ zone: '6A', county: 'Henepin', state: 'MN' })).toMatchObject({
      kind: 'unknown',
      missing: ['project.place.county'],
    });
  });
  it('are open where a county and a city of the name have different stations', () => {
    expect(monthlyClimate({ county: 'Franklin', state: 'VA' })).toMatchObject({
      kind: 'unknown',
      missing: ['project.place.county'],
    });
    expect(monthlyClimate({ county: 'Franklin city', state: 'VA' })).toMatchObject({ kind: 'known' });
  });
});

describe('the months of a named station', () => {
  it('go before those of the county', () => {
    expect(monthlyClimate({ county: 'Cook', state: 'IL', station: 'Chicago Midway' })).toMatchObject({
      from: 'station',
      station: { id: '725340' },
    });
  });
  it('are open where the station is not found, though the county is known', () => {
    expect(monthlyClimate({ county: 'Cook', state: 'IL', station: 'nearest airport station' })).toMatchObject({
      kind: 'unknown',
      missing: ['project.place.station'],
    });
  });
  it('carry their source, the caution about typical years, and what was held to saturation', () => {
    const found = monthlyClimate({ station: '702610' });
    const text = found.kind === 'known' ? found.text.join(' ') : '';
    for (const words of ['TMY3', 'NREL/TP-581-43156', 'no margin for design', 'held to it'])
      expect(text).toContain(words);
    const warm = monthlyClimate({ station: '722020' });
    expect(warm.kind === 'known' && warm.text.join(' ')).not.toContain('held to it');
  });
});

/** The rule of choice, written again: sum of mean distances to the medians, each in its own mean. */
function chosenByHand(zone: string, year: 2015 | 2021): Station | undefined {
  const stations = allStations().filter((s) => s[`zone${year}`] === zone);
  const scores = stations.map(() => 0);
  for (const key of ['meanTemperatureC', 'vaporPressurePa'] as const) {
    const total = stations.map(() => 0);
    for (let month = 0; month < 12; month++) {
      const values = stations.map((s) => monthsOf(s)[month]![key]);
      const sorted = values.toSorted((a, b) => a - b);
      const n = sorted.length;
      const median = (sorted[Math.ceil(n / 2) - 1]! + sorted[Math.floor(n / 2)]!) / 2;
      values.forEach((v, i) => (total[i] = total[i]! + Math.abs(v - median)));
    }
    const all = total.reduce((a, b) => a + b, 0) / total.length;
    total.forEach((t, i) => (scores[i] = scores[i]! + t / all));
  }
  return stations[scores.indexOf(Math.min(...scores))];
}

describe('the months of a zone without a place', () => {
  it.each(['1A', '2A', '2B', '3A', '3B', '3C', '4A', '4B', '4C', '5A', '5B', '5C', '6A', '6B', '7', '8'])(
    'are those of the station nearest to the medians of zone %s',
    (zone) => {
      const station = typicalStation(zone, 2021);
      expect(station?.zone2021).toBe(zone);
      expect(station).toBe(chosenByHand(zone, 2021));
    },
  );
  it('follow the table of the edition', () => {
    expect(typicalStation('8', 2015)).toBe(chosenByHand('8', 2015));
    // 5C came with the table of 2021.
    expect([typicalStation('5C', 2015), monthlyClimate({ zone: '5C' }, 2018).kind]).toEqual([undefined, 'unknown']);
    expect(monthlyClimate({ zone: '5C' }, 2021).kind).toBe('known');
  });
  it('say how the station was chosen and that half of the zone is more severe', () => {
    const found = monthlyClimate({ zone: '6A' }, 2021);
    const text = found.kind === 'known' ? found.text.join(' ') : '';
    expect(text).toContain('nearest to the medians');
    expect(text).toContain('no published rule');
    expect(text).toContain('Half of the zone is colder or more humid');
    expect(found).toMatchObject({ from: 'zone', sources: [{}, { basis: 'practice', provenance: 'computed' }] });
  });
  it.each([['4'], ['5'], ['1B'], ['9']])('are open for zone %s', (zone) => {
    expect(monthlyClimate({ zone }).kind).toBe('unknown');
  });
  it('take zone 7A for zone 7, which has no letter', () => {
    expect(typicalStation('7A', 2021)).toBe(typicalStation('7', 2021));
  });
  it('are open where nothing is stated', () => {
    expect(monthlyClimate({ state: 'IL' })).toMatchObject({ kind: 'unknown' });
  });
});
