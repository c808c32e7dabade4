/** Membranes and flashings of a section as lines that follow face and return, bend by bend. */
import type { Run, Strip } from '../../geometry/section/types.js';
import type { SectionMap } from './section-map.js';
import { hatch } from './hatch.js';
import { PEN, type Sheet } from './sheet.js';
import { strokeOf } from './strokes.js';
import { line, polygon, polyline, type Point } from './svg.js';

/** A point of the section: along, and depth as drawn. */
export type Place = readonly [alongMm: number, depth: number];

/** Legs and thickness of the steel angle under a veneer, mm (drawn only). */
export const ANGLE_LEG_MM = 76;
export const ANGLE_MM = 8;
/** Length of the turned-down nose of a drip, mm (drawn only). */
const DRIP_MM = 9;

function facePlaces(map: SectionMap, runs: readonly Run[]): Place[] {
  const fromFarEnd = [...runs].sort((a, b) => b.fromMm - a.fromMm);
  return fromFarEnd.flatMap((run, i): Place[] => {
    const depth = map.faceDepth(run);
    const before = fromFarEnd[i - 1];
    const touches = before !== undefined && before.fromMm === run.toMm;
    // A membrane that climbs over an edge below it slants over a pitch, on the side where nothing lies under it.
    const slant = touches ? Math.min(map.pitchMm, (run.toMm - run.fromMm) / 2) : 0;
    return [
      [run.toMm - (touches && before.level > run.level ? slant : 0), depth],
      [run.fromMm, depth],
    ];
  });
}

function returnPlaces(map: SectionMap, runs: readonly Run[], slope: number): Place[] {
  return [...runs]
    .sort((a, b) => a.fromMm - b.fromMm)
    .flatMap((run): Place[] => [
      [map.returnAlong(run.level, slope, run.fromMm), -run.fromMm],
      [map.returnAlong(run.level, slope, run.toMm), -run.toMm],
    ]);
}

/** Outermost face at the level where a flashing runs out. */
function outermost(map: SectionMap): number {
  const { bands, unit } = map.section;
  return map.drawnDepth(Math.max(0, unit?.outerMm ?? 0, ...bands.map((b) => b.outerMm)));
}

/** The line of a strip from its far end on the wall to its inboard end. */
export function placesOf(map: SectionMap, strip: Strip): Place[] {
  const face = strip.runs.filter((r) => r.on === 'face');
  const back = strip.runs.filter((r) => r.on === 'return');
  const onFace = facePlaces(map, face);
  const onReturn = returnPlaces(map, back, strip.slope);
  const last = onFace.at(-1);
  const places: Place[] = [...onFace];
  if (strip.piece.role === 'unit flange' && map.section.unit !== undefined && last !== undefined)
    places.push([-frameGap(map), last[1]]);
  const first = onReturn[0];
  if (last !== undefined && first !== undefined && last[0] <= 0.01 && back.some((r) => r.fromMm === 0)) {
    // Around the corner: down the face to the surface of the return, then inward.
    places.push([first[0], last[1]], ...onReturn.slice(1));
  } else places.push(...onReturn);
  const end = onReturn.at(-1);
  if (strip.backDamMm !== undefined && end !== undefined) places.push([end[0] - strip.backDamMm, end[1]]);
  return places;
}

/** Over the vertical leg of the angle, down behind the veneer and out under it, with its drip. */
function overLintel(map: SectionMap, heel: Place, end: number): Place[] {
  const veneer = map.section.veneerFoot;
  const inner = veneer === undefined ? heel[1] : map.drawnDepth(veneer.band.innerMm);
  const top = Math.min(heel[0], ANGLE_LEG_MM);
  return [
    heel,
    [top, inner - (veneer?.hasAngle === true ? ANGLE_MM : 0)],
    [top, inner],
    [0, inner],
    [0, end],
    [-DRIP_MM * Math.SQRT1_2, end + DRIP_MM * Math.SQRT1_2],
  ];
}

