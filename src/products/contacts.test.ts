/**
 * Contacts of a wall worked out by hand on paper; arithmetic on rectangles needs no published source.
 *
 * The face is 2000 x 2000 with an opening of 1000 x 1000 in its middle. Jamb flashing B is 100 wide on each side, over
 * the height of the opening. The field A stops on it, 50 from the opening, and covers everything else.
 */
import { describe, expect, it } from 'vitest';
import { contactPairs, leastContact, needsRating, type ContactPair } from './compatibility.js';
import { contactsOf, type Contact } from './contacts.js';
import { buildFace } from '../geometry/face.js';
import { readPage } from '../../tests/support/documents.js';

const product = (id: string, family: string, more = ''): string =>
  `\`\`\`yaml product\nkind: product\nid: ${id}\nname: Product ${id}\nfamily: ${family}\n${more}\n\`\`\`\n`;

const WALL = `\`\`\`yaml detail
kind: detail
id: D
title: D
face: { left: 500 mm, right: 500 mm, below: 500 mm, above: 500 mm }
wall:
  - { id: studs, material: framing }
  - { id: carrier, product: S }
  - { id: membrane, product: A }
  - { id: outside, product: E }
openings:
  - { id: window, roughOpening: { width: 1000 mm, height: 1000 mm, depth: 100 mm } }
work:
  - { id: jambs, place: jambs, of: window, product: B, ontoWall: 100 mm, intoOpening: full }
  - { id: field, place: field, layer: membrane, lapsOnto: { opening flashing: 50 mm } }
  - { id: rod, place: interior perimeter, of: window, product: R }
  - { id: bead, place: interior perimeter, of: window, product: C, sides: [jambs] }
\`\`\`
`;
const PRODUCTS = [
  product('A', 'fluid-applied membrane'),
  product('B', 'fluid-applied flashing'),
  product('C', 'sealant'),
  product('E', 'board insulation'),
  product('R', 'backer rod'),
  product('S', 'sheathing'),
].join('\n');

async function contacts(text = WALL + PRODUCTS): Promise<Contact[]> {
  const detail = (await readPage(text)).detail();
  return contactsOf(detail, buildFace(detail));
}
async function pairs(text: string): Promise<ContactPair[]> {
  const detail = (await readPage(text)).detail();
  return contactPairs(detail, buildFace(detail));
}
const told = (all: readonly Contact[]): string[] =>
  all.map(
    (c) =>
      `${c.outer.product.id} ${c.how} ${c.inner.product.id} ${c.where}${c.areaMm2 === undefined ? '' : ` ${String(Math.round(c.areaMm2))} mm2`}${c.lengthMm === undefined ? '' : ` ${String(Math.round(c.lengthMm))} mm`}`,
  );

