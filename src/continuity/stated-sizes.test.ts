/** Pairs of declared sizes at their limits. Every figure is declared in the test; the comparison is arithmetic. */
import { describe, expect, it } from 'vitest';
import { readPage } from '../../tests/support/documents.js';
import { statedSizes } from './stated-sizes.js';

async function sizes(work: string, unit = 'mounting: flange, frameDepth: 4 in'): Promise<string[]> {
  const page = await readPage(
    `kind: detail
id: d
title: Test
openings:
  - { id: w, roughOpening: { width: 48 in, height: 60 in, depth: 7 in }, unit: { ${unit} } }
work:
${work
  .split('\n')
  .map((w) => `  - { ${w} }\n`)
  .join('')}---
{ kind: product, id: sheet, name: Sheet, family: mechanically fastened sheet, roll: 36 in }
---
{ kind: product, id: strip, name: Strip, family: self-adhered flashing }
---
{ kind: product, id: bead, name: Sealant, family: sealant }
`,
    'd.yaml',
  );
  return statedSizes(page.detail()).map((s) => `${s.agrees ? 'agrees' : 'clash'}: ${s.subject}`);
}

describe('declared sizes', () => {
  it('leave something of the roll beside the lap', async () => {
    expect(await sizes('id: s, place: field, product: sheet, courseLap: 35 in')).toEqual(['agrees: courses of s']);
    expect(await sizes('id: s, place: field, product: sheet, courseLap: 36 in')).toEqual(['clash: courses of s']);
  });
  it('take no wider roll than the product is made in', async () => {
    expect(await sizes('id: s, place: field, product: sheet, roll: 60 in')).toEqual(['clash: roll of s']);
  });
  it('reach no deeper than the opening', async () => {
    const reach = (into: string) => `id: j, place: jambs, product: strip, intoOpening: ${into}`;
    expect(await sizes(reach('7 in'))).toEqual(['agrees: j in w']);
    expect(await sizes(reach('7-1/4 in'))).toEqual(['clash: j in w']);
  });
  it('turn up ends only of a pan that has ends', async () => {
    const pan = (more: string) => `id: p, place: sill, product: strip, ontoWall: 6 in, endDams: 4 in, ${more}`;
    expect(await sizes(pan('intoOpening: 0 in'))).toContain('clash: ends of p in w');
    expect(await sizes(pan('intoOpening: 0 in, pastJambs: 4 in'))).not.toContain('clash: ends of p in w');
    expect(await sizes(pan('intoOpening: full'))).toEqual(['agrees: end dams of p in w']);
  });
  it('put a seal at a back dam only where the dam stands behind the frame', async () => {
    const work = (into: string) =>
      `id: p, place: sill, product: strip, intoOpening: ${into}\nid: s, place: interior perimeter, product: bead, sealPosition: at back dam`;
    expect(await sizes(work('3-3/4 in'))).toContain('clash: place of s in w');
    expect(await sizes(work('4 in'))).toContain('agrees: place of s in w');
    // A unit set back has its frame elsewhere, so nothing can be computed.
    expect(await sizes(work('3 in'), 'mounting: recessed, frameDepth: 4 in')).toEqual(['agrees: p in w']);
  });
  it('space weeps no closer than their number allows: three in 48 in stand 12 in apart', async () => {
    const weeps = (spacing: string) =>
      `id: s, place: exterior perimeter, product: bead, weeps: { count: 3, spacing: ${spacing} }`;
    expect(await sizes(weeps('12 in'))).toEqual(['agrees: weeps of s in w']);
    expect(await sizes(weeps('11 in'))).toEqual(['clash: weeps of s in w']);
  });
});
