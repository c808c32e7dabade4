import { describe, expect, it } from 'vitest';
import { folderWith } from './testing/folders.js';
import { loadLibrary } from './library.js';
import { isPath } from './references.js';

const detail = (id: string): string => `kind: detail\nid: ${id}\ntitle: T\n`;
const submittal = (more = ''): string =>
  `kind: submittal\nnumber: 07 27 26-03\nsection: "07 27 26"\ntitle: Openings\n${more}`;
const load = (files: Readonly<Record<string, string>>, input: string) =>
  loadLibrary([input], { cwd: folderWith({ '.git/HEAD': '', 'lapwright.yaml': 'kind: settings\n', ...files }) });

describe('a submittal', () => {
  it('is known by its number', async () => {
    const library = await load({ 's.yaml': submittal() }, 's.yaml');
    expect(library.problems).toEqual([]);
    expect(library.documents.map((d) => `${d.kind} ${d.id}`)).toContain('submittal 07 27 26-03');
  });

  it('brings the details it names by files, and those are not what it uses', async () => {
    const files = {
      's.yaml': submittal('details: [d/*.yaml, other.md, W-9]\nproject: p.yaml\n'),
      'd/w-1.yaml': `${detail('W-1')}---\nkind: product\nid: own\nname: Own\nfamily: tape\n`,
      'other.md': `\`\`\`yaml detail\n${detail('W-2')}\`\`\`\n`,
      'p.yaml': 'kind: project\nid: p\ntitle: P\n',
    };
    const library = await load(files, 's.yaml');
    expect(library.problems).toEqual([]);
    const document = library.documents.find((d) => d.kind === 'submittal')!;
    expect(library.detailsNamed(document).map((d) => d.id)).toEqual(['W-1', 'W-2']);
    const reach = library.reach(document);
    expect(reach.project?.id).toBe('p');
    expect([...reach.products.keys()]).toEqual([]);
  });

  it('lends its references to the details of its own file', async () => {
    const files = {
      's.md': `\`\`\`yaml submittal\n${submittal('project: p.yaml\ndocuments: [a.yaml]\n')}\`\`\`\n\n\`\`\`yaml detail\n${detail('N-1')}\`\`\`\n`,
      'p.yaml': 'kind: project\nid: p\ntitle: P\n',
      'a.yaml': 'kind: product\nid: a\nname: A\nfamily: tape\n',
    };
    const library = await load(files, 's.md');
    const reach = library.reach(library.documents.find((d) => d.kind === 'detail')!);
    expect([reach.project?.id, ...reach.products.keys()]).toEqual(['p', 'a']);
  });

  it('that names its own file closes no circle', async () => {
    const text = `\`\`\`yaml submittal\n${submittal('details: [s.md]\n')}\`\`\`\n\n\`\`\`yaml detail\n${detail('N-1')}\`\`\`\n`;
    const library = await load({ 's.md': text }, 's.md');
    expect(library.problems).toEqual([]);
    expect(library.detailsNamed(library.documents.find((d) => d.kind === 'submittal')!)).toHaveLength(1);
  });

  it('is told where a path leads nowhere or out of the library', async () => {
    const of = async (path: string) =>
      (await load({ 's.yaml': submittal(`details: ["${path}"]\n`) }, 's.yaml')).problems.map((p) => p.code);
    expect(await of('d/w-1.yaml')).toEqual(['unknown-reference']);
    expect(await of('../../w-1.yaml')).toEqual(['unsafe-content']);
  });

  it.each([
    ['W-1', false],
    ['3.10', false],
    ['N_2.b', false],
    ['details/W-1', true],
    ['W-*', true],
    ['W-1.yaml', true],
    ['w.MD', true],
  ])('takes %s for a path: %s', (word, expected) => {
    expect(isPath(word)).toBe(expected);
  });
});

describe('a deviation', () => {
  it('names a rule or a paragraph', async () => {
    const of = async (entry: string) =>
      (await load({ 's.yaml': submittal(`deviations: [{ ${entry} }]\n`) }, 's.yaml')).problems.map((p) => p.message);
    expect(await of('rule: lap/end-dam, reason: R.')).toEqual([]);
    expect(await of('paragraph: "3.2.B", reason: R.')).toEqual([]);
    expect(await of('rule: lap/end-dam, paragraph: "3.2.B", reason: R.')).toEqual([]);
    const [message, ...more] = await of('reason: R.');
    expect(more).toEqual([]);
    expect(message).toContain('"rule"');
    expect(message).toContain('"paragraph"');
  });
});
