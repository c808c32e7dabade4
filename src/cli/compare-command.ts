/** `lapwright compare OLD NEW` */
import { compareSubmissions } from '../compare/compare.js';
import { standingOf } from '../compare/progress.js';
import type { Comparison, Pair, Progress } from '../compare/types.js';
import { LEVEL_ORDER } from '../engine/result.js';
import { suggestedAction } from '../output/report.js';
import type { ComparisonReport } from '../output/comparison/report.js';
import { oneOf, readArguments, UsageError, valueOf, valuesOf } from './arguments.js';
import { dayOfReview } from './day.js';
import { GIT, isSarif, readSubmission, type ReadSubmission } from './submission.js';
import { VERSION } from './version.js';
import { deliver } from './write-file.js';
import { say } from './say.js';
import { chosenFormat } from './format.js';

const FORMATS = ['terminal', 'markdown', 'html', 'json', 'sarif'] as const;
type Format = (typeof FORMATS)[number];
const FAIL_ON = ['new', 'standing', 'never'] as const;
const LEVELS = ['error', 'warning', 'note'] as const;
type Level = (typeof LEVELS)[number];

/** A finding that was not there before, in the words of the comparison. */
const FRESH: readonly Progress[] = ['new', 'newly broken', 'answered, and fails', 'no longer accepted'];

/** Whether the comparison fails. A finding that has become graver is new at its level. */
export function failsOnComparison(
  { pairs }: Pick<Comparison, 'pairs'>,
  failOn: (typeof FAIL_ON)[number],
  level: Level,
): boolean {
  if (failOn === 'never') return false;
  const reaches = (told: Pair['after']): boolean =>
    told !== undefined && standingOf(told) === 'finding' && LEVEL_ORDER[told.level] >= LEVEL_ORDER[level];
  return pairs.some(
    ({ before, after, progress }) =>
      reaches(after) && (failOn === 'standing' || FRESH.includes(progress) || !reaches(before)),
  );
}

/** Where the other side is a path of documents, a revision means the same path at another time. */
function defaultPlace(other: string): string {
  return other.startsWith(GIT) || isSarif(other) ? '.' : other;
}

/** Prints in one format; each printer is loaded only when it is used. */
async function print(
  report: ComparisonReport,
  format: Format,
  toTerminal: boolean,
  before: ReadSubmission,
  after: ReadSubmission,
): Promise<string> {
  switch (format) {
    case 'terminal': {
      const [{ printComparisonTerminal }, { wantsColor }] = await Promise.all([
        import('../output/comparison/terminal.js'),
        import('../output/color.js'),
      ]);
      return printComparisonTerminal(report, {
        color: toTerminal && wantsColor({ env: process.env, isTTY: process.stdout.isTTY }),
        ...(toTerminal && process.stdout.columns > 0 ? { columns: process.stdout.columns } : {}),
      });
    }
    case 'markdown':
      return (await import('../output/comparison/markdown.js')).printComparisonMarkdown(report);
    case 'html':
      return (await import('../output/comparison/html.js')).printComparisonHtml(report);
    case 'json':
      return (await import('../output/comparison/json.js')).printComparisonJson(report);
    case 'sarif': {
      const { printComparisonSarif } = await import('../output/comparison/sarif.js');
      return printComparisonSarif(report, await before.sarif(), await after.sarif());
    }
  }
}

/** @returns the exit status: 1 when `--fail-on` is met, 2 when a side held nothing or a review was incomplete */
export async function compareCommand(argv: readonly string[]): Promise<number> {
  const { given, rest } = readArguments(argv, {
    format: { type: 'string' },
    output: { type: 'string' },
    'fail-on': { type: 'string' },
    level: { type: 'string' },
    at: { type: 'string' },
    pack: { type: 'string', multiple: true },
    date: { type: 'string' },
  });
  const [old, now, ...more] = rest;
  if (old === undefined || now === undefined || more.length > 0)
    throw new UsageError(
      'Name two submissions: lapwright compare OLD NEW. Each is a folder or file of documents, a SARIF file, or git:REVISION. See lapwright help compare.',
    );
  const output = valueOf(given, 'output');
  const format = chosenFormat<Format>(given, FORMATS, 'terminal', output);
  const failOn = oneOf(given, 'fail-on', FAIL_ON, 'new');
  const level = oneOf(given, 'level', LEVELS, 'error');
  const options = {
    cwd: process.cwd(),
    // Both sides are reviewed as of one day, so that a difference is never due to the calendar.
    today: dayOfReview(given),
    packs: valuesOf(given, 'pack'),
    failOn: 'never' as const,
    skipOthers: false,
    dependents: false,
  };
  const before = await readSubmission(old, valueOf(given, 'at') ?? defaultPlace(now), options);
  const after = await readSubmission(now, valueOf(given, 'at') ?? defaultPlace(old), options);
  const notices = [before, after].flatMap((side) => [
    ...side.notices,
    ...(side.review?.notifications.map((one) => `${one.level}: ${one.message}`) ?? []),
  ]);
  for (const notice of new Set(notices)) say(notice);
  if (!before.ran || !after.ran) return 2;

  const comparison = compareSubmissions(before.submission, after.submission);
  for (const remark of comparison.remarks) say(remark);
  const isIncomplete = [before, after].some((side) => side.review?.exitCode === 2);
  const report: ComparisonReport = {
    toolVersion: VERSION,
    comparison,
    ...(after.review === undefined ? {} : { suggested: suggestedAction(after.review) }),
    cautions: new Map(
      [...(before.review?.rules ?? []), ...(after.review?.rules ?? [])].flatMap((rule) =>
        rule.caution === undefined ? [] : [[rule.id, rule.caution]],
      ),
    ),
    titles: new Map(
      [...(before.review?.rules ?? []), ...(after.review?.rules ?? [])].map((rule) => [rule.id, rule.title]),
    ),
    exitCode: failsOnComparison(comparison, failOn, level) ? 1 : isIncomplete ? 2 : 0,
  };
  const text = await print(report, format, output === undefined, before, after);
  await deliver(text, output);
  return report.exitCode;
}
