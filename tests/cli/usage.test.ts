import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { LIBRARY, lapwright, ROOT } from '../support/command.js';

const { version } = JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8')) as { version: string };

describe('help and version', () => {
  it.each(['--version', '-V'])('%s prints the version of package.json and nothing else', async (option) => {
    expect(await lapwright([option])).toEqual({ status: 0, out: `${version}\n`, err: '' });
  });

  it.each(['--help', '-h', 'help'])('%s names every command and the caution', async (option) => {
    const { status, out, err } = await lapwright([option]);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    for (const command of ['review', 'compare', 'rules', 'explain', 'new', '--version'])
      expect(out).toContain(`lapwright ${command}`);
    expect(out).toContain('Exit status: 0 ');
    expect(out).toContain('Local code, the contract documents and licensed practice govern.');
  });

  it.each(['review', 'compare', 'rules', 'explain', 'new'])(
    'the options of %s are told in both ways of asking',
    async (command) => {
      const asked = await lapwright(['help', command]);
      expect(asked.out).toMatch(new RegExp(`^lapwright ${command} `));
      expect(asked.out).toMatch(/--\w/);
      expect(await lapwright([command, '--help'])).toEqual(asked);
    },
  );

  it('no command at all: the help on standard error, and failure', async () => {
    const { status, out, err } = await lapwright([]);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain('lapwright review PATH...');
  });
});

describe('mistyped commands and options', () => {
  it.each<[string[], string]>([
    [['reveiw', LIBRARY], 'there is no command "reveiw"; did you mean "review"?'],
    [
      ['zzzzzz'],
      'there is no command "zzzzzz". Commands: review, matrix, compare, draw, where, rules, explain, requirements, new.',
    ],
    [['review', '--formt', 'json', LIBRARY], 'There is no option "--formt"; did you mean "--format"?'],
    [
      ['review', '--fail-on', 'warnings', LIBRARY],
      '--fail-on is one of error, warning, note, never, not "warnings"; did you mean "warning"?',
    ],
    [
      ['review', '--format', 'sarff', LIBRARY],
      '--format is one of terminal, lines, markdown, html, sarif, json, not "sarff"; did you mean "sarif"?',
    ],
    [
      ['review', '--output', 'x.pdf', LIBRARY],
      'Say which format "x.pdf" is to have: put --format NAME before --output.',
    ],
    [['review', LIBRARY, '--format'], 'The option --format needs a value.'],
    [['review', '--upload=yes', LIBRARY], 'The option --upload takes no value.'],
    [['review', '--date', '2026-02-30x', LIBRARY], '--date is a day written YYYY-MM-DD, not "2026-02-30x".'],
    [['review'], 'Name what to review: files, folders, globs, or - for standard input.'],
    [['explain'], 'Name one rule: lapwright explain lap/reverse-lap.'],
    [['rules', 'lap'], 'The command "rules" takes no further words ("lap")'],
    [['new', 'detial'], 'There is no starting document "detial"; did you mean "detail"?'],
    [['new'], 'Name one kind of document: detail, product, project, specification, submittal, settings.'],
  ])('%j: one sentence on standard error, exit status 2', async (args, sentence) => {
    const { status, out, err } = await lapwright(args);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toMatch(/^lapwright: [^\n]*\n$/);
    expect(err).toContain(sentence);
  });

  it('a day that no calendar has is refused', async () => {
    const { status, err } = await lapwright(['review', '--date', '2026-02-30', LIBRARY]);
    expect(status).toBe(2);
    expect(err).toContain('--date is a day written YYYY-MM-DD, not "2026-02-30".');
  });
});
