/**
 * The documents of a library as they stood at a revision of its repository, written to a folder of their own for as
 * long as they are read. Git is asked through its plumbing commands only, never through a shell; nothing of the
 * repository is run, and the working files stay as they are.
 *
 * @see the git manual: rev-parse, ls-tree, cat-file, gitrevisions
 */
import { execFile } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { isReadable, SETTINGS_FILE } from '../reading/folder.js';
import { MAX_BYTES } from '../reading/yaml.js';
import { UsageError } from './arguments.js';

/** Letters of branch and tag names, and the marks of relative revisions (`main~2`, `v1^`, `HEAD@{1}`). */
const REVISION = /^[\p{L}\p{N}_@][\p{L}\p{N}_@./+~^{}-]{0,199}$/u;
/** Blobs are fetched in batches of this many bytes, so that memory stays bounded. */
const BATCH_BYTES = 16 * 1024 * 1024;
const MOST_FILES = 100_000;
const MOST_MILLISECONDS = 120_000;

export interface CheckedOut {
  /** The file or folder that was asked for, inside of the scratch folder. */
  readonly input: string;
  readonly notices: readonly string[];
  /** Takes the scratch folder away again. */
  remove(): void;
}

/**
 * @param revision as written after `git:`
 * @param at file or folder of documents in the working tree; it may be gone from the disk today
 * @throws UsageError when the revision or the path cannot be found, with what to write instead
 */
export async function checkOut(revision: string, at: string): Promise<CheckedOut> {
  if (!REVISION.test(revision))
    throw new UsageError(
      `"git:${revision.slice(0, 60)}" names no revision; write a branch, a tag or a commit after "git:", for example git:main or git:HEAD~1.`,
    );
  const { folder, target } = nearestFolder(path.resolve(at));
  const top = (await git(['rev-parse', '--show-toplevel'], folder, notARepository(at))).toString('utf8').trimEnd();
  const root = realpathSync(top);
  const inside = path.relative(root, target).split(path.sep).join('/');
  if (inside === '..' || inside.startsWith('../'))
    throw new UsageError(`${at} lies outside of the repository ${root}.`);
  const commit = (
    await git(
      ['rev-parse', '--verify', '--quiet', '--end-of-options', `${revision}^{commit}`],
      root,
      `The repository has no revision "${revision}"; "git log --oneline" lists them.`,
    )
  )
    .toString('utf8')
    .trim();
  const all = entriesOf(await git(['ls-tree', '-r', '-z', '-l', '--full-tree', commit], root));
  if (inside !== '' && !all.some(({ name }) => name === inside || name.startsWith(`${inside}/`)))
    throw new UsageError(`The revision "${revision}" has no ${inside}; name what it had with --at PATH.`);
  const notices: string[] = [];
  const wanted = choose(all, inside, notices, revision);
  const scratch = mkdtempSync(path.join(realpathSync(tmpdir()), 'lapwright-'));
  const remove = (): void => rmSync(scratch, { recursive: true, force: true });
  try {
    // Where the library ends upward: nothing above the scratch folder is looked at.
    mkdirSync(path.join(scratch, '.git'));
    await write(wanted, root, scratch);
  } catch (error) {
    remove();
    throw error;
  }
  return { input: inside === '' ? scratch : path.join(scratch, ...inside.split('/')), notices, remove };
}

const notARepository = (at: string): string =>
  `${at} is in no git repository that can be read; run the command in the repository, or name a place in it with --at PATH.`;

/** The nearest folder that exists on the way up, and the path with links in that folder resolved. */
function nearestFolder(absolute: string): { folder: string; target: string } {
  let existing = absolute;
  while (!existsSync(existing) && path.dirname(existing) !== existing) existing = path.dirname(existing);
  const real = realpathSync(existing);
  const folder = isReadable(real) ? path.dirname(real) : real;
  return { folder, target: path.join(real, path.relative(existing, absolute)) };
}

interface TreeEntry {
  readonly name: string;
  readonly mode: string;
  readonly object: string;
  readonly bytes: number;
}

/** `<mode> <type> <object> <size>\t<name>\0`, as `ls-tree -l -z` writes it. */
function entriesOf(listing: Buffer): TreeEntry[] {
  return listing
    .toString('utf8')
    .split('\0')
    .flatMap((line) => {
      const parts = /^(\d{6}) (\w+) ([0-9a-f]{40,64}) +(\d+|-)\t([\s\S]+)$/.exec(line);
      return parts === null
        ? []
        : [{ mode: parts[1] ?? '', object: parts[3] ?? '', bytes: Number(parts[4]), name: parts[5] ?? '' }];
    });
}

