/** Files on disk: what a folder holds, what a file says, and where a library begins. */
import { closeSync, existsSync, fstatSync, openSync, readdirSync, readSync, realpathSync, statSync } from 'node:fs';
import type { Dirent } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Ignored } from './ignored.js';
import { isBelow } from './ignored.js';
import { decodeText } from './source.js';
import { MAX_BYTES, tooLarge } from './yaml.js';

const READ = /\.(?:ya?ml|json|md|markdown)$/i;
/** A kind entry near the beginning marks a file as ours even if the whole cannot be read. */
const OURS = /^[\s{,]*["']?kind["']?\s*:/m;
const PEEKED_BYTES = 4096;

export const SETTINGS_FILE = 'lapwright.yaml';

/** Whether a file's ending is one of those that are read. */
export function isReadable(path: string): boolean {
  return READ.test(path);
}

/** Where a library begins. All paths absolute. */
export interface Root {
  readonly root: string;
  /** Where `.gitignore` files begin to count. */
  readonly repository: string;
  readonly settingsPath?: string;
}

/**
 * The library a folder belongs to: the nearest folder upward with settings, up to the root of the repository; else
 * that root; else `fallback`. Settings above the repository do not count: they belong to somebody else.
 *
 * @param start folder of the first input, absolute
 * @param fallback folder to take where there are neither settings nor a repository, absolute
 */
export function findRoot(start: string, fallback: string): Root {
  let root: string | undefined;
  for (let folder = start; ; folder = dirname(folder)) {
    if (root === undefined && existsSync(join(folder, SETTINGS_FILE))) root = folder;
    if (existsSync(join(folder, '.git'))) return withSettings(root ?? folder, folder);
    if (dirname(folder) === folder) return withSettings(root ?? fallback, root ?? fallback);
  }
}

function withSettings(root: string, repository: string): Root {
  const settingsPath = join(root, SETTINGS_FILE);
  return existsSync(settingsPath) ? { root, repository, settingsPath } : { root, repository };
}

/**
 * The files below a folder that may hold documents, in no particular order. Folders whose names begin with a dot
 * and `node_modules` are passed over; links to folders are not followed, links to files only inside of the library.
 *
 * @param folder absolute
 * @param depth how many names deep to look
 * @param notices receives a sentence for each link that is passed over
 * @returns absolute paths
 */
export function filesBelow(
  folder: string,
  root: string,
  ignored: Ignored,
  notices: Set<string>,
  depth = Infinity,
): string[] {
  const found: string[] = [];
  const open: { readonly path: string; readonly depth: number }[] = [{ path: folder, depth }];
  for (let next = open.pop(); next; next = open.pop()) {
    for (const entry of entriesOf(next.path, notices)) {
      const path = join(next.path, entry.name);
      if (entry.isDirectory()) {
        const isSkipped = entry.name.startsWith('.') || entry.name === 'node_modules';
        if (next.depth > 1 && !isSkipped && !ignored.folder(path)) open.push({ path, depth: next.depth - 1 });
      } else if (entry.isSymbolicLink()) {
        // Under its own name and under the link's, a file is still one file.
        if (isLinkInside(path, root, notices) && !ignored.file(path)) found.push(realpathSync(path));
      } else if (entry.isFile() && isReadable(path) && !ignored.file(path)) found.push(path);
    }
  }
  return found;
}

function entriesOf(folder: string, notices: Set<string>): Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch {
    notices.add(`${folder} cannot be opened and was passed over.`);
    return [];
  }
}

function isLinkInside(path: string, root: string, notices: Set<string>): boolean {
  const status = statSync(path, { throwIfNoEntry: false });
  if (status?.isDirectory()) notices.add(`${path} is a link to a folder and was not followed.`);
  if (!status?.isFile() || !isReadable(path)) return false;
  if (isBelow(root, realpathSync(path))) return true;
  notices.add(`${path} is a link to a file outside of the library and was not read.`);
  return false;
}

/** A file's text, or why there is none. `isOurs`: as far as it could be read, it says that it holds documents. */
export type FileText =
  | { readonly text: string }
  | { readonly code: 'unreadable-file' | 'unsafe-content'; readonly message: string; readonly isOurs: boolean };

/** Reads a regular file, but not one that is larger than any document may be. */
export function readText(path: string): FileText {
  let file: number | undefined;
  try {
    file = openSync(path, 'r');
    const { size } = fstatSync(file);
    const bytes = Buffer.allocUnsafe(Math.min(size, size > MAX_BYTES ? PEEKED_BYTES : size));
    let length = 0;
    for (let read = -1; read !== 0 && length < bytes.length; length += read)
      read = readSync(file, bytes, length, bytes.length - length, null);
    if (size > MAX_BYTES)
      return {
        code: 'unsafe-content',
        message: tooLarge(size),
        isOurs: OURS.test(bytes.toString('latin1', 0, length)),
      };
    const decoded = decodeText(bytes.subarray(0, length));
    if ('text' in decoded) return decoded;
    const isOurs = OURS.test(bytes.toString('latin1', 0, Math.min(length, PEEKED_BYTES)));
    return { code: 'unreadable-file', message: `The file ${decoded.reason}.`, isOurs };
  } catch (error) {
    const reason = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    return {
      code: 'unreadable-file',
      message: `The file cannot be read (${reason}); check that it exists and that you may read it.`,
      isOurs: true,
    };
  } finally {
    if (file !== undefined) closeSync(file);
  }
}
