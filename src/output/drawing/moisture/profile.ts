/** Section through the wall with what heat and vapor do in it in one month. */
import { decidingMonth, monthState, type MonthState } from '../../../moisture/month-state.js';
import { drawKey, drawTitleBlock, heading, INNER, PAGE, type KeySign } from '../page.js';
import { LINE_HEIGHT, Sheet, SIZE } from '../sheet.js';
import type { DrawingSubject } from '../subject.js';
import { line, type Point } from '../svg.js';
import { textWidthMm, wrapMm } from '../text-size.js';
import { byThickness, byVapor, type Across } from './across.js';
import { followed, smallPrint, type Followed } from './followed.js';
import { monthName } from '../../../moisture/words.js';
import { LINES } from './plot.js';
import { drawPressures, drawTemperatures, meetingRing } from './profile-plots.js';
import { meetingWords, monthWords, profileTable } from './profile-words.js';
import { drawStrip } from './strip.js';
import { drawSmallPrint, drawTable, type ColumnPlace, type NumberTable } from './table.js';
import type { MoistureUnits } from './units.js';

/** Ends of the plots, and the room for air on each side, mm on paper. */
const FIELD = { x0: 20, x1: 182, air: 24 } as const;
const HEIGHT = { strip: 15, temperatures: 30, pressures: 36, vaporStrip: 6, vaporPressures: 28 } as const;
const ROW = SIZE.text * LINE_HEIGHT;

const COLUMNS: readonly ColumnPlace[] = [
  { x: 8, anchor: 'end', width: 8 },
  { x: 10, anchor: 'start', width: 62 },
  { x: 74, anchor: 'start', width: 27 },
  { x: 103, anchor: 'start', width: 18 },
  { x: 122, anchor: 'start', width: 20 },
  { x: 160, anchor: 'end', width: 18 },
  { x: 177, anchor: 'end', width: 16 },
  { x: 196, anchor: 'end', width: 18 },
];

interface Chosen {
  readonly found: Followed;
  readonly state: MonthState;
  readonly byReader: boolean;
}

/**
 * @param month 1 for January; the one that decides unless given
 * @throws RangeError when the wall cannot be followed, or for a month that is none
 */
function choose(subject: DrawingSubject, month: number | undefined): Chosen {
  const found = followed(subject);
  const { judged, wallYear } = found;
  const deciding = decidingMonth(judged.year, wallYear.air);
  const state = monthState(judged.year, wallYear.air, judged.wall.surfaces, month ?? deciding);
  return { found, state, byReader: month !== undefined && month !== deciding };
}

function sampleLine(sheet: Sheet, [x, y]: Point, style: keyof typeof LINES): void {
  sheet.add('cut', line([x - 4.5, y], [x + 4.5, y], LINES[style]));
}

function keySigns(sheet: Sheet): KeySign[] {
  return [
    { text: 'vapor pressure', draw: (at) => sampleLine(sheet, at, 'vapor') },
    { text: 'saturation pressure', draw: (at) => sampleLine(sheet, at, 'saturation') },
    { text: 'the two meet: water gathers or lies here', draw: (at) => sheet.add('mark', meetingRing(at)) },
    {
      text: 'edge of an air film',
      draw: ([x, y]) => sheet.add('light', line([x, y - 1.6], [x, y + 1.6], { 'stroke-dasharray': '0.8 0.8' })),
    },
  ];
}

/** The axis below the strip of vapor resistance: how much lies between the surfaces. */
function vaporScale(sheet: Sheet, across: Across, y: number, total: number, { vapor }: MoistureUnits): void {
  sheet.text([across.insideX, y], '0', { size: SIZE.small, anchor: 'middle' });
  sheet.text([across.outsideX, y], vapor.text(total), { size: SIZE.small, anchor: 'middle' });
  sheet.text([(across.insideX + across.outsideX) / 2, y], 'vapor resistance, to scale', {
    size: SIZE.small,
    anchor: 'middle',
  });
}

function sides(sheet: Sheet, across: Across, found: Followed, y: number): void {
  sheet.text([across.x0, y], 'INTERIOR', { bold: true });
  const outside = found.judged.wall.endsAt === undefined ? 'EXTERIOR' : 'CAVITY';
  const width = textWidthMm(outside, SIZE.text, { bold: true });
  sheet.text([across.x1 - width, y], outside, { bold: true });
}

