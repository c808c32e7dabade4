import { readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { LIBRARY, NARROW_FINDING, NARROW_PLACE, placeOf, review, scratch } from '../support/command.js';

const GOOD = readFileSync(path.join(LIBRARY, 'details/good.yaml'), 'utf8').replace('id: good', 'id: bad');

/** A library whose one sound detail has findings, so that it shows whether that one was reviewed. */
function libraryWith(files: Readonly<Record<string, string | Buffer>>): string {
  const folder = scratch({}, LIBRARY);
  for (const name of ['good', 'late', 'unused']) rmSync(path.join(folder, `details/${name}.yaml`));
  return scratch(files, folder);
}

/** The good detail with one change; the place is where `to` begins, or `at` when the fault is inside of it. */
function changed(from: string, to: string, at = to): { readonly text: string; readonly place: string } {
  if (!GOOD.includes(from)) throw new Error(`"${from}" is not in the good detail`);
  const text = GOOD.replace(from, to);
  return { text, place: placeOf(text, at) };
}

const deepFlow = `kind: detail\nid: deep\nwall: ${'['.repeat(1000)}${']'.repeat(1000)}\n`;
const deepBlock = `kind: detail\nid: deep\nwall:\n${Array.from({ length: 1000 }, (_, level) => `${' '.repeat(level + 1)}a:`).join('\n')}\n`;
const deepTwice = `${deepFlow}---\n${deepFlow}`;
/** Each of ten names stands for nine of the one before: 9^10 values in 700 bytes. */
const bomb = [
  'kind: detail',
  'id: bomb',
  'a0: &a0 [x, x, x, x, x, x, x, x, x]',
  ...Array.from({ length: 9 }, (_, n) => `a${n + 1}: &a${n + 1} [${Array(9).fill(`*a${n}`).join(', ')}]`),
].join('\n');
const unit = changed(
  'jambs, of: window, product: liquid-flashing, ontoWall: 6 in',
  'jambs, of: window, product: liquid-flashing, ontoWall: 6 psf',
  '6 psf',
);
const unitless = changed(
  'jambs, of: window, product: liquid-flashing, ontoWall: 6 in',
  'jambs, of: window, product: liquid-flashing, ontoWall: 66',
  '66',
);
const product = changed('product: joint-filler, extends', 'product: joint-filer, extends', 'joint-filer,');
const field = changed('endDams: 6 in', 'endDam: 6 in');
const twice = changed('revision: "2"', 'revision: "2"\nrevision: "3"', 'revision: "3"');
const absent = changed('project: ../project.yaml', 'project: ../projct.yaml', '../projct.yaml');
const outside = changed('project: ../project.yaml', 'project: ../../outside.yaml', '../../outside.yaml');
const absolute = changed('project: ../project.yaml', 'project: /etc/passwd', '/etc/passwd');
const address = changed('project: ../project.yaml', 'project: https://example.org/p.yaml', 'https:');
const UNIT_SENTENCE =
  '"ontoWall" (extension onto wall): found "6 psf": "psf" is a unit of pressure; use one that fits.';

interface Case {
  readonly text: string | Buffer;
  readonly place: string;
  readonly sentence: string;
  readonly rule: string;
}

const CASES: Readonly<Record<string, Case>> = {
  'malformed YAML: a brace that is never closed': {
    text: 'kind: detail\nid: X\nwall: { a: 1\nwork: []\n',
    place: '3:7',
    rule: 'malformed-yaml',
    sentence:
      'The { opened here is not closed with } before the next entry begins; close it, or indent what belongs inside.',
  },
  'malformed YAML: indented with a tab': {
    text: 'kind: detail\n\tid: tab\n',
    place: '2:2',
    rule: 'malformed-yaml',
    sentence: 'The line is indented with a tab; indent with spaces.',
  },
  'an entry that stands twice': {
    ...twice,
    rule: 'malformed-yaml',
    sentence: 'revision stands twice in the same map; keep one of the two.',
  },
  'an unknown kind': {
    text: 'kind: detial\nid: X\n',
    place: '1:7',
    rule: 'unknown-kind',
    sentence:
      '"detial" is not a kind of document; write one of detail, product, project, specification, submittal, settings (nearest: detail).',
  },
  'no kind where the name says nothing else': {
    text: 'kindd: detail\n# kind: detail\n',
    place: '1:1',
    rule: 'unknown-kind',
    sentence:
      'The document has no kind; begin it with "kind:" and one of detail, product, project, specification, submittal, settings.',
  },
  'a unit of another dimension': { ...unit, sentence: UNIT_SENTENCE, rule: 'wrong-unit' },
  'a number without a unit': {
    ...unitless,
    rule: 'wrong-unit',
    sentence: 'found the number 66; a length needs its unit: in, ft, yd, mm, cm or m; for example "66 in".',
  },
  'a product that is not there': {
    ...product,
    rule: 'unknown-reference',
    sentence: 'No product "joint-filer" is in reach of this detail; did you mean "joint-filler"?',
  },
  'a misspelled field': {
    ...field,
    rule: 'unknown-field',
    sentence: '"endDam" is not a known field here (applied work); did you mean "endDams"?',
  },
  'a project that is not there': {
    ...absent,
    rule: 'unknown-reference',
    sentence: '../projct.yaml does not exist; the nearest name there is project.yaml.',
  },
  'a path that leaves the library': {
    ...outside,
    rule: 'unsafe-content',
    sentence: '../../outside.yaml leads out of the library',
  },
  'a path from the root of the disk': {
    ...absolute,
    rule: 'wrong-value',
    sentence: '"project": found "/etc/passwd"; expected a path relative to this file',
  },
  'an address': {
    ...address,
    rule: 'wrong-value',
    sentence:
      '"project": found "https://example.org/p.yaml"; expected a path relative to this file, written with forward slashes; no address',
  },
  'a file of 0 bytes': {
    text: '',
    place: '1:1',
    rule: 'empty-file',
    sentence: 'The file is empty or holds only comments; a document begins with "kind:", for example "kind: detail".',
  },
  'only comments': {
    text: '# kind: detail\n',
    place: '1:1',
    rule: 'empty-file',
    sentence: 'The file is empty or holds only comments;',
  },
  '1,000 lists inside each other': {
    text: deepFlow,
    place: '3:71',
    rule: 'unsafe-content',
    sentence: 'More than 64 maps and lists stand inside each other here; write it flatter.',
  },
  '1,000 maps inside each other': {
    text: deepBlock,
    place: '67:66',
    rule: 'unsafe-content',
    sentence: 'More than 64 maps and lists stand inside each other here; write it flatter.',
  },
  'two documents, each too deep': {
    text: deepTwice,
    place: '3:71',
    rule: 'unsafe-content',
    sentence: 'More than 64 maps and lists stand inside each other here; write it flatter.',
  },
  'names that multiply': {
    text: bomb,
    place: '3:5',
    rule: 'unsafe-content',
    sentence: 'Anchors (&name) are not read; write the value out, or in quotes if it is a text that begins with &.',
  },
  'an entry that would reach into the program': {
    text: 'kind: detail\nid: p\n__proto__: { polluted: true }\n',
    place: '3:1',
    rule: 'unsafe-content',
    sentence: 'An entry named __proto__ is not read; choose another name.',
  },
  'a huge file': {
    text: `${GOOD}#${'x'.repeat(1_200_000)}\n`,
    place: '1:1',
    rule: 'unsafe-content',
    sentence: `The file has ${Buffer.byteLength(GOOD) + 1_200_002} bytes and the limit is 1048576; split it into smaller files.`,
  },
  'a value without end': {
    text: `kind: detail\nid: X\ntitle: ${'k'.repeat(50_000)}\n`,
    place: '3:8',
    rule: 'wrong-value',
    sentence: '"title": found 50000 characters; expected at most 200. Shorten it.',
  },
  'bytes that are not text': {
    text: Buffer.concat([Buffer.from('kind: detail\n'), Buffer.from([0x80, 0xff, 0xfe, 0])]),
    place: '1:1',
    rule: 'unreadable-file',
    sentence: 'The file is not UTF-8 text; save it as UTF-8.',
  },
  'a zero byte': {
    text: Buffer.from('kind: detail\nid: z\0\n'),
    place: '1:1',
    rule: 'unreadable-file',
    sentence: 'The file holds a zero byte, so it is not a text file.',
  },
  'text saved as UTF-16': {
    text: Buffer.from('\ufeffkind: detail\n', 'utf16le'),
    place: '1:1',
    rule: 'unreadable-file',
    sentence: 'The file is not UTF-8 text; save it as UTF-8.',
  },
};

describe('input that cannot be read as meant', () => {
  it.each(Object.entries(CASES))(
    '%s: said in a sentence, at its place, and the other detail is reviewed',
    async (_name, { text, place, sentence, rule }) => {
      const folder = libraryWith({ 'details/bad.yaml': text });
      const { status, out, err } = await review(['--format', 'lines', 'details/bad.yaml', 'details'], { cwd: folder });
      const lines = out.split('\n');
      const [told, ...more] = lines.filter(
        (line) => line.startsWith('details/bad.yaml:') && line.includes('[document/'),
      );
      expect(told).toMatch(new RegExp(`^details/bad\\.yaml:${place}: error: .*\\[document/${rule}\\]$`));
      expect(told).toContain(sentence);
      expect(more).toEqual([]);
      expect(out).toContain(`details/narrow.yaml:${NARROW_PLACE}: ${NARROW_FINDING}`);
      expect(status).toBe(1);
      expect(out + err).not.toMatch(/\n\s+at |node:internal|Error:/);
    },
  );

  it('the findings are printed in every format', async () => {
    const folder = libraryWith({ 'details/bad.yaml': unit.text });
    for (const format of ['terminal', 'markdown', 'sarif', 'json']) {
      const { status, out } = await review(['--format', format, '.'], { cwd: folder });
      expect(status, format).toBe(1);
      expect(out, format).toContain('document/wrong-unit');
      expect(out, format).toContain('extension/onto-wall');
    }
  });

  it('all of them in one library: each is told, and the sound detail still reviewed', async () => {
    const files = Object.fromEntries(
      Object.values(CASES).map(({ text }, index) => [`details/bad-${index}.yaml`, text]),
    );
    const { status, out } = await review(['--format', 'json', '.'], { cwd: libraryWith(files) });
    const { results } = JSON.parse(out) as { results: { file: string; rule: string }[] };
    for (const [index, { rule }] of Object.values(CASES).entries()) {
      // Two of them do not look like ours when nobody names them: a scan of a folder passes over what others keep there.
      const told = results.filter(({ file }) => file === `details/bad-${index}.yaml`).map((r) => r.rule);
      if (told.length === 0)
        expect(['unreadable-file', 'unknown-kind'], JSON.stringify(Object.keys(CASES)[index])).toContain(rule);
      else expect(told).toContain(`document/${rule}`);
    }
    expect(
      results.filter(({ file, rule }) => file === 'details/narrow.yaml' && rule === 'extension/onto-wall').length,
    ).toBeGreaterThan(0);
    expect(status).toBe(1);
  });
});

describe('the way a text is saved', () => {
  const lineOf = async (text: string): Promise<string | undefined> =>
    (
      await review(['--format', 'lines', 'details/bad.yaml'], { cwd: libraryWith({ 'details/bad.yaml': text }) })
    ).out.split('\n')[0];

  it('with a byte order mark: the same positions, but for line 1, where the mark takes column 1', async () => {
    expect(await lineOf(`\ufeff${unit.text}`)).toBe(await lineOf(unit.text));
    expect(await lineOf('\ufeffkind: detial\n')).toMatch(/^details\/bad\.yaml:1:8: error: "detial" is not a kind/);
  });

  it('with carriage returns: the same positions and the same words', async () => {
    const line = await lineOf(unit.text);
    expect(line).toContain(`details/bad.yaml:${unit.place}: error: ${UNIT_SENTENCE}`);
    expect(await lineOf(unit.text.replaceAll('\n', '\r\n'))).toBe(line);
  });

  it('and columns count UTF-16 code units', async () => {
    const text = 'kind: detail\nid: X\ntitle: "\u{1F3E0} ü"\nwall: [{ "\u{1F3E0}": 1 }]\n';
    expect(await lineOf(text)).toMatch(/^details\/bad\.yaml:\d+:\d+: /);
    const wide = changed(
      'ontoWall: 6 in, pastJambs: 6 in, intoOpening',
      'note: "\u{1F3E0}\u{1F3E0}", ontoWall: 6 psf, pastJambs: 6 in, intoOpening',
      '6 psf',
    );
    expect(await lineOf(wide.text)).toContain(`details/bad.yaml:${wide.place}: `);
  });
});

describe('documents among each other', () => {
  it('references in a circle are named with all their steps', async () => {
    const specification =
      'kind: specification\nsection: "07 27 26"\ntitle: Air barriers\nrequirements:\n  - { paragraph: "3.2", subject: opening flashing, property: extension onto wall, atLeast: 4 in }\ndocuments: [project.yaml]\n';
    const project = `${readFileSync(path.join(LIBRARY, 'project.yaml'), 'utf8')}documents: [specification.yaml]\n`;
    const folder = libraryWith({ 'project.yaml': project, 'specification.yaml': specification });
    const { status, out } = await review(['--format', 'lines', 'details'], { cwd: folder });
    expect(out).toContain(
      'specification.yaml:6:13: error: This reference closes a circle: project.yaml refers to specification.yaml refers to project.yaml. Take one of these references out. [document/circular-reference]',
    );
    expect(out).toContain(
      `details/narrow.yaml:${NARROW_PLACE}: error: Flashing at the left jamb of window reaches 3 in onto the wall; `,
    );
    expect(status).toBe(1);
  });

  it('a file that is not there fails, with the path as it was given', async () => {
    expect(await review(['details/nothing.yaml'], { cwd: LIBRARY })).toEqual({
      status: 2,
      out: '',
      err: 'lapwright: There is no file or folder details/nothing.yaml; check the path, or give a folder to look in.\n',
    });
  });

  it('a file of another kind fails', async () => {
    const { status, err } = await review(['drawing.pdf'], { cwd: scratch({ 'drawing.pdf': '%PDF' }) });
    expect(status).toBe(2);
    expect(err).toBe(
      'lapwright: drawing.pdf is not a kind of file that is read; give a folder or a file that ends in .yaml, .yml, .json, .md, .markdown.\n',
    );
  });

  it('a folder without documents fails', async () => {
    const { status, out, err } = await review(['empty'], { cwd: scratch({ 'empty/other.yaml': 'on: push\n' }) });
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toBe(
      'lapwright: No Lapwright documents found under empty; a document starts with "kind:", for example "kind: detail".\n',
    );
  });

  it('a misspelled rule in the settings is told with the nearest', async () => {
    const folder = libraryWith({
      'lapwright.yaml': 'kind: settings\ndocuments: [products.yaml]\nrules:\n  extension/onto-wal: { level: off }\n',
    });
    const { status, out } = await review(['--format', 'lines', 'details'], { cwd: folder });
    expect(out).toContain(
      'lapwright.yaml:4:3: error: No rule is called "extension/onto-wal"; did you mean "extension/onto-wall"? [document/unknown-reference]',
    );
    expect(status).toBe(1);
  });
});
