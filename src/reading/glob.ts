/**
 * Patterns for paths: `*` and `?` inside one name, `**` for any folders between, `{a,b}` for either.
 *
 * Patterns stand in documents, which anybody may have written. They are matched without regular expressions, so
 * that no pattern takes longer than the product of its length and the path's.
 */

/** Alternatives that the braces of one pattern may stand for. */
const MOST_ALTERNATIVES = 64;

/** A pattern, cut at its first name that is not literal. */
export interface Glob {
  /** Folder that every match lies in, relative; empty when the pattern begins with a wildcard. */
  readonly folder: string;
  /** How many names below `folder` a match can have; Infinity with `**`. */
  readonly depth: number;
  /** @param path below `folder`, with `/` */
  matches(path: string): boolean;
}

/** Whether a text is a pattern and not the name of one file. */
export function isGlob(text: string): boolean {
  return /[*?]|\{[^}]*,[^}]*\}/.test(text);
}

/**
 * A pattern ready to match.
 *
 * @param pattern with `/` between names
 * @returns undefined when its braces stand for more than 64 patterns
 */
export function glob(pattern: string): Glob | undefined {
  const path = pattern
    .split('/')
    .filter((name) => name !== '' && name !== '.')
    .join('/');
  // Braces may hold slashes, so the cut is made before the first wildcard of any kind, not between names.
  const wild = path.search(/[*?{]/);
  const cut = path.lastIndexOf('/', wild === -1 ? undefined : wild);
  const folder = path.slice(0, Math.max(cut, 0));
  const alternatives = expanded(path.slice(cut + 1));
  if (!alternatives) return undefined;
  const patterns = alternatives.map((alternative) => alternative.split('/'));
  const depth = patterns.some((parts) => parts.includes('**'))
    ? Infinity
    : Math.max(...patterns.map((parts) => parts.length));
  return { folder, depth, matches: (path) => patterns.some((parts) => namesMatch(parts, path.split('/'))) };
}

function expanded(pattern: string): string[] | undefined {
  const done: string[] = [];
  const open = [pattern];
  for (let text = open.pop(); text !== undefined; text = open.pop()) {
    // The innermost braces first, so that nested ones come out right.
    const braces = /\{([^{}]*,[^{}]*)\}/.exec(text);
    if (!braces) done.push(text);
    else {
      const [all, inside = ''] = braces;
      const before = text.slice(0, braces.index);
      const after = text.slice(braces.index + all.length);
      open.push(...inside.split(',').map((choice) => before + choice + after));
    }
    if (open.length + done.length > MOST_ALTERNATIVES) return undefined;
  }
  return done;
}

/** Row by row: which beginnings of the path the first patterns can stand for. */
function namesMatch(patterns: readonly string[], names: readonly string[]): boolean {
  let reached = [true, ...names.map(() => false)];
  for (const pattern of patterns) {
    const next = [pattern === '**' && reached[0] === true];
    for (let count = 1; count <= names.length; count++) {
      if (pattern === '**') next.push(next[count - 1] === true || reached[count] === true);
      else next.push(reached[count - 1] === true && nameMatches(pattern, names[count - 1] ?? ''));
    }
    reached = next;
  }
  return reached[names.length] === true;
}

/** Greedy, going back only to the last `*`: an earlier one never needs to give way. */
function nameMatches(pattern: string, name: string): boolean {
  let p = 0;
  let n = 0;
  let star = -1;
  let resume = 0;
  while (n < name.length) {
    if (pattern[p] === '*') {
      star = p++;
      resume = n;
    } else if (p < pattern.length && (pattern[p] === '?' || pattern[p] === name[n])) {
      p += 1;
      n += 1;
    } else if (star !== -1) {
      p = star + 1;
      n = ++resume;
    } else return false;
  }
  while (pattern[p] === '*') p += 1;
  return p === pattern.length;
}
