/** `lapwright review PATH...` */
import { hasFlag, oneOf, readArguments, UsageError, valuesOf, type Token } from './arguments.js';
import { dayOfReview } from './day.js';
import { runReview, tellNotices, withPages, type Run } from './run.js';
import { deliver } from './write-file.js';
import type { FailOn } from '../output/report.js';
import { formatOfEnding } from './format.js';
import { standardInput } from './standard-input.js';

const FORMATS = ['terminal', 'lines', 'markdown', 'html', 'sarif', 'json'] as const;
type Format = (typeof FORMATS)[number];

interface Output {
  readonly format: Format;
  /** Absent: standard output. */
  readonly file?: string;
}

/** Pairs each `--output` with the `--format` before it. */
export function outputsOf(given: readonly Token[]): Output[] {
  const outputs: { format: Format; file?: string }[] = [];
  for (const token of given) {
    if (token.name === 'format') outputs.push({ format: oneOf([token], 'format', FORMATS, 'terminal') });
    if (token.name === 'output' && token.value !== undefined) {
      const last = outputs.at(-1);
      if (last === undefined || last.file !== undefined)
        outputs.push({ format: formatOfEnding(token.value, FORMATS), file: token.value });
      else last.file = token.value;
    }
  }
  if (outputs.length === 0) outputs.push({ format: 'terminal' });
  if (outputs.filter((o) => o.file === undefined).length > 1)
    throw new UsageError(
      'Only one format can go to standard output; give the others a file with --output FILE after each --format.',
    );
  return outputs;
}

/** Prints in one format; each printer is loaded only when it is used. */
async function print({ review, detailOf }: Run, format: Format, toTerminal: boolean, upload: boolean): Promise<string> {
  switch (format) {
    case 'terminal': {
      const [{ printTerminal }, { wantsColor }] = await Promise.all([
        import('../output/terminal.js'),
        import('../output/color.js'),
      ]);
      return printTerminal(review, {
        color: toTerminal && wantsColor({ env: process.env, isTTY: process.stdout.isTTY }),
        ...(toTerminal && process.stdout.columns > 0 ? { columns: process.stdout.columns } : {}),
      });
    }
    case 'lines':
      return (await import('../output/lines.js')).printLines(review);
    case 'markdown':
      return (await import('../output/markdown.js')).printMarkdown(await withPages(review));
    case 'html':
      return (await import('../output/html/report.js')).printHtml(await withPages(review), detailOf);
    case 'sarif':
      return (await import('../output/sarif.js')).printSarif(await withPages(review), {
        profile: upload ? 'upload' : 'full',
      });
    case 'json':
      return (await import('../output/json.js')).printJson(review);
  }
}

/** @returns the exit status */
export async function reviewCommand(argv: readonly string[]): Promise<number> {
  const { given, rest } = readArguments(argv, {
    format: { type: 'string', multiple: true },
    output: { type: 'string', multiple: true },
    'fail-on': { type: 'string' },
    pack: { type: 'string', multiple: true },
    'allow-packs': { type: 'boolean' },
    date: { type: 'string' },
    'skip-others': { type: 'boolean' },
    dependents: { type: 'boolean' },
    upload: { type: 'boolean' },
  });
  if (rest.length === 0)
    throw new UsageError(
      'Name what to review: files, folders, globs, or - for standard input. See lapwright help review.',
    );
  const outputs = outputsOf(given);
  const failOn = hasFlag(given, 'fail-on')
    ? oneOf<FailOn>(given, 'fail-on', ['error', 'warning', 'note', 'never'], 'error')
    : undefined;
  const run = await runReview({
    inputs: rest,
    cwd: process.cwd(),
    today: dayOfReview(given),
    packs: valuesOf(given, 'pack'),
    allowPacks: hasFlag(given, 'allow-packs'),
    skipOthers: hasFlag(given, 'skip-others'),
    dependents: hasFlag(given, 'dependents'),
    ...(failOn === undefined ? {} : { failOn }),
    ...(rest.includes('-') ? { stdin: { text: await standardInput() } } : {}),
  });
  tellNotices(run);
  if (!run.ran) return hasFlag(given, 'skip-others') ? 0 : 2;
  for (const output of outputs) {
    const text = await print(run, output.format, output.file === undefined, hasFlag(given, 'upload'));
    await deliver(text, output.file);
  }
  return run.review.exitCode;
}
