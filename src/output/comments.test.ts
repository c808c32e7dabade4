/** Findings gathered by cause: what is one comment, what stays two, and that none is lost. */
import { describe, expect, it } from 'vitest';
import { sampleReview } from '../../tests/golden/output/sample-review.js';
import type { Result } from '../engine/result.js';
import type { Locus } from '../reading/types.js';
import { causesOf, commentsOf, countComments, isToDecide, resultsOf } from './comments.js';
import { byDetail } from './grouping.js';

const document = {
  kind: 'detail' as const,
  id: 'N-2',
  file: { uri: 'n-2.yaml', text: '' },
  data: {},
  spanOf: () => ({ start: 0, end: 0 }),
};
const at = (...path: (string | number)[]): Locus => ({ document, path });
const template = sampleReview.results[0] as Result;

function finding(ruleId: string, place: Locus, more: Partial<Result> = {}): Result {
  const plain = { ...template, flow: undefined, sources: undefined, related: undefined, required: undefined };
  return { ...plain, kind: 'fail', level: 'error', ruleId, at: place, message: `${ruleId}.`, correct: ruleId, ...more };
}
const shape = (findings: Result[]): string[] =>
  causesOf(findings).map((c) =>
    resultsOf(c)
      .map((r) => r.subject ?? r.ruleId)
      .join(' + '),
  );

const jamb = (side: string, more: Partial<Result> = {}): Result =>
  finding('extension/onto-wall', at('work', 4, 'ontoWall'), {
    subject: `${side} jamb`,
    message: `Flashing at the ${side} jamb reaches 4 in.`,
    correct: 'Widen "jambs".',
    ...more,
  });

describe('one cause is one comment', () => {
  it('left and right of the same step', () => {
    const [cause, ...more] = causesOf([jamb('left'), jamb('right')]);
    expect(more).toEqual([]);
    expect([cause?.lead.subject, cause?.same.map((r) => r.subject)]).toEqual(['left jamb', ['right jamb']]);
  });
  it('what one and the same correction of a step answers', () => {
    const correct = 'Put "pan" before "jambs".';
    expect(
      shape([
        finding('lap/jamb-over-pan', at('work', 5), { correct, subject: 'lap' }),
        finding('sequence/sill-jamb-head', at('work', 5, 'place'), { correct, subject: 'order' }),
      ]),
    ).toEqual(['lap + order']);
  });
  it('water that is followed to the very place another finding is about, which leads', () => {
    const flow = [{ message: 'It runs.', at: at('work', 7) }];
    expect(
      shape([
        finding('sill/path-to-daylight', at('work', 7, 'bedding', 'sill'), { flow, subject: 'way' }),
        finding('sill/flange-left-open', at('work', 7, 'bedding', 'sill'), { subject: 'flange' }),
      ]),
    ).toEqual(['flange + way']);
  });
  it('the difference that nobody declared, with the breach it is about', () => {
    const source = {
      basis: 'specification',
      citation: 'Section 07 27 26, 3.2.B.1',
      provenance: 'project document',
    } as const;
    expect(
      shape([
        jamb('left', { sources: [source] }),
        finding('deviation/undeclared', at('work', 4, 'ontoWall'), {
          level: 'warning',
          subject: 'undeclared',
          message: 'N-2 differs from Section 07 27 26, 3.2.B.1 and no deviation is declared.',
        }),
      ]),
    ).toEqual(['left jamb + undeclared']);
  });
});

describe('two causes stay two comments', () => {
  it('other words, another step or another rule', () => {
    expect(
      shape([jamb('left'), jamb('right', { message: 'Flashing at the right jamb reaches 3 in.', correct: 'W' })]),
    ).toHaveLength(2);
    expect(shape([jamb('left'), jamb('right', { at: at('work', 5, 'ontoWall') })])).toHaveLength(2);
    expect(shape([jamb('left'), finding('sill/end-dam-height', at('work', 4, 'endDams'))])).toHaveLength(2);
  });
  it('two ways of water that end at one place', () => {
    const flow = [{ message: 'It runs.', at: at('work', 7) }];
    const two = ['a', 'b'].map((name) => finding(`water/${name}`, at('work', 7), { flow }));
    expect(shape(two)).toHaveLength(2);
  });
  it('two documents that a submittal lacks, told at one place with one sentence', () => {
    const list: Locus = { document: { ...document, kind: 'submittal' }, path: ['contains', 2] };
    const lacks = (what: string): Result =>
      finding('submittal/required-items', list, { correct: 'Send it in.', message: what, subject: what });
    expect(shape([lacks('plan'), lacks('tests')])).toHaveLength(2);
  });
});

describe('the comments of a review', () => {
  const groups = byDetail(sampleReview);
  const comments = commentsOf(groups);
  it('hold every finding once, numbered anew in each detail', () => {
    const told = comments.flatMap((c) => [...resultsOf(c)]);
    expect(new Set(told)).toEqual(new Set(groups.flatMap((g) => g.findings)));
    expect(told).toHaveLength(groups.flatMap((g) => g.findings).length);
    for (const group of groups) {
      const own = comments.filter((c) => c.group === group);
      expect(own.map((c) => c.number)).toEqual(own.map((_, i) => i + 1));
    }
  });
  it('begin with the errors of a detail, whatever was found first', () => {
    const first = finding('joint/depth', at('work', 1), { level: 'warning' });
    expect(causesOf([first, jamb('left')]).map((c) => c.lead.level)).toEqual(['error', 'warning']);
  });
  it('count what waits for the reviewer apart from what the sender has to correct', () => {
    const declared = { name: 'deviation DEV-1', reason: 'The surround leaves 4 in.' };
    const [cause] = causesOf([jamb('left', { declared }), jamb('right', { declared })]);
    expect(cause !== undefined && isToDecide(cause)).toBe(true);
    expect(countComments(causesOf([jamb('left', { declared }), finding('a/b', at('work', 9))]))).toEqual({
      errors: 1,
      warnings: 0,
      notes: 0,
      toDecide: 1,
    });
  });
});
