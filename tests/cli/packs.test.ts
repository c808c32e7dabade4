import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { lapwright, LIBRARY, NARROW_FINDING, review, ROOT, scratch } from '../support/command.js';

/** A whole rule of somebody's own, in plain JavaScript: no import is needed. */
const RULE = `export default {
  id: 'office/window-limit',
  title: 'Width of windows',
  summary: 'No rough opening is wider than the office allows.',
  level: 'warning',
  reads: ['openings.roughOpening.width'],
  sources: [{ basis: 'practice', citation: 'office handbook', provenance: 'common practice, no source' }],
  parameters: {
    widest: { type: 'length', default: '40 in', meaning: 'widest rough opening', source: { basis: 'practice', citation: 'office handbook', provenance: 'common practice, no source' } },
  },
  *review({ detail, number }) {
    for (const opening of detail.openings) {
      const wide = opening.widthMm.value > number('widest');
      yield { kind: wide ? 'fail' : 'pass', at: opening.widthMm.at, subject: opening.id, message: \`The opening "\${opening.id}" is \${wide ? 'wider than' : 'within what'} the office allows.\` };
    }
  },
};
`;
const PAGE = '# Width of windows\n\nWider openings need a drawing of their own.\n';
const THROWS = RULE.replaceAll('office/window-limit', 'office/faulty').replace(
  'for (const opening',
  "throw new Error('the handbook is missing');\n    for (const opening",
);
const MALFORMED = "export default { id: 'Office', title: '', level: 'fatal', sources: [], reads: [] };\n";
const UNLOADABLE = 'export default {\n';

const pack = (more: Readonly<Record<string, string>> = {}): string =>
  scratch({ 'own/office/window-limit.mjs': RULE, 'own/office/window-limit.md': PAGE, ...more }, LIBRARY);

interface Notifications {
  readonly runs: readonly [
    {
      readonly invocations: readonly [
        {
          readonly toolExecutionNotifications?: readonly {
            level: string;
            message: { text: string };
            associatedRule?: { id: string };
          }[];
        },
      ];
    },
  ];
}

describe('a rule of two files in a folder', () => {
  it('is run on every detail when the folder is named', async () => {
    const { status, out, err } = await review(['--pack', './own', '--format', 'lines', 'details/good.yaml'], {
      cwd: pack(),
    });
    expect(out).toMatch(
      /^details\/good\.yaml:\d+:\d+: warning: The opening "window" is wider than the office allows\. \[office\/window-limit\]$/m,
    );
    expect({ status, err }).toEqual({ status: 0, err: '' });
  });

  it('takes its level and parameters from the settings, with their units', async () => {
    const settings = (rule: string): Record<string, string> => ({
      'lapwright.yaml': `kind: settings\ndocuments: [products.yaml]\nrules:\n  office/window-limit: ${rule}\n`,
    });
    const args = ['--pack', './own', '--format', 'lines', 'details/good.yaml'];
    const [error, wider, off, wrong] = await Promise.all(
      [
        '{ level: error }',
        '{ parameters: { widest: 1.3 m } }',
        '{ level: off }',
        '{ parameters: { widest: 40 psf } }',
      ].map((rule) => review(args, { cwd: pack(settings(rule)) })),
    );
    expect(error).toMatchObject({ status: 1, out: expect.stringContaining(': error: The opening "window"') as string });
    expect(wider?.out).not.toContain('office/window-limit');
    expect(off?.out).not.toContain('office/window-limit');
    expect(wrong?.out).toMatch(/^lapwright\.yaml:4:\d+: error: .*psf/m);
  });

  it('is listed and explained like any other', async () => {
    const cwd = pack();
    const [listed, explained, short, without] = await Promise.all([
      lapwright(['rules', '--pack', './own'], { cwd }),
      lapwright(['explain', '--pack', './own', 'office/window-limit'], { cwd }),
      lapwright(['explain', '--pack', './own', '--markdown', 'window-limit'], { cwd }),
      lapwright(['explain', 'office/window-limit'], { cwd }),
    ]);
    expect(listed.out).toMatch(/^office\/window-limit +warning +No rough opening is wider/m);
    expect(explained.out).toContain('Wider openings need a drawing of their own.');
    expect(short.out).toBe(PAGE);
    expect(without).toMatchObject({ status: 2, out: '' });
  });

  it('may be one of several packs, in TypeScript-free folders named from anywhere', async () => {
    const other = scratch({
      'site/second.mjs': RULE.replaceAll('office/window-limit', 'site/second'),
      'site/second.md': PAGE,
    });
    const { out } = await review(['--pack', './own', '--pack', other, '--format', 'lines', 'details/good.yaml'], {
      cwd: pack(),
    });
    expect(out).toContain('[office/window-limit]');
    expect(out).toContain('[site/second]');
  });
});

