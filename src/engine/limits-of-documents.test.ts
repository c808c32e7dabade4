/** Which limit governs: lists and ranges, conditions, confirmation, the order of the contract, contradictions. */
import { describe, expect, it } from 'vitest';
import { BUILT_IN_RULES } from '../../generated/rules.js';
import type { Result } from './result.js';
import { requirementsOfRun } from './requirements-of-run.js';
import { resultsOfRequirements, reviewDetail } from './review.js';
import { ruleSettings } from './settings.js';
import { buildDetail } from '../model/detail.js';
import { readYamlDocuments } from '../reading/documents.js';
import { sourceFile } from '../reading/source.js';

/** A window whose head flashing reaches 5 in onto the wall, so that a limit can be put on either side of it. */
const DETAIL = `kind: detail
id: D
title: Window
wall:
  - { id: board, material: gypsum board, thickness: 5/8 in }
  - { id: studs, material: mineral wool batt, thickness: 6 in FRAMING }
  - { id: sheathing, material: glass-mat gypsum sheathing, thickness: 5/8 in }
openings:
  - { id: window, roughOpening: { width: 48 in, height: 60 in, depth: 7 in }, unit: { mounting: flange, flange: 1-3/8 in } }
work:
  - { id: jambs, place: jambs, of: window, product: strip, ontoWall: 5 in, intoOpening: full }
`;
const PRODUCT = `kind: product
id: strip
name: Flashing strip
family: fluid-applied flashing
least: { ontoWall: SHEET }
`;

interface Given {
  readonly requirements: readonly string[];
  readonly project?: string;
  readonly sheet?: string;
  readonly framing?: string;
}

function review({ requirements, project = '', sheet = '2 in', framing = '' }: Given) {
  const read = (name: string, text: string) => {
    const { documents, problems } = readYamlDocuments(sourceFile(name, text), { named: true });
    expect(problems).toEqual([]);
    return documents[0]!;
  };
  const specification = read(
    's.yaml',
    `kind: specification\nsection: "07 27 26"\ntitle: Air barriers\nrequirements:\n${requirements.map((r, i) => `  - { paragraph: "3.${i + 1}", ${r.includes(':') && /property|characteristic|text/.test(r) ? r : `property: extension onto wall, ${r}`} }\n`).join('')}`,
  );
  const product = read('p.yaml', PRODUCT.replace('SHEET', sheet));
  const { detail } = buildDetail(read('d.yaml', DETAIL.replace('FRAMING', framing)), {
    project: read('j.yaml', `kind: project\nid: j\ntitle: J\n${project}`),
    products: new Map([[product.id, product]]),
    specifications: [specification],
  });
  const settings = ruleSettings(undefined, BUILT_IN_RULES);
  const rules = BUILT_IN_RULES.filter(({ id }) => id === 'extension/onto-wall');
  const one = reviewDetail(detail!, { rules, settings, today: '2026-01-15' });
  const ofRun = resultsOfRequirements([one], [product.id], { settings });
  const left = one.results.filter((r) => r.ruleId === 'extension/onto-wall');
  return { left, first: left[0]!, all: [...one.results, ...ofRun], held: requirementsOfRun([one]) };
}
const of = (ruleId: string, all: readonly Result[]) => all.filter((r) => r.ruleId === ruleId);

describe('a requirement is held', () => {
  it.each([
    ['atLeast: 5 in', 'pass', 'at least 5 in'],
    ['atLeast: 6 in', 'fail', 'at least 6 in'],
    ['atMost: 5 in', 'pass', 'at least 2 in'],
    ['atMost: 4 in', 'fail', 'at most 4 in'],
    ['equals: 5 in', 'pass', 'exactly 5 in'],
    ['equals: 4 in', 'fail', 'exactly 4 in'],
    ['equals: 6 in', 'fail', 'exactly 6 in'],
    ['equals: 4-6 in', 'pass', '4-6 in'],
    ['equals: 3-4 in', 'fail', '3-4 in'],
    ['equals: 6-8 in', 'fail', '6-8 in'],
    ['oneOf: [3 in, 5 in]', 'pass', 'one of 3 in, 5 in'],
    ['oneOf: [4 in, 6 in]', 'fail', 'one of 4 in, 6 in'],
    ['oneOf: [6 in, 8 in]', 'fail', 'one of 6 in, 8 in'],
    ['oneOf: [3 in, 4 in]', 'fail', 'one of 3 in, 4 in'],
    ['oneOf: [3-4 in, 5-6 in]', 'pass', 'one of 3-4 in, 5-6 in'],
  ])('%s: %s', (requirement, kind, required) => {
    const { left } = review({ requirements: [requirement] });
    expect(left.map((r) => r.kind)).toEqual([kind, kind]);
    expect(left[0]?.required).toBe(required);
    if (kind === 'fail') expect(left[0]?.sources?.[0]?.citation).toBe('Section 07 27 26, 3.1');
  });
});

