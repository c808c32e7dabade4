/** The climate zone of a project document, as the vapor checks take it. */
import { describe, expect, it } from 'vitest';
import { readPage, reviewWith } from '../../tests/support/documents.js';
import interiorClass from '../../rules/vapor/interior-retarder-class.js';
import { editionOfProject, placeOfProject, zoneOfProject, zoneTextOfProject } from './project-place.js';
import type { Project } from '../model/types.js';

const WALL = `wall:
  - { id: board, material: gypsum board, finish: latex paint }
  - { id: sheet, material: polyethylene sheet }
  - { id: studs, material: mineral wool batt, thickness: 5-1/2 in, framing: { material: wood } }`;
const page = (place: string, code: string): ReturnType<typeof readPage> =>
  readPage(
    `\`\`\`yaml detail\nkind: detail\nid: d\ntitle: d\n${WALL}\n\`\`\`\n\`\`\`yaml project\nkind: project\nid: p\ntitle: p\nplace: ${place}\n${code}\n\`\`\`\n`,
  );
const project = async (place: string, code = 'code: { title: IBC, edition: 2021 }'): Promise<Project> =>
  (await page(place, code)).detail().project!;

describe('the place of a project', () => {
  it('is read with its station and its edition', async () => {
    const found = await project('{ county: Cook, state: Illinois, station: "725300" }');
    expect(placeOfProject(found)).toEqual({ zone: undefined, county: 'Cook', state: 'Illinois', station: '725300' });
    expect(editionOfProject(found)).toBe(2021);
    expect(editionOfProject(await project('{ zone: 5A }', ''))).toBeUndefined();
  });
  it.each([
    ['{ zone: 6A, county: Cook, state: IL }', '6A', 'declared'],
    ['{ county: Cook, state: IL }', '5A', 'county'],
    ['{ station: "725300" }', '5A', 'station'],
    ['{ county: Bristol, state: VA }', '4', 'county'],
  ])('%s gives %s, %s', async (place, zone, from) => {
    const found = await project(place);
    expect(zoneOfProject(found)).toMatchObject({ zone, from });
    expect(zoneTextOfProject(found)).toBe(zone);
  });
  it('gives no zone where none follows', async () => {
    expect(zoneTextOfProject(await project('{ county: Kook, state: IL }'))).toBeUndefined();
    expect(zoneTextOfProject(undefined)).toBeUndefined();
  });
});

describe('a vapor check', () => {
  const outcome = async (place: string, edition: number): Promise<string> => {
    const read = await page(place, `code: { title: IRC, edition: ${edition} }`);
    const [result] = reviewWith(read.detail(), [interiorClass]);
    return `${result?.kind} ${/climate zone \w+/.exec(result?.message ?? '')?.[0] ?? ''}`.trim();
  };
  it('takes the zone of the county in the edition: a class I retarder that 2021 bars in zone 3 stands in zone 5', async () => {
    // IRC 2021 Table R702.7(2): class I not permitted in zones 1 to 4 except marine 4.
    expect(await outcome('{ county: Marion, state: IN }', 2021)).toBe('fail climate zone 4A');
    expect(await outcome('{ county: Marion, state: IN }', 2018)).toBe('pass climate zone 5A');
    expect(await outcome('{ county: Cook, state: IL }', 2021)).toBe('pass climate zone 5A');
  });
  it('stays open where the county gives none', async () => {
    const read = await page('{ county: Kook, state: IL }', 'code: { title: IRC, edition: 2021 }');
    const [result] = reviewWith(read.detail(), [interiorClass]);
    expect(result).toMatchObject({ kind: 'open', missing: ['project.place.county'] });
    expect(result?.message).toContain('"Kook"');
  });
});
