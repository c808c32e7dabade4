/**
 * Which files a library leaves out: what `.gitignore` files name, from the repository's root down, and the
 * patterns of the settings, which follow the same rules.
 *
 * @see the `gitignore` manual page of Git for the patterns
 */
import { readFileSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import ignore from 'ignore';
import type { Ignore } from 'ignore';

interface Rules {
  readonly folder: string;
  readonly rules: Ignore;
}

/** Answers whether a file or folder is left out; each `.gitignore` is read once. */
export class Ignored {
  readonly #chains = new Map<string, readonly Rules[]>();
  readonly #folders = new Map<string, boolean>();
  readonly #settings: Rules | undefined;

  /**
   * @param top folder where `.gitignore` files begin to count: the repository's root, absolute
   * @param root of the library, absolute; the settings' patterns are relative to it
   * @param patterns `ignore` of the settings
   */
  constructor(
    private readonly top: string,
    root: string,
    patterns: readonly string[],
  ) {
    this.#settings = patterns.length > 0 ? { folder: root, rules: rulesOf(patterns) } : undefined;
  }

  /** @param path absolute */
  file(path: string): boolean {
    return this.folder(dirname(path)) || this.#named(path, false);
  }

  /** What lies in a folder that is left out is left out too, whatever deeper rules say. */
  folder(path: string): boolean {
    const known = this.#folders.get(path);
    if (known !== undefined) return known;
    const parent = dirname(path);
    const answer = parent !== path && (this.folder(parent) || this.#named(path, true));
    this.#folders.set(path, answer);
    return answer;
  }

  #named(path: string, isFolder: boolean): boolean {
    if (this.#settings && verdict(this.#settings, path, isFolder) === true) return true;
    for (const rules of this.#chain(dirname(path))) {
      const found = verdict(rules, path, isFolder);
      if (found !== undefined) return found;
    }
    return false;
  }

  /** The rules that count in a folder, its own first: they overrule those above. */
  #chain(folder: string): readonly Rules[] {
    const known = this.#chains.get(folder);
    if (known) return known;
    const above = folder === this.top || !isBelow(this.top, folder) ? [] : this.#chain(dirname(folder));
    const own = folder === this.top || isBelow(this.top, folder) ? gitignoreOf(folder) : undefined;
    const chain = own ? [{ folder, rules: own }, ...above] : above;
    this.#chains.set(folder, chain);
    return chain;
  }
}

/** Whether a path lies inside of a folder; both absolute. */
export function isBelow(folder: string, path: string): boolean {
  return path.startsWith(folder.endsWith(sep) ? folder : folder + sep);
}

function gitignoreOf(folder: string): Ignore | undefined {
  try {
    return rulesOf([readFileSync(join(folder, '.gitignore'), 'utf8')]);
  } catch {
    return undefined; // Most folders have none; one that cannot be read has no say.
  }
}

function rulesOf(patterns: readonly string[]): Ignore {
  // The same library must be the same on every file system, so capitals count everywhere.
  return ignore({ ignorecase: false }).add([...patterns].flatMap((pattern) => pattern.split(/\r?\n/)));
}

/** True: left out. False: taken back in by a rule with `!`. Undefined: these rules do not speak of it. */
function verdict({ folder, rules }: Rules, path: string, isFolder: boolean): boolean | undefined {
  if (!isBelow(folder, path)) return undefined;
  const name = relative(folder, path).split(sep).join('/');
  const { ignored, unignored } = rules.test(isFolder ? `${name}/` : name);
  return ignored ? true : unignored ? false : undefined;
}
