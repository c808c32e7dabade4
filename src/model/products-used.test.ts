import { expect, it } from 'vitest';
import { readPage } from '../../tests/support/documents.js';
import { productsUsed } from './products-used.js';

const PAGE = `
\`\`\`yaml detail
kind: detail
id: d
title: d
wall:
  - { id: membrane, product: coat }
openings:
  - { id: window, roughOpening: { width: 36 in, height: 48 in, depth: 5 in } }
work:
  - { id: seal, place: interior perimeter, of: window, product: bead }
  - { id: field, place: field, product: coat }
  - { id: outer, place: exterior perimeter, of: window, product: bead }
\`\`\`

\`\`\`yaml product
kind: product
id: coat
name: Coat
family: fluid-applied membrane
\`\`\`

\`\`\`yaml product
kind: product
id: bead
name: Bead
family: sealant
\`\`\`
`;

it('names each wanted product once, at its first use: layers first, then the work', async () => {
  const detail = (await readPage(PAGE)).detail();
  expect(productsUsed(detail, () => true).map((u) => [u.product.id, u.at.path])).toEqual([
    ['coat', ['wall', 0, 'product']],
    ['bead', ['work', 0, 'product']],
  ]);
  expect(productsUsed(detail, (family) => family === 'sealant').map((u) => u.product.id)).toEqual(['bead']);
});
