/**
 * Trims the source tables of climate to what the program reads: data/climate/us-counties.txt and
 * data/climate/us-stations.txt. Run by maintainers, when the source tables change:
 *
 *     node scripts/climate-data.mjs SOURCE_DIR
 *
 * SOURCE_DIR holds four CSV files, whose origin and licenses data/climate/NOTICE tells:
 *
 * - us_county_climate_zones.csv: fips, state, state_name, county, iecc2015, iecc2021
 * - us_county_to_station.csv: fips, wmo, distance_km
 * - us_tmy3_stations.csv: wmo, station, state, lat, lon, elev_m, county_fips, iecc2015, iecc2021
 * - us_tmy3_monthly_climate.csv: wmo, month, t_mean_C, pv_mean_Pa, rh_mean_pct
 *
 * Other columns are left out. Figures are copied as they stand, except that a vapor pressure above saturation is
 * held to saturation. A blank stays a blank.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const source = process.argv[2];
if (source === undefined) {
  console.error(
    'Found no folder; expected the folder with the source tables: node scripts/climate-data.mjs SOURCE_DIR',
  );
  process.exit(2);
}
const target = path.resolve(import.meta.dirname, '../data/climate');

/** Rows of a CSV file as records; fields may be quoted (RFC 4180). */
function rows(name, needed) {
  const text = readFileSync(path.join(source, name), 'utf8').replace(/^\uFEFF/, '');
  const lines = text.split(/\r?\n/).filter((line) => line !== '');
  const fields = (line) =>
    (line.match(/(?<=^|,)(?:"(?:[^"]|"")*"|[^,]*)(?=,|$)/g) ?? []).map((field) =>
      field.startsWith('"') ? field.slice(1, -1).replaceAll('""', '"') : field,
    );
  const head = fields(lines[0]);
  const missing = needed.filter((field) => !head.includes(field));
  if (missing.length > 0) throw new Error(`${name} has no column ${missing.join(', ')}; it has ${head.join(', ')}.`);
  return lines.slice(1).map((line, i) => {
    const values = fields(line);
    if (values.length !== head.length)
      throw new Error(`${name}, line ${i + 2}: found ${values.length} fields, expected ${head.length}.`);
    return Object.fromEntries(head.map((field, j) => [field, values[j]]));
  });
}

/** Nothing that parts the fields of our files may stand in one. */
function plain(text) {
  if (/[\t\n|]/.test(text)) throw new Error(`"${text}" holds a tab, a bar or a line break.`);
  return text;
}

/**
 * Saturation vapor pressure in Pa at a temperature in degrees C: over water from 0 degrees on, over ice below.
 *
 * @see ISO 13788:2012 annex E (from memory, confirm)
 */
function saturationPa(temperatureC) {
  return temperatureC >= 0
    ? 610.5 * Math.exp((17.269 * temperatureC) / (237.3 + temperatureC))
    : 610.5 * Math.exp((21.875 * temperatureC) / (265.5 + temperatureC));
}

/**
 * A monthly vapor pressure, marked with `*` where it was above saturation and is held to it. Weather services report
 * humidity over liquid water below freezing too, and the mean of a curved function lies above it.
 */
function heldToSaturation(pressureText, temperatureText) {
  const limit = saturationPa(Number(temperatureText));
  // Rounded down, so that the printed figure is not above saturation again.
  return Number(pressureText) > limit ? `${(Math.floor(limit * 10) / 10).toFixed(1)}*` : pressureText;
}

const nearest = new Map(rows('us_county_to_station.csv', ['fips', 'wmo', 'distance_km']).map((row) => [row.fips, row]));
const counties = rows('us_county_climate_zones.csv', ['fips', 'state', 'state_name', 'county', 'iecc2015', 'iecc2021']);
counties.sort((a, b) => (a.fips < b.fips ? -1 : 1));
const countyLines = [
  '# Climate zone of each US county by the energy codes of 2015 and 2021, with its nearest weather station.',
  '# Origin, license, gaps: NOTICE. Written by scripts/climate-data.mjs.',
  '# A state: = abbreviation, name. A county: FIPS, name, zone 2015, zone 2021, station, distance in km.',
];
let state = '';
for (const { fips, county, iecc2015, iecc2021, ...row } of counties) {
  if (row.state !== state) countyLines.push(`=\t${plain(row.state)}\t${plain(row.state_name)}`);
  state = row.state;
  const station = nearest.get(fips);
  countyLines.push(
    [fips, plain(county), iecc2015, iecc2021, station?.wmo ?? '', station?.distance_km ?? ''].join('\t'),
  );
}

const months = new Map();
for (const row of rows('us_tmy3_monthly_climate.csv', ['wmo', 'month', 't_mean_C', 'pv_mean_Pa', 'rh_mean_pct'])) {
  if (!months.has(row.wmo)) months.set(row.wmo, []);
  months.get(row.wmo)[Number(row.month) - 1] = row;
}
const stationLines = [
  '# Monthly means of US weather stations, from typical years.',
  '# Origin, license, cautions: NOTICE. Written by scripts/climate-data.mjs.',
  '# Station, name, state, latitude, longitude (degrees), elevation (m), county FIPS, zone 2015, zone 2021, then twelve',
  '# each of mean temperature (C), vapor pressure (Pa, * where held to saturation), relative humidity (%).',
];
let held = 0;
for (const row of rows('us_tmy3_stations.csv', [
  ...['wmo', 'station', 'state', 'lat', 'lon', 'elev_m', 'county_fips', 'iecc2015', 'iecc2021'],
])) {
  const year = months.get(row.wmo) ?? [];
  if (year.length !== 12 || year.includes(undefined))
    throw new Error(`Station ${row.wmo} has ${year.length} months, expected 12.`);
  const pressures = year.map((m) => heldToSaturation(m.pv_mean_Pa, m.t_mean_C));
  held += pressures.filter((p) => p.endsWith('*')).length;
  stationLines.push(
    [
      ...[row.wmo, plain(row.station), row.state, row.lat, row.lon, row.elev_m],
      ...[row.county_fips, row.iecc2015, row.iecc2021],
      year.map((m) => m.t_mean_C).join(' '),
      pressures.join(' '),
      year.map((m) => m.rh_mean_pct).join(' '),
    ].join('\t'),
  );
}

mkdirSync(target, { recursive: true });
for (const [name, lines] of [
  ['us-counties.txt', countyLines],
  ['us-stations.txt', stationLines],
])
  writeFileSync(path.join(target, name), `${lines.join('\n')}\n`);
console.log(
  `${counties.length} counties, ${counties.filter((c) => c.iecc2021 !== '').length} with a zone; ` +
    `${stationLines.length - 4} stations, ${held} monthly vapor pressures held to saturation`,
);
