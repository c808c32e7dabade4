/** Weeps farther apart than a guide and the code both allow: the guide names the finding, the code gives it its level. */
import { expect, it } from 'vitest';
import weeps from './weeps.js';
import type { Result } from '../../src/engine/result.js';
import { readPage, reviewWith } from '../../tests/support/documents.js';

async function spaced(spacing: string): Promise<Result | undefined> {
  const page = await readPage(`\`\`\`yaml project
kind: project
id: house
title: House
code: { title: IRC, edition: 2021 }
\`\`\`

\`\`\`yaml detail
kind: detail
id: D
title: Base
project: house
edges: { bottom: { meets: foundation } }
wall:
  - { id: sheathing, material: glass-mat gypsum sheathing }
  - { id: cavity, material: air space, thickness: 2 in, drained: true }
  - { id: veneer, material: clay brick, thickness: 3-5/8 in }
work:
  - { id: at-base, place: base of wall, product: metal-flashing, upstand: 8 in, projects: 1/4 in, weeps: { type: open head joints, spacing: ${spacing}, size: 3/8 in } }
\`\`\`

\`\`\`yaml product
kind: product
id: metal-flashing
name: Metal flashing
family: metal flashing
\`\`\`
`);
  return reviewWith(page.detail(), [weeps]).find((r) => r.kind === 'fail');
}

it('48 in break the code too: an error, though the guide asks for less', async () => {
  const result = await spaced('48 in');
  expect(result?.required).toBe('at most 24 in (open head joints)');
  expect(result?.message).toMatch(/IRC R703\.8\.6.* \(at most 33 in\) is not met either\.$/);
  expect(result?.level).toBe('error');
});

it('30 in break the guide alone: a warning', async () => {
  const result = await spaced('30 in');
  expect(result?.message).not.toContain('not met either');
  expect(result?.level).toBe('warning');
});
