/** Ways of water in a section: on the outermost face it runs on, behind what covers it, over the pan. */
import { openingRect } from '../../geometry/pieces.js';
import type { Piece } from '../../geometry/types.js';
import { damDepthMm } from '../../geometry/section/unit.js';
import type { Strip } from '../../geometry/section/types.js';
import { endText } from '../../water/run/tell.js';
import { endsRight, type WaterEnd, type WaterPath } from '../../water/run/types.js';
import type { Label } from './labels.js';
import { waterLine, waterOut, wrongEnd } from './marks.js';
import type { SectionMap } from './section-map.js';
import type { Place } from './section-strips.js';
import { projection, toPaper } from './section-strips.js';
import type { Sheet } from './sheet.js';
import type { DrawingSubject } from './subject.js';
import type { Point } from './svg.js';

/** Water stands this far off the surface it runs on, mm on paper. */
const OFF = 0.35;

/** The face a vertical section is cut on: where `along` is 0, and the sense in which it grows. */
function lineOf(subject: DrawingSubject, map: SectionMap): { zero: number; sense: 1 | -1 } {
  const { place, opening } = map.section;
  if (opening === undefined) return { zero: subject.face.bounds.v0, sense: 1 };
  const o = openingRect(opening);
  return place === 'head' ? { zero: o.v1, sense: 1 } : { zero: o.v0, sense: -1 };
}

/** Depth of the outer surface of a piece at a place along the wall. */
function surfaceAt(map: SectionMap, strips: readonly Strip[], piece: Piece | undefined, a: number): number {
  const off = OFF * map.divisor;
  const run = strips.find((s) => s.piece === piece)?.runs.find((r) => r.on === 'face' && r.fromMm <= a && r.toMm >= a);
  return run === undefined ? off : map.faceDepth(run) + map.pitchMm / 2 + off * 0.6;
}

/** Places of a way on the face, from where it enters the section to its end. */
function faceWay(map: SectionMap, path: WaterPath, line: { zero: number; sense: 1 | -1 }): Place[] {
  const { strips, fromMm, toMm } = map.section;
  const along = (v: number): number => (v - line.zero) * line.sense;
  // On the flashing over a lintel it leaves the wall.
  const heel = strips.find((s) => s.overLintel)?.runs.map((r) => r.fromMm);
  const low = heel === undefined ? Math.min(Math.max(0, fromMm), 0) : Math.min(...heel);
  const within = (a: number): boolean => a >= low - 0.01 && a <= toMm + 0.01;
  const stops = strips.flatMap((s) => s.runs.filter((r) => r.on === 'face').flatMap((r) => [r.fromMm, r.toMm]));
  const places: Place[] = [];
  let current: Piece | undefined;
  const steps = [...path.steps];
  const downward = line.sense > 0 ? -1 : 1;
  for (let k = 0; k < steps.length; k++) {
    const step = steps[k] as WaterPath['steps'][number];
    if (step.what === 'starts' || step.what === 'over edge' || step.what === 'comes out') current = step.piece;
    if (step.what === 'drops') current = step.onto;
    const from = along(step.v);
    const to = along(steps[k + 1]?.v ?? path.end.v);
    const clip = (a: number): number => Math.min(Math.max(a, low), toMm);
    const [a, b] = [clip(from), clip(to)];
    if (Math.abs(a - b) < 0.01) continue;
    const cuts = [a, ...stops.filter((s) => (s - a) * (s - b) < 0), b].sort((x, y) => (x - y) * downward);
    for (let i = 0; i + 1 < cuts.length; i++) {
      const [p, q] = [cuts[i] as number, cuts[i + 1] as number];
      const depth = surfaceAt(map, strips, current, (p + q) / 2);
      if (within(p) && within(q)) places.push([p, depth], [q, depth]);
    }
  }
  return places;
}

