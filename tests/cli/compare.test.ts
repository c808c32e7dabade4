import { execFileSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import type { Log, Result } from 'sarif';
import { describe, expect, it } from 'vitest';
import { DATE, DEMO, lapwright, review, ROOT, scratch, type Ran, type RunWith } from '../support/command.js';
import { sarifErrors } from '../support/sarif-schema.js';

const DATA = path.join(ROOT, 'tests/data/compare');
const FIRST = path.join(DATA, 'first');
const SECOND = path.join(DATA, 'second');
const compare = (args: readonly string[], options: RunWith = {}): Promise<Ran> =>
  lapwright(['compare', '--date', DATE, ...args], options);

/** What the two submissions of tests/data/compare amount to; see tests/compare-submissions.test.ts. */
const HEADLINE = '2 corrected, 12 still open, 1 new, 1 newly broken; 4 answered; 1 accepted; 1 no longer checked';
const headline = (out: string): string => /\d+ corrected,[^.]*/.exec(out)?.[0].replace(/\s+/g, ' ') ?? '';

const runOf = (text: string) => (JSON.parse(text) as Log).runs[0]!;
const sarifOf = async (folder: string): Promise<string> => (await review(['--format', 'sarif', folder])).out;

describe('the report', () => {
  it('begins with the two names and the counts', async () => {
    const { status, out, err } = await compare(['first', 'second'], { cwd: DATA });
    expect({ status, err }).toEqual({ status: 1, err: '' });
    expect(out.split('\n')[0]).toBe('Compared: first -> second');
    expect(headline(out)).toBe(HEADLINE);
    expect(out).toContain('change    left jamb of window: 3 in -> 4 in; required at least 4 in');
    expect(out).toContain('S-1 work/jambs/ontoWall changed: 3 in -> 4 in');
    expect(out.indexOf('Newly broken')).toBeLessThan(out.indexOf('Still open'));
    expect(out).toContain('Changed without effect on any check');
    expect(out).toContain('licensed practice');
  });

  it('what asks for nothing, before or now, is only counted', async () => {
    const { out } = await compare(['first', 'second'], { cwd: DATA });
    expect(out).not.toContain('sill of window reaches');
    expect(out.replace(/\s+/g, ' ')).toMatch(/\d{2,} other checks unchanged, [1-9] with another value or limit,/);
  });

  it('as Markdown, HTML and JSON, by name or by the ending of the file', async () => {
    const folder = scratch();
    const at = (name: string): string => path.join(folder, name);
    for (const name of ['a.md', 'b.html', 'c.json', 'd.sarif', 'e.txt'])
      expect((await compare([FIRST, SECOND, '--output', at(name)])).out).toBe('');
    expect(headline(readFileSync(at('a.md'), 'utf8'))).toBe(HEADLINE);
    expect(readFileSync(at('a.md'), 'utf8')).toContain('## Findings by source');
    const html = readFileSync(at('b.html'), 'utf8');
    expect(headline(html)).toBe(HEADLINE);
    expect(html).toMatch(/^<!doctype html>/);
    expect(html).not.toMatch(/<script|\son\w+=|https?:\/\/[^<"]*"[^>]*src/);
    const json = JSON.parse(readFileSync(at('c.json'), 'utf8')) as { format: string; counts: Record<string, number> };
    expect(json.format).toBe('lapwright-comparison/1');
    expect(json.counts).toMatchObject({ corrected: 2, 'newly broken': 1 });
    expect(sarifErrors(JSON.parse(readFileSync(at('d.sarif'), 'utf8')))).toBe('');
    expect(headline(readFileSync(at('e.txt'), 'utf8'))).toBe(HEADLINE);
  });

  it('two runs give the same bytes', async () => {
    for (const format of ['markdown', 'html', 'sarif']) {
      const [one, two] = await Promise.all([
        compare(['--format', format, FIRST, SECOND]),
        compare(['--format', format, FIRST, SECOND]),
      ]);
      expect(one.out).toBe(two.out);
      expect(one.out.length).toBeGreaterThan(1000);
    }
  });

  it('text of the documents starts nothing in a terminal, in Markdown or in HTML', async () => {
    const title = 'x <img src=x onerror=alert(1)> | \\u001b[31m `code` [a](http://a.example) \\u202e';
    const file = path.join(FIRST, 'S-2.yaml');
    const folder = scratch(
      {
        'S-2.yaml': readFileSync(file, 'utf8').replace(/^title:.*/m, `title: "${title}"`),
      },
      FIRST,
    );
    const terminal = (await compare([FIRST, folder])).out;
    expect(terminal).toContain('\\u{1B}[31m');
    const markdown = (await compare([FIRST, folder, '--format', 'markdown'])).out;
    expect(markdown).toMatch(/\\<img/);
    const html = (await compare([FIRST, folder, '--format', 'html'])).out;
    expect(html).not.toContain('<img');
    for (const text of [terminal, markdown, html]) expect(text).not.toMatch(/[\u001b\u202e]/);
  });
});

describe('SARIF with the state of every result', () => {
  it('is valid by the published schema, and every result has its state', async () => {
    const { out } = await compare(['--format', 'sarif', FIRST, SECOND]);
    const log = JSON.parse(out) as Log;
    expect(sarifErrors(log)).toBe('');
    const results = log.runs[0]?.results ?? [];
    const states = new Set(results.map((one) => one.baselineState));
    expect(states).toEqual(new Set(['new', 'unchanged', 'updated', 'absent']));
    expect(results.every((one) => one.baselineState !== undefined)).toBe(true);
  });

  it('holds the results of the new review as they are, and behind them the absent ones', async () => {
    const [first, second] = [runOf(await sarifOf(FIRST)), runOf(await sarifOf(SECOND))];
    const merged = runOf((await compare(['--format', 'sarif', FIRST, SECOND])).out);
    const results = merged.results ?? [];
    const present = results.filter((one) => one.baselineState !== 'absent');
    expect(present.map((one) => one.message)).toEqual(second.results?.map((one) => one.message));
    const key = (one: Result): string => one.partialFingerprints?.['lapwrightResult/v1'] ?? '';
    const old = new Set(first.results?.map(key));
    const absent = results.filter((one) => one.baselineState === 'absent');
    expect(absent.length).toBeGreaterThan(10);
    expect(absent.every((one) => old.has(key(one)))).toBe(true);
    expect(new Set(absent.map((one) => one.properties?.['detail'] as string))).toEqual(new Set(['S-3']));
  });

  it('indexes of absent results count in the lists of this run', async () => {
    const merged = runOf((await compare(['--format', 'sarif', FIRST, SECOND])).out);
    for (const one of merged.results ?? []) {
      expect(merged.tool.driver.rules?.[one.ruleIndex ?? -1]?.id).toBe(one.ruleId);
      const artifact = one.locations?.[0]?.physicalLocation?.artifactLocation;
      expect(merged.artifacts?.[artifact?.index ?? -1]?.location?.uri).toBe(artifact?.uri);
    }
  });

  it('a SARIF file on either side gives the same counts as the documents', async () => {
    const folder = scratch({ 'first.sarif': await sarifOf(FIRST), 'second.json': await sarifOf(SECOND) });
    const [first, second] = [path.join(folder, 'first.sarif'), path.join(folder, 'second.json')];
    for (const sides of [
      [first, SECOND],
      [FIRST, second],
      [first, second],
    ]) {
      const { out, err } = await compare([...sides, '--format', 'markdown']);
      expect(err).toBe('');
      const counts = headline(out);
      for (const count of ['2 corrected', '1 newly broken', '4 answered', '1 accepted', '1 no longer checked'])
        expect(counts, sides.join()).toContain(count);
      expect(out).toContain('A SARIF file holds results, not documents');
      const sarif = await compare([...sides, '--format', 'sarif']);
      expect(sarifErrors(JSON.parse(sarif.out))).toBe('');
    }
  });

  it('what a comparison wrote is a submission too: its absent results are gone', async () => {
    const folder = scratch({ 'both.sarif': (await compare(['--format', 'sarif', FIRST, SECOND])).out });
    const { out } = await compare([path.join(folder, 'both.sarif'), SECOND]);
    expect(headline(out)).toMatch(
      /^0 corrected, \d+ still open, 0 new, 0 newly broken; 1 accepted$|^0 corrected, \d+ still open, 0 new, 0 newly broken$/,
    );
  });
});

describe('the exit status', () => {
  const narrowed = (): string => {
    const text = readFileSync(path.join(FIRST, 'S-1.yaml'), 'utf8');
    return scratch({ 'S-1.yaml': text.replace(/(id: head.*?ontoWall: )6 in/, '$13 in') }, FIRST);
  };

  it.each<[string, () => string, string[], number]>([
    ['nothing new, though errors stand', () => FIRST, [], 0],
    ['nothing new, any error counts', () => FIRST, ['--fail-on', 'standing'], 1],
    ['a newly broken error', narrowed, [], 1],
    ['a newly broken error, never', narrowed, ['--fail-on', 'never'], 0],
    // Taking out the drawing of the lower corner is a warning.
    ['a new warning, errors count', withoutDrawing, [], 0],
    ['a new warning, warnings count', withoutDrawing, ['--level', 'warning'], 1],
  ])('%s', async (_name, make, args, status) => {
    const ran = await compare([FIRST, make(), ...args]);
    expect({ status: ran.status, err: ran.err }).toEqual({ status, err: '' });
  });

  function withoutDrawing(): string {
    const text = readFileSync(path.join(FIRST, 'S-1.yaml'), 'utf8');
    return scratch({ 'S-1.yaml': text.replace(', lower corner', '') }, FIRST);
  }

  it.each<[string[], string]>([
    [[FIRST], 'Name two submissions: lapwright compare OLD NEW.'],
    [[FIRST, SECOND, FIRST], 'Name two submissions: lapwright compare OLD NEW.'],
    [[FIRST, SECOND, '--fail-on', 'error'], '--fail-on is one of new, standing, never, not "error"'],
    [[FIRST, SECOND, '--format', 'lines'], '--format is one of terminal, markdown, html, json, sarif, not "lines"'],
    [[FIRST, SECOND, '--output', 'x.pdf'], 'Say which format "x.pdf" is to have'],
    [[FIRST, path.join(DATA, 'third')], 'There is no file or folder'],
    [[FIRST, path.join(DATA, 'third.sarif')], 'There is no file'],
  ])('2 for %j', async (args, message) => {
    const { status, out, err } = await compare(args);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(message);
  });

  it('2 when a side holds no documents', async () => {
    const { status, err } = await compare([scratch({ 'notes.txt': 'x' }), SECOND]);
    expect(status).toBe(2);
    expect(err).toContain('No Lapwright documents found');
  });
});

describe('files that are not what they seem', () => {
  const other = { version: '2.1.0', runs: [{ tool: { driver: { name: 'Another program' } }, results: [] }] };
  const own = (more: object): string =>
    JSON.stringify({
      version: '2.1.0',
      runs: [{ tool: { driver: { name: 'Lapwright', rules: [] } }, results: [], taxonomies: [], ...more }],
    });
  const place = { physicalLocation: { artifactLocation: { uri: 'a.yaml' }, region: { startLine: 1, startColumn: 1 } } };
  const result = { ruleId: 'a/b', kind: 'fail', level: 'error', message: { text: 'x' }, locations: [place] };

  it.each<[string, string, string]>([
    ['another program', JSON.stringify(other), 'was written by "Another program", and only the results of Lapwright'],
    ['no JSON', '{"runs":', 'is not JSON, so it is no SARIF file'],
    ['JSON of another kind', '[1]', 'has no "runs"'],
    ['another version', JSON.stringify({ ...other, version: '2.0.0' }), 'is SARIF of version "2.0.0"; 2.1.0 is read'],
    ['two runs', JSON.stringify({ version: '2.1.0', runs: [{}, {}] }), 'holds 2 runs'],
    ['no results', own({ results: undefined }), 'has no "results"'],
    ['written for upload', own({ taxonomies: undefined }), 'was written with --upload'],
    ['a result without a detail', own({ results: [result] }), 'Result 1 of '],
    ['a result of an unknown kind', own({ results: [{ ...result, kind: 'maybe' }] }), 'kind that is one of pass, open'],
    [
      'a place before the first line',
      own({
        results: [
          {
            ...result,
            properties: { detail: 'a' },
            locations: [{ physicalLocation: { ...place.physicalLocation, region: { startLine: 0, startColumn: 1 } } }],
          },
        ],
      }),
      'place with file, line and column',
    ],
    [
      '__proto__ for a run',
      '{"version":"2.1.0","runs":[{"__proto__":{"tool":{"driver":{"name":"Lapwright"}}}}]}',
      'was written by an unknown',
    ],
  ])('%s is refused with a reason', async (_name, text, reason) => {
    const file = path.join(scratch({ 'x.sarif': text }), 'x.sarif');
    const { status, out, err } = await compare([file, SECOND]);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(reason);
    expect(err).toMatch(/^lapwright: \S/);
    expect(err).not.toContain('    at ');
  });

  it('a huge file is refused before it is read', async () => {
    const folder = scratch({ 'huge.sarif': '' });
    const file = path.join(folder, 'huge.sarif');
    truncateSync(file, 3_000_000_000);
    const { status, err } = await compare([file, SECOND]);
    expect(status).toBe(2);
    expect(err).toContain('has 3000000000 bytes and the limit is 268435456');
  });

  it('ordinary JSON documents stay documents', async () => {
    const folder = scratch({}, FIRST);
    writeFileSync(path.join(folder, 'x.json'), '{"kind":"project","id":"p","title":"Other"}');
    const { status, err } = await compare([path.join(folder, 'x.json'), path.join(folder, 'x.json')]);
    expect({ status, err }).toEqual({ status: 0, err: '' });
  });
});

describe('git revisions', () => {
  const git = (folder: string, ...args: string[]): string =>
    execFileSync('git', ['-c', 'user.name=t', '-c', 'user.email=t@example.org', ...args], {
      cwd: folder,
      encoding: 'utf8',
    }).trim();

  /** A repository with the library in a folder; tag `one` has the first submission, the working files the second. */
  function repository(): string {
    const folder = scratch({ 'README.md': '# Details\n' });
    git(folder, 'init', '-q', '-b', 'main');
    const library = path.join(folder, 'library');
    execFileSync('cp', ['-r', FIRST, library]);
    symlinkSync('S-1.yaml', path.join(library, 'link.yaml'));
    git(folder, 'add', '-A');
    git(folder, 'commit', '-qm', 'First submission');
    git(folder, 'tag', 'one');
    execFileSync('rm', ['-r', library]);
    execFileSync('cp', ['-r', SECOND, library]);
    git(folder, 'add', '-A');
    git(folder, 'commit', '-qm', 'Second submission');
    return folder;
  }
  const folder = repository();

  it.each<[string, string[], string]>([
    ['a tag against the working files', ['git:one', 'library'], '.'],
    ['two revisions, the place named', ['git:one', 'git:HEAD', '--at', 'library'], '.'],
    ['two revisions, from inside of the folder', ['git:HEAD~1', 'git:main'], 'library'],
    ['by commit', ['git:HASH', 'library'], '.'],
  ])('%s', async (_name, args, cwd) => {
    const hash = git(folder, 'rev-parse', 'one');
    const { status, out, err } = await compare(
      args.map((arg) => arg.replace('HASH', hash)),
      { cwd: path.join(folder, cwd) },
    );
    expect(err).toBe(
      'lapwright: library/link.yaml of REV is a link and was not read.\n'.replace(
        'REV',
        args[0]!.slice(4).replace('HASH', hash),
      ),
    );
    expect(status).toBe(1);
    expect(headline(out)).toBe(HEADLINE);
  });

  it('positions are those of the file in the repository', async () => {
    const { out } = await compare(['git:one', 'library'], { cwd: folder });
    expect(out).toContain('was S-1.yaml:');
    expect(out).not.toContain('/tmp');
  });

  it('a revision with another folder layout is read by its old path', async () => {
    const moved = repository();
    renameSync(path.join(moved, 'library'), path.join(moved, 'details'));
    const wrong = await compare(['git:one', 'details'], { cwd: moved });
    expect(wrong.status).toBe(2);
    expect(wrong.err).toContain('The revision "one" has no details; name what it had with --at PATH.');
    const { out } = await compare(['git:one', 'details', '--at', 'library'], { cwd: moved });
    expect(headline(out)).toBe(HEADLINE);
  });

  it('works inside of a commit hook, whose variables point elsewhere', async () => {
    const { out } = await compare(['git:one', 'library'], {
      cwd: folder,
      env: { GIT_DIR: '/nowhere', GIT_INDEX_FILE: '/nowhere/index', GIT_WORK_TREE: '/nowhere' },
    });
    expect(headline(out)).toBe(HEADLINE);
  });

  it('leaves nothing behind, and the working files as they are', async () => {
    const temporary = scratch();
    await compare(['git:one', 'git:HEAD', '--at', 'library'], { cwd: folder, env: { TMPDIR: temporary } });
    await compare(['git:one', 'git:nothing', '--at', 'library'], { cwd: folder, env: { TMPDIR: temporary } });
    expect(readdirSync(temporary)).toEqual([]);
    expect(git(folder, 'status', '--porcelain')).toBe('');
  });

  it.each([
    ['git:--upload-pack=touch hacked', 'names no revision'],
    ['git:-h', 'names no revision'],
    ['git:', 'names no revision'],
    ['git:one;touch hacked', 'names no revision'],
    ['git:$(touch hacked)', 'names no revision'],
    ['git:one:library', 'names no revision'],
    ['git:one\n--all', 'names no revision'],
    ['git:no-such-branch', 'The repository has no revision "no-such-branch"'],
  ])('%j is refused', async (revision, reason) => {
    const { status, out, err } = await compare([revision, 'library'], { cwd: folder });
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(reason);
    expect(existsSync(path.join(folder, 'hacked'))).toBe(false);
  });

  it('outside of a repository the message says so', async () => {
    const { status, err } = await compare(['git:main', 'x'], {
      cwd: scratch({ 'x/a.yaml': 'kind: project\nid: a\ntitle: b\n' }),
    });
    expect(status).toBe(2);
    expect(err).toContain('is in no git repository');
  });

  it('nothing of the repository is run: hooks, filters and monitors stay silent', async () => {
    const trapped = repository();
    const trap = path.join(trapped, 'trap.sh');
    writeFileSync(trap, `#!/bin/sh\ntouch ${path.join(trapped, 'ran')}\n`, { mode: 0o755 });
    for (const key of ['core.fsmonitor', 'core.pager', 'filter.x.smudge', 'diff.external', 'core.sshCommand'])
      git(trapped, 'config', key, trap);
    mkdirSync(path.join(trapped, '.git/hooks'), { recursive: true });
    writeFileSync(path.join(trapped, '.git/hooks/post-checkout'), readFileSync(trap), { mode: 0o755 });
    writeFileSync(path.join(trapped, '.git/info/attributes'), '* filter=x diff=x\n');
    expect(headline((await compare(['git:one', 'library'], { cwd: trapped })).out)).toBe(HEADLINE);
    expect(existsSync(path.join(trapped, 'ran'))).toBe(false);
  });
});

describe('the demo library', () => {
  it('against itself has nothing but what still stands', async () => {
    const { status, out } = await compare([DEMO, DEMO]);
    expect(status).toBe(0);
    expect(headline(out)).toMatch(/^0 corrected, \d+ still open, 0 new, 0 newly broken$/);
  });
});
