import { describe, expect, it } from 'vitest';
import rule from './specified-permeance.js';
import type { Result } from '../../src/engine/result.js';
import { readPage, reviewWith } from '../../tests/support/documents.js';

/** What the rule says of a membrane of 0.08 perm dry and 14 perm wet, or as given. */
async function told(
  asked: string,
  permeance = 'permeance: { dry: 0.08 perm, wet: 14 perm }',
): Promise<readonly Result[]> {
  const page = await readPage(
    `\`\`\`yaml specification
kind: specification
section: "07 27 26"
title: Membranes
requirements:
${asked}
\`\`\`
\`\`\`yaml product
{ kind: product, id: m, name: Membrane, family: fluid-applied membrane${permeance === '' ? '' : `, ${permeance}`} }
\`\`\`
\`\`\`yaml detail
kind: detail
id: d
title: d
wall:
  - { id: membrane, product: m }
\`\`\`
`,
  );
  return reviewWith(page.detail(), [rule]);
}
const asks = (rest: string): string =>
  `  - { paragraph: "2.2.B", property: permeance, subject: field membrane, ${rest} }`;
const kinds = async (asked: string, permeance?: string): Promise<string[]> =>
  (await told(asked, permeance)).map((r) => `${r.kind} ${r.provided ?? (r.missing ?? []).join()}`);

// Which procedure of ASTM E96 has desiccant and which water in the cup is from memory, confirm.
describe('a permeance is compared with the one measured as asked', () => {
  it.each([
    ['ASTM E96 procedure B', 'pass 14 perm in the wet cup'],
    ['ASTM E96/E96M, water method', 'pass 14 perm in the wet cup'],
    ['ASTM E96 Procedure BW', 'pass 14 perm in the wet cup'],
    ['ASTM E96 procedure A', 'fail 0.08 perm in the dry cup'],
    ['ASTM E96 desiccant method', 'fail 0.08 perm in the dry cup'],
    ['ASTM E96 procedure E', 'fail 0.08 perm in the dry cup'],
  ])('%s: %s', async (method, expected) => {
    expect(await kinds(asks(`atLeast: 10 perm, method: "${method}"`))).toEqual([expected]);
  });
  it('is held by each procedure that is asked', async () => {
    expect(await kinds(asks('atLeast: 10 perm, method: ASTM E96 procedures A and B'))).toEqual([
      'fail 0.08 perm in the dry cup',
      'pass 14 perm in the wet cup',
    ]);
  });
  it('does not set a least by one cup against a most by the other', async () => {
    const results = await told(
      [
        asks('atMost: 0.1 perm, method: ASTM E96 procedure A'),
        asks('atLeast: 10 perm, method: ASTM E96 procedure B'),
      ].join('\n'),
    );
    expect(results.map((r) => r.kind)).toEqual(['pass', 'pass']);
  });
  it('is open when that procedure is not declared, whatever the other says', async () => {
    expect(await kinds(asks('atLeast: 10 perm, method: ASTM E96 procedure B'), 'permeance: { dry: 12 perm }')).toEqual([
      'open product.permeance.wet',
    ]);
    expect(await kinds(asks('atMost: 1 perm, method: ASTM E96 procedure A'), 'permeance: { wet: 0.5 perm }')).toEqual([
      'open product.permeance.dry',
    ]);
  });
  it('takes the dry cup where no procedure is asked, and says so', async () => {
    for (const method of ['', ', method: ASTM E96']) {
      const [result] = await told(asks(`atLeast: 10 perm${method}`));
      expect(result).toMatchObject({ kind: 'fail', provided: '0.08 perm in the dry cup' });
      expect(result?.message).toContain('names no procedure of ASTM E96; the dry cup was taken');
    }
  });
});
