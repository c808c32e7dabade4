/**
 * Where a wall fits, as comma-separated values, one line for each county or zone.
 *
 * By county: `detail`, `fips`, `county`, `state`, `zone`, `station`, `station_name`, `distance_km` (from the middle of
 * the county), then of the code table `table`, `table_to_confirm`, `table_reason`, and of the monthly computation
 * `months`, `plane`, `month` (1 to 12), `peak_kg_per_m2`, `limit_kg_per_m2`, `residual_kg_per_m2`, `months_reason`.
 * By zone the same without `fips`, `county`, `state` and `distance_km`, but with `counties` and how many of them `fit`,
 * `fit_with_conditions`, `over_limit` and `cannot_tell` by the months of their own stations. An unknown value is empty.
 *
 * @see RFC 4180 for quotes and line ends
 */
import type { InCounty, InZone, Where } from '../../where/where.js';
import { csvField, csvLines, type Cell } from '../csv.js';
import { showsMonths, showsTable, type Wanted } from './text.js';

/** A row as a record: its keys are the columns. */
type Row = Readonly<Record<string, Cell>>;

/** Grams are finer than the method is good for. */
const kg = (value: number | undefined): number | undefined =>
  value === undefined ? undefined : Math.round(value * 1e4) / 1e4;

function tableCells({ table }: Pick<InCounty, 'table'>, wanted: Wanted): Row {
  if (!showsTable(wanted)) return {};
  return {
    table: table.answer,
    table_to_confirm: table.toConfirm === true ? 'yes' : 'no',
    table_reason: table.reasons.join(' '),
  };
}

function monthsCells({ months }: Pick<InCounty, 'months'>, wanted: Wanted): Row {
  if (!showsMonths(wanted)) return {};
  return {
    months: months.answer,
    plane: months.plane,
    month: months.month,
    peak_kg_per_m2: kg(months.peakKgPerM2),
    limit_kg_per_m2: kg(months.limitKgPerM2),
    residual_kg_per_m2: kg(months.residualKgPerM2),
    months_reason: months.reason,
  };
}

function countyRow(id: string, one: InCounty, wanted: Wanted): Row {
  const { county, zone, station, distanceKm } = one;
  return {
    detail: id,
    fips: county.fips,
    county: county.name,
    state: county.stateCode,
    zone,
    ...(showsMonths(wanted)
      ? { station: station?.id, station_name: station?.name, distance_km: station === undefined ? '' : distanceKm }
      : {}),
    ...tableCells(one, wanted),
    ...monthsCells(one, wanted),
  };
}

function zoneRow(id: string, one: InZone, wanted: Wanted): Row {
  const { zone, station, counties, spread } = one;
  return {
    detail: id,
    zone,
    ...(showsMonths(wanted) ? { station: station?.id, station_name: station?.name } : {}),
    ...tableCells(one, wanted),
    ...monthsCells(one, wanted),
    counties,
    ...(showsMonths(wanted)
      ? {
          fit: spread.fits,
          fit_with_conditions: spread['fits with conditions'],
          over_limit: spread['estimate over limit'],
          cannot_tell: spread['cannot tell'],
        }
      : {}),
  };
}

/** Head and rows, each ended by CR LF. */
export function printWhereCsv(where: Where, wanted: Wanted, by: 'zone' | 'county'): string {
  const { id } = where.detail;
  const rows =
    by === 'zone'
      ? where.zones.map((one) => zoneRow(id, one, wanted))
      : where.counties.map((one) => countyRow(id, one, wanted));
  const columns = Object.keys(rows[0] ?? {});
  return csvLines([columns, ...rows.map((row) => columns.map((c) => csvField(row[c])))]);
}
