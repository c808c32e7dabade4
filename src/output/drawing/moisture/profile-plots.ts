/** The lines of the profile: temperature, saturation and vapor pressure, from the air inside to the air outside. */
import { heldPa } from '../../../moisture/condensation.js';
import type { MonthState, PlaneState } from '../../../moisture/month-state.js';
import { saturationPressurePa } from '../../../moisture/psychrometrics.js';
import { circle, line, type Box, type Point } from '../svg.js';
import { PEN, SIZE, type Sheet } from '../sheet.js';
import { textWidthMm } from '../text-size.js';
import type { Across } from './across.js';
import { curve, HEADROOM, plot, roundTicks, spreadAlong, withMargin, type Plot } from './plot.js';
import type { MoistureUnits, Scale } from './units.js';

/** How finely saturation is followed through an air film, where temperature runs straight. */
const FILM_STEPS = 4;
const FREEZING_C = 0;

/** Temperatures from the air inside to the inside surface, or from the outside surface to the air outside. */
function filmPoints(fromX: number, toX: number, fromC: number, toC: number): { x: number; temperatureC: number }[] {
  return Array.from({ length: FILM_STEPS + 1 }, (_, i) => ({
    x: fromX + ((toX - fromX) * i) / FILM_STEPS,
    temperatureC: fromC + ((toC - fromC) * i) / FILM_STEPS,
  }));
}

/** Temperature across air, films and wall. */
function temperaturePoints(across: Across, state: MonthState): { x: number; temperatureC: number }[] {
  const { planes, air } = state;
  const [first, last] = [planes[0] as PlaneState, planes.at(-1) as PlaneState];
  return [
    { x: across.x0, temperatureC: air.inside.temperatureC },
    ...filmPoints(across.filmInX, across.insideX, air.inside.temperatureC, first.temperatureC).slice(0, -1),
    ...planes.map(({ plane, temperatureC }) => ({ x: across.x(plane), temperatureC })),
    ...filmPoints(across.outsideX, across.filmOutX, last.temperatureC, air.outside.temperatureC).slice(1),
    { x: across.x1, temperatureC: air.outside.temperatureC },
  ];
}

/** Draws the plot of temperature. */
export function drawTemperatures(
  sheet: Sheet,
  across: Across,
  state: MonthState,
  box: Pick<Box, 'y0' | 'y1'>,
  { temperature }: MoistureUnits,
): Plot {
  const points = temperaturePoints(across, state);
  const shown = points.map((p) => temperature.shown(p.temperatureC));
  const ticks = roundTicks(...withMargin(shown), 5);
  const frame = { x0: across.x0, x1: across.x1, ...box };
  const made = plot(sheet, frame, ticks, 'temperature', `Temperature, ${temperature.unit}`);
  const at = points.map((p, i): Point => [p.x, made.y(shown[i] as number)]);
  curve(sheet, 'temperature', 'temperature', at);
  const freezing = temperature.shown(FREEZING_C);
  if (freezing > ticks.least && freezing < ticks.most) {
    const y = made.y(freezing);
    sheet.add('light', line([across.x0, y], [across.x1, y], { 'stroke-dasharray': '3 0.8 0.5 0.8' }));
    sheet.text([across.x1 + 1.2, y + 0.75], 'freezing', { size: SIZE.small });
  }
  films(sheet, across, frame);
  return made;
}

/** Where air films begin. */
function films(sheet: Sheet, across: Across, { y0, y1 }: Box): void {
  for (const x of [across.filmInX, across.filmOutX])
    sheet.add('light', line([x, y0], [x, y1], { 'stroke-dasharray': '0.8 0.8' }));
}

/** Draws the plot of pressures, with the planes at saturation marked. */
export function drawPressures(
  sheet: Sheet,
  across: Across,
  state: MonthState,
  box: Pick<Box, 'y0' | 'y1'>,
  { pressure }: MoistureUnits,
  name: string,
  title?: string,
): Plot {
  const saturation = temperaturePoints(across, state).map((p) => ({
    x: p.x,
    pa: saturationPressurePa(p.temperatureC),
  }));
  const { planes, air } = state;
  const vapor = [
    { x: across.x0, pa: heldPa(air.inside) },
    { x: across.insideX, pa: heldPa(air.inside) },
    ...planes.map(({ plane, vaporPa }) => ({ x: across.x(plane), pa: vaporPa })),
    { x: across.outsideX, pa: heldPa(air.outside) },
    { x: across.x1, pa: heldPa(air.outside) },
  ];
  const most = Math.max(...saturation.map((p) => p.pa), ...vapor.map((p) => p.pa));
  const ticks = roundTicks(0, pressure.shown(most) * HEADROOM, 5);
  const frame = { x0: across.x0, x1: across.x1, ...box };
  const made = plot(sheet, frame, ticks, name, title);
  const on = (points: readonly { x: number; pa: number }[], scale: Scale): Point[] =>
    points.map((p): Point => [p.x, made.y(scale.shown(p.pa))]);
  curve(sheet, 'saturation', `${name}-saturation`, on(saturation, pressure));
  curve(sheet, 'vapor', `${name}-vapor`, on(vapor, pressure));
  films(sheet, across, frame);
  const letters = title === undefined ? frame.x0 : frame.x0 - 11 + textWidthMm(title, SIZE.text) + 1;
  drawMeetings(sheet, across, state, made, pressure, letters);
  return made;
}

/** Letter of a plane at saturation: A, B, ... Z, AA. */
export function letterOf(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : `${letterOf(Math.floor(index / 26) - 1)}${letter}`;
}

/** As many planes get a letter as the words beside the drawing tell one by one; more would not fit over a plot. */
export const LETTERED = 6;

/** Rings where the pressures meet, the first of them with their letters over the plot. */
function drawMeetings(
  sheet: Sheet,
  across: Across,
  state: MonthState,
  { box, y }: Plot,
  pressure: Scale,
  freeFromX: number,
): void {
  const meeting = state.planes.filter((p) => p.atSaturation);
  const xs = meeting.map((p) => across.x(p.plane));
  const lettered = xs.slice(0, LETTERED);
  const widths = lettered.map((_, i) => letterOf(i).length * 2.2 + 1.4);
  const at = spreadAlong(lettered, widths, freeFromX, box.x1);
  meeting.forEach((p, i) => {
    const x = xs[i] as number;
    const center: Point = [x, y(pressure.shown(p.vaporPa))];
    sheet.add('mark', meetingRing(center));
    if (i >= LETTERED) return;
    sheet.text([at[i] as number, box.y0 - 1.4], letterOf(i), { anchor: 'middle', bold: true });
    sheet.add(
      'leader',
      line([at[i] as number, box.y0 - 0.9], [x, box.y0 + 1.4]),
      line([x, box.y0 + 1.4], [x, center[1] - 1.1], { 'stroke-width': PEN.light }),
    );
  });
}

/** The sign of a plane at saturation. */
export function meetingRing(center: Point): string {
  return circle(center, 1.1, { fill: 'none', 'stroke-width': 0.35, 'data-meets': 'yes' });
}
