/** Which source gives way to which: what follows from the pairs, and never the code. */
import { describe, expect, it } from 'vitest';
import type { OfferedLimit } from './limits.js';
import { orderOf, partedBy } from './precedence.js';
import type { Basis } from './result.js';
import type { LimitSource, Precedence } from '../model/types.js';

const at = {
  document: {
    kind: 'project' as const,
    id: 'p',
    file: { uri: 'p.yaml', text: '' },
    data: {},
    spanOf: () => ({ start: 0, end: 0 }),
  },
  path: [],
};
const pair = (source: LimitSource, over: LimitSource): Precedence => ({ at, source, over });
const limit = (basis: Basis, value: number): OfferedLimit => ({
  value,
  text: `${value} mm`,
  source: { basis, citation: basis, provenance: 'seen' },
});

describe('an order of precedence', () => {
  it('reaches through others, and in one direction only', () => {
    const order = orderOf([pair('specification', 'product data'), pair('product data', 'guide')]);
    expect(order('specification', 'guide')).toBe(true);
    expect(order('guide', 'specification')).toBe(false);
    expect(order('specification', 'standard')).toBe(false);
  });
  it('never makes the code give way, said outright or through another source', () => {
    const order = orderOf([
      pair('specification', 'code'),
      pair('product data', 'specification'),
      pair('specification', 'standard'),
    ]);
    const { standing, overruled } = partedBy(order, [
      limit('code', 9),
      limit('standard', 7),
      limit('specification', 5),
      limit('product data', 3),
    ]);
    expect(standing.map((l) => l.source.basis)).toEqual(['code', 'product data']);
    expect(overruled.map((l) => l.source.basis)).toEqual(['standard', 'specification']);
  });
});
