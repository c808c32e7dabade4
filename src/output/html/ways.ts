/** Which lines of water on a drawing belong to the path of a finding. */
import type { Result } from '../../engine/result.js';
import type { Detail, Opening } from '../../model/types.js';
import { unitSetIn, worksAt } from '../../water/at-opening.js';
import { stepsOf } from '../../water/run/tell.js';
import type { WaterPath } from '../../water/run/types.js';
import { windowOf } from '../drawing/elevation-frame.js';
import { drawnPaths } from '../drawing/elevation-water.js';
import type { DrawingSubject } from '../drawing/subject.js';
import type { WaterLine } from './sheet-parts.js';

/** By the number of the finding. */
export type Ways = ReadonlyMap<number, readonly WaterLine[]>;
type Place = Result['at'];

const within = (inner: Place, outer: Place): boolean =>
  inner.document.file.uri === outer.document.file.uri && outer.path.every((step, i) => inner.path[i] === step);

/**
 * Whether water on its way passes the places of a finding's path in their order. A finding about one lap tells less
 * of the way than the water goes.
 */
function goesAlong(path: WaterPath, { flow = [] }: Result, detail: Detail): boolean {
  let next = 0;
  for (const step of stepsOf(path, detail.at)) {
    const wanted = flow[next];
    if (wanted === undefined) break;
    const isSamePlace =
      within(step.at, wanted.at) &&
      within(wanted.at, step.at) &&
      (step.essential ?? false) === (wanted.essential ?? false);
    if (step.message === wanted.message || isSamePlace) next += 1;
  }
  return flow.length > 0 && next === flow.length;
}

/**
 * Lines on the elevation: each way is one run of lines at one x, drawn in the order of the paths. None belong to any
 * finding when lines and paths cannot be told apart for certain.
 */
export function waysOnFace(lines: readonly WaterLine[], subject: DrawingSubject): Ways {
  const window = windowOf(subject);
  const paths = drawnPaths(subject, window);
  const drawn: WaterLine[][] = [];
  for (const line of lines) {
    const last = drawn.at(-1);
    if (last?.[0]?.[0]?.[0] === line[0]?.[0]) last?.push(line);
    else drawn.push([line]);
  }
  const ways = new Map<number, WaterLine[]>();
  if (drawn.length !== paths.length) return ways;
  for (const { number, all } of subject.findings) {
    const along = paths.flatMap((path, i) =>
      all.some((result) => goesAlong(path, result, subject.detail)) ? (drawn[i] ?? []) : [],
    );
    if (along.length > 0) ways.set(number, along);
  }
  return ways;
}

/** Lines on the section at a sill, which shows the one way over the pan: it is that of every path that stays there. */
export function waysOverPan(lines: readonly WaterLine[], subject: DrawingSubject, opening: Opening): Ways {
  const set = unitSetIn(subject.detail, opening);
  const there: Place[] = [
    ...(opening.unit === undefined ? [] : [opening.unit.at]),
    ...worksAt(subject.detail, opening, 'sill').map((w) => w.at),
    ...(set === undefined ? [] : [set.at]),
  ];
  const ways = new Map<number, readonly WaterLine[]>();
  for (const { number, all } of subject.findings) {
    const stays = all.some(
      ({ flow = [] }) => flow.length > 0 && flow.every((step) => there.some((place) => within(step.at, place))),
    );
    if (stays && lines.length > 0) ways.set(number, lines);
  }
  return ways;
}
