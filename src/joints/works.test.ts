import { describe, expect, it } from 'vitest';
import { interiorSeals, isFibrous, openSides } from './perimeter-seals.js';
import { rodOf, sealantJoints, subjectOf } from './sealant-joints.js';
import { readPage } from '../../tests/support/documents.js';
import type { Detail } from '../model/types.js';

async function detailOf(...work: string[]): Promise<Detail> {
  const products = ['sealant', 'backer rod', 'spray foam', 'batt insulation']
    .map(
      (family) =>
        `\`\`\`yaml product\nkind: product\nid: ${family.replace(' ', '-')}\nname: ${family}\nfamily: ${family}\n\`\`\`\n`,
    )
    .join('\n');
  return (
    await readPage(
      `\`\`\`yaml detail\nkind: detail\nid: D\ntitle: D\nopenings:\n  - { id: window, roughOpening: { width: 36 in, height: 48 in } }\nwork:\n${work.map((w) => `  - { ${w} }`).join('\n')}\n\`\`\`\n\n${products}`,
    )
  ).detail();
}
const ROD = 'id: rod, place: interior perimeter, product: backer-rod';
const BEAD = 'id: bead, place: interior perimeter, product: sealant';

describe('sealant joints', () => {
  it('are sealants along a perimeter and works that declare a joint, not rods, foam or a bead along an edge', async () => {
    const detail = await detailOf(
      ROD,
      BEAD,
      'id: foam, place: interior perimeter, product: spray-foam, joint: { width: 1/2 in }',
      'id: edge, place: top of wall, product: sealant',
      'id: top, place: top of wall, product: sealant, joint: { width: 1/2 in }',
    );
    expect(sealantJoints(detail).map((w) => w.id)).toEqual(['bead', 'top']);
  });
  it('find the rod put in before them at the same place', async () => {
    const after = await detailOf(BEAD, ROD);
    const before = await detailOf(ROD, BEAD);
    expect(rodOf(before, sealantJoints(before)[0]!)?.id).toBe('rod');
    expect(rodOf(after, sealantJoints(after)[0]!)).toBeUndefined();
  });
  it('carry the name a requirement uses', async () => {
    const detail = await detailOf(
      BEAD,
      'id: outer, place: exterior perimeter, product: sealant',
      'id: mid, place: movement joint, product: sealant',
    );
    expect(sealantJoints(detail).map(subjectOf)).toEqual(['interior seal', 'exterior seal', undefined]);
  });
});

describe('interior seals', () => {
  it('leave out rods and insulation', async () => {
    const detail = await detailOf(ROD, BEAD, 'id: strip, place: interior perimeter, product: batt-insulation');
    expect(interiorSeals(detail, detail.openings[0]!).map((w) => w.id)).toEqual(['bead']);
    expect(detail.work.filter((w) => w.action === 'apply' && isFibrous(w)).map((w) => w.id)).toEqual(['strip']);
  });
  it('close the sides they name together', async () => {
    const detail = await detailOf(
      `${BEAD}, sides: [head, left jamb]`,
      'id: more, place: interior perimeter, product: sealant, sides: [sill]',
    );
    expect(openSides(interiorSeals(detail, detail.openings[0]!))).toEqual(['right jamb']);
    expect(openSides([])).toEqual(['head', 'left jamb', 'right jamb', 'sill']);
  });
});
