import { spawnSync } from 'node:child_process';
import { appendFileSync, chmodSync, cpSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { load } from 'js-yaml';
import { beforeAll, describe, expect, it } from 'vitest';
import { LIBRARY, PROGRAM, ROOT, runProgram, scratch, type Ran } from '../support/command.js';
import { installPacked } from '../support/installed.js';

const [hook] = load(readFileSync(path.join(ROOT, '.pre-commit-hooks.yaml'), 'utf8')) as [
  { id: string; entry: string; types_or: string[] },
];

/** Git without the settings of the person who runs the tests. */
const GIT = {
  GIT_CONFIG_GLOBAL: '/dev/null',
  GIT_CONFIG_NOSYSTEM: '1',
  GIT_AUTHOR_NAME: 'a',
  GIT_AUTHOR_EMAIL: 'a@example.org',
  GIT_COMMITTER_NAME: 'a',
  GIT_COMMITTER_EMAIL: 'a@example.org',
};

/** A repository of standard details: the good one of the library, committed. */
async function repository(more: Readonly<Record<string, string>> = {}): Promise<string> {
  const folder = scratch(more, LIBRARY);
  for (const name of ['narrow', 'late', 'unused']) rmSync(path.join(folder, `details/${name}.yaml`));
  await git(folder, 'init', '--quiet');
  await git(folder, 'add', '.');
  await git(folder, 'commit', '--quiet', '--message', 'Begin');
  return folder;
}

const git = (cwd: string, ...args: string[]): Promise<Ran> => runProgram('git', args, { cwd, env: GIT });

/** Commits everything; the hook may refuse. */
async function commit(cwd: string): Promise<Ran & { readonly committed: boolean }> {
  await git(cwd, 'add', '.');
  const ran = await git(cwd, 'commit', '--message', 'Change');
  return { ...ran, committed: (await git(cwd, 'status', '--porcelain')).out === '' };
}

const narrow = readFileSync(path.join(LIBRARY, 'details/narrow.yaml'), 'utf8');
const good = readFileSync(path.join(LIBRARY, 'details/good.yaml'), 'utf8');

/** What every hook must do, whoever calls it. */
function promises(prepare: () => Promise<string>): void {
  it('a commit that brings a broken detail is blocked, and the finding is shown', async () => {
    const folder = await prepare();
    writeFileSync(path.join(folder, 'details/narrow.yaml'), narrow);
    const { committed, out, err } = await commit(folder);
    expect(committed).toBe(false);
    expect(out + err).toMatch(
      /details\/narrow\.yaml:\d+:\d+: error: Flashing at the left jamb of window reaches 3 in onto the wall/,
    );
  });

  it('a commit of good details and of files of other kinds passes', async () => {
    const folder = await prepare();
    for (const n of [1, 2, 3, 4])
      writeFileSync(path.join(folder, `details/good-${n}.yaml`), good.replace('id: good', `id: good-${n}`));
    writeFileSync(path.join(folder, 'workflow.yaml'), 'on: push\njobs: [a]\n');
    writeFileSync(path.join(folder, 'notes.md'), '# Notes\n\nNothing to review.\n');
    appendFileSync(path.join(folder, 'drafts/draft.yaml'), '# still a draft, and left out by the settings\n');
    const { committed, out, err } = await commit(folder);
    expect(out + err).not.toContain('error');
    expect(committed).toBe(true);
  });

  it('a change in a product file alone that breaks a detail is blocked', async () => {
    const folder = await prepare();
    const file = path.join(folder, 'products.yaml');
    const before = readFileSync(file, 'utf8');
    writeFileSync(file, before.replace('ontoWall: 4 in', 'ontoWall: 9 in'));
    expect(readFileSync(file, 'utf8')).not.toBe(before);
    const { committed, out, err } = await commit(folder);
    expect(committed).toBe(false);
    expect(out + err).toMatch(/details\/good\.yaml:\d+:\d+: error: .*at least 9 in is required/);
  });

  it('a commit that repairs the detail goes through', async () => {
    const folder = await prepare();
    writeFileSync(path.join(folder, 'details/narrow.yaml'), narrow);
    expect((await commit(folder)).committed).toBe(false);
    writeFileSync(path.join(folder, 'details/narrow.yaml'), narrow.replace('ontoWall: 3 in', 'ontoWall: 6 in'));
    expect((await commit(folder)).committed).toBe(true);
  });
}

describe('the installed package in a hook of Git that hands files to two processes at a time', () => {
  let bin = '';
  beforeAll(async () => {
    ({ bin } = await installPacked());
  });

  promises(async () => {
    const folder = await repository();
    const [program = '', ...fixed] = hook.entry.split(' ');
    expect(program).toBe('lapwright');
    const script = `#!/bin/bash
# Names of staged files of the kinds the hook asks for, appended to its entry, two processes side by side.
git diff --cached --name-only -z --diff-filter=ACMR -- '*.yaml' '*.yml' '*.md' | xargs -0 -r -n 3 -P 2 '${bin}' ${fixed.join(' ')}
`;
    writeFileSync(path.join(folder, '.git/hooks/pre-commit'), script);
    chmodSync(path.join(folder, '.git/hooks/pre-commit'), 0o755);
    return folder;
  });

  it('the entry asks for YAML and Markdown, the kinds of files a document may stand in', () => {
    expect(hook.types_or).toEqual(['yaml', 'markdown']);
  });
});

/** A repository of the program itself, as a hook manager clones it: sources without anything built. */
async function clonable(): Promise<string> {
  const source = scratch();
  for (const name of [
    'package.json',
    'package-lock.json',
    '.pre-commit-hooks.yaml',
    '.gitignore',
    '.npmrc',
    'LICENSE',
    'README.md',
    'tsconfig.json',
    'tsconfig.types.json',
    'src',
    'rules',
    'schemas',
    'scripts',
    'fixtures',
    'docs',
  ]) {
    if (existsSync(path.join(ROOT, name))) cpSync(path.join(ROOT, name), path.join(source, name), { recursive: true });
  }
  await git(source, 'init', '--quiet');
  await git(source, 'add', '.');
  await git(source, 'commit', '--quiet', '--message', 'Begin');
  await git(source, 'tag', 'v0');
  return source;
}

const version = spawnSync('pre-commit', ['--version'], { encoding: 'utf8' }).stdout as string | null;
if (version === null) process.stderr.write('pre-commit is not installed: its tests are skipped.\n');

// The build needs packages from the registry, so these run only where a network is allowed.
const hasNetwork = process.env['LAPWRIGHT_NETWORK'] === '1';

describe.runIf(hasNetwork)('an install from the repository, the way newer hook managers do it', () => {
  it('builds the program, global as it is', async () => {
    const [source, prefix] = [await clonable(), scratch()];
    const installed = await runProgram(
      'npm',
      ['install', '--install-links', '-g', '--prefix', prefix, '--no-audit', '--no-fund', `git+file://${source}`],
      { env: GIT },
    );
    expect(installed.err).not.toContain('npm error');
    const { status, out } = await runProgram(path.join(prefix, 'bin/lapwright'), [
      'review',
      '--format',
      'lines',
      path.join(LIBRARY, 'details/narrow.yaml'),
    ]);
    expect(out).toContain('reaches 3 in onto the wall');
    expect(status).toBe(1);
  }, 600_000);
});

describe.skipIf(version === null)('pre-commit itself', () => {
  /** Installs its hook in a repository; its own files go to a scratch folder. */
  const withConfig = async (config: string): Promise<string> => {
    const folder = await repository({ '.pre-commit-config.yaml': config });
    const home = scratch();
    const installed = await runProgram('pre-commit', ['install'], {
      cwd: folder,
      env: { ...GIT, PRE_COMMIT_HOME: home },
    });
    expect(installed).toMatchObject({ status: 0 });
    // The hook it writes is called by Git, with the environment of Git: its home is told there.
    const file = path.join(folder, '.git/hooks/pre-commit');
    writeFileSync(
      file,
      readFileSync(file, 'utf8').replace(/^#!.*\n/, (first) => `${first}export PRE_COMMIT_HOME='${home}'\n`),
    );
    return folder;
  };

  describe('with the built program', () => {
    const entry = hook.entry.replace(/^lapwright/, `'${process.execPath}' '${PROGRAM}'`);
    promises(() =>
      withConfig(`repos:
  - repo: local
    hooks:
      - { id: lapwright, name: review wall details, language: system, entry: "${entry}", types_or: [yaml, markdown] }
`),
    );
  });

  describe.runIf(hasNetwork)('with the repository, which it clones, builds and installs', () => {
    it('a broken detail is blocked and a good one passes', async () => {
      const source = await clonable();
      const folder = await withConfig(`repos:\n  - repo: ${source}\n    rev: v0\n    hooks: [{ id: ${hook.id} }]\n`);
      writeFileSync(path.join(folder, 'details/narrow.yaml'), narrow);
      const { committed, out, err } = await commit(folder);
      expect(out + err).toContain('reaches 3 in onto the wall');
      expect(committed).toBe(false);
      writeFileSync(path.join(folder, 'details/narrow.yaml'), narrow.replace('ontoWall: 3 in', 'ontoWall: 6 in'));
      expect((await commit(folder)).committed).toBe(true);
    }, 600_000);
  });
});
