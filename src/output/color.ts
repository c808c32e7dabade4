/** Whether to color, decided here and nowhere else, and what each color is for. */
import { Chalk } from 'chalk';
import type { Level } from '../engine/result.js';

export interface ColorAsk {
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Whether the stream that is written to is a terminal. */
  readonly isTTY: boolean;
  /** What the command line says, when it says anything: it overrules the environment. */
  readonly asked?: boolean;
}

/**
 * NO_COLOR (any text) wins over FORCE_COLOR, so that one setting always silences color; then a dumb terminal,
 * then whether it is a terminal at all.
 *
 * @see https://no-color.org (informal convention)
 */
export function wantsColor({ env, isTTY, asked }: ColorAsk): boolean {
  if (asked !== undefined) return asked;
  if (env['NO_COLOR'] !== undefined && env['NO_COLOR'] !== '') return false;
  const forced = env['FORCE_COLOR'];
  if (forced !== undefined && forced !== '') return forced !== '0' && forced !== 'false';
  return isTTY && env['TERM'] !== 'dumb';
}

type Paint = (text: string) => string;

export interface Theme {
  readonly title: Paint;
  readonly quiet: Paint;
  readonly pointer: Paint;
  readonly level: Readonly<Record<Level, Paint>>;
}

/** Sixteen-color styles only, so that the reader's own terminal palette decides how they look. */
export function themeFor(color: boolean): Theme {
  const chalk = new Chalk({ level: color ? 1 : 0 });
  return {
    title: (text) => chalk.bold(text),
    quiet: (text) => chalk.dim(text),
    pointer: (text) => chalk.bold(text),
    level: {
      error: (text) => chalk.bold.red(text),
      warning: (text) => chalk.bold.magenta(text),
      note: (text) => chalk.bold.blue(text),
      none: (text) => text,
    },
  };
}
