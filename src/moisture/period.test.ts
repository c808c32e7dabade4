import { describe, expect, it } from 'vitest';
import { periodMethod } from './period.js';
import { amountLimits } from './limits.js';
import { flowKgPerM2S } from './tangent.js';
import type { MoistureLayer } from './resistance.js';
import { layer } from './testing/synthetic-climate.js';

// A timber panel wall, worked example a of a building-physics textbook, chapter 13.2.5 (DIN 4108-3; seen at second
// hand, arithmetic checked). The sd of the retarder follows from the printed total of 5.01 m.
const EXAMPLE: readonly MoistureLayer[] = [
  layer('inner particleboard', 0.15, 0.95),
  layer('retarder', 0, 2),
  { ...layer('mineral wool', 4, 0.16), storage: 'non-absorbing' },
  // 19 mm of 700 kg/m3.
  { ...layer('outer particleboard', 0.15, 1.9), storage: 'wood panel', areaMassKgPerM2: 13.3 },
];

describe('the period method on the published timber wall', () => {
  const result = periodMethod(EXAMPLE);
  const place = result.places[0]!;

  it('has the printed temperatures: 18.6, 17.8, 17.8, -4.0, -4.8 degC', () => {
    const faces = result.section.planes.filter((p) => p.inner !== p.outer).map((p) => result.temperaturesC[p.index]!);
    for (const [i, t] of [18.6, 17.8, 17.8, -4, -4.8].entries()) expect(Math.abs(faces[i]! - t)).toBeLessThan(0.05);
    expect(result.section.sdTotalM).toBeCloseTo(5.01, 9);
    expect(result.section.rTotalM2KW + 0.25 + 0.04).toBeCloseTo(4.59, 9);
  });
  it('condenses at one plane, between wool and outer board', () => {
    expect(result.places).toHaveLength(1);
    expect(place.planes.map((p) => p.name)).toEqual(['between mineral wool and outer particleboard']);
  });
  it('condenses 3.48e-8 kg/(m2 s) and 0.27 kg/m2, to 0.6 % for the rounding of the printed pressures', () => {
    expect(Math.abs(place.rateKgPerM2S / 3.48e-8 - 1)).toBeLessThan(0.006);
    expect(Math.abs(place.condensesKgPerM2 / 0.27 - 1)).toBeLessThan(0.006);
    // Without that rounding: two other programs.
    expect(Math.abs(place.rateKgPerM2S / 3.4599e-8 - 1)).toBeLessThan(1e-4);
    expect(Math.abs(place.condensesKgPerM2 - 0.269)).toBeLessThan(5e-5);
  });
  it('with the printed 437 Pa at the plane condenses the printed 3.48e-8, to 0.1 %', () => {
    const rate = flowKgPerM2S(1168, 437, 3.11) - flowKgPerM2S(437, 321, 1.9);
    expect(Math.abs(rate / 3.48e-8 - 1)).toBeLessThan(0.001);
  });
  it('could dry 8.48e-8 kg/(m2 s) and 0.659 kg/m2, and so keeps nothing', () => {
    expect(Math.abs(place.dryingRateKgPerM2S / 8.48e-8 - 1)).toBeLessThan(0.001);
    expect(Math.abs(place.canDryKgPerM2 - 0.659)).toBeLessThan(5e-4);
    expect(result.remainsKgPerM2).toBe(0);
  });
  it('passes as printed: 0.5 kg/m2 beside what does not absorb, 3 % of the mass of the board', () => {
    const limits = amountLimits(place.planes[0]!);
    expect(limits.map((l) => l.mostKgPerM2)).toEqual([0.03 * 13.3, 0.5, 1]);
    expect(place.condensesKgPerM2).toBeLessThan(limits[0]!.mostKgPerM2!);
    // The book prints "0.02 %", a slip for 2 %.
    expect(place.condensesKgPerM2 / 13.3).toBeCloseTo(0.0203, 3);
  });
});

describe('the period method otherwise', () => {
  it('finds nothing in a wall that is tight inside and open outside', () => {
    const { places, remainsKgPerM2 } = periodMethod([
      layer('film', 0, 100),
      layer('wool', 4, 0.2),
      layer('wrap', 0, 0.1),
    ]);
    expect(places).toEqual([]);
    expect(remainsKgPerM2).toBe(0);
  });
  it('dries a roof faster than a wall: 2000 Pa in place of 1700 above 1200', () => {
    const [wall, roof] = (['wall', 'roof'] as const).map((e) => periodMethod(EXAMPLE, e).places[0]!);
    expect(roof!.canDryKgPerM2 / wall!.canDryKgPerM2).toBeCloseTo(800 / 500, 9);
  });
  it('takes a wet stretch within one layer as one place that dries from its middle', () => {
    const { places } = periodMethod([layer('lining', 1, 0.02), layer('masonry', 1.5, 1.5), layer('face', 0.02, 30)]);
    expect(places).toHaveLength(1);
    const [first, last] = [places[0]!.planes[0]!, places[0]!.planes.at(-1)!];
    expect(places[0]!.planes.length).toBeGreaterThan(2);
    // From the lining to the face: all of the masonry.
    expect([first.sdFromInsideM, last.sdFromInsideM]).toEqual([0.02, 1.52]);
    const middleM = (first.sdFromInsideM + last.sdFromInsideM) / 2;
    expect(places[0]!.dryingRateKgPerM2S).toBeCloseTo(2e-10 * (500 / middleM + 500 / (31.52 - middleM)), 15);
  });
  it('gives two planes one balance each; neither dries through the other while it is wet', () => {
    const wall = [layer('board', 0.05, 0.1), layer('wool', 2, 0.1), layer('film', 0, 3), layer('outer wool', 2, 0.1), layer('face', 0, 30)]; // prettier-ignore
    const { places, remainsKgPerM2 } = periodMethod(wall);
    expect(places.map((p) => p.planes.map((q) => q.name))).toEqual([['between wool and film'], ['between outer wool and face']]); // prettier-ignore
    expect(places[0]!.dryingRateKgPerM2S).toBeCloseTo((2e-10 * 500) / 0.2, 15);
    expect(places[1]!.dryingRateKgPerM2S).toBeCloseTo((2e-10 * 500) / 30, 15);
    // Once the inner plane is dry the outer one dries inward too, through 3.3 m, for the rest of the ninety days.
    const dryAfterS = places[0]!.condensesKgPerM2 / places[0]!.dryingRateKgPerM2S;
    const outwardKg = (2e-10 * 500 * 7_776_000) / 30;
    const inwardKg = (2e-10 * 500 * (7_776_000 - dryAfterS)) / 3.3;
    expect(dryAfterS).toBeLessThan(7_776_000);
    expect(remainsKgPerM2).toBeCloseTo(Math.max(0, places[1]!.condensesKgPerM2 - outwardKg - inwardKg), 12);
  });
});
