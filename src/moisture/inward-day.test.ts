import { describe, expect, it } from 'vitest';
import { outdoorAir, type MonthOfAir } from './interior-climate.js';
import { sunnyYear } from './inward-day.js';
import { layer } from './testing/synthetic-climate.js';

// No published case was found; figures by hand, from the ISO 13788 formula written out and the assumptions printed.
const saturated = (t: number): number => 610.5 * Math.exp((17.269 * t) / (237.3 + t));
const all = (month: MonthOfAir): MonthOfAir[] => new Array<MonthOfAir>(12).fill(month);
const HOT = all({ inside: outdoorAir(24, 0.5), outside: outdoorAir(28, 0.75) });
const COLD = all({ inside: outdoorAir(20, 0.35), outside: outdoorAir(-10, 0.8) });
const wallWith = (insideSdM: number): ReturnType<typeof layer>[] => [
  layer('board', 0.05, 0.1),
  layer('film', 0, insideSdM),
  layer('wool', 2.4, 0.14),
  layer('sheathing', 0.1, 0.2),
];

describe('a sunny day on a soaked cladding', () => {
  it('leaves behind polyethylene what six hours of sun and eighteen without carry there', () => {
    // 0.7 x 430 W/m2 x 0.04 m2 K/W is 12.04 K. The film lies behind 0.13 + 0.05 of 0.13 + 2.55 + 0.13 m2 K/W.
    const rate = (claddingC: number): number => {
      const k = (claddingC - 24) / 2.81;
      const filmPa = saturated(24 + k * 0.18);
      const outerPa = Math.min(saturated(claddingC), saturated(claddingC - k * 0.13));
      return (2e-10 * (outerPa - filmPa)) / 0.34 - (2e-10 * (filmPa - 0.5 * saturated(24))) / 50.1;
    };
    const sunny = rate(40.04) * 6 * 3600;
    const rest = rate(28) * 18 * 3600;
    const { worst, gathersIn, seasonKgPerM2 } = sunnyYear(wallWith(50), HOT, false);
    expect(worst!.plane.name).toBe('between film and wool');
    expect(worst!.sunnyKgPerM2 / sunny).toBeCloseTo(1, 9);
    expect(worst!.leftKgPerM2 / (sunny + rest)).toBeCloseTo(1, 9);
    expect(gathersIn).toHaveLength(12);
    expect(seasonKgPerM2 / (365 * (sunny + rest))).toBeCloseTo(1, 9);
  });
  it('leaves less behind a vented cavity, and nothing behind paint that lets it through to the room', () => {
    const season = (sd: number, vented: boolean): number => sunnyYear(wallWith(sd), HOT, vented).seasonKgPerM2;
    expect(season(50, true)).toBeLessThan(season(50, false) / 3);
    expect(season(0.05, false)).toBeLessThan(season(50, false) / 2);
    expect(sunnyYear(wallWith(0.05), HOT, true).days).toEqual([]);
  });
  it('makes no water in cold months, in which a wall may well be wetted from the room', () => {
    expect(sunnyYear(wallWith(0.05), COLD, true)).toMatchObject({ days: [], gathersIn: [], seasonKgPerM2: 0 });
    const sharp = [layer('wool', 3, 0.2), layer('skin', 0, 30)];
    expect(sunnyYear(sharp, COLD, false).gathersIn).toEqual([]);
  });
  it('says what it takes for sun, rain and cavity, and how that is known', () => {
    const { assumptions, leftOut } = sunnyYear(wallWith(1), HOT, true);
    expect(assumptions.join(' ')).toMatch(/6 hours, 12 K .*from memory, confirm.* 30 % .*no source/s);
    expect(leftOut.at(-1)).toContain('licensed practice');
  });
});
