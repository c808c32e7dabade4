/** Where water goes that leaves a pan, and which ways are judged and drawn. */
import { describe, expect, it } from 'vitest';
import { runOfWater } from './run.js';
import { isShown } from './shown.js';
import { endsRight } from './types.js';
import { buildFace } from '../../geometry/face.js';
import type { Detail } from '../../model/types.js';
import { readPage } from '../../../tests/support/documents.js';

async function detailOf(work: string, family = 'fluid-applied membrane'): Promise<Detail> {
  const page = await readPage(
    `\`\`\`yaml detail
kind: detail
id: D
title: D
wall:
  - { id: sheathing, material: glass-mat gypsum sheathing, thickness: 5/8 in, sheet: { width: 48 in, height: 96 in } }
  - { id: membrane, product: field }
openings:
  - { id: window, roughOpening: { width: 72 in, height: 60 in, depth: 7 in }, unit: { mounting: recessed } }
work:
  - { id: pan, place: sill, of: window, product: strip, ontoWall: 4 in, pastJambs: 6 in, intoOpening: full }
${work}
\`\`\`

\`\`\`yaml product
kind: product
id: field
name: Field
family: ${family}
\`\`\`

\`\`\`yaml product
kind: product
id: strip
name: Strip
family: self-adhered flashing
\`\`\`
`,
  );
  return page.detail();
}
const endsOfPan = (detail: Detail): string[] => [
  ...new Set(
    runOfWater(detail, buildFace(detail))
      .face.filter((p) => p.source.kind === 'pan')
      .map((p) => p.end.kind),
  ),
];

describe('water that leaves the pan', () => {
  it('runs on a coat that covers the whole leg, because the coat is bonded up to the sill', async () => {
    expect(endsOfPan(await detailOf('  - { id: coat, place: field, layer: membrane }'))).toEqual(['goes on']);
  });
  it('goes behind a hung sheet that covers the leg', async () => {
    const detail = await detailOf('  - { id: sheet, place: field, layer: membrane }', 'mechanically fastened sheet');
    for (const kind of ['daylight', 'goes on']) expect(endsOfPan(detail)).not.toContain(kind);
  });
});

it('no way is shown on a wall whose field is not drawn', async () => {
  const detail = await detailOf('  - { id: set, set: unit, of: window, bedding: { sill: open } }');
  const face = buildFace(detail);
  const { face: paths } = runOfWater(detail, face);
  expect(paths.some((p) => !endsRight(p.end))).toBe(true);
  expect(paths.filter((p) => isShown(p, detail, face))).toEqual([]);
});
