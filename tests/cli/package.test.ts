import { cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { DATE, LIBRARY, NARROW_FINDING, ROOT, runProgram } from '../support/command.js';
import { installPacked } from '../support/installed.js';

const { project, tarball, bin } = await installPacked();
const HOME = path.join(project, 'node_modules/lapwright');
const manifest = JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8')) as { version: string };

describe('the installed package', () => {
  it('brings no other package along: everything it needs is in it, with the licences', () => {
    expect(readdirSync(path.join(project, 'node_modules')).filter((name) => !name.startsWith('.'))).toEqual([
      'lapwright',
    ]);
    const licences = readFileSync(path.join(HOME, 'dist/THIRD-PARTY-LICENSES.txt'), 'utf8');
    for (const name of ['yaml', 'chalk', 'unified']) expect(licences).toMatch(new RegExp(`^${name} \\d`, 'm'));
    expect(readFileSync(path.join(HOME, 'LICENSE'), 'utf8')).toContain('Apache License');
  });

  it('holds what is published and nothing of the workshop', async () => {
    const { out } = await runProgram('tar', ['tzf', tarball]);
    const files = out
      .trim()
      .split('\n')
      .map((name) => name.replace(/^package\//, ''));
    for (const name of [
      'dist/lapwright.js',
      'data/climate/us-counties.txt',
      'data/map/us-counties.json',
      'data/map/NOTICE',
      'dist/index.js',
      'dist/rule.js',
      'schemas/detail.schema.json',
      'rules/lap/reverse-lap.md',
      'fixtures/demo/lapwright.yaml',
      '.pre-commit-hooks.yaml',
    ])
      expect(files).toContain(name);
    // A link of the README that leads nowhere once installed is a broken promise.
    const links = [...readFileSync(path.join(HOME, 'README.md'), 'utf8').matchAll(/\]\((?!https?:)([^)#]+)/g)];
    expect(links.length).toBeGreaterThan(5);
    expect(files).toEqual(expect.arrayContaining(links.map(([, to]) => to)));
    expect(
      files.filter(
        (name) =>
          /^(?:src|tests|bench|scripts|generated|node_modules|\.ci)\//.test(name) || /\.test\.|\.tgz$/.test(name),
      ),
    ).toEqual([]);
  });

  it('prints its version', async () => {
    expect(await runProgram(bin, ['--version'], { cwd: project })).toEqual({
      status: 0,
      out: `${manifest.version}\n`,
      err: '',
    });
  });

  it('reviews a detail, in every format', async () => {
    cpSync(LIBRARY, path.join(project, 'library'), { recursive: true });
    for (const format of ['terminal', 'lines', 'markdown', 'html', 'sarif', 'json']) {
      const { status, out, err } = await runProgram(
        bin,
        ['review', '--format', format, '--date', DATE, 'library/details/narrow.yaml'],
        { cwd: project },
      );
      expect({ status, err }, format).toEqual({ status: 1, err: '' });
      expect(out, format).toContain('extension/onto-wall');
    }
  });

  it('reviews the demo library that it brings', async () => {
    const { status, out } = await runProgram(bin, ['review', '--fail-on', 'never', path.join(HOME, 'fixtures/demo')], {
      cwd: project,
    });
    expect(status).toBe(0);
    expect(out).toMatch(/\d+ details reviewed: /);
  });

  it('tells where a wall fits, and draws the map', async () => {
    const wall = path.join(ROOT, 'fixtures/where/P-1-painted-board.yaml');
    cpSync(wall, path.join(project, 'wall.yaml'));
    const table = await runProgram(bin, ['where', 'wall.yaml'], { cwd: project });
    expect(table).toMatchObject({ status: 0, err: '' });
    expect(table.out).toMatch(/^1A +fits/m);
    expect((await runProgram(bin, ['where', 'wall.yaml', '--format', 'svg'], { cwd: project })).out).toContain(
      '<title>Where P-1 fits</title>',
    );
    const licences = readFileSync(path.join(HOME, 'dist/THIRD-PARTY-LICENSES.txt'), 'utf8');
    expect(licences).toMatch(/^topojson-client \d/m);
  });

  it('explains a rule and prints starting documents without the repository around it', async () => {
    const explained = await runProgram(bin, ['explain', 'lap/reverse-lap'], { cwd: project });
    expect(explained).toMatchObject({ status: 0, err: '' });
    expect((await runProgram(bin, ['new', 'detail'], { cwd: project })).out).toMatch(/^kind: detail$/m);
  });
});

describe('the package as a library', () => {
  it('reviews from a program', async () => {
    const program = `
      import { runReview, printLines, parseQuantity } from 'lapwright';
      import { defineRule } from 'lapwright/rule';
      const { review } = await runReview({ inputs: ['library/details/narrow.yaml'], cwd: process.cwd(), packs: [], allowPacks: false, today: '${DATE}', skipOthers: false, dependents: false });
      process.stdout.write(printLines(review));
      process.stdout.write(JSON.stringify([parseQuantity('1-1/2 in', 'length').value, defineRule({ id: 'a/b' }).id]));
    `;
    writeFileSync(path.join(project, 'program.js'), program);
    cpSync(LIBRARY, path.join(project, 'library'), { recursive: true });
    const { status, out, err } = await runProgram(process.execPath, ['program.js'], { cwd: project });
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toContain(NARROW_FINDING);
    // 1-1/2 in is 38.1 mm exactly: an inch is 25.4 mm (international yard and pound agreement of 1959).
    expect(out.split('\n').at(-1)).toBe('[38.1,"a/b"]');
  });

  it('has types that hold under the strictest settings', async () => {
    const program = `
      import { runReview, type Review } from 'lapwright';
      import { defineRule, type Rule } from 'lapwright/rule';
      export const rule: Rule = defineRule({
        id: 'office/window-limit', title: 'Width of windows', summary: 'No opening is wide.', level: 'warning', reads: [], sources: [],
        *review({ detail }) {
          for (const opening of detail.openings) yield { kind: opening.widthMm.value > 1000 ? 'fail' : 'pass', message: 'Wide.', at: opening.widthMm.at };
        },
      });
      export const review = async (): Promise<Review> =>
        (await runReview({ inputs: ['.'], cwd: '/', packs: [], allowPacks: false, today: '2026-01-15', skipOthers: false, dependents: false })).review;
      // @ts-expect-error a level that does not exist
      export const wrong: Rule['level'] = 'fatal';
    `;
    writeFileSync(path.join(project, 'program.ts'), program);
    const config = {
      compilerOptions: {
        strict: true,
        exactOptionalPropertyTypes: true,
        noUncheckedIndexedAccess: true,
        target: 'ES2023',
        module: 'NodeNext',
        moduleResolution: 'NodeNext',
        noEmit: true,
        skipLibCheck: false,
        types: [],
      },
      files: ['program.ts'],
    };
    writeFileSync(path.join(project, 'tsconfig.json'), JSON.stringify(config));
    const { status, out } = await runProgram(
      process.execPath,
      [path.join(ROOT, 'node_modules/typescript/bin/tsc'), '-p', '.'],
      { cwd: project },
    );
    expect(out).toBe('');
    expect(status).toBe(0);
  });
});
