import { describe, expect, it } from 'vitest';
import type { Rule } from './rule.js';
import { levelFor } from './levels.js';
import interiorSeal from '../../rules/air/interior-seal-four-sides.js';
import flangeLeftOpen from '../../rules/sill/flange-left-open.js';
import panExists from '../../rules/sill/pan-exists.js';
import pathToDaylight from '../../rules/sill/path-to-daylight.js';
import slopeOrDam from '../../rules/sill/slope-or-dam.js';
import { readPage, reviewWith } from '../../tests/support/documents.js';
import type { Result } from './result.js';

const RULES = [interiorSeal, flangeLeftOpen, panExists, pathToDaylight, slopeOrDam] as unknown as Rule[];

/** A window with a sealed sill over a pan of 3 %, with no seal inside. */
async function under(project: string): Promise<Result[]> {
  const page = await readPage(
    `\`\`\`yaml detail
kind: detail
id: D
title: D
project: site
wall:
  - { id: sheathing, material: plywood, thickness: 1/2 in }
  - { id: coat, product: liquid }
  - { id: siding, material: fiber cement siding, thickness: 5/16 in }
openings:
  - { id: window, roughOpening: { width: 36 in, height: 48 in, depth: 6 in }, unit: { mounting: flange, frameDepth: 3 in, waterTest: 3 psf } }
work:
  - { id: pan, place: sill, of: window, product: liquid, ontoWall: 4 in, intoOpening: full, slope: 3 %, endDams: 2 in }
  - { id: field, place: field, layer: coat }
  - { id: set, set: unit, of: window, bedding: { head: sealed, jambs: sealed, sill: sealed } }
  - { id: board, place: interior face, product: liquid }
\`\`\`

\`\`\`yaml product
kind: product
id: liquid
name: Fluid-applied flashing
family: fluid-applied flashing
\`\`\`

\`\`\`yaml project
kind: project
id: site
title: Site
${project}
\`\`\`
`,
  );
  return reviewWith(page.detail(), RULES);
}
const cited = (results: readonly Result[]): string =>
  [...new Set(results.flatMap((r) => r.sources ?? []).map((s) => s.citation))].sort().join('\n');

describe('a project is cited its own code', () => {
  it('a house the clauses for houses, those from memory as a warning', async () => {
    const results = await under('code: { title: IRC, edition: 2021 }');
    expect(cited(results)).toMatch(/IRC R703\.1\.1.*/);
    expect(cited(results)).toContain('IRC N1102.4');
    expect(cited(results)).not.toMatch(/IBC|C402\.5|Canad|Ontario/);
    const seal = results.find((r) => r.ruleId === interiorSeal.id && r.kind === 'fail');
    expect(seal?.sources?.[0]?.provenance).toBe('from memory, confirm');
    expect(seal?.level).toBe(levelFor('error', seal?.sources?.[0]));
    expect(seal?.level).toBe('warning');
  });
  it('another building in the United States neither those nor the Canadian ones', async () => {
    const results = await under('code: { title: IBC, edition: 2021 }');
    expect(cited(results)).toContain('IECC C402.5');
    expect(cited(results)).not.toMatch(/IRC|Canad|Ontario/);
  });
  it('a building in Canada no clause of the United States', async () => {
    const results = await under('code: { title: NBC, edition: 2020 }');
    expect(cited(results)).toContain('proposed change 1950');
    expect(cited(results)).not.toMatch(/IRC|IBC|IECC/);
  });
  it('one that gives only a climate zone the clauses of the United States', async () => {
    const results = await under('place: { zone: 5A }');
    expect(cited(results)).toMatch(/IBC/);
    expect(cited(results)).not.toMatch(/Canad|Ontario/);
  });
});

describe('the slope that a Canadian note asks for', () => {
  const slope = (results: readonly Result[]): (string | undefined)[] =>
    results.filter((r) => r.subject === 'slope of the pan of window').map((r) => `${r.kind}: ${r.required ?? ''}`);
  it('governs in Canada and nowhere else', async () => {
    expect(slope(await under('code: { title: NBC, edition: 2020 }'))).toEqual(['fail: at least 6 %']);
    expect(slope(await under('code: { title: IBC, edition: 2021 }'))).toEqual(['pass: at least 2 %']);
    expect(slope(await under('place: { zone: 5A }'))).toEqual(['pass: at least 2 %']);
  });
});
