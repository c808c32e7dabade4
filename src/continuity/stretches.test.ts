/** Stretches against sets of whole millimeters: the same answers, counted one by one. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joined, leftOver, shared, totalMm, type Stretch } from './stretches.js';

const s = (fromMm: number, toMm: number): Stretch => ({ fromMm, toMm });
const some = fc.array(
  fc
    .tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 1, max: 15 }))
    .map(([from, long]) => s(from, from + long)),
  { maxLength: 6 },
);
const has = (stretches: readonly Stretch[], mm: number): boolean =>
  stretches.some((x) => x.fromMm <= mm && mm < x.toMm);
const EVERY = Array.from({ length: 60 }, (_, mm) => mm);

describe('stretches', () => {
  it('are joined where they touch', () => {
    expect(joined([s(10, 20), s(0, 10), s(30, 40)])).toEqual([s(0, 20), s(30, 40)]);
  });
  it('leave the rest of a whole', () => {
    expect(leftOver(s(0, 100), [s(-5, 10), s(40, 60)])).toEqual([s(10, 40), s(60, 100)]);
  });
  it('agree with counting every millimeter', () => {
    fc.assert(
      fc.property(some, some, (a, b) => {
        const rest = leftOver(s(0, 60), a);
        const both = shared(a, b);
        for (const mm of EVERY) {
          expect(has(rest, mm)).toBe(!has(a, mm));
          expect(has(both, mm)).toBe(has(a, mm) && has(b, mm));
        }
        expect(totalMm(a)).toBe(EVERY.filter((mm) => has(a, mm)).length);
      }),
    );
  });
});
