/** The wall face from outside: pieces in the order of work, openings, penetrations, joints, dimensions and water. */
import { openingRect, penetrationRect } from '../../geometry/pieces.js';
import { intersection } from '../../geometry/rect.js';
import type { Piece, Rect } from '../../geometry/types.js';
import type { Opening } from '../../model/types.js';
import { drawDimensions, packDimensions, rowsSize } from './dimensions.js';
import { faceDimensions } from './elevation-dimensions.js';
import { faceMap, onPaper, windowOf, type FaceMap } from './elevation-frame.js';
import { drawPieces, seenParts } from './elevation-pieces.js';
import { drawWater } from './elevation-water.js';
import { markFindings } from './elevation-findings.js';
import { elevationKey } from './elevation-key.js';
import { breakLine, leader, NUMBER_RADIUS, workNumber } from './marks.js';
import { drawFindings, drawKey, drawNotes, drawSteps, drawTitleBlock, PAGE } from './page.js';
import { scaleFor } from './scale.js';
import { GREY, PEN, Sheet, SIZE } from './sheet.js';
import { systemOf, unitText, workText, type DrawingSubject } from './subject.js';
import { circle, line, polygon, type Box, type Point } from './svg.js';
import { textWidthMm } from './text-size.js';

/** Greatest height of the drawing itself, so that drawing and key fit on one sheet of A4. */
const TALLEST_MM = 190;

const corners = (b: Box): Point[] => [
  [b.x0, b.y0],
  [b.x1, b.y0],
  [b.x1, b.y1],
  [b.x0, b.y1],
];

function drawJoints(sheet: Sheet, subject: DrawingSubject, map: FaceMap): void {
  const { window } = map;
  for (const j of subject.face.joints) {
    const vertical = j.orientation === 'vertical';
    const [low, high, from, to] = vertical
      ? [window.u0, window.u1, Math.max(j.from, window.v0), Math.min(j.to, window.v1)]
      : [window.v0, window.v1, Math.max(j.from, window.u0), Math.min(j.to, window.u1)];
    if (j.line <= low || j.line >= high || from >= to) continue;
    const ends: [Point, Point] = vertical
      ? [
          [map.x(j.line), map.y(from)],
          [map.x(j.line), map.y(to)],
        ]
      : [
          [map.x(from), map.y(j.line)],
          [map.x(to), map.y(j.line)],
        ];
    sheet.add('light', line(...ends, { 'stroke-dasharray': '4 1.2', 'stroke-width': PEN.edge }));
  }
}

function drawOpening(sheet: Sheet, opening: Opening, map: FaceMap): void {
  const box = onPaper(map, openingRect(opening));
  if (box === undefined) return;
  sheet.add('fill', polygon(corners(box), { fill: '#fff' }));
  sheet.add('cut', polygon(corners(box)));
  if (opening.unit !== undefined) {
    // The frame of the unit, which lies beyond the face that is drawn.
    for (const inset of [0.9, 3]) {
      const b = { x0: box.x0 + inset, y0: box.y0 + inset, x1: box.x1 - inset, y1: box.y1 - inset };
      if (b.x1 - b.x0 > 4 && b.y1 - b.y0 > 4) sheet.add('light', polygon(corners(b), { stroke: GREY }));
    }
  }
  const middle: Point = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];
  sheet.text([middle[0], middle[1] - 1], opening.id, { anchor: 'middle', bold: true });
  sheet.text([middle[0], middle[1] + 2.4], unitText(opening), { anchor: 'middle', size: SIZE.small });
}

function drawPenetrations(sheet: Sheet, subject: DrawingSubject, map: FaceMap): void {
  for (const p of subject.detail.penetrations) {
    const box = onPaper(map, penetrationRect(p));
    if (box === undefined) continue;
    const middle: Point = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];
    const isRound = p.widthMm === p.heightMm && p.type !== 'vent';
    sheet.add(
      'cut',
      isRound ? circle(middle, (box.x1 - box.x0) / 2, { fill: '#fff' }) : polygon(corners(box), { fill: '#fff' }),
    );
    sheet.reserve(box);
  }
}

