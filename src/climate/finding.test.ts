/** Finding a county or a weather station by the name that somebody wrote. */
import { describe, expect, it } from 'vitest';
import { allCounties, countyText, findCounty } from './counties.js';
import { allStations, findStation } from './stations.js';

const county = (written: string, state?: string): string => {
  const search = findCounty(written, state);
  return search.kind === 'found' ? search.counties.map(countyText).join(' | ') : `? ${search.reason}`;
};
const station = (written: string, state?: string): string => {
  const search = findStation(written, state);
  return search.kind === 'found' ? search.station.id : `? ${search.reason}`;
};

describe('a county', () => {
  it('is found under its own name, everyone of them', () => {
    for (const c of allCounties()) {
      const search = findCounty(c.name, c.stateCode);
      expect(search.kind === 'found' && search.counties.includes(c), c.fips).toBe(true);
      expect(county(c.fips), c.fips).toBe(countyText(c));
    }
  });
  it.each([
    ['cook county', 'illinois', 'Cook, Illinois'],
    ['COOK', 'il', 'Cook, Illinois'],
    ['Orleans Parish', 'LA', 'Orleans, Louisiana'],
    ['Saint Louis County', 'MO', 'St. Louis, Missouri'],
    ['St Louis city', 'MO', 'St. Louis city, Missouri'],
    ['Baltimore City', 'Maryland', 'Baltimore city, Maryland'],
    ['Dona Ana', 'NM', 'Doña Ana, New Mexico'],
    ["Prince George's", 'MD', "Prince George's, Maryland"],
    ['Prince Georges', 'MD', "Prince George's, Maryland"],
    ['La Salle', 'IL', 'LaSalle, Illinois'],
    ['Miami Dade', 'FL', 'Miami-Dade, Florida'],
    ['Carson City', 'NV', 'Carson City, Nevada'],
    ['James City County', 'VA', 'James City, Virginia'],
    ['Juneau City and Borough', 'AK', 'Juneau, Alaska'],
    ['17031', undefined, 'Cook, Illinois'],
  ])('written %s, %s, is %s', (written, state, expected) => {
    expect(county(written, state)).toBe(expected);
  });
  it('of a name that only one state has needs no state', () => {
    expect(county('Maricopa')).toBe('Maricopa, Arizona');
  });
  it('of a name that several states have needs one', () => {
    expect(findCounty('Cook')).toMatchObject({
      kind: 'not found',
      reason: 'there is a county "Cook" in Georgia, Illinois, Minnesota',
      missing: ['project.place.state'],
    });
  });
  it('and a city of one name are both found, as they are of one state', () => {
    expect(county('Baltimore', 'MD')).toBe('Baltimore, Maryland | Baltimore city, Maryland');
    expect(county('Baltimore County', 'MD')).toBe('Baltimore, Maryland');
  });
  it('misspelled is answered with the nearest name', () => {
    expect(findCounty('Henepin', 'MN')).toMatchObject({ kind: 'not found', suggestion: 'Hennepin' });
    expect(findCounty('Cook', 'Ilinois')).toMatchObject({
      suggestion: 'Illinois',
      missing: ['project.place.state'],
    });
  });
  it('of another state is answered with the states that have it', () => {
    expect(county('Cook', 'Ohio')).toBe('? "Cook" is no county of Ohio; there is one in Georgia, Illinois, Minnesota');
  });
  it('is not guessed from a city that lies in another: Iowa City is not in Iowa County', () => {
    expect(findCounty('Iowa City', 'IA')).toEqual({
      kind: 'not found',
      reason: '"Iowa City" is no county of Iowa',
      missing: ['project.place.county'],
    });
  });
  it.each(['', '   ', '99999', 'x'.repeat(10_000)])('is none under "%.9s"', (written) => {
    expect(findCounty(written).kind).toBe('not found');
  });
});

describe('a weather station', () => {
  it('is found by its number and by its name, everyone of them', () => {
    for (const s of allStations()) {
      expect(station(s.id), s.name).toBe(s.id);
      expect(station(s.name.toLowerCase()), s.name).toBe(s.id);
    }
  });
  it.each([
    ["Chicago O'Hare", undefined, '725300'],
    ['Boston Logan', undefined, '725090'],
    ['Fairbanks Intl', undefined, '702610'],
    ['Springfield', 'MO', '724400'],
    ['Portland', 'Maine', '726060'],
  ])('is found by words that it alone holds: %s', (written, state, id) => {
    expect(station(written, state)).toBe(id);
  });
  it('is not chosen where several hold the words', () => {
    expect(station('Chicago')).toMatch(/fits several weather stations: .*MIDWAY.*OHARE/);
  });
  it('misspelled is answered with the nearest name', () => {
    expect(findStation('Miami Intl Aap')).toMatchObject({ suggestion: 'MIAMI INTL AP' });
  });
  it.each(['', 'nearest airport station', '000000'])('is none under "%s"', (written) => {
    expect(findStation(written)).toMatchObject({ kind: 'not found', missing: ['project.place.station'] });
  });
});
