/** Random walls and years for properties. */
import fc from 'fast-check';
import { outdoorAir, type MonthOfAir } from '../interior-climate.js';
import { vaporPressurePa } from '../psychrometrics.js';
import type { MoistureLayer } from '../resistance.js';

/**
 * Even between two ends. A random floating-point number is even over its bits, which crowds it at zero; a wall made
 * of those is the same wall again and again.
 */
export const even = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1_000_000 }).map((i) => min + ((max - min) * i) / 1_000_000);
/** Even in the logarithm: thin and thick, open and tight alike. */
const spread = (min: number, max: number): fc.Arbitrary<number> => even(Math.log(min), Math.log(max)).map(Math.exp);

const anyLayer = fc.oneof(
  fc.record({ rM2KW: spread(0.02, 0.3), sdM: spread(0.05, 3) }), // board
  fc.record({ rM2KW: spread(0.5, 3), sdM: spread(0.05, 2) }), // insulation
  fc.record({ rM2KW: fc.constant(0), sdM: spread(0.02, 50) }), // film
);

/** One to six layers named a, b, c ... */
export const anyWall: fc.Arbitrary<MoistureLayer[]> = fc
  .array(anyLayer, { minLength: 1, maxLength: 6 })
  .filter((layers) => layers.some((l) => l.rM2KW > 0))
  .map((layers) => layers.map((l, i) => ({ ...l, id: 'abcdef'[i] as string, storage: 'other' as const })));

/** Insulating masonry behind a tight face: what condenses, condenses over a stretch of the first layer. */
export const thickWall: fc.Arbitrary<MoistureLayer[]> = fc
  .record({ rM2KW: spread(1, 4), sdM: spread(0.5, 5), faceSdM: spread(2, 20) })
  .map(({ rM2KW, sdM, faceSdM }) => [
    { id: 'masonry', rM2KW, sdM, storage: 'other' },
    { id: 'face', rM2KW: 0.02, sdM: faceSdM, storage: 'non-absorbing' },
  ]);

const season = fc.record({
  meanC: even(-5, 24),
  swingK: even(2, 18),
  humidities: fc.array(even(0.4, 0.95), { minLength: 12, maxLength: 12 }),
  inside: fc.array(
    fc.record({
      temperatureC: even(19, 25),
      humidity: even(0.25, 0.75),
    }),
    { minLength: 12, maxLength: 12 },
  ),
});

/** Any year from subarctic to subtropical, with room air that changes at will. */
export const anyYear: fc.Arbitrary<MonthOfAir[]> = season.map(({ meanC, swingK, humidities, inside }) =>
  humidities.map((humidity, m) => ({
    outside: outdoorAir(meanC - swingK * Math.cos((2 * Math.PI * m) / 12), humidity),
    inside: {
      temperatureC: inside[m]!.temperatureC,
      vaporPressurePa: vaporPressurePa(inside[m]!.temperatureC, inside[m]!.humidity),
    },
  })),
);

/** A year in which the room is always the warmer and the damper side. */
export const heatingYear: fc.Arbitrary<MonthOfAir[]> = season.map(({ meanC, swingK, humidities, inside }) =>
  humidities.map((humidity, m) => {
    const outdoorC = Math.min(18, meanC - 4 - swingK * Math.cos((2 * Math.PI * m) / 12));
    const outside = outdoorAir(outdoorC, humidity);
    const room = vaporPressurePa(20, inside[m]!.humidity);
    return { outside, inside: { temperatureC: 20, vaporPressurePa: Math.max(room, outside.vaporPressurePa) } };
  }),
);
