#!/usr/bin/env node
/**
 * The command line. Finds out which command is meant and loads only that one; `--version` loads nothing.
 */
import { VERSION } from './version.js';

/** Exit codes: 0 nothing at or above the chosen level, 1 findings, 2 could not run. */
export const EXIT = { clean: 0, findings: 1, failed: 2 } as const;

const COMMANDS = {
  review: async () => (await import('./review-command.js')).reviewCommand,
  matrix: async () => (await import('./matrix-command.js')).matrixCommand,
  compare: async () => (await import('./compare-command.js')).compareCommand,
  draw: async () => (await import('./draw-command.js')).drawCommand,
  where: async () => (await import('./where-command.js')).whereCommand,
  rules: async () => (await import('./rules-command.js')).rulesCommand,
  explain: async () => (await import('./rules-command.js')).explainCommand,
  requirements: async () => (await import('./requirements-command.js')).requirementsCommand,
  new: async () => (await import('./new-command.js')).newCommand,
} as const;

async function unknownCommand(name: string): Promise<number> {
  const [{ nearest }, { say }] = await Promise.all([import('../model/nearest.js'), import('./say.js')]);
  const close = nearest(name, Object.keys(COMMANDS));
  const guess = close === undefined ? '.' : `; did you mean "${close}"?`;
  say(`there is no command "${name}"${guess} Commands: ${Object.keys(COMMANDS).join(', ')}. See lapwright --help.`);
  return EXIT.failed;
}

async function main(argv: readonly string[]): Promise<number> {
  const [first, ...rest] = argv;
  if (first === '--version' || first === '-V') {
    process.stdout.write(`${VERSION}\n`);
    return EXIT.clean;
  }
  if (first === undefined || first === '--help' || first === '-h' || first === 'help') {
    const { HELP, helpFor } = await import('./help.js');
    const topic = first === 'help' ? rest[0] : undefined;
    const text = topic === undefined ? HELP : helpFor(topic);
    if (text === undefined) return unknownCommand(topic ?? '');
    (first === undefined ? process.stderr : process.stdout).write(text);
    return first === undefined ? EXIT.failed : EXIT.clean;
  }
  if (!Object.hasOwn(COMMANDS, first)) return unknownCommand(first);
  if (rest.includes('--help') || rest.includes('-h')) {
    const { helpFor } = await import('./help.js');
    process.stdout.write(helpFor(first) ?? '');
    return EXIT.clean;
  }
  const command = await COMMANDS[first as keyof typeof COMMANDS]();
  return command(rest);
}

// A reader that stops early (`lapwright rules | head`) is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});
// The exit code is set, not forced, so that pipes are emptied first.
main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  async (error: unknown) => {
    process.exitCode = EXIT.failed;
    const { say } = await import('./say.js');
    say(error instanceof Error ? error.message : String(error));
  },
);