function namePenetrations(sheet: Sheet, subject: DrawingSubject, map: FaceMap): void {
  for (const p of subject.detail.penetrations) {
    const box = onPaper(map, penetrationRect(p));
    if (box === undefined) continue;
    const middle: Point = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];
    const width = textWidthMm(p.id, SIZE.text, { bold: true }) + 1;
    const wanted: Point = [box.x0 - width / 2 - 3, box.y0 - 3];
    const at = sheet.freeNear(wanted, width, SIZE.text * 1.4, map.box);
    sheet.text([at[0], at[1] + 0.8], p.id, { anchor: 'middle', bold: true });
    leader(sheet, [[at[0] + (at[0] < middle[0] ? width : -width) / 2, at[1]], middle]);
  }
}

/** Largest first; ties in reading order, so that the same piece is always marked at the same place. */
const bySize = (a: Rect, b: Rect): number =>
  (b.u1 - b.u0) * (b.v1 - b.v0) - (a.u1 - a.u0) * (a.v1 - a.v0) || b.v1 - a.v1 || a.u0 - b.u0;

/** Numbers of the work on the pieces: one on each side of an opening that a piece is seen on. */
function numberPieces(
  sheet: Sheet,
  subject: DrawingSubject,
  map: FaceMap,
  seen: ReadonlyMap<Piece, readonly Rect[]>,
): void {
  for (const piece of subject.face.pieces) {
    if (!piece.sheds || piece.face.length === 0) continue;
    const parts = [...(seen.get(piece) ?? [])].sort(bySize);
    const o = piece.opening === undefined ? undefined : openingRect(piece.opening);
    const bothSides = o !== undefined && (piece.role === 'jamb flashing' || piece.role === 'counterflashing');
    const chosen = bothSides
      ? [
          parts.find((r) => r.u1 <= o.u0),
          parts.find((r) => r.u0 >= o.u1),
          parts.find((r) => r.u0 < o.u1 && r.u1 > o.u0),
        ]
      : [parts[0]];
    const shown = chosen.filter((r) => r !== undefined);
    const covered = shown.length === 0;
    const hidden = covered ? piece.face.flatMap((r) => intersection(r, map.window) ?? []).sort(bySize)[0] : undefined;
    for (const r of hidden === undefined ? shown : [hidden]) {
      // Off the middle of wide areas, where the lines of water run.
      const wide = r.u1 - r.u0 > 30 * map.divisor;
      const anchor: Point = [map.x(r.u0 + (r.u1 - r.u0) * (wide ? 0.62 : 0.5)), map.y((r.v0 + r.v1) / 2)];
      const at = sheet.freeNear(anchor, 2 * NUMBER_RADIUS, 2 * NUMBER_RADIUS, map.box);
      if (Math.hypot(at[0] - anchor[0], at[1] - anchor[1]) > 1.5) leader(sheet, [at, anchor]);
      workNumber(sheet, at, piece.work.step, covered);
    }
  }
}

function drawBorder(sheet: Sheet, subject: DrawingSubject, map: FaceMap): void {
  const { box } = map;
  const c = corners(box);
  const sides = ['top', 'right', 'bottom', 'left'] as const;
  sides.forEach((side, i) => {
    const [a, b] = [c[i] as Point, c[(i + 1) % 4] as Point];
    const edge = subject.detail.edges.find((e) => e.side === side);
    const reachesEnd =
      (side === 'top' && map.window.v1 === subject.face.bounds.v1) ||
      (side === 'bottom' && map.window.v0 === subject.face.bounds.v0) ||
      (side === 'left' && map.window.u0 === subject.face.bounds.u0) ||
      (side === 'right' && map.window.u1 === subject.face.bounds.u1);
    if (edge !== undefined && reachesEnd && edge.meets.value !== 'same wall') sheet.add('cut', line(a, b));
    else breakLine(sheet, a, b, 0.22);
  });
}

