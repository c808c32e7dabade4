/**
 * Two submissions of tests/data/compare, whose README says what was changed between them. The expected states follow
 * from those changes and the requirements in the specification, by hand.
 */
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { changeText } from '../src/output/comparison/report.js';
import type { Comparison, Pair } from '../src/compare/types.js';
import { compareFolders, nameOf } from './support/compare.js';
import { ROOT, scratch } from './support/command.js';

const FIRST = path.join(ROOT, 'tests/data/compare/first');
const SECOND = path.join(ROOT, 'tests/data/compare/second');
const comparison = await compareFolders(FIRST, SECOND);
const back = await compareFolders(SECOND, FIRST);

const pairNamed = (name: string, within: Comparison = comparison): Pair => {
  const found = within.pairs.filter((pair) => nameOf(pair) === name);
  if (found[0] === undefined || found.length > 1) throw new Error(`${found.length} results are called "${name}"`);
  return found[0];
};
const changesFor = (name: string): string[] => pairNamed(name).explanations.map(({ change }) => changeText(change));

describe('what became of each item', () => {
  // The specification asks for 4 in onto the wall, 4 in of end dam, 3 in of collar.
  it.each<[string, string, string]>([
    ['S-1 | extension/onto-wall | left jamb of window', 'updated', 'corrected'], // 3 in, now 4 in
    ['S-1 | extension/onto-wall | right jamb of window', 'updated', 'corrected'],
    ['S-1 | extension/onto-wall | head of window', 'updated', 'newly broken'], // 6 in, now 3 in
    ['S-1 | extension/onto-wall | sill of window', 'unchanged', 'unchanged'], // 6 in both times
    ['S-1 | sill/end-dam-height | end dams of window', 'updated', 'answered'], // not stated, now 6 in
    ['S-1 | lap/jamb-over-pan | left jamb of window', 'updated', 'answered'],
    ['S-1 | lap/jamb-over-pan | right jamb of window', 'updated', 'answered'],
    ['S-1 | water/unit-leak | leak at the unit in window', 'updated', 'answered'],
    ['S-1 | extension/past-jambs | sill of window', 'unchanged', 'still open'], // nobody says how much is required
    ['S-1 | extension/past-jambs | head of window', 'unchanged', 'still open'],
    ['S-1 | extension/field-lap | field at window', 'updated', 'unchanged'], // 3 in; 2 in was required, now 3 in
    ['S-2 | extension/penetration-collar | penetration pipe', 'updated', 'still open'], // 1 in, now 2 in
    ['S-2 | submittal/conditions-covered | drawings of sheathing joints', 'updated', 'accepted'],
    ['S-3 | extension/penetration-collar | penetration vent', 'absent', 'no longer checked'], // taken out
    ['S-4 | extension/penetration-collar | penetration conduit', 'new', 'new'], // 2 in, in a new detail
  ])('%s: %s, %s', (name, state, progress) => {
    expect(pairNamed(name)).toMatchObject({ state, progress });
  });

  it('there is nothing else to tell of', () => {
    const { counts } = comparison;
    expect(counts).toEqual({
      ...counts,
      corrected: 2,
      // Three of the details, and nine questions on product data and weather that neither submission answers.
      'still open': 12,
      new: 1,
      'newly broken': 1,
      answered: 4,
      accepted: 1,
      'no longer checked': 1,
      'answered, and fails': 0,
      'no longer accepted': 0,
      'newly open': 0,
    });
  });

  it('says the value before and now, and what is required', () => {
    const { differences } = pairNamed('S-2 | extension/penetration-collar | penetration pipe');
    expect(differences).toEqual([{ what: 'provided', before: '1 in', after: '2 in' }]);
    expect(pairNamed('S-1 | extension/field-lap | field at window').differences).toEqual([
      { what: 'required', before: 'at least 2 in', after: 'at least 3 in' },
    ]);
  });
});

describe('the other way around', () => {
  it('new and absent change places, and the rest are the same pairs', () => {
    const of = ({ pairs }: Comparison, state: string): string[] =>
      pairs
        .filter((pair) => pair.state === state)
        .map((pair) => `${pair.before?.number ?? ''}`)
        .sort();
    const turned = ({ pairs }: Comparison, state: string): string[] =>
      pairs
        .filter((pair) => pair.state === state)
        .map((pair) => `${pair.after?.number ?? ''}`)
        .sort();
    expect(turned(back, 'new')).toEqual(of(comparison, 'absent'));
    expect(of(back, 'absent')).toEqual(turned(comparison, 'new'));
    expect(turned(back, 'updated')).toEqual(of(comparison, 'updated'));
    expect(turned(back, 'unchanged')).toEqual(of(comparison, 'unchanged'));
    expect(of(comparison, 'absent').length).toBeGreaterThan(10);
  });

  it('what was corrected is newly broken, and what was answered is newly open', () => {
    expect(pairNamed('S-1 | extension/onto-wall | left jamb of window', back).progress).toBe('newly broken');
    expect(pairNamed('S-1 | extension/onto-wall | head of window', back).progress).toBe('corrected');
    expect(pairNamed('S-1 | sill/end-dam-height | end dams of window', back).progress).toBe('newly open');
    expect(pairNamed('S-2 | submittal/conditions-covered | drawings of sheathing joints', back).progress).toBe(
      'no longer accepted',
    );
  });
});

