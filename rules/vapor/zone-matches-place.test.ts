/** What the page does not show: what is handed to the reviewer, and what is left alone. */
import { describe, expect, it } from 'vitest';
import { readPage, reviewWith } from '../../tests/support/documents.js';
import type { Result } from '../../src/engine/result.js';
import type { Rule } from '../../src/engine/rule.js';
import rule from './zone-matches-place.js';

const RULES = [rule] as unknown as readonly Rule[];

async function review(place: string, code = 'code: { title: IBC, edition: 2021 }', wall = true): Promise<Result[]> {
  const layers = wall ? 'wall:\n  - { id: b, material: gypsum board }\n' : '';
  const page = await readPage(
    `\`\`\`yaml detail\nkind: detail\nid: d\ntitle: d\nproject: p\n${layers}\`\`\`\n\`\`\`yaml project\nkind: project\nid: p\ntitle: p\n${place}\n${code}\n\`\`\`\n`,
  );
  return reviewWith(page.detail(), RULES);
}
const kind = async (...given: Parameters<typeof review>): Promise<string> =>
  (await review(...given)).map((r) => r.kind).join(' ');

describe('a zone that contradicts the county', () => {
  it('is a warning at the project of the detail, with the zone and the county as related places', async () => {
    const [found] = await review('place: { zone: 3A, county: Dallas, state: TX }');
    expect(found).toMatchObject({ kind: 'fail', level: 'warning', required: '2A', provided: '3A' });
    expect(found!.file.text.slice(found!.span.start, found!.span.end)).toBe('p');
    expect(found!.at.path).toEqual(['project']);
    expect(found!.related?.map((r) => r.at.path)).toEqual([
      ['place', 'zone'],
      ['place', 'county'],
    ]);
  });
  it('says when it is the zone of the other editions', async () => {
    const [newer] = await review('place: { zone: 3A, county: Dallas, state: TX }');
    expect(newer?.message).toContain('3A is its zone for code editions up to 2018');
    const [older] = await review(
      'place: { zone: 2A, county: Dallas, state: TX }',
      'code: { title: IBC, edition: 2018 }',
    );
    expect(older?.message).toContain('2A is its zone for code editions from 2021');
    const [neither] = await review('place: { zone: 8, county: Dallas, state: TX }'.replace('8', '"8"'));
    expect(neither?.message).not.toContain('code editions');
  });
});

describe('the reviewer is asked', () => {
  it.each([
    ['where only a station contradicts', 'place: { zone: 4A, station: "725300" }', 2021],
    ['where another table agrees with what is declared', 'place: { zone: 3B, county: Alameda, state: CA }', 2018],
    ['where two tables disagree and nothing is declared', 'place: { county: Alameda, state: CA }', 2018],
    ['where the table has no letter', 'place: { zone: 4A, county: Bristol, state: VA }', 2021],
    ['where the table has no zone', 'place: { zone: 1A, county: San Juan, state: PR }', 2021],
  ])('%s', async (_, place, edition) => {
    expect(await kind(place, `code: { title: IBC, edition: ${edition} }`)).toBe('review');
  });
  it('not for a zone that both tables refuse', async () => {
    expect(await kind('place: { zone: 5A, county: Alameda, state: CA }', 'code: { title: IBC, edition: 2018 }')).toBe(
      'fail',
    );
    expect(await kind('place: { zone: 5A, county: Bristol, state: VA }')).toBe('fail');
  });
});

describe('it stays open', () => {
  it.each([
    ['place: { county: Kusilvak, state: AK }', ['project.place.zone']],
    ['place: { county: Bristol, state: VA }', ['project.place.zone']],
    ['place: { zone: 5A, county: Cook, state: Ilinois }', ['project.place.state']],
    ['place: { zone: 5A, station: nowhere }', ['project.place.station']],
  ])('for %s', async (place, missing) => {
    expect((await review(place)).map((r) => [r.kind, r.missing])).toEqual([['open', missing]]);
  });
});

describe('it passes', () => {
  it.each([
    'place: { zone: "5", county: Cook, state: IL }',
    'place: { zone: 7A, county: St. Louis, state: MN }',
    'place: { zone: 5A, station: "725300" }',
    'place: { county: Baltimore, state: MD }',
  ])('%s', async (place) => {
    expect(await kind(place)).toBe('pass');
  });
});

describe('it says nothing', () => {
  it.each([
    ['where no place is stated', 'place: { zone: 5A }', undefined],
    ['of a state alone', 'place: { zone: 5A, state: IL }', undefined],
    ['without a place', '', undefined],
    ['under the Canadian code', 'place: { county: Simcoe, state: Ontario }', 'code: { title: NBC, edition: 2020 }'],
  ])('%s', async (_, place, code) => {
    expect(await review(place, code)).toEqual([]);
  });
  it('of a detail without a wall', async () => {
    expect(await review('place: { zone: 3A, county: Dallas, state: TX }', undefined, false)).toEqual([]);
  });
});