/** The leg of a flashing that runs out over what lies below, with its drip. */
export function projection(map: SectionMap, strip: Strip): Place[] {
  const face = strip.runs.filter((r) => r.on === 'face' && r.fromMm >= 0).sort((a, b) => a.fromMm - b.fromMm)[0];
  if (strip.projectsMm === undefined || face === undefined) return [];
  const depth = map.faceDepth(face);
  const end = outermost(map) + strip.projectsMm;
  if (strip.overLintel === true) return overLintel(map, [face.fromMm, depth], end);
  const fall = strip.slope * (end - depth);
  return [
    [face.fromMm, depth],
    [face.fromMm - fall, end],
    [face.fromMm - fall - DRIP_MM * Math.SQRT1_2, end + DRIP_MM * Math.SQRT1_2],
  ];
}

/** Highest surface of the sill pan below the frame, and the clearance above it; on other sides the joint alone. */
export function frameGap(map: SectionMap): number {
  const { unit, strips, place } = map.section;
  if (unit === undefined) return 0;
  const levels = map.returnLevels * map.pitchMm;
  if (place !== 'sill') return Math.max(unit.gapMm, levels + 0.9 * map.divisor);
  const pan = strips.findLast((s) => s.slope !== 0 || s.backDamMm !== undefined);
  const reach = Math.max(0, ...(pan?.runs.filter((r) => r.on === 'return').map((r) => r.toMm) ?? [0]));
  const rise = Math.max(0, (pan?.slope ?? 0) * Math.min(reach, -unit.innerMm));
  // A frame that reaches over the back dam has to clear it.
  const over = pan?.backDamMm !== undefined && -unit.innerMm > reach ? pan.backDamMm : 0;
  return levels + rise + Math.max(unit.gapMm, over + unit.gapMm * (over > 0 ? 1 : 0), 0.9 * map.divisor);
}

export const toPaper = (map: SectionMap, places: readonly Place[]): Point[] => places.map(([a, d]) => map.point(a, d));

/** The sloped bed of a pan, and what of its ends is seen beyond the cut. */
function drawUnderPan(sheet: Sheet, map: SectionMap, strip: Strip): void {
  const reach = Math.max(0, ...strip.runs.filter((r) => r.on === 'return').map((r) => r.toMm));
  if (reach === 0) return;
  if (strip.slope > 0)
    sheet.add(
      'fill',
      polygon([map.point(0, 0), map.point(-strip.slope * reach, -reach), map.point(0, -reach)], {
        fill: hatch(sheet, 'wood'),
        stroke: '#000',
        'stroke-width': PEN.light,
      }),
    );
  if (strip.endDamMm !== undefined) {
    const top = -strip.endDamMm;
    sheet.add(
      'light',
      line(map.point(top, 0), map.point(top, -reach)),
      line(map.point(top, -reach), map.point(-strip.slope * reach, -reach)),
    );
  }
}

export function drawStrips(sheet: Sheet, map: SectionMap): void {
  for (const strip of map.section.strips) {
    drawUnderPan(sheet, map, strip);
    const family = strip.piece.apply?.family;
    const places = toPaper(map, placesOf(map, strip));
    if (family === undefined) sheet.add('strip', polyline(places, { 'stroke-width': 0.55 }));
    else {
      sheet.add('strip', ...strokeOf(family, places));
      const out = toPaper(map, projection(map, strip));
      if (out.length > 0) sheet.add('strip', ...strokeOf(family, out));
    }
  }
}

/** A point of a strip that stands for it: on the face where nothing covers it, if there is such a place. */
export function stripAnchor(map: SectionMap, strip: Strip): Point {
  const { strips, toMm } = map.section;
  const covered = (a: number, level: number): boolean =>
    strips.some((s) => s.runs.some((r) => r.on === 'face' && r.fromMm <= a && r.toMm >= a && r.level > level));
  const face = strip.runs.filter((r) => r.on === 'face');
  const free = face.filter((r) => !covered((r.fromMm + r.toMm) / 2, r.level));
  const length = (r: Run): number => Math.min(r.toMm, toMm) - r.fromMm;
  const best = [...(free.length > 0 ? free : face)].sort((a, b) => length(b) - length(a))[0];
  if (best !== undefined) return map.point((best.fromMm + Math.min(best.toMm, toMm)) / 2, map.faceDepth(best));
  const back = [...strip.runs].sort((a, b) => b.toMm - b.fromMm - (a.toMm - a.fromMm))[0];
  if (back === undefined) return map.point(0, 0);
  const w = (back.fromMm + back.toMm) / 2;
  return map.point(map.returnAlong(back.level, strip.slope, w), -w);
}