/** The files a review may read: documents of the library, and what says which of them are left out. */
function choose(all: readonly TreeEntry[], inside: string, notices: string[], revision: string): TreeEntry[] {
  const settings = all
    .filter(({ name }) => path.posix.basename(name) === SETTINGS_FILE)
    .map(({ name }) => path.posix.dirname(name))
    .filter((folder) => folder === '.' || inside === folder || inside.startsWith(`${folder}/`))
    .sort((a, b) => b.length - a.length);
  const library = settings[0] ?? '.';
  const chosen: TreeEntry[] = [];
  for (const entry of all) {
    const isIgnoreFile = path.posix.basename(entry.name) === '.gitignore';
    const isInside = library === '.' || entry.name.startsWith(`${library}/`);
    if (!isIgnoreFile && !(isInside && isReadable(entry.name))) continue;
    // A path that leads out of the scratch folder cannot come from git itself; a made-up object might hold one.
    // On Windows a backslash divides folders and a colon names a drive or a stream.
    if (/[\\:]/.test(entry.name) && path.sep === '\\') continue;
    if (entry.name.split('/').some((part) => part === '' || part === '.' || part === '..' || /^\.git$/i.test(part)))
      continue;
    if (entry.mode !== '100644' && entry.mode !== '100755') {
      notices.push(`${entry.name} of ${revision} is a link and was not read.`);
    } else if (entry.bytes > MAX_BYTES) {
      notices.push(
        `${entry.name} of ${revision} has ${entry.bytes} bytes and was not read; the limit is ${MAX_BYTES}.`,
      );
    } else chosen.push(entry);
  }
  if (chosen.length > MOST_FILES)
    throw new UsageError(
      `The revision "${revision}" has ${chosen.length} files to read; name a smaller part with --at PATH.`,
    );
  return chosen;
}

async function write(entries: readonly TreeEntry[], root: string, scratch: string): Promise<void> {
  for (let from = 0; from < entries.length;) {
    let to = from;
    let bytes = 0;
    while (to < entries.length && (to === from || bytes + (entries[to]?.bytes ?? 0) <= BATCH_BYTES))
      bytes += entries[to++]?.bytes ?? 0;
    const batch = entries.slice(from, to);
    const answer = await git(['cat-file', '--batch'], root, undefined, batch.map((one) => `${one.object}\n`).join(''));
    let at = 0;
    for (const entry of batch) {
      // `<object> blob <size>\n<content>\n`
      const header = answer.indexOf(10, at);
      const size = /^[0-9a-f]+ blob (\d+)$/.exec(answer.toString('latin1', at, header))?.[1];
      if (size === undefined) throw new Error(`git does not hold ${entry.name}; the repository may be incomplete.`);
      const file = path.join(scratch, ...entry.name.split('/'));
      mkdirSync(path.dirname(file), { recursive: true });
      writeFileSync(file, answer.subarray(header + 1, header + 1 + Number(size)), { flag: 'wx' });
      at = header + 1 + Number(size) + 1;
    }
    from = to;
  }
}

/** Without what a hook or a caller may have set, git finds the repository by the folder alone, and asks nobody. */
function environment(): NodeJS.ProcessEnv {
  const kept = Object.entries(process.env).filter(([name]) => !name.startsWith('GIT_'));
  return { ...Object.fromEntries(kept), GIT_TERMINAL_PROMPT: '0', GIT_OPTIONAL_LOCKS: '0', GIT_NO_LAZY_FETCH: '1' };
}

/**
 * @param refusal what to say when git says no; git's own words otherwise
 * @param input for standard input
 */
function git(args: readonly string[], cwd: string, refusal?: string, input?: string): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    const child = execFile(
      'git',
      ['--no-pager', '--no-replace-objects', '-c', 'core.fsmonitor=false', ...args],
      {
        cwd,
        encoding: 'buffer',
        env: environment(),
        maxBuffer: 4 * BATCH_BYTES,
        timeout: MOST_MILLISECONDS,
        windowsHide: true,
      },
      (error, out, told) => {
        if (error === null) resolve(out);
        else if (error.code === 'ENOENT')
          reject(new UsageError('There is no "git" on this machine; install it, or compare two folders.'));
        else
          reject(
            new UsageError(refusal ?? `git ${args[0] ?? ''} failed: ${told.toString('utf8').trim().slice(0, 400)}`),
          );
      },
    );
    // A program that ends early closes its input; its answer tells why.
    child.stdin?.on('error', () => undefined);
    child.stdin?.end(input ?? '');
  });
}
