/** Ways of water on an elevation: a line with drops for each way, and a crossed circle with words where it ends wrong. */
import { isShown } from '../../water/run/shown.js';
import { endText } from '../../water/run/tell.js';
import { endsRight, type WaterEnd, type WaterPath } from '../../water/run/types.js';
import { penetrationRect } from '../../geometry/pieces.js';
import type { Rect } from '../../geometry/types.js';
import type { FaceMap } from './elevation-frame.js';
import { leader, waterLine, waterOut, wrongEnd } from './marks.js';
import { LINE_HEIGHT, SIZE, type Sheet } from './sheet.js';
import type { DrawingSubject } from './subject.js';
import type { Box, Point } from './svg.js';
import { textWidthMm, wrapMm } from './text-size.js';

const WORDS_MM = 38;

/** Words beside a wrong end, at the nearest free place. */
export function endWords(sheet: Sheet, at: Point, text: string, within: Box): void {
  const lines = wrapMm(text, WORDS_MM, SIZE.text, 4);
  const width = Math.max(...lines.map((l) => textWidthMm(l, SIZE.text)));
  const row = SIZE.text * LINE_HEIGHT;
  const height = lines.length * row;
  const [x, y] = sheet.freeNear([at[0] + width / 2 + 4, at[1]], width + 1, height, within);
  const isRight = x > at[0];
  const edge = x + (isRight ? -1 : 1) * (width / 2 + 0.6);
  lines.forEach((l, i) =>
    sheet.text([edge + (isRight ? 0.6 : -0.6), y - height / 2 + row * i + SIZE.text * 0.95], l, {
      anchor: isRight ? 'start' : 'end',
    }),
  );
  leader(sheet, [[edge, y], at]);
}

const wayOf = (path: WaterPath): string =>
  [path.source.name, path.end.kind, path.end.why ?? '', path.end.opening?.id ?? '', path.end.joint?.line ?? ''].join(
    '\n',
  );

/**
 * The ways that an elevation shows, in the order in which it draws them. What no check judges, because the drawing stops
 * there, is not drawn as if it had been judged.
 */
export function drawnPaths({ detail, face, water }: DrawingSubject, window: Rect): WaterPath[] {
  return tellingPaths(water.face.filter((p) => isShown(p, detail, face))).filter(
    (p) => p.u1 > window.u0 && p.u0 < window.u1,
  );
}

/** Of neighboring ways that come from and lead to the same, the one that meets most pieces stands for all. */
export function tellingPaths(paths: readonly WaterPath[]): WaterPath[] {
  const kept: { path: WaterPath; u1: number }[] = [];
  for (const path of paths) {
    const last = kept.at(-1);
    if (last !== undefined && last.u1 === path.u0 && wayOf(last.path) === wayOf(path)) {
      const more = path.steps.length - last.path.steps.length;
      const wider = path.u1 - path.u0 > last.path.u1 - last.path.u0;
      kept[kept.length - 1] = { path: more > 0 || (more === 0 && wider) ? path : last.path, u1: path.u1 };
    } else kept.push({ path, u1: path.u1 });
  }
  return kept.map((k) => k.path);
}

/** Stretches of a way from its start to its end, hidden where a piece covers the water. */
function stretches(path: WaterPath): { from: number; to: number; hidden: boolean }[] {
  const found: { from: number; to: number; hidden: boolean }[] = [];
  let hidden = false;
  let from = path.steps[0]?.v ?? path.end.v;
  for (const step of path.steps) {
    const next: boolean = step.what === 'behind' ? true : step.what === 'comes out' ? false : hidden;
    if (next === hidden) continue;
    found.push({ from, to: step.v, hidden });
    from = step.v;
    hidden = next;
  }
  found.push({ from, to: path.end.v, hidden });
  return found;
}

/** Shares of its width at which a way may be drawn: beside the middle first, which numbers and words take. */
const ACROSS = [0.36, 0.64, 0.22, 0.78, 0.1, 0.9] as const;

/** Where across its width a way is drawn: clear of the holes it runs around, if there is such a place. */
function acrossAt(path: WaterPath, map: FaceMap, holes: readonly Rect[]): number {
  const { u0, u1 } = map.window;
  const from = Math.max(path.u0, u0);
  const to = Math.min(path.u1, u1);
  const places = (to - from > 20 * map.divisor ? ACROSS : ([0.5, ...ACROSS] as const)).map(
    (s) => from + (to - from) * s,
  );
  const top = path.steps[0]?.v ?? path.end.v;
  const crosses = (u: number): boolean =>
    holes.some((h) => h.u0 < u && u < h.u1 && h.v0 < top - 0.1 && h.v1 > path.end.v + 0.1);
  return places.find((u) => !crosses(u)) ?? (places[0] as number);
}

/** What of an upright stretch is seen: the parts above, between and below the holes it crosses. */
function besideHoles(u: number, low: number, high: number, holes: readonly Rect[]): [number, number][] {
  const inTheWay = holes.filter((h) => h.u0 < u && u < h.u1 && h.v0 < high && h.v1 > low).sort((a, b) => b.v1 - a.v1);
  const parts: [number, number][] = [];
  let top = high;
  for (const h of inTheWay) {
    if (top > h.v1) parts.push([h.v1, top]);
    top = Math.min(top, h.v0);
  }
  if (top > low) parts.push([low, top]);
  return parts;
}

const endName = (end: WaterEnd): string => `Water ends ${endText(end)}`;

/** Draws all ways of water on the face and the wrong ends over the pans. */
export function drawWater(sheet: Sheet, subject: DrawingSubject, map: FaceMap): void {
  const { detail, water } = subject;
  const holes = detail.penetrations.map(penetrationRect);
  const { window } = map;
  const told = new Set<string>();
  for (const path of drawnPaths(subject, window)) {
    const u = acrossAt(path, map, holes);
    const x = map.x(u);
    for (const { from, to, hidden } of stretches(path)) {
      const [high, low] = [Math.min(from, window.v1), Math.max(to, window.v0)];
      for (const [end, start] of besideHoles(u, low, high, holes))
        waterLine(
          sheet,
          [
            [x, map.y(start)],
            [x, map.y(end)],
          ],
          hidden,
        );
    }
    const at: Point = [x, map.y(Math.max(path.end.v, window.v0))];
    if (endsRight(path.end)) {
      waterOut(sheet, at);
      continue;
    }
    wrongEnd(sheet, at);
    const name = endName(path.end);
    if (told.has(name)) continue;
    told.add(name);
    endWords(sheet, at, name, map.box);
  }
  for (const { end } of water.pans) {
    // A way that leaves the pan and goes wrong below it is drawn with the ways on the face.
    if (endsRight(end) || told.has(endName(end))) continue;
    const at: Point = [map.x(end.u), map.y(end.v) - 2.5];
    wrongEnd(sheet, at);
    told.add(endName(end));
    endWords(sheet, at, endName(end), map.box);
  }
}
