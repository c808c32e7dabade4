import { describe, expect, it } from 'vitest';
import ontoWall from '../../rules/extension/onto-wall.js';
import { readPage } from '../../tests/support/documents.js';
import { reviewDetail } from './review.js';
import { ruleSettings } from './settings.js';
import type { Result } from './result.js';

const RULES = [ontoWall];
const SPECIFICATION = (section: string, paragraph: string, least: string): string =>
  `\`\`\`yaml specification\nsection: "${section}"\ntitle: Barriers\nrequirements:\n  - { paragraph: "${paragraph}", subject: jamb flashing, property: extension onto wall, atLeast: ${least} }\n\`\`\`\n`;

/** Reviews jambs that reach so far, with one deviation; the specification asks for 6 in, the data sheet for 4 in. */
async function withDeviation(
  deviation: string,
  options: { reaches?: string; more?: string; project?: string; today?: string } = {},
) {
  const page = await readPage(
    `\`\`\`yaml detail
id: D
title: T
${options.project === undefined ? '' : `project: ${options.project}\n`}openings:
  - { id: window, roughOpening: { width: 36 in, height: 48 in, depth: 6 in } }
work:
  - { id: jambs, place: jambs, of: window, product: liquid, ontoWall: ${options.reaches ?? '5 in'}, intoOpening: full }
deviations:
  - ${deviation}
\`\`\`

\`\`\`yaml product
id: liquid
name: Liquid
family: fluid-applied flashing
least: { ontoWall: 4 in }
\`\`\`

${SPECIFICATION('07 27 26', '3.2.B.1', '6 in')}
${options.more ?? ''}`,
  );
  const { results } = reviewDetail(page.detail(), {
    rules: RULES,
    settings: ruleSettings(undefined, RULES),
    today: options.today ?? '2026-01-15',
  });
  const standing = (ruleId: string): Result[] =>
    results.filter((r) => r.ruleId === ruleId && r.kind === 'fail' && r.suppression === undefined);
  return {
    findings: standing('extension/onto-wall').length,
    accepted: results.filter((r) => r.suppression !== undefined).length,
    told: results.filter((r) => r.ruleId.startsWith('deviation/')).map((r) => `${r.ruleId}: ${r.message}`),
  };
}
const ACCEPTED = 'reason: R., acceptedBy: architect of record';

describe('a deviation from a paragraph', () => {
  it('covers what breaks that paragraph', async () => {
    expect(await withDeviation(`{ paragraph: "3.2.B.1", ${ACCEPTED} }`)).toEqual({
      findings: 0,
      accepted: 2,
      told: [],
    });
  });

  it('covers no other paragraph, not even the one above it, and is told to be without effect', async () => {
    for (const paragraph of ['3.2.B', '3.2.B.2', '3.2.B.1.a'])
      expect(await withDeviation(`{ paragraph: "${paragraph}", ${ACCEPTED} }`)).toEqual({
        findings: 2,
        accepted: 0,
        told: [
          `deviation/unused: the deviation from ${paragraph} covers no finding: nothing in this detail breaks ${paragraph}.`,
        ],
      });
  });

  it('is of one section where it names one', async () => {
    expect((await withDeviation(`{ paragraph: "3.2.B.1", section: "07 27 26", ${ACCEPTED} }`)).accepted).toBe(2);
    expect((await withDeviation(`{ paragraph: "3.2.B.1", section: "07 25 00", ${ACCEPTED} }`)).findings).toBe(2);
  });

  it('with a rule beside it covers only what that rule finds, at the thing it names', async () => {
    const of = (more: string) => withDeviation(`{ paragraph: "3.2.B.1", ${more}, ${ACCEPTED} }`);
    expect((await of('rule: extension/onto-wall')).accepted).toBe(2);
    expect((await of('rule: extension/into-opening')).findings).toBe(2);
    expect((await of('of: jambs')).accepted).toBe(2);
    expect((await of('of: pan')).findings).toBe(2);
  });

  it('does not cover what breaks the product data too', async () => {
    // 3 in: below the 6 in that were given up, and below the 4 in that nobody gave up.
    const { findings, accepted, told } = await withDeviation(`{ id: DEV-1, paragraph: "3.2.B.1", ${ACCEPTED} }`, {
      reaches: '3 in',
    });
    expect([findings, accepted]).toEqual([2, 0]);
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/^deviation\/covers-part: deviation DEV-1 .* breaks product data of liquid too/);
  });

  it('does not cover what breaks a paragraph of another section too', async () => {
    const more = SPECIFICATION('07 25 00', '3.1.A', '5-1/2 in');
    const { findings, told } = await withDeviation(`{ paragraph: "3.2.B.1", ${ACCEPTED} }`, { more });
    expect(findings).toBe(2);
    expect(told[0]).toContain('Section 07 25 00, 3.1.A');
    expect((await withDeviation(`{ rule: extension/onto-wall, ${ACCEPTED} }`, { more })).accepted).toBe(2);
  });

  it('holds through its last day and not a day longer', async () => {
    const on = async (today: string) =>
      (await withDeviation(`{ paragraph: "3.2.B.1", ${ACCEPTED}, until: 2026-06-30 }`, { today })).accepted;
    expect(await on('2026-06-30')).toBe(2);
    expect(await on('2026-07-01')).toBe(0);
  });

  it('that nobody accepted, or that ended, leaves the finding and is told', async () => {
    const open = await withDeviation('{ paragraph: "3.2.B.1", reason: R. }');
    expect([open.findings, open.told[0]?.split(':')[0]]).toEqual([2, 'deviation/not-accepted']);
    const ended = await withDeviation(`{ paragraph: "3.2.B.1", ${ACCEPTED}, until: 2026-01-14 }`);
    expect([ended.findings, ended.told[0]?.split(':')[0]]).toEqual([2, 'deviation/expired']);
  });

  it('that a role accepted which may not leaves the finding, and says which roles may', async () => {
    const { findings, accepted, told } = await withDeviation(
      '{ id: DEV-1, paragraph: "3.2.B.1", reason: R., acceptedBy: window installer }',
    );
    expect([findings, accepted]).toEqual([2, 0]);
    expect(told).toEqual([
      "deviation/not-accepted: deviation DEV-1 is stated as accepted by window installer, who may not accept it; architect, architect of record, engineer of record, building official, owner or owner's representative may. Its finding stands.",
    ]);
  });

  it('takes the roles that may accept from the project, in any case and with an article', async () => {
    const by = (role: string, roles?: string) =>
      withDeviation(`{ paragraph: "3.2.B.1", reason: R., acceptedBy: ${role} }`, {
        ...(roles === undefined
          ? {}
          : { project: 'p', more: `\`\`\`yaml project\nid: p\ntitle: P\nacceptingRoles: ${roles}\n\`\`\`\n` }),
      });
    expect((await by('The Architect of Record')).accepted).toBe(2);
    expect((await by('owner\u2019s representative')).accepted).toBe(2);
    expect((await by('architect of record', '[envelope consultant]')).accepted).toBe(0);
    expect((await by('Envelope  consultant', '[envelope consultant]')).accepted).toBe(2);
    expect((await by('consultant', '[envelope consultant]')).accepted).toBe(0);
  });

  it('that is in force goes before one that is not', async () => {
    const both = `{ paragraph: "3.2.B.1", reason: R. }\n  - { paragraph: "3.2.B.1", ${ACCEPTED} }`;
    expect((await withDeviation(both)).accepted).toBe(2);
  });
});
