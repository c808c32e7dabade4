import { describe, expect, it } from 'vitest';
import { hiddenShare, liesInside, meets } from './hiding.js';

const square = (u: number, v: number, size = 10) => ({ u0: u, v0: v, u1: u + size, v1: v + size });

describe('what a later piece hides', () => {
  it('is the share of the area, on the face and inside the opening apart', () => {
    // A quarter of one 10 x 10 square of two; half of a sill of 20 x 10.
    const piece = { face: [square(0, 0), square(100, 0)], returns: { sill: [{ u0: 0, v0: 0, u1: 20, v1: 10 }] } };
    const by = { face: [square(5, 5)], returns: { sill: [square(0, 0)] } };
    expect(hiddenShare(piece, by)).toEqual({ face: 0.125, inside: 0.5 });
  });

  it('is nothing where the two only touch, or lie on different returns', () => {
    const piece = { face: [square(0, 0)], returns: { sill: [square(0, 0)] } };
    const by = { face: [square(10, 0)], returns: { head: [square(0, 0)] } };
    expect(hiddenShare(piece, by)).toEqual({ face: 0, inside: 0 });
    expect(meets(piece, by)).toBe(false);
  });

  it('meets on the face alone or inside alone', () => {
    const onFace = { face: [square(0, 0)], returns: {} };
    const inside = { face: [], returns: { head: [square(0, 0)] } };
    expect(meets(onFace, { face: [square(9, 9)], returns: {} })).toBe(true);
    expect(meets(inside, { face: [], returns: { head: [square(9, 9)] } })).toBe(true);
    expect(meets(onFace, inside)).toBe(false);
  });

  it('never exceeds the whole, and a piece without size is hidden by nothing', () => {
    const twice = { face: [square(0, 0), square(0, 0)], returns: {} };
    expect(hiddenShare({ face: [square(0, 0)], returns: {} }, twice).face).toBe(1);
    expect(hiddenShare({ face: [], returns: {} }, twice)).toEqual({ face: 0, inside: 0 });
  });

  it('knows what lies inside the opening', () => {
    expect(liesInside({ face: [square(0, 0)], returns: { sill: [] } })).toBe(false);
    expect(liesInside({ face: [], returns: { 'left jamb': [square(0, 0)] } })).toBe(true);
  });
});