describe('a requirement that nobody confirmed', () => {
  const given = { requirements: ['atLeast: 9 in, confirmed: false'] };
  it('fails nothing and is left to the reviewer at each place it bears on', () => {
    const { left, all, held } = review(given);
    expect(left.map((r) => r.kind)).toEqual(['pass', 'pass']);
    const asked = of('requirement/not-confirmed', all);
    expect(asked.map((r) => [r.kind, r.level])).toEqual([['review', 'none']]);
    expect(asked[0]?.message).toBe(
      'Requirement not confirmed: at least 9 in (Section 07 27 26, 3.1, extension onto wall); provided 5 in, left jamb of window (asked by extension/onto-wall).',
    );
    expect(held[0]?.results).toEqual(asked);
  });
  it('passes nothing either', () => {
    const { left } = review({ requirements: ['atLeast: 6 in', 'atLeast: 1 in, confirmed: false'] });
    expect(left.map((r) => r.sources?.map((s) => s.citation))).toEqual(
      left.map(() => ['Section 07 27 26, 3.1', 'product data of strip']),
    );
  });
});

describe('a requirement with a condition', () => {
  const six = (when: string, more: Omit<Given, 'requirements'> = {}) =>
    review({ requirements: [`atLeast: 6 in, when: { ${when} }`], ...more });
  it.each([
    ['zones: [5A]', { project: 'place: { zone: 5A }' }, 'fail'],
    ['zones: ["5"]', { project: 'place: { zone: 5A }' }, 'fail'],
    ['zones: [6A]', { project: 'place: { zone: 5A }' }, 'pass'],
    ['heightAbove: 40 ft', { project: 'height: 41 ft' }, 'fail'],
    ['heightAbove: 40 ft', { project: 'height: 40 ft' }, 'pass'],
    ['heightUpTo: 40 ft', { project: 'height: 40 ft' }, 'fail'],
    ['framing: steel', { framing: ', framing: { material: steel }' }, 'fail'],
    ['framing: wood', { framing: ', framing: { material: steel }' }, 'pass'],
    ['mounting: flange', {}, 'fail'],
    ['mounting: recessed', {}, 'pass'],
    ['family: fluid-applied flashing', {}, 'fail'],
    ['family: tape', {}, 'pass'],
    ['mounting: flange, heightAbove: 40 ft', { project: 'height: 9 ft' }, 'pass'],
  ])('{ %s } of %o: %s', (when, more, kind) => {
    expect(six(when, more).first.kind).toBe(kind);
    expect(of('requirement/condition-unknown', six(when, more).all)).toEqual([]);
  });
  it.each([
    ['zones: [5A]', '', 'project.place.zone'],
    ['zones: [5A]', 'place: { zone: "5" }', 'project.place.zone'],
    ['heightAbove: 40 ft', '', 'project.height'],
    ['framing: steel', '', 'wall.framing.material'],
  ])('{ %s } of a project { %s } is open, once, and names %s', (when, project, missing) => {
    const { first, all, held } = six(when, { project });
    expect(first.kind).toBe('pass');
    const open = of('requirement/condition-unknown', all);
    expect(open.map((r) => [r.kind, r.missing])).toEqual([['open', [missing]]]);
    expect(held[0]?.results).toEqual(open);
  });
  it('says why nothing held it where the condition does not hold', () => {
    expect(six('mounting: recessed').held[0]?.unheld).toBe('Its condition holds for no detail of this review.');
  });
});

