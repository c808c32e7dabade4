/** What a submittal contains, held against what the section asks for: the cases that the pages do not show. */
import { describe, expect, it } from 'vitest';
import { runReview } from '../src/cli/run.js';
import type { Result } from '../src/engine/result.js';
import { scratch } from './support/command.js';

const HEAD = 'kind: submittal\nnumber: 07 27 26-03\nsection: "07 27 26"\ntitle: T\n';
const DETAIL =
  'kind: detail\nid: D\ntitle: T\nopenings:\n  - { id: w, roughOpening: { width: 36 in, height: 48 in, depth: 6 in } }\nwork:\n  - { id: jambs, place: jambs, of: w, product: liquid, ontoWall: 4 in }\n';
const PRODUCTS =
  'kind: product\nid: liquid\nname: Liquid\nfamily: fluid-applied flashing\n---\nkind: product\nid: strip\nname: Strip\nfamily: tape\n';

interface Given {
  /** `[D]` when left out. */
  readonly details?: string;
  /** Lines of the submittal below its head. */
  readonly submittal: string;
  /** Entries under `submittals` of the section. */
  readonly asked?: string;
  readonly requirements?: string;
  readonly more?: Readonly<Record<string, string>>;
  readonly settings?: string;
}

/** Reviews the submittal alone; its other documents come by reference. */
async function told(
  ruleId: string,
  { submittal, details = '[D]', asked, requirements, more = {}, settings = '' }: Given,
) {
  const cwd = scratch({
    'lapwright.yaml': `kind: settings\ndocuments: [section.yaml, products.yaml]\n${settings}`,
    's.yaml': `${HEAD}details: ${details}\n${submittal}`,
    'd.yaml': DETAIL,
    'products.yaml': PRODUCTS,
    'section.yaml': `kind: specification\nsection: "07 27 26"\ntitle: Barriers\nsubmittals:\n${asked ?? '  - { paragraph: "1.3.A", item: product data }'}\n${requirements ?? ''}`,
    ...more,
  });
  const options = { packs: [], allowPacks: false, today: '2026-01-15', skipOthers: false, dependents: false };
  const { review } = await runReview({ inputs: ['s.yaml', 'd.yaml', ...Object.keys(more)], cwd, ...options });
  expect(review.results.filter((r) => r.ruleId.startsWith('document/')).map((r) => r.message)).toEqual([]);
  return review.results.filter((r) => r.ruleId === ruleId && r.documentId !== '07 27 26-01');
}
const kinds = (results: readonly Result[]): string[] => results.map((r) => `${r.kind} ${r.level}`);
const ITEMS = 'submittal/required-items';

describe('a required item', () => {
  const sentBefore = 'contains:\n  - { item: samples, title: Film, sentWith: 07 27 26-01 }\n';
  const asked = '  - { paragraph: "1.3.D", item: samples }';
  const earlier = (item: string): Readonly<Record<string, string>> => ({
    'first.yaml': `kind: submittal\nnumber: 07 27 26-01\nsection: "07 27 26"\ntitle: T\ndetails: [D]\ncontains:\n  - { item: ${item}, title: X }\n`,
  });

  it('sent with a submittal that was not read is left to the reviewer', async () => {
    const results = await told(ITEMS, { submittal: sentBefore, asked });
    expect(kinds(results)).toEqual(['review none']);
    expect(results[0]?.message).toContain('07 27 26-01');
  });

  it('sent with a submittal that was read is looked up there', async () => {
    expect(kinds(await told(ITEMS, { submittal: sentBefore, asked, more: earlier('samples') }))).toEqual(['pass none']);
    expect(kinds(await told(ITEMS, { submittal: sentBefore, asked, more: earlier('warranty') }))).toEqual([
      'fail error',
    ]);
  });

  it('that nobody confirmed is left to the reviewer, whether it is there or not', async () => {
    const unconfirmed = '  - { paragraph: "1.3.D", item: samples, confirmed: false }';
    for (const submittal of ['', 'contains:\n  - { item: samples, title: Film, answers: ["1.3.D"] }\n'])
      expect(kinds(await told(ITEMS, { submittal, asked: unconfirmed }))).toEqual(['review none']);
  });

  it.each([
    ['its id', 'liquid'],
    ['its family', 'fluid-applied flashing'],
  ])('for a product named by %s must be about it', async (_, of) => {
    const asking = `  - { paragraph: "1.3.D", item: samples, of: ${of} }`;
    const about = (id: string) =>
      told(ITEMS, { asked: asking, submittal: `contains:\n  - { item: samples, title: Film${id} }\n` });
    expect(kinds(await about(', of: liquid'))).toEqual(['pass none']);
    expect(kinds(await about(', of: strip'))).toEqual(['fail error']);
    expect(kinds(await about(''))).toEqual(['open none']);
  });

  it('by a method is found however the standard is spelled', async () => {
    const asking = '  - { paragraph: "1.3.D", item: test reports, of: "adhesion, ASTM D4541" }';
    for (const methods of ['ASTM D 4541', 'ASTM D4541-17', 'ASTM-D4541'])
      expect(
        kinds(
          await told(ITEMS, {
            asked: asking,
            submittal: `contains:\n  - { item: test reports, title: R, methods: ["${methods}"] }\n`,
          }),
        ),
        methods,
      ).toEqual(['pass none']);
    const other = 'contains:\n  - { item: test reports, title: "Report by ASTM D4542" }\n';
    expect(kinds(await told(ITEMS, { asked: asking, submittal: other }))).toEqual(['fail error']);
  });

  it('listed as another kind of thing for its paragraph is said to be so', async () => {
    const [result] = await told(ITEMS, {
      asked,
      submittal: 'contains:\n  - { item: certificates, title: C, answers: ["1.3.D"] }\n',
    });
    expect(result?.message).toBe('"C" answers 1.3.D as certificates; Section 07 27 26, 1.3.D asks for samples.');
  });

  it('of another section is not asked of this one', async () => {
    const more = {
      'other.yaml':
        'kind: specification\nsection: "07 92 00"\ntitle: Sealants\nsubmittals:\n  - { paragraph: "1.3.A", item: warranty }\n',
    };
    const submittal = 'documents: [other.yaml]\ncontains:\n  - { item: samples, title: Film }\n';
    const results = await told(ITEMS, { submittal, asked, more });
    expect(results.map((r) => r.subject)).toEqual(['samples, Section 07 27 26, 1.3.D']);
  });
});

