import { describe, expect, it } from 'vitest';
import { alignDocuments } from './align-documents.js';
import { changesOf } from './changes.js';
import { inSameOrder, pairEntries } from './entries.js';
import type { ReadDocument } from '../reading/types.js';
import { readYamlDocuments } from '../reading/documents.js';
import { sourceFile } from '../reading/source.js';

function read(text: string, uri = 'W-1.yaml'): ReadDocument[] {
  const { documents, problems } = readYamlDocuments(sourceFile(uri, text), { named: true });
  if (problems.length > 0) throw new Error(problems.map((one) => one.message).join('\n'));
  return [...documents];
}

const detail = (wall: string, work = '', more = ''): string =>
  `kind: detail\nid: W-1\ntitle: Wall\n${more}wall:\n${wall}${work === '' ? '' : `work:\n${work}`}`;
const BOARD = '  - { id: board, material: gypsum board, thickness: 5/8 in }\n';
const STUDS = '  - { id: studs, material: mineral wool batt, thickness: 6 in }\n';
const BRICK = '  - { id: brick, material: clay brick, thickness: 3-5/8 in }\n';

function told(before: string, after: string): string[] {
  return changesOf(alignDocuments(read(before), read(after))).map(
    ({ kind, steps, before: was, after: is }) => `${kind} ${steps.join('/')}: ${was?.text ?? '-'} > ${is?.text ?? '-'}`,
  );
}

describe('changes by meaning', () => {
  it('a value, by the path of ids', () => {
    expect(told(detail(BOARD + STUDS), detail(BOARD + STUDS.replace('6 in', '5-1/2 in')))).toEqual([
      'changed wall/studs/thickness: 6 in > 5-1/2 in',
    ]);
  });

  it('an entry put in before the others is one entry, not a shift of all', () => {
    expect(told(detail(STUDS + BRICK), detail(BOARD + STUDS + BRICK))).toEqual([
      'added wall/board: - > { id: board, material: gypsum board, thickness: 5/8 in }',
    ]);
    const numbered = (text: string): string => {
      let count = 0;
      return text.replace(/id: \w+/g, () => `id: "${++count}"`);
    };
    expect(told(detail(numbered(STUDS + BRICK)), detail(numbered(BOARD + STUDS + BRICK)))).toEqual([
      'added wall/1: - > { id: 1, material: gypsum board, thickness: 5/8 in }',
      'renamed wall/2: 1 > 2',
      'renamed wall/3: 2 > 3',
    ]);
  });

  it('an entry taken out, and one that moved', () => {
    expect(told(detail(BOARD + STUDS + BRICK), detail(BOARD + BRICK))).toEqual([
      'removed wall/studs: { id: studs, material: mineral wool batt, thickness: 6 in } > -',
    ]);
    expect(told(detail(BOARD + STUDS + BRICK), detail(STUDS + BRICK + BOARD))).toEqual([
      'moved wall/board: place 1 > place 3, after "brick"',
    ]);
  });

  it('another material under another id is another layer', () => {
    expect(told(detail(BOARD + STUDS), detail(BOARD + BRICK)).map((text) => text.split(':')[0])).toEqual([
      'added wall/brick',
      'removed wall/studs',
    ]);
  });

  it('a collar of one pipe is not the collar of another, alike as they are', () => {
    const collar = (id: string, pipe: string): string =>
      `  - { id: ${id}, place: penetration, of: ${pipe}, product: flashing, extends: 3 in, wetFilm: 15 mil, wait: 1 h }\n`;
    const pipes =
      'penetrations:\n  - { id: a, at: { right: 1 in, up: 2 in }, diameter: 1 in }\n  - { id: b, at: { right: 9 in, up: 2 in }, diameter: 1 in }\n';
    expect(
      told(detail(BOARD, collar('one', 'a'), pipes), detail(BOARD, collar('two', 'b'), pipes)).map(
        (text) => text.split(':')[0],
      ),
    ).toEqual(['added work/two', 'removed work/one']);
  });

  it('a new id is told once, and not again wherever it is referred to', () => {
    const work = '  - { id: finish, place: interior face, layer: board }\n';
    const renamed = detail(BOARD.replace('id: board', 'id: lining'), work.replace('layer: board', 'layer: lining'));
    expect(told(detail(BOARD, work), renamed)).toEqual(['renamed wall/lining: board > lining']);
  });

  it('one value and a list of it alone are the same; white space and order of keys are nothing', () => {
    expect(
      told(
        detail(BOARD, '', 'drawings: [head]\nrevision: "2"\n'),
        detail(BOARD.replace('thickness: 5/8 in', 'thickness:   "5/8 in"'), '', 'revision: "2"\ndrawings: [head]\n'),
      ),
    ).toEqual([]);
  });

  it('words of a list in another order are moved, not changed', () => {
    const before = detail(BOARD, '', 'drawings: [head, jamb]\n');
    expect(told(before, detail(BOARD, '', 'drawings: [jamb, head]\n'))).toEqual([
      'moved drawings: [head, jamb] > [jamb, head]',
    ]);
    expect(told(before, detail(BOARD, '', 'drawings: [head, sill]\n'))).toEqual([
      'changed drawings: [head, jamb] > [head, sill]',
    ]);
  });

  it('each side stands at its own line', () => {
    const [change] = changesOf(
      alignDocuments(read(detail(STUDS)), read(`# Words\n${detail(STUDS.replace('6 in', '4 in'))}`)),
    );
    expect([change?.before?.position.line, change?.after?.position.line]).toEqual([5, 6]);
  });
});

