import { describe, expect, it } from 'vitest';
import { outerCavity, shareOfDesign } from './rain-pressure.js';
import { readPage } from '../../tests/support/documents.js';

async function cavityOf(fields: string): Promise<ReturnType<typeof outerCavity>> {
  const page = await readPage(
    `\`\`\`yaml detail\nkind: detail\nid: D\ntitle: D\nwall:\n  - { id: sheathing, material: sheathing }\n  - { id: gap, material: air space, thickness: 1 in${fields} }\n  - { id: brick, material: clay brick, thickness: 3-5/8 in }\n\`\`\`\n`,
  );
  return outerCavity(page.detail());
}

describe('the cavity behind the cladding', () => {
  it('is open when it is drained or vented', async () => {
    expect((await cavityOf(', drained: true')).state).toBe('open');
    expect((await cavityOf(', drained: false, vented: true')).state).toBe('open');
  });
  it('is closed only when both are denied', async () => {
    expect((await cavityOf(', drained: false, vented: false')).state).toBe('closed');
    expect(await cavityOf(', drained: false')).toMatchObject({ state: 'not told', missing: ['wall "gap": vented'] });
    expect((await cavityOf('')).missing).toEqual(['wall "gap": drained', 'wall "gap": vented']);
  });
});

describe('the share of the design pressure', () => {
  it('is written as people read it', () => {
    expect(shareOfDesign(0.15, '30 psf')).toBe('15 % of the design pressure 30 psf');
  });
});
