import { describe, expect, it } from 'vitest';
import { GENERIC_MATERIALS } from './data/materials.js';
import {
  knownMaterials,
  materialNamed,
  permeancePermAt,
  permeanceProvenanceText,
  provenanceOf,
  rPerInch,
} from './materials.js';

describe('a generic material', () => {
  it.each([
    ['OSB', 'oriented strand board'],
    ['7/16 in. oriented strand board', 'oriented strand board'],
    ['glass-mat gypsum sheathing', 'gypsum sheathing'],
    ['Gypsum wall board', 'gypsum board'],
    ['polyiso, foil-faced', 'foil-faced polyisocyanurate'],
    ['extruded polystyrene (XPS) boards', 'extruded polystyrene'],
    ['polyethylene film', 'polyethylene sheet'],
    ['kraft-faced glass fiber batt', 'mineral wool'],
    ['clay bricks', 'clay brick'],
    ['variable-permeance polyamide film', 'responsive membrane'],
    ['enamel paint', 'latex paint'],
  ])('is found in the words "%s": %s', (text, name) => {
    expect(materialNamed(text)?.name).toBe(name);
  });

  it('is not guessed from words the table does not hold', () => {
    for (const text of ['composite panel', 'sheathing', '', 'glassy', 'interior finish'])
      expect(materialNamed(text), text).toBeUndefined();
  });

  it('is found by every name and alias of its own row', () => {
    for (const material of GENERIC_MATERIALS)
      for (const name of [material.name, ...material.aliases]) expect(materialNamed(name), name).toBe(material);
  });

  it('has names that are each given once', () => {
    const names = knownMaterials().map((n) => n.toLowerCase());
    expect(new Set(names).size).toBe(names.length);
  });
});

describe('its values', () => {
  it('halve in permeance at twice the thickness', () => {
    const xps = materialNamed('XPS');
    if (xps === undefined) throw new Error('XPS is in the table');
    // 1.2 perm-in, US handbook value, from memory.
    expect(permeancePermAt(xps, 25.4)?.[0]).toBeCloseTo(1.2, 9);
    expect(permeancePermAt(xps, 50.8)?.[1]).toBeCloseTo(0.6, 9);
    expect(permeancePermAt(xps, undefined)).toBeUndefined();
  });
  it('keep the permeance of a sheet whatever its thickness', () => {
    const sheet = materialNamed('polyethylene');
    if (sheet === undefined) throw new Error('polyethylene is in the table');
    expect(permeancePermAt(sheet, 0.15)).toEqual([0.03, 0.08]);
  });
  it('credit R per inch as printed on the information sheets: XPS 5, EPS 4, foil-faced polyiso 6.5', () => {
    expect(['XPS', 'EPS', 'foil-faced polyiso'].map((n) => rPerInch(materialNamed(n) as never))).toEqual([5, 4, 6.5]);
  });
  it('otherwise credit no more than the larger conductivity gives', () => {
    // 0.040 W/(m K) is 0.277 Btu-in/(h ft2 degF): R 3.6 per inch.
    expect(rPerInch(materialNamed('mineral wool board') as never)).toBeCloseTo(3.606, 3);
  });
  it('call only that value seen which was: the R per inch of five insulations, the class of five facings', () => {
    const seen = (value: 'rPerInch' | 'deemed'): string[] =>
      GENERIC_MATERIALS.filter((material) => provenanceOf(material, value) === 'seen').map(({ name }) => name);
    expect(seen('rPerInch')).toEqual([
      'cellulose',
      'expanded polystyrene',
      'extruded polystyrene',
      'foil-faced polyisocyanurate',
      'closed-cell spray foam',
    ]);
    expect(seen('deemed')).toEqual([
      'polyethylene sheet',
      'unperforated foil',
      'kraft facing',
      'vapor retarder paint',
      'latex paint',
    ]);
    for (const material of GENERIC_MATERIALS) {
      expect(provenanceOf(material, 'permeance'), material.name).toBe('from memory, confirm');
      if (material.seen !== undefined) expect(material[material.seen.value], material.name).toBeDefined();
    }
  });
  it('tell how the permeance is known beside what was seen', () => {
    const told = (name: string): string => permeanceProvenanceText(materialNamed(name) as never);
    expect(told('latex paint')).toBe('class seen; permeance from memory, confirm');
    expect(told('XPS')).toBe('R per inch seen; permeance from memory, confirm');
    expect(told('OSB')).toBe('from memory, confirm');
  });
  it('keep each spread in order', () => {
    for (const { name, lambdaWPerMK, permeancePerm, permeabilityPermIn } of GENERIC_MATERIALS) {
      for (const spread of [lambdaWPerMK, permeancePerm, permeabilityPermIn])
        if (spread !== undefined) expect(spread[0], name).toBeLessThanOrEqual(spread[1]);
    }
  });
});
