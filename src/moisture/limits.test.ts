import { describe, expect, it } from 'vitest';
import { AMOUNT_RULES, amountLimits } from './limits.js';
import { CAUTION, METHODS, OMISSIONS, leftOutBy } from './left-out.js';
import { sectionOf, type MoistureLayer, type Plane, type StorageClass } from './resistance.js';

const plane = (inner: StorageClass, outer: StorageClass, outerKgPerM2?: number): Plane => {
  const of = (id: string, storage: StorageClass): MoistureLayer => ({ id, rM2KW: 0.1, sdM: 1, storage });
  const mass = outerKgPerM2 === undefined ? {} : { areaMassKgPerM2: outerKgPerM2 };
  return sectionOf([of('inner', inner), { ...of('outer', outer), ...mass }]).planes[1]!;
};

describe('limits on water at a plane (DIN 4108-3, seen at second hand)', () => {
  it('are 1 kg/m2 in general and 0.5 beside a layer that does not absorb', () => {
    expect(amountLimits(plane('other', 'other')).map((l) => l.mostKgPerM2)).toEqual([1]);
    expect(amountLimits(plane('other', 'non-absorbing')).map((l) => l.mostKgPerM2)).toEqual([0.5, 1]);
  });
  it('are 5 % of the mass of wood and 3 % of that of wood panels', () => {
    expect(amountLimits(plane('other', 'wood', 12))[0]!.mostKgPerM2).toBeCloseTo(0.6, 12);
    expect(amountLimits(plane('other', 'wood panel', 7))[0]!.mostKgPerM2).toBeCloseTo(0.21, 12);
    // Of a heavy layer the general limit is the stricter.
    expect(amountLimits(plane('other', 'wood', 40))[0]!.mostKgPerM2).toBe(1);
  });
  it('stay open, named by layer, when the mass is not known', () => {
    const last = amountLimits(plane('non-absorbing', 'wood panel')).at(-1)!;
    expect(last.mostKgPerM2).toBeUndefined();
    expect(last.layer?.id).toBe('outer');
  });
  it('count a layer that the plane cuts once', () => {
    const [, cut] = sectionOf([{ id: 'foam', rM2KW: 0.5, sdM: 1, storage: 'non-absorbing' }]).planes;
    expect(amountLimits(cut!)).toHaveLength(2);
  });
  it('differ between families, each with its source', () => {
    expect(amountLimits(plane('other', 'other'), 'OENORM B 8110-2').map((l) => l.mostKgPerM2)).toEqual([0.5]);
    expect(amountLimits(plane('other', 'other'), 'recurring')).toEqual([]);
    for (const rule of AMOUNT_RULES) {
      expect(rule.source.citation).not.toBe('');
      expect(Number(rule.mostKgPerM2 !== undefined) + Number(rule.shareOfMass !== undefined)).toBe(1);
    }
  });
});

describe('what is left out', () => {
  it('is told with every method, air leakage first', () => {
    for (const method of METHODS) expect(leftOutBy(method)[0], method).toMatch(/^Air that leaks/);
  });
  it('names what the scope of EN ISO 13788:2012 names: air, liquid water, changing properties, storage (seen)', () => {
    const monthly = leftOutBy('monthly').join(' ');
    for (const word of ['Air that leaks', 'capillary', 'one conductivity and one permeance', 'storage'])
      expect(monthly).toContain(word);
    expect(OMISSIONS.filter((o) => o.source.provenance === 'seen')).toHaveLength(4);
  });
  it('differs by method: only the period method forgets the place, only the inward drive counts the sun', () => {
    expect(METHODS.filter((m) => leftOutBy(m).some((s) => s.includes('the place of the building')))).toEqual([
      'period',
    ]);
    expect(leftOutBy('inward drive').some((s) => s.startsWith('Sun, night sky'))).toBe(false);
  });
  it('ends with whom to ask', () => expect(CAUTION).toMatch(/Local code and licensed practice govern/));
});
