import { describe, expect, it } from 'vitest';
import { BUILT_IN_RULES } from '../../../generated/rules.js';
import { readPage, reviewWith } from '../../../tests/support/documents.js';
import type { Detail } from '../../model/types.js';
import { exposedMasonry } from './exposed-masonry.js';

const BOARD = '{ id: board, material: gypsum board, thickness: 1/2 in, finish: latex paint }';
const POLY = '{ id: poly, material: polyethylene sheet }';
const STUDS =
  '{ id: studs, material: mineral wool batt, thickness: 3-1/2 in, rValue: R-15, framing: { material: wood } }';
const SHEATHING = '{ id: sheathing, material: glass-mat gypsum sheathing, thickness: 1/2 in }';
const WRAP = '{ id: wrap, material: housewrap }';
const BRICK = '{ id: brick, material: clay brick, thickness: 12 in }';
const VENEER = '{ id: veneer, material: clay brick, thickness: 3-5/8 in }';
const BLOCK = '{ id: block, material: concrete masonry, thickness: 8 in }';
const gap = (said = ''): string => `{ id: gap, material: air space, thickness: 1 in${said} }`;

async function wall(...layers: string[]): Promise<Detail> {
  const lines = layers.map((l) => `  - ${l}`).join('\n');
  const project = 'kind: project\nid: p\ntitle: P\nplace: { zone: 6A }\ncode: { title: IBC, edition: 2021 }';
  return (
    await readPage(`${project}\n---\nkind: detail\nid: d\ntitle: d\nproject: p\nwall:\n${lines}\n`, 'd.yaml')
  ).detail();
}

// Which walls store rain is common practice, no source: mass walls against cavity walls, veneers and barriers outside.
describe('masonry that takes the rain', () => {
  it.each([
    ['solid brick with studs against it', [BOARD, POLY, STUDS, BRICK], 'exposed'],
    ['brick, plastered inside', ['{ id: plaster, material: plaster, thickness: 3/4 in }', BRICK], 'exposed'],
    ['painted block', [BOARD, STUDS, BLOCK, '{ id: paint, material: masonry paint, family: paint }'], 'exposed'],
    ['rendered block', [BOARD, STUDS, BLOCK, '{ id: stucco, material: stucco, thickness: 7/8 in }'], 'exposed'],
    ['a concrete wall', [BOARD, STUDS, '{ id: concrete, material: concrete, thickness: 8 in }'], 'exposed'],
    ['brick tight to its sheathing', [BOARD, STUDS, SHEATHING, VENEER], 'exposed'],
    ['brick with a membrane on its room side', [BOARD, STUDS, WRAP, BRICK], 'exposed'],
    ['brick behind a cavity that is not drained', [BOARD, STUDS, gap(', drained: false'), BRICK], 'exposed'],
    ['brick behind a cavity that says nothing', [BOARD, STUDS, gap(), BRICK], 'unsaid'],
    ['brick behind a drained cavity', [BOARD, STUDS, gap(', drained: true'), BRICK], 'drained'],
    ['a veneer before a cavity and sheathing', [BOARD, STUDS, SHEATHING, gap(), VENEER], 'drained'],
    ['a veneer tight to a barrier on sheathing', [BOARD, STUDS, SHEATHING, WRAP, VENEER], 'drained'],
    ['a veneer before a cavity and block', [BOARD, BLOCK, gap(), VENEER], 'drained'],
    [
      'block under a membrane',
      [BOARD, STUDS, BLOCK, '{ id: m, material: sheet membrane }', '{ id: s, material: stucco }'],
      'drained',
    ],
    [
      'block insulated outside',
      [BOARD, BLOCK, '{ id: eps, material: EPS, thickness: 3 in }', '{ id: s, material: stucco }'],
      'drained',
    ],
    [
      'stucco over paper',
      [BOARD, STUDS, SHEATHING, '{ id: paper, material: building paper }', '{ id: s, material: stucco }'],
      'drained',
    ],
    ['fiber cement on a wrap', [BOARD, STUDS, SHEATHING, WRAP, '{ id: s, material: fiber cement siding }'], 'drained'],
  ])('%s', async (_, layers, kind) => {
    expect(exposedMasonry(await wall(...layers)).kind).toBe(kind);
  });

  const leavesRainOut = BUILT_IN_RULES.filter((r) => r.id.startsWith('moisture/') || r.id === 'vapor/double-barrier');
  it('passes no computation, with polyethylene or with paint inside', async () => {
    for (const layers of [
      [BOARD, POLY, STUDS, BRICK],
      [BOARD, STUDS, BRICK],
      [BOARD, BRICK],
    ]) {
      const results = reviewWith(await wall(...layers), leavesRainOut);
      expect(results.filter((r) => r.kind === 'pass').map((r) => r.message)).toEqual([]);
      const held = results.filter((r) => r.kind === 'review');
      expect(held.length).toBeGreaterThan(0);
      for (const { message } of held) expect(message).toMatch(/Rain that "brick" stores and its freezing .* transient/);
      expect(results.map((r) => r.message).join()).not.toMatch(/can dry outward|can leave outward/);
    }
  });
  it('is asked about where a cavity alone could drain it, and about nothing else', async () => {
    const unsaid = reviewWith(await wall(BOARD, POLY, STUDS, gap(', vented: false'), BRICK), leavesRainOut);
    expect(unsaid.some((r) => r.kind === 'open' && r.missing?.includes('wall "gap": drained'))).toBe(true);
    expect(unsaid.filter((r) => r.kind === 'pass')).toEqual([]);
    const drained = reviewWith(
      await wall(BOARD, POLY, STUDS, gap(', drained: true, vented: true'), BRICK),
      leavesRainOut,
    );
    expect(drained.filter((r) => r.kind === 'review')).toEqual([]);
    expect(drained.some((r) => r.kind === 'pass')).toBe(true);
  });
});
