import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildSync } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sourceFile } from './source.js';
import { MAX_BYTES, MAX_DEPTH, MAX_NODES, readYaml } from './yaml.js';

function messages(text: string): string[] {
  const { documents, problems } = readYaml(sourceFile('a.yaml', text), text);
  return [...problems, ...documents.flatMap((document) => document.problems)].map(({ message }) => message);
}

const TOO_DEEP = `More than ${MAX_DEPTH} maps and lists stand inside each other here; write it flatter.`;

describe('depth', () => {
  it.each([
    ['flow lists', (depth: number) => '['.repeat(depth) + ']'.repeat(depth)],
    ['flow maps', (depth: number) => '{a: '.repeat(depth) + '}'.repeat(depth)],
    ['lists on one line', (depth: number) => '- '.repeat(depth) + 'a'],
    ['indented maps', (depth: number) => Array.from({ length: depth }, (_, i) => `${' '.repeat(i)}a:\n`).join('')],
    ['lists whose quoted items look like their ends', (depth: number) => '["]", '.repeat(depth) + ']'.repeat(depth)],
  ])('of %s is read up to the limit and refused above', (_, make) => {
    expect(messages(make(MAX_DEPTH))).toEqual([]);
    expect(messages(make(MAX_DEPTH + 1))).toEqual([TOO_DEEP]);
  });

  it('is not counted in text', () => {
    expect(messages(`a: "${'['.repeat(500)}"\nb: |\n  ${'- '.repeat(500)}\n# ${'{'.repeat(500)}\n`)).toEqual([]);
  });
});

describe('a process that reads two documents nested a thousand deep', () => {
  let folder = '';
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'lapwright-'));
    buildSync({
      entryPoints: [join(import.meta.dirname, 'yaml.ts')],
      bundle: true,
      platform: 'node',
      format: 'cjs',
      outfile: join(folder, 'yaml.cjs'),
    });
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it.each([
    "'['.repeat(1000)",
    "'- '.repeat(1000)",
    "'{a: '.repeat(1000)",
    "'? '.repeat(1000)",
    "Array.from({ length: 1000 }, (_, i) => ' '.repeat(i) + 'a:\\n').join('')",
  ])('lives on after %s', (text) => {
    // The library behind the adapter ends the whole process on such texts, which no test could survive.
    const script = `const { readYaml } = require('./yaml.cjs'); const text = ${text};
        for (let i = 0; i < 2; i++) console.log(readYaml({ uri: 'a', text }, text).problems[0].message);`;
    expect(execFileSync(process.execPath, ['-e', script], { cwd: folder, encoding: 'utf8' })).toBe(
      `${TOO_DEEP}\n${TOO_DEEP}\n`,
    );
  });
});

describe('size', () => {
  it('is read up to the limit and refused above', () => {
    const filled = (bytes: number): string => `a: ${'x'.repeat(bytes - 3)}`;
    expect(messages(filled(MAX_BYTES))).toEqual([]);
    expect(messages(filled(MAX_BYTES + 1))).toEqual([
      `The file has ${MAX_BYTES + 1} bytes and the limit is ${MAX_BYTES}; split it into smaller files.`,
    ]);
  });

  it('counts bytes, not characters', () => {
    expect(messages(`a: ${'\u20AC'.repeat(MAX_BYTES / 3)}`)[0]).toMatch(/^The file has \d+ bytes and the limit/);
  });

  it('limits how many values there are', { timeout: 60_000 }, () => {
    // Each line counts as a name and a value.
    const lines = (count: number): string =>
      Array.from({ length: count }, (_, i) => `${i.toString(36)}k: v\n`).join('');
    expect(messages(lines(MAX_NODES / 2))).toEqual([]);
    expect(messages(lines(MAX_NODES / 2 + 1))).toEqual([
      `The file has more than ${MAX_NODES} values, names and commas; split it into smaller files.`,
    ]);
  });

  it('limits how many problems of one document are told', { timeout: 60_000 }, () => {
    const names = Array.from({ length: 20_000 }, (_, i) => `k${i}: v\n`).join('');
    expect(messages(names + 'k19999: v\n'.repeat(20_000))).toHaveLength(100);
    expect(messages('a: 0x1\nb: [0x1]\n'.replace('[0x1]', `[${'0x1, '.repeat(500)}]`))).toHaveLength(100);
  });

  it.each([
    ['commas', `[${','.repeat(MAX_BYTES - 2)}`],
    ['closing brackets', ']'.repeat(MAX_BYTES)],
    ['anchors', '&a '.repeat(MAX_BYTES / 4)],
    ['tags', '!a '.repeat(MAX_BYTES / 4)],
    ['directives', '%a\n'.repeat(MAX_BYTES / 4)],
    ['documents', '---\n'.repeat(MAX_BYTES / 4)],
    ['items', '- a\n'.repeat(MAX_BYTES / 4)],
    ['equal names', 'a: 1\n'.repeat(MAX_BYTES / 8)],
    ['line ends', '\n'.repeat(MAX_BYTES)],
  ])(
    'a megabyte of %s ends within seconds and with few problems',
    (_, text) => {
      const before = process.cpuUsage();
      expect(messages(text).length).toBeLessThanOrEqual(1);
      // Unguarded, most of these take five to fifteen seconds. Processor time, not time on the clock: a machine may be busy.
      expect(process.cpuUsage(before).user / 1e6).toBeLessThan(4);
    },
    60_000,
  );
});