/** Section, temperature and pressures over thickness. @returns lower end */
function drawOverThickness(sheet: Sheet, { found, state }: Chosen, top: number): { y: number; divisor: number } {
  const across = byThickness(found.layers, FIELD.x0, FIELD.x1, FIELD.air);
  const strip = top + 4 + HEIGHT.strip;
  const temperatures = { y0: strip + 6, y1: strip + 6 + HEIGHT.temperatures };
  const pressures = { y0: temperatures.y1 + 7, y1: temperatures.y1 + 7 + HEIGHT.pressures };
  sides(sheet, across, found, strip - HEIGHT.strip / 2 + 0.8);
  drawStrip(sheet, across, top, HEIGHT.strip, pressures.y1);
  drawTemperatures(sheet, across, state, temperatures, found.units);
  const title = `Vapor pressure, ${found.units.pressure.unit}`;
  drawPressures(sheet, across, state, pressures, found.units, 'pressure', title);
  return { y: pressures.y1, divisor: across.divisor };
}

/** The same pressures where each layer is as wide as it resists vapor. @returns lower end */
function drawOverVapor(sheet: Sheet, { found, state }: Chosen, top: number): number {
  const across = byVapor(found.layers, FIELD.x0, FIELD.x1, 8);
  const strip = top + 4 + HEIGHT.vaporStrip;
  const pressures = { y0: strip + 6, y1: strip + 6 + HEIGHT.vaporPressures };
  sheet.text(
    [across.x0 - 11, top - 4.6],
    `The same vapor pressure, ${found.units.pressure.unit}, where each layer is as wide as it resists vapor`,
  );
  drawStrip(sheet, across, top, HEIGHT.vaporStrip, pressures.y1);
  drawPressures(sheet, across, state, pressures, found.units, 'over-vapor');
  vaporScale(sheet, across, pressures.y1 + 3, state.planes.at(-1)?.plane.sdFromInsideM ?? 0, found.units);
  return pressures.y1 + 4;
}

const notesOf = (found: Followed): string[] => smallPrint(found, 'Thin layers are drawn wider than they are.');

/**
 * Draws the profile.
 *
 * @param month 1 for January; the one that decides unless given
 * @returns SVG text
 * @throws RangeError when the wall cannot be followed
 */
export function drawProfile(subject: DrawingSubject, month?: number): string {
  const chosen = choose(subject, month);
  const { found, state, byReader } = chosen;
  const { detail } = subject;
  const sheet = new Sheet(PAGE.width);
  const [first = '', ...more] = monthWords(found, state, byReader);
  let y: number = PAGE.margin + 3;
  sheet.text([INNER.x0 + 2, y], first, { bold: true });
  for (const text of more.flatMap((t) => wrapMm(t, INNER.x1 - INNER.x0 - 4, SIZE.text)))
    sheet.text([INNER.x0 + 2, (y += ROW)], text);
  const over = drawOverThickness(sheet, chosen, y + 6);
  y = drawOverVapor(sheet, chosen, over.y + 10);
  y += 4;
  const words = meetingWords(found, state);
  for (const text of words.flatMap((t) => wrapMm(t, INNER.x1 - INNER.x0 - 4, SIZE.text)))
    sheet.text([INNER.x0 + 2, (y += ROW)], text);
  const table = profileTable(found, state);
  drawTable(sheet, table, COLUMNS, heading(sheet, sheet.bottom + 2, table.caption) + 0.6);
  drawKey(sheet, keySigns(sheet));
  drawSmallPrint(sheet, heading(sheet, sheet.bottom + 2, 'Assumed and left out') + 0.4, notesOf(found));
  const view = `Heat and vapor through the wall in ${monthName(state.month)}`;
  drawTitleBlock(sheet, detail, view, { divisor: over.divisor, system: found.system });
  const description = `${detail.title}. ${first}. ${words.join(' ')} Not for construction.`;
  return sheet.toSvg(`${detail.id}: ${view}`, description, PAGE.margin);
}

/** The numbers of the profile. Same arguments and errors as {@link drawProfile}. */
export function profileNumbers(subject: DrawingSubject, month?: number): NumberTable {
  const { found, state } = choose(subject, month);
  return { ...profileTable(found, state), notes: notesOf(found) };
}
