/**
 * From what a document writes about another document to files on disk, or to what is wrong with it.
 *
 * Documents are untrusted: a reference never leaves the library, by whatever way, and never names an address.
 */
import { existsSync, readdirSync, realpathSync, statSync } from 'node:fs';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import { filesBelow, isReadable } from './folder.js';
import { glob, isGlob } from './glob.js';
import { isBelow } from './ignored.js';
import type { Ignored } from './ignored.js';
import { nearest } from './nearest.js';

/** Absolute paths in order, or the problem with the reference. */
export type Resolved =
  | { readonly paths: readonly string[]; readonly isGlob: boolean }
  | { readonly code: 'unsafe-content' | 'unknown-reference'; readonly message: string };

const ADDRESS = /^[a-z][a-z0-9+.-]*:/i;

/** Resolves references; each text in each folder once. */
export class ReferencePaths {
  readonly #known = new Map<string, Resolved>();

  /** @param root of the library, absolute, links resolved */
  constructor(
    private readonly root: string,
    private readonly ignored: Ignored,
    private readonly notices: Set<string>,
  ) {}

  /**
   * @param folder of the file that holds the reference, absolute
   * @param text as written: a path or a pattern, relative to that folder, with `/`
   */
  resolve(folder: string, text: string): Resolved {
    const key = `${folder}\0${text}`;
    const known = this.#known.get(key);
    if (known) return known;
    const found = unsafe(text) ?? (isGlob(text) ? this.#glob(folder, text) : this.#path(folder, text));
    this.#known.set(key, found);
    return found;
  }

  #path(folder: string, text: string): Resolved {
    const path = resolve(folder, text);
    if (!isBelow(this.root, path)) return this.#outside(text);
    const status = statSync(path, { throwIfNoEntry: false });
    if (!status) return unknown(`${text} does not exist${this.#nearby(path)}.`);
    // A link may lead out of the library though the path does not.
    const real = realpathSync(path);
    if (!isBelow(this.root, real)) return this.#outside(text);
    if (status.isDirectory())
      return unknown(`${text} is a folder; name a file, or write ${text.replace(/\/+$/, '')}/*.yaml for all in it.`);
    if (!status.isFile() || !isReadable(path)) {
      return unknown(`${text} is not a document that can be read; name a file that ends in .yaml, .yml, .json or .md.`);
    }
    return { paths: [real], isGlob: false };
  }

  #glob(folder: string, text: string): Resolved {
    const pattern = glob(text);
    if (!pattern)
      return {
        code: 'unsafe-content',
        message: `${text} stands for more than 64 patterns; write fewer alternatives in braces.`,
      };
    const base = resolve(folder, pattern.folder);
    if (base !== this.root && !isBelow(this.root, base)) return this.#outside(text);
    if (!existsSync(base))
      return unknown(`${text} matches nothing: the folder ${pattern.folder} does not exist${this.#nearby(base)}.`);
    if (base !== this.root && !isBelow(this.root, realpathSync(base))) return this.#outside(text);
    const paths = filesBelow(base, this.root, this.ignored, this.notices, pattern.depth)
      .filter((path) => pattern.matches(relative(base, path).split(sep).join('/')))
      .sort((a, b) => (a < b ? -1 : 1));
    return paths.length > 0
      ? { paths, isGlob: true }
      : unknown(`${text} matches no document; check the pattern and the folder.`);
  }

  #outside(text: string): Resolved {
    return {
      code: 'unsafe-content',
      message: `${text} leads out of the library; move the document into it.`,
    };
  }

  /** What exists in place of a missing path: the nearest name in its folder, or the folder that is missing. */
  #nearby(path: string): string {
    const folder = dirname(path);
    if (!existsSync(folder)) {
      let missing = folder;
      while (!existsSync(dirname(missing))) missing = dirname(missing);
      return `: there is no folder ${relative(this.root, missing).split(sep).join('/')}${this.#nearby(missing)}`;
    }
    if (!isBelow(this.root, join(folder, 'x'))) return '';
    const names = readdirSync(folder).sort();
    const near = nearest(basename(path), names) ?? names.find((name) => stem(name) === stem(basename(path)));
    return near ? `; the nearest name there is ${near}` : '';
  }
}

function unsafe(text: string): Resolved | undefined {
  if (ADDRESS.test(text) || text.startsWith('//')) {
    return {
      code: 'unsafe-content',
      message: `${text} is an address and nothing is fetched; give a path relative to this file.`,
    };
  }
  if (text.startsWith('/'))
    return { code: 'unsafe-content', message: `${text} is an absolute path; give a path relative to this file.` };
  if (text.includes('\0'))
    return { code: 'unsafe-content', message: 'The path holds a zero character; write it without.' };
  if (text.includes('\\')) return unknown(`${text} is written with backslashes; write / between folders.`);
  if (text.trim() === '') return unknown('The path is empty; name a file.');
  return undefined;
}

function unknown(message: string): Resolved {
  return { code: 'unknown-reference', message };
}

function stem(name: string): string {
  return name.replace(/\.[^.]*$/, '').toLowerCase();
}
