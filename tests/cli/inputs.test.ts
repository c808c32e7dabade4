import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, symlinkSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { LIBRARY, NARROW_FINDING, NARROW_PLACE, review, scratch } from '../support/command.js';

interface Report {
  readonly details: readonly { readonly id: string; readonly file: string }[];
}
const detailsOf = (out: string): string[] => (JSON.parse(out) as Report).details.map(({ id }) => id).sort();
const reviewed = async (args: readonly string[], cwd = LIBRARY, input?: string): Promise<string[]> => {
  const { out, err } = await review(['--format', 'json', '--fail-on', 'never', ...args], {
    cwd,
    ...(input === undefined ? {} : { input }),
  });
  if (out === '') throw new Error(err);
  return detailsOf(out);
};

describe('what is reviewed', () => {
  it('a folder: every detail below it but those the settings leave out', async () => {
    expect(await reviewed(['.'])).toEqual(['good', 'late', 'narrow', 'unused']);
    expect(await reviewed(['details'])).toEqual(['good', 'late', 'narrow', 'unused']);
  });

  it('files, each once, however often it is named', async () => {
    expect(await reviewed(['details/good.yaml', 'details', 'details/good.yaml', '*.yaml'])).toEqual([
      'good',
      'late',
      'narrow',
      'unused',
    ]);
    expect(await reviewed(['details/good.yaml', './details/../details/good.yaml'])).toEqual(['good']);
  });

  it('patterns that the shell has not expanded', async () => {
    expect(await reviewed(['details/{good,la*}.yaml'])).toEqual(['good', 'late']);
    expect(await reviewed(['**/n*.yaml'])).toEqual(['narrow']);
  });

  it('a pattern that matches nothing is told, not passed over', async () => {
    const { status, out, err } = await review(['details/*.yml'], { cwd: LIBRARY });
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toBe('lapwright: No document matches details/*.yml; check the pattern, or give a folder to look in.\n');
  });

  it('not what .gitignore leaves out, in any folder of the repository', async () => {
    const folder = scratch({ '.gitignore': 'late.yaml\n', 'details/.gitignore': 'n*\n!narrow.yaml\n' }, LIBRARY);
    mkdirSync(path.join(folder, '.git'));
    expect(await reviewed(['.'], folder)).toEqual(['good', 'narrow', 'unused']);
    const named = await review(['details/late.yaml'], { cwd: folder });
    expect(named.err).toContain(
      'details/late.yaml is left out by .gitignore or by "ignore" of the settings and was not read.',
    );
  });

  it('a named file that is left out passes silently in a commit hook', async () => {
    expect(await review(['--skip-others', '--format', 'lines', 'drafts/draft.yaml'], { cwd: LIBRARY })).toMatchObject({
      status: 0,
      out: '',
    });
  });

  it('not what a link leads to outside of the library', async () => {
    const outside = scratch({ 'secret.yaml': readFileSync(path.join(LIBRARY, 'details/narrow.yaml'), 'utf8') });
    const folder = scratch({}, LIBRARY);
    symlinkSync(path.join(outside, 'secret.yaml'), path.join(folder, 'details/secret.yaml'));
    symlinkSync(outside, path.join(folder, 'details/elsewhere'));
    expect(await reviewed(['.'], folder)).toEqual(['good', 'late', 'narrow', 'unused']);
    const { err } = await review([folder]);
    expect(err).toContain('details/secret.yaml is a link to a file outside of the library and was not read.');
    expect(err).toContain('details/elsewhere is a link to a folder and was not followed.');
  });

  it('details that use a named product, with --dependents', async () => {
    expect(await reviewed(['--dependents', 'products.yaml'])).toEqual(['good', 'late', 'narrow', 'unused']);
    expect(await reviewed(['products.yaml'])).toEqual([]);
  });
});

describe('standard input', () => {
  const narrow = readFileSync(path.join(LIBRARY, 'details/narrow.yaml'), 'utf8').replace(
    'project: ../project.yaml',
    'project: project.yaml',
  );

  it('is reviewed with the documents of the folder it is piped in', async () => {
    const { status, out, err } = await review(['--format', 'lines', '-'], { cwd: LIBRARY, input: narrow });
    expect({ status, err }).toEqual({ status: 1, err: '' });
    expect(out).toContain(`-:${NARROW_PLACE}: ${NARROW_FINDING}`);
  });

  it('goes together with files', async () => {
    expect(await reviewed(['-', 'details/good.yaml'], LIBRARY, narrow.replace('id: narrow', 'id: piped'))).toEqual([
      'good',
      'piped',
    ]);
  });

  it('that is empty is told', async () => {
    const { status, out, err } = await review(['--format', 'lines', '-'], { cwd: LIBRARY, input: '' });
    expect(status).toBe(1);
    expect(out).toBe(
      '-:1:1: error: The file is empty or holds only comments; a document begins with "kind:", for example "kind: detail". [document/empty-file]\n',
    );
    expect(err).toBe('');
  });
});

describe('where the command is run does not matter', () => {
  it.each(['json', 'sarif', 'lines', 'markdown', 'terminal'])(
    '%s is the same from every folder, byte by byte',
    async (format) => {
      const folder = scratch({}, LIBRARY);
      const ways: [string, string][] = [
        [folder, '.'],
        [path.join(folder, 'details'), '..'],
        ['/', folder],
        [path.dirname(folder), path.basename(folder)],
      ];
      const outs = await Promise.all(
        ways.map(async ([cwd, input]) => (await review(['--format', format, input], { cwd })).out),
      );
      expect(outs[0]).toContain('details/narrow.yaml');
      expect(new Set(outs).size).toBe(1);
    },
  );

  it('uris count from the library root, and no report names the place on the disk', async () => {
    const folder = scratch({}, LIBRARY);
    const { out } = await review(['--format', 'sarif', path.join(folder, 'details/narrow.yaml')], { cwd: '/' });
    expect(out).toContain('"uri":"details/narrow.yaml"');
    expect(out).not.toContain(path.basename(folder));
  });

  it('without settings the library begins at the root of the repository', async () => {
    const folder = scratch({ 'walls/deep/narrow.yaml': narrowAlone() });
    execFileSync('git', ['init', '--quiet', folder]);
    const { out } = await review(['--format', 'lines', 'narrow.yaml'], { cwd: path.join(folder, 'walls/deep') });
    expect(out).toContain('walls/deep/narrow.yaml:');
    expect(out).toContain(NARROW_FINDING);
  });
});

/** The narrow detail with everything it refers to in one file. */
function narrowAlone(): string {
  const read = (name: string): string => readFileSync(path.join(LIBRARY, name), 'utf8');
  return [
    read('details/narrow.yaml').replace('project: ../project.yaml\n', ''),
    read('project.yaml'),
    read('products.yaml'),
  ].join('---\n');
}
