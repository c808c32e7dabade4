/** Lengths of contact worked out by hand on paper; arithmetic on rectangles needs no published source. */
import { describe, expect, it } from 'vitest';
import { lapLineMm } from './contact.js';
import type { Rect } from '../geometry/types.js';

const r = (u0: number, v0: number, u1: number, v1: number): Rect => ({ u0, v0, u1, v1 });

describe('the line along which two pieces meet', () => {
  it('is the edge of a course that lies on the course below', () => {
    expect(lapLineMm([r(0, 0, 2000, 900)], [r(0, 850, 2000, 1750)], false)).toBe(2000);
  });
  it('runs around an opening whose flashing laps the field on four sides', () => {
    // Flashing 150 wide around 1000 x 1500; the field begins 100 from the opening: 2 x (1200 + 1700).
    const ring = [r(-150, -150, 1150, 0), r(-150, 1500, 1150, 1650), r(-150, 0, 0, 1500), r(1000, 0, 1150, 1500)];
    const field = [
      r(-500, -500, 1500, -100),
      r(-500, 1600, 1500, 2000),
      r(-500, -100, -100, 1600),
      r(1100, -100, 1500, 1600),
    ];
    expect(lapLineMm(ring, field, false)).toBe(5800);
    expect(lapLineMm(field, ring, false)).toBe(5800);
  });
  it('is nothing for pieces that only touch, unless touching joins them', () => {
    expect(lapLineMm([r(0, 0, 100, 100)], [r(100, 20, 200, 300)], false)).toBe(0);
    expect(lapLineMm([r(0, 0, 100, 100)], [r(100, 20, 200, 300)], true)).toBe(80);
  });
  it('is nothing for pieces apart', () => {
    expect(lapLineMm([r(0, 0, 100, 100)], [r(101, 0, 200, 100)], true)).toBe(0);
    expect(lapLineMm([], [r(0, 0, 1, 1)], true)).toBe(0);
  });
  it('is the length of a strip that lies wholly on another of the same outline', () => {
    expect(lapLineMm([r(0, 0, 100, 900)], [r(0, 0, 100, 900)], false)).toBe(900);
  });
});
