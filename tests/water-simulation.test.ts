/**
 * The search for the run of water against a simulation that knows nothing of cells, stacks or transitions: a drop moves
 * down the wall in small steps and looks at each point which rectangles are there.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutFace } from '../src/geometry/cells.js';
import type { Piece, Rect, WallFace } from '../src/geometry/types.js';
import type { Detail } from '../src/model/types.js';
import { Search } from '../src/water/run/search.js';

/** A wall of nothing but its face. */
const BARE = { layers: [], openings: [], penetrations: [], edges: [], work: [] } as unknown as Detail;
const SIZE = 12;
const STEP = 0.25;

interface Sheet {
  readonly rect: Rect;
  readonly open: boolean;
  /** Slipped under this earlier sheet, where the two meet. */
  readonly under?: number;
}

/** Where a drop ends that starts on the face at height SIZE in the middle of a column: piece it runs on at the foot. */
function simulate(sheets: readonly Sheet[], u: number): { on: number; everBare: boolean } {
  const inside = (r: Rect, v: number): boolean => r.u0 < u && u < r.u1 && r.v0 < v && v < r.v1;
  /** Sheets at a height, inboard first: in order of work, a slipped one right under the sheet that was lifted. */
  const pile = (v: number): number[] => {
    const order: number[] = [];
    sheets.forEach((sheet, k) => {
      if (!inside(sheet.rect, v)) return;
      const lifted = sheet.under === undefined ? -1 : order.indexOf(sheet.under);
      if (lifted < 0) order.push(k);
      else order.splice(lifted, 0, k);
    });
    return order;
  };
  let v = SIZE - STEP / 2;
  let at = pile(v);
  let on = at.length === 0 ? -1 : (at[at.length - 1] as number);
  let everBare = on < 0;
  for (v -= STEP; v > 0; v -= STEP) {
    const below = pile(v);
    const depth = on < 0 ? -1 : at.indexOf(on);
    // What hangs in front of the drop and goes on keeps it in.
    const front = at.slice(depth + 1).find((k) => below.includes(k));
    const room =
      front === undefined
        ? below.length
        : Math.min(
            ...at
              .slice(depth + 1)
              .filter((k) => below.includes(k))
              .map((k) => below.indexOf(k)),
          );
    let seat = on < 0 ? -1 : below.indexOf(on);
    if (seat < 0) {
      const backs = at
        .slice(0, Math.max(depth, 0))
        .filter((k) => below.includes(k))
        .map((k) => below.indexOf(k));
      seat = backs.length === 0 ? -1 : Math.max(...backs);
    }
    while (seat + 1 < room && !(sheets[below[seat + 1] as number] as Sheet).open) seat += 1;
    on = seat < 0 ? -1 : (below[seat] as number);
    at = below;
    everBare ||= on < 0;
  }
  return { on, everBare };
}

/** The same wall for the search: pieces, cells, no openings. */
function faceOf(sheets: readonly Sheet[]): WallFace {
  const pieces = sheets.map(
    (s, index): Piece =>
      ({
        id: `p${index}`,
        index,
        work: { id: `p${index}` },
        role: 'field',
        at: {},
        edge: s.open ? 'open' : 'bonded',
        face: [s.rect],
        returns: {},
        under: s.under === undefined ? [] : [`p${s.under}`],
        sheds: true,
      }) as unknown as Piece,
  );
  const grid = cutFace({ u0: 0, v0: 0, u1: SIZE, v1: SIZE }, pieces, [], { us: [], vs: [] });
  return { pieces, grid, joints: [] } as unknown as WallFace;
}

const side = fc.integer({ min: 0, max: SIZE - 1 });
const sheet = fc.record({
  u: side,
  v: side,
  w: fc.integer({ min: 1, max: SIZE }),
  h: fc.integer({ min: 1, max: SIZE }),
  open: fc.boolean(),
  under: fc.option(fc.nat({ max: 7 }), { nil: undefined }),
});
const walls = fc.array(sheet, { minLength: 1, maxLength: 8 }).map((list) =>
  list.map((s, k): Sheet => ({
    rect: { u0: s.u, v0: s.v, u1: Math.min(SIZE, s.u + s.w), v1: Math.min(SIZE, s.v + s.h) },
    open: s.open,
    ...(s.under === undefined || s.under >= k ? {} : { under: s.under }),
  })),
);

describe('the run of water over random stacks of rectangles', () => {
  it('ends where a drop ends that is moved in small steps (500 walls, every column)', () => {
    let columns = 0;
    fc.assert(
      fc.property(walls, (sheets) => {
        const face = faceOf(sheets);
        const search = new Search(BARE, face, () => true);
        const { us, rows, columns: count, cells, stacks } = face.grid;
        for (let column = 0; column < count; column++) {
          const u = ((us[column] as number) + (us[column + 1] as number)) / 2;
          const top = stacks[cells[(rows - 1) * count + column] as number] as readonly number[];
          const { steps, end } = search.walk({
            source: { kind: 'rain', name: 'rain' },
            column,
            row: rows - 1,
            depth: top.length - 1,
          });
          const drop = simulate(sheets, u);
          expect(
            end.kind === 'bare substrate',
            JSON.stringify({ sheets, u, steps: steps.map((s) => `${s.what} ${s.piece?.id ?? '-'}`) }),
          ).toBe(drop.everBare);
          columns += 1;
        }
      }),
      { numRuns: 500 },
    );
    expect(columns).toBeGreaterThan(2000);
  });

  it('never ends higher than it starts, and meets each edge once', () => {
    fc.assert(
      // Without slipped sheets: a sheet slipped under another may come out on the other side of a third.
      fc.property(
        walls.map((sheets) => sheets.map(({ rect, open }): Sheet => ({ rect, open }))),
        (sheets) => {
          const face = faceOf(sheets);
          const search = new Search(BARE, face, () => true);
          const { rows, columns, cells, stacks } = face.grid;
          for (let column = 0; column < columns; column++) {
            const top = stacks[cells[(rows - 1) * columns + column] as number] as readonly number[];
            const { steps } = search.walk({
              source: { kind: 'rain', name: 'rain' },
              column,
              row: rows - 1,
              depth: top.length - 1,
            });
            for (let i = 1; i < steps.length; i++) expect(steps[i]!.v).toBeLessThanOrEqual(steps[i - 1]!.v);
            const edges = steps.filter((s) => s.what === 'behind' || s.what === 'over edge').map((s) => s.piece!.id);
            expect(new Set(edges).size).toBe(edges.length);
          }
        },
      ),
      { numRuns: 200 },
    );
  });
});
