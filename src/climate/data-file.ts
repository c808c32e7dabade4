/** The climate tables that come with the program: found beside it and read when first asked for. */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const FOLDER = 'data/climate';
/** From `dist/parts/` or `src/climate/` the root of the package is two folders up, from `dist/` one. */
const MOST_STEPS_UP = 2;

/** Folder of this module; of the script that runs where the module has no place on disk (a `data:` address). */
function start(): string {
  const address = import.meta.url;
  return path.dirname(address.startsWith('file:') ? fileURLToPath(address) : path.resolve(process.argv[1] ?? ''));
}

/** Path of the folder with the tables. */
function folder(name: string): string {
  let at = start();
  for (let step = 0; step <= MOST_STEPS_UP; step++, at = path.dirname(at))
    if (existsSync(path.join(at, FOLDER, name))) return path.join(at, FOLDER);
  throw new Error(`the climate table ${FOLDER}/${name} that comes with the program is missing; install it again`);
}

/**
 * Fields of each line of a table; its head lines (`#`) are left out.
 *
 * @param name file name in data/climate
 * @throws Error when the file does not stand where the program was installed
 */
export function readTable(name: string): string[][] {
  return readFileSync(path.join(folder(name), name), 'utf8')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => line.split('\t'));
}

/** The same answer from then on, worked out when first asked for. */
export function once<T>(build: () => T): () => T {
  let held: { readonly value: T } | undefined;
  return () => (held ??= { value: build() }).value;
}
