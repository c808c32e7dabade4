import { describe, expect, it } from 'vitest';
import { blockedPassages, findWay, passagesFrom, type Passage, type Space } from './daylight.js';
import { panOf } from './at-opening.js';
import { readPage } from '../../tests/support/documents.js';

const page = await readPage('```yaml detail\nkind: detail\nid: D\ntitle: D\n```\n');
const at = page.detail().at;
const passage = (from: Space, to: Space, blocker?: string): Passage => ({
  from,
  to,
  step: { message: `${from} to ${to}`, at },
  blockers: blocker === undefined ? [] : [{ message: blocker, at }],
  unknown: [],
});
const isClear = (p: Passage): boolean => p.blockers.length === 0;
const names = (way: readonly Passage[] | undefined): string[] | undefined => way?.map((p) => p.to);

describe('the search for a way out', () => {
  it('takes the fewest steps', () => {
    const way = findWay(
      [
        passage('pan', 'front of pan'),
        passage('front of pan', 'outer leg'),
        passage('outer leg', 'drained space'),
        passage('drained space', 'daylight'),
        passage('front of pan', 'daylight'),
      ],
      isClear,
    );
    expect(names(way)).toEqual(['front of pan', 'daylight']);
  });
  it('goes around what is blocked', () => {
    const way = findWay(
      [
        passage('pan', 'front of pan'),
        passage('front of pan', 'daylight', 'seal'),
        passage('front of pan', 'outer leg'),
        passage('outer leg', 'daylight'),
      ],
      isClear,
    );
    expect(names(way)).toEqual(['front of pan', 'outer leg', 'daylight']);
  });
  it('finds none where every way is blocked, and names only what water gets to', () => {
    const passages = [
      passage('pan', 'front of pan'),
      passage('front of pan', 'outer leg', 'bed'),
      passage('outer leg', 'daylight', 'never reached'),
    ];
    expect(findWay(passages, isClear)).toBeUndefined();
    expect(blockedPassages(passages).map((p) => p.blockers[0]?.message)).toEqual(['bed']);
  });
  it('ends on a circle of spaces', () => {
    expect(findWay([passage('pan', 'front of pan'), passage('front of pan', 'pan')], isClear)).toBeUndefined();
  });
});

const PRODUCTS = ['fluid-applied flashing', 'fluid-applied membrane', 'mechanically fastened sheet', 'tape']
  .map(
    (family) =>
      `\`\`\`yaml product\nkind: product\nid: ${family.replaceAll(' ', '-')}\nname: ${family}\nfamily: ${family}\n\`\`\`\n`,
  )
  .join('\n');
interface Drawn {
  readonly cavity?: string;
  readonly membrane?: string;
  readonly unit?: string;
}

async function passagesOf(
  work: string,
  {
    cavity = 'drained: true',
    membrane = 'fluid-applied-membrane',
    unit = '{ mounting: flange, flange: 1 in }',
  }: Drawn = {},
): Promise<Passage[]> {
  const read = await readPage(`\`\`\`yaml detail
kind: detail
id: D
title: D
wall:
  - { id: membrane, product: ${membrane} }
  - { id: cavity, material: air space, thickness: 1 in, ${cavity} }
  - { id: veneer, material: clay brick }
openings:
  - { id: window, roughOpening: { width: 36 in, height: 48 in, depth: 6 in }, unit: ${unit} }
work:
${work}
\`\`\`

${PRODUCTS}`);
  const detail = read.detail();
  const opening = detail.openings[0]!;
  return passagesFrom(detail, read.face(), opening, panOf(detail, opening)!);
}
async function blockersOf(work: string, cavity?: string, membrane?: string): Promise<string[]> {
  const drawn = { ...(cavity === undefined ? {} : { cavity }), ...(membrane === undefined ? {} : { membrane }) };
  return (await passagesOf(work, drawn)).flatMap((p) => p.blockers.map((b) => b.message));
}
const PAN =
  '  - { id: pan, place: sill, product: fluid-applied-flashing, ontoWall: 6 in, intoOpening: full, slope: 6 %, backDam: 1 in }';
const SET = '  - { id: set, set: unit, bedding: { sill: open } }';

describe('what blocks the way', () => {
  it('is nothing at a pan that drains into a drained cavity', async () => {
    expect(
      await blockersOf(
        `${PAN}\n  - { id: field, place: field, layer: membrane, lapsOnto: { opening flashing: 2 in } }\n${SET}`,
      ),
    ).toEqual([]);
  });
  it('is a sheet over the leg of the pan, but not one under it', async () => {
    const sheet = '  - { id: sheet, place: field below sill, layer: membrane }';
    expect(
      (await blockersOf(`${PAN}\n${sheet}\n${SET}`, 'drained: true', 'mechanically-fastened-sheet')).join(),
    ).toContain('"sheet"');
    expect(await blockersOf(`${sheet}\n${PAN}\n${SET}`, 'drained: true', 'mechanically-fastened-sheet')).toEqual([]);
  });
  it('is tape over the sill flange, unless weeps are left in it', async () => {
    const tape = (more: string): string =>
      `${PAN}\n${SET}\n  - { id: tape, place: flange sill, product: tape, ontoWall: 4 in${more} }`;
    expect((await blockersOf(tape(''))).join()).toContain('"tape"');
    expect(await blockersOf(tape(', weeps: { count: 2 }'))).toEqual([]);
  });
  it('is the seal of a unit set back, unless weeps are left in it; what it does not say is asked', async () => {
    const sealed = (weeps: string): string =>
      `${PAN}\n${SET}\n  - { id: seal, place: exterior perimeter, product: tape${weeps} }`;
    const all = async (weeps: string, mounting: string): Promise<Passage[]> =>
      passagesOf(sealed(weeps), { unit: `{ mounting: ${mounting} }` });
    const onTheWay = (passages: readonly Passage[]): Passage | undefined => passages.find((p) => p.to === 'outer leg');
    expect(onTheWay(await all(', weeps: { count: 0 }', 'recessed'))?.blockers.map((b) => b.message)).toEqual([
      'the exterior seal "seal", which leaves no weeps at the sill',
    ]);
    expect(findWay(await all(', weeps: { count: 0 }', 'recessed'), isClear)).toBeUndefined();
    expect(findWay(await all(', weeps: { count: 2 }', 'recessed'), isClear)).toBeDefined();
    expect(onTheWay(await all('', 'recessed'))?.unknown.map((u) => u.message)).toEqual(['work "seal": weeps.count']);
    // The seal of a flanged unit meets the cladding, outside of the drained space.
    expect(onTheWay(await all(', weeps: { count: 0 }', 'flange, flange: 1 in'))?.blockers).toEqual([]);
  });
  it('is a wall in which no layer drains', async () => {
    expect((await blockersOf(`${PAN}\n${SET}`, 'drained: false')).join()).toContain('none of which is drained');
  });
});
