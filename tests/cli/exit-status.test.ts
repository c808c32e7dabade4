import { closeSync, openSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { LIBRARY, NARROW_FINDING, NARROW_PLACE, review, scratch } from '../support/command.js';

const detail = (name: string): string => path.join(LIBRARY, 'details', `${name}.yaml`);

describe('the exit status says whether there is something to do', () => {
  // Rows: worst finding in the detail. Columns: --fail-on. A finding at or above the level chosen gives 1.
  it.each<[string, string, number, number, number, number]>([
    ['good', 'nothing', 0, 0, 0, 0],
    ['narrow', 'an error', 1, 1, 1, 0],
    ['late', 'a warning', 0, 1, 1, 0],
    ['unused', 'a note', 0, 0, 1, 0],
  ])('%s (%s): with error %i, warning %i, note %i, never %i', async (name, _worst, error, warning, note, never) => {
    const levels = ['error', 'warning', 'note', 'never'];
    const ran = await Promise.all(levels.map((level) => review(['--fail-on', level, detail(name)])));
    expect(ran.map(({ status }) => status)).toEqual([error, warning, note, never]);
    const usual = await review([detail(name)]);
    expect(usual.status).toBe(error);
  });

  it('the settings choose the level, and the command line overrules them', async () => {
    const folder = scratch(
      { 'lapwright.yaml': 'kind: settings\ndocuments: [products.yaml]\nfailOn: warning\n' },
      LIBRARY,
    );
    const file = path.join(folder, 'details/late.yaml');
    expect((await review([file])).status).toBe(1);
    expect((await review(['--fail-on', 'error', file])).status).toBe(0);
  });

  it('2 when nothing was reviewed, with the reason on standard error', async () => {
    const { status, out, err } = await review([scratch({ 'notes.txt': 'kind: detail\n' })]);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain('a document starts with "kind:", for example "kind: detail".');
  });

  it('with --skip-others nothing to review is no failure, for commit hooks', async () => {
    const folder = scratch({ 'other.yaml': 'on: push\n', 'README.md': '# Words\n' });
    expect(await review(['--skip-others', 'other.yaml', 'README.md'], { cwd: folder })).toEqual({
      status: 0,
      out: '',
      err: '',
    });
  });
});

describe('reports', () => {
  it('several formats in one run, each into its file', async () => {
    const folder = scratch();
    const { status, out, err } = await review(
      [
        '--format',
        'sarif',
        '--output',
        'out/a.sarif',
        '--format',
        'json',
        '--output',
        'out/b.json',
        '--output',
        'c.md',
        '--format',
        'lines',
        detail('narrow'),
      ],
      { cwd: folder },
    );
    expect({ status, err }).toEqual({ status: 1, err: '' });
    expect(out).toContain(`details/narrow.yaml:${NARROW_PLACE}: ${NARROW_FINDING}`);
    const sarif = JSON.parse(readFileSync(path.join(folder, 'out/a.sarif'), 'utf8')) as { version: string };
    const json = JSON.parse(readFileSync(path.join(folder, 'out/b.json'), 'utf8')) as {
      format: string;
      exitCode: number;
    };
    expect(sarif.version).toBe('2.1.0');
    expect(json).toMatchObject({ format: 'lapwright-review/1', exitCode: 1 });
    expect(readFileSync(path.join(folder, 'c.md'), 'utf8')).toContain('extension/onto-wall');
    // Nothing half written stays behind.
    expect(readdirSync(folder, { recursive: true }).sort()).toEqual(['c.md', 'out', 'out/a.sarif', 'out/b.json']);
  });

  it('the format follows from the ending of the file when none is named before it', async () => {
    const folder = scratch();
    await review(['--output', 'a.sarif.json', '--output', 'b.json', '--output', 'c.txt', detail('narrow')], {
      cwd: folder,
    });
    const read = (name: string): string => readFileSync(path.join(folder, name), 'utf8');
    expect(JSON.parse(read('a.sarif.json'))).toHaveProperty('runs');
    expect(JSON.parse(read('b.json'))).toHaveProperty('results');
    expect(read('c.txt')).toContain(`details/narrow.yaml:${NARROW_PLACE}: ${NARROW_FINDING}`);
  });

  it('two formats for standard output are refused before anything is written', async () => {
    const folder = scratch();
    const ran = await review(
      ['--format', 'json', '--format', 'sarif', '--output', 'a.sarif', '--format', 'lines', detail('narrow')],
      { cwd: folder },
    );
    expect({ status: ran.status, out: ran.out }).toEqual({ status: 2, out: '' });
    expect(ran.err).toBe(
      'lapwright: Only one format can go to standard output; give the others a file with --output FILE after each --format.\n',
    );
    expect(readdirSync(folder)).toEqual([]);
  });

  it('an old report is replaced as a whole, and kept when the new one cannot be made', async () => {
    const folder = scratch({ 'old.json': 'x'.repeat(2_000_000), 'locked/report.json/inside.txt': '' });
    const reader = openSync(path.join(folder, 'old.json'), 'r');
    await review(['--output', 'old.json', detail('good')], { cwd: folder });
    // Whoever was reading the old one reads it to its end: the new one came in its place, not into it.
    expect(readFileSync(reader, 'utf8')).toBe('x'.repeat(2_000_000));
    closeSync(reader);
    expect(JSON.parse(readFileSync(path.join(folder, 'old.json'), 'utf8'))).toHaveProperty('results');
    const failed = await review(['--output', 'locked/report.json', detail('good')], { cwd: folder });
    expect({ status: failed.status, out: failed.out }).toEqual({ status: 2, out: '' });
    expect(failed.err).toContain('locked/report.json');
    expect(failed.err).not.toMatch(/\n\s+at /);
    expect(readdirSync(path.join(folder, 'locked/report.json'))).toEqual(['inside.txt']);
    expect(readdirSync(path.join(folder, 'locked'))).toEqual(['report.json']);
  });

  it('standard output carries the report alone: remarks go to standard error', async () => {
    const folder = scratch(
      { 'lapwright.yaml': 'kind: settings\ndocuments: [products.yaml]\npacks: [./own]\n' },
      LIBRARY,
    );
    const { out, err } = await review(['--format', 'json', folder]);
    expect(() => JSON.parse(out) as unknown).not.toThrow();
    expect(err).toContain('The settings name the rule pack "./own".');
  });
});