/** What the wall meets; that it simply goes on is told once for all sides. */
function edgeNotes(subject: DrawingSubject): string[] {
  const { edges } = subject.detail;
  const goesOn = edges.filter((e) => e.meets.value === 'same wall' && e.tieIn === undefined);
  return [
    ...edges
      .filter((e) => !goesOn.includes(e))
      .map(
        (e) =>
          `The wall meets ${e.meets.value} at the ${e.side}${e.tieIn === undefined ? '' : `; "${e.tieIn.value}" carries the barrier on`}.`,
      ),
    ...(goesOn.length === 0 ? [] : [`The same wall goes on at the ${goesOn.map((e) => e.side).join(', ')}.`]),
  ];
}

/**
 * Draws the elevation.
 *
 * @param opening the opening whose extents are dimensioned
 * @returns SVG text
 */
export function drawElevation(subject: DrawingSubject, opening: Opening | undefined): string {
  const { detail, face } = subject;
  const window = windowOf(subject);
  const room = PAGE.width - 2 * PAGE.margin;
  const rowsFor = (map: FaceMap) => {
    const d = faceDimensions(map, face.pieces, opening);
    return {
      top: packDimensions(d.top, 'x'),
      bottom: packDimensions(d.bottom, 'x'),
      left: packDimensions(d.left, 'y'),
      right: packDimensions(d.right, 'y'),
    };
  };
  // The scale decides how dimensions pack, and they take room from the drawing: a smaller one until both fit.
  const width = window.u1 - window.u0;
  const tallest = (window.v1 - window.v0) / TALLEST_MM;
  let divisor = Math.max(scaleFor(width, room), scaleFor(tallest, 1));
  let rows = rowsFor(faceMap(window, divisor, [0, 0]));
  const needed = (): number => width / divisor + rowsSize(rows.left) + rowsSize(rows.right);
  while (needed() > room) {
    divisor = scaleFor(width, width / divisor - 0.01);
    rows = rowsFor(faceMap(window, divisor, [0, 0]));
  }
  const left = PAGE.margin + (room - needed()) / 2 + rowsSize(rows.left);
  const map = faceMap(window, divisor, [left, PAGE.margin + rowsSize(rows.top) + 1]);
  rows = rowsFor(map);

  const sheet = new Sheet(PAGE.width);
  const seen = seenParts(face, window);
  drawPieces(sheet, face, map, seen);
  for (const one of detail.openings) drawOpening(sheet, one, map);
  drawPenetrations(sheet, subject, map);
  drawJoints(sheet, subject, map);
  drawBorder(sheet, subject, map);
  drawDimensions(sheet, rows.top, 'x', map.box.y0, -1);
  drawDimensions(sheet, rows.bottom, 'x', map.box.y1, 1);
  drawDimensions(sheet, rows.left, 'y', map.box.x0, -1);
  drawDimensions(sheet, rows.right, 'y', map.box.x1, 1);
  namePenetrations(sheet, subject, map);
  numberPieces(sheet, subject, map, seen);
  drawWater(sheet, subject, map);
  const shown = markFindings(sheet, subject, map, seen);
  sheet.reserve({ ...map.box, x1: map.box.x0, y1: Math.max(map.box.y1, sheet.bottom) });

  drawKey(sheet, elevationKey(sheet, subject, window));
  drawSteps(
    sheet,
    detail.work.map((w) => ({ step: w.step, text: workText(w) })),
  );
  drawNotes(sheet, 'Edges', edgeNotes(subject));
  drawFindings(sheet, subject.findings, shown, true);
  const view = `Elevation of the barrier from outside${opening === undefined ? '' : `, dimensions of ${opening.id}`}`;
  drawTitleBlock(sheet, detail, view, { divisor, system: systemOf(detail) });
  return sheet.toSvg(`${detail.id}: ${view}`, `${detail.title}. Not for construction.`, PAGE.margin);
}
