/** Where a wall fits, for a terminal: a table by zone with its reasons, or a line for each county. */
import { ANSWERS, MEANINGS, MONTHS_ANSWERS } from '../../where/answer.js';
import type { InCounty, InZone, Where } from '../../where/where.js';
import { countyText } from '../../climate/counties.js';
import { oneLine } from '../escape.js';
import { padTo, textWidth, wrap } from '../text-width.js';
import {
  CONFIRM_NOTE,
  assumptionsOf,
  cautionsOf,
  monthsReasons,
  question,
  showsMonths,
  showsTable,
  sourcesOf,
  tableReasons,
  tableWords,
  type Wanted,
  type ZoneReason,
} from './text.js';

const LEAST_CELLS = 60;
const MOST_CELLS = 120;

/** Columns as wide as their widest cell, two spaces apart. */
function aligned(rows: readonly (readonly string[])[]): string[] {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => textWidth(row[i] ?? ''))));
  return rows.map((row) =>
    row
      .map((text, i) => padTo(text, widths[i] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}

/** A list under a heading, each entry wrapped under its own first word. */
function section(title: string, entries: readonly string[], cells: number): string[] {
  if (entries.length === 0) return [];
  return [
    '',
    title,
    ...entries.flatMap((entry) =>
      wrap(oneLine(entry), cells - 4).map((line, i) => `${i === 0 ? '  - ' : '    '}${line}`),
    ),
  ];
}

const reasonText = ({ zones, answer, text }: ZoneReason): string => `${zones.join(', ')}: ${answer}. ${text}`;

function zoneRow(one: InZone, wanted: Wanted): string[] {
  return [
    one.zone,
    ...(showsTable(wanted) ? [tableWords(one.table)] : []),
    ...(showsMonths(wanted) ? [one.months.answer, ...MONTHS_ANSWERS.map((a) => String(one.spread[a]))] : []),
  ];
}

function zoneTable(where: Where, wanted: Wanted): string[] {
  const head = [
    'zone',
    ...(showsTable(wanted) ? ['code table'] : []),
    ...(showsMonths(wanted) ? ['months, typical', 'fits', 'cond.', 'over', 'cannot tell'] : []),
  ];
  return aligned([head, ...where.zones.map((zone) => zoneRow(zone, wanted))]);
}

function countyRow(one: InCounty, wanted: Wanted): string[] {
  const { county, zone } = one;
  return [
    county.fips,
    oneLine(countyText(county)),
    zone ?? '',
    ...(showsTable(wanted) ? [tableWords(one.table)] : []),
    ...(showsMonths(wanted) ? [one.months.answer, oneLine(one.months.reason)] : []),
  ];
}

function countyTable(where: Where, wanted: Wanted): string[] {
  const head = [
    'FIPS',
    'county',
    'zone',
    ...(showsTable(wanted) ? ['code table'] : []),
    ...(showsMonths(wanted) ? ['months', 'why'] : []),
  ];
  return aligned([head, ...where.counties.map((one) => countyRow(one, wanted))]);
}

/**
 * @param columns width of the stream; 80 when not known
 * @returns lines, each ended by a line break; rows by county are not wrapped
 */
export function printWhereTerminal(where: Where, wanted: Wanted, by: 'zone' | 'county', columns = 80): string {
  const cells = Math.max(LEAST_CELLS, Math.min(MOST_CELLS, columns));
  const { detail, zones } = where;
  const spread =
    by === 'zone' && showsMonths(wanted)
      ? [
          '',
          ...wrap(
            'The last four columns count the counties of the zone by the months of their own nearest stations: they fit, fit with conditions, are over the limit of the estimate, cannot be told.',
            cells,
          ),
        ]
      : [];
  const why =
    by === 'zone'
      ? [
          ...(showsTable(wanted) ? section('By the code table', tableReasons(zones).map(reasonText), cells) : []),
          ...(showsMonths(wanted)
            ? section('By the months, at the typical station of the zone', monthsReasons(zones).map(reasonText), cells)
            : []),
        ]
      : [];
  const lines = [
    ...wrap(oneLine(`${detail.id}: ${detail.title}`), cells),
    ...wrap(question(where, wanted), cells),
    '',
    ...(by === 'zone' ? zoneTable(where, wanted) : countyTable(where, wanted)),
    ...spread,
    ...why,
    ...section(
      'What the answers mean',
      [...ANSWERS.map((answer) => `${answer}: ${MEANINGS[answer]}`), ...(showsTable(wanted) ? [CONFIRM_NOTE] : [])],
      cells,
    ),
    ...section('Taken for granted', assumptionsOf(where, wanted), cells),
    ...section('Gaps', where.gaps, cells),
    ...section('Left out, and cautions', cautionsOf(wanted), cells),
    ...section('Sources', sourcesOf(where, wanted), cells),
  ];
  return `${lines.join('\n')}\n`;
}
