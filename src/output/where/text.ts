/** The words that every print of "where this wall fits" shares. Text from documents is escaped where it is printed. */
import { ANSWERS, strictest, type Answer } from '../../where/answer.js';
import type { InZone, InCounty, Where } from '../../where/where.js';
import { CAUTION as METHOD_CAUTION, leftOutBy } from '../../moisture/left-out.js';
import { CONDENSATE_LIMITS } from '../../where/months.js';
import { countyTable, TYPICAL_YEAR_CAUTION, TYPICAL_YEARS } from '../../climate/sources.js';
import { stationText } from '../../climate/stations.js';
import { CAUTION } from '../report.js';
import { sourceText } from '../source-text.js';

/** Which of the two answers are wanted. */
export const WANTED = ['table', 'months', 'both'] as const;
export type Wanted = (typeof WANTED)[number];

/** Whether the answer by the code's tables was asked for. */
export const showsTable = (wanted: Wanted): boolean => wanted !== 'months';
/** Whether the answer by twelve months was asked for. */
export const showsMonths = (wanted: Wanted): boolean => wanted !== 'table';

/** The one answer that a county gets on a map: the worse of the two. */
export function answerOf({ table, months }: Pick<InCounty, 'table' | 'months'>, wanted: Wanted): Answer {
  return strictest([...(showsTable(wanted) ? [table.answer] : []), ...(showsMonths(wanted) ? [months.answer] : [])]);
}

/** The answer of the table in few words; a breach that is not certain has a mark, see `CONFIRM_NOTE`. */
export function tableWords({ answer, toConfirm }: InCounty['table']): string {
  return toConfirm === true ? `${answer} *` : answer;
}

/** What the mark behind an answer of the table means. */
export const CONFIRM_NOTE =
  '*: does not meet a table that was quoted from memory or at second hand; confirm it in the code';

/** What is asked, in a sentence. */
export function question(where: Where, wanted: Wanted): string {
  const parts = [
    ...(showsTable(wanted) ? [`the vapor tables of ${where.codeText}`] : []),
    ...(showsMonths(wanted) ? ['twelve months of vapor diffusion at weather stations'] : []),
  ];
  return `Where this wall fits, by ${parts.join(' and by ')}; climate zones of the county table of ${where.year}.`;
}

/** What was taken for what. */
export function assumptionsOf(where: Where, wanted: Wanted): string[] {
  return [
    ...(where.codeAssumed ? [`The project names no code with an edition; ${where.codeText} was taken.`] : []),
    ...(showsMonths(wanted) ? where.assumptions : []),
  ];
}

/** What the answers leave out, and the cautions that go with them. */
export function cautionsOf(wanted: Wanted): string[] {
  return [
    ...(showsMonths(wanted)
      ? [
          `A typical year is not a design year. ${TYPICAL_YEAR_CAUTION}`,
          'The nearest station may lie higher, or nearer to water, than the building; mountains and coasts differ within a county.',
          'How much water is too much is held against limits of a foreign standard known at second hand, which the code tables here do not set: an estimate over a limit is a reason to have the wall analyzed, neither permission nor refusal.',
          ...leftOutBy('monthly'),
          METHOD_CAUTION,
        ]
      : []),
    ...(showsTable(wanted)
      ? ['The climate zone that the adopted code assigns governs, with the amendments of the place.']
      : []),
    CAUTION,
  ];
}

/** The sources in lines, each with how well it is known. */
export function sourcesOf(where: Where, wanted: Wanted): string[] {
  const sources = [
    ...(showsTable(wanted) ? where.tableSources : []),
    countyTable(where.year),
    ...(showsMonths(wanted) ? [TYPICAL_YEARS, ...CONDENSATE_LIMITS] : []),
  ];
  return [...new Set(sources.map((source) => sourceText(source)))];
}

/** Sentences that differ by no more than the zone they name are said once. */
export interface ZoneReason {
  readonly zones: readonly string[];
  readonly answer: string;
  readonly text: string;
}

/** Why the table answers as it does, alike zones together; in the order of the zones. */
export function tableReasons(zones: readonly InZone[]): ZoneReason[] {
  const held = new Map<string, { zones: string[]; answer: string; text: string }>();
  for (const { zone, table } of zones) {
    const text = table.reasons.join(' ').replaceAll(`climate zone ${zone}`, 'this climate zone');
    const answer = tableWords(table);
    const key = `${answer} ${text}`;
    const known = held.get(key);
    if (known === undefined) held.set(key, { zones: [zone], answer, text });
    else known.zones.push(zone);
  }
  return [...held.values()];
}

/** What the typical station of each zone shows, alike zones together. */
export function monthsReasons(zones: readonly InZone[]): ZoneReason[] {
  const held = new Map<string, { zones: string[]; answer: string; text: string }>();
  for (const { zone, months, station } of zones) {
    const dry = months.outcome === undefined || months.outcome === 'dry';
    // What is alike everywhere needs no station beside it.
    const text = dry || station === undefined ? months.reason : `${months.reason}, at ${stationText(station)}`;
    const key = `${months.answer} ${text}`;
    const known = held.get(key);
    if (known === undefined) held.set(key, { zones: [zone], answer: months.answer, text });
    else known.zones.push(zone);
  }
  return [...held.values()];
}

/** `fits in 1A, 2A; does not fit in 7, 8` */
export function zonesByAnswer(zones: readonly InZone[], answerIn: (zone: InZone) => Answer): string {
  return ANSWERS.flatMap((answer) => {
    const names = zones.filter((z) => answerIn(z) === answer).map((z) => z.zone);
    return names.length === 0 ? [] : [`${answer} in ${names.join(', ')}`];
  }).join('; ');
}
