/** The counties of the United States: climate zone by edition, nearest weather station, and finding one by name. */
import { once, readTable } from './data-file.js';
import { countyName, foldedName, listed } from './names.js';
import { nearest } from '../model/nearest.js';

export const COUNTY_FILE = 'us-counties.txt';
/** County numbers of a state from here on are cities that belong to no county (FIPS 6). */
const FIRST_INDEPENDENT_CITY = 510;

export interface County {
  /** Five digits, state first. */
  readonly fips: string;
  readonly name: string;
  /** `IL` */
  readonly stateCode: string;
  /** `Illinois` */
  readonly stateName: string;
  /** Absent where the source has none; `4` without its letter where the source has no letter. */
  readonly zone2015?: string;
  readonly zone2021?: string;
  readonly station?: { readonly id: string; readonly distanceKm: number };
}

/** A name that leads to no one county. `missing` are the fields of the project that would settle it. */
export interface NotFound {
  readonly kind: 'not found';
  /** A clause without capital and full stop. */
  readonly reason: string;
  readonly missing: readonly string[];
  /** What was probably meant, where a name is near. */
  readonly suggestion?: string;
}
export type CountySearch =
  /** More than one only where a county and a city of the same state have the same name. */
  { readonly kind: 'found'; readonly counties: readonly [County, ...County[]] } | NotFound;

interface CountyTable {
  readonly all: readonly County[];
  readonly states: readonly { readonly code: string; readonly name: string }[];
  readonly byName: ReadonlyMap<string, readonly County[]>;
}

const table = once((): CountyTable => {
  const all: County[] = [];
  const states: { code: string; name: string }[] = [];
  const byName = new Map<string, County[]>();
  for (const [first = '', name = '', zone2015 = '', zone2021 = '', id = '', km = ''] of readTable(COUNTY_FILE)) {
    if (first === '=') {
      states.push({ code: name, name: zone2015 });
      continue;
    }
    const state = states.at(-1) as { code: string; name: string };
    const county: County = {
      fips: first,
      name,
      stateCode: state.code,
      stateName: state.name,
      ...(zone2015 === '' ? {} : { zone2015 }),
      ...(zone2021 === '' ? {} : { zone2021 }),
      ...(id === '' ? {} : { station: { id, distanceKm: Number(km) } }),
    };
    all.push(county);
    const key = foldedName(name);
    const same = byName.get(key);
    if (same === undefined) byName.set(key, [county]);
    else same.push(county);
  }
  return { all, states, byName };
});

/** Every county of the table, by FIPS number. */
export function allCounties(): readonly County[] {
  return table().all;
}

/** `Cook, Illinois`; `Baltimore city, Maryland` for a city that belongs to no county. */
export function countyText(county: County): string {
  const city = isIndependentCity(county) && !/city$/i.test(county.name);
  return `${county.name}${city ? ' city' : ''}, ${county.stateName}`;
}

function isIndependentCity(county: County): boolean {
  return Number(county.fips.slice(2)) >= FIRST_INDEPENDENT_CITY;
}

/** Abbreviation of a state written in either way. */
export function stateCode(written: string): string | undefined {
  const folded = foldedName(written);
  return table().states.find((s) => s.code.toLowerCase() === folded || foldedName(s.name) === folded)?.code;
}

/**
 * The county of a name, or of a FIPS number.
 *
 * `County`, `Parish`, `city` and the like may stand behind the name; case, accents, spaces and dots do not count.
 *
 * @param written as the project says it
 * @param state name or abbreviation; needed where several states have a county of the name
 */
export function findCounty(written: string, state?: string): CountySearch {
  const code = state === undefined ? undefined : stateCode(state);
  if (state !== undefined && code === undefined) return unknownState(state);
  const named = namesakes(written);
  const there = named.filter((c) => code === undefined || c.stateCode === code);
  const [first] = there;
  if (first === undefined) return unknownCounty(written, named, code);
  const states = [...new Set(there.map((c) => c.stateName))];
  if (states.length > 1)
    return {
      kind: 'not found',
      reason: `there is a county "${first.name}" in ${listed(states)}`,
      missing: ['project.place.state'],
    };
  return { kind: 'found', counties: there as [County, ...County[]] };
}

function namesakes(written: string): readonly County[] {
  const { all, byName } = table();
  if (/^\s*\d{5}\s*$/.test(written)) return all.filter((c) => c.fips === written.trim());
  // First as it stands: the county of Carson City is called so.
  const exact = byName.get(foldedName(written));
  if (exact !== undefined) return exact;
  const { name, kind } = countyName(written);
  if (kind === undefined) return [];
  // A city within a county is not the county of that name: Iowa City does not lie in Iowa County.
  return (byName.get(foldedName(name)) ?? []).filter((c) => isIndependentCity(c) === (kind === 'city'));
}

function unknownState(state: string): NotFound {
  const names = table().states.map((s) => s.name);
  const suggestion = nearest(state, names);
  return {
    kind: 'not found',
    reason: `"${state}" is no state of the US county table${suggestion === undefined ? '' : `; was "${suggestion}" meant?`}`,
    missing: ['project.place.state'],
    ...(suggestion === undefined ? {} : { suggestion }),
  };
}

function unknownCounty(written: string, elsewhere: readonly County[], code: string | undefined): NotFound {
  const { all, states } = table();
  const inState = all.filter((c) => code === undefined || c.stateCode === code);
  const { name, kind } = countyName(written);
  const suggestion = nearest(kind === 'city' ? written : name, [...new Set(inState.map((c) => c.name))]);
  const where = states.find((s) => s.code === code)?.name;
  const others = [...new Set(elsewhere.map((c) => c.stateName))];
  const hint =
    suggestion !== undefined
      ? `; was "${suggestion}" meant?`
      : others.length > 0
        ? `; there is one in ${listed(others)}`
        : '';
  return {
    kind: 'not found',
    reason: `"${written}" is no county of ${where ?? 'the US county table'}${hint}`,
    missing: ['project.place.county'],
    ...(suggestion === undefined ? {} : { suggestion }),
  };
}
