/** What is drawn is what is computed: coordinates read back from the pictures and held against formulas by hand. */
import { describe, expect, test } from 'vitest';
import { readPage } from '../../../../tests/support/documents.js';
import { readXml, textLines, type Element } from '../../../../tests/support/drawings.js';
import { drawingSubject, drawView } from '../views.js';

// Every figure is declared, so that the wall can be worked out by hand: sd = 2e-10 / permeance, so 0.5, 0.1 and 4 m.
const detailOf = (system: 'SI' | 'US') => `
\`\`\`yaml project
id: place
title: place
place: { station: "702730" }
indoor: { temperature: 20 degC, humidity: 50 % }
\`\`\`
\`\`\`yaml detail
id: D-1
title: Simple wall
wall:
  - { id: board, material: gypsum board, thickness: ${system === 'SI' ? '13 mm' : '1/2 in'}, rValue: RSI 0.1, permeance: 400 ng/(Pa s m2) }
  - { id: insulation, material: mineral wool batt, thickness: ${system === 'SI' ? '100 mm' : '4 in'}, rValue: RSI 2, permeance: 2000 ng/(Pa s m2) }
  - { id: panel, material: OSB, thickness: ${system === 'SI' ? '12 mm' : '1/2 in'}, rValue: RSI 0.1, permeance: 50 ng/(Pa s m2) }
\`\`\`
`;
/** Means of the station, January to December: copied from the line 702730 of the climate table. */
const OUTDOOR_C = [-7.99, -7.83, -3.43, 3.26, 9.58, 13.67, 14.87, 13.72, 10.72, 1.12, -5.52, -7.35];
const OUTDOOR_PA = [295.1, 291.5, 299.9, 485.2, 719.3, 984.9, 1182.2, 1120.5, 948.8, 522.0, 342.7, 319.2];
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const INDOOR_C = 20;
/** ISO 13788 Annex E (from memory, confirm). */
const saturation = (c: number): number =>
  610.5 * Math.exp(c < 0 ? (21.875 * c) / (265.5 + c) : (17.269 * c) / (237.3 + c));
const INDOOR_PA = 0.5 * saturation(INDOOR_C);
/** Resistance from the air inside to inside surface, board, insulation, outside surface; ISO 6946: 0.13 and 0.04. */
const UP_TO = { insideSurface: 0.13, board: 0.23, insulation: 2.23, panel: 2.33, all: 2.37 };
const temperature = (upTo: number, month: number): number =>
  INDOOR_C - ((INDOOR_C - OUTDOOR_C[month - 1]!) * upTo) / UP_TO.all;

const subjectOf = async (system: 'SI' | 'US') =>
  drawingSubject((await readPage(detailOf(system))).detail(), [], (id) => id);
const si = await subjectOf('SI');
const us = await subjectOf('US');

/** Value of a height on the sheet, by the numbers written at the axis. */
function axis(elements: readonly Element[], name: string): (y: number) => number {
  const ticks = elements.filter((e) => e.name === 'text' && e.attributes['data-axis'] === name);
  const [a, b] = [ticks[0]!, ticks.at(-1)!];
  const at = (e: Element): [number, number] => [Number(e.attributes['y']) - 0.75, Number(e.text)];
  const [[ya, va], [yb, vb]] = [at(a), at(b)];
  return (y) => va + ((y - ya) / (yb - ya)) * (vb - va);
}
/** Points of a named line in the units of its axis. */
function lineOf(svg: string, name: string, axisName: string): { x: number; value: number }[] {
  const elements = readXml(svg);
  const value = axis(elements, axisName);
  const d = elements.find((e) => e.attributes['data-line'] === name)!.attributes['d']!;
  return [...d.matchAll(/([\d.-]+) ([\d.-]+)/g)].map(([, x, y]) => ({ x: Number(x), value: value(Number(y)) }));
}
// Air, four steps of the air film, then the planes: inside surface, board, eight slices of insulation, panel.
const SURFACE = 5;
const FACES = { insideSurface: SURFACE, board: SURFACE + 1, insulation: SURFACE + 9, panel: SURFACE + 10 };
type Face = keyof typeof FACES;
const faces = Object.keys(FACES) as Face[];