describe('product data', () => {
  const none = { submittal: 'contains:\n  - { item: samples, title: Film }\n' };

  it('are an error where the section asks for them, and a warning where only a guide does', async () => {
    expect(kinds(await told('submittal/product-data', none))).toEqual(['fail error']);
    const asked = '  - { paragraph: "1.3.D", item: samples }';
    expect(kinds(await told('submittal/product-data', { ...none, asked }))).toEqual(['fail warning']);
    const proposed = '  - { paragraph: "1.3.A", item: product data, confirmed: false }';
    expect(kinds(await told('submittal/product-data', { ...none, asked: proposed }))).toEqual(['fail warning']);
  });

  it('of a product that no detail uses are not asked for', async () => {
    const results = await told('submittal/product-data', none);
    expect(results.map((r) => r.subject)).toEqual(['product data of liquid']);
  });
});

describe('an undeclared difference', () => {
  const requirements =
    'requirements:\n  - { paragraph: "3.2.B.1", subject: opening flashing, property: extension onto wall, atLeast: 6 in }\n';
  const differing = { submittal: '', requirements };

  it('is told once for both jambs, with the paragraph, and belongs to the detail', async () => {
    const results = await told('deviation/undeclared', differing);
    expect(kinds(results)).toEqual(['fail warning']);
    expect(results[0]).toMatchObject({
      documentId: 'D',
      message: 'D differs from Section 07 27 26, 3.2.B.1 and no deviation is declared.',
    });
    expect(results[0]?.related).toHaveLength(2);
  });

  it('is declared by a paragraph or by a rule, in the submittal or in the settings, for that detail', async () => {
    const failing = async (given: Given) => kinds(await told('deviation/undeclared', given)).includes('fail warning');
    const entry = (more: string): string => `deviations: [{ reason: R., ${more} }]\n`;
    expect(await failing({ ...differing, submittal: entry('paragraph: "3.2.B.1"') })).toBe(false);
    expect(await failing({ ...differing, submittal: entry('rule: extension/onto-wall') })).toBe(false);
    expect(await failing({ ...differing, settings: entry('paragraph: "3.2.B.1", detail: D') })).toBe(false);
    expect(await failing({ ...differing, submittal: entry('paragraph: "3.2.B.2"') })).toBe(true);
    expect(await failing({ ...differing, submittal: entry('paragraph: "3.2.B.1", detail: E') })).toBe(true);
    expect(await failing({ ...differing, submittal: entry('paragraph: "3.2.B.1", section: "07 25 00"') })).toBe(true);
  });

  it('is turned off and changed in level by the settings, like any check', async () => {
    const set = (level: string): Given => ({
      ...differing,
      settings: `rules: { deviation/undeclared: { level: ${level} } }\n`,
    });
    expect(kinds(await told('deviation/undeclared', set('error')))).toEqual(['fail error']);
    expect(await told('deviation/undeclared', set('off'))).toEqual([]);
  });

  it('is not looked for where requirements contradict each other', async () => {
    const more =
      '  - { paragraph: "3.2.B.9", subject: opening flashing, property: extension onto wall, atMost: 5 in }\n';
    const results = await told('deviation/undeclared', { ...differing, requirements: requirements + more });
    expect(results.filter((r) => r.kind === 'fail')).toEqual([]);
  });
});

describe('a deviation of a submittal', () => {
  it('that covers nothing is told once, not in each detail', async () => {
    const submittal = 'deviations: [{ paragraph: "3.9", reason: R. }, { rule: lap/end-dam, detail: E, reason: R. }]\n';
    const more = { 'f.yaml': DETAIL.replace('id: D', 'id: F') };
    const results = await told('deviation/unused', { submittal, details: '[D, F]', more });
    expect(results.map((r) => r.documentId)).toEqual(['07 27 26-03', '07 27 26-03']);
    expect(results[1]?.message).toContain('which the submittal does not hold');
  });
});
