/** The pictures of docs/ are those the program draws. */
import { spawnSync } from 'node:child_process';
import { appendFileSync, existsSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { VIEWS } from '../src/output/drawing/views.js';
import { ROOT, scratch } from './support/command.js';

const pictures = (...args: string[]) =>
  spawnSync(process.execPath, [path.join(ROOT, 'scripts/pictures.mjs'), ...args], { cwd: ROOT, encoding: 'utf8' });

describe('the pictures of docs/', () => {
  it('are up to date', () => {
    const { status, stderr } = pictures('--check');
    expect(stderr).toBe('');
    expect(status).toBe(0);
  });
  it('show each view, and are missed when they differ', () => {
    const folder = scratch({ 'pictures/elevation.svg': 'old' });
    const differ = pictures(folder, '--check');
    expect(differ.status).toBe(1);
    expect(differ.stderr).toContain('elevation.svg is out of date: run "node scripts/pictures.mjs".');
    expect(pictures(folder).status).toBe(0);
    for (const view of [...VIEWS, 'where']) expect(existsSync(path.join(folder, `pictures/${view}.svg`))).toBe(true);
    expect(pictures(folder, '--check').status).toBe(0);
    appendFileSync(path.join(folder, 'pictures/layers.svg'), ' ');
    expect(pictures(folder, '--check').status).toBe(1);
  });
});
