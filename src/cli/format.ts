/** In which format a command prints. */
import { hasFlag, oneOf, UsageError, type Token } from './arguments.js';

const ENDINGS: readonly (readonly [RegExp, readonly string[]])[] = [
  [/\.sarif(\.json)?$/i, ['sarif']],
  [/\.json$/i, ['json']],
  [/\.(md|markdown)$/i, ['markdown']],
  [/\.html?$/i, ['html']],
  [/\.csv$/i, ['csv']],
  [/\.svg$/i, ['svg']],
  [/\.ya?ml$/i, ['yaml']],
  [/\.txt$/i, ['lines', 'terminal']],
];

/**
 * The format that the ending of a file's name means.
 *
 * @throws UsageError when the command has none for it
 */
export function formatOfEnding<T extends string>(file: string, allowed: readonly T[]): T {
  const meant = ENDINGS.find(([ending]) => ending.test(file))?.[1] ?? [];
  const format = meant.find((name) => (allowed as readonly string[]).includes(name));
  if (format === undefined)
    throw new UsageError(
      `Say which format "${file}" is to have: put --format NAME before --output. Formats: ${allowed.join(', ')}.`,
    );
  return format as T;
}

/** The format named; else that of the ending of the file that is written, if one is; else the usual one. */
export function chosenFormat<T extends string>(
  given: readonly Token[],
  allowed: readonly T[],
  usual: T,
  file: string | undefined,
): T {
  if (hasFlag(given, 'format') || file === undefined) return oneOf(given, 'format', allowed, usual);
  return formatOfEnding(file, allowed);
}
