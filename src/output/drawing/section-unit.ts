/** The frame of the unit, its shims and its perimeter seals in a section. */
import type { SealCut } from '../../geometry/section/types.js';
import { damDepthMm, panStrip } from '../../geometry/section/unit.js';
import { hatch } from './hatch.js';
import { breakLine } from './marks.js';
import { boxOf, cornersOf, type SectionMap } from './section-map.js';
import { frameGap } from './section-strips.js';
import { GREY, type Sheet } from './sheet.js';
import { circle, line, polygon, type Box, type Point } from './svg.js';

/** Face of the frame seen along the opening, mm, and thickness of what it holds: nominal, for the drawing alone. */
const FRAME_MM = 50;
const GLASS_MM = 25;
const LEAF_MM = 44;

export interface UnitPlaces {
  /** The frame on paper. */
  readonly frame?: Box;
  readonly shims?: Point;
  readonly interiorSeal?: Point;
  readonly exteriorSeal?: Point;
  readonly rod?: Point;
}

const middle = (b: Box): Point => [(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2];

/** Outboard face of the frame as drawn: a flange lies on the stack of the face, a recessed frame where it is set. */
function outerFace(map: SectionMap): number {
  const { unit, strips } = map.section;
  const flange = strips.find((s) => s.piece.role === 'unit flange')?.runs.find((r) => r.on === 'face');
  return flange === undefined ? map.drawnDepth(unit?.outerMm ?? 0) : map.faceDepth(flange);
}

/** Glass, leaf or blades that the frame holds, to the end of what is shown. */
function drawInfill(sheet: Sheet, map: SectionMap, inner: number, outer: number, from: number): void {
  const end = map.section.fromMm;
  if (end >= from) return;
  const type = map.section.opening?.type ?? '';
  const centre = (inner + outer) / 2;
  if (type === 'louver' && map.alongAxis === 'y') {
    // Blades fall outward, whichever way the opening lies from the cut.
    const [near, far] = map.section.place === 'sill' ? [outer - 8, inner + 8] : [inner + 8, outer - 8];
    for (let a = from - 8; a - 22 > end; a -= 28) sheet.add('edge', line(map.point(a, near), map.point(a - 22, far)));
  } else if (type === 'louver') {
    for (const d of [inner + 8, outer - 8]) sheet.add('light', line(map.point(from, d), map.point(end, d)));
  } else {
    const half = (type === 'door' ? LEAF_MM : GLASS_MM) / 2;
    for (const d of [centre - half, centre + half])
      sheet.add(type === 'door' ? 'cut' : 'edge', line(map.point(from, d), map.point(end, d)));
  }
  breakLine(sheet, map.point(end, inner - 4), map.point(end, outer + 4));
}

function drawSeal(sheet: Sheet, seal: SealCut, box: Box): void {
  const foam = seal.work.family === 'spray foam';
  sheet.add('fill', polygon(cornersOf(box), { fill: foam ? hatch(sheet, 'spray foam') : '#666' }));
  sheet.add('edge', polygon(cornersOf(box), { 'stroke-width': 0.25 }));
}

function drawRod(sheet: Sheet, at: Point, radius: number): void {
  const d = radius * Math.SQRT1_2;
  sheet.add('fill', circle(at, radius, { fill: '#fff' }));
  sheet.add('edge', circle(at, radius, { 'stroke-width': 0.25 }));
  sheet.add(
    'light',
    line([at[0] - d, at[1] - d], [at[0] + d, at[1] + d]),
    line([at[0] - d, at[1] + d], [at[0] + d, at[1] - d]),
  );
}

/** Along and depth of a seal, as drawn, with where its rod stands. */
function sealExtent(
  map: SectionMap,
  seal: SealCut,
  inner: number,
  outer: number,
): { along: [number, number]; depth: [number, number]; rod?: [number, number] } {
  const gap = frameGap(map);
  const { strips } = map.section;
  const pan = panStrip(strips);
  const surface = (inward: number): number =>
    -(map.returnLevels * map.pitchMm + (pan?.slope ?? 0) * Math.max(0, inward));
  const r = (seal.rodMm ?? 0) / 2;
  if (seal.place === 'under unit') {
    return {
      along: [-gap, surface(-inner)],
      depth:
        seal.work.fillsCavity?.value === true
          ? [inner, outer]
          : [(inner + outer) / 2 - seal.depthMm, (inner + outer) / 2],
    };
  }
  const damAt = damDepthMm(strips);
  if (
    (seal.place === 'at back dam' || seal.place === 'inboard of back dam') &&
    pan !== undefined &&
    damAt !== undefined
  ) {
    const top = surface(damAt) - (pan.backDamMm ?? 0);
    const bridge = damAt + inner;
    const inboard = seal.place === 'inboard of back dam';
    if (Math.abs(bridge) <= seal.widthMm * 2.5 && bridge > 0) {
      // Frame and dam stand side by side: the joint between them is upright.
      const over = inboard ? seal.depthMm : 0;
      return {
        along: [top - over, top - over + seal.depthMm],
        depth: [-damAt - (inboard ? map.pitchMm : -map.pitchMm / 2), inner],
        ...(seal.rodMm === undefined
          ? {}
          : { rod: [top - over + seal.depthMm + r, (inner - damAt) / 2] as [number, number] }),
      };
    }
    const shift = inboard ? -seal.depthMm : -seal.depthMm / 2;
    return {
      along: [top - seal.widthMm, top],
      depth: [-damAt + shift, -damAt + shift + seal.depthMm],
      ...(seal.rodMm === undefined
        ? {}
        : { rod: [top - seal.widthMm / 2, -damAt + shift + seal.depthMm + r] as [number, number] }),
    };
  }
  const atInner = seal.place === 'inner edge of frame';
  const edge = atInner ? inner : outer;
  const depth: [number, number] = atInner ? [edge, edge + seal.depthMm] : [edge - seal.depthMm, edge];
  const rodAt = atInner ? edge + seal.depthMm + r : edge - seal.depthMm - r;
  const low = surface(-edge);
  return {
    along: [-gap, low],
    depth,
    ...(seal.rodMm === undefined ? {} : { rod: [(low - gap) / 2, rodAt] as [number, number] }),
  };
}

/** Draws the unit. @returns where its parts stand, for labels */
export function drawUnit(sheet: Sheet, map: SectionMap): UnitPlaces {
  const { section } = map;
  const { unit, interiorSeal, exteriorSeal } = section;
  if (unit === undefined) return {};
  const [inner, outer] = [unit.innerMm, outerFace(map)];
  const gap = frameGap(map);
  const frame = boxOf(map, [-gap, -gap - FRAME_MM], [inner, outer]);
  sheet.add('fill', polygon(cornersOf(frame), { fill: '#fff' }));
  sheet.add('cut', polygon(cornersOf(frame)));
  // The inside of the frame is its maker's business: a light line only shows that it is hollow.
  const hollow = boxOf(map, [-gap - 7, -gap - FRAME_MM + 7], [inner + 7, outer - 7]);
  sheet.add('light', polygon(cornersOf(hollow), { stroke: GREY }));
  drawInfill(sheet, map, inner, outer, -gap - FRAME_MM);
  const places: { -readonly [K in keyof UnitPlaces]: UnitPlaces[K] } = { frame };
  const shims = unit.set?.shims;
  if (section.place === 'sill' && shims !== undefined) {
    const pan = panStrip(section.strips);
    const d = inner + (outer - inner) * 0.45;
    const low = -(map.returnLevels * map.pitchMm + (pan?.slope ?? 0) * Math.max(0, -d));
    const box = boxOf(map, [-gap, low], shims.continuous?.value === true ? [inner + 6, outer - 6] : [d - 14, d + 14]);
    sheet.add('fill', polygon(cornersOf(box), { fill: '#fff' }));
    sheet.add(
      'light',
      polygon(cornersOf(box)),
      line([box.x0, box.y0], [box.x1, box.y1]),
      line([box.x0, box.y1], [box.x1, box.y0]),
    );
    places.shims = middle(box);
  }
  for (const [name, seal] of [
    ['interiorSeal', interiorSeal],
    ['exteriorSeal', exteriorSeal],
  ] as const) {
    if (seal === undefined) continue;
    const { along, depth, rod } = sealExtent(map, seal, inner, outer);
    const box = boxOf(map, along, depth);
    drawSeal(sheet, seal, box);
    places[name] = middle(box);
    if (rod !== undefined) {
      const at = map.point(...rod);
      drawRod(sheet, at, Math.max(0.7, (seal.rodMm ?? 0) / 2 / map.divisor));
      if (name === 'interiorSeal') places.rod = at;
    }
    if (name === 'interiorSeal') drawBridge(sheet, map, seal, inner, along);
  }
  return places;
}

/** A seal that stands away from the frame: the line it needs to reach it, which the detail does not describe. */
function drawBridge(
  sheet: Sheet,
  map: SectionMap,
  seal: SealCut,
  inner: number,
  along: readonly [number, number],
): void {
  const damAt = damDepthMm(map.section.strips);
  if (damAt === undefined || !/back dam/.test(seal.place) || damAt + inner <= seal.widthMm * 2.5) return;
  const dash = { 'stroke-dasharray': '1.6 0.8' };
  sheet.add('light', line(map.point(along[0], inner), map.point(along[0], -damAt - 25), dash));
}
