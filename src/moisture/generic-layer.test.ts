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
  it('spans both systems: 12 mm of OSB, mu 50 dry and 0.75 to 2 perm (from memory)', () => {
    const { sdM } = genericLayer(material('OSB'), 12, 'dry')!;
    expect(sdM[0]).toBeCloseTo(0.6, 9); // 50 x 0.012
    expect(sdM[1]).toBeCloseTo(3.4957 / 0.75, 3);
  });
  it('is more open in the wet cup', () => {
    expect(genericLayer(material('OSB'), 12, 'wet')!.sdM[0]).toBeCloseTo(0.36, 9); // 30 x 0.012
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