describe.each(Array.from({ length: 12 }, (_, i) => i + 1))('the profile of month %i', (month) => {
  const svg = drawView(si, 'profile', { month });
  // The sheet has hundredths of a millimeter; an axis of 60 K on 30 mm reads to 0.02 K.
  test('draws the temperatures of resistances in series', () => {
    const points = lineOf(svg, 'temperature', 'temperature');
    expect(points).toHaveLength(21);
    expect(points[0]!.value).toBeCloseTo(INDOOR_C, 1);
    expect(points.at(-1)!.value).toBeCloseTo(OUTDOOR_C[month - 1]!, 1);
    for (const face of faces) expect(points[FACES[face]]!.value).toBeCloseTo(temperature(UP_TO[face], month), 1);
  });
  test('draws saturation at those temperatures, on both axes alike', () => {
    for (const name of ['pressure', 'over-vapor']) {
      const points = lineOf(svg, `${name}-saturation`, name);
      for (const face of faces) {
        const expected = saturation(temperature(UP_TO[face], month));
        expect(Math.abs(points[FACES[face]]!.value - expected)).toBeLessThan(1.5);
      }
    }
  });
  test('never draws vapor pressure above saturation inside the wall', () => {
    const vapor = lineOf(svg, 'pressure-vapor', 'pressure').slice(2, -2);
    const saturated = lineOf(svg, 'pressure-saturation', 'pressure').slice(SURFACE, -SURFACE);
    expect(vapor).toHaveLength(saturated.length);
    vapor.forEach(({ x, value }, i) => {
      expect(x).toBeCloseTo(saturated[i]!.x, 2);
      expect(value).toBeLessThan(saturated[i]!.value + 1.5);
    });
  });
});

describe('the profile', () => {
  test('is that of the month in which most gathers, and marks where the pressures meet', () => {
    const svg = drawView(si, 'profile');
    // By hand, month by month: the greatest of 2e-10 x ((1168 - ps) / 0.6 - (ps - po) / 4) x days is January's.
    expect(svg).toContain('January, the month in which most water gathers');
    const rings = readXml(svg).filter((e) => e.attributes['data-meets'] === 'yes');
    const value = axis(readXml(svg), 'pressure');
    const ps = saturation(temperature(UP_TO.insulation, 1));
    // One in each plot, and one in the key.
    expect(rings).toHaveLength(3);
    expect(Math.abs(value(Number(rings[0]!.attributes['cy'])) - ps)).toBeLessThan(1.5);
    const gathers = 2e-10 * ((INDOOR_PA - ps) / 0.6 - (ps - OUTDOOR_PA[0]!) / 4) * 31 * 86400 * 1000;
    expect(svg).toContain(`A: between insulation and panel: ${gathers.toFixed(0)} g/m2 gathers in January`);
  });
  test('draws vapor pressure straight over vapor resistance where none is given or taken', () => {
    const points = lineOf(drawView(si, 'profile', { month: 1 }), 'over-vapor-vapor', 'over-vapor').slice(2, -2);
    const [from, to] = [points[0]!, points[9]!];
    // 0.6 of 4.6 m lie inside of the wet plane.
    expect((to.x - from.x) / (points[10]!.x - from.x)).toBeCloseTo(0.6 / 4.6, 2);
    expect(points[1]!.value).toBeCloseTo(from.value + ((to.value - from.value) * 0.5) / 0.6, -1);
  });
  test('draws layers to scale of thickness', () => {
    const svg = drawView(si, 'profile', { month: 1 });
    const points = lineOf(svg, 'temperature', 'temperature');
    const width = (a: Face, b: Face): number => points[FACES[b]]!.x - points[FACES[a]]!.x;
    expect(svg).toContain('>Scale 1:2<');
    expect(width('insideSurface', 'board')).toBeCloseTo(13 / 2, 1);
    expect(width('board', 'insulation')).toBeCloseTo(100 / 2, 1);
    expect(width('insulation', 'panel')).toBeCloseTo(12 / 2, 1);
  });
  test('has the units of the author', () => {
    const svg = drawView(us, 'profile', { month: 1 });
    const points = lineOf(svg, 'temperature', 'temperature');
    // degF = 1.8 degC + 32; inHg of 3386.389 Pa (NIST SP 811).
    for (const face of faces)
      expect(Math.abs(points[FACES[face]]!.value - (temperature(UP_TO[face], 1) * 1.8 + 32))).toBeLessThan(0.05);
    const pressures = lineOf(svg, 'pressure-saturation', 'pressure');
    const expected = saturation(temperature(UP_TO.board, 1)) / 3386.389;
    expect(pressures[FACES.board]!.value).toBeCloseTo(expected, 3);
    expect(svg).toContain('inHg');
    expect(svg).not.toContain(' degC<');
  });
  test('writes in its table what it draws', () => {
    const texts = textLines(drawView(si, 'profile', { month: 1 })).map((l) => l.text);
    expect(texts).toContain(`${temperature(UP_TO.insulation, 1).toFixed(1)} degC`);
    expect(texts).toContain(`${saturation(temperature(UP_TO.board, 1)).toFixed(0)} Pa`);
  });
});

