/** The climate zone that a place has in a code edition, and what stays open. */
import { describe, expect, it } from 'vitest';
import { zoneFromTables, zoneOfPlace, zonesAgree } from './zone.js';

const zoneOf = (county: string, state: string, edition?: number): string => {
  const answer = zoneOfPlace({ county, state }, edition);
  return answer.kind === 'known' ? answer.zone : answer.kind;
};

describe('the zone of a county', () => {
  // Spot checks published with the source table, the same in both editions.
  it.each([
    ['Cook', 'IL', '5A'],
    ['Miami-Dade', 'FL', '1A'],
    ['King', 'WA', '4C'],
    ['Maricopa', 'AZ', '2B'],
    ['Hennepin', 'MN', '6A'],
    ['Fairbanks North Star', 'AK', '8'],
    // From the county tables of the energy code, recalled (from memory, confirm).
    ['Los Angeles', 'CA', '3B'],
    ['San Francisco', 'CA', '3C'],
    ['Denver', 'CO', '5B'],
    ['Honolulu', 'HI', '1A'],
    ['Suffolk', 'MA', '5A'],
  ])('%s, %s, is %s in 2015 and in 2021', (county, state, zone) => {
    expect([zoneOf(county, state, 2015), zoneOf(county, state, 2021)]).toEqual([zone, zone]);
    expect(zoneOf(county, state)).toBe(zone);
  });

  // Differences published with the source table: Dallas, Milwaukee, Nashville, Indianapolis, Fargo, Cheyenne.
  it.each([
    ['Dallas', 'TX', '3A', '2A'],
    ['Milwaukee', 'WI', '6A', '5A'],
    ['Davidson', 'TN', '4A', '3A'],
    ['Marion', 'IN', '5A', '4A'],
    ['Cass', 'ND', '7', '6A'],
    ['Laramie', 'WY', '6B', '5B'],
  ])('%s, %s, is %s up to 2018 and %s from 2021', (county, state, older, newer) => {
    for (const edition of [2009, 2015, 2018, 2020]) expect(zoneOf(county, state, edition)).toBe(older);
    for (const edition of [2021, 2024]) expect(zoneOf(county, state, edition)).toBe(newer);
    expect(zoneOfPlace({ county, state }, 2018)).toMatchObject({ differs: { upTo2018: older, from2021: newer } });
  });
  it('is open where it changed and no edition is stated', () => {
    const answer = zoneOfPlace({ county: 'Dallas', state: 'TX' });
    expect(answer).toMatchObject({ kind: 'unknown', missing: ['project.code'] });
    expect(answer.kind === 'unknown' && answer.reason).toMatch(/3A .*2018.* 2A .*2021/);
  });
  it('says what it rests on, and of which year', () => {
    const answer = zoneOfPlace({ county: 'Dallas', state: 'Texas' }, 2018);
    expect(answer).toMatchObject({
      from: 'county',
      text: 'zone of Dallas, Texas, in the county table of 2015',
      sources: [{ citation: 'county climate zones of IECC 2015, after PNNL-33270', provenance: 'seen at second hand' }],
    });
  });
  it('says so where another published table differs, for the editions compared', () => {
    expect(zoneOfPlace({ county: 'Alameda', state: 'CA' }, 2018)).toMatchObject({ zone: '3C', otherTable: '3B' });
    expect(zoneOfPlace({ county: 'Alameda', state: 'CA' }, 2021)).not.toHaveProperty('otherTable');
  });
});

describe('gaps of the county table', () => {
  it.each([
    ['Kusilvak', 'AK'],
    ['San Juan', 'PR'],
    ['Añasco', 'Puerto Rico'],
  ])('leave %s, %s, without a zone', (county, state) => {
    expect(zoneOfPlace({ county, state }, 2021)).toMatchObject({ kind: 'unknown', missing: ['project.place.zone'] });
  });
  it('leave Bristol, Virginia, without the letter of zone 4', () => {
    expect(zoneOfPlace({ county: 'Bristol', state: 'VA' }, 2021)).toMatchObject({ kind: 'unknown marine', zone: '4' });
  });
});

describe('a declared zone', () => {
  it('goes before the county', () => {
    expect(zoneOfPlace({ zone: '6A', county: 'Cook', state: 'IL' }, 2021)).toMatchObject({
      kind: 'known',
      zone: '6A',
      from: 'declared',
    });
  });
  it('stands although the county is misspelled', () => {
    expect(zoneOfPlace({ zone: '5A', county: 'Kook', state: 'IL' }, 2021)).toMatchObject({ zone: '5A' });
  });
  it('of 4 without its letter is open, unless the county tells the letter', () => {
    expect(zoneOfPlace({ zone: '4' }, 2021)).toMatchObject({ kind: 'unknown marine', missing: ['project.place.zone'] });
    expect(zoneOfPlace({ zone: '4', county: 'King', state: 'WA' }, 2021)).toMatchObject({ kind: 'known', zone: '4C' });
    expect(zoneOfPlace({ zone: '4', county: 'Cook', state: 'IL' }, 2021)).toMatchObject({ kind: 'unknown marine' });
  });
  it.each(['9Z', '', '0A', 'five'])('of "%s" is none', (zone) => {
    expect(zoneOfPlace({ zone })).toMatchObject({ kind: 'unknown', missing: ['project.place.zone'] });
  });
});

describe('a weather station', () => {
  it('gives the zone where neither zone nor county is stated', () => {
    expect(zoneOfPlace({ station: '725300' }, 2021)).toMatchObject({ zone: '5A', from: 'station' });
  });
  it('does not stand in for a county that is not found', () => {
    expect(zoneOfPlace({ county: 'Kook', state: 'IL', station: '725300' })).toMatchObject({
      kind: 'unknown',
      missing: ['project.place.county'],
    });
  });
});

describe('a place that says nothing', () => {
  it('has no zone, and a state alone gives none', () => {
    expect(zoneFromTables({})).toMatchObject({ kind: 'unknown', missing: ['project.place.zone'] });
    expect(zoneOfPlace({ state: 'IL' })).toMatchObject({ kind: 'unknown' });
  });
});

describe('two zones', () => {
  it.each([
    ['5A', '5A', true],
    ['5a', '5A', true],
    ['5', '5A', true],
    ['7A', '7', true],
    ['5A', '5B', false],
    ['5A', '6A', false],
    ['5', '6', false],
    ['x', 'x', false],
  ])('%s and %s agree: %s', (a, b, agree) => {
    expect(zonesAgree(a, b)).toBe(agree);
  });
});
