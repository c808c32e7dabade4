/** What a person asked for on the command line: files, folders, patterns or standard input. */
import { realpathSync, statSync } from 'node:fs';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import { EXTENSIONS } from './documents.js';
import { filesBelow, isReadable } from './folder.js';
import { glob, isGlob } from './glob.js';
import type { Glob } from './glob.js';
import type { Ignored } from './ignored.js';

/** Standard input, with the path it stands for, if it stands for one. */
export interface Stdin {
  readonly text: string;
  /** Path of the file that the text belongs to; references count from its folder, and its ending says how it is read. */
  readonly name?: string;
}

/** One input; paths absolute, links in the folders resolved. */
export type Input =
  | {
      readonly type: 'file' | 'folder' | 'stdin';
      readonly written: string;
      readonly path: string;
      readonly folder: string;
    }
  | { readonly type: 'pattern'; readonly written: string; readonly folder: string; readonly pattern: Glob };

/** An input that names nothing that can be read. The message says what was given and what to give. */
export class UnusableInput extends Error {
  override readonly name = 'UnusableInput';
}

/**
 * What each input is. A path that exists is that path, even if it looks like a pattern.
 *
 * @param inputs as written; `-` is standard input
 * @param cwd folder that relative inputs count from
 * @throws UnusableInput when a path does not exist or is of a kind that is not read
 */
export function classify(inputs: readonly string[], cwd: string, stdin: Stdin | undefined): Input[] {
  return inputs.map((written): Input => {
    if (written === '-') {
      if (!stdin)
        throw new UnusableInput('"-" stands for standard input, but none was given; give a file or a folder.');
      const path = resolve(cwd, stdin.name ?? '-');
      const folder = realFolder(dirname(path));
      if (stdin.name !== undefined && !isReadable(path)) throw new UnusableInput(notReadable(stdin.name));
      return { type: 'stdin', written, path: join(folder, basename(path)), folder };
    }
    const absolute = resolve(cwd, written);
    const status = statSync(absolute, { throwIfNoEntry: false });
    if (status?.isDirectory()) {
      const path = realpathSync(absolute);
      return { type: 'folder', written, path, folder: path };
    }
    if (status) {
      if (!status.isFile() || !isReadable(absolute)) throw new UnusableInput(notReadable(written));
      const path = realpathSync(absolute);
      return { type: 'file', written, path, folder: dirname(path) };
    }
    const pattern = isGlob(written) ? glob(written.split(sep).join('/')) : undefined;
    const base = pattern ? resolve(cwd, (written.startsWith('/') ? '/' : '') + pattern.folder) : undefined;
    if (!pattern || !base || !statSync(base, { throwIfNoEntry: false })?.isDirectory()) {
      throw new UnusableInput(`There is no file or folder ${written}; check the path, or give a folder to look in.`);
    }
    return { type: 'pattern', written, folder: realpathSync(base), pattern };
  });
}

/**
 * The files an input stands for.
 *
 * @returns absolute paths; none for a file that is left out of the library, which is noticed
 * @throws UnusableInput when a pattern matches nothing
 */
export function filesOf(input: Input, root: string, ignored: Ignored, notices: Set<string>): string[] {
  if (input.type === 'stdin') return [input.path];
  if (input.type === 'pattern') {
    const { folder, pattern } = input;
    const matching = filesBelow(folder, root, ignored, notices, pattern.depth).filter((path) =>
      pattern.matches(relative(folder, path).split(sep).join('/')),
    );
    if (matching.length === 0)
      throw new UnusableInput(`No document matches ${input.written}; check the pattern, or give a folder to look in.`);
    return matching;
  }
  const isLeftOut = input.type === 'file' ? ignored.file(input.path) : ignored.folder(input.path);
  if (isLeftOut) {
    notices.add(`${input.written} is left out by .gitignore or by "ignore" of the settings and was not read.`);
    return [];
  }
  return input.type === 'file' ? [input.path] : filesBelow(input.path, root, ignored, notices);
}

function realFolder(folder: string): string {
  if (!statSync(folder, { throwIfNoEntry: false })?.isDirectory())
    throw new UnusableInput(`There is no folder ${folder}; check the path.`);
  return realpathSync(folder);
}

function notReadable(written: string): string {
  return `${written} is not a kind of file that is read; give a folder or a file that ends in ${EXTENSIONS.join(', ')}.`;
}