describe('the year', () => {
  const svg = drawView(si, 'year');
  const elements = readXml(svg);
  /** Water at the end of each month at the one plane, from October on, worked out month by month. */
  const expected = (() => {
    let kgPerM2 = 0;
    return [10, 11, 12, 1, 2, 3, 4, 5, 6, 7, 8, 9].map((month) => {
      const ps = saturation(temperature(UP_TO.insulation, month));
      const rate = 2e-10 * ((INDOOR_PA - ps) / 0.6 - (ps - OUTDOOR_PA[month - 1]!) / 4);
      kgPerM2 = Math.max(0, kgPerM2 + rate * DAYS[month - 1]! * 86400);
      return kgPerM2 * 1000;
    });
  })();

  test('draws bars as high as the water at the end of each month', () => {
    const value = axis(elements, 'water');
    const bars = elements.filter((e) => e.attributes['data-bar'] !== undefined);
    expect(bars.length).toBe(expected.filter((g) => g > 0).length);
    expect(bars.length).toBeGreaterThan(5);
    for (const bar of bars) {
      const ys = [...bar.attributes['d']!.matchAll(/[ML][\d.-]+ ([\d.-]+)/g)].map(([, y]) => Number(y));
      const grams = value(Math.min(...ys));
      expect(Math.abs(grams - expected[Number(bar.attributes['data-month'])]!)).toBeLessThan(2);
      expect(value(Math.max(...ys))).toBeCloseTo(0, 5);
    }
  });
  test('starts in the month the wetting starts, and writes the numbers below', () => {
    const lines = textLines(svg);
    const months = lines.filter((l) => /^(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)$/.test(l.text));
    expect(months.slice(0, 3).map((l) => l.text)).toEqual(['Oct', 'Nov', 'Dec']);
    const most = Math.max(...expected);
    expect(lines.map((l) => l.text)).toContain(most.toFixed(0));
  });
  test('draws the limit and names its source', () => {
    // 3 % of wood panels (DIN 4108-3, seen at second hand): 600 kg/m3 x 12 mm x 3 % = 216 g/m2.
    const value = axis(elements, 'water');
    const limit = elements.find((e) => e.attributes['data-limit'] !== undefined);
    const y = Number(/M[\d.-]+ ([\d.-]+)/.exec(limit?.attributes['d'] ?? '')?.[1]);
    expect(Math.abs(value(y) - 216)).toBeLessThan(3);
    expect(svg).toContain('216 g/m2, 3 % of the mass of');
    expect(svg).toContain('DIN 4108-3');
  });
  test('draws the air of both sides', () => {
    const outdoor = lineOf(svg, 'outdoor-temperature', 'air-temperature').map((p) => p.value);
    const fromOctober = [...OUTDOOR_C.slice(9), ...OUTDOOR_C.slice(0, 9)];
    outdoor.forEach((c, i) => expect(Math.abs(c - fromOctober[i]!)).toBeLessThan(0.1));
    const indoor = lineOf(svg, 'indoor-pressure', 'air-pressure').map((p) => p.value);
    for (const pa of indoor) expect(Math.abs(pa - INDOOR_PA)).toBeLessThan(4);
  });
});
