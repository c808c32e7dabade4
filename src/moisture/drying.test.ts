import { describe, expect, it } from 'vitest';
import { dryingReserve } from './drying.js';
import { outdoorAir, type MonthOfAir } from './interior-climate.js';
import { heated, layer } from './testing/synthetic-climate.js';

const saturated = (t: number): number =>
  t < 0 ? 610.5 * Math.exp((21.875 * t) / (265.5 + t)) : 610.5 * Math.exp((17.269 * t) / (237.3 + t));
const steady = (insideC: number, insideHumidity: number, outsideC: number, humidity: number): MonthOfAir[] =>
  new Array<MonthOfAir>(12).fill({
    inside: outdoorAir(insideC, insideHumidity),
    outside: outdoorAir(outsideC, humidity),
  });
const SECONDS = 365 * 86_400;

describe('what a wet plane could dry', () => {
  // Board, wool, sheathing, membrane: the water lies between sheathing and membrane.
  const wall = (membraneSdM: number, insideSdM: number): ReturnType<typeof layer>[] => [
    layer('board', 0.06, insideSdM),
    layer('wool', 3, 0.1),
    layer('sheathing', 0.1, 0.1),
    layer('membrane', 0, membraneSdM),
  ];

  it('is two lines of arithmetic in steady weather: to the room and outward', () => {
    // 20 degC and 40 % inside, 10 degC and 60 % outside; the plane lies behind 0.13 + 3.16 of 3.33 m2 K/W.
    const planePa = saturated(20 - (10 * 3.29) / 3.33);
    const inward = (2e-10 * (planePa - 0.4 * saturated(20))) / 0.7;
    const outward = (2e-10 * (planePa - 0.6 * saturated(10))) / 20;
    const found = dryingReserve(wall(20, 0.5), steady(20, 0.4, 10, 0.6), 'membrane');
    expect(found.toInsideKgPerM2 / (inward * SECONDS)).toBeCloseTo(1, 9);
    expect(found.toOutsideKgPerM2 / (outward * SECONDS)).toBeCloseTo(1, 9);
    expect(found.kgPerM2).toBeCloseTo(found.toInsideKgPerM2 + found.toOutsideKgPerM2, 12);
  });
  it('is a small part when both sides are tight: of the order of 0.7 over 50, each way', () => {
    const [open, shut] = [0.5, 50].map((sd) => dryingReserve(wall(50, sd), heated(2), 'membrane').kgPerM2);
    expect(shut! / open!).toBeLessThan(0.05);
    expect(shut).toBeGreaterThan(0);
  });
  it('counts only months in which the wall loses water', () => {
    const { months, kgPerM2 } = dryingReserve(wall(50, 0.5), heated(3), 'membrane');
    const net = months.map((m) => m.toInsideKgPerM2 + m.toOutsideKgPerM2);
    // Winter drives vapor outward into the cold plane.
    expect(net[0]).toBeLessThan(0);
    expect(net[6]).toBeGreaterThan(0);
    expect(kgPerM2).toBeCloseTo(
      net.filter((n) => n > 0).reduce((a, b) => a + b, 0),
      12,
    );
  });
  it('does not count what condenses elsewhere on its way', () => {
    // Warm outside, cold room, tight paper behind the board: what leaves the wet plane inward stays at the paper.
    const year = steady(15, 0.5, 30, 0.9);
    const layers = [layer('board', 0.06, 0.1), layer('paper', 0, 30), layer('wool', 3, 0.1), layer('siding', 0.1, 0.5)];
    const { toInsideKgPerM2 } = dryingReserve(layers, year, 'siding');
    const paperPa = saturated(15 + (15 * 0.19) / 3.33);
    const through = (2e-10 * (paperPa - 0.5 * saturated(15))) / 30.1;
    expect(toInsideKgPerM2 / (through * SECONDS)).toBeCloseTo(1, 6);
  });
  it('asks for a layer that is there and for twelve months', () => {
    expect(() => dryingReserve(wall(1, 1), heated(3), 'foam')).toThrow('"board", "wool"');
    expect(() => dryingReserve(wall(1, 1), heated(3), 'board')).toThrow('inside of it');
    expect(() => dryingReserve(wall(1, 1), heated(3).slice(1), 'membrane')).toThrow('found 11');
  });
});
