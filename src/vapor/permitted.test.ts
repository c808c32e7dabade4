import { describe, expect, it } from 'vitest';
import { EDITIONS, NBC_BARRIER, type Permission, type TableClass } from './data/permitted-tables.js';
import { jurisdiction, permitted, permittedWords, type KnownPlace } from './permitted.js';
import type { Project } from '../model/types.js';
import type { ReadDocument } from '../reading/types.js';

const document: ReadDocument = {
  kind: 'project',
  id: 'p',
  file: { uri: 'p.yaml', text: '' },
  data: {},
  spanOf: () => ({ start: 0, end: 0 }),
};
const at = { document, path: [] };
const project = (zone: string | undefined, title?: 'IRC' | 'IBC' | 'NBC', edition = 2021): Project => ({
  at,
  id: 'p',
  title: 'p',
  standards: [],
  ...(zone === undefined ? {} : { zone: { value: zone, at } }),
  ...(title === undefined ? {} : { code: { at, title, edition } }),
});
function known(zone: string, title: 'IRC' | 'IBC', edition: number): KnownPlace {
  const place = jurisdiction(project(zone, title, edition));
  if (place.kind !== 'known') throw new Error(place.kind);
  return place;
}
const row = (c: TableClass, title: 'IRC' | 'IBC', edition: number): Permission[] =>
  ['1', '2', '3', '4A', '4B', '4C', '5', '6', '7', '8'].map((z) => permitted(known(z, title, edition), c).permission);

describe('the 2021 permission tables', () => {
  // IBC 2021 Table 1404.3(2) read at second hand; IRC 2021 Table R702.7(2), zone 1 read, the rest from memory.
  it.each(['IRC', 'IBC'] as const)('bar class I in zones 1 to 4 except marine, %s', (title) => {
    expect(row('I', title, 2021)).toEqual(['no', 'no', 'no', 'no', 'no', 'yes', 'yes', 'yes', 'yes', 'yes']);
  });
  it.each(['IRC', 'IBC'] as const)('bar class II in zones 1 and 2, %s', (title) => {
    expect(row('II', title, 2021)).toEqual(['no', 'no', 'yes', 'yes', 'yes', 'yes', 'yes', 'yes', 'yes', 'yes']);
  });
  it('put class III under conditions from marine 4 on in the residential code, in all of zone 4 in the building code', () => {
    const cold: Permission[] = ['conditions', 'conditions', 'conditions', 'conditions', 'conditions'];
    expect(row('III', 'IRC', 2021)).toEqual(['yes', 'yes', 'yes', 'yes', 'yes', ...cold]);
    expect(row('III', 'IBC', 2021)).toEqual(['yes', 'yes', 'yes', 'conditions', 'conditions', ...cold]);
  });
  it('say in words what a zone permits', () => {
    expect(permittedWords(known('2A', 'IBC', 2021))).toBe('class III');
    expect(permittedWords(known('6A', 'IRC', 2021))).toBe('class I or II, or class III under conditions');
  });
});

describe('earlier editions', () => {
  it('of the residential code bar nothing in hot zones', () => {
    for (const edition of [2009, 2012, 2015, 2018]) expect(row('I', 'IRC', edition)).not.toContain('no');
  });
  it('of the building code bar it from 2018 on', () => {
    expect(row('I', 'IBC', 2015)).not.toContain('no');
    expect(row('I', 'IBC', 2018).slice(0, 6)).toEqual(['no', 'no', 'no', 'no', 'no', 'yes']);
  });
  it('ask for a retarder in marine 4 and 5 to 8, in each edition', () => {
    for (const tables of EDITIONS) expect(tables.required.zones).toEqual(['marine 4', '5', '6', '7', '8']);
  });
});

describe('what is not known', () => {
  it('is named: the letter of zone 4, the zone, the code', () => {
    expect(jurisdiction(project('4', 'IRC'))).toMatchObject({ kind: 'missing', missing: ['project.place.zone'] });
    expect(jurisdiction(project(undefined, 'IRC'))).toMatchObject({ missing: ['project.place.zone'] });
    expect(jurisdiction(project('5A'))).toMatchObject({ missing: ['project.code'] });
    expect(jurisdiction(undefined)).toMatchObject({ missing: ['project.place.zone', 'project.code'] });
  });
  it('is told with its reason: a county that cannot be found, one that changed its zone, a zone that is none', () => {
    const of = (place: Partial<Project>, code = true): unknown => {
      const found = jurisdiction({ ...project(undefined, code ? 'IRC' : undefined), ...place });
      return found.kind === 'missing' ? [found.missing, found.reason] : found.kind;
    };
    const word = (value: string): { value: string; at: typeof at } => ({ value, at });
    expect(of({ county: word('Kook'), state: word('IL') })).toEqual([
      ['project.place.county'],
      expect.stringContaining('Kook') as string,
    ]);
    expect(of({ zone: word('9') })).toEqual([
      ['project.place.zone'],
      expect.stringContaining('"9" is no climate zone') as string,
    ]);
    expect(of({})).toEqual([['project.place.zone'], 'neither climate zone nor county is stated']);
  });
  it('is not filled in from another edition', () => {
    expect(jurisdiction(project('5A', 'IRC', 2024))).toEqual({ kind: 'not held', codeText: 'IRC 2024' });
    expect(jurisdiction(project('5A', 'IBC', 2009))).toEqual({ kind: 'not held', codeText: 'IBC 2009' });
  });
  it('does not matter in Canada, where no zone is needed', () => {
    expect(jurisdiction(project(undefined, 'NBC', 2020))).toEqual({ kind: 'Canada' });
  });
});

describe('the sources of the cells', () => {
  it('call what an article or course notes tell of a code seen at second hand', () => {
    const irc2009 = EDITIONS.find(({ title, edition }) => title === 'IRC' && edition === 2009);
    expect(irc2009?.required.source.provenance).toBe('seen at second hand');
    expect(NBC_BARRIER.source.provenance).toBe('seen at second hand');
  });
  it('call nothing read that was not: only zone 1 of IRC 2021 was', () => {
    for (const tables of EDITIONS) {
      for (const [zone, cells] of Object.entries(tables.permitted)) {
        for (const { source } of Object.values(cells)) {
          const read = tables.title === 'IRC' && tables.edition === 2021 && zone === '1';
          const secondHand = tables.title === 'IBC' && tables.edition === 2021;
          expect(source.provenance, `${tables.title} ${tables.edition} zone ${zone}`).toBe(
            read ? 'seen' : secondHand ? 'seen at second hand' : 'from memory, confirm',
          );
          expect(source.citation).toContain(`${tables.title} ${tables.edition}`);
        }
      }
    }
  });
});
