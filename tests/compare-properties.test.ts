/** Changes that mean nothing must change nothing: ids, order, lines, files, indentation. */
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { dump, loadAll } from 'js-yaml';
import { describe, expect, it } from 'vitest';
import { compareSubmissions } from '../src/compare/compare.js';
import { submissionOfSarif } from '../src/compare/of-sarif.js';
import type { Comparison } from '../src/compare/types.js';
import { nameOf, submissionAt } from './support/compare.js';
import { DEMO, review, scratch } from './support/command.js';

type Plain = Record<string, unknown>;
const before = await submissionAt(DEMO);
const yamlFiles = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.yaml'))
    .sort();

/** A copy of the demo library in which each document of each YAML file was changed and written anew. */
function rewritten(change: (document: Plain) => Plain, indent = 2): string {
  const folder = scratch({}, DEMO);
  for (const name of yamlFiles(folder)) {
    const file = path.join(folder, name);
    const documents = (loadAll(readFileSync(file, 'utf8')) as Plain[]).map(change);
    writeFileSync(file, documents.map((one) => dump(one, { indent })).join('---\n'));
  }
  return folder;
}

async function comparedWith(folder: string): Promise<Comparison> {
  return compareSubmissions(before, await submissionAt(folder));
}

/** Results that are not what they were, told so that a failure can be read. */
const different = ({ pairs }: Comparison): string[] =>
  pairs
    .filter((pair) => pair.state !== 'unchanged')
    .map((pair) => `${pair.state} ${nameOf(pair)} ${JSON.stringify(pair.differences)}`);

/** New ids for the entries of one list, and for whatever refers to them. */
function renumbered(list: 'wall' | 'work' | 'openings', nameFor: (index: number) => string): (d: Plain) => Plain {
  const REFERS: Record<typeof list, readonly string[]> = {
    wall: ['layer'],
    work: ['of', 'tuckedUnder', 'tieIn'],
    openings: ['of'],
  };
  return (document) => {
    const entries = document[list] as Plain[] | undefined;
    if (document['kind'] !== 'detail' || entries === undefined) return document;
    const ids = new Map(entries.map((entry, i) => [String(entry['id']), nameFor(i)]));
    const renamed = (value: unknown): unknown =>
      Array.isArray(value) ? value.map(renamed) : (ids.get(String(value)) ?? value);
    const walk = (value: unknown, key: string): unknown => {
      if (key === 'lapsOnto' && list === 'work' && typeof value === 'object' && value !== null)
        return Object.fromEntries(Object.entries(value).map(([name, lap]) => [ids.get(name) ?? name, lap]));
      if (REFERS[list].includes(key) && !(typeof value === 'object' && !Array.isArray(value))) return renamed(value);
      if (Array.isArray(value)) return value.map((one) => walk(one, key === list ? list : ''));
      if (typeof value !== 'object' || value === null) return value;
      const copy = Object.fromEntries(Object.entries(value).map(([name, one]) => [name, walk(one, name)]));
      return key === list ? { ...copy, id: ids.get(String((value as Plain)['id'])) } : copy;
    };
    return Object.fromEntries(Object.entries(document).map(([key, value]) => [key, walk(value, key)]));
  };
}

const reversedKeys = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(reversedKeys);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, one]) => [key, reversedKeys(one)]),
  );
};

