/** Where a wall fits: every climate zone and every county, by the code table and by the year at its weather station. */
import { counted, type Counts } from './answer.js';
import { tableAnswer, type Code, type TableAnswer, type TableRules } from './code-table.js';
import { monthsAnswer, notFollowed, type MonthsAnswer } from './months.js';
import { allCounties, countyText, type County } from '../climate/counties.js';
import { OTHER_ZONE_2015 } from '../climate/disputed.js';
import { stationOfId, type Station } from '../climate/stations.js';
import { typicalStation } from '../climate/typical-station.js';
import { tableYear, zoneParts } from '../climate/zone.js';
import type { Source } from '../engine/result.js';
import { indoorOfProject, type ProjectIndoor } from '../moisture/wall/indoor.js';
import { rainLeftOut } from '../moisture/wall/exposed-masonry.js';
import { wallOf, type UnreadWall } from '../moisture/wall/wall.js';
import type { Detail } from '../model/types.js';
import { systemOf, type UnitSystem } from '../model/unit-system.js';

export interface InCounty {
  readonly county: County;
  /** Zone of the county table that the edition takes; absent where the table has none. */
  readonly zone?: string;
  readonly station?: Station;
  /** From the middle of the county. */
  readonly distanceKm?: number;
  readonly table: TableAnswer;
  readonly months: MonthsAnswer;
}
export interface InZone {
  readonly zone: string;
  readonly table: TableAnswer;
  /** The station that stands for the zone; see `typicalStation`. */
  readonly station?: Station;
  /** At that station. */
  readonly months: MonthsAnswer;
  readonly counties: number;
  /** The monthly answers of the counties of the zone. */
  readonly spread: Counts;
}
export interface Where {
  readonly detail: Detail;
  readonly system: UnitSystem;
  readonly codeText: string;
  /** True when the project names no code, and one was taken. */
  readonly codeAssumed: boolean;
  /** Year of the county table. */
  readonly year: 2015 | 2021;
  readonly zones: readonly InZone[];
  /** Every county of the table once, by FIPS number. */
  readonly counties: readonly InCounty[];
  readonly indoor: ProjectIndoor;
  /** What was taken for what in the monthly computation: indoor air and layers. */
  readonly assumptions: readonly string[];
  /** Places of the table that lack zone or station, in sentences. */
  readonly gaps: readonly string[];
  /** What the answers of the table rest on. */
  readonly tableSources: readonly Source[];
}

/** Taken where the project names no code: the newest edition whose tables are held. */
const ASSUMED_CODE = { title: 'IBC', edition: 2021 } as const;

const unreadAnswer = ({ missing }: UnreadWall): MonthsAnswer =>
  notFollowed([...new Set(missing.map((m) => m.reason))].join('; '), [...new Set(missing.map((m) => m.missing))]);

/** A function whose answers are kept by a key. */
function kept<K, T>(keyOf: (key: K) => string, build: (key: K) => T): (key: K) => T {
  const known = new Map<string, T>();
  return (key) => {
    const name = keyOf(key);
    const held = known.get(name) ?? build(key);
    known.set(name, held);
    return held;
  };
}

/** The answer of the table, with what another published table says of the county. */
function inTable(answer: TableAnswer, county: County, year: 2015 | 2021): TableAnswer {
  const other = year === 2015 ? OTHER_ZONE_2015.get(county.fips) : undefined;
  if (other === undefined) return answer;
  return { ...answer, reasons: [...answer.reasons, `Another published county table has zone ${other} here.`] };
}

/** Places without zone or station, by state. */
function gapsOf(counties: readonly InCounty[], year: 2015 | 2021): string[] {
  const byState = new Map<string, InCounty[]>();
  for (const one of counties)
    if (one.zone === undefined || one.station === undefined)
      byState.set(one.county.stateName, [...(byState.get(one.county.stateName) ?? []), one]);
  const told = [...byState].map(([state, ones]) => {
    const [first] = ones as [InCounty];
    const name = ones.length === 1 ? countyText(first.county) : `${ones.length} counties of ${state}`;
    return `The county table has no climate zone or weather station for ${name}.`;
  });
  for (const { county, zone } of counties)
    if (zone !== undefined && Number(zone) < 7)
      told.push(`The county table of ${year} has zone ${zone} without its letter for ${countyText(county)}.`);
  return told;
}

/**
 * Answers for every zone and county where a detail could stand. Its project gives code, edition and indoor air; its
 * place does not count. Each zone is asked once, and each weather station computed once.
 *
 * @param asked the rules of the run and their settings
 * @throws Error when the climate tables that come with the program are missing
 */
export function whereFits(detail: Detail, asked: TableRules): Where {
  const declared = detail.project?.code;
  const code: Code =
    declared !== undefined && Number.isFinite(declared.edition) ? declared : { at: detail.at, ...ASSUMED_CODE };
  const year = tableYear(code.edition);
  const system = systemOf(detail);
  const indoor = indoorOfProject(detail.project);
  const wall = wallOf(detail);
  const rain = rainLeftOut(detail);
  const zoneOf = (county: County): string | undefined => (year === 2015 ? county.zone2015 : county.zone2021);

  const tableAt = kept(
    (zone: string) => zone,
    (zone) => tableAnswer(detail, zone, code, asked),
  );
  const monthsAt = kept(
    (station: Station) => station.id,
    (station) => (wall.kind === 'unread' ? unreadAnswer(wall) : monthsAnswer(wall, station, indoor, system, rain)),
  );
  const counties = allCounties().map((county): InCounty => {
    const zone = zoneOf(county);
    const station = county.station === undefined ? undefined : stationOfId(county.station.id);
    return {
      county,
      ...(zone === undefined ? {} : { zone }),
      ...(station === undefined ? {} : { station, distanceKm: county.station?.distanceKm ?? 0 }),
      table:
        zone === undefined
          ? {
              answer: 'cannot tell',
              reasons: [`The county table has no climate zone for ${countyText(county)}.`],
              missing: ['project.place.zone'],
              sources: [],
            }
          : inTable(tableAt(zone), county, year),
      months:
        station === undefined
          ? notFollowed(`the county table has no weather station for ${countyText(county)}`, ['project.place.station'])
          : monthsAt(station),
    };
  });

  const names = [...new Set(counties.flatMap((c) => c.zone ?? []))].filter(
    (zone) => zoneParts(zone)?.letter !== '' || Number(zone) >= 7,
  );
  const zones = names.sort().map((zone): InZone => {
    const within = counties.filter((c) => c.zone === zone);
    const station = typicalStation(zone, year);
    return {
      zone,
      table: tableAt(zone),
      ...(station === undefined ? {} : { station }),
      months:
        station === undefined
          ? notFollowed(`no weather station of the table stands in zone ${zone}`, ['project.place.station'])
          : monthsAt(station),
      counties: within.length,
      spread: counted(within.map((c) => c.months.answer)),
    };
  });
  return {
    detail,
    system,
    codeText: `${code.title} ${code.edition}`,
    codeAssumed: code !== declared,
    year,
    zones,
    counties,
    indoor,
    assumptions: [indoor.text, ...(wall.kind === 'read' ? wall.assumptions : [])],
    gaps: gapsOf(counties, year),
    tableSources: zones.flatMap((z) => z.table.sources),
  };
}
