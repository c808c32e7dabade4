/** The layers of a wall as a hatched strip, numbered above, with their faces as thin lines down through a plot. */
import { battCurves, hatch, hatchOf } from '../hatch.js';
import { GREY, PEN, SIZE, type Sheet } from '../sheet.js';
import { strokeOf } from '../strokes.js';
import { line, polygon, polyline, type Box, type Point } from '../svg.js';
import { textWidthMm } from '../text-size.js';
import type { Across, Span } from './across.js';
import { spreadAlong } from './plot.js';

/** Narrower than this a hatch says nothing, mm on paper. */
const HATCHED = 2;

/** Thinner sheets are drawn as the line of their family, mm on the wall. */
const SHEET_MM = 2;
/** A strip is short: its batts turn more often than in a section. */
const BATT_STEP = 2.6;

const corners = (b: Box): Point[] => [
  [b.x0, b.y0],
  [b.x1, b.y0],
  [b.x1, b.y1],
  [b.x0, b.y1],
];

function drawLayer(sheet: Sheet, { layer, x0, x1 }: Span, y0: number, y1: number): void {
  const { figures, thicknessMm } = layer;
  const box = { x0, y0, x1, y1 };
  const hatched = hatchOf(figures.layer, 'along');
  if (thicknessMm === 0 || (thicknessMm < SHEET_MM && hatched === undefined)) {
    // Where it takes room, that is its own: as wide as it resists vapor.
    if (x1 - x0 >= HATCHED) sheet.add('light', polygon(corners(box)));
    const isFinish = figures.id !== figures.layer.id;
    const middle = (x0 + x1) / 2;
    const points: Point[] = [
      [middle, y0],
      [middle, y1],
    ];
    sheet.add('strip', ...strokeOf(isFinish ? 'paint' : figures.layer.family, points));
    return;
  }
  if (hatched !== undefined && x1 - x0 >= HATCHED)
    sheet.add('fill', polygon(corners(box), { fill: hatch(sheet, hatched) }));
  if (figures.layer.family === 'batt insulation') sheet.add('hatch', battCurves(box, 'y', BATT_STEP));
  sheet.add('edge', polygon(corners(box)));
}

/** Numbers of the layers over the strip, each with a line to its layer. */
function drawNumbers(sheet: Sheet, across: Across, y: number): void {
  const middles = across.spans.map((s) => (s.x0 + s.x1) / 2);
  const texts = across.spans.map((s) => String(s.layer.number));
  const widths = texts.map((t) => textWidthMm(t, SIZE.text, { bold: true }) + 1.6);
  const at = spreadAlong(middles, widths, across.x0, across.x1);
  texts.forEach((text, i) => {
    const x = at[i] as number;
    sheet.text([x, y], text, { anchor: 'middle', bold: true });
    sheet.add(
      'leader',
      polyline([
        [x, y + 0.9],
        [middles[i] as number, y + 3.2],
        [middles[i] as number, y + 4.6],
      ]),
    );
  });
}

/**
 * Draws the strip.
 *
 * @param y baseline of the numbers; the strip begins below them
 * @param lowest end of the lines that carry the faces of the layers through the plots
 * @returns lower end of the strip
 */
export function drawStrip(sheet: Sheet, across: Across, y: number, heightMm: number, lowest: number): number {
  drawNumbers(sheet, across, y);
  const [top, bottom] = [y + 4, y + 4 + heightMm];
  for (const span of across.spans) drawLayer(sheet, span, top, bottom);
  // Layers that are all lines have no edges of their own.
  for (const x of [across.insideX, across.outsideX])
    sheet.add('edge', line([x, top], [x, bottom], { 'stroke-width': PEN.edge }));
  const faces = new Set(across.spans.flatMap((s) => [s.x0, s.x1]));
  for (const x of faces) {
    const isSurface = x === across.insideX || x === across.outsideX;
    sheet.add('leader', line([x, bottom], [x, lowest], isSurface ? { 'stroke-width': 0.25 } : { stroke: GREY }));
  }
  sheet.reserve({ x0: across.x0, y0: top, x1: across.x1, y1: bottom });
  return bottom;
}