describe('the order of precedence of the contract', () => {
  const order = (...pairs: string[]) =>
    `precedence: [${pairs.map((p) => `{ source: ${p.replace('>', ', over:')} }`).join(', ')}]`;
  it('lets the strictest govern where it says nothing', () => {
    const { first } = review({ requirements: ['atLeast: 4 in'], sheet: '6 in' });
    expect([first.kind, first.sources?.[0]?.citation]).toEqual(['fail', 'product data of strip']);
  });
  it('lets the source that goes before govern, and says what gave way', () => {
    const { first } = review({
      requirements: ['atLeast: 4 in'],
      sheet: '6 in',
      project: order('specification > product data'),
    });
    expect([first.kind, first.sources?.[0]?.citation]).toEqual(['pass', 'Section 07 27 26, 3.1']);
    expect(first.message).toContain(
      'product data of strip asks for 6 in and gives way by the order of precedence of the project.',
    );
  });
  it('carries on: what goes before a source goes before all that come after it', () => {
    const { first } = review({
      requirements: ['atLeast: 4 in'],
      sheet: '6 in',
      project: order('specification > standard', 'standard > product data'),
    });
    expect(first.sources?.[0]?.citation).toBe('Section 07 27 26, 3.1');
  });
  it('settles a contradiction', () => {
    const given = { requirements: ['atMost: 5 in'], sheet: '6 in' };
    expect(of('requirement/contradiction', review(given).all)).toHaveLength(1);
    const settled = review({ ...given, project: order('specification > product data') });
    expect(of('requirement/contradiction', settled.all)).toEqual([]);
  });
});

describe('requirements that no value meets together', () => {
  it('are a finding of their own, once, with both places', () => {
    const { all, left } = review({ requirements: ['atLeast: 6 in', 'atMost: 4 in'] });
    const [found, ...others] = of('requirement/contradiction', all);
    expect(others).toEqual([]);
    expect(found).toMatchObject({
      kind: 'fail',
      level: 'error',
      message:
        'No value meets both: Section 07 27 26, 3.2 asks for at most 4 in, Section 07 27 26, 3.1 for at least 6 in (extension onto wall).',
    });
    expect(found?.at.path).toEqual(['requirements', 1, 'atMost']);
    expect(found?.related?.[0]?.at.path).toEqual(['requirements', 0, 'atLeast']);
    expect(left.every((r) => r.kind === 'fail')).toBe(true);
  });
  it.each([
    [['equals: 4 in', 'equals: 5 in'], 1],
    [['equals: 4-6 in', 'equals: 5 in'], 0],
    [['oneOf: [3 in, 4 in]', 'equals: 3-1/2 in'], 1],
    [['oneOf: [3 in, 4 in]', 'atLeast: 4 in'], 0],
    [['oneOf: [3 in, 4 in]', 'oneOf: [5 in, 6 in]'], 1],
    [['atLeast: 6 in, subject: sill pan', 'atMost: 4 in, subject: head flashing'], 0],
    [['atLeast: 6 in, subject: sill pan', 'atMost: 4 in, subject: opening flashing'], 1],
    [['atLeast: 6 in, confirmed: false', 'atMost: 4 in'], 0],
    [['property: weep count, atLeast: 3', 'property: weep count, atMost: 2'], 1],
  ])('%j: %d', (requirements, count) => {
    expect(of('requirement/contradiction', review({ requirements }).all)).toHaveLength(count);
  });
});

describe('no requirement vanishes', () => {
  it('each is listed with the results that depended on it, or why none did', () => {
    const { held, left, all } = review({
      requirements: [
        'atLeast: 6 in',
        'atLeast: 1 in, product: srtip',
        'property: weep count, atLeast: 2',
        'characteristic: pull adhesion, atLeast: 20 psi',
        'text: Keep it dry.',
      ],
    });
    expect(held.map((h) => [h.requirement.citation, h.results.length, h.unheld])).toEqual([
      ['Section 07 27 26, 3.1', 2, undefined],
      ['Section 07 27 26, 3.2', 0, 'No product "srtip" was submitted.'],
      ['Section 07 27 26, 3.3', 0, 'No check of this review asked for it.'],
      ['Section 07 27 26, 3.4', 0, 'No check knows this characteristic; a person has to look.'],
      ['Section 07 27 26, 3.5', 0, 'It is in words; a person has to look.'],
    ]);
    expect(held[0]?.results).toEqual(left);
    const [unknown] = of('requirement/unknown-product', all);
    expect(unknown?.message).toContain('no such product was submitted; did you mean "strip"?');
    expect(unknown?.at.path).toEqual(['requirements', 1, 'product']);
  });
});
