/** What the vapor rules see of a wall: its frame, its two sides, its insulation, its venting, its films. */
import { describe, expect, it } from 'vitest';
import { readPage } from '../../tests/support/documents.js';
import { usRToSi } from './classes.js';
import { outerSide, sensitiveBetween } from './double-barrier.js';
import { frameOf } from './frame.js';
import { continuousInsulation } from './insulation.js';
import { interiorSide, type InteriorSide } from './interior-side.js';
import { deviation, installedFilm } from './tested-film.js';
import { sheathingOf, venting } from './venting.js';
import type { Detail, Layer } from '../model/types.js';

const PRODUCTS = `
\`\`\`yaml product
{ kind: product, id: sheet, name: Sheet, family: vapor retarder, permeance: { dry: 0.5 perm } }
\`\`\`
\`\`\`yaml product
{ kind: product, id: silent-sheet, name: Sheet, family: vapor retarder }
\`\`\`
\`\`\`yaml product
{ kind: product, id: opening-sheet, name: Sheet, family: vapor retarder, permeance: { dry: 0.5 perm, wet: 10 perm } }
\`\`\`
\`\`\`yaml product
{ kind: product, id: coating, name: Coating, family: fluid-applied membrane, volumeSolids: 50 %, permeance: { dry: 10 perm, atFilm: 10 mil } }
\`\`\`
`;
const STUDS = '{ id: studs, material: mineral wool batt, thickness: 5-1/2 in, framing: { material: wood } }';

async function wall(...layers: string[]): Promise<Detail> {
  const lines = layers.map((l) => `  - ${l}`).join('\n');
  return (
    await readPage(`\`\`\`yaml detail\nkind: detail\nid: d\ntitle: d\nwall:\n${lines}\n\`\`\`\n${PRODUCTS}`)
  ).detail();
}
function frame(detail: Detail): Layer {
  const found = frameOf(detail);
  if (found === undefined) throw new Error('no frame');
  return found;
}
async function inside(...layers: string[]): Promise<InteriorSide> {
  const detail = await wall(...layers);
  return interiorSide(detail, frame(detail));
}
const classInside = async (...layers: string[]): Promise<string> => {
  const side = await inside(...layers);
  return side.kind === 'retarder'
    ? side.retarder.vaporClass
    : side.kind === 'unknown'
      ? `unknown: ${side.missing.join(', ')}`
      : 'none';
};

describe('the frame', () => {
  it('is the deepest framed layer, not the girts in the insulation outside', async () => {
    const detail = await wall(
      '{ id: board, material: gypsum board }',
      STUDS,
      '{ id: sheathing, material: OSB }',
      '{ id: wool, material: mineral wool board, thickness: 3 in, framing: { material: steel } }',
    );
    expect(frame(detail).id).toBe('studs');
  });
  it('is the outer one of two equal rows of studs', async () => {
    const detail = await wall(
      '{ id: inner, material: cellulose, thickness: 3-1/2 in, framing: { material: wood } }',
      '{ id: outer, material: cellulose, thickness: 3-1/2 in, framing: { material: wood } }',
    );
    expect(frame(detail).id).toBe('outer');
  });
  it('is absent in a masonry wall', async () => {
    expect(
      frameOf(await wall('{ id: board, material: gypsum board }', '{ id: block, material: concrete masonry }')),
    ).toBeUndefined();
  });
});