describe('contacts of a wall', () => {
  it('are those worked out by hand, with their extents', async () => {
    expect(told(await contacts()).sort()).toEqual(
      [
        // Two strips 50 wide and 1000 high.
        'A lies on B on the wall face 100000 mm2',
        // Four ends of the jamb flashing, each 50 wide, that the field does not cover.
        'A meets the edge of B on the wall face 200 mm',
        // 2000 x 2000 less the opening, less what the flashing covers.
        'A lies on S on the wall face 2800000 mm2',
        'B lies on S on the wall face 200000 mm2',
        // The field all over, and the two strips of flashing it leaves free.
        'E lies on A on the wall face 2900000 mm2',
        'E lies on B on the wall face 100000 mm2',
        'C seals against B at the left jamb of "window" 1000 mm',
        'C seals against B at the right jamb of "window" 1000 mm',
        'C is backed by R at the interior perimeter',
      ].sort(),
    );
  });

  it('are not of a product with itself', async () => {
    const same = WALL.replace('product: B', 'product: A');
    expect(told(await contacts(same + PRODUCTS)).filter((c) => /^A .* A /.test(c))).toEqual([]);
  });

  it('follow what was slipped under what', async () => {
    const tucked = `${WALL}${PRODUCTS}`
      .replace('ontoWall: 100 mm, intoOpening', 'ontoWall: 100 mm, tuckedUnder: field, intoOpening')
      .replace(/( {2}- \{ id: jambs.*\n)( {2}- \{ id: field.*\n)/, '$2$1');
    const over = tucked.replace(', tuckedUnder: field', '');
    expect(told(await contacts(tucked))).toContain('A lies on B on the wall face 100000 mm2');
    expect(told(await contacts(over))).toContain('B lies on A on the wall face 100000 mm2');
  });

  it('leave out what no product is named for', async () => {
    const generic = WALL.replace('id: carrier, product: S', 'id: carrier, material: plywood');
    expect(told(await contacts(generic + PRODUCTS)).filter((c) => c.includes(' S '))).toEqual([]);
  });

  it('leave out the opening, even where a band is drawn across it', async () => {
    // 600 high from the bottom of the face, 500 below the opening: 2000 x 600 less 1000 x 100.
    const band = WALL.replace(
      / {2}- \{ id: jambs[^\n]*/,
      '  - { id: base, place: base of wall, product: B, upstand: 600 mm }',
    );
    expect(told(await contacts(band + PRODUCTS))).toContain('B lies on S on the wall face 1100000 mm2');
  });

  it('are of what stands edge to edge on the same thing, not of what lies a layer farther out', async () => {
    // A below the sill, C above it; B lies on A and ends at the same line, 200 beside each jamb.
    const split = WALL.replace(
      /work:[\s\S]*?(?=```)/,
      `work:
  - { id: low, place: field below sill, layer: membrane }
  - { id: strip, place: sill, of: window, product: B, ontoWall: 100 mm, pastJambs: 200 mm }
  - { id: high, place: field above sill, product: F }
`,
    );
    const all = told(await contacts(`${split}${PRODUCTS}\n${product('F', 'fluid-applied membrane')}`));
    expect(all).toContain('F meets the edge of A on the wall face 1000 mm');
    expect(all.filter((c) => /[BF] meets the edge of [BF]/.test(c))).toEqual([]);
  });

  it('of a seal are with what lies where it runs: at the inner or the outer end, on the sides it covers', async () => {
    // The edge strip F lies over B, 40 deep from the wall face; B lines the whole depth of 100.
    const lined = (seal: string): string =>
      WALL.replace(
        /work:[\s\S]*?(?=```)/,
        `work:
  - { id: jambs, place: jambs, of: window, product: B, ontoWall: 100 mm, intoOpening: full }
  - { id: head, place: head, of: window, product: B, ontoWall: 100 mm, intoOpening: full }
  - { id: edges, place: opening edges, of: window, product: F, extends: 40 mm }
  - { id: bead, ${seal}, of: window, product: C }
`,
      );
    const seals = async (seal: string): Promise<string[]> =>
      told(await contacts(`${lined(seal)}${PRODUCTS}\n${product('F', 'joint filler')}`)).filter((c) =>
        c.startsWith('C '),
      );
    expect(await seals('place: interior perimeter, sides: [head]')).toEqual([
      'C seals against B at the head of "window" 1000 mm',
    ]);
    expect(await seals('place: exterior perimeter, sides: [head]')).toEqual([
      'C seals against F at the head of "window" 1000 mm',
    ]);
  });

  it('are found on the returns too', async () => {
    const pan = WALL.replace(/ {2}- \{ id: jambs[\s\S]*?(?=```)/, '').replace(
      'work:\n',
      'work:\n  - { id: corners, place: inside corners, of: window, product: B, extends: 50 mm }\n  - { id: pan, place: sill, of: window, product: C2, intoOpening: full }\n',
    );
    const all = told(await contacts(`${pan}${PRODUCTS}\n${product('C2', 'joint filler')}`));
    // The pan runs over the strips: two strips of 50 x 100.
    expect(all).toContain('C2 lies on B at the sill of "window" 10000 mm2');
  });
});

describe('pairs of products that touch', () => {
  const pairOf = async (a: string, b: string, text: string) => {
    const found = (await pairs(text)).find((p) => p.products.map((x) => x.id).join() === `${a},${b}`);
    if (found === undefined) throw new Error(`${a} and ${b} do not touch`);
    return found;
  };
  const withData = (a: string, b: string): string =>
    WALL +
    PRODUCTS.replace(
      'name: Product A\nfamily: fluid-applied membrane\n',
      `name: Product A\nfamily: fluid-applied membrane\n${a}\n`,
    ).replace(
      'name: Product B\nfamily: fluid-applied flashing\n',
      `name: Product B\nfamily: fluid-applied flashing\n${b}\n`,
    );

  it('come once each, in the order of their ids', async () => {
    expect((await pairs(WALL + PRODUCTS)).map((p) => p.products.map((x) => x.id).join())).toEqual([
      'A,B',
      'A,E',
      'A,S',
      'B,C',
      'B,E',
      'B,S',
      'C,R',
    ]);
  });

  it('need nobody to vouch for them when both are hard and dry', async () => {
    const asked = (await pairs(WALL + PRODUCTS.replace('family: fluid-applied flashing', 'family: metal flashing')))
      .filter((p) => needsRating(...p.products))
      .map((p) => p.products.map((x) => x.id).join());
    // B is of metal now: on the sheathing and under the insulation it is left alone.
    expect(asked).toEqual(['A,B', 'A,E', 'A,S', 'B,C', 'C,R']);
  });

  it('know where they touch least', async () => {
    const pair = await pairOf('B', 'E', WALL + PRODUCTS);
    expect(leastContact(pair)?.areaMm2).toBeCloseTo(100000, 3);
    expect(leastContact(await pairOf('B', 'C', WALL + PRODUCTS))?.lengthMm).toBeCloseTo(1000, 3);
    expect(leastContact(await pairOf('C', 'R', WALL + PRODUCTS))).toBeUndefined();
  });

  it.each([
    ['', '', 'unknown', undefined],
    ['compatibleWith: [B]', '', 'listed', 'A'],
    ['', 'compatibleWith: [fluid-applied membrane]', 'listed', 'B'],
    ['', 'compatibleWith: [Fluid-applied  membranes]', 'listed', 'B'],
    ['', 'substrates: [A, plywood]', 'listed', 'B'],
    ['compatibleWith: [sealant]', 'compatibleWith: [E]', 'unknown', undefined],
    ['system: Wall 1', 'system: wall 1', 'same system', 'A'],
    ['system: Wall 1', 'system: Wall 2', 'unknown', undefined],
    ['system: Wall 1', '', 'unknown', undefined],
    [
      'system: Wall 1\ncompatibleWith: [B]',
      'system: Wall 1\ntestedWith: [{ product: A, report: ASTM C1087 }]',
      'tested',
      'B',
    ],
    [
      'notCompatibleWith: [fluid-applied flashing]',
      'testedWith: [{ product: A, report: ASTM C1087 }]',
      'not compatible',
      'A',
    ],
    ['', 'notCompatibleWith: [A]', 'not compatible', 'B'],
  ])('are rated by what either says: %j and %j are %s', async (a, b, rating, by) => {
    const pair = await pairOf('A', 'B', withData(a, b));
    expect([pair.rating, pair.by?.id]).toEqual([rating, by]);
  });
});
