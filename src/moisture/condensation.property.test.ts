import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { yearOfWater } from './condensation.js';
import { MONTH_DAYS, SECONDS_PER_DAY, STILL_AIR_KG_PER_M_S_PA } from './data/air.js';
import type { MonthOfAir } from './interior-climate.js';
import { saturationPressurePa } from './psychrometrics.js';
import { saturationsPa, sectionOf, type MoistureLayer } from './resistance.js';
import { flowsOf, touchedPlanes } from './tangent.js';
import { gainsOf, relaxedPa } from './testing/obstacle.js';
import { anyWall, anyYear, heatingYear, thickWall } from './testing/random-walls.js';
import { layer } from './testing/synthetic-climate.js';

const SURFACES = { insideM2KW: 0.13, outsideM2KW: 0.04 };

describe('any wall in any year', () => {
  it('gains and loses water as a second solver says, on 1,000 random walls (projected Gauss-Seidel)', () => {
    let wetted = 0;
    fc.assert(
      fc.property(anyWall, anyYear, fc.nat(11), fc.array(fc.nat(40), { maxLength: 3 }), (wall, year, m, marks) => {
        const section = sectionOf(wall);
        const { inside, outside } = year[m]!;
        const ceilingPa = saturationsPa(section, SURFACES, inside.temperatureC, outside.temperatureC);
        const last = ceilingPa.length - 1;
        ceilingPa[0] = Math.min(ceilingPa[0]!, inside.vaporPressurePa);
        ceilingPa[last] = Math.min(ceilingPa[last]!, outside.vaporPressurePa);
        const wet = new Set(marks.filter((k) => k > 0 && k < last));
        const touched = touchedPlanes(section.sdM, ceilingPa, (k) => wet.has(k));
        const found = new Array<number>(last + 1).fill(0);
        for (const g of flowsOf(section.sdM, ceilingPa, touched).gains) found[g.plane] = g.rateKgPerM2S;
        const problem = { sdM: section.sdM, ceilingPa, wet };
        const expected = gainsOf(problem, relaxedPa(problem), STILL_AIR_KG_PER_M_S_PA.value);
        if (found.some((g) => g > 1e-12)) wetted++;
        for (const [k, g] of expected.entries())
          // 1e-13 kg/(m2 s) is 3 mg/m2 in a year.
          expect(Math.abs(found[k]! - g), section.planes[k]!.name).toBeLessThan(1e-13 + 1e-6 * Math.abs(g));
      }),
      { numRuns: 1000, endOnFailure: true },
    );
    // The walls are such that many of them condense: the agreement is not one of zeros.
    expect(wetted).toBeGreaterThan(200);
  });

  it('ends where small steps in time end, on 60 random walls', () => {
    fc.assert(
      fc.property(anyWall, anyYear, (wall, year) => {
        const result = yearOfWater(wall, year);
        if (result.outcome === 'none') return;
        const { totals, overdrawnKg } = stepped(wall, year, result.startMonth! - 1, 500);
        // What a step takes from a plane beyond what was there is the error of stepping, and all of it.
        for (const [i, kg] of totals.entries())
          expect(Math.abs(result.months[i]!.totalKgPerM2 - kg)).toBeLessThan(overdrawnKg * 1.001 + 1e-9);
      }),
      { numRuns: 60, endOnFailure: true },
    );
  });

  it('loses no water: what enters less what leaves is what stays', () => {
    fc.assert(
      fc.property(anyWall, anyYear, (wall, year) => {
        for (const m of yearOfWater(wall, year).months) {
          const exchanged = Math.abs(m.inKgPerM2) + Math.abs(m.outKgPerM2) + m.totalKgPerM2;
          expect(Math.abs(m.inKgPerM2 - m.outKgPerM2 - m.gainKgPerM2)).toBeLessThan(1e-10 * exchanged + 1e-15);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('holds as much water when it is turned around with its surfaces and its air', () => {
    fc.assert(
      fc.property(anyWall, anyYear, (wall, year) => {
        const one = yearOfWater(wall, year, { surfaces: SURFACES });
        const other = yearOfWater(
          wall.toReversed(),
          year.map(({ inside, outside }) => ({ inside: outside, outside: inside })),
          { surfaces: { insideM2KW: SURFACES.outsideM2KW, outsideM2KW: SURFACES.insideM2KW } },
        );
        expect(other.outcome).toBe(one.outcome);
        expect(other.peakKgPerM2).toBeCloseTo(one.peakKgPerM2, 9);
        expect(other.residualKgPerM2).toBeCloseTo(one.residualKgPerM2, 9);
      }),
      { numRuns: 300 },
    );
  });

  describe('that condenses within a thick layer', () => {
    const peak = (layers: readonly MoistureLayer[], year: readonly MonthOfAir[], mostSliceM2KW: number): number =>
      yearOfWater(layers, year, { mostSliceM2KW }).peakKgPerM2;
    const halved = ([thick, ...rest]: readonly MoistureLayer[]): MoistureLayer[] => [
      halfOf(thick!, 'inner half'),
      halfOf(thick!, 'outer half'),
      ...rest,
    ];

    it('holds the same when the layer is given as two halves that are cut at the same planes', () => {
      fc.assert(
        fc.property(thickWall, heatingYear, fc.integer({ min: 1, max: 8 }), (wall, year, slices) => {
          const sliceM2KW = wall[0]!.rM2KW / (2 * slices);
          expect(peak(halved(wall), year, sliceM2KW)).toBeCloseTo(peak(wall, year, sliceM2KW), 9);
        }),
        { numRuns: 100 },
      );
    });
    it('gains water at a rate that changes by no more than the cutting itself when the halves are cut elsewhere', () => {
      let differ = 0;
      fc.assert(
        fc.property(thickWall, heatingYear, fc.nat(11), (wall, year, m) => {
          const [thick, face] = wall as [MoistureLayer, MoistureLayer];
          const slices = [Math.ceil(thick.rM2KW / 0.25 - 1e-9), 2 * Math.ceil(thick.rM2KW / 0.5 - 1e-9)] as const;
          const [whole, halves] = [gainKgPerM2S(wall, year[m]!), gainKgPerM2S(halved(wall), year[m]!)];
          // Cut at all planes of both and seven more between: planes only take pressure away, so whatever the cut,
          // no more condenses than at all planes together.
          const limit = gainKgPerM2S([{ ...thick, slices: slices[0] * slices[1] * 8 }, face], year[m]!);
          const cutting = limit - Math.min(whole, halves);
          expect(cutting).toBeGreaterThanOrEqual(-1e-18);
          expect(Math.abs(whole - halves)).toBeLessThanOrEqual(cutting + 1e-18);
          if (whole !== halves) differ++;
        }),
        { numRuns: 200 },
      );
      expect(differ).toBeGreaterThan(10);
    });
    it('and, cut five times as fine, changes by less than a fifth in the peak of the year', () => {
      let changed = 0;
      let changedFine = 0;
      fc.assert(
        fc.property(thickWall, heatingYear, (wall, year) => {
          changed += Math.abs(peak(wall, year, 0.25) - peak(halved(wall), year, 0.25));
          changedFine += Math.abs(peak(wall, year, 0.05) - peak(halved(wall), year, 0.05));
        }),
        { numRuns: 200 },
      );
      // The error goes with the square of the slice: a twenty-fifth is expected of the sum.
      expect(changed).toBeGreaterThan(1e-3);
      expect(changedFine).toBeLessThan(changed / 5);
    });
  });
});

/** Rate at which a dry wall gains water in the weather of a month. */
function gainKgPerM2S(layers: readonly MoistureLayer[], { inside, outside }: MonthOfAir): number {
  const section = sectionOf(layers);
  const ceilingPa = saturationsPa(section, SURFACES, inside.temperatureC, outside.temperatureC);
  ceilingPa[0] = Math.min(ceilingPa[0]!, inside.vaporPressurePa);
  ceilingPa[ceilingPa.length - 1] = Math.min(ceilingPa.at(-1)!, outside.vaporPressurePa);
  const { gains } = flowsOf(section.sdM, ceilingPa, touchedPlanes(section.sdM, ceilingPa));
  return gains.reduce((sum, g) => sum + g.rateKgPerM2S, 0);
}

function halfOf(whole: MoistureLayer, half: string): MoistureLayer {
  return layer(`${half} of ${whole.id}`, whole.rM2KW / 2, (whole as { sdM: number }).sdM / 2);
}

/**
 * Total at the end of each month by small steps and nothing else: rates from the second solver, overdrawn planes set
 * to zero.
 */
function stepped(
  wall: readonly MoistureLayer[],
  year: readonly MonthOfAir[],
  start: number,
  steps: number,
): { totals: number[]; overdrawnKg: number } {
  const section = sectionOf(wall);
  const water = new Array<number>(section.sdM.length).fill(0);
  let overdrawnKg = 0;
  const totals = year.map((_, i) => {
    const m = (start + i) % 12;
    const { inside, outside } = year[m]!;
    const ceilingPa = saturationsPa(section, SURFACES, inside.temperatureC, outside.temperatureC);
    ceilingPa[0] = Math.min(ceilingPa[0]!, inside.vaporPressurePa);
    ceilingPa[ceilingPa.length - 1] = Math.min(
      saturationPressurePa(outside.temperatureC),
      outside.vaporPressurePa,
      ceilingPa.at(-1)!,
    );
    const seconds = (MONTH_DAYS[m]! * SECONDS_PER_DAY) / steps;
    // The same planes are wet in most steps: solve once for each set of them.
    const solved = new Map<string, number[]>();
    for (let step = 0; step < steps; step++) {
      const wet = water.flatMap((kg, k) => (kg > 0 ? [k] : []));
      let rates = solved.get(wet.join());
      if (rates === undefined) {
        const problem = { sdM: section.sdM, ceilingPa, wet: new Set(wet) };
        rates = gainsOf(problem, relaxedPa(problem), STILL_AIR_KG_PER_M_S_PA.value);
        solved.set(wet.join(), rates);
      }
      for (const [k, g] of rates.entries()) {
        // Flows of this size are the rounding of the relaxation.
        const next = water[k]! + (Math.abs(g) < 1e-14 ? 0 : g) * seconds;
        water[k] = Math.max(0, next);
        overdrawnKg += Math.max(0, -next);
      }
    }
    return water.reduce((a, b) => a + b, 0);
  });
  return { totals, overdrawnKg };
}