/** The way over the pan: from under the unit outward to its edge. */
function panWay(map: SectionMap): Place[] {
  const { strips, unit } = map.section;
  const pan = strips.findLast((s) => s.piece.role === 'sill flashing' && s.runs.some((r) => r.on === 'return'));
  if (pan === undefined) return [];
  const back = pan.runs.filter((r) => r.on === 'return');
  const reach = Math.max(...back.map((r) => r.toMm));
  const start = Math.min(reach - 4, Math.max(20, -(unit?.innerMm ?? -reach) - 10));
  const lift = map.returnLevels * map.pitchMm + OFF * map.divisor;
  const edge = pan.runs.find((r) => r.on === 'face' && r.fromMm < 0.01);
  const depth = edge === undefined ? 0 : map.faceDepth(edge) + map.pitchMm / 2 + OFF * map.divisor * 0.6;
  return [
    [-(lift + pan.slope * start), -start],
    [-lift, 0],
    [-lift, depth],
  ];
}

/** Out over the leg of a flashing that runs through the wall, when the way comes down to it. */
function overLeg(map: SectionMap, last: Place | undefined, out: boolean): Place[] {
  const off = OFF * map.divisor;
  const leg = map.section.strips.map((s) => projection(map, s)).find((p) => p.length > 0);
  const [from, ...rest] = leg ?? [];
  if (from === undefined || last === undefined || Math.abs(last[0] - from[0]) > 1) return [];
  // Along the upper side of the leg, and not down its drip. What the veneer holds comes no farther than its inner face.
  const way = rest.slice(0, -1);
  const { veneerFoot } = map.section;
  const isHeld = !out && veneerFoot !== undefined;
  const reach = isHeld ? way.filter(([, d]) => d <= map.drawnDepth(veneerFoot.band.innerMm) + 0.01) : way;
  const turns = reach.map(([a, d], i): Place => [a + off, d + (i === reach.length - 1 && isHeld ? -off : off)]);
  return [[from[0] + off, last[1]], ...turns];
}

function tell(sheet: Sheet, at: Point, end: WaterEnd): Label {
  wrongEnd(sheet, at);
  return { anchor: at, lines: [`Water ends ${endText(end)}`] };
}

/** What was drawn of the ways of water. */
export interface SectionWater {
  readonly any: boolean;
  /** Words for the place where a way ends wrong. */
  readonly wrongEnd?: Label;
}

/** Draws the ways of water that the section cuts. */
export function drawSectionWater(sheet: Sheet, subject: DrawingSubject, map: SectionMap): SectionWater {
  const { section } = map;
  if (section.place === 'jamb') return { any: false };
  const line = lineOf(subject, map);
  const source = section.place === 'sill' ? 'pan' : 'rain';
  const here = subject.water.face.filter(
    (p) =>
      p.source.kind === source &&
      p.u0 <= section.cutAtMm &&
      p.u1 >= section.cutAtMm &&
      (source === 'rain' || p.source.opening === section.opening),
  );
  const overPan = section.place === 'sill' ? panWay(map) : [];
  const pan = subject.water.pans.find((p) => section.place === 'sill' && p.opening === section.opening);
  const leaves = pan === undefined || endsRight(pan.end) || here.some((p) => p.end === pan.end);
  if (pan !== undefined && !leaves) {
    const way = overPan.length === 0 ? [] : [...overPan].reverse().slice(1);
    const reach = damDepthMm(section.strips) ?? (section.unit === undefined ? 40 : -section.unit.innerMm);
    // Held water stands under the unit; water that gets inside stands behind the dam.
    const inside = pan.end.kind === 'held in pan' ? reach / 2 : reach + 4 * map.divisor;
    const surface = overPan[0]?.[0] ?? -OFF * map.divisor;
    const at = map.point(surface - 2 * map.divisor, -inside);
    waterLine(sheet, toPaper(map, way), false, 6);
    return { any: true, wrongEnd: tell(sheet, at, pan.end) };
  }
  const [path] = here;
  if (path === undefined) return { any: false };
  const down = faceWay(map, path, line);
  const isOut = path.end.kind === 'daylight';
  const out = isOut || path.end.kind === 'behind veneer' ? overLeg(map, down.at(-1), isOut) : [];
  const way = toPaper(map, [...overPan, ...down, ...out]);
  const last = way.at(-1);
  if (last === undefined) return { any: false };
  waterLine(sheet, way, false, 9);
  if (!endsRight(path.end)) return { any: true, wrongEnd: tell(sheet, last, path.end) };
  const before = way.at(-2) ?? last;
  const length = Math.hypot(last[0] - before[0], last[1] - before[1]) || 1;
  waterOut(sheet, last, [(last[0] - before[0]) / length, (last[1] - before[1]) / length]);
  return { any: true };
}