describe('the interior retarder', () => {
  // Kinds by IRC 2021 Table R702.7(1), printed on https://basc.pnnl.gov/building-assemblies/1a.
  it.each([
    [
      'polyethylene',
      ['{ id: b, material: gypsum board, finish: latex paint }', '{ id: s, material: polyethylene sheet }', STUDS],
      'I',
    ],
    [
      'kraft facing on the batts',
      [
        '{ id: b, material: gypsum board, finish: latex paint }',
        '{ id: studs, material: kraft-faced glass fiber batt, framing: { material: wood } }',
      ],
      'II',
    ],
    [
      'kraft facing written as a finish',
      [
        '{ id: b, material: gypsum board, finish: latex paint }',
        '{ id: studs, material: glass fiber batt, finish: kraft facing, framing: { material: wood } }',
      ],
      'II',
    ],
    ['vapor retarder paint', ['{ id: b, material: gypsum board, finish: vapor retarder paint }', STUDS], 'II'],
    ['latex paint', ['{ id: b, material: gypsum board, finish: "latex paint, 2 coats" }', STUDS], 'III'],
    ['painted board', ['{ id: b, material: painted gypsum board }', STUDS], 'III'],
    [
      'paint as a layer of its own',
      ['{ id: p, material: latex primer and paint }', '{ id: b, material: gypsum board }', STUDS],
      'III',
    ],
    [
      'a product by its dry cup',
      ['{ id: b, material: gypsum board, finish: latex paint }', '{ id: s, product: sheet }', STUDS],
      'II',
    ],
    ['a permeance of the layer as built', ['{ id: b, material: gypsum board, permeance: 0.9 perm }', STUDS], 'II'],
    [
      'unfaced batts and bare board',
      [
        '{ id: b, material: gypsum board, finish: none }',
        '{ id: studs, material: unfaced batt, framing: { material: wood } }',
      ],
      'none',
    ],
    [
      'a sheet between two rows of studs',
      [
        '{ id: b, material: gypsum board }',
        '{ id: inner, material: cellulose, thickness: 2-1/2 in, framing: { material: wood } }',
        '{ id: s, material: polyethylene }',
        STUDS,
      ],
      'I',
    ],
  ])('is read from %s', async (_, layers, expected) => {
    expect(await classInside(...layers)).toBe(expected);
  });
  it('is open when a board that faces the room does not say its finish', async () => {
    expect(await classInside('{ id: b, material: gypsum board }', STUDS)).toBe('unknown: wall "b": finish');
  });
  it('does not hang on the finish when a tighter sheet is known', async () => {
    expect(await classInside('{ id: b, material: gypsum board }', '{ id: s, product: sheet }', STUDS)).toBe('II');
  });
  it('is open when a vapor retarder product declares nothing, even behind paint', async () => {
    expect(
      await classInside(
        '{ id: b, material: gypsum board, finish: latex paint }',
        '{ id: s, product: silent-sheet }',
        STUDS,
      ),
    ).toBe('unknown: product.permeance.dry');
  });
  it('is open when a material is unknown', async () => {
    expect(await classInside('{ id: b, material: woven panel }', STUDS)).toBe('unknown: wall "b": permeance');
  });
  it('is open when a finish is unknown', async () => {
    expect(await classInside('{ id: b, material: gypsum board, finish: silk }', STUDS)).toBe(
      'unknown: wall "b": permeance',
    );
  });
  it('is open when nothing is drawn inside the frame', async () => {
    expect(await classInside(STUDS)).toBe('unknown: wall');
  });
  it('is not looked for outside the frame', async () => {
    expect(
      await classInside(
        '{ id: b, material: gypsum board, finish: latex paint }',
        STUDS,
        '{ id: s, material: polyethylene sheet }',
      ),
    ).toBe('III');
  });
  it('counts as responsive when its wet cup is above 1 perm', async () => {
    const side = await inside(
      '{ id: b, material: gypsum board, finish: latex paint }',
      '{ id: s, product: opening-sheet }',
      STUDS,
    );
    expect(side.kind === 'retarder' && side.retarder.responsive).toBe(true);
    const tight = await inside(
      '{ id: b, material: gypsum board, finish: latex paint }',
      '{ id: s, product: sheet }',
      STUDS,
    );
    expect(tight.kind === 'retarder' && tight.retarder.responsive).toBe(false);
  });
});

