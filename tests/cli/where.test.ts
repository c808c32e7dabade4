/** `lapwright where`: what it writes, where, and what it says when it cannot. */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { DEMO, lapwright, ROOT, scratch } from '../support/command.js';

const WALL = path.join(ROOT, 'fixtures/where/P-1-painted-board.yaml');
const WINDOW = path.join(DEMO, 'details/W-1-flanged-window.yaml');
const where = (...args: string[]) => lapwright(['where', ...args]);

describe('asking where a wall fits', () => {
  it('prints a table by zone unless told otherwise', async () => {
    const { status, out, err } = await where(WALL);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(/^P-1: Painted gypsum board/);
    expect(out).toMatch(/^1A +fits +fits/m);
    expect(out).toContain('A typical year is not a design year.');
  });
  it('prints CSV and JSON by county, Markdown by zone', async () => {
    const csv = await where(WALL, '--format', 'csv');
    expect(csv.out.split('\r\n')).toHaveLength(3222);
    const json = JSON.parse((await where(WALL, '--format', 'json', '--answer', 'table')).out) as { counties: object[] };
    expect(json.counties).toHaveLength(3220);
    expect((await where(WALL, '--format', 'markdown')).out).toMatch(/^# Where P-1 fits\n/);
    expect((await where(WALL, '--format', 'csv', '--by', 'zone')).out.split('\r\n')).toHaveLength(18);
  });
  it('writes the map to a file, making its folder', async () => {
    const file = path.join(scratch(), 'maps/P-1.svg');
    const { status, out } = await where(WALL, '--format', 'svg', '--output', file);
    expect([status, out]).toEqual([0, '']);
    expect(readFileSync(file, 'utf8')).toMatch(/^<svg [\s\S]*<title>Where P-1 fits<\/title>/);
    expect(existsSync(`${file}.part`)).toBe(false);
  });
  it('needs no project, and takes the rule levels of the library', async () => {
    const wall = readFileSync(WALL, 'utf8').split('---\n')[1]!.replace('project: anywhere\n', '');
    const folder = scratch({
      'd.yaml': wall.replace(', finish: latex paint', ''),
      'lapwright.yaml': 'kind: settings\nrules:\n  vapor/interior-retarder-class: { level: "off" }\n',
    });
    const { status, out } = await where(path.join(folder, 'd.yaml'), '--answer', 'table');
    expect(status).toBe(0);
    expect(out.replace(/\s+/g, ' ')).toContain('names no code with an edition; IBC 2021 was taken.');
    expect(out.replace(/\s+/g, ' ')).toContain('the settings may turn them off');
    expect(out).not.toContain('typical year');
  });
  it('is told of by help', async () => {
    expect((await lapwright(['help'])).out).toContain('lapwright where DETAIL');
    expect((await where('--help')).out).toContain('peak_kg_per_m2');
  });
});

describe('what cannot be asked', () => {
  it('which of several details is meant', async () => {
    const wall = (id: string): string => `kind: detail\nid: ${id}\ntitle: T\nwall:\n  - { id: s, material: plywood }\n`;
    const file = path.join(scratch({ 'two.yaml': `${wall('A')}---\n${wall('B')}` }), 'two.yaml');
    const without = await where(file);
    expect([without.status, without.out]).toEqual([2, '']);
    expect(without.err).toContain('holds several details ("A", "B"); name one with --detail ID.');
    expect((await where(file, '--detail', 'B')).out).toMatch(/^B: T/);
    expect((await where(file, '--detail', 'C')).err).toContain('There is no detail "C"');
  });
  it.each([
    ['no file', [], 'Name one file that holds the detail: lapwright where DETAIL'],
    ['two files', [WALL, WINDOW], 'Name one file that holds the detail'],
    ['a file without a detail', [path.join(DEMO, 'project.yaml')], 'holds no detail that can be placed'],
    ['a format there is none of', [WALL, '--format', 'svgz'], 'did you mean "svg"?'],
    ['an answer there is none of', [WALL, '--answer', 'month'], 'did you mean "months"?'],
    ['a map by zone', [WALL, '--format', 'svg', '--by', 'zone'], 'The map is drawn by county'],
    ['an option of another command', [WALL, '--view', 'layers'], 'There is no option "--view"'],
  ])('is told in a sentence, exit status 2: %s', async (_, args, sentence) => {
    const { status, out, err } = await where(...args);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain(sentence);
    expect(err).not.toContain('    at ');
  });
  it('a document with a fault, whose review tells what is wrong', async () => {
    const folder = scratch({ 'd.yaml': 'kind: detail\nid: A\n' });
    const { status, err } = await where(path.join(folder, 'd.yaml'));
    expect(status).toBe(2);
    expect(err).toContain('lapwright review');
  });
});