describe('code runs only when the person who runs the review says so', () => {
  const marker =
    "import { writeFileSync } from 'node:fs';\nwriteFileSync(new URL('./was-run', import.meta.url), '');\n";
  const library = (): string =>
    pack({
      'lapwright.yaml': 'kind: settings\ndocuments: [products.yaml]\npacks: [./own]\n',
      'own/office/window-limit.mjs': marker + RULE,
    });

  it('not because the settings name it: a remark says how', async () => {
    const cwd = library();
    const { status, out, err } = await review(['--format', 'lines', 'details/good.yaml'], { cwd });
    expect({ status, out }).toEqual({ status: 0, out: '' });
    expect(err).toBe(
      'lapwright: warning: The settings name the rule pack "./own". A pack is code, so it is not loaded unless you say so: run with --allow-packs, or with --pack ./own.\n',
    );
    expect(() => readFileSync(path.join(cwd, 'own/office/was-run'))).toThrow('ENOENT');
  });

  it('with --allow-packs, from whatever folder it is run', async () => {
    const cwd = library();
    const { out, err } = await review(['--allow-packs', '--format', 'lines', path.join(cwd, 'details/good.yaml')], {
      cwd: '/',
    });
    expect(err).toBe('');
    expect(out).toContain('[office/window-limit]');
  });
});

describe('a pack with a mistake', () => {
  const run = (more: Readonly<Record<string, string>>, ...args: string[]) =>
    review(['--pack', './own', ...args, 'details/narrow.yaml'], { cwd: pack(more) });

  it('a rule that throws is told with its id; all other checks are there', async () => {
    const { status, out, err } = await run(
      { 'own/office/faulty.mjs': THROWS, 'own/office/faulty.md': PAGE },
      '--format',
      'lines',
    );
    expect(err).toBe(
      'lapwright: error: The rule office/faulty failed on narrow: the handbook is missing. Its check is missing from this review; the others ran.\n',
    );
    expect(out).toContain(NARROW_FINDING);
    expect(out).toContain('[office/window-limit]');
    expect(status).toBe(1);
  });

  it('and stands in SARIF as a notification, not as a result', async () => {
    const { out } = await run({ 'own/office/faulty.mjs': THROWS, 'own/office/faulty.md': PAGE }, '--format', 'sarif');
    const log = JSON.parse(out) as Notifications & { runs: [{ results: { ruleId: string }[] }] };
    const told = log.runs[0].invocations[0].toolExecutionNotifications ?? [];
    expect(told).toMatchObject([{ level: 'error', associatedRule: { id: 'office/faulty' } }]);
    expect(log.runs[0].results.filter(({ ruleId }) => ruleId === 'office/faulty')).toEqual([]);
  });

  it('a review with a missing check never passes: exit status 2', async () => {
    const cwd = pack({ 'own/office/faulty.mjs': THROWS, 'own/office/faulty.md': PAGE });
    expect((await review(['--pack', './own', 'details/good.yaml'], { cwd })).status).toBe(2);
  });

  it.each<[string, Record<string, string>, RegExp]>([
    [
      'an id that exists already',
      {
        'own/lap/reverse-lap.mjs': RULE.replaceAll('office/window-limit', 'lap/reverse-lap'),
        'own/lap/reverse-lap.md': PAGE,
      },
      /^lapwright: error: The pack .* brings a rule lap\/reverse-lap, which exists already; give it another id\.$/m,
    ],
    [
      'a rule of another shape',
      { 'own/office/other.mjs': MALFORMED, 'own/office/other.md': PAGE },
      /^lapwright: error: The rule file .*own\/office\/other\.mjs cannot be used: "id" is not of the form family\/name; "title" is missing; "summary" is missing; "level" is none of error, warning, note; "review" is not a function/m,
    ],
    [
      'an id that is not the name of the file',
      { 'own/office/moved.mjs': RULE, 'own/office/moved.md': PAGE },
      /"id" is "office\/window-limit" but the file says "office\/moved"\.$/m,
    ],
    [
      'a file that does not load',
      { 'own/office/broken.mjs': UNLOADABLE, 'own/office/broken.md': PAGE },
      /^lapwright: error: The rule file .*own\/office\/broken\.mjs could not be loaded: .+\.$/m,
    ],
  ])('%s is refused with its reason, and the review goes on', async (_what, more, sentence) => {
    const { status, out, err } = await run(more, '--format', 'lines');
    expect(err).toMatch(sentence);
    expect(err).not.toMatch(/\n\s+at /);
    expect(out).toContain(NARROW_FINDING);
    expect(out).toContain('[office/window-limit]');
    expect(status).toBe(1);
  });

  it('a rule without a page is run, with a remark', async () => {
    const { out, err } = await run(
      { 'own/office/bare.mjs': RULE.replaceAll('office/window-limit', 'office/bare') },
      '--format',
      'lines',
    );
    expect(err).toBe('lapwright: warning: The rule office/bare has no page beside it (bare.md).\n');
    expect(out).toContain('[office/bare]');
  });

  it('a pack that is not there is told, and the review is not clean', async () => {
    const { status, err } = await review(['--pack', './nowhere', path.join(LIBRARY, 'details/good.yaml')], {
      cwd: scratch(),
    });
    expect(err).toMatch(
      /^lapwright: error: The rule pack \.\/nowhere could not be loaded: .*Name a folder, or a package installed in /,
    );
    expect(status).toBe(2);
  });
});