describe('documents', () => {
  const other = (id: string, title: string): string => `kind: detail\nid: ${id}\ntitle: ${title}\nwall:\n${STUDS}`;

  it('another id with the same title is the same detail; with another title it is another one', () => {
    expect(
      changesOf(alignDocuments(read(other('A', 'Base')), read(other('B', 'Base')))).map((one) => one.kind),
    ).toEqual(['renamed']);
    expect(
      changesOf(alignDocuments(read(other('A', 'Base')), read(other('B', 'Parapet')))).map((one) => one.kind),
    ).toEqual(['added', 'removed']);
  });

  /** Details whose ids tell nothing of what they were before. */
  const library = (ids: string, count: number, title: (i: number) => string): ReadDocument[] =>
    Array.from({ length: count }, (_, i) => read(other(`${ids}${i}`, title(i)), `${ids}${i}.yaml`)).flat();

  it('hundreds with new ids and files are the same ones, by their titles', () => {
    const title = (i: number): string => `Detail ${i}`;
    const { pairs, added, removed, remarks } = alignDocuments(library('A', 300, title), library('B', 300, title));
    expect(pairs.map(({ before, after }) => [before.id.slice(1), after.id.slice(1)])).toEqual(
      Array.from({ length: 300 }, (_, i) => [`${i}`, `${i}`]),
    );
    expect([added, removed, remarks]).toEqual([[], [], []]);
  });

  it('too many that nothing tells apart are left, and it is said', () => {
    const { pairs, removed, remarks } = alignDocuments(
      library('A', 300, () => 'Wall'),
      library('B', 300, () => 'Wall'),
    );
    expect([pairs.length, removed.length]).toEqual([0, 300]);
    expect(remarks.join()).toContain('300 detail documents of the old submission and 300 of the new one');
  });
});

describe('entries', () => {
  it('thousands of them are paired by id in no time', () => {
    const many = Array.from({ length: 20_000 }, (_, i) => ({ id: `e${i}`, thickness: `${i} in` }));
    const start = performance.now();
    expect(pairEntries(many, [...many].reverse(), new Map())).toHaveLength(20_000);
    expect(performance.now() - start).toBeLessThan(5000);
  });

  it('the longest run that keeps its order stays', () => {
    expect([...inSameOrder([3, 0, 1, 2])].sort()).toEqual([0, 1, 2]);
    expect([...inSameOrder([1, 0])]).toHaveLength(1);
    expect([...inSameOrder([])]).toEqual([]);
  });
});
