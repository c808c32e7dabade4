/** `lapwright matrix PATH...` */
import { readArguments, oneOf, UsageError, type Token } from './arguments.js';
import { isDay, localDate } from './day.js';
import { runReview, withPages, type Run } from './run.js';
import { wantsColor } from '../output/color.js';
import { writeFileSafely } from './write-file.js';

const FORMATS = ['terminal', 'markdown', 'html', 'csv', 'sarif'] as const;
type Format = (typeof FORMATS)[number];

const valueOf = (given: readonly Token[], name: string): string | undefined =>
  given.findLast((t) => t.name === name)?.value;

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
  const format = oneOf(given, 'format', FORMATS, output === undefined ? 'terminal' : 'markdown');
  const date = valueOf(given, 'date');
  if (date !== undefined && !isDay(date)) throw new UsageError(`--date is a day written YYYY-MM-DD, not "${date}".`);
  const run = await runReview({
    inputs: rest,
    cwd: process.cwd(),
    today: date ?? localDate(),
    packs: given.flatMap((t) => (t.name === 'pack' && t.value !== undefined ? [t.value] : [])),
    allowPacks: given.some((t) => t.name === 'allow-packs'),
    skipOthers: false,
    dependents: false,
    failOn: 'never',
  });
  for (const notice of run.notices) process.stderr.write(`lapwright: ${notice}\n`);
  for (const n of run.review.notifications) process.stderr.write(`lapwright: ${n.level}: ${n.message}\n`);
  if (!run.ran) return 2;
  const text = await print(run, format, output === undefined);
  if (output === undefined) process.stdout.write(text);
  else await writeFileSafely(output, text);
  return 0;
}