describe('a pack that is an installed package', () => {
  const manifest = JSON.stringify({ name: 'office-rules', version: '1.0.0', type: 'module', exports: './index.js' });
  const index = `import rule from './rule.js';\nexport const rules = [rule];\nexport const pages = { 'office/window-limit': ${JSON.stringify(PAGE)} };\n`;
  const installed = (): string =>
    scratch(
      {
        'node_modules/office-rules/package.json': manifest,
        'node_modules/office-rules/index.js': index,
        'node_modules/office-rules/rule.js': RULE,
      },
      LIBRARY,
    );

  it('is named as it was installed, with the rules and pages it exports', async () => {
    const cwd = installed();
    const [reviewed, explained] = await Promise.all([
      review(['--pack', 'office-rules', '--format', 'lines', 'details/good.yaml'], { cwd }),
      lapwright(['explain', '--pack', 'office-rules', '--markdown', 'office/window-limit'], { cwd }),
    ]);
    expect(reviewed).toMatchObject({
      status: 0,
      err: '',
      out: expect.stringContaining('[office/window-limit]') as string,
    });
    expect(explained.out).toBe(PAGE);
  });

  it('that exports no rules is told', async () => {
    const cwd = scratch(
      {
        'node_modules/other/package.json': '{ "name": "other", "version": "1.0.0", "main": "index.js" }',
        'node_modules/other/index.js': 'module.exports = { answer: 42 };\n',
      },
      LIBRARY,
    );
    const { status, err } = await review(['--pack', 'other', 'details/good.yaml'], { cwd });
    expect(err).toBe('lapwright: error: The package other is not a rule pack: it exports no list "rules".\n');
    expect(status).toBe(2);
  });
});

describe('a rule added to the built-in ones', () => {
  it('touches no file but its two: the list is made from the folder', () => {
    const tree = scratch();
    for (const folder of ['rules', 'scripts'])
      cpSync(path.join(ROOT, folder), path.join(tree, folder), { recursive: true });
    const generate = (): { rules: string; pages: string } => {
      execFileSync(process.execPath, ['scripts/generate-rules.mjs'], { cwd: tree, stdio: 'pipe' });
      const read = (name: string): string => readFileSync(path.join(tree, 'generated', name), 'utf8');
      return { rules: read('rules.ts'), pages: read('pages.ts') };
    };
    const before = generate();
    mkdirSync(path.join(tree, 'rules/office'));
    writeFileSync(path.join(tree, 'rules/office/window-limit.ts'), RULE);
    writeFileSync(path.join(tree, 'rules/office/window-limit.md'), PAGE);
    const after = generate();
    expect(before.rules).not.toContain('office/window-limit');
    expect(after.rules).toContain("from '../rules/office/window-limit.js';");
    expect(after.rules.match(/^import rule\d+ /gm)).toHaveLength(
      (before.rules.match(/^import rule\d+ /gm)?.length ?? 0) + 1,
    );
    expect(after.pages).toContain('Wider openings need a drawing of their own.');
  });

  it('and without its page stops the build', () => {
    const tree = scratch({ 'rules/office/window-limit.ts': RULE });
    cpSync(path.join(ROOT, 'scripts'), path.join(tree, 'scripts'), { recursive: true });
    expect(() => execFileSync(process.execPath, ['scripts/generate-rules.mjs'], { cwd: tree, stdio: 'pipe' })).toThrow(
      'These rules have no page beside them: office/window-limit',
    );
  });
});
