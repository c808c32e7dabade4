import { describe, expect, it } from 'vitest';
import { edgeOverlap, leastSpan, returnDepth, sideOverlap } from './overlap.js';
import type { Rect } from './types.js';

const r = (u0: number, v0: number, u1: number, v1: number): Rect => ({ u0, v0, u1, v1 });
const OPENING = r(0, 0, 1000, 1500);
const BOUNDS = r(-500, -500, 1500, 2000);

describe('overlap beside an opening', () => {
  it('is the least over the straight length of the side', () => {
    const flashing = [r(-150, 0, 0, 1500)];
    const field = [r(-500, 0, -100, 700), r(-500, 700, -120, 1500)];
    expect(sideOverlap(OPENING, 'left jamb', BOUNDS, flashing, field)).toBe(30);
  });
  it('is 0 where a stretch has none', () => {
    expect(sideOverlap(OPENING, 'sill', BOUNDS, [r(0, -150, 1000, 0)], [r(0, -500, 900, -100)])).toBe(0);
  });
  it('does not look at the corners beyond the side', () => {
    expect(sideOverlap(OPENING, 'head', BOUNDS, [r(-150, 1500, 1150, 1650)], [r(0, 1600, 1000, 2000)])).toBe(50);
  });
  it('joins rectangles that touch', () => {
    expect(
      sideOverlap(
        OPENING,
        'right jamb',
        BOUNDS,
        [r(1000, 0, 1100, 1500), r(1100, 0, 1200, 1500)],
        [r(1050, 0, 1500, 1500)],
      ),
    ).toBe(150);
  });
  it('says nothing when the face shown ends within the flashing', () => {
    expect(sideOverlap(OPENING, 'head', r(-500, -500, 1500, 1600), [r(0, 1500, 1000, 1650)], [])).toBeUndefined();
  });
});

describe('cover from an edge inward', () => {
  const strip = [r(0, 100, 400, 250)];
  it('counts only cover that begins at the edge', () => {
    expect(edgeOverlap(strip, 'top', [r(0, 150, 400, 200)], BOUNDS)).toEqual({ leastMm: 0, bareMm: 400 });
    expect(edgeOverlap(strip, 'top', [r(0, 200, 400, 900)], BOUNDS)).toEqual({ leastMm: 50, bareMm: 0 });
    expect(edgeOverlap(strip, 'bottom', [r(0, 0, 400, 180)], BOUNDS)).toEqual({ leastMm: 80, bareMm: 0 });
  });
  it('adds up the width that is bare', () => {
    expect(edgeOverlap(strip, 'top', [r(0, 200, 300, 900)], BOUNDS)).toEqual({ leastMm: 0, bareMm: 100 });
  });
  it('leaves out an edge at the border of the face shown', () => {
    expect(edgeOverlap([r(0, 1900, 400, 2000)], 'top', [], BOUNDS)).toBeUndefined();
  });
});

describe('least span of an overlap', () => {
  it('is measured on the axis asked for', () => {
    expect(leastSpan([r(0, 0, 100, 60)], [r(80, 20, 200, 200)], 'height')).toBe(40);
    expect(leastSpan([r(0, 0, 100, 60)], [r(80, 20, 200, 200)], 'width')).toBe(20);
  });
  it('is 0 for pieces that only touch, and for nothing', () => {
    expect(leastSpan([r(0, 0, 100, 60)], [r(0, 60, 100, 120)], 'height')).toBe(0);
    expect(leastSpan([], [], 'width')).toBe(0);
  });
});

describe('depth on a return', () => {
  it('is the least depth without a break from the wall face', () => {
    expect(returnDepth(0, 1000, [r(0, 0, 1000, 90), r(0, 90, 500, 140)])).toBe(90);
  });
  it('is 0 when a stretch is bare at the wall face', () => {
    expect(returnDepth(0, 1000, [r(0, 0, 900, 140)])).toBe(0);
    expect(returnDepth(0, 1000, [r(0, 20, 1000, 140)])).toBe(0);
  });
});