describe('nothing but unchanged results', () => {
  it('between a library and itself; and there are hundreds of results', async () => {
    const same = await comparedWith(DEMO);
    expect(different(same)).toEqual([]);
    expect(same.pairs.length).toBeGreaterThan(500);
    expect(same.changes).toEqual([]);
  });

  it.each<[string, () => string]>([
    ['layers are numbered instead of named', () => rewritten(renumbered('wall', (i) => `L${i + 1}`))],
    // Each layer but the last takes the id that its neighbor had.
    ['layers have bare numbers for ids', () => rewritten(renumbered('wall', (i) => String(i + 1)))],
    ['steps of work are numbered', () => rewritten(renumbered('work', (i) => `step-${i + 1}`))],
    ['openings are numbered', () => rewritten(renumbered('openings', (i) => `O-${i + 1}`))],
    ['keys stand in another order', () => rewritten((one) => reversedKeys(one) as Plain)],
    ['everything is written in block style with four spaces', () => rewritten((one) => one, 4)],
    [
      'lines moved',
      () => {
        const folder = scratch({}, DEMO);
        for (const name of yamlFiles(folder)) {
          const file = path.join(folder, name);
          writeFileSync(
            file,
            `# Second submission.\n\n\n${readFileSync(file, 'utf8').replace(/\nwork:/, '\n\n# Work\n\nwork:')}`,
          );
        }
        const letter = path.join(folder, 'submittal-07-27-26-03.md');
        writeFileSync(letter, `A word before.\n\n${readFileSync(letter, 'utf8')}`);
        return folder;
      },
    ],
    [
      'files have other names and lie in another folder',
      () => {
        const folder = scratch({}, DEMO);
        mkdirSync(path.join(folder, 'sheets'));
        readdirSync(path.join(folder, 'details')).forEach((name, i) =>
          renameSync(path.join(folder, 'details', name), path.join(folder, 'sheets', `sheet-${i + 1}.yaml`)),
        );
        renameSync(path.join(folder, 'submittal-07-27-26-03.md'), path.join(folder, 'letter.md'));
        return folder;
      },
    ],
    [
      'a product file is split in two, and its documents change places',
      () => {
        const folder = scratch({}, DEMO);
        const file = path.join(folder, 'products/accessories.yaml');
        const documents = readFileSync(file, 'utf8')
          .split(/^---\n/m)
          .reverse();
        expect(documents.length).toBeGreaterThan(2);
        writeFileSync(path.join(folder, 'products/one.yaml'), documents.slice(0, 1).join('---\n'));
        writeFileSync(path.join(folder, 'products/two.yaml'), documents.slice(1).join('---\n'));
        rmSync(file);
        return folder;
      },
    ],
  ])('when %s', async (_name, make) => {
    const folder = make();
    const compared = await comparedWith(folder);
    expect(different(compared)).toEqual([]);
    expect(compared.pairs).toHaveLength(before.results.length);
  });

  it('between a library and the SARIF file of its review', async () => {
    const { out } = await review(['--format', 'sarif', '--fail-on', 'never', DEMO]);
    const { submission } = submissionOfSarif('demo.sarif', out);
    expect(different(compareSubmissions(submission, before))).toEqual([]);
    expect(different(compareSubmissions(before, submission))).toEqual([]);
    // The same with new ids: nothing but the results tell which is which.
    const numbered = await submissionAt(rewritten(renumbered('wall', (i) => `L${i + 1}`)));
    const lost = compareSubmissions(submission, numbered);
    expect(lost.pairs.filter((pair) => pair.state === 'new' || pair.state === 'absent').map(nameOf)).toEqual([]);
  });
});

describe('a change that means something is seen, and only where it is', () => {
  it('one value of one step', async () => {
    const folder = scratch({}, DEMO);
    const file = path.join(folder, 'details/W-1-flanged-window.yaml');
    writeFileSync(file, readFileSync(file, 'utf8').replace(/(id: jambs.*?ontoWall: )6 in/, '$15-1/2 in'));
    const compared = await comparedWith(folder);
    expect(compared.changes).toHaveLength(1);
    expect(compared.pairs.filter((pair) => pair.state !== 'unchanged').map(nameOf)).toEqual(
      expect.arrayContaining([
        'W-1 | extension/onto-wall | left jamb of window',
        'W-1 | extension/onto-wall | right jamb of window',
      ]),
    );
    expect(
      new Set(compared.pairs.filter((pair) => pair.state !== 'unchanged').map((pair) => pair.after?.detail)),
    ).toEqual(new Set(['W-1']));
  });

  it('the floor and the ceiling of one value stay two checks', async () => {
    // The data sheet of the flashing says 12-15 mil: 10 mil is under the floor, and still under the ceiling.
    const folder = scratch({}, DEMO);
    const file = path.join(folder, 'details/W-1-flanged-window.yaml');
    writeFileSync(file, readFileSync(file, 'utf8').replace(/(id: pan,.*?wetFilm: )15 mil/, '$110 mil'));
    const pairs = (await comparedWith(folder)).pairs.filter(
      (pair) => nameOf(pair) === 'W-1 | film/within-range | wet film of pan',
    );
    expect(pairs.map(({ before: was, after }) => [was?.required, after?.required, after?.kind]).sort()).toEqual([
      ['at least 12 mil (of 12-15 mil)', 'at least 12 mil (of 12-15 mil)', 'fail'],
      ['at most 15 mil (of 12-15 mil)', 'at most 15 mil (of 12-15 mil)', 'pass'],
    ]);
  });

  it('any one step taken out: new and absent change places when the two are turned around', async () => {
    const file = 'details/W-4-louver.yaml';
    const text = readFileSync(path.join(DEMO, file), 'utf8');
    const steps = text
      .split('\n')
      .filter((line) => line.startsWith('  - { id: ') && text.indexOf(line) > text.indexOf('\nwork:'));
    expect(steps.length).toBeGreaterThan(8);
    for (const step of steps.filter((_, i) => i % 3 === 0)) {
      const after = await submissionAt(scratch({ [file]: text.replace(`${step}\n`, '') }, DEMO));
      const there = compareSubmissions(before, after);
      const back = compareSubmissions(after, before);
      const count = (one: Comparison, state: string): number => one.pairs.filter((pair) => pair.state === state).length;
      expect(count(back, 'new'), step).toBe(count(there, 'absent'));
      expect(count(back, 'absent'), step).toBe(count(there, 'new'));
      expect(count(back, 'unchanged'), step).toBe(count(there, 'unchanged'));
      expect(count(there, 'absent') + count(there, 'updated'), step).toBeGreaterThan(0);
    }
  });
});
