/** Where a wall fits, as Markdown. */
import type { PhrasingContent, RootContent } from 'mdast';
import { ANSWERS, MEANINGS, MONTHS_ANSWERS } from '../../where/answer.js';
import type { InZone, InCounty, Where } from '../../where/where.js';
import { countyText } from '../../climate/counties.js';
import { stationText } from '../../climate/stations.js';
import { cell, heading, item, joint, list, paragraph, strong, table, words } from '../markdown-parts.js';
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
import { writeMarkdown } from '../write-markdown.js';

const row = (texts: readonly string[]) => texts.map((text) => cell(words(text)));

function listed(title: string, entries: readonly string[]): RootContent[] {
  return entries.length === 0 ? [] : [heading(2, joint(title)), list(entries.map((entry) => item(words(entry))))];
}

function reasons(title: string, found: readonly ZoneReason[]): RootContent[] {
  const told = ({ zones, answer, text }: ZoneReason): PhrasingContent[] => [
    strong(zones.join(', ')),
    joint(`: ${answer}. `),
    words(text),
  ];
  return [heading(2, joint(title)), list(found.map((reason) => item(...told(reason))))];
}

function zoneRow(one: InZone, wanted: Wanted): string[] {
  return [
    one.zone,
    String(one.counties),
    ...(showsTable(wanted) ? [tableWords(one.table)] : []),
    ...(showsMonths(wanted)
      ? [
          one.station === undefined ? '' : stationText(one.station),
          one.months.answer,
          ...MONTHS_ANSWERS.map((a) => String(one.spread[a])),
        ]
      : []),
  ];
}

function byZone(where: Where, wanted: Wanted): RootContent[] {
  const { zones } = where;
  const head = [
    'Zone',
    'Counties',
    ...(showsTable(wanted) ? ['Code table'] : []),
    ...(showsMonths(wanted)
      ? ['Typical station', 'Months there', ...MONTHS_ANSWERS.map((a) => `Counties: ${a.replace(/^fits/, 'fit')}`)]
      : []),
  ];
  return [
    table([row(head), ...zones.map((zone) => row(zoneRow(zone, wanted)))]),
    ...(showsTable(wanted) ? reasons('By the code table', tableReasons(zones)) : []),
    ...(showsMonths(wanted) ? reasons('By the months, at the typical station of the zone', monthsReasons(zones)) : []),
  ];
}

function countyRow(one: InCounty, wanted: Wanted): string[] {
  return [
    one.county.fips,
    countyText(one.county),
    one.zone ?? '',
    ...(showsTable(wanted) ? [tableWords(one.table)] : []),
    ...(showsMonths(wanted) ? [one.months.answer, one.months.reason] : []),
  ];
}

function byCounty(where: Where, wanted: Wanted): RootContent[] {
  const head = [
    'FIPS',
    'County',
    'Zone',
    ...(showsTable(wanted) ? ['Code table'] : []),
    ...(showsMonths(wanted) ? ['Months', 'Why'] : []),
  ];
  return [table([row(head), ...where.counties.map((one) => row(countyRow(one, wanted)))])];
}

/** @see writeMarkdown */
export function printWhereMarkdown(where: Where, wanted: Wanted, by: 'zone' | 'county'): string {
  const { detail } = where;
  return writeMarkdown({
    type: 'root',
    children: [
      heading(1, joint('Where '), words(detail.id), joint(' fits')),
      paragraph(words(detail.title)),
      paragraph(words(question(where, wanted))),
      ...(by === 'zone' ? byZone(where, wanted) : byCounty(where, wanted)),
      ...listed('What the answers mean', [
        ...ANSWERS.map((answer) => `${answer}: ${MEANINGS[answer]}`),
        ...(showsTable(wanted) ? [CONFIRM_NOTE] : []),
      ]),
      ...listed('Taken for granted', assumptionsOf(where, wanted)),
      ...listed('Gaps', where.gaps),
      ...listed('Left out, and cautions', cautionsOf(wanted)),
      ...listed('Sources', sourcesOf(where, wanted)),
    ],
  });
}
