/** `lapwright matrix PATH...` */
import { hasFlag, readArguments, UsageError, valueOf, valuesOf } from './arguments.js';
import { dayOfReview } from './day.js';
import { chosenFormat } from './format.js';
import { runReview, tellNotices, withPages, type Run } from './run.js';
import { deliver } from './write-file.js';
import { wantsColor } from '../output/color.js';

const FORMATS = ['terminal', 'markdown', 'html', 'csv', 'sarif'] as const;
type Format = (typeof FORMATS)[number];

/** Each printer is loaded only when it is used. */
async function print({ review }: Run, format: Format, toTerminal: boolean): Promise<string> {
  if (format === 'sarif') return (await import('../output/matrix/sarif.js')).printMatrixSarif(await withPages(review));
  const { matrixOf } = await import('../matrix/rows.js');
  const rows = matrixOf({
    held: review.requirementsHeld ?? [],
    items: review.itemsRequired ?? [],
    results: review.results,
  });
  switch (format) {
    case 'terminal':
      return (await import('../output/matrix/terminal.js')).printMatrixTerminal(rows, review, {
        color: toTerminal && wantsColor({ env: process.env, isTTY: process.stdout.isTTY }),
        ...(toTerminal && process.stdout.columns > 0 ? { columns: process.stdout.columns } : {}),
      });
    case 'csv':
      return (await import('../output/matrix/csv.js')).printMatrixCsv(rows);
    case 'markdown':
      return (await import('../output/matrix/markdown.js')).printMatrixMarkdown(rows, review);
    case 'html':
      return (await import('../output/matrix/html.js')).printMatrixHtml(rows, review);
  }
}

/** @returns the exit status: 0, or 2 when there was nothing to review; whether details comply is for `review` to say */
export async function matrixCommand(argv: readonly string[]): Promise<number> {
  const { given, rest } = readArguments(argv, {
    format: { type: 'string' },
    output: { type: 'string' },
    pack: { type: 'string', multiple: true },
    'allow-packs': { type: 'boolean' },
    date: { type: 'string' },
  });
  if (rest.length === 0)
    throw new UsageError(
      'Name what to hold against its specification: files, folders or globs. See lapwright help matrix.',
    );
  const output = valueOf(given, 'output');
  const format = chosenFormat(given, FORMATS, 'terminal', output);
  const run = await runReview({
    inputs: rest,
    cwd: process.cwd(),
    today: dayOfReview(given),
    packs: valuesOf(given, 'pack'),
    allowPacks: hasFlag(given, 'allow-packs'),
    skipOthers: false,
    dependents: false,
    failOn: 'never',
  });
  tellNotices(run);
  if (!run.ran) return 2;
  await deliver(await print(run, format, output === undefined), output);
  return 0;
}
