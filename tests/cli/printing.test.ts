import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { DATE, lapwright, LIBRARY, PROGRAM, review, runProgram, scratch } from '../support/command.js';

const COLOR = /\x1b\[/;
const narrow = path.join(LIBRARY, 'details/narrow.yaml');

describe('color', () => {
  it.each<[string, Record<string, string>, boolean]>([
    ['none where the output is no terminal', {}, false],
    ['when it is forced', { FORCE_COLOR: '1' }, true],
    ['none when forced off', { FORCE_COLOR: '0' }, false],
    ['none with NO_COLOR, even when forced', { NO_COLOR: '1', FORCE_COLOR: '1' }, false],
    ['NO_COLOR that is empty says nothing', { NO_COLOR: '', FORCE_COLOR: '1' }, true],
  ])('%s', async (_promise, env, expected) => {
    const { out } = await review([narrow], { env });
    expect(COLOR.test(out)).toBe(expected);
  });

  it('never stands in a file or in a format for programs', async () => {
    const env = { FORCE_COLOR: '1' };
    for (const format of ['lines', 'markdown', 'sarif', 'json'])
      expect((await review(['--format', format, narrow], { env })).out).not.toMatch(COLOR);
  });

  it('the words are the same with and without it', async () => {
    const [plain, colored] = await Promise.all([review([narrow]), review([narrow], { env: { FORCE_COLOR: '1' } })]);
    expect(colored.out.replace(/\x1b\[[0-9;]*m/g, '')).toBe(plain.out);
  });
});

// The arguments of `script` differ between systems; the printer's own tests hold everywhere.
describe.runIf(process.platform === 'linux')('on a terminal', () => {
  /** Under `script` the command sees a terminal of the given width. */
  const onTerminal = (columns: number, env: Record<string, string> = {}) =>
    runProgram(
      'script',
      [
        '-qec',
        `stty cols ${columns} rows 24; '${process.execPath}' '${PROGRAM}' review --fail-on never '${narrow}'`,
        '/dev/null',
      ],
      { env },
    );

  it.each([50, 90])('of %i columns no line is wider, but for paths, which stay whole', async (columns) => {
    const { out, status } = await onTerminal(columns, { NO_COLOR: '1' });
    expect(status).toBe(0);
    const lines = out.split(/\r?\n/).filter((line) => !/\.yaml:\d+:\d+/.test(line));
    const widest = Math.max(...lines.map((line) => line.length));
    expect(widest).toBeLessThanOrEqual(columns);
    expect(widest).toBeGreaterThan(columns - 15);
  });

  it('there is color unless NO_COLOR is set or the terminal is dumb', async () => {
    const [usual, without, dumb] = await Promise.all([
      onTerminal(80),
      onTerminal(80, { NO_COLOR: '1' }),
      onTerminal(80, { TERM: 'dumb' }),
    ]);
    expect([usual, without, dumb].map(({ out }) => COLOR.test(out))).toEqual([true, false, false]);
  });
});

describe('pipes', () => {
  it('a reader that stops early is no failure and says nothing', async () => {
    for (const command of ['rules', `review --format json --fail-on never '${LIBRARY}'`]) {
      const ran = await runProgram('bash', [
        '-c',
        `set -o pipefail; '${process.execPath}' '${PROGRAM}' ${command} | head -1`,
      ]);
      expect(ran.err).toBe('');
      expect(ran.status).toBe(0);
      expect(ran.out.split('\n')).toHaveLength(2);
    }
  });

  it('a slow reader gets all of a report larger than a pipe holds', async () => {
    const good = readFileSync(path.join(LIBRARY, 'details/good.yaml'), 'utf8');
    const more = Object.fromEntries(
      [1, 2, 3, 4].map((n) => [`details/more-${n}.yaml`, good.replace('id: good', `id: more-${n}`)]),
    );
    const folder = scratch(more, LIBRARY);
    const command = `'${process.execPath}' '${PROGRAM}' review --format sarif --fail-on never --date ${DATE} '${folder}'`;
    const { out, status } = await runProgram('bash', ['-c', `set -o pipefail; ${command} | (sleep 1; cat)`]);
    expect(status).toBe(0);
    expect(out.length).toBeGreaterThan(65_536);
    expect(() => JSON.parse(out) as unknown).not.toThrow();
  });
});

describe('text from documents', () => {
  it('cannot speak to the terminal', async () => {
    const folder = scratch({
      'a.yaml': 'kind: detail\nid: A\ntitle: "\\e]0;owned\\a \\u202e backwards"\nid2: "\\e[2J"\n',
    });
    for (const format of ['terminal', 'lines', 'markdown']) {
      const { out, err } = await review(['--format', format, 'a.yaml'], { cwd: folder, env: { NO_COLOR: '1' } });
      expect(out).toContain('id2');

      expect(out + err).not.toMatch(/[\x00-\x08\x0b-\x1f\x7f\u202a-\u202e\u2066-\u2069]/);
    }
  });

  it('and arguments are not run as anything', async () => {
    const { status, err } = await lapwright(['review', '$(touch owned)\x1b[2J']);
    expect(status).toBe(2);
    expect(err).toContain('There is no file or folder');
  });
});
