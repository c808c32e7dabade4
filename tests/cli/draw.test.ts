/** `lapwright draw`: what it writes, where, and what it says when it cannot. */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { DATE, DEMO, lapwright, ROOT, scratch } from '../support/command.js';

const WINDOW = path.join(DEMO, 'details/W-1-flanged-window.yaml');
const draw = (...args: string[]) => lapwright(['draw', '--date', DATE, ...args]);

describe('drawing', () => {
  it('writes the elevation to standard output unless told otherwise', async () => {
    const { status, out, err } = await draw(WINDOW);
    expect(err).toBe('');
    expect(status).toBe(0);
    expect(out).toMatch(/^<svg /);
    expect(out).toContain('Elevation of the barrier from outside');
    expect(out).toContain('Not for construction.');
  });
  it('writes a view to a file, making its folder', async () => {
    const folder = scratch();
    const file = path.join(folder, 'drawings/sill.svg');
    const { status, out } = await draw(WINDOW, '--view', 'section-sill', '--output', file);
    expect([status, out]).toEqual([0, '']);
    expect(readFileSync(file, 'utf8')).toContain('Vertical section at the sill of window');
    expect(existsSync(`${file}.part`)).toBe(false);
  });
  it('shows the findings of the review and still ends with 0', async () => {
    const { status, out } = await draw(path.join(DEMO, 'returned/X-1-sheet-and-strips.yaml'));
    expect(status).toBe(0);
    expect(out).toContain('Findings of the review');
    expect(out).toContain('Direction of laps');
  });
});

const detail = (id: string, openings: string): string =>
  `kind: detail\nid: ${id}\ntitle: ${id}\nwall:\n  - { id: sheathing, material: plywood }\nopenings:\n${openings}work:\n  - { id: f, place: sill, material: metal flashing, ontoWall: 4 in }\n`;
const OPENING = (id: string, more = ''): string =>
  `  - { id: ${id}, roughOpening: { width: 30 in, height: 40 in, depth: 6 in }${more} }\n`;

describe('choosing what to draw', () => {
  it('asks which of several details is meant', async () => {
    const folder = scratch({ 'two.yaml': `${detail('A', OPENING('w'))}---\n${detail('B', OPENING('w'))}` });
    const file = path.join(folder, 'two.yaml');
    const without = await draw(file);
    expect(without.status).toBe(2);
    expect(without.err).toContain('holds several details ("A", "B"); name one with --detail ID.');
    const chosen = await draw(file, '--detail', 'B');
    expect(chosen.status).toBe(0);
    expect(chosen.out).toContain('<title>B: Elevation');
    expect((await draw(file, '--detail', 'C')).err).toContain('There is no detail "C"');
  });
  it('dimensions and cuts the opening that is named', async () => {
    const folder = scratch({
      'd.yaml': detail('A', OPENING('left') + OPENING('right', ', at: { right: 50 in, up: 0 in }')),
    });
    const file = path.join(folder, 'd.yaml');
    expect((await draw(file, '--view', 'section-head')).out).toContain('at the head of left');
    expect((await draw(file, '--view', 'section-head', '--opening', 'right')).out).toContain('at the head of right');
    expect((await draw(file, '--opening', 'rigth')).err).toContain('did you mean "right"?');
  });
});

describe('drawing heat and vapor', () => {
  const COLD = path.join(ROOT, 'fixtures/moisture/cold-wood-wall.yaml');
  it('draws the month that decides, or the one that is asked for', async () => {
    expect((await draw(COLD, '--view', 'profile')).out).toContain('Heat and vapor through the wall in January');
    const march = await draw(COLD, '--view', 'profile', '--month', '3');
    expect([march.status, march.err]).toEqual([0, '']);
    expect(march.out).toContain('Heat and vapor through the wall in March');
  });
  it('draws the year', async () => {
    expect((await draw(COLD, '--view', 'year')).out).toContain('Water in the wall through a year');
  });
  it('says why a wall is not followed and what is missing, exit status 2', async () => {
    const { status, out, err } = await draw(
      path.join(ROOT, 'fixtures/published/canada-head-flashing.yaml'),
      '--view',
      'year',
    );
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain('the product "sheet-barrier" declares no dry-cup permeance. Missing: product.permeance.dry.');
  });
  it.each([
    ['13', 'profile', '--month is a number from 1 (January) to 12 (December), not "13".'],
    ['May', 'profile', '--month is a number from 1 (January) to 12 (December), not "May".'],
    ['3', 'year', '--month belongs to --view profile, not to --view year.'],
  ])('refuses month %s of view %s', async (month, view, sentence) => {
    const { status, err } = await draw(COLD, '--view', view, '--month', month);
    expect(status).toBe(2);
    expect(err).toContain(sentence);
  });
});

describe('what cannot be drawn', () => {
  it.each([
    ['no file', [], 'Name one file that holds the detail'],
    ['two files', [WINDOW, WINDOW], 'Name one file that holds the detail'],
    ['a view there is none of', [WINDOW, '--view', 'section-sil'], 'did you mean "section-sill"?'],
    ['a view the detail has nothing for', [WINDOW, '--view', 'section-base'], 'its views: elevation, section-head'],
    ['a file without a detail', [path.join(DEMO, 'project.yaml')], 'holds no detail that can be drawn'],
    ['a day that is none', [WINDOW, '--date', '2026-02-30'], '--date is a day written YYYY-MM-DD'],
  ])('is told in a sentence, exit status 2: %s', async (_, args, sentence) => {
    const { status, out, err } = await lapwright(['draw', ...args]);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain(sentence);
    expect(err).not.toContain('    at ');
  });
  it('leaves the file that is there as it was', async () => {
    const folder = scratch({ 'd.yaml': 'kind: detail\nid: A\n', 'old.svg': 'old' });
    const { status } = await draw(path.join(folder, 'd.yaml'), '--output', path.join(folder, 'old.svg'));
    expect(status).toBe(2);
    expect(readFileSync(path.join(folder, 'old.svg'), 'utf8')).toBe('old');
  });
});
