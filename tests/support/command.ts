/** Runs the built command in a process of its own, and makes scratch folders for it. */
import { spawn, type ChildProcess } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll } from 'vitest';

export const ROOT = path.resolve(import.meta.dirname, '../..');
export const DEMO = path.join(ROOT, 'fixtures/demo');
/** One detail for each outcome; see its README.md. */
export const LIBRARY = path.join(ROOT, 'tests/data/library');
/** The built program; LAPWRIGHT_BIN tries another build of it. */
export const PROGRAM = process.env['LAPWRIGHT_BIN'] ?? path.join(ROOT, 'dist/lapwright.js');
if (!existsSync(PROGRAM))
  throw new Error(`${PROGRAM} is missing: run "npm run build" first, or "npm test", which does.`);

/** Day of the review in all tests, so that no test depends on the calendar. */
export const DATE = '2026-01-15';

export interface Ran {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

export interface RunWith {
  readonly cwd?: string;
  readonly input?: string | Buffer;
  /** Added to the environment, from which the color variables of the person who runs the tests are taken out. */
  readonly env?: Readonly<Record<string, string>>;
}

/** The environment of a child: without anything that would change what is printed. */
export function plainEnvironment(more: Readonly<Record<string, string>> = {}): NodeJS.ProcessEnv {
  const environment: NodeJS.ProcessEnv = { ...process.env, TERM: 'xterm', ...more };
  for (const name of ['NO_COLOR', 'FORCE_COLOR', 'NODE_OPTIONS'].filter((name) => !(name in more)))
    environment[name] = undefined;
  return environment;
}

/** Runs any program to its end. */
export function runProgram(program: string, args: readonly string[], { cwd, input, env }: RunWith = {}): Promise<Ran> {
  return collect(spawn(program, [...args], { cwd: cwd ?? ROOT, env: plainEnvironment(env), stdio: 'pipe' }), input);
}

/** Runs the built command. */
export function lapwright(args: readonly string[], options: RunWith = {}): Promise<Ran> {
  return runProgram(process.execPath, [PROGRAM, ...args], options);
}

/** Runs `lapwright review` on the fixed day. */
export function review(args: readonly string[], options: RunWith = {}): Promise<Ran> {
  return lapwright(['review', '--date', DATE, ...args], options);
}

function collect(child: ChildProcess, input: string | Buffer | undefined): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const out: Buffer[] = [];
    const err: Buffer[] = [];
    child.stdout?.on('data', (chunk: Buffer) => out.push(chunk));
    child.stderr?.on('data', (chunk: Buffer) => err.push(chunk));
    child.on('error', reject);
    child.on('close', (status) =>
      resolve({ status, out: Buffer.concat(out).toString('utf8'), err: Buffer.concat(err).toString('utf8') }),
    );
    // A program that reads nothing may be gone before its input is written.
    child.stdin?.on('error', () => undefined);
    child.stdin?.end(input ?? '');
  });
}

const scratches: string[] = [];
afterAll(() => {
  for (const folder of scratches.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/**
 * A folder of its own, gone after the tests of the file.
 *
 * @param files by path relative to the folder
 * @param from a folder whose content is copied in first
 * @returns absolute path, links resolved
 */
export function scratch(files: Readonly<Record<string, string | Buffer>> = {}, from?: string): string {
  const folder = realpathSync(mkdtempSync(path.join(tmpdir(), 'lapwright-test-')));
  scratches.push(folder);
  if (from !== undefined) cpSync(from, folder, { recursive: true });
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
    writeFileSync(path.join(folder, name), content);
  }
  return folder;
}

/** `line:column` of the first occurrence of some words in a text, counted by another way than the program's. */
export function placeOf(text: string, words: string): string {
  const before = text.split(words)[0] ?? '';
  if (before === text) throw new Error(`"${words}" is not in the text`);
  const lines = before.split(/\r?\n/);
  return `${lines.length}:${(lines.at(-1) ?? '').length + 1}`;
}

/** Where the detail `narrow` of the library is wrong: its jamb flashing reaches 3 in where the product asks for 4 in. */
export const NARROW_PLACE = placeOf(readFileSync(path.join(LIBRARY, 'details/narrow.yaml'), 'utf8'), '3 in,');
/** The finding there, as it stands in the output of `--format lines` behind the place. */
export const NARROW_FINDING =
  'error: Flashing at the left jamb of window reaches 3 in onto the wall; at least 4 in is required (product data of liquid-flashing).';
