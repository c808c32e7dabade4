/**
 * Where a wall fits, as JSON for programs of the project's own.
 *
 * ```text
 * { format: "lapwright-where/1", detail: { id, title, file }, code, codeAssumed, countyTable,
 *   indoor, assumptions, caution, leftOut, gaps, sources,
 *   zones: [ { zone, counties, station?, table?: TABLE, months?: MONTHS, spread?: { answer: count } } ],
 *   counties: [ { fips, county, state, zone?, station?, stationName?, distanceKm?, table?: TABLE, months?: MONTHS } ] }
 * TABLE:  { answer, toConfirm, reasons, missing }
 * MONTHS: { answer, reason, missing, outcome?, plane?, month?, peakKgPerM2?, limitKgPerM2?, residualKgPerM2? }
 * ```
 * `answer` is one of fits, fits with conditions, estimate over limit (of the months alone),
 * cannot tell, does not fit (of the table alone). One zone or county stands on one line; what
 * is not known is left out, never null. `counties` is left out when the answer is asked by zone.
 */
import { MONTHS_ANSWERS } from '../../where/answer.js';
import type { InCounty, InZone, Where } from '../../where/where.js';
import { safeJson } from '../escape.js';
import { assumptionsOf, cautionsOf, showsMonths, showsTable, sourcesOf, type Wanted } from './text.js';

/** Text of the whole answer, ending with a line break. */
export function printWhereJson(where: Where, wanted: Wanted, by: 'zone' | 'county'): string {
  const { detail } = where;
  const cautions = cautionsOf(wanted);
  const head = {
    format: 'lapwright-where/1',
    detail: { id: detail.id, title: detail.title, file: detail.at.document.file.uri },
    code: where.codeText,
    codeAssumed: where.codeAssumed,
    countyTable: where.year,
    indoor: where.indoor.text,
    assumptions: assumptionsOf(where, wanted),
    caution: cautions.at(-1) as string,
    leftOut: cautions.slice(0, -1),
    gaps: where.gaps,
    sources: sourcesOf(where, wanted),
  };
  const lists: [string, object[]][] = [
    ['zones', where.zones.map((zone) => zoneObject(zone, wanted))],
    ...(by === 'zone' ? [] : [['counties', where.counties.map((c) => countyObject(c, wanted))] as [string, object[]]]),
  ];
  return (
    `{\n${Object.entries(head)
      .map(([key, value]) => `${safeJson(key)}:${safeJson(value)}`)
      .join(',\n')},\n` +
    lists.map(([key, rows]) => `${safeJson(key)}:[\n${rows.map((row) => safeJson(row)).join(',\n')}\n]`).join(',\n') +
    '\n}\n'
  );
}

function answers({ table, months }: Pick<InCounty, 'table' | 'months'>, wanted: Wanted): object {
  return {
    ...(showsTable(wanted)
      ? {
          table: {
            answer: table.answer,
            toConfirm: table.toConfirm === true,
            reasons: table.reasons,
            missing: table.missing,
          },
        }
      : {}),
    ...(showsMonths(wanted) ? { months } : {}),
  };
}

function zoneObject(zone: InZone, wanted: Wanted): object {
  const { station } = zone;
  return {
    zone: zone.zone,
    counties: zone.counties,
    ...(station === undefined || !showsMonths(wanted) ? {} : { station: station.id, stationName: station.name }),
    ...answers(zone, wanted),
    ...(showsMonths(wanted) ? { spread: Object.fromEntries(MONTHS_ANSWERS.map((a) => [a, zone.spread[a]])) } : {}),
  };
}

function countyObject(one: InCounty, wanted: Wanted): object {
  const { county, zone, station, distanceKm } = one;
  return {
    fips: county.fips,
    county: county.name,
    state: county.stateCode,
    zone,
    ...(station === undefined || !showsMonths(wanted)
      ? {}
      : { station: station.id, stationName: station.name, distanceKm }),
    ...answers(one, wanted),
  };
}