describe('continuous insulation', () => {
  const total = async (...layers: string[]): Promise<number> => {
    const detail = await wall('{ id: b, material: gypsum board }', ...layers);
    return continuousInsulation(detail, frame(detail)).knownM2KPerW / usRToSi(1);
  };
  it('adds the stated R-values outside the frame', async () => {
    expect(
      await total(
        STUDS,
        '{ id: a, material: XPS, rValue: R-5 }',
        '{ id: c, material: mineral wool board, rValue: RSI 0.7044409 }',
      ),
    ).toBeCloseTo(9, 5);
  });
  it('takes thickness times the generic R per inch, and says so', async () => {
    const detail = await wall(STUDS, '{ id: a, material: XPS, thickness: 2 in }');
    const found = continuousInsulation(detail, frame(detail));
    expect(found.knownM2KPerW / usRToSi(1)).toBeCloseTo(10, 5);
    expect(found.assumptions[0]).toContain('extruded polystyrene');
  });
  it('leaves out what framing interrupts, the cavity fill and air spaces', async () => {
    expect(await total(STUDS, '{ id: a, material: mineral wool board, rValue: R-8, continuous: false }')).toBe(0);
    expect(
      await total(
        STUDS,
        '{ id: a, material: mineral wool board, rValue: R-8, thickness: 2 in, framing: { material: steel } }',
      ),
    ).toBe(0);
    expect(await total(STUDS, '{ id: a, material: air space, rValue: R-1 }')).toBe(0);
  });
  it('adds tight spray foam in the cavity, but not open foam', async () => {
    expect(
      await total('{ id: studs, material: closed-cell spray foam, thickness: 3-1/2 in, framing: { material: wood } }'),
    ).toBeCloseTo(21, 5);
    expect(
      await total('{ id: studs, material: open-cell spray foam, thickness: 3-1/2 in, framing: { material: wood } }'),
    ).toBe(0);
  });
  it('names what it cannot know', async () => {
    const detail = await wall(STUDS, '{ id: a, material: insulating sheathing, thickness: 2 in }');
    expect(continuousInsulation(detail, frame(detail)).unknown.map((i) => i.layer.id)).toEqual(['a']);
  });
});

describe('venting', () => {
  const kind = async (...layers: string[]): Promise<string> => {
    const detail = await wall(STUDS, '{ id: sheathing, material: OSB }', ...layers);
    return venting(detail, frame(detail)).kind;
  };
  it.each([
    ['vinyl siding', ['{ id: c, material: vinyl siding }'], 'vented'],
    // A clear air space of 1 in makes brick veneer vented cladding: IRC 2021 R703.8.4 and R702.7, from memory, confirm.
    [
      'brick over a clear air space',
      ['{ id: g, material: air space, thickness: 1 in }', '{ id: c, material: clay brick }'],
      'vented',
    ],
    [
      'brick over a space too narrow for the table',
      ['{ id: g, material: air space, thickness: 1/2 in }', '{ id: c, material: clay brick }'],
      'unknown',
    ],
    [
      'brick over a space of unstated width',
      ['{ id: g, material: air space }', '{ id: c, material: clay brick }'],
      'unknown',
    ],
    [
      'brick over a narrow space that is said to be vented',
      ['{ id: g, material: air space, thickness: 1/2 in, vented: true }', '{ id: c, material: clay brick }'],
      'vented',
    ],
    ['brick without an air space', ['{ id: c, material: clay brick }'], 'not vented'],
    [
      'panels over a vented space',
      ['{ id: g, material: air space, vented: true }', '{ id: c, material: fiber cement }'],
      'vented',
    ],
    [
      'panels over a space that is said to be unvented',
      ['{ id: g, material: air space, vented: false }', '{ id: c, material: fiber cement }'],
      'not vented',
    ],
    [
      'panels over a space that says nothing',
      ['{ id: g, material: air space }', '{ id: c, material: fiber cement }'],
      'unknown',
    ],
    ['stucco on the wall', ['{ id: c, material: stucco }'], 'not vented'],
    ['cladding of no named kind', ['{ id: c, material: cladding }'], 'unknown'],
    ['no cladding drawn', [], 'unknown'],
  ])('of %s', async (_, layers, expected) => {
    expect(await kind(...layers)).toBe(expected);
  });
  it('does not count over foam plastic', async () => {
    const detail = await wall(
      STUDS,
      '{ id: sheathing, material: OSB }',
      '{ id: foam, material: XPS }',
      '{ id: c, material: vinyl siding }',
    );
    expect(sheathingOf(detail, frame(detail)).kind).toBe('covered');
    const wool = await wall(
      STUDS,
      '{ id: sheathing, material: glass-mat gypsum sheathing }',
      '{ id: wool, material: mineral wool board }',
      '{ id: c, material: vinyl siding }',
    );
    expect(sheathingOf(wool, frame(wool))).toMatchObject({ kind: 'known', sheathing: 'gypsum' });
  });
});

