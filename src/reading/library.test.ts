import { mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { UnusableInput, loadLibrary } from './library.js';
import type { Library, LibraryOptions } from './library.js';
import { lineColumn } from './source.js';
import { folderWith } from './testing/folders.js';

const product = (id: string): string => `kind: product\nid: ${id}\nname: ${id}\nfamily: tape\n`;
const project = (id: string, documents = ''): string =>
  `kind: project\nid: ${id}\ntitle: ${id}\n${documents && `documents: [${documents}]\n`}`;
const specification = (documents = ''): string =>
  `kind: specification\nsection: "07 27 26"\ntitle: Air barriers\n${documents && `documents: [${documents}]\n`}requirements:\n  - { paragraph: 3.4.B.2, property: extension onto wall, atLeast: 4 in }\n`;
const settings = (more = ''): string => `kind: settings\n${more}`;
const detail = (id: string, more = ''): string =>
  `kind: detail\nid: ${id}\ntitle: ${id}\n${more}wall:\n  - { id: board, material: gypsum board, thickness: 5/8 in }\n`;

const load = (folder: string, inputs = ['.'], more: Partial<LibraryOptions> = {}): Promise<Library> =>
  loadLibrary(inputs, { cwd: folder, ...more });
const names = ({ documents }: Library): string[] => documents.map(({ kind, file }) => `${kind} ${file.uri}`);
const problems = (library: Library) =>
  library.problems.map(({ code, message, file, span, related }) => {
    const { line, column } = lineColumn(file, span.start);
    return {
      code,
      message,
      at: `${file.uri}:${line}:${column}`,
      text: file.text.slice(span.start, span.end),
      ...(related && { related: related.map((place) => place.file.uri) }),
    };
  });
const found = (library: Library, id: string) => {
  const document = library.documents.find((each) => each.id === id);
  if (!document) throw new Error(`no ${id} among ${names(library).join(', ')}`);
  return document;
};

describe('a folder', () => {
  it('is searched for documents, in the order of their paths by code unit', async () => {
    const folder = folderWith({
      'b.yaml': product('b'),
      'B.yml': product('B'),
      'a/z.yaml': product('z'),
      'a-b.json': '{"kind":"product","id":"j","name":"j","family":"tape"}',
      'c.md': `\`\`\`yaml product\n${product('c')}\`\`\`\n`,
      'x.txt': product('x'),
    });
    const library = await load(folder);
    expect(problems(library)).toEqual([]);
    expect(names(library)).toEqual([
      'product B.yml',
      'product a-b.json',
      'product a/z.yaml',
      'product b.yaml',
      'product c.md',
    ]);
    expect(library.files.map(({ uri }) => uri)).toEqual(['B.yml', 'a-b.json', 'a/z.yaml', 'b.yaml', 'c.md']);
    expect(library.documents.every((document) => library.reviewed(document))).toBe(true);
    expect(library.root).toBe(folder);
  });

  it('is searched without node_modules and folders that begin with a dot', async () => {
    const folder = folderWith({
      'a.yaml': product('a'),
      'node_modules/b.yaml': product('b'),
      '.c/c.yaml': product('c'),
      'd/node_modules/e/e.yaml': product('e'),
    });
    expect(names(await load(folder))).toEqual(['product a.yaml']);
  });

  it('may hold YAML of other purposes, which is passed over unless it is named', async () => {
    const folder = folderWith({
      'a.yaml': product('a'),
      'build.yaml': 'steps: &s [a]\nmore: *s\n',
      'package.json': '{"name":"x"}',
      'README.md': '# kind: detail\n',
    });
    const library = await load(folder);
    expect(problems(library)).toEqual([]);
    expect(library.files.map(({ uri }) => uri)).toEqual(['a.yaml']);
    expect(problems(await load(folder, ['build.yaml'])).map(({ code }) => code)).toEqual([
      'unsafe-content',
      'unsafe-content',
    ]);
    expect(problems(await load(folder, ['build.yaml'], { skipOthers: true }))).toEqual([]);
    expect((await load(folder, ['README.md'])).notices).toEqual([
      'No Lapwright documents found in README.md; in Markdown a document is a block that begins with "yaml" and its kind.',
    ]);
  });

  it('without documents is noticed', async () => {
    const folder = folderWith({ 'x/build.yaml': 'steps: []\n' });
    expect((await load(folder, ['x'])).notices).toEqual([
      'No Lapwright documents found under x; a document starts with "kind:", for example "kind: detail".',
    ]);
  });

  it('is the same library from wherever it is read', async () => {
    const folder = folderWith({
      '.git/HEAD': '',
      'details/a.yaml': detail('A', 'project: ../project.yaml\n'),
      'project.yaml': project('P'),
    });
    const near = await load(join(folder, 'details'), ['a.yaml']);
    const far = await load(folder, ['details/a.yaml']);
    expect(near.root).toBe(folder);
    expect(names(near)).toEqual(['detail details/a.yaml', 'project project.yaml']);
    expect(names(far)).toEqual(names(near));
  });
});

describe('the root', () => {
  const tree = { 'a/b/x.yaml': product('x'), 'a/c/y.yaml': product('y') };

  it('is the nearest folder with settings', async () => {
    const folder = folderWith({
      ...tree,
      '.git/HEAD': '',
      'a/lapwright.yaml': settings(),
      'lapwright.yaml': settings(),
    });
    const library = await load(folder, ['a/b/x.yaml']);
    expect(library.root).toBe(join(folder, 'a'));
    expect(library.settings?.file.uri).toBe('lapwright.yaml');
    expect(library.settings && library.reviewed(library.settings)).toBe(false);
  });

  it('is else the root of the repository', async () => {
    const folder = folderWith({ ...tree, '.git/HEAD': '' });
    expect((await load(folder, ['a/b/x.yaml'])).root).toBe(folder);
  });

  it('is else the folder that all inputs share', async () => {
    const folder = folderWith(tree);
    expect((await load(folder, ['a/b/x.yaml'])).root).toBe(join(folder, 'a/b'));
    expect((await load(folder, ['a/b/x.yaml', 'a/c'])).root).toBe(join(folder, 'a'));
  });

  it('is not above the repository, whatever settings lie there', async () => {
    const folder = folderWith({ 'lapwright.yaml': settings(), 'repo/.git/HEAD': '', 'repo/x.yaml': product('x') });
    const library = await load(folder, ['repo/x.yaml']);
    expect(library.root).toBe(join(folder, 'repo'));
    expect(library.settings).toBeUndefined();
  });

  it('holds settings under that name and nothing else', async () => {
    expect(problems(await load(folderWith({ 'lapwright.yaml': product('x') })))).toEqual([
      {
        code: 'unknown-kind',
        at: 'lapwright.yaml:1:7',
        text: 'product',
        message:
          'lapwright.yaml is kept for the settings of the library; begin it with "kind: settings", or rename the file.',
      },
    ]);
    expect(problems(await load(folderWith({ 'lapwright.yaml': `${settings()}---\n${settings()}` })))).toEqual([
      {
        code: 'repeated-id',
        at: 'lapwright.yaml:3:7',
        text: 'settings',
        message: 'A library has one settings document; join this one with the first.',
      },
    ]);
    const elsewhere = await load(folderWith({ 'lapwright.yaml': settings(), 'more.yaml': settings() }));
    expect(elsewhere.settings?.file.uri).toBe('lapwright.yaml');
    expect(elsewhere.notices).toEqual([
      'more.yaml holds settings that have no effect; settings are read from lapwright.yaml at the root of the library.',
    ]);
  });
});

describe('what is left out', () => {
  it('is what .gitignore files say, from the root of the repository down', async () => {
    const folder = folderWith({
      '.git/HEAD': '',
      '.gitignore': '*.draft.yaml\n/out/\nold\n',
      'lib/lapwright.yaml': settings(),
      'lib/a.yaml': product('a'),
      'lib/a.draft.yaml': product('d'),
      'lib/old/b.yaml': product('b'),
      'lib/out/c.yaml': product('c'),
      'out/c.yaml': product('o'),
      'lib/keep/.gitignore': '!k.draft.yaml\n',
      'lib/keep/k.draft.yaml': product('k'),
      'lib/keep/l.draft.yaml': product('l'),
    });
    expect(names(await load(folder, ['lib']))).toEqual(
      [
        'product lib/a.yaml',
        'product lib/keep/k.draft.yaml',
        'settings lib/lapwright.yaml',
        'product lib/out/c.yaml',
      ].map((name) => name.replace('lib/', '')),
    );
  });

  it('is what the settings say', async () => {
    const folder = folderWith({
      'lapwright.yaml': settings('ignore: ["archive/**", "*.old.yaml"]\n'),
      'a.yaml': product('a'),
      'archive/b.yaml': product('b'),
      'c.old.yaml': product('c'),
    });
    expect(names(await load(folder))).toEqual(['product a.yaml', 'settings lapwright.yaml']);
  });

  it('is noticed when it is named', async () => {
    const folder = folderWith({ 'lapwright.yaml': settings('ignore: [old]\n'), 'old/b.yaml': product('b') });
    for (const input of ['old/b.yaml', 'old']) {
      const library = await load(folder, [input]);
      expect(library.notices).toEqual([
        `${input} is left out by .gitignore or by "ignore" of the settings and was not read.`,
      ]);
      expect(names(library)).toEqual(['settings lapwright.yaml']);
    }
  });

  it('can still be referred to', async () => {
    const folder = folderWith({
      'lapwright.yaml': settings('ignore: [old]\n'),
      'a.yaml': detail('A', 'documents: [old/b.yaml]\n'),
      'old/b.yaml': product('b'),
    });
    const library = await load(folder, ['a.yaml']);
    expect(problems(library)).toEqual([]);
    expect([...library.reach(found(library, 'A')).products.keys()]).toEqual(['b']);
  });
});

describe('inputs', () => {
  it('may be patterns', async () => {
    const folder = folderWith({
      'd/w-1.yaml': product('a'),
      'd/w-2.yaml': product('b'),
      'd/x.yaml': product('c'),
      'd/e/w-3.yaml': product('d'),
    });
    expect(names(await load(folder, ['d/w-*.yaml'])).map((name) => name.slice(8))).toEqual(['w-1.yaml', 'w-2.yaml']);
    expect(names(await load(folder, ['d/**/w-{1,3}.yaml']))).toHaveLength(2);
    expect(names(await load('/', [join(folder, 'd/w-*.yaml')]))).toHaveLength(2);
  });

  it('are files first and patterns second', async () => {
    const folder = folderWith({ 'w-*.yaml': product('star'), 'w-2.yaml': product('b') });
    expect(names(await load(folder, ['w-*.yaml']))).toEqual(['product w-*.yaml']);
  });

  it('may be standard input, in place of the file it is named after', async () => {
    const folder = folderWith({ 'd/a.yaml': product('old'), 'd/p.yaml': project('P') });
    const plain = await load(folder, ['-'], { stdin: { text: detail('A', 'project: d/p.yaml\n') } });
    expect(names(plain)).toEqual(['detail -', 'project d/p.yaml']);
    const asFile = await load(folder, ['-'], { stdin: { text: detail('A', 'project: p.yaml\n'), name: 'd/a.yaml' } });
    expect(problems(asFile)).toEqual([]);
    expect(names(asFile)).toEqual(['detail a.yaml', 'project p.yaml']);
    const markdown = await load(folder, ['-'], {
      stdin: { text: `\`\`\`yaml product\n${product('m')}\`\`\`\n`, name: 'new.md' },
    });
    expect(names(markdown)).toEqual(['product new.md']);
  });

  it('may be the settings on standard input', async () => {
    const folder = folderWith({ 'lapwright.yaml': settings(), 'a.yaml': product('a') });
    const library = await load(folder, ['-', '.'], {
      stdin: { text: settings('ignore: [a.yaml]\n'), name: 'lapwright.yaml' },
    });
    expect(names(library)).toEqual(['settings lapwright.yaml']);
  });

  it.each([
    [['nope.yaml'], 'There is no file or folder nope.yaml; check the path, or give a folder to look in.'],
    [['*.nope'], 'No document matches *.nope; check the pattern, or give a folder to look in.'],
    [
      ['a.pdf'],
      'a.pdf is not a kind of file that is read; give a folder or a file that ends in .yaml, .yml, .json, .md, .markdown.',
    ],
    [['-'], '"-" stands for standard input, but none was given; give a file or a folder.'],
  ])('that name nothing stop the reading: %s', async (inputs, message) => {
    const folder = folderWith({ 'a.pdf': 'x' });
    await expect(load(folder, inputs)).rejects.toThrow(UnusableInput);
    await expect(load(folder, inputs)).rejects.toThrow(message);
  });

  it('may overlap; each file is read once', async () => {
    const folder = folderWith({ 'a.yaml': product('a') });
    symlinkSync(join(folder, 'a.yaml'), join(folder, 'b.yaml'));
    const library = await load(folder, ['.', 'a.yaml', './a.yaml', 'b.yaml']);
    expect(names(library)).toEqual(['product a.yaml']);
  });

  it('may bring the rest of their library, which was not asked for', async () => {
    const folder = folderWith({
      'lapwright.yaml': settings(),
      'a.yaml': product('a'),
      'd/b.yaml': detail('B'),
      'x.md': `\`\`\`yaml product\n${product('c')}\`\`\`\n`,
    });
    const library = await load(folder, ['a.yaml'], { whole: true });
    expect(names(library)).toEqual(['product a.yaml', 'detail d/b.yaml', 'settings lapwright.yaml', 'product x.md']);
    expect(library.documents.filter((document) => library.reviewed(document)).map(({ id }) => id)).toEqual(['a']);
  });
});

describe('files that cannot be read', () => {
  it('are told, the others are read', async () => {
    const latin = Buffer.from([...Buffer.from('kind: detail\nid: caf'), 0xe9]);
    const folder = folderWith({
      'a.yaml': latin,
      'b.yaml': product('b'),
      'c.yaml': `kind: detail\nnote: ${'x'.repeat(1024 * 1024)}\n`,
      'lock.yaml': `a: ${'x'.repeat(1024 * 1024)}\n`,
      'd.yaml': '',
      'image.json': Buffer.from([0xff, 0xd8]),
      'log.md': 'x'.repeat(1024 * 1024 + 1),
    });
    const library = await load(folder);
    expect(problems(library).map(({ code, at, message }) => [code, at, message])).toEqual([
      ['unreadable-file', 'a.yaml:1:1', 'The file is not UTF-8 text; save it as UTF-8.'],
      [
        'unsafe-content',
        'c.yaml:1:1',
        'The file has 1048596 bytes and the limit is 1048576; split it into smaller files.',
      ],
      [
        'empty-file',
        'd.yaml:1:1',
        'The file is empty or holds only comments; a document begins with "kind:", for example "kind: detail".',
      ],
    ]);
    expect(names(library)).toEqual(['product b.yaml']);
  });
});

describe('references', () => {
  it('bring documents that were not asked for', async () => {
    const folder = folderWith({
      '.git/HEAD': '',
      'd/a.yaml': detail('A', 'project: ../project.yaml\ndocuments: [p/*.yaml]\n'),
      'd/p/x.yaml': product('x'),
      'd/p/y.yaml': product('y'),
      'project.yaml': project('P', 'specs/s.md'),
      'specs/s.md': `Section.\n\n\`\`\`yaml specification\n${specification('../more/z.yaml')}\`\`\`\n`,
      'more/z.yaml': product('z'),
      'unused.yaml': product('u'),
    });
    const library = await load(folder, ['d/a.yaml']);
    expect(problems(library)).toEqual([]);
    expect(names(library)).toEqual([
      'detail d/a.yaml',
      'product d/p/x.yaml',
      'product d/p/y.yaml',
      'product more/z.yaml',
      'project project.yaml',
      'specification specs/s.md',
    ]);
    expect(library.documents.filter((document) => library.reviewed(document)).map(({ id }) => id)).toEqual(['A']);
    const reach = library.reach(found(library, 'A'));
    expect(reach.project?.id).toBe('P');
    expect([...reach.products.keys()]).toEqual(['x', 'y', 'z']);
    expect(reach.specifications.map(({ file }) => file.uri)).toEqual(['specs/s.md']);
  });

  it.each([
    ['project.yml', 'unknown-reference', 'project.yml does not exist; the nearest name there is project.yaml.'],
    ['prject.yaml', 'unknown-reference', 'prject.yaml does not exist; the nearest name there is project.yaml.'],
    ['zzz.yaml', 'unknown-reference', 'zzz.yaml does not exist.'],
    [
      'specs/a.yaml',
      'unknown-reference',
      'specs/a.yaml does not exist: there is no folder lib/specs; the nearest name there is spec.',
    ],
    ['spec', 'unknown-reference', 'spec is a folder; name a file, or write spec/*.yaml for all in it.'],
    [
      'sheet.pdf',
      'unknown-reference',
      'sheet.pdf is not a document that can be read; name a file that ends in .yaml, .yml, .json or .md.',
    ],
    ['other.yaml', 'unknown-reference', 'other.yaml holds no Lapwright document; a document begins with "kind:".'],
    ['nope/*.yaml', 'unknown-reference', 'nope/*.yaml matches nothing: the folder nope does not exist.'],
    ['spec/*.md', 'unknown-reference', 'spec/*.md matches no document; check the pattern and the folder.'],
    ['../../out.yaml', 'unsafe-content', '../../out.yaml leads out of the library; move the document into it.'],
    ['../../**/*.yaml', 'unsafe-content', '../../**/*.yaml leads out of the library; move the document into it.'],
    ['link.yaml', 'unsafe-content', 'link.yaml leads out of the library; move the document into it.'],
    ['away/*.yaml', 'unsafe-content', 'away/*.yaml leads out of the library; move the document into it.'],
    [
      '{a,b}{a,b}{a,b}{a,b}{a,b}{a,b}{a,b}',
      'unsafe-content',
      '{a,b}{a,b}{a,b}{a,b}{a,b}{a,b}{a,b} stands for more than 64 patterns; write fewer alternatives in braces.',
    ],
  ])('to %s are told where they stand', async (text, code, message) => {
    const folder = folderWith({
      'out.yaml': product('out'),
      'lib-root/.git/HEAD': '',
      'lib-root/lib/a.yaml': detail('A', `documents: ["${text}"]\n`),
      'lib-root/lib/project.yaml': project('P'),
      'lib-root/lib/spec/a.yaml': specification(),
      'lib-root/lib/sheet.pdf': 'x',
      'lib-root/lib/other.yaml': 'steps: []\n',
      'elsewhere/b.yaml': product('b'),
    });
    symlinkSync(join(folder, 'out.yaml'), join(folder, 'lib-root/lib/link.yaml'));
    symlinkSync(join(folder, 'elsewhere'), join(folder, 'lib-root/lib/away'));
    const library = await load(folder, ['lib-root/lib/a.yaml']);
    expect(problems(library)).toEqual([
      { code, message, at: 'lib-root/lib/a.yaml:4:13'.replace('lib-root/', ''), text: `"${text}"` },
    ]);
    expect(library.files.map(({ uri }) => uri)).not.toContain('../out.yaml');
  });

  it('to a project must lead to one project', async () => {
    const files = {
      'x.yaml': product('x'),
      'two.yaml': `${project('P')}---\n${project('Q')}`,
      'bad.yaml': 'kind: project\nid: P\nname: P\n',
    };
    const of = async (name: string) =>
      problems(await load(folderWith({ ...files, 'a.yaml': detail('A', `project: ${name}\n`) }), ['a.yaml']));
    expect(await of('x.yaml')).toEqual([
      {
        code: 'unknown-reference',
        at: 'a.yaml:4:10',
        text: 'x.yaml',
        message: 'x.yaml holds no project (it holds product x); name the file of the project.',
      },
    ]);
    expect(await of('two.yaml')).toEqual([
      {
        code: 'unknown-reference',
        at: 'a.yaml:4:10',
        text: 'two.yaml',
        message: 'two.yaml holds 2 projects (P, Q); keep one in a file that a detail names.',
      },
    ]);
    // The file has its own problems; that no project comes from it follows from them.
    expect((await of('bad.yaml')).every(({ at }) => at.startsWith('bad.yaml'))).toBe(true);
  });

  it('that close a circle are told once, with the chain', async () => {
    const folder = folderWith({
      'a.yaml': detail('A', 'project: project.yaml\n'),
      'b.yaml': detail('B', 'project: project.yaml\n'),
      'project.yaml': project('P', 's.yaml'),
      's.yaml': specification('t.yaml'),
      't.yaml': specification('project.yaml'),
    });
    expect(problems(await load(folder))).toEqual([
      {
        code: 'circular-reference',
        at: 't.yaml:4:13',
        text: 'project.yaml',
        related: ['project.yaml', 's.yaml'],
        message:
          'This reference closes a circle: project.yaml refers to s.yaml refers to t.yaml refers to project.yaml. Take one of these references out.',
      },
    ]);
  });

  it('to the own file are a circle, a pattern that matches it is not', async () => {
    expect(
      problems(await load(folderWith({ 'p.yaml': project('P', 'p.yaml') }))).map(({ code, message }) => [
        code,
        message,
      ]),
    ).toEqual([
      [
        'circular-reference',
        'This reference closes a circle: p.yaml refers to p.yaml. Take one of these references out.',
      ],
    ]);
    const library = await load(
      folderWith({
        'p.yaml': project('P', '"*.yaml"'),
        'q.yaml': specification('"*.yaml"'),
        'a.yaml': detail('A', 'project: p.yaml\n'),
      }),
    );
    expect(problems(library)).toEqual([]);
    expect(library.reach(found(library, 'A')).specifications).toHaveLength(1);
  });

  it('two ways to one document are no circle', async () => {
    const folder = folderWith({
      'p.yaml': project('P', 's.yaml, t.yaml'),
      's.yaml': specification('x.yaml'),
      't.yaml': specification('x.yaml'),
      'x.yaml': product('x'),
    });
    expect(problems(await load(folder))).toEqual([]);
  });
});

describe('the reach of a detail', () => {
  it('is its own file, what it refers to and what the settings refer to', async () => {
    const folder = folderWith({
      'lapwright.yaml': settings('documents: [common/*.yaml]\n'),
      'common/c.yaml': product('c'),
      'a.yaml': `${detail('A', 'documents: [x.yaml]\n')}---\n${product('own')}`,
      'x.yaml': product('x'),
      'y.yaml': product('y'),
    });
    const library = await load(folder);
    expect([...library.reach(found(library, 'A')).products.keys()]).toEqual(['own', 'x', 'c']);
    expect(library.reach(found(library, 'A')).products.has('y')).toBe(false);
    expect(library.elsewhere('product', 'y')?.file.uri).toBe('y.yaml');
    expect(library.elsewhere('product', 'nope')).toBeUndefined();
    expect(library.elsewhere('project', 'y')).toBeUndefined();
  });

  it('is the same whatever else is reviewed', async () => {
    const folder = folderWith({
      '.git/HEAD': '',
      'a.yaml': detail('A', 'project: p.yaml\n'),
      'b.yaml': detail('B', 'documents: [y.yaml]\n'),
      'p.yaml': project('P', 'x.yaml'),
      'x.yaml': product('x'),
      'y.yaml': product('y'),
    });
    for (const inputs of [['a.yaml'], ['.'], ['b.yaml', 'a.yaml'], ['y.yaml', 'a.yaml']]) {
      const library = await load(folder, inputs);
      const reach = library.reach(found(library, 'A'));
      expect([reach.project?.id, [...reach.products.keys()]]).toEqual(['P', ['x']]);
    }
  });

  it('takes the project the detail names before any other, and else the one in reach', async () => {
    const folder = folderWith({
      'a.yaml': `${detail('A', 'project: p.yaml\n')}---\n${project('own')}`,
      'b.yaml': `${detail('B')}---\n${project('own2')}`,
      'c.yaml': detail('C', 'documents: [p.yaml]\n'),
      'd.yaml': detail('D'),
      'p.yaml': project('P'),
    });
    const library = await load(folder);
    expect(['A', 'B', 'C', 'D'].map((id) => library.reach(found(library, id)).project?.id)).toEqual([
      'P',
      'own2',
      'P',
      undefined,
    ]);
  });

  it('has no project when the one the detail names cannot be read', async () => {
    const folder = folderWith({
      'a.yaml': `${detail('A', 'project: bad.yaml\n')}---\n${project('own')}`,
      'bad.yaml': 'kind: project\nid: @\n',
    });
    const library = await load(folder);
    expect(library.reach(found(library, 'A')).project).toBeUndefined();
  });

  it('that names a missing project is not the reach of one that names none', async () => {
    const folder = folderWith({
      'lapwright.yaml': settings('documents: [p.yaml]\n'),
      'a.yaml': detail('A', 'project: zzz.yaml\n'),
      'b.yaml': detail('B'),
      'p.yaml': project('P'),
    });
    const library = await load(folder);
    expect(['A', 'B', 'A'].map((id) => library.reach(found(library, id)).project?.id)).toEqual([
      undefined,
      'P',
      undefined,
    ]);
  });

  it('does not pass through other details', async () => {
    const folder = folderWith({
      'a.yaml': detail('A', 'documents: [b.yaml]\n'),
      'b.yaml': `${detail('B', 'documents: [x.yaml]\n')}---\n${product('b')}`,
      'x.yaml': product('x'),
    });
    const library = await load(folder);
    expect([...library.reach(found(library, 'A')).products.keys()]).toEqual(['b']);
  });

  it('must not hold an id twice; each pair is told once, at the later place', async () => {
    const folder = folderWith({
      'a.yaml': detail('A', 'documents: [x.yaml, y.yaml]\n'),
      'b.yaml': detail('B', 'documents: [y.yaml, x.yaml]\n'),
      'x.yaml': product('same'),
      'y.yaml': product('same'),
    });
    const library = await load(folder);
    expect(problems(library)).toEqual([
      {
        code: 'repeated-id',
        at: 'y.yaml:2:5',
        text: 'same',
        related: ['x.yaml'],
        message: 'The product id same stands here and in x.yaml; give one of the two another id.',
      },
    ]);
    expect(library.reach(found(library, 'A')).products.get('same')?.file.uri).toBe('x.yaml');
  });

  it('may leave the same id to another reach, or to another kind', async () => {
    const folder = folderWith({
      'a/a.yaml': detail('A', 'documents: [x.yaml]\n'),
      'a/x.yaml': product('same'),
      'b/b.yaml': detail('A', 'project: p.yaml\ndocuments: [x.yaml]\n'),
      'b/x.yaml': product('same'),
      'b/p.yaml': project('same'),
    });
    expect(problems(await load(folder))).toEqual([]);
  });

  it('tells two details of one file apart by their ids', async () => {
    const folder = folderWith({ 'a.yaml': `${detail('A')}---\n${detail('A')}` });
    expect(problems(await load(folder)).map(({ code, text }) => [code, text])).toEqual([['repeated-id', 'A']]);
  });
});

describe('links', () => {
  it('lead out of no library and into no folder', async () => {
    const folder = folderWith({ 'out/o.yaml': product('o'), 'lib/.git/HEAD': '', 'lib/a.yaml': product('a') });
    symlinkSync(join(folder, 'out/o.yaml'), join(folder, 'lib/o.yaml'));
    symlinkSync(join(folder, 'out'), join(folder, 'lib/out'));
    symlinkSync(join(folder, 'nowhere.yaml'), join(folder, 'lib/dangling.yaml'));
    const library = await load(folder, ['lib']);
    expect(names(library)).toEqual(['product a.yaml']);
    expect([...library.notices].sort()).toEqual([
      'o.yaml is a link to a file outside of the library and was not read.',
      'out is a link to a folder and was not followed.',
    ]);
  });

  it('around in a circle end', async () => {
    const folder = folderWith({ 'a.yaml': product('a') });
    mkdirSync(join(folder, 'd'));
    symlinkSync(folder, join(folder, 'd/loop'));
    expect(names(await load(folder))).toEqual(['product a.yaml']);
  });
});
