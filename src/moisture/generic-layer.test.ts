import { describe, expect, it } from 'vitest';
import { GENERIC_MATERIALS, type GenericMaterial } from '../vapor/data/materials.js';
import { materialNamed } from '../vapor/materials.js';
import { genericLayer, storageOf } from './generic-layer.js';

const material = (name: string): GenericMaterial => {
  const found = materialNamed(name);
  if (found === undefined) throw new Error(`${name} is in the table`);
  return found;
};

describe('a generic layer', () => {
  it('is taken by its US permeance where the table has one: OSB of 0.75 to 2 perm (from memory)', () => {
    const { sdM } = genericLayer(material('OSB'), 12, 'dry')!;
    // 2e-10 kg/(m s Pa) over 57.2135 ng/(Pa s m2) is 3.4957 m for 1 perm.
    expect(sdM[0]).toBeCloseTo(3.4957 / 2, 3);
    expect(sdM[1]).toBeCloseTo(3.4957 / 0.75, 3);
  });
  it('is taken by its vapor resistance factor where it has none: 12 mm of particleboard, 50 dry and 15 wet', () => {
    expect(genericLayer(material('particleboard'), 12, 'dry')!.sdM).toEqual([0.6, 0.6]);
    expect(genericLayer(material('particleboard'), 12, 'wet')!.sdM[0]).toBeCloseTo(0.18, 9);
  });
  it('is more open in the wet cup, in the ratio of the two factors where only the dry one is printed', () => {
    expect(genericLayer(material('OSB'), 12, 'wet')!.sdM[1]).toBeCloseTo(((3.4957 / 0.75) * 30) / 50, 3);
    expect(genericLayer(material('kraft facing'), undefined, 'wet')!.sdM[1]).toBeCloseTo(3.4957, 3); // 1 perm
    expect(genericLayer(material('kraft facing'), undefined, 'dry')!.sdM[1]).toBeCloseTo(3.4957 / 0.3, 3);
  });
  it('is credited with no more thermal resistance than the larger conductivity gives', () => {
    expect(genericLayer(material('mineral wool batt'), 140, 'dry')!.rM2KW).toBeCloseTo(0.14 / 0.04, 4);
    expect(genericLayer(material('polyethylene'), undefined, 'dry')!.rM2KW).toBeUndefined();
  });
  it('is finite for metal, and unknown where the table has no vapor resistance', () => {
    expect(genericLayer(material('metal panel'), 0.8, 'dry')!.sdM).toEqual([1500, 1500]);
    expect(genericLayer(material('vinyl siding'), 2, 'dry')).toBeUndefined();
    expect(genericLayer(material('XPS'), undefined, 'dry')).toBeUndefined();
  });
  it('refuses a layer without thickness', () => {
    expect(() => genericLayer(material('OSB'), 0, 'dry')).toThrow('in mm');
  });
});

describe('storage', () => {
  it.each([
    ['softwood', 'wood'],
    ['OSB', 'wood panel'],
    ['plywood', 'wood panel'],
    ['fiberboard', 'wood panel'],
    ['mineral wool', 'non-absorbing'],
    ['XPS', 'non-absorbing'],
    ['polyethylene', 'non-absorbing'],
    ['vapor-open membrane', 'non-absorbing'],
    ['bituminous membrane', 'non-absorbing'],
    ['metal panel', 'non-absorbing'],
    ['gypsum board', 'other'],
    ['clay brick', 'other'],
    ['cellulose', 'other'],
    ['latex paint', 'other'],
  ])('of %s is "%s"', (name, storage) => expect(storageOf(material(name))).toBe(storage));
  it('is decided for every material of the table', () => {
    for (const m of GENERIC_MATERIALS)
      expect(['wood', 'wood panel', 'non-absorbing', 'other'], m.name).toContain(storageOf(m));
  });
});
