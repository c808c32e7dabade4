import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { lapwright, review, scratch } from '../support/command.js';

const FILE: Readonly<Record<string, string>> = {
  detail: 'w-1.yaml',
  product: 'product.yaml',
  project: 'project.yaml',
  specification: 'section.md',
  submittal: 'submittal.md',
  settings: 'lapwright.yaml',
};

describe.each(Object.entries(FILE))('new %s', (kind, file) => {
  it('writes a document that reviews without an error as it stands', async () => {
    const folder = scratch();
    expect(await lapwright(['new', kind, '--output', file], { cwd: folder })).toEqual({ status: 0, out: '', err: '' });
    expect(readFileSync(path.join(folder, file), 'utf8')).toMatch(new RegExp(`^kind: ${kind}$`, 'm'));
    const { status, out } = await review(['--format', 'lines', file], { cwd: folder });
    expect(out).not.toContain(': error: ');
    expect(status).toBe(0);
  });

  it('never writes over a file', async () => {
    const folder = scratch({ [file]: 'mine\n' });
    const { status, out, err } = await lapwright(['new', kind, '--output', file], { cwd: folder });
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toBe(`lapwright: "${file}" exists already and is left as it is; name another file.\n`);
    expect(readFileSync(path.join(folder, file), 'utf8')).toBe('mine\n');
  });

  it('prints the same to standard output', async () => {
    const folder = scratch();
    await lapwright(['new', kind, '--output', file], { cwd: folder });
    expect(await lapwright(['new', kind], { cwd: folder })).toEqual({
      status: 0,
      out: readFileSync(path.join(folder, file), 'utf8'),
      err: '',
    });
  });
});

describe('a new detail', () => {
  it('can be piped straight into a review, which finds no error and checks something', async () => {
    const folder = scratch();
    const { out: text } = await lapwright(['new', 'detail'], { cwd: folder });
    const { status, out, err } = await review(['--format', 'json', '-'], { cwd: folder, input: text });
    const { counts, details } = JSON.parse(out) as { counts: { errors: number; passed: number }; details: unknown[] };
    expect({ status, err, errors: counts.errors, details: details.length }).toEqual({
      status: 0,
      err: '',
      errors: 0,
      details: 1,
    });
    expect(counts.passed).toBeGreaterThan(5);
  });

  it('belongs to a library made of the four starting documents', async () => {
    const folder = scratch();
    await lapwright(['new', 'settings', '--output', 'lapwright.yaml'], { cwd: folder });
    await lapwright(['new', 'detail', '--output', 'w-1.yaml'], { cwd: folder });
    const { out } = await review(['--format', 'lines', 'w-1.yaml'], { cwd: folder });
    // The settings look for products in a folder that a new library does not have yet: that, and nothing else.
    expect(out.split('\n').filter((line) => line.includes(': error: ') && !line.startsWith('lapwright.yaml:'))).toEqual(
      [],
    );
  });
});
