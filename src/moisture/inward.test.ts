import { describe, expect, it } from 'vitest';
import { inwardDrive, solarRiseK, type Reservoir } from './inward.js';
import { outdoorAir } from './interior-climate.js';
import { layer } from './testing/synthetic-climate.js';

// No published case was found. A brick veneer after rain, in a warm humid summer, on a cooled house with polyethylene
// behind the gypsum: the case that the trade warns of. Figures by hand, from the ISO 13788 formula written out.
const AIR = { inside: outdoorAir(24, 0.5), outside: outdoorAir(30, 0.7) };
const SUNNY: Reservoir = { riseK: 12, wetness: 1, arrives: 1 };
const SIX_HOURS = 6 * 3600;
const WITH_POLY = [layer('gypsum', 0.05, 0.1), layer('poly', 0, 50), layer('wool', 2.4, 0.14), layer('sheathing', 0.1, 0.2)]; // prettier-ignore
const WITH_PAINT = WITH_POLY.map((l) => (l.id === 'poly' ? layer('paint', 0, 0.1) : l));
const saturated = (t: number): number => 610.5 * Math.exp((17.269 * t) / (237.3 + t));

describe('sun on a wet cladding', () => {
  it('warms it by absorptance x irradiance x 0.04 m2 K/W: 0.7 x 430 W/m2 is 12 K (sol-air temperature, from memory)', () => {
    expect(solarRiseK(0.7, 430)).toBeCloseTo(12.04, 9);
    expect(() => solarRiseK(70, 430)).toThrow('from 0 to 1');
    expect(() => solarRiseK(0.7, -1)).toThrow('irradiance');
  });
  it('condenses on the outer face of polyethylene, at the rate of flow in less flow on', () => {
    const drive = inwardDrive(WITH_POLY, AIR, SUNNY, SIX_HOURS);
    // 24 to 42 degC over 0.13 + 2.55 + 0.13; the plane lies behind 0.18.
    const planeC = 24 + (18 * 0.18) / 2.81;
    const planePa = saturated(planeC);
    // The sheathing is cooler than the cladding, so its outer face is wet and saturated too.
    const outerFaceC = 42 - (18 * 0.13) / 2.81;
    const arrives = (2e-10 * (saturated(outerFaceC) - planePa)) / 0.34;
    const goesOn = (2e-10 * (planePa - 0.5 * saturated(24))) / 50.1;
    expect(drive.outcome).toBe('condenses');
    expect(drive.outerFaceWet).toBe(true);
    expect(drive.wet.map((w) => w.plane.name)).toEqual(['between poly and wool']);
    expect(drive.wet[0]!.rateKgPerM2S / (arrives - goesOn)).toBeCloseTo(1, 9);
    expect(drive.wet[0]!.kgPerM2 / ((arrives - goesOn) * SIX_HOURS)).toBeCloseTo(1, 9);
    expect(drive.drivePa).toBeCloseTo(saturated(42) - 0.5 * saturated(24), 6);
  });
  it('lets a painted wall pass vapor to the room: far less water, or none, gathers', () => {
    const wetness = (cladding: Partial<Reservoir>, wall = WITH_PAINT): string =>
      inwardDrive(wall, AIR, { ...SUNNY, ...cladding }, SIX_HOURS).outcome;
    const total = (wall: typeof WITH_POLY): number =>
      inwardDrive(wall, AIR, SUNNY, SIX_HOURS).wet.reduce((sum, w) => sum + w.kgPerM2, 0);
    expect(total(WITH_PAINT)).toBeLessThan(total(WITH_POLY) / 1.5);
    // A vented cavity that carries off seven tenths of the drive.
    expect(wetness({ arrives: 0.3 })).not.toBe('condenses');
    expect(wetness({ arrives: 0.3 }, WITH_POLY)).toBe('condenses');
  });
  it('is damp before it is wet, and dry when the drive is outward', () => {
    const at = (wetness: number): ReturnType<typeof inwardDrive> =>
      inwardDrive(WITH_POLY, AIR, { riseK: 0, wetness, arrives: 1 }, SIX_HOURS);
    const damp = at(0.65);
    expect(damp.outcome).toBe('damp');
    expect(damp.dampest!.plane.name).toBe('between poly and wool');
    expect(damp.dampest!.humidity).toBeGreaterThan(0.8);
    expect(damp.dampest!.humidity).toBeLessThan(1);
    const dry = at(0.3);
    expect(dry.outcome).toBe('dry');
    expect(dry.outerFaceWet).toBeUndefined();
    expect(dry.drivePa).toBeLessThan(0);
  });
  it('is the outdoor air alone when nothing of the cladding arrives', () => {
    const none = inwardDrive(WITH_POLY, AIR, { riseK: 0, wetness: 1, arrives: 0 }, SIX_HOURS);
    expect(none.drivePa).toBeCloseTo(0.7 * saturated(30) - 0.5 * saturated(24), 6);
  });
  it('gives no more than the cladding holds', () => {
    const drive = inwardDrive(WITH_POLY, AIR, { ...SUNNY, storedKgPerM2: 0.02 }, SIX_HOURS);
    expect(drive.wet.reduce((sum, w) => sum + w.kgPerM2, 0)).toBeCloseTo(0.02, 12);
    const plenty = inwardDrive(WITH_POLY, AIR, { ...SUNNY, storedKgPerM2: 50 }, SIX_HOURS);
    expect(plenty.wet[0]!.kgPerM2).toBe(inwardDrive(WITH_POLY, AIR, SUNNY, SIX_HOURS).wet[0]!.kgPerM2);
  });
  it('refuses percent for shares', () => {
    expect(() => inwardDrive(WITH_POLY, AIR, { ...SUNNY, wetness: 100 }, 1)).toThrow('wetness');
    expect(() => inwardDrive(WITH_POLY, AIR, { ...SUNNY, arrives: 30 }, 1)).toThrow('arrives');
    expect(() => inwardDrive(WITH_POLY, AIR, SUNNY, -1)).toThrow('in s');
  });
});
