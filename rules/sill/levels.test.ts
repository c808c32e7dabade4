/** What pages cannot show: how strongly each breach is reported, and which source governs. */
import { describe, expect, it } from 'vitest';
import backDamHeight from './back-dam-height.js';
import flangeLeftOpen from './flange-left-open.js';
import pathToDaylight from './path-to-daylight.js';
import slopeOrDam from './slope-or-dam.js';
import type { Result } from '../../src/engine/result.js';
import type { Rule } from '../../src/engine/rule.js';
import { readPage, reviewWith } from '../../tests/support/documents.js';

const PRODUCT =
  '```yaml product\nkind: product\nid: liquid\nname: Fluid-applied flashing\nfamily: fluid-applied flashing\n```\n';
const requirement = (text: string): string =>
  `\`\`\`yaml specification\nkind: specification\nsection: "07 27 26"\ntitle: Air barriers\nrequirements:\n  - { paragraph: 3.4.B, ${text} }\n\`\`\`\n`;

async function breaches(rule: unknown, pan: string, more = '', specification = ''): Promise<Result[]> {
  const page = await readPage(
    `\`\`\`yaml detail\nkind: detail\nid: D\ntitle: D\nopenings:\n  - { id: window, roughOpening: { width: 36 in, height: 48 in }, unit: { waterTest: 4.5 psf, frameDepth: 3-1/2 in } }\nwork:\n  - { id: pan, place: sill, product: liquid, intoOpening: full, ontoWall: 6 in, ${pan} }\n${more}\`\`\`\n\n${PRODUCT}\n${specification}`,
  );
  return reviewWith(page.detail(), [rule as Rule]).filter((r) => r.kind === 'fail');
}
const levels = (results: readonly Result[]): string[] => results.map((r) => r.level);

describe('the slope of a pan', () => {
  it('to the interior is an error, dam or not', async () => {
    expect(levels(await breaches(slopeOrDam, 'slope: -1 %, backDam: 1 in'))).toEqual(['error']);
  });
  it('is an error when neither slope nor dam is there, a warning when one is', async () => {
    expect(levels(await breaches(slopeOrDam, 'slope: 0 %, endDams: 6 in'))).toEqual(['error']);
    expect(levels(await breaches(slopeOrDam, 'backDam: 1 in'))).toEqual(['warning']);
    expect(levels(await breaches(slopeOrDam, 'slope: 8 %'))).toEqual(['warning']);
  });
  it('below 2 % is a warning, below what the specification asks an error that names it', async () => {
    expect(levels(await breaches(slopeOrDam, 'slope: 1 %, backDam: 1 in'))).toEqual(['warning']);
    const [found] = await breaches(
      slopeOrDam,
      'slope: 8 %, backDam: 1 in',
      '',
      requirement('property: sill slope, subject: sill pan, atLeast: 10 %'),
    );
    expect(found).toMatchObject({ level: 'error', required: 'at least 10 %' });
    expect(found?.message).toContain('Section 07 27 26, 3.4.B');
  });
  it('that the specification asks for cannot be left out', async () => {
    expect(
      levels(await breaches(slopeOrDam, 'backDam: 1 in', '', requirement('property: sill slope, atLeast: 6 %'))).sort(),
    ).toEqual(['error', 'warning']);
  });
});

describe('the height of a back dam', () => {
  it.each([
    ['backDam: 1/2 in', ''],
    ['backDam: 1 in', ''],
    ['backDam: 1/4 in, slope: 6 %', ''],
    ['backDam: 1 in', 'property: back dam height, atLeast: 2-1/2 in'],
    ['backDam: 12 mm', ''],
  ])('is corrected to a value that passes every check: %s %s', async (pan, asked) => {
    const specification = asked === '' ? '' : requirement(asked);
    const found = await breaches(backDamHeight, pan, '', specification);
    expect(found).toHaveLength(1);
    const size = / to at least ([^(:,]+?)(?= \(|:|,|\.$)/.exec(found[0]?.correct ?? '')?.[1];
    expect(size, found[0]?.correct).toBeDefined();
    const corrected = pan.replace(/backDam: [^,]+/, `backDam: ${size ?? ''}`);
    expect(await breaches(backDamHeight, corrected, '', specification)).toEqual([]);
  });

  it('below the head of water is an error, within the freeboard a warning', async () => {
    expect(levels(await breaches(backDamHeight, 'backDam: 1/2 in'))).toEqual(['error']);
    expect(levels(await breaches(backDamHeight, 'backDam: 1 in'))).toEqual(['warning']);
    expect(levels(await breaches(backDamHeight, 'backDam: 1-1/4 in'))).toEqual([]);
  });
  it('is held against the specification where that asks for more than the water', async () => {
    const [found] = await breaches(
      backDamHeight,
      'backDam: 1-1/4 in',
      '',
      requirement('property: back dam height, atLeast: 2 in'),
    );
    expect(found).toMatchObject({ level: 'error', required: 'at least 2 in' });
  });
  it('is held against the water where the specification asks for less', async () => {
    const [found] = await breaches(
      backDamHeight,
      'backDam: 3/4 in',
      '',
      requirement('property: back dam height, atLeast: 1/2 in'),
    );
    expect(found?.sources?.map((s) => s.basis)).toEqual(['physics', 'specification']);
  });
});

it('a sealed sill is an error whatever the standard behind it', async () => {
  expect(
    levels(await breaches(flangeLeftOpen, 'backDam: 1 in', '  - { id: set, set: unit, bedding: { sill: sealed } }\n')),
  ).toEqual(['error']);
});

describe('a way to daylight through siding', () => {
  const wall = (outside: string): string =>
    `wall:\n  - { id: board, material: plywood, thickness: 1/2 in }\n  - { id: coat, product: liquid }\n  - { id: out, material: ${outside} }\n`;
  const work = (sill: string): string =>
    `  - { id: field, place: field, layer: coat }\n  - { id: set, set: unit, of: window, bedding: { head: sealed, jambs: sealed, sill: ${sill} } }\n`;
  const told = (outside: string, sill: string): Promise<Result[]> =>
    breaches(pathToDaylight, 'slope: 6 %, backDam: 1-1/2 in, endDams: 6 in', `${work(sill)}${wall(outside)}`);
  it('is a warning where boards lap on the barrier, and an error where nothing drains', async () => {
    expect(levels(await told('fiber cement siding', 'open'))).toEqual(['warning']);
    expect(levels(await told('precast concrete', 'open'))).toEqual(['error']);
  });
  it('is told with all that stands in it', async () => {
    const [both] = await told('precast concrete', 'sealed');
    expect(both?.message).toMatch(/sealed bedding at the sill; .*none of which is drained/);
    const [first] = await told('fiber cement siding', 'sealed');
    expect(first?.message).toMatch(/sealed bedding at the sill\..*no drained space/);
    expect(first?.level).toBe('error');
  });
});
