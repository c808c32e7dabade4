/** `lapwright where DETAIL` */
import { oneOf, readArguments, UsageError, valueOf } from './arguments.js';
import { chosenDetail } from './chosen-detail.js';
import { dayOfReview } from './day.js';
import { runReview } from './run.js';
import { deliver } from './write-file.js';
import { WANTED, type Wanted } from '../output/where/text.js';
import { whereFits, type Where } from '../where/where.js';
import { BUILT_IN_RULES } from '../../generated/rules.js';
import { say } from './say.js';
import { chosenFormat } from './format.js';

const FORMATS = ['terminal', 'markdown', 'csv', 'json', 'svg'] as const;
type Format = (typeof FORMATS)[number];
type By = 'zone' | 'county';

/** Prints in one format; each printer is loaded only when it is used. */
async function print(where: Where, format: Format, wanted: Wanted, by: By): Promise<string> {
  switch (format) {
    case 'terminal': {
      const { printWhereTerminal } = await import('../output/where/terminal.js');
      return printWhereTerminal(where, wanted, by, process.stdout.columns > 0 ? process.stdout.columns : 80);
    }
    case 'markdown':
      return (await import('../output/where/markdown.js')).printWhereMarkdown(where, wanted, by);
    case 'csv':
      return (await import('../output/where/csv.js')).printWhereCsv(where, wanted, by);
    case 'json':
      return (await import('../output/where/json.js')).printWhereJson(where, wanted, by);
    case 'svg':
      return (await import('../output/where/map.js')).drawWhereMap(where, wanted);
  }
}

/** @returns the exit status: 0, or 2 when there was nothing to ask about */
export async function whereCommand(argv: readonly string[]): Promise<number> {
  const { given, rest } = readArguments(argv, {
    format: { type: 'string' },
    by: { type: 'string' },
    answer: { type: 'string' },
    detail: { type: 'string' },
    output: { type: 'string' },
  });
  const [file, ...more] = rest;
  if (file === undefined || more.length > 0)
    throw new UsageError('Name one file that holds the detail: lapwright where DETAIL. See lapwright help where.');
  const output = valueOf(given, 'output');
  const format = chosenFormat(given, FORMATS, 'terminal', output);
  const by = oneOf<By>(
    given,
    'by',
    ['zone', 'county'],
    format === 'terminal' || format === 'markdown' ? 'zone' : 'county',
  );
  const wanted = oneOf(given, 'answer', WANTED, 'both');
  if (format === 'svg' && by === 'zone')
    throw new UsageError('The map is drawn by county; leave --by out, or choose another --format.');
  // Deviations, which end by a day, are left out of the answer: the day does not count.
  const run = await runReview({
    inputs: [file],
    cwd: process.cwd(),
    today: dayOfReview(given),
    packs: [],
    skipOthers: false,
    dependents: false,
  });
  for (const notice of run.notices) say(notice);
  const reviewed = chosenDetail(run, file, valueOf(given, 'detail'), 'placed');
  const detail = run.detailOf(reviewed);
  if (detail === undefined) {
    say(
      `"${reviewed.id}" cannot be placed before its document is corrected; lapwright review ${file} tells what is wrong.`,
    );
    return 2;
  }
  const where = whereFits(detail, { rules: BUILT_IN_RULES, settings: run.settings });
  await deliver(await print(where, format, wanted, by), output);
  return 0;
}
