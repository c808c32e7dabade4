/**
 * Where a point of a section stands on paper.
 *
 * Membranes would be thinner than a pen at any usual scale. Each level of the stack is drawn one pitch thick, and what
 * lies outside of them moves outward by the room they take; their order, and every length along the wall, stays true.
 */
import type { Run, Section } from '../../geometry/section/types.js';
import type { Box, Point } from './svg.js';

/** Drawn distance from one level of the stack to the next, mm on paper. */
const PITCH = 1.15;
/** Depth shown beyond the outermost and innermost face, mm on paper. */
const BEYOND = { outside: 2, inside: 2 } as const;

export interface SectionMap {
  readonly section: Section;
  readonly divisor: number;
  /** Direction on paper in which `along` runs. */
  readonly alongAxis: 'x' | 'y';
  readonly box: Box;
  /** One pitch of the stack, in millimeters of the wall. */
  readonly pitchMm: number;
  /** Number of levels on the return at its fullest. */
  readonly returnLevels: number;
  /** Depth on the sheet for a true depth, both in millimeters of the wall. */
  drawnDepth(depthMm: number): number;
  /** Middle of a level on the face. */
  faceDepth(run: Pick<Run, 'level' | 'baseMm'>): number;
  /** Middle of a level on the return at a distance inward; negative, into the opening. */
  returnAlong(level: number, slope: number, inwardMm: number): number;
  /** @param depth as drawn */
  point(alongMm: number, depth: number): Point;
}

/** Depths that a section takes on the sheet. */
function depthRange(section: Section, drawnDepth: (d: number) => number, divisor: number): [number, number] {
  const inner = Math.min(
    0,
    ...section.bands.map((b) => b.innerMm),
    ...(section.unit === undefined ? [] : [section.unit.innerMm]),
    ...section.strips.flatMap((s) => s.runs.filter((r) => r.on === 'return').map((r) => -r.toMm)),
  );
  const outermost = Math.max(0, ...section.bands.map((b) => b.outerMm), section.unit?.outerMm ?? 0);
  const outer = drawnDepth(outermost) + Math.max(0, ...section.strips.map((s) => s.projectsMm ?? 0));
  const ground = section.foundation?.gradeMm === undefined ? 0 : 14;
  return [inner - BEYOND.inside * divisor, outer + (BEYOND.outside + ground) * divisor];
}

/** @param origin upper left corner of the drawing on paper */
export function sectionMap(section: Section, divisor: number, [left, top]: Point): SectionMap {
  const pitchMm = PITCH * divisor;
  const levels = (on: Run['on']): number =>
    Math.max(
      0,
      ...section.strips.flatMap((s) => s.runs.filter((r) => r.on === on && r.baseMm === 0).map((r) => r.level + 1)),
    );
  const zoneMm = levels('face') * pitchMm;
  const drawnDepth = (d: number): number => (d <= 0 ? d : d + zoneMm);
  const [minD, maxD] = depthRange(section, drawnDepth, divisor);
  const { fromMm, toMm, place, side } = section;
  const isPlan = place === 'jamb';
  const growsFirst = place === 'sill' || side === 'right jamb';
  const along = (a: number): number => (growsFirst ? a - fromMm : toMm - a) / divisor;
  const point = (a: number, d: number): Point =>
    isPlan ? [left + along(a), top + (d - minD) / divisor] : [left + (maxD - d) / divisor, top + along(a)];
  const [w, h] = [(toMm - fromMm) / divisor, (maxD - minD) / divisor];
  return {
    section,
    divisor,
    alongAxis: isPlan ? 'x' : 'y',
    box: isPlan ? { x0: left, y0: top, x1: left + w, y1: top + h } : { x0: left, y0: top, x1: left + h, y1: top + w },
    pitchMm,
    returnLevels: levels('return'),
    drawnDepth,
    faceDepth: ({ level, baseMm }) => (baseMm > 0 ? baseMm + zoneMm : 0) + (level + 0.5) * pitchMm,
    returnAlong: (level, slope, inwardMm) => -((level + 0.5) * pitchMm + slope * inwardMm),
    point,
  };
}

/** A rectangle of the section as a box on paper; depths as drawn. */
export function boxOf(map: SectionMap, along: readonly [number, number], depth: readonly [number, number]): Box {
  const [ax, ay] = map.point(along[0], depth[0]);
  const [bx, by] = map.point(along[1], depth[1]);
  return { x0: Math.min(ax, bx), y0: Math.min(ay, by), x1: Math.max(ax, bx), y1: Math.max(ay, by) };
}

export function cornersOf(b: Box): Point[] {
  return [
    [b.x0, b.y0],
    [b.x1, b.y0],
    [b.x1, b.y1],
    [b.x0, b.y1],
  ];
}
