/** `lapwright draw DETAIL` */
import { hasFlag, oneOf, readArguments, UsageError, valueOf, valuesOf } from './arguments.js';
import { chosenDetail, unknownId } from './chosen-detail.js';
import { dayOfReview } from './day.js';
import { runReview, tellNotices } from './run.js';
import { deliver } from './write-file.js';
import type { Detail, Opening } from '../model/types.js';
import { drawingSubject, drawView, VIEWS, whyNotShown, type View } from '../output/drawing/views.js';
import { say } from './say.js';

function chosenOpening(detail: Detail, id: string | undefined): Opening | undefined {
  if (id === undefined) return detail.openings[0];
  const found = detail.openings.find((o) => o.id === id);
  if (found === undefined)
    throw unknownId(
      'opening',
      id,
      detail.openings.map((o) => o.id),
    );
  return found;
}

/** The month of the profile: a number from 1 to 12. */
function chosenMonth(text: string | undefined, view: View): number | undefined {
  if (text === undefined) return undefined;
  if (view !== 'profile') throw new UsageError(`--month belongs to --view profile, not to --view ${view}.`);
  const month = Number(text);
  if (!/^\d{1,2}$/.test(text) || month < 1 || month > 12)
    throw new UsageError(`--month is a number from 1 (January) to 12 (December), not "${text}".`);
  return month;
}

/** @returns the exit status: 0, or 2 when there was nothing to draw */
export async function drawCommand(argv: readonly string[]): Promise<number> {
  const { given, rest } = readArguments(argv, {
    view: { type: 'string' },
    detail: { type: 'string' },
    opening: { type: 'string' },
    month: { type: 'string' },
    output: { type: 'string' },
    pack: { type: 'string', multiple: true },
    'allow-packs': { type: 'boolean' },
    date: { type: 'string' },
  });
  const [file, ...more] = rest;
  if (file === undefined || more.length > 0)
    throw new UsageError('Name one file that holds the detail: lapwright draw DETAIL. See lapwright help draw.');
  const view = oneOf(given, 'view', VIEWS, 'elevation');
  const month = chosenMonth(valueOf(given, 'month'), view);
  const run = await runReview({
    inputs: [file],
    cwd: process.cwd(),
    today: dayOfReview(given),
    packs: valuesOf(given, 'pack'),
    allowPacks: hasFlag(given, 'allow-packs'),
    skipOthers: false,
    dependents: false,
  });
  tellNotices(run);
  const reviewed = chosenDetail(run, file, valueOf(given, 'detail'), 'drawn');
  const detail = run.detailOf(reviewed);
  if (detail === undefined) {
    say(
      `"${reviewed.id}" cannot be drawn before its document is corrected; lapwright review ${file} tells what is wrong.`,
    );
    return 2;
  }
  const why = whyNotShown(detail, view);
  if (why !== undefined) throw new UsageError(`"${detail.id}" ${why}`);
  const opening = chosenOpening(detail, valueOf(given, 'opening'));
  const titles = new Map(run.review.rules.map((r) => [r.id, r.title]));
  const results = run.review.results.filter((r) => r.documentId === reviewed.id);
  const subject = drawingSubject(detail, results, (id) => titles.get(id) ?? id);
  const svg = drawView(subject, view, { opening, month });
  await deliver(svg, valueOf(given, 'output'));
  return 0;
}
