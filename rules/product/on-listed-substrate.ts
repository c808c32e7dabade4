import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import type { WallFace } from '../../src/geometry/types.js';
import { fieldOfLayer } from '../../src/model/named-field.js';
import type { Detail, Layer, Product } from '../../src/model/types.js';
import { carrierOf } from '../../src/products/carrier.js';
import { listedAs } from '../../src/products/substrate.js';

const LIST: Source = {
  basis: 'product data',
  citation: 'substrates of the data sheet',
  provenance: 'project document',
};

interface Bearing {
  readonly product: Product;
  readonly carrier: Layer;
  readonly at: Outcome['at'];
  /** Works that put the product there. */
  readonly works: string[];
}

/** Each product that somewhere lies directly on a layer of the wall, once for each layer. */
function bearings(detail: Detail, face: WallFace): Bearing[] {
  const { grid, pieces } = face;
  const bare = new Uint8Array(grid.stacks.length);
  grid.cells.forEach((stack, cell) => {
    if (grid.hole[cell] !== 1) bare[stack] = 1;
  });
  const bottoms = new Set(grid.stacks.flatMap((stack, id) => (bare[id] === 1 ? stack.slice(0, 1) : [])));
  const found = new Map<string, Bearing>();
  pieces.forEach((piece, k) => {
    const product = piece.product ?? piece.layer?.product;
    const carrier = carrierOf(detail, piece);
    if (!bottoms.has(k) || product === undefined || carrier === undefined || carrier.product === product) return;
    const key = `${product.id}\n${carrier.id}`;
    const known = found.get(key);
    if (known === undefined)
      found.set(key, {
        product,
        carrier,
        at: piece.apply?.productId?.at ?? piece.layer?.productId?.at ?? piece.at,
        works: [piece.work.id],
      });
    else if (!known.works.includes(piece.work.id)) known.works.push(piece.work.id);
  });
  return [...found.values()];
}

/** What goes straight onto a layer of the wall goes onto a substrate that its data sheet lists. */
export default defineRule({
  id: 'product/on-listed-substrate',
  title: 'Substrates of a product',
  summary: 'A product that lies directly on a layer of the wall lies on a substrate that its data sheet lists.',
  level: 'warning',
  reads: ['product.substrates', 'wall.material', 'wall.product', 'work.place'],
  sources: [LIST],
  caution: 'A listed substrate still has to be sound, dry and clean. Adhesion is proved by a test on the wall.',
  *review({ detail, face }) {
    for (const { product, carrier, at, works } of bearings(detail, face)) {
      const list = product.substrates;
      const [first] = list;
      if (first === undefined) continue;
      const names = [
        ...(carrier.material === undefined ? [] : [carrier.material.value]),
        ...(carrier.product === undefined ? [] : [carrier.product.id, carrier.product.name, carrier.product.family]),
      ];
      const called = names[0] ?? carrier.family;
      const listing = listedAs(
        names,
        list.map((s) => s.value),
      );
      const words = list.map((s) => s.value).join(', ');
      const who = works.map((w) => `"${w}"`).join(', ');
      const base = {
        at,
        subject: `${product.id} on ${carrier.id}`,
        required: words,
        provided: called,
        sources: [{ ...LIST, citation: `product data of ${product.id}`, at: first.at }],
        related: [
          { message: `the layer "${carrier.id}"`, at: carrier.material?.at ?? carrier.productId?.at ?? carrier.at },
          { message: 'the substrates listed', at: first.at },
        ],
      };
      const sentence = `"${product.id}" (${who}) lies directly on "${carrier.id}", ${called}`;
      if (listing === 'listed') yield { kind: 'pass', message: `${sentence}, a substrate its data list.`, ...base };
      else if (listing === 'unclear')
        yield {
          kind: 'open',
          message: `${sentence}; its data list only a particular kind of that (${words}). Say which kind the layer is.`,
          missing: [fieldOfLayer(carrier, 'material')],
          ...base,
        };
      else
        yield {
          kind: 'fail',
          message: `${sentence}; its data list ${words}, and not that.`,
          correct: `Have the manufacturer confirm ${called} in writing and add it to "substrates", with the primer it asks for; or use a product that lists it.`,
          ...base,
        };
    }
  },
});
