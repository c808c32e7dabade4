/** The data files that come with the program: found beside it and read when first asked for. */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const FOLDER = 'data';
/** From `dist/parts/` or `src/climate/` the root of the package is two folders up, from `dist/` one. */
const MOST_STEPS_UP = 2;

/** Folder of this module; of the script that runs where the module has no place on disk (a `data:` address). */
function start(): string {
  const address = import.meta.url;
  return path.dirname(address.startsWith('file:') ? fileURLToPath(address) : path.resolve(process.argv[1] ?? ''));
}

/** Path of a file below data/. */
function place(name: string): string {
  let at = start();
  for (let step = 0; step <= MOST_STEPS_UP; step++, at = path.dirname(at)) {
    const file = path.join(at, FOLDER, name);
    if (existsSync(file)) return file;
  }
  throw new Error(`the file ${FOLDER}/${name} that comes with the program is missing; install it again`);
}

/**
 * Text of a data file.
 *
 * @param name below data/, with `/`: `climate/us-counties.txt`
 * @throws Error when the file does not stand where the program was installed
 */
export function readData(name: string): string {
  return readFileSync(place(name), 'utf8');
}

/**
 * Fields of each line of a table; its head lines (`#`) are left out.
 *
 * @param name file name in data/climate
 * @throws Error when the file does not stand where the program was installed
 */
export function readTable(name: string): string[][] {
  return readData(`climate/${name}`)
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => line.split('\t'));
}

/** The same answer from then on, worked out when first asked for. */
export function once<T>(build: () => T): () => T {
  let held: { readonly value: T } | undefined;
  return () => (held ??= { value: build() }).value;
}