describe('what changed in the documents', () => {
  it('a result is explained by the values it rests on, and by no other', () => {
    expect(changesFor('S-1 | extension/onto-wall | left jamb of window')).toEqual([
      'S-1 work/jambs/ontoWall changed: 3 in -> 4 in',
    ]);
    expect(changesFor('S-1 | extension/onto-wall | head of window')).toEqual([
      'S-1 work/head/ontoWall changed: 6 in -> 3 in',
    ]);
    expect(changesFor('S-1 | sill/end-dam-height | end dams of window')).toEqual(['S-1 work/pan/endDams added: 6 in']);
  });

  it('a limit that moved in the specification explains too', () => {
    expect(changesFor('S-1 | lap/pan-over-barrier | pan of window')).toEqual([
      'specification.yaml requirements/3.4.A lap/atLeast changed: 2 in -> 3 in',
    ]);
  });

  it('each side of a change has its own file and line', () => {
    const [explanation] = pairNamed('S-1 | extension/onto-wall | left jamb of window').explanations;
    const lineOf = (file: string): number =>
      readFileSync(file, 'utf8')
        .split('\n')
        .findIndex((line) => line.includes('id: jambs')) + 1;
    expect(explanation?.change.before?.position).toMatchObject({
      uri: 'S-1.yaml',
      line: lineOf(path.join(FIRST, 'S-1.yaml')),
    });
    expect(explanation?.change.after?.position).toMatchObject({
      uri: 'windows/S-1-hall.yaml',
      line: lineOf(path.join(SECOND, 'windows/S-1-hall.yaml')),
    });
  });

  it('what no check rests on is listed by itself: titles, new ids, files', () => {
    const told = comparison.withoutEffect.map(changeText);
    expect(told).toEqual(
      expect.arrayContaining([
        'S-2 title changed: Pipe through the wall of the pump room -> Pipe through the north wall of the pump room',
        'S-1 wall/4 renamed: coat -> 4',
        'S-1 moved: S-1.yaml -> windows/S-1-hall.yaml',
        'product wall-coat moved: products.yaml -> products-coatings.yaml',
      ]),
    );
    expect(told.filter((text) => /ontoWall|endDams|extends|atLeast/.test(text))).toEqual([]);
  });

  it('nothing is told of keys in another order, of indentation and of comments', () => {
    const paths = (comparison.changes ?? [])
      .filter((one) => one.document.id === 'S-1')
      .map((one) => one.steps[0] ?? '');
    expect(new Set(paths)).toEqual(new Set(['', 'project', 'wall', 'work']));
    expect(comparison.changes?.filter((one) => one.document.id === 'S-1' && one.steps[0] === 'work')).toHaveLength(3);
  });
});

describe('requirements', () => {
  it('by paragraph: onto the wall fails in fewer places, the collar in one more', () => {
    const told = comparison.requirements.map(({ source, status, before, after }) => [
      source.citation,
      status,
      before,
      after,
    ]);
    expect(told).toContainEqual(['Section 07 27 26, 3.3.A', 'fewer findings', 2, 1]);
    // S-2 as before, S-4 new; S-3 was taken out, so it counts on neither side.
    expect(told).toContainEqual(['Section 07 27 26, 3.5.A', 'more findings', 1, 2]);
    // The missing drawing was accepted: it still counts.
    expect(told).toHaveLength(2);
  });
});

describe('what cannot be said', () => {
  it('a finding in a file that cannot be read any more is not corrected', async () => {
    const folder = scratch({ 'S-2.yaml': 'kind: detail\nid: S-2\n  title: x\n' }, FIRST);
    const broken = await compareFolders(FIRST, folder);
    expect(pairNamed('S-2 | extension/penetration-collar | penetration pipe', broken).progress).toBe(
      'no longer checked',
    );
    expect(broken.counts.corrected).toBe(0);
    const mended = await compareFolders(folder, FIRST);
    expect(mended.pairs.find((pair) => pair.before?.rule === 'document/malformed-yaml')?.progress).toBe('corrected');
  });

  it('a finding of a rule that is switched off is not corrected', async () => {
    const folder = scratch({}, FIRST);
    writeFileSync(
      path.join(folder, 'lapwright.yaml'),
      'kind: settings\ndocuments: [products.yaml]\nrules:\n  extension/penetration-collar: { level: off }\n',
    );
    const off = await compareFolders(FIRST, folder);
    const pair = pairNamed('S-2 | extension/penetration-collar | penetration pipe', off);
    expect(pair).toMatchObject({ state: 'absent', progress: 'no longer checked' });
    expect(pair.explanations.map(({ change }) => change.document.kind)).toContain('settings');
  });

  it('a finding about a pipe that was taken out is not corrected', async () => {
    const folder = scratch({}, FIRST);
    const file = path.join(folder, 'S-2.yaml');
    const text = readFileSync(file, 'utf8')
      .replace(/penetrations:\n.*\n/, '')
      .replace(/.*id: (?:pipe-in|collar|collar-look),.*\n/g, '');
    writeFileSync(file, text);
    const without = await compareFolders(FIRST, folder);
    expect(pairNamed('S-2 | extension/penetration-collar | penetration pipe', without).progress).toBe(
      'no longer checked',
    );
  });

  it('a finding of a detail that was taken out is not corrected', async () => {
    const folder = scratch({}, FIRST);
    rmSync(path.join(folder, 'S-2.yaml'));
    expect((await compareFolders(FIRST, folder)).counts).toMatchObject({ corrected: 0, 'no longer checked': 2 });
  });
});
