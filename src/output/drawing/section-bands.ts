/** Layers, framing and foundation of a section, hatched by material. */
import type { Band } from '../../geometry/section/types.js';
import { battCurves, crossed, hatch, hatchOf } from './hatch.js';
import { boxOf, cornersOf, type SectionMap } from './section-map.js';
import { ANGLE_LEG_MM, ANGLE_MM } from './section-strips.js';
import type { Sheet } from './sheet.js';
import { strokeOf } from './strokes.js';
import { line, polygon, polyline, type Box } from './svg.js';

/** Depth of a member at the edge of an opening, mm: nominal, for the drawing alone. */
const MEMBER_MM = 38.1;
const TRACK_MM = 31.75;

/** Where a layer begins along the wall: what is outside of the barrier runs down past the foot. */
export function startOf(map: SectionMap, band: Band): number {
  const { foundation } = map.section;
  return foundation !== undefined && band.innerMm >= 0 ? foundation.claddingFootMm : 0;
}

export function bandBox(map: SectionMap, band: Band, from: number, to: number): Box {
  return boxOf(
    map,
    [from, to],
    [map.drawnDepth(band.innerMm + (band.innerMm === 0 ? 1e-9 : 0)), map.drawnDepth(band.outerMm)],
  );
}

/** The member that frames an opening, or the plate at the foot: wood crossed, steel as a channel. */
function drawMember(sheet: Sheet, map: SectionMap, band: Band): number {
  const { layer } = band;
  if (layer.framing === undefined && layer.family !== 'framing') return 0;
  const member = bandBox(map, band, 0, MEMBER_MM);
  sheet.add('fill', polygon(cornersOf(member), { fill: '#fff' }));
  if (layer.framing?.material === 'steel') {
    const [i, o] = [map.drawnDepth(band.innerMm), map.drawnDepth(band.outerMm)];
    sheet.add('cut', polyline([map.point(TRACK_MM, i), map.point(0, i), map.point(0, o), map.point(TRACK_MM, o)]));
    return TRACK_MM;
  }
  sheet.add('light', ...crossed(member));
  sheet.add('cut', polygon(cornersOf(member)));
  return MEMBER_MM;
}

function drawBand(sheet: Sheet, map: SectionMap, band: Band): void {
  const { toMm, strips } = map.section;
  const { layer } = band;
  const from = startOf(map, band);
  if (band.outerMm === band.innerMm) {
    // Films and sheets that are pieces of the wall face are drawn as strips.
    if (layer.family === 'paint' || strips.some((s) => s.piece.layer === layer)) return;
    const depth = map.drawnDepth(band.innerMm) + (band.innerMm > 0 ? 0 : 0.3 * map.divisor);
    sheet.add('strip', ...strokeOf(layer.family, [map.point(from, depth), map.point(toMm, depth)]));
    return;
  }
  const box = bandBox(map, band, from, toMm);
  const isBatt = layer.family === 'batt insulation';
  const hatched = hatchOf(layer, map.alongAxis === 'y' ? 'along' : 'across');
  if (hatched !== undefined) sheet.add('fill', polygon(cornersOf(box), { fill: hatch(sheet, hatched) }));
  const filledFrom = drawMember(sheet, map, band);
  if (isBatt) sheet.add('hatch', battCurves(bandBox(map, band, filledFrom, toMm), map.alongAxis));
  // The far end is broken off, so it has no edge there.
  const [i, o] = [map.drawnDepth(band.innerMm + (band.innerMm === 0 ? 1e-9 : 0)), map.drawnDepth(band.outerMm)];
  sheet.add('edge', polyline([map.point(toMm, i), map.point(from, i), map.point(from, o), map.point(toMm, o)]));
}

/** Foundation below the foot of the wall, with a ledge where masonry stands on it, and the ground outside. */
function drawFoundation(sheet: Sheet, map: SectionMap): void {
  const { foundation, bands, fromMm } = map.section;
  if (foundation === undefined) return;
  const inner = Math.min(0, ...bands.map((b) => b.innerMm));
  const bears = bands.findLast((b) => hatchOf(b.layer, 'along') === 'brick');
  const ledge = bears === undefined ? 0 : map.drawnDepth(bears.outerMm);
  const foot = foundation.claddingFootMm;
  const outline = [
    map.point(fromMm, inner),
    map.point(0, inner),
    map.point(0, 0),
    ...(ledge > 0 ? [map.point(foot, 0), map.point(foot, ledge), map.point(fromMm, ledge)] : [map.point(fromMm, 0)]),
  ];
  sheet.add('fill', polygon(outline, { fill: hatch(sheet, 'concrete') }));
  sheet.add('cut', polyline(outline));
  const { gradeMm } = foundation;
  if (gradeMm === undefined) return;
  const outside = map.alongAxis === 'y' ? ([map.box.x0, map.point(gradeMm, 0)[1]] as const) : undefined;
  if (outside === undefined) return;
  const [x1, y] = map.point(gradeMm, ledge);
  sheet.add(
    'fill',
    polygon(
      [
        [outside[0], y],
        [x1, y],
        [x1, y + 3.4],
        [outside[0], y + 3.4],
      ],
      { fill: hatch(sheet, 'earth') },
    ),
  );
  sheet.add('cut', line([outside[0], y], [x1, y]));
}

/** A weep as it is seen on the flashing: an open head joint is one course high, nominal, for the drawing alone. */
const COURSE_MM = 57;

/** Weeps at the foot of a veneer, and the angle that carries it. */
function drawVeneerFoot(sheet: Sheet, map: SectionMap): void {
  const { veneerFoot, place } = map.section;
  if (veneerFoot === undefined || (place !== 'head' && place !== 'base')) return;
  const { band, weeps, hasAngle } = veneerFoot;
  const [inner, outer] = [map.drawnDepth(band.innerMm), map.drawnDepth(band.outerMm)];
  const foot = startOf(map, band);
  if (weeps !== undefined && weeps.count?.value !== 0) {
    const high = weeps.type?.value === 'tubes' || weeps.type?.value === 'wicks' ? weeps.sizeMm?.value : COURSE_MM;
    const hole = cornersOf(boxOf(map, [foot, foot + (high ?? COURSE_MM)], [inner, outer]));
    sheet.add('fill', polygon(hole, { fill: '#fff' }));
    sheet.add('light', polygon(hole, { 'stroke-dasharray': '1 0.7' }));
  }
  if (hasAngle) {
    const angle = [
      map.point(ANGLE_LEG_MM, inner - ANGLE_MM),
      map.point(ANGLE_LEG_MM, inner),
      map.point(foot, inner),
      map.point(foot, outer - ANGLE_MM),
      map.point(foot - ANGLE_MM, outer - ANGLE_MM),
      map.point(foot - ANGLE_MM, inner - ANGLE_MM),
    ];
    sheet.add('cut', polygon(angle, { fill: '#777' }));
  }
}

/** Draws everything that has thickness. */
export function drawBands(sheet: Sheet, map: SectionMap): void {
  drawFoundation(sheet, map);
  for (const band of map.section.bands) drawBand(sheet, map, band);
  drawVeneerFoot(sheet, map);
}
