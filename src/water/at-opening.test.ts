import { describe, expect, it } from 'vitest';
import { coversSide, panOf, unitSetIn, worksAt } from './at-opening.js';
import { readPage } from '../../tests/support/documents.js';
import type { Detail } from '../model/types.js';

async function detailOf(work: string): Promise<Detail> {
  const products = ['fluid-applied flashing', 'primer', 'sealant', 'flexible flashing']
    .map(
      (family) =>
        `\`\`\`yaml product\nkind: product\nid: ${family.replace(' ', '-')}\nname: ${family}\nfamily: ${family}\n\`\`\`\n`,
    )
    .join('\n');
  const page = await readPage(
    `\`\`\`yaml detail\nkind: detail\nid: D\ntitle: D\nopenings:\n  - { id: window, roughOpening: { width: 36 in, height: 48 in } }\n  - { id: door, at: { right: 60 in, up: 0 in }, roughOpening: { width: 36 in, height: 84 in } }\nwork:\n${work}\n\`\`\`\n\n${products}`,
  );
  return page.detail();
}
const panIn = async (work: string): Promise<string | undefined> => {
  const detail = await detailOf(work);
  return panOf(detail, detail.openings[0]!)?.id;
};

describe('the sill pan of an opening', () => {
  it('is the work at the sill that declares slope or dams, not a strip put on after it', async () => {
    expect(
      await panIn(
        '  - { id: pan, place: sill, product: fluid-applied-flashing, backDam: 1 in }\n  - { id: strip, place: sill, product: flexible-flashing, ontoWall: 9 in }',
      ),
    ).toBe('pan');
  });
  it('is else the work that reaches into the opening', async () => {
    expect(
      await panIn(
        '  - { id: lining, place: sill, product: fluid-applied-flashing, intoOpening: full }\n  - { id: strip, place: sill, product: flexible-flashing, ontoWall: 9 in }',
      ),
    ).toBe('lining');
  });
  it('is never a primer or a bead of sealant', async () => {
    expect(
      await panIn('  - { id: prime, place: sill, product: primer }\n  - { id: bead, place: sill, product: sealant }'),
    ).toBeUndefined();
  });
  it('is not the pan of another opening', async () => {
    expect(
      await panIn('  - { id: pan, place: sill, of: door, product: fluid-applied-flashing, backDam: 1 in }'),
    ).toBeUndefined();
  });
});

describe('works at an opening', () => {
  it('are found by place, with those that name no opening belonging to all', async () => {
    const detail = await detailOf(
      '  - { id: a, place: [jambs, head], product: fluid-applied-flashing }\n  - { id: b, place: head, of: door, product: fluid-applied-flashing }',
    );
    expect(worksAt(detail, detail.openings[0]!, 'head').map((w) => w.id)).toEqual(['a']);
    expect(worksAt(detail, detail.openings[1]!, 'head').map((w) => w.id)).toEqual(['a', 'b']);
  });
  it('tell which unit is set where', async () => {
    const detail = await detailOf('  - { id: s, set: unit, of: door }');
    expect(unitSetIn(detail, detail.openings[0]!)).toBeUndefined();
    expect(unitSetIn(detail, detail.openings[1]!)?.id).toBe('s');
  });
  it('run along all sides unless they name some', async () => {
    const detail = await detailOf(
      '  - { id: all, place: interior perimeter, product: sealant }\n  - { id: some, place: interior perimeter, product: sealant, sides: [jambs] }',
    );
    const [all, some] = worksAt(detail, detail.openings[0]!, 'interior perimeter');
    expect([
      coversSide(all!, 'sill'),
      coversSide(some!, 'sill'),
      coversSide(some!, 'left jamb'),
      coversSide(some!, 'right jamb'),
    ]).toEqual([true, false, true, true]);
  });
});
