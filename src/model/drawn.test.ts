/** What counts as a whole wall, on walls written out by hand. */
import { describe, expect, it } from 'vitest';
import { showsInside, showsWholeWall } from './drawn.js';
import { readPage } from '../../tests/support/documents.js';

const wall = async (layers: string, work = ''): Promise<Awaited<ReturnType<typeof readPage>>> =>
  readPage(`kind: detail\nid: d\ntitle: Test\nwall: [${layers}]\n${work}`, 'd.yaml');
const BOARD = '{ id: board, material: gypsum board }';
const STUDS = '{ id: studs, material: mineral wool batt }';
const BRICK = '{ id: brick, material: clay brick }';

describe('how much of the wall is drawn', () => {
  it('from an interior board to a cladding it is whole', async () => {
    expect(showsWholeWall((await wall(`${BOARD}, ${STUDS}, ${BRICK}`)).detail())).toBe(true);
  });
  it('without one of the faces it is not', async () => {
    expect(showsWholeWall((await wall(`${STUDS}, ${BRICK}`)).detail())).toBe(false);
    expect(showsWholeWall((await wall(`${BOARD}, ${STUDS}`)).detail())).toBe(false);
  });
  it('work on the inside shows the inside of a part', async () => {
    expect(showsInside((await wall(STUDS)).detail())).toBe(false);
    expect(
      showsInside((await wall(STUDS, 'work: [{ id: b, place: interior face, material: gypsum board }]')).detail()),
    ).toBe(true);
  });
});