describe('two barriers', () => {
  const SHEET = '{ id: s, material: polyethylene sheet }';
  it('shut in the sheathing, or the wood of the studs where there is none', async () => {
    const detail = await wall(SHEET, STUDS, '{ id: foam, material: foil-faced polyiso }');
    const { barrier } = outerSide(detail, frame(detail));
    expect(barrier?.id).toBe('foam');
    expect(sensitiveBetween(detail, detail.layers[0] as Layer, barrier as Layer)?.id).toBe('studs');
  });
  it('harm nothing between steel studs without sheathing', async () => {
    const detail = await wall(
      SHEET,
      '{ id: studs, material: mineral wool batt, framing: { material: steel } }',
      '{ id: foam, material: foil-faced polyiso }',
    );
    expect(
      sensitiveBetween(detail, detail.layers[0] as Layer, outerSide(detail, frame(detail)).barrier as Layer),
    ).toBeUndefined();
  });
  it('are asked about where a space that does not say so may part them', async () => {
    const behind = (vented: string): Promise<Detail> =>
      wall(
        SHEET,
        STUDS,
        '{ id: sheathing, material: OSB }',
        `{ id: g, material: air space${vented} }`,
        '{ id: foam, material: foil-faced polyiso }',
      );
    const [unsaid, vented, closed] = [
      await behind(''),
      await behind(', vented: true'),
      await behind(', vented: false'),
    ];
    expect(outerSide(unsaid, frame(unsaid))).toMatchObject({ unknown: [{ missing: ['wall "g": vented'] }] });
    expect(outerSide(unsaid, frame(unsaid)).barrier).toBeUndefined();
    expect(outerSide(vented, frame(vented))).toEqual({ unknown: [] });
    expect(outerSide(closed, frame(closed)).barrier?.id).toBe('foam');
  });
  it('are not made by a panel beyond a vented space', async () => {
    const detail = await wall(
      SHEET,
      STUDS,
      '{ id: sheathing, material: OSB }',
      '{ id: g, material: air space, vented: true }',
      '{ id: panel, material: metal sheet, family: other }',
    );
    expect(outerSide(detail, frame(detail))).toEqual({ unknown: [] });
  });
});

describe('the film of a permeance', () => {
  it('is the wet film times volume solids, both ends of a range', async () => {
    const detail = await wall('{ id: m, product: coating, wetFilm: 20-30 mil }');
    const layer = detail.layers[0] as Layer;
    const found = installedFilm(detail, layer, layer.product as NonNullable<Layer['product']>);
    if (found.kind !== 'known') throw new Error('film is known');
    expect(found.film.leastUm).toBeCloseTo(254, 6);
    expect(found.film.mostUm).toBeCloseTo(381, 6);
    expect(deviation(found.film, 254)).toBeCloseTo(0.5, 9);
  });
  it('adds the coats that separate works put on the same place', async () => {
    const page = await readPage(
      `\`\`\`yaml detail\nkind: detail\nid: d\ntitle: d\nwall:\n  - { id: m, product: coating }\nwork:\n  - { id: first, place: field, layer: m, wetFilm: 10 mil }\n  - { id: second, place: field, layer: m, wetFilm: 10 mil }\n\`\`\`\n${PRODUCTS}`,
    );
    const detail = page.detail();
    const layer = detail.layers[0] as Layer;
    expect(installedFilm(detail, layer, layer.product as NonNullable<Layer['product']>)).toMatchObject({
      film: { leastUm: 254, mostUm: 254, coats: 2 },
    });
  });
  it('deviates downward too', () => {
    expect(deviation({ leastUm: 60, mostUm: 110 }, 100)).toBeCloseTo(-0.4, 9);
  });
});
