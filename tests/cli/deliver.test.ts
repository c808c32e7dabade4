/** What a command writes and says, and where. */
import { execFileSync } from 'node:child_process';
import { lstatSync, mkdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { DEMO, LIBRARY, lapwright, review, ROOT, scratch } from '../support/command.js';

const GOOD = path.join(LIBRARY, 'details/good.yaml');

describe('--output', () => {
  it('leaves a file that stands beside it, and the rights of the file it replaces', async () => {
    const folder = scratch({ 'r.md': 'old', 'r.md.part': 'mine' });
    const file = path.join(folder, 'r.md');
    writeFileSync(file, 'old', { mode: 0o640 });
    execFileSync('chmod', ['640', file]);
    expect((await review([GOOD, '--output', file])).status).toBe(0);
    expect(readFileSync(file, 'utf8')).toMatch(/^# /);
    expect(statSync(file).mode & 0o777).toBe(0o640);
    expect(readFileSync(`${file}.part`, 'utf8')).toBe('mine');
  });

  it('follows a link to the file it stands for', async () => {
    const folder = scratch({ 'real/r.md': 'old' });
    symlinkSync('real/r.md', path.join(folder, 'r.md'));
    await review([GOOD, '--output', path.join(folder, 'r.md')]);
    expect(lstatSync(path.join(folder, 'r.md')).isSymbolicLink()).toBe(true);
    expect(readFileSync(path.join(folder, 'real/r.md'), 'utf8')).toMatch(/^# /);
  });

  it.skipIf(process.platform === 'win32')('writes into a pipe instead of taking its place', async () => {
    const folder = scratch();
    const pipe = path.join(folder, 'r.md');
    execFileSync('mkfifo', [pipe]);
    const [, read] = await Promise.all([
      review([GOOD, '--output', pipe]),
      import('node:fs/promises').then(({ readFile }) => readFile(pipe, 'utf8')),
    ]);
    expect(read).toMatch(/^# /);
    expect(lstatSync(pipe).isFIFO()).toBe(true);
  });

  it.each([
    ['matrix', [path.join(DEMO, 'submittal-07-27-26-03.md')], 'm.csv', /^section,paragraph,/],
    ['where', [path.join(ROOT, 'fixtures/where/P-1-painted-board.yaml')], 'w.svg', /^<svg /],
    ['requirements', [path.join(DEMO, 'specification.md')], 'r.json', /^\{/],
    ['compare', [path.join(LIBRARY, 'details/good.yaml'), path.join(LIBRARY, 'details/good.yaml')], 'c.html', /^<!doctype/i], // prettier-ignore
  ])('of %s takes the format from the ending', async (command, args, name, begins) => {
    const file = path.join(scratch(), name);
    const { err } = await lapwright([command, ...args, '--output', file]);
    expect(err).toBe('');
    expect(readFileSync(file, 'utf8')).toMatch(begins);
  });

  it('asks for the format where the ending says none that the command has', async () => {
    const { status, err } = await lapwright(['matrix', GOOD, '--output', 'x.svg']);
    expect([status, err]).toEqual([
      2,
      expect.stringMatching(/^lapwright: Say which format "x.svg" is to have: .*sarif/),
    ]);
  });
});

describe('standard error', () => {
  it('shows what could act on a terminal, whatever it quotes', async () => {
    const folder = scratch({
      'lapwright.yaml': 'kind: settings\npacks: ["evil\\e]0;title\\a"]\n',
      'd.yaml': readFileSync(GOOD),
    });
    for (const args of [
      ['review', 'd.yaml'],
      ['draw', 'd.yaml', '--opening', '\u001b]0;x'],
      ['\u001b]0;x'],
      ['new', '\u001b[31m'],
    ]) {
      const { err } = await lapwright(args, { cwd: folder });
      expect(err).toContain('\\u{1B}');
      expect(err).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/);
    }
  });

  it('of compare names only options that compare has', async () => {
    const folder = scratch({ 'lapwright.yaml': 'kind: settings\npacks: [./own]\n', 'd.yaml': readFileSync(GOOD) });
    mkdirSync(path.join(folder, 'own'));
    const { err } = await lapwright(['compare', '.', '.'], { cwd: folder });
    expect(err).toContain('run with --pack ./own.');
    expect(err).not.toContain('--allow-packs');
  });

  it.each([
    [['help', 'constructor'], 'there is no command "constructor".'],
    [['help', 'reveiw'], 'there is no command "reveiw"; did you mean "review"?'],
    [['new', '__proto__'], 'There is no starting document "__proto__"'],
    [['new', 'toString'], 'There is no starting document "toString"'],
  ])('%j is refused in words', async (args, says) => {
    const { status, out, err } = await lapwright(args);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain(says);
  });

  it('says that what is piped in is not UTF-8', async () => {
    const { status, err } = await review(['-'], { input: Buffer.from('kind: detail\ntitle: F\xfcr\n', 'latin1') });
    expect([status, err]).toEqual([2, 'lapwright: Standard input is not UTF-8 text; save it as UTF-8.\n']);
  });
});
