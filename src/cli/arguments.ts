/** Reading of command-line arguments, with messages that name the nearest option. */
import { parseArgs, type ParseArgsConfig } from 'node:util';
import { nearest } from '../model/nearest.js';

/** Something in the arguments that the person must change. Printed without a stack; exit status 2. */
export class UsageError extends Error {}

type Options = NonNullable<ParseArgsConfig['options']>;

export interface Token {
  readonly name: string;
  readonly value: string | undefined;
}

/**
 * Splits arguments into options in the order given and the rest.
 *
 * @throws UsageError for an unknown option or a missing value
 */
export function readArguments(argv: readonly string[], options: Options): { given: Token[]; rest: string[] } {
  const { tokens } = parseArgs({ args: [...argv], options, allowPositionals: true, strict: false, tokens: true });
  const given: Token[] = [];
  const rest: string[] = [];
  for (const token of tokens) {
    if (token.kind === 'positional') rest.push(token.value);
    if (token.kind !== 'option') continue;
    const declared = options[token.name];
    if (declared === undefined) {
      const close = nearest(token.name, Object.keys(options));
      throw new UsageError(
        `There is no option "${token.rawName}"; ${
          close === undefined
            ? `options: ${Object.keys(options)
                .map((o) => `--${o}`)
                .join(', ')}`
            : `did you mean "--${close}"?`
        }`,
      );
    }
    if (declared.type === 'string' && token.value === undefined)
      throw new UsageError(`The option ${token.rawName} needs a value.`);
    if (declared.type === 'boolean' && token.value !== undefined)
      throw new UsageError(`The option ${token.rawName} takes no value.`);
    given.push({ name: token.name, value: token.value });
  }
  return { given, rest };
}

/** The value of an option. The last one given counts. */
export const valueOf = (given: readonly Token[], name: string): string | undefined =>
  given.findLast((token) => token.name === name)?.value;

/** Every value of an option that may be given several times, in order. */
export const valuesOf = (given: readonly Token[], name: string): string[] =>
  given.flatMap((token) => (token.name === name && token.value !== undefined ? [token.value] : []));

export const hasFlag = (given: readonly Token[], name: string): boolean => given.some((token) => token.name === name);

/** The value of an option that must be one of a few words. The last one given counts. */
export function oneOf<T extends string>(given: readonly Token[], name: string, allowed: readonly T[], fallback: T): T {
  const value = valueOf(given, name);
  if (value === undefined) return fallback;
  if ((allowed as readonly string[]).includes(value)) return value as T;
  const close = nearest(value, allowed);
  throw new UsageError(
    `--${name} is one of ${allowed.join(', ')}, not "${value}"${close === undefined ? '' : `; did you mean "${close}"?`}`,
  );
}
