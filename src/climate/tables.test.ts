/** The trimmed tables against what is known of their source: counts, gaps, budgets, and rows quoted from it. */
import { readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { allCounties, COUNTY_FILE, countyText } from './counties.js';
import { OTHER_ZONE_2015 } from './disputed.js';
import { foldedName } from './names.js';
import { allStations, monthsOf, STATION_FILE, stationOfId } from './stations.js';
import { zoneParts } from './zone.js';

const FOLDER = path.resolve(import.meta.dirname, '../../data/climate');

/** Saturation vapor pressure, ISO 13788 formulas (from memory, confirm), written again for the test. */
const saturationPa = (c: number): number =>
  610.5 * Math.exp(c >= 0 ? (17.269 * c) / (237.3 + c) : (21.875 * c) / (265.5 + c));

describe('the files', () => {
  it.each([COUNTY_FILE, STATION_FILE])('%s stays below 400 kB', (name) => {
    expect(statSync(path.join(FOLDER, name)).size).toBeLessThan(400_000);
  });
  it('stand beside a notice of origin and license, which both of them name', () => {
    const notice = readFileSync(path.join(FOLDER, 'NOTICE'), 'utf8');
    for (const name of [COUNTY_FILE, STATION_FILE]) {
      expect(readFileSync(path.join(FOLDER, name), 'utf8').slice(0, 400)).toContain('NOTICE');
      expect(notice).toContain(name);
    }
    for (const words of ['PNNL-33270', '10.2172/1893981', 'NREL/TP-581-43156', 'ISC license'])
      expect(notice).toContain(words);
  });
});

describe('the county table', () => {
  const counties = allCounties();

  // Counts published with the source tables.
  it('has 3,220 counties, 3,141 with a zone, 373 of them with another in 2021 than in 2015', () => {
    expect(counties).toHaveLength(3220);
    expect(counties.filter((c) => c.zone2015 !== undefined)).toHaveLength(3141);
    expect(counties.filter((c) => c.zone2021 !== undefined)).toHaveLength(3141);
    expect(counties.filter((c) => c.zone2015 !== c.zone2021)).toHaveLength(373);
  });
  it('leaves the gaps of its source open: Puerto Rico and Kusilvak without a zone, Bristol without a letter', () => {
    const gaps = counties.filter((c) => c.zone2021 === undefined);
    expect(gaps.filter((c) => c.stateCode === 'PR')).toHaveLength(78);
    expect(gaps.filter((c) => c.stateCode !== 'PR').map(countyText)).toEqual(['Kusilvak, Alaska']);
    const withoutLetter = counties.filter((c) => c.zone2021 !== undefined && /^[1-6]$/.test(c.zone2021));
    expect(withoutLetter.map(countyText)).toEqual(['Bristol city, Virginia']);
    expect(withoutLetter[0]?.zone2015).toBe('4');
  });
  it('has zones that are none but those of the code, and no letter in 7 and 8', () => {
    for (const { fips, zone2015 = '4A', zone2021 = '4A' } of counties)
      for (const zone of [zone2015, zone2021]) {
        const parts = zoneParts(zone);
        expect(`${parts?.digit ?? ''}${parts?.letter ?? ''}`, fips).toBe(zone);
      }
  });
  it('gives every county with a zone a station within 300 km, in its own zone but for seven', () => {
    const placed = counties.filter((c) => c.station !== undefined);
    expect(placed).toHaveLength(3141);
    for (const county of placed) {
      expect(stationOfId(county.station!.id), county.fips).toBeDefined();
      expect(county.station!.distanceKm, county.fips).toBeLessThan(300);
    }
    expect(placed.filter((c) => stationOfId(c.station!.id)?.zone2021 !== c.zone2021)).toHaveLength(7);
  });
  it('has two of a name in a state only where a county and a city share it', () => {
    const seen = new Map<string, number>();
    for (const c of counties) {
      const key = `${c.stateCode} ${foldedName(c.name)}`;
      seen.set(key, (seen.get(key) ?? 0) + 1);
    }
    expect([...seen].filter(([, count]) => count > 1).map(([key]) => key)).toEqual([
      'MD baltimore',
      'MO stlouis',
      'VA fairfax',
      'VA franklin',
      'VA richmond',
      'VA roanoke',
    ]);
  });
  it('differs from the other published table in the counties listed, with the zones told of it', () => {
    // The comparison of the two tables names the zone here first, then the zone there.
    const told = [...OTHER_ZONE_2015].map(([fips, other]) => {
      const county = counties.find((c) => c.fips === fips)!;
      return `${countyText(county)}: ${county.zone2015}/${other}`;
    });
    expect(told).toEqual([
      'Alameda, California: 3C/3B',
      'San Benito, California: 3C/3B',
      'LaSalle, Louisiana: 3A/2A',
      'Brown, Texas: 3A/3B',
      'Gillespie, Texas: 3A/3B',
      'Stephens, Texas: 3A/3B',
      'Bristol city, Virginia: 4/4A',
    ]);
  });
});

describe('the station table', () => {
  const stations = allStations();

  it('has 1,020 stations, twelve without a zone', () => {
    expect(stations).toHaveLength(1020);
    const without = stations.filter((s) => s.zone2021 === undefined);
    expect(without).toHaveLength(12);
    expect(new Set(without.map((s) => s.stateCode))).toEqual(new Set(['AK', 'GU', 'PR', 'VI']));
    expect(without.filter((s) => s.stateCode === 'AK').every((s) => s.countyFips === '02158')).toBe(true);
  });
  it('gives a station the zone of its county', () => {
    const zones = new Map(allCounties().map((c) => [c.fips, c]));
    for (const s of stations) {
      expect(s.zone2015, s.id).toBe(zones.get(s.countyFips)?.zone2015);
      expect(s.zone2021, s.id).toBe(zones.get(s.countyFips)?.zone2021);
    }
  });
  it('has twelve months everywhere, of air that exists on earth', () => {
    for (const s of stations) {
      const months = monthsOf(s);
      expect(months.map((m) => m.month)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
      for (const m of months) {
        const told = `${s.name} ${m.month}`;
        expect(Math.abs(m.meanTemperatureC), told).toBeLessThan(45);
        expect(m.relativeHumidityPercent, told).toBeGreaterThan(5);
        expect(m.relativeHumidityPercent, told).toBeLessThanOrEqual(100);
        expect(m.vaporPressurePa, told).toBeGreaterThan(10);
      }
    }
  });
  it('never has more vapor than saturation allows', () => {
    for (const s of stations)
      for (const m of monthsOf(s))
        expect(m.vaporPressurePa, `${s.name} ${m.month}`).toBeLessThanOrEqual(saturationPa(m.meanTemperatureC));
  });
  // Counts published with the source tables: how often their vapor pressure lies above saturation.
  it('holds 306 station-months to saturation, 261 of them in zones 6A, 7 and 8, and touches no other', () => {
    const held = stations.flatMap((s) =>
      monthsOf(s)
        .filter((m) => m.heldToSaturation)
        .map((m) => ({ zone: s.zone2021, short: saturationPa(m.meanTemperatureC) - m.vaporPressurePa })),
    );
    expect(held).toHaveLength(306);
    expect(held.filter(({ zone }) => ['6A', '7', '8'].includes(zone ?? ''))).toHaveLength(261);
    for (const { short } of held) expect(short).toBeLessThanOrEqual(0.1);
  });

  // Lines of the source table of months, as they stand in it (wmo, station, state, latitude, longitude, elevation,
  // zone, month, mean temperature, relative humidity, vapor pressure, ...).
  it.each([
    '722020,MIAMI INTL AP,FL,25.817,-80.3,11.0,1A,1,19.42,70.9,1639.0,1640.9,13.59,9.4,28.9,3.31,145.2,1995,FL-Miami_Intl_Ap.tmy3',
    '722020,MIAMI INTL AP,FL,25.817,-80.3,11.0,1A,8,27.97,75.4,2811.2,2816.5,23.03,22.2,33.9,3.45,228.6,1994,FL-Miami_Intl_Ap.tmy3',
    '725300,CHICAGO OHARE INTL AP,IL,41.983,-87.917,201.0,5A,1,-4.65,70.8,352.4,344.2,-9.41,-22.8,12.2,4.88,73.5,1986,IL-Chicago_Ohare_Intl_Ap.tmy3',
    '725300,CHICAGO OHARE INTL AP,IL,41.983,-87.917,201.0,5A,7,24.13,73.6,2182.9,2187.2,18.65,11.7,35.0,4.24,257.4,1986,IL-Chicago_Ohare_Intl_Ap.tmy3',
    '725300,CHICAGO OHARE INTL AP,IL,41.983,-87.917,201.0,5A,12,-3.69,75.0,374.6,365.5,-7.65,-18.3,11.1,4.29,62.7,1981,IL-Chicago_Ohare_Intl_Ap.tmy3',
    '702610,FAIRBANKS INTL ARPT,AK,64.817,-147.85,133.0,8,6,15.96,57.2,984.0,989.0,6.41,3.3,28.3,3.45,235.0,1989,AK-Fairbanks_Intl_Arpt.tmy3',
    '702610,FAIRBANKS INTL ARPT,AK,64.817,-147.85,133.0,8,10,-3.08,76.5,400.0,391.3,-7.06,-20.6,13.9,2.79,42.1,1989,AK-Fairbanks_Intl_Arpt.tmy3',
    '704540,ADAK NAS,AK,51.883,-176.65,5.0,7,2,0.92,84.8,575.0,565.6,-1.35,-8.3,5.6,6.86,48.2,1995,AK-Adak_Nas.tmy3',
  ])('copies %s', (line) => {
    const [id, name, state, latitude, longitude, elevation, zone, month, temperature, humidity, pressure] =
      line.split(',');
    const station = stationOfId(id!)!;
    expect(station).toMatchObject({
      name,
      stateCode: state,
      latitudeDeg: Number(latitude),
      longitudeDeg: Number(longitude),
      elevationM: Number(elevation),
      zone2021: zone,
    });
    expect(monthsOf(station)[Number(month) - 1]).toEqual({
      month: Number(month),
      meanTemperatureC: Number(temperature),
      relativeHumidityPercent: Number(humidity),
      vaporPressurePa: Number(pressure),
      heldToSaturation: false,
    });
  });
  it('holds a month of the far north to saturation over ice', () => {
    // Source line: 702610,FAIRBANKS INTL ARPT,AK,64.817,-147.85,133.0,8,1,-17.63,83.0,157.2,138.2,-19.9,...
    // Saturation over ice at -18 C is 125.2 Pa and falls by 9 % for each degree (Danish guidance 224, table 23).
    const january = monthsOf(stationOfId('702610')!)[0]!;
    expect(january).toMatchObject({ meanTemperatureC: -17.63, relativeHumidityPercent: 83, heldToSaturation: true });
    expect(january.vaporPressurePa).toBeGreaterThan(125.2);
    expect(january.vaporPressurePa).toBeLessThan(137);
  });
  // Another table of the same source holds the mean of January and of July for each station.
  it.each([
    ['704540', 0.16, 8.78],
    ['702084', -13.49, 12.27],
  ])('agrees with the January and July means given for station %s', (id, januaryC, julyC) => {
    const months = monthsOf(stationOfId(id)!);
    expect([months[0]?.meanTemperatureC, months[6]?.meanTemperatureC]).toEqual([januaryC, julyC]);
  });
});
